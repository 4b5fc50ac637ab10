//! Row: one task as a row of a list.

use chrono::Datelike;
use evenwall_piece::agenda::{Bench, Task, TaskKind, Urgency, Why};
use evenwall_piece::detail::DetailField;
use evenwall_piece::piece::Piece;
use evenwall_piece::stage::Stage;
use evenwall_piece::weights::last_weighing;

use super::view::{ButtonView, RowView, Shape};
use crate::app::App;
use crate::words::dates::weekday_short;

/// What a list leaves out of its rows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Manner {
    /// Nothing is called late: after days away or a silence.
    pub mild: bool,
}

/// The id of a task's row within a group.
pub(super) fn row_id(group: &str, task: &Task) -> String {
    let kind = match &task.kind {
        TaskKind::Look => "look".to_owned(),
        TaskKind::LookOver => "over".to_owned(),
        TaskKind::Weigh => "weigh".to_owned(),
        TaskKind::FlawLook(flaw) => format!("flaw-{flaw}"),
        TaskKind::HalfTurned(_) => "lathe".to_owned(),
        TaskKind::OfferStage(stage) => format!("offer-{}", stage.key()),
        TaskKind::RenameMark => "rename".to_owned(),
        TaskKind::Find => "find".to_owned(),
        TaskKind::CameBack => "back".to_owned(),
    };
    format!("{group}/{kind}/{}", task.piece)
}

/// Group, kind and piece of a row's id.
pub(super) fn parts(row: &str) -> Option<(&str, &str, evenwall_piece::ids::PieceId)> {
    let mut parts = row.splitn(3, '/');
    let (group, kind, piece) = (parts.next()?, parts.next()?, parts.next()?);
    Some((group, kind, evenwall_piece::ids::PieceId::new(piece).ok()?))
}

