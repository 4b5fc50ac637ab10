//! Page: Today put together: header, rounds, what is due, coming, ready and unseen.

use std::collections::HashSet;

use chrono::{Datelike, NaiveDate};
use evenwall_piece::agenda::{Agenda, Bench, Task, Unseen, agenda};
use evenwall_piece::away::{catch_up, on_return};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::round::{WeighWhich, bag_round, weigh_round};

use super::list::Group;
use super::view::{ButtonView, ListView, NothingView, NoticeView, RowView, Shape, TodayView};
use crate::app::App;
use crate::words::dates::{month_long, weekday_long};

/// The most rows of a group that are shown before "show all".
const MOST_DUE: usize = 12;
const MOST_COMING: usize = 6;
const MOST_READY: usize = 6;
const MOST_UNSEEN: usize = 3;
/// Fewer days than these are no long time without a look.
const UNSEEN_FROM_DAYS: i64 = 7;
/// Fewer pieces than these are no round.
const LEAST_ROUND: usize = 2;

impl App {
    /// Today.
    #[must_use]
    pub fn today_view(&self, now: Moment) -> TodayView {
        let pieces: Vec<&Piece> = self.pieces().collect();
        let mut view = self.with_bench(now, |bench| self.today_at(&pieces, bench));
        view.list = self.drawn(view.list);
        view
    }

    /// The list of Today without drawings: its rows and their order.
    pub(super) fn today_list(&self, now: Moment) -> ListView {
        let pieces: Vec<&Piece> = self.pieces().collect();
        self.with_bench(now, |bench| {
            let agenda = agenda(&pieces, bench);
            self.listed(self.today_groups(&agenda, bench), bench)
        })
    }

    fn today_at(&self, pieces: &[&Piece], bench: &Bench<'_>) -> TodayView {
        let words = self.words();
        let agenda = agenda(pieces, bench);
        let none_at_all = pieces.is_empty();
        let due = agenda.overdue.len() + agenda.today.len();
        let list = self.listed(self.today_groups(&agenda, bench), bench);
        TodayView {
            title: words.text("today-title"),
            date: self.date_in_full(bench.today),
            climate: self.climate_chip(bench.now),
            notice: self.notice(&agenda, bench),
            rounds: if due == 0 {
                Vec::new()
            } else {
                self.rounds(pieces, bench)
            },
            list,
            first_time: none_at_all.then(|| NothingView {
                title: words.text("today-first-title"),
                text: words.text("today-first-text"),
                action: words.text("today-first-action"),
            }),
            nothing_due: if due > 0 || none_at_all {
                String::new()
            } else {
                self.nothing_due(&agenda, bench)
            },
            away: if none_at_all {
                String::new()
            } else {
                words.text("today-away")
            },
        }
    }

    /// "Thursday 12 March".
    fn date_in_full(&self, day: NaiveDate) -> String {
        let words = self.words();
        words.with(
            "today-date",
            &[
                ("weekday", weekday_long(words, day.weekday()).into()),
                ("day", day.day().into()),
                ("month", month_long(words, day.month()).into()),
            ],
        )
    }

    fn today_groups(&self, agenda: &Agenda, bench: &Bench<'_>) -> Vec<Group> {
        let words = self.words();
        let head = |key: &str, title: &str, count: usize, late: bool| RowView {
            id: format!("{key}/head/{key}"),
            shape: Shape::Head,
            mark: words.text(title),
            tag: if count == 0 {
                String::new()
            } else {
                count.to_string()
            },
            late,
            ..RowView::default()
        };
        let coming = agenda
            .coming
            .iter()
            .filter_map(|t| self.coming_row(t, bench))
            .collect();
        // What is due stands above already.
        let due: HashSet<&PieceId> = Self::due_tasks(agenda).map(|t| &t.piece).collect();
        let unseen = agenda
            .longest_without_look
            .iter()
            .filter(|u| u.days >= UNSEEN_FROM_DAYS && !due.contains(&u.piece))
            .filter_map(|u| self.unseen_row(u))
            .collect();
        let due = |key, title, tasks: &[Task], most, late| {
            let head = head(key, title, tasks.len(), late);
            self.due_group(key, head, tasks, most, bench)
        };
        let other = |key, title, count, rows, most| {
            Group::of(key, Some(head(key, title, count, false)), rows, most)
        };
        let ready = &agenda.probably_ready;
        let late = &agenda.overdue;
        vec![
            due("overdue", "today-overdue", late, MOST_DUE, true),
            due("today", "today-due", &agenda.today, MOST_DUE, false),
            due("ready", "today-probably-ready", ready, MOST_READY, false),
            other(
                "coming",
                "today-coming",
                agenda.coming.len(),
                coming,
                MOST_COMING,
            ),
            other("unseen", "today-longest-unlooked", 0, unseen, MOST_UNSEEN),
        ]
    }

