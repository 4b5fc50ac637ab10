//! Calendar: events of a day as iCalendar (RFC 5545), and what an earlier file of ours held.
//!
//! Times are floating (RFC 5545, 3.3.5, form 1): nine in the morning is nine on the clock of wherever the calendar is
//! shown, on both sides of a change to summer time. An event is known by its UID; one with a higher SEQUENCE replaces it
//! (3.8.7.4), and STATUS:CANCELLED takes it away (3.8.1.11).

use std::collections::BTreeMap;
use std::str::FromStr;

use chrono::{DateTime, Duration, NaiveDateTime, Utc};
use icalendar::{
    Alarm, Calendar as ICalendar, CalendarDateTime, Component, DatePerhapsTime, Event as IEvent,
    EventLike, EventStatus, Property, Trigger,
};

/// The longest file that is read, bytes: a hundred thousand events.
pub const LARGEST: usize = 32 << 20;

/// How long an event takes, minutes: so that it has a height on the day.
const MINUTES: i64 = 15;

/// One event.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Event {
    /// Its name for all time.
    pub uid: String,
    /// When, local and floating.
    pub start: NaiveDateTime,
    /// One line.
    pub summary: String,
    /// More lines; may be empty.
    pub description: String,
    /// Counts up with every change.
    pub sequence: u32,
    /// It is taken away.
    pub cancelled: bool,
    /// It rings when it begins.
    pub rings: bool,
}

/// A calendar.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Calendar {
    /// Its name.
    pub name: String,
    /// When the file was made.
    pub made_at: DateTime<Utc>,
    /// Its events.
    pub events: Vec<Event>,
}

/// The calendar as the text of an `.ics` file.
#[must_use]
pub fn write(calendar: &Calendar) -> String {
    let mut file = ICalendar::empty();
    file.append_property(Property::new("VERSION", "2.0"));
    file.append_property(Property::new("PRODID", "-//Evenwall//Evenwall//EN"));
    file.append_property(Property::new("CALSCALE", "GREGORIAN"));
    file.append_property(Property::new("METHOD", "PUBLISH"));
    file.name(&calendar.name);
    file.ttl(&Duration::hours(1));
    for event in &calendar.events {
        file.push(written(event, calendar.made_at));
    }
    file.done().to_string()
}

fn written(event: &Event, made_at: DateTime<Utc>) -> IEvent {
    let mut out = IEvent::with_uid(&event.uid);
    out.timestamp(made_at)
        .starts(event.start)
        .ends(event.start + Duration::minutes(MINUTES))
        .summary(&event.summary)
        .sequence(event.sequence);
    // Free: it is no appointment.
    out.add_property("TRANSP", "TRANSPARENT");
    if !event.description.is_empty() {
        out.description(&event.description);
    }
    if event.cancelled {
        out.status(EventStatus::Cancelled);
    } else {
        out.status(EventStatus::Confirmed);
        if event.rings {
            out.alarm(Alarm::display(
                &event.summary,
                Trigger::after_start(Duration::zero()),
            ));
        }
    }
    out.done()
}

/// What an earlier file says of an event.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Earlier {
    /// When it was, local and floating.
    pub start: NaiveDateTime,
    /// Its line.
    pub summary: String,
    /// Its sequence.
    pub sequence: u32,
    /// It was taken away already.
    pub cancelled: bool,
}

/// The events of an earlier file of ours by their UID. What cannot be read is passed over: it only means that nothing is
/// cancelled.
#[must_use]
pub fn read(text: &str) -> BTreeMap<String, Earlier> {
    if text.len() > LARGEST {
        return BTreeMap::new();
    }
    let Ok(file) = ICalendar::from_str(text) else {
        return BTreeMap::new();
    };
    file.events()
        .filter_map(|event| {
            let uid = event.get_uid()?.to_owned();
            let start = match event.get_start()? {
                DatePerhapsTime::DateTime(CalendarDateTime::Floating(start)) => start,
                _ => return None,
            };
            let earlier = Earlier {
                start,
                summary: event.get_summary().unwrap_or_default().to_owned(),
                sequence: event.get_sequence().unwrap_or(0),
                cancelled: event.get_status() == Some(EventStatus::Cancelled),
            };
            Some((uid, earlier))
        })
        .collect()
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;
    use chrono::NaiveDate;

    fn event(uid: &str, day: u32, summary: &str) -> Event {
        Event {
            uid: uid.into(),
            start: NaiveDate::from_ymd_opt(2026, 3, day)
                .unwrap()
                .and_hms_opt(9, 0, 0)
                .unwrap(),
            summary: summary.into(),
            description: String::new(),
            sequence: 3,
            cancelled: false,
            rings: true,
        }
    }

    fn calendar(events: Vec<Event>) -> Calendar {
        Calendar {
            name: "Evenwall".into(),
            made_at: DateTime::from_timestamp(1_773_000_000, 0).unwrap(),
            events,
        }
    }

    #[test]
    fn times_are_floating_and_lines_are_folded_and_end_as_the_rfc_says() {
        let long = "K07, elm: feel the bag; ".repeat(12);
        let text = write(&calendar(vec![event("k07-look@evenwall", 29, &long)]));
        assert!(text.contains("DTSTART:20260329T090000\r\n"), "{text}");
        assert!(
            !text.contains("TZID") && !text.contains("090000Z"),
            "{text}"
        );
        for line in text.split("\r\n") {
            assert!(line.len() <= 75, "{line}");
            assert!(!line.contains('\n'));
        }
        assert!(text.starts_with("BEGIN:VCALENDAR\r\n") && text.ends_with("END:VCALENDAR\r\n"));
        assert_eq!(text.matches("BEGIN:VALARM").count(), 1);
    }

    #[test]
    fn what_was_written_is_read_again_whatever_its_letters() {
        let summary = "K07, \u{e4}sh; \"spalted\" \\ and\nmore \u{1f333}".repeat(4);
        let gone = Event {
            cancelled: true,
            ..event("gone@evenwall", 2, "x")
        };
        let text = write(&calendar(vec![
            event("k07-look@evenwall", 1, &summary),
            gone,
        ]));
        let read = read(&text);
        assert_eq!(read.len(), 2);
        assert_eq!(read["k07-look@evenwall"].summary, summary);
        assert_eq!(read["k07-look@evenwall"].sequence, 3);
        assert!(read["gone@evenwall"].cancelled && !read["k07-look@evenwall"].cancelled);
        assert_eq!(
            text.matches("BEGIN:VALARM").count(),
            1,
            "what is cancelled does not ring"
        );
    }

    #[test]
    fn rubbish_cancels_nothing_and_never_panics() {
        for text in [
            "",
            "rubbish",
            "BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\n",
            "BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n",
        ] {
            assert!(read(text).is_empty(), "{text}");
        }
        let foreign = "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nBEGIN:VEVENT\r\nUID:a\r\nDTSTART;VALUE=DATE:20260301\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n";
        assert!(read(foreign).is_empty(), "a whole-day event is not ours");
    }
}
