#!/usr/bin/env python3
"""The data of `years make DIR N` in an embedded database, for the comparison in DEVELOPERS.

    python3 src/app/benches/sqlite.py DIR

Uses the SQLite of this Python. Every entry is a row with its JSON; what is asked often has columns and an index, as one
would lay it out. Nothing is folded: its times are a floor for a program that keeps the same diary in SQLite. Prints medians
in ms.
"""

import json
import os
import pathlib
import sqlite3
import statistics
import sys
import tempfile
import time

folder = pathlib.Path(sys.argv[1]) / "shelf" / "pieces"
base = pathlib.Path(tempfile.mkdtemp(prefix="evenwall-sqlite-", dir=sys.argv[1]))
file = base / "shelf.db"


def fresh(mode):
    db = sqlite3.connect(file)
    db.execute(f"PRAGMA journal_mode={mode}")
    db.execute("PRAGMA synchronous=FULL")
    return db


def median(runs, work):
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        work()
        times.append((time.perf_counter() - start) * 1e3)
    return statistics.median(times)


db = fresh("DELETE")
db.executescript(
    "CREATE TABLE piece (id TEXT PRIMARY KEY, living INTEGER);"
    "CREATE TABLE entry (piece TEXT, n INTEGER, at TEXT, kind TEXT, line TEXT, PRIMARY KEY (piece, n)) WITHOUT ROWID;"
)
rows = 0
for journal in folder.glob("*/years.jsonl"):
    lines = journal.read_text().splitlines()
    piece = journal.parent.name
    parsed = [json.loads(line) for line in lines]
    living = all(f["fact"] != "ended" for f in parsed[-1]["facts"])
    db.execute("INSERT INTO piece VALUES (?, ?)", (piece, living))
    db.executemany(
        "INSERT INTO entry VALUES (?, ?, ?, ?, ?)",
        [(piece, p["n"], p["at"], p["facts"][0]["fact"], line) for p, line in zip(parsed, lines)],
    )
    rows += len(lines)
db.execute("CREATE INDEX due ON entry (piece, kind, at)")
db.commit()
db.close()

DUE = (
    "SELECT p.id, MAX(e.at) FROM piece p JOIN entry e ON e.piece = p.id AND e.kind IN ('look', 'weighed') "
    "WHERE p.living GROUP BY p.id HAVING MAX(e.at) < '2026-03-10'"
)


def open_and_due():
    db = sqlite3.connect(file)
    db.execute(DUE).fetchall()
    db.close()


def open_and_read_all():
    db = sqlite3.connect(file)
    for _ in db.execute("SELECT piece, line FROM entry ORDER BY piece, n"):
        pass
    db.close()


print(f"{rows} rows, {os.path.getsize(file) // 1_000_000} MB")
print(f"open and ask what is due: {median(9, open_and_due):.1f}")
print(f"open and read every row, unparsed: {median(5, open_and_read_all):.0f}")
for mode in ("DELETE", "WAL"):
    db = fresh(mode)
    count = [1_000_000]

    def append():
        count[0] += 1
        line = '{"device":"years","n":1,"seq":1,"facts":[{"fact":"note","text":"Rim looks sound"}]}'
        db.execute("INSERT INTO entry VALUES ('m0', ?, '2026-03-12T09:00:00+00:00', 'note', ?)", (count[0], line))
        db.commit()

    print(f"append with sync, journal_mode={mode}: {median(50, append):.2f}")
    db.close()
for left in base.iterdir():
    left.unlink()
base.rmdir()
