//! Climate log page: which file, what was found in it, what is left open, and what would be kept.

use evenwall_piece::climate_log::{ClimateLog, DateOrder, LogError, LogReading, Per, Unit};
use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::Room;

use super::climate_log::{LogDraft, LogTold, MOST_KEPT};
use super::form::FormOf;
use super::view::{RowKind, RowView, SectionView, ShopView};
use super::{LOG_PAGE, ShopAction};
use crate::action::Action;
use crate::app::App;
use crate::route::Page;

/// Faults that are listed; the others are counted.
const FAULTS_SHOWN: usize = 20;

impl App {
    /// The row that leads here from the climate.
    pub(super) fn log_row(&self) -> SectionView {
        let words = self.words();
        let row = RowView::touching(
            RowKind::Open,
            "log",
            words.text("log-open"),
            Action::Open(Page::ShopPage(LOG_PAGE)),
        )
        .icon("import")
        .note(words.text("log-open-note"));
        SectionView {
            key: "log",
            rows: vec![row],
            ..SectionView::default()
        }
    }

    fn log_section(&self, key: &'static str, title: &str, rows: Vec<RowView>) -> SectionView {
        SectionView {
            key,
            title: self.words().text(title),
            rows,
            ..SectionView::default()
        }
    }

    /// Which file.
    fn log_choosing(&self, now: Moment) -> ShopView {
        let words = self.words();
        let listed = self.files.as_ref().map(|f| f.listed()).unwrap_or_default();
        let rows = listed.into_iter().enumerate().map(|(place, file)| {
            let written = file.written.map(|at| self.time_in_words(at, now));
            let note = match written {
                Some(when) => words.with(
                    "log-file-note",
                    &[("folder", file.folder.into()), ("when", when.into())],
                ),
                None => file.folder,
            };
            RowView::touching(
                RowKind::Open,
                format!("file-{place}"),
                file.name,
                ShopAction::LogFile(file.path),
            )
            .icon("list")
            .note(note)
        });
        let mut rows: Vec<RowView> = rows.collect();
        if rows.is_empty() {
            rows.push(RowView::text("none", words.text("log-none-found")));
        }
        rows.push(RowView::touching(
            RowKind::Add,
            "path",
            words.text("log-elsewhere"),
            ShopAction::Form(FormOf::LogPath),
        ));
        ShopView {
            title: words.text("log-title"),
            intro: words.text("log-intro"),
            sections: vec![self.log_section("files", "log-files", rows)],
            ..ShopView::default()
        }
    }

    fn log_told_row(&self, id: &str, told: LogTold, chosen: bool) -> RowView {
        RowView::touching(
            RowKind::Radio,
            id,
            self.words().text(id),
            ShopAction::LogTold(told),
        )
        .selected(chosen)
    }

    fn log_order_section(&self, draft: &LogDraft, note: String) -> SectionView {
        let order = draft
            .read
            .as_ref()
            .map_or(draft.told.order, |log| log.order);
        let row = |id, which| self.log_told_row(id, LogTold::Order(which), order == Some(which));
        SectionView {
            note,
            ..self.log_section(
                "order",
                "log-order",
                vec![
                    row("log-day-first", DateOrder::DayFirst),
                    row("log-month-first", DateOrder::MonthFirst),
                ],
            )
        }
    }

    fn log_file_section(&self, draft: &LogDraft, now: Moment) -> SectionView {
        let words = self.words();
        let plain =
            |id: &str, label: &str, value: String| RowView::plain(id, words.text(label), value);
        let mut rows = vec![plain("name", "log-file", draft.name.clone())];
        if let Ok(log) = &draft.read {
            rows.extend(self.log_found_rows(log, now));
        }
        rows.push(RowView::touching(
            RowKind::Add,
            "another",
            words.text("log-another"),
            ShopAction::LogForget,
        ));
        SectionView {
            key: "file",
            rows,
            ..SectionView::default()
        }
    }

    fn log_found_rows(&self, log: &ClimateLog, now: Moment) -> Vec<RowView> {
        let (words, numbers, dates) = (self.words(), self.numbers(), self.dates(now));
        let plain =
            |id: &str, label: &str, value: String| RowView::plain(id, words.text(label), value);
        let ends = |of: fn(&LogReading) -> f64| {
            let values = || log.readings.iter().map(of);
            (
                values().fold(f64::INFINITY, f64::min),
                values().fold(f64::NEG_INFINITY, f64::max),
            )
        };
        let day = |r: Option<&LogReading>| {
            r.map_or_else(String::new, |r| dates.day_and_month(r.at.date()))
        };
        let (cold, warm) = ends(|r| r.temp_c);
        let (dry, damp) = ends(|r| r.rh_pct);
        let temps = numbers.range(&numbers.temperature(cold), &numbers.temperature(warm));
        let rhs = numbers.range(&numbers.percent(dry), &numbers.percent(damp));
        let mut rows = vec![
            plain("readings", "log-readings", log.readings.len().to_string()),
            plain("from", "log-from", day(log.readings.first())),
            plain("to", "log-to", day(log.readings.last())),
            plain("temps", "shop-temperature", temps.text()),
            plain("rhs", "shop-humidity", rhs.text()),
        ];
        if log.faulty_lines > 0 {
            rows.push(plain("faulty", "log-faulty", log.faulty_lines.to_string()));
        }
        rows
    }