impl App {
    /// The row of a task that is due.
    pub(super) fn task_row(
        &self,
        group: &str,
        task: &Task,
        manner: Manner,
        bench: &Bench<'_>,
    ) -> Option<RowView> {
        let piece = self.piece(&task.piece)?;
        let words = self.words();
        let dates = self.dates(bench.now);
        let mark = self.mark_of(&piece.id);
        let wood = self.wood_of(piece);
        let late = task.is_late() && !manner.mild;
        let tag = match task.urgency {
            Urgency::WhenYouLike if late => words.text("today-when-you-like"),
            _ if late => dates.due(task.due),
            _ => String::new(),
        };
        let remark = task.dated_ahead.map_or_else(String::new, |day| {
            words.with("today-dated-ahead", &[("day", dates.near(day).into())])
        });
        let button = |key: &str, icon: &'static str| {
            let text = words.text(&format!("today-button-{key}"));
            ButtonView {
                key: key.to_owned(),
                label: words.with(
                    "today-button-label",
                    &[
                        ("button", text.as_str().into()),
                        ("mark", mark.as_str().into()),
                    ],
                ),
                text,
                icon,
            }
        };
        let none = ButtonView::default;
        let (first, second) = match task.kind {
            TaskKind::Look | TaskKind::FlawLook(_) => (none(), none()),
            TaskKind::LookOver => (button("looked", ""), none()),
            TaskKind::Weigh => (button("weigh", "scale"), none()),
            TaskKind::HalfTurned(_) => (button("resume", ""), none()),
            TaskKind::OfferStage(stage) => {
                let mut offer = button("move", "");
                offer.text = self.offer_words(stage);
                offer.label = words.with(
                    "today-button-label",
                    &[
                        ("button", offer.text.as_str().into()),
                        ("mark", mark.as_str().into()),
                    ],
                );
                (offer, none())
            }
            TaskKind::RenameMark => (button("rename", ""), none()),
            TaskKind::Find => (button("found", ""), none()),
            TaskKind::CameBack => (button("keep", ""), button("delete", "")),
        };
        let wide = matches!(task.kind, TaskKind::OfferStage(_) | TaskKind::CameBack);
        Some(RowView {
            id: row_id(group, task),
            shape: Shape::Row,
            label: words.with(
                "today-row-label",
                &[
                    ("mark", mark.as_str().into()),
                    ("wood", wood.as_str().into()),
                ],
            ),
            note: self.task_note(piece, task, bench),
            remark,
            tag,
            late: late && task.urgency == Urgency::Serious,
            button: first,
            second,
            wide_buttons: wide,
            mark,
            wood,
            ..RowView::default()
        })
    }

    /// What a task asks for and where its piece stands.
    fn task_note(&self, piece: &Piece, task: &Task, bench: &Bench<'_>) -> String {
        let words = self.words();
        let dates = self.dates(bench.now);
        match &task.kind {
            TaskKind::Look | TaskKind::LookOver => {
                let place = piece.details.text(DetailField::Place).unwrap_or("").trim();
                let stands = self.whereabouts(piece, bench.now);
                if place.is_empty() {
                    stands
                } else {
                    words.with(
                        "today-stands-at",
                        &[("stands", stands.into()), ("place", place.into())],
                    )
                }
            }
            TaskKind::Weigh => self.weighed_last(piece, bench),
            TaskKind::FlawLook(flaw) => piece.flaw(flaw).map_or_else(String::new, |f| {
                words.with("today-flaw-again", &[("flaw", self.flaw_place(f).into())])
            }),
            TaskKind::HalfTurned(_) => task.last.map_or_else(String::new, |day| {
                words.with("today-half-turned", &[("ago", dates.ago(day).into())])
            }),
            TaskKind::OfferStage(_) => self.offer_why(&task.why),
            TaskKind::RenameMark => match &task.why {
                Why::SameMarkAs(other) => {
                    let wood = self.piece(other).map(|p| self.wood_of(p));
                    match wood.filter(|w| !w.is_empty()) {
                        Some(wood) => words.with("today-same-mark-as", &[("wood", wood.into())]),
                        None => words.text("today-same-mark"),
                    }
                }
                _ => words.text("today-same-mark"),
            },
            TaskKind::Find => match task.why {
                Why::NotFoundOn(day) => {
                    words.with("today-not-found", &[("ago", dates.ago(day).into())])
                }
                _ => words.text("state-not-found"),
            },
            TaskKind::CameBack => words.text("state-came-back"),
        }
    }

    /// "Last 828 g, 7 days ago", or that it was never weighed.
    pub(super) fn weighed_last(&self, piece: &Piece, bench: &Bench<'_>) -> String {
        let words = self.words();
        match last_weighing(piece, bench.now) {
            None => words.text("today-never-weighed"),
            Some(w) => {
                let step = self.shop().scale_step_at(w.at);
                let weight = self.numbers().mass_by_scale(w.net_g(), step).text();
                let ago = self.dates(bench.now).ago(w.at.date_naive());
                words.with(
                    "today-weighed-last",
                    &[("weight", weight.into()), ("ago", ago.into())],
                )
            }
        }
    }

    /// What moving to an offered stage means, for its button.
    pub(super) fn offer_words(&self, stage: Stage) -> String {
        let words = self.words();
        match stage {
            Stage::Bag => words.text("today-offer-bag"),
            Stage::Air => words.text("today-offer-air"),
            Stage::Settle => words.text("today-offer-settle"),
            Stage::Indoors => words.text("today-offer-indoors"),
            Stage::True => words.text("today-offer-true"),
            other => {
                let name = words.text(&format!("stage-{}", other.key()));
                words.with("today-offer-other", &[("stage", name.into())])
            }
        }
    }

    fn offer_why(&self, why: &Why) -> String {
        let words = self.words();
        match why {
            Why::NothingTwice => words.text("today-why-nothing-twice"),
            Why::DampAgain => words.text("today-why-damp-again"),
            Why::DaysRun {
                days,
                weighed,
                thick_floor,
            } => {
                let n = [("n", (*days).into())];
                match (weighed, thick_floor) {
                    (true, _) => words.with("today-why-days-steady", &n),
                    (false, true) => words.with("today-why-days-thick", &n),
                    (false, false) => words.with("today-why-days", &n),
                }
            }
            Why::StayedPut { days } => words.with("today-why-stayed-put", &[("n", (*days).into())]),
            Why::Foretold { weighings } => {
                words.with("today-why-foretold", &[("n", (*weighings).into())])
            }
            Why::Stuck { days } => words.with("today-why-stuck", &[("n", (*days).into())]),
            _ => String::new(),
        }
    }

    /// The row of a task on a later day.
    pub(super) fn coming_row(&self, task: &Task, bench: &Bench<'_>) -> Option<RowView> {
        let piece = self.piece(&task.piece)?;
        let words = self.words();
        let mark = self.mark_of(&piece.id);
        let wood = self.wood_of(piece);
        let far = task.due.signed_duration_since(bench.today).num_days() > 20;
        let dates = self.dates(bench.now);
        let kind = self.kind_words(&task.kind);
        Some(RowView {
            id: row_id("coming", task),
            shape: Shape::Coming,
            label: words.with(
                "today-coming-label",
                &[
                    ("mark", mark.as_str().into()),
                    ("what", kind.as_str().into()),
                    ("day", dates.near(task.due).into()),
                ],
            ),
            weekday: if far {
                crate::words::dates::month_short(words, task.due.month())
            } else {
                weekday_short(words, task.due.weekday())
            },
            day: task.due.day().to_string(),
            tag: kind,
            mark,
            wood,
            ..RowView::default()
        })
    }

    /// What a task is called in a list: "Bag check", "Weigh".
    pub(crate) fn kind_words(&self, kind: &TaskKind) -> String {
        let words = self.words();
        match kind {
            TaskKind::Look => words.text("today-kind-look"),
            TaskKind::LookOver => words.text("today-kind-look-over"),
            TaskKind::Weigh => words.text("today-kind-weigh"),
            TaskKind::FlawLook(_) => words.text("today-kind-flaw"),
            TaskKind::HalfTurned(_) => words.text("today-kind-lathe"),
            TaskKind::OfferStage(stage) => self.offer_words(*stage),
            TaskKind::RenameMark => words.text("today-kind-rename"),
            TaskKind::Find => words.text("today-kind-find"),
            TaskKind::CameBack => words.text("today-kind-came-back"),
        }
    }
}
