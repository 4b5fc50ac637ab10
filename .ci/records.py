"""Reads the documents of the invented shelf as other programs do. Run by .ci/records, not by every test run.

Readers: icalendar 7.3.2, vobject 0.9.9 (PyPI), the csv module and zoneinfo of Python 3.11.
"""

import csv
import datetime as dt
import json
import pathlib
import re
import sys
import zoneinfo

import icalendar
import vobject

FOLDER = pathlib.Path(sys.argv[1])
SUMMER_TIME = "Europe/Paris", "America/New_York", "Australia/Sydney"


def check(good, what):
    if not good:
        sys.exit(f"FAILED: {what}")


def events_of(name):
    """Every event by its UID, read by both libraries, which must agree."""
    text = (FOLDER / name).read_bytes()
    calendar = icalendar.Calendar.from_ical(text)
    check(not calendar.errors, f"{name}: {calendar.errors}")
    events = {}
    for event in calendar.walk("VEVENT"):
        check(not event.errors, f"{name}: {event.errors}")
        uid = str(event["UID"])
        check(uid not in events, f"{name}: {uid} twice")
        events[uid] = event
    other = {e.uid.value: e for e in vobject.readOne(text.decode()).vevent_list}
    check(other.keys() == events.keys(), f"{name}: the readers disagree on the events")
    for uid, event in events.items():
        check(other[uid].dtstart.value == event["DTSTART"].dt, f"{uid}: start")
        check(other[uid].summary.value == str(event["SUMMARY"]), f"{uid}: summary")
    return events


def calendar():
    first, later = events_of("calendar.ics"), events_of("calendar-later.ics")
    check(len(first) > 10, "a calendar of more than a handful")
    for uid, event in first.items():
        start = event["DTSTART"].dt
        check(isinstance(start, dt.datetime) and start.tzinfo is None, f"{uid}: not floating")
        alarms = event.walk("VALARM")
        check(len(alarms) == 1 and alarms[0]["TRIGGER"].dt == dt.timedelta(0), f"{uid}: alarm")
        # Shown in any zone, also one that has changed its clocks meanwhile: the same hour on the clock.
        for zone in SUMMER_TIME:
            there = start.replace(tzinfo=zoneinfo.ZoneInfo(zone))
            check((there.hour, there.minute) == (start.hour, start.minute), f"{uid}: {zone}")
    across = [e["DTSTART"].dt for e in first.values() if e["DTSTART"].dt > dt.datetime(2026, 3, 29, 3)]
    check(across and all(s.hour in (8, 9, 19) for s in across), "no event after the change to summer time")

    # Imported again: what has a UID that is there replaces it, so nothing is there twice.
    shown = dict(first)
    cancelled = 0
    for uid, event in later.items():
        before = shown.get(uid)
        if before is not None:
            check(int(event["SEQUENCE"]) >= int(before["SEQUENCE"]), f"{uid}: sequence went down")
        if str(event.get("STATUS")) == "CANCELLED":
            check(before is not None, f"{uid}: cancelled, but was never there")
            check(int(event["SEQUENCE"]) > int(before["SEQUENCE"]), f"{uid}: cancelled with the old sequence")
            cancelled += 1
            del shown[uid]
        else:
            shown[uid] = event
    check(cancelled >= 1, "what ended is cancelled")
    asked = {u for u, e in later.items() if str(e.get("STATUS")) != "CANCELLED"}
    check(shown.keys() == asked, "after the second import the calendar holds what is asked for, each once")

    # The same next looks as `due` has, for the days that it lists.
    due = json.loads((FOLDER / "due.json").read_text())
    looks = [r for part in ("overdue", "today", "coming") for r in due[part] if r["next_look"]]
    for row in looks:
        check(f"{row['piece']}-look@evenwall" in first, f"{row['mark']}: due, but not in the calendar")
    print(f"calendar: {len(first)} events, then {len(later)}, {cancelled} cancelled")


def tables():
    counted = 0
    units = re.compile(r"_(mm|g|c|pct|h)$")
    for path in sorted(FOLDER.glob("evenwall-*.csv")):
        with path.open(newline="", encoding="utf-8-sig") as file:
            rows = list(csv.DictReader(file, strict=True))
        check(rows, f"{path.name} is empty")
        for row in rows:
            check(None not in row and None not in row.values(), f"{path.name}: a row of another length")
            for name, cell in row.items():
                if name == "at" or name.endswith("_at") or name.endswith("_since"):
                    if cell:
                        check(dt.datetime.fromisoformat(cell).tzinfo is not None, f"{path.name}: {cell}")
                elif units.search(name):
                    if cell:
                        float(cell)
                else:
                    check(cell[:1] not in ("=", "+", "-", "@", "\t", "\r"), f"{path.name}: {cell} runs")
        counted += len(rows)
    check(counted > 200, f"only {counted} rows")
    print(f"tables: {counted} rows")


calendar()
tables()