    /// What is left open about a file that could be read.
    fn log_asked(&self, draft: &LogDraft, log: &ClimateLog) -> Vec<SectionView> {
        let words = self.words();
        let rooms = [("log-in-shop", Room::Shop), ("log-in-house", Room::House)]
            .map(|(id, room)| self.log_told_row(id, LogTold::Room(room), draft.room == room));
        let units = [
            ("log-celsius", Unit::Celsius),
            ("log-fahrenheit", Unit::Fahrenheit),
        ]
        .map(|(id, unit)| self.log_told_row(id, LogTold::Unit(unit), log.unit == unit));
        let pers = [("log-per-day", Per::Day), ("log-per-hour", Per::Hour)]
            .into_iter()
            .map(|(id, per)| (id, per, draft.means(per).len()))
            .filter(|(_, per, n)| *per == Per::Day || *n <= MOST_KEPT)
            .map(|(id, per, n)| {
                self.log_told_row(id, LogTold::Per(per), draft.per == per)
                    .note(words.with("log-means", &[("n", n.into())]))
            })
            .collect();
        let mut sections = vec![self.log_section("room", "log-room", rooms.into())];
        // Asked where the file left it open; it stays, so that the answer can be put right.
        if draft.told.order.is_some() {
            sections.push(self.log_order_section(draft, String::new()));
        }
        sections.push(SectionView {
            note: if log.unit_assumed {
                words.text("log-unit-assumed")
            } else {
                String::new()
            },
            ..self.log_section("unit", "log-unit", units.into())
        });
        sections.push(self.log_section("per", "log-per", pers));
        sections
    }

    fn log_faults_section(&self, log: &ClimateLog) -> Option<SectionView> {
        let words = self.words();
        let shown = log.faults.iter().take(FAULTS_SHOWN);
        let mut rows: Vec<RowView> = shown
            .map(|f| RowView::text(format!("line-{}", f.line), self.line_fault_in_words(f)))
            .collect();
        let more = log.faulty_lines - rows.len().min(log.faulty_lines);
        if more > 0 {
            rows.push(RowView::text(
                "more",
                words.with("log-more-faults", &[("n", more.into())]),
            ));
        }
        (!rows.is_empty()).then(|| SectionView {
            note: words.text("log-faults-note"),
            ..self.log_section("faults", "log-faults", rows)
        })
    }

    /// A file was chosen.
    fn log_preview(&self, draft: &LogDraft, now: Moment) -> ShopView {
        let words = self.words();
        let mut sections = vec![self.log_file_section(draft, now)];
        let mut primary = None;
        match &draft.read {
            Err(error @ (LogError::OrderUnknown { .. } | LogError::OrdersMixed { .. })) => {
                sections.push(self.log_order_section(draft, self.log_error_in_words(error)));
            }
            Err(error) => sections.push(SectionView {
                key: "error",
                rows: vec![RowView::text("error", self.log_error_in_words(error))],
                ..SectionView::default()
            }),
            Ok(log) => {
                let keep = self.log_to_keep(draft, now);
                let mut told = Vec::new();
                let mut tell = |id: &str, n: usize| {
                    if n > 0 {
                        told.push(RowView::text(id, words.with(id, &[("n", n.into())])));
                    }
                };
                tell("log-there", keep.there);
                tell("log-unfinished", keep.unfinished);
                sections.extend(self.log_asked(draft, log));
                if !told.is_empty() {
                    sections.push(self.log_section("left-out", "log-left-out", told));
                }
                sections.extend(self.log_faults_section(log));
                if !keep.readings.is_empty() {
                    let n = keep.readings.len();
                    primary = Some(RowView::touching(
                        RowKind::Add,
                        "keep",
                        words.with("log-keep", &[("n", n.into())]),
                        ShopAction::LogKeep,
                    ));
                }
            }
        }
        ShopView {
            title: words.text("log-title"),
            sections,
            primary,
            ..ShopView::default()
        }
    }

    pub(super) fn log_page(&self, now: Moment) -> ShopView {
        match self.log_draft() {
            Some(draft) => self.log_preview(draft, now),
            None => self.log_choosing(now),
        }
    }
}