    fn unseen_row(&self, unseen: &Unseen) -> Option<RowView> {
        let piece = self.piece(&unseen.piece)?;
        let words = self.words();
        let (mark, wood) = (self.mark_of(&piece.id), self.wood_of(piece));
        let days = words.with("date-days", &[("n", unseen.days.into())]);
        Some(RowView {
            id: format!("unseen/unseen/{}", piece.id),
            shape: Shape::Coming,
            label: words.with(
                "today-unseen-label",
                &[
                    ("mark", mark.as_str().into()),
                    ("days", days.as_str().into()),
                ],
            ),
            tag: days,
            mark,
            wood,
            ..RowView::default()
        })
    }

    /// The rounds that have several things to do, at least one of them by today.
    fn rounds(&self, pieces: &[&Piece], bench: &Bench<'_>) -> Vec<ButtonView> {
        let words = self.words();
        let round = |key: &str, icon, text: String| ButtonView {
            key: key.to_owned(),
            label: text.clone(),
            text,
            icon,
        };
        let mut rounds = Vec::new();
        let bags = bag_round(pieces, bench).bags;
        if bags.len() >= LEAST_ROUND && bags.iter().any(|b| b.look.due <= bench.today) {
            let text = words.with("today-bag-round-n", &[("n", bags.len().into())]);
            rounds.push(round("bag-round", "bag-closed", text));
        }
        let weighings = weigh_round(pieces, bench, WeighWhich::Due);
        let due = |day: Option<NaiveDate>| day.is_some_and(|d| d <= bench.today);
        if weighings.len() >= LEAST_ROUND && weighings.iter().any(|w| due(w.due)) {
            let text = words.with("today-weigh-round-n", &[("n", weighings.len().into())]);
            rounds.push(round("weigh-round", "scale", text));
        }
        rounds
    }

    fn notice(&self, agenda: &Agenda, bench: &Bench<'_>) -> Option<NoticeView> {
        let words = self.words();
        let dates = self.dates(bench.now);
        if let Some(back) = self.back_day(bench.now)
            && back > bench.today
        {
            return Some(NoticeView {
                text: words.with("today-away-until", &[("day", dates.near(back).into())]),
                note: words.text("today-away-until-note"),
                action: words.text("today-away-open"),
                key: "away",
            });
        }
        if let Some(back) = on_return(agenda, bench) {
            let n = back.rows.len();
            return Some(NoticeView {
                text: words.text("today-back"),
                note: words.with("today-back-note", &[("n", n.into())]),
                action: words.text("today-back-open"),
                key: "away",
            });
        }
        let silence = catch_up(agenda)?;
        Some(NoticeView {
            text: words.text("today-catch-up"),
            note: words.with("today-catch-up-note", &[("n", silence.rows.len().into())]),
            action: words.text("today-catch-up-open"),
            key: "catch-up",
        })
    }

    /// "Nothing due. Next: B04, weigh, Sat 14."
    fn nothing_due(&self, agenda: &Agenda, bench: &Bench<'_>) -> String {
        let words = self.words();
        match &agenda.next {
            None => words.text("today-nothing-due"),
            Some(task) => words.with(
                "today-nothing-due-next",
                &[
                    ("mark", self.mark_of(&task.piece).into()),
                    ("what", self.kind_words(&task.kind).to_lowercase().into()),
                    ("day", self.dates(bench.now).near(task.due).into()),
                ],
            ),
        }
    }
}
