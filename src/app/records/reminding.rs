//! Reminding: what the computer says of its own accord: one summary of what is due, never at night, and once a day.
//!
//! | case | rule |
//! |---|---|
//! | at the start | everything that is due or overdue, in one summary |
//! | while it runs | again only where something fell due that was not said that day |
//! | in the quiet hours, in the demo, switched off | nothing; what fell due then is said afterwards |

use chrono::NaiveTime;
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;

use crate::app::App;

/// So many marks are named.
const MOST_NAMED: usize = 4;

/// What the computer says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reminder {
    /// Its first line.
    pub title: String,
    /// What is below it.
    pub text: String,
    /// The piece it is about, where it is about one.
    pub piece: Option<PieceId>,
}

/// True between two times of day, also over midnight. Two equal times leave no quiet hours.
fn within(time: NaiveTime, from: NaiveTime, until: NaiveTime) -> bool {
    if from <= until {
        from <= time && time < until
    } else {
        time >= from || time < until
    }
}

impl App {
    /// True where nothing may be said at this time of day.
    #[must_use]
    pub fn is_quiet(&self, now: Moment) -> bool {
        let read = |text: &str| NaiveTime::parse_from_str(text, "%H:%M").ok();
        let device = self.device();
        read(&device.quiet_from)
            .zip(read(&device.quiet_until))
            .is_some_and(|(from, until)| within(now.naive_local().time(), from, until))
    }

    /// What is to be said now; `None` where there is nothing new, or nothing may be said. What is given out is not said
    /// again that day.
    pub fn take_reminder(&mut self, now: Moment) -> Option<Reminder> {
        if !self.device().notify || self.is_demo() || self.is_quiet(now) {
            return None;
        }
        let due = self.due(now, 0);
        let rows = || due.overdue.iter().chain(&due.today);
        let today = now.date_naive();
        let told = &mut self.states.records.told;
        told.retain(|(_, day)| *day == today);
        let mut news = false;
        for row in rows() {
            news |= told.insert((format!("{} {}", row.piece, row.kind), today));
        }
        let first = rows().next().filter(|_| news)?;
        let words = self.words();
        let n = rows().count();
        let title = if n == 1 {
            words.with(
                "out-remind-one",
                &[
                    ("mark", first.mark.as_str().into()),
                    ("what", first.what.as_str().into()),
                ],
            )
        } else {
            let late = due.overdue.len();
            words.with("out-remind", &[("n", n.into()), ("late", late.into())])
        };
        let text = if n == 1 {
            first.stands.clone()
        } else {
            let named: Vec<String> = rows()
                .take(MOST_NAMED)
                .map(|r| format!("{}: {}", r.mark, r.what))
                .collect();
            let mut lines = named;
            if n > MOST_NAMED {
                lines.push(words.with("out-remind-more", &[("n", (n - MOST_NAMED).into())]));
            }
            lines.join("\n")
        };
        let piece = (n == 1).then(|| PieceId::new(&first.piece).ok()).flatten();
        Some(Reminder { title, text, piece })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quiet_hours_may_run_over_midnight_and_may_be_none() {
        let at = |h, m| NaiveTime::from_hms_opt(h, m, 0).unwrap_or_default();
        assert!(within(at(23, 0), at(21, 0), at(8, 0)));
        assert!(within(at(7, 59), at(21, 0), at(8, 0)));
        assert!(!within(at(8, 0), at(21, 0), at(8, 0)));
        assert!(within(at(12, 30), at(12, 0), at(13, 0)));
        assert!(!within(at(9, 0), at(9, 0), at(9, 0)));
    }
}
