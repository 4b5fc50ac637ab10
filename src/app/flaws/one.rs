//! One: the page of one flaw: a new one, or one with all that was done and seen.

use evenwall_piece::fact::PieceFact;
use evenwall_piece::photo::PhotoOn;
use evenwall_piece::piece::{Flaw, FlawEvent, Moment, Piece};
use evenwall_piece::vocabulary::{FlawChange, Treatment};

use super::Mode;
use super::form_parts::{FormView, OptionView, TypedView};
use super::list::{ClockSpot, small_face};
use super::telling::letter_of;
use crate::app::App;
use crate::numbers::Quantity;
use crate::photos::PhotoSection;
use crate::piece::view::HeadView;
use crate::route::Page;
use crate::words::dates::Dates;

/// A line of the history.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HistoryRow {
    /// "Wed 11 Mar".
    pub day: String,
    /// What happened.
    pub text: String,
    /// More about it; may be empty.
    pub note: String,
}

/// A flaw that was noted before.
#[derive(Debug, Clone, PartialEq)]
pub struct SeenView {
    /// Its letter.
    pub letter: String,
    /// Still to decide.
    pub open: bool,
    /// Where round the piece.
    pub clock: Vec<ClockSpot>,
    /// How it stands: one line each.
    pub lines: Vec<String>,
    /// Both faces, in a tag; empty where there is nothing to say.
    pub tag: String,
    /// Own words.
    pub note: String,
    /// Heads the answers of a look.
    pub look_title: String,
    /// Same, longer, gone.
    pub looks: Vec<OptionView>,
    /// "12, then 15, then 22 mm"; empty under two lengths.
    pub lengths: String,
    /// Its photos.
    pub photos: PhotoSection,
    /// Heads the history.
    pub history_title: String,
    /// What happened, the newest first.
    pub history: Vec<HistoryRow>,
    /// The button below: treat it, or treat it again.
    pub treat: String,
    /// Corrects what was noted.
    pub correct: String,
    /// Takes it back; empty where it cannot be taken back by itself.
    pub take_back: String,
}

/// The sheet that asks for the new length.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LongerView {
    /// Its title.
    pub title: String,
    /// The length.
    pub size: TypedView,
    /// Its button.
    pub save: String,
    /// The word for closing.
    pub close: String,
}

/// The page of a flaw: a form, a flaw, or what is said where it is gone.
#[derive(Debug, Clone, PartialEq)]
pub struct FlawView {
    /// The head.
    pub head: HeadView,
    /// What is filled in.
    pub form: Option<FormView>,
    /// What was noted.
    pub seen: Option<SeenView>,
    /// The sheet over it.
    pub longer: Option<LongerView>,
    /// The flaw was taken back: title and text.
    pub gone: Option<(String, String)>,
}

impl App {
    /// The page of a flaw; `None` where the piece is gone.
    #[must_use]
    pub fn flaw_view(&self, now: Moment) -> Option<FlawView> {
        let piece = self.flaws_piece()?;
        let words = self.words();
        let Some(Page::Flaw(_, id)) = self.route().page() else {
            return None;
        };
        let mode = self.states.flaws.mode;
        let mut view = FlawView {
            head: self.inner_head(piece, "flaws-new-title"),
            form: None,
            seen: None,
            longer: None,
            gone: None,
        };
        let Some(id) = id else {
            view.form = Some(self.flaw_form_view(piece, None, Mode::See));
            return Some(view);
        };
        let Some(flaw) = piece.flaw(id) else {
            view.head.title = words.text("flaws-title");
            view.gone = Some((
                words.text("flaws-gone-title"),
                words.text("flaws-gone-text"),
            ));
            return Some(view);
        };
        view.head.title = self.flaw_title(flaw);
        view.head.subtitle = self.flaw_where(flaw);
        match mode {
            Mode::See => {
                view.seen = Some(self.seen_view(piece, flaw, now));
                view.longer = self.states.flaws.longer.as_ref().map(|field| LongerView {
                    title: words.text("flaws-longer-title"),
                    size: TypedView::of(field, words.text("flaws-longer-size")).in_unit(
                        self.numbers()
                            .quantity(Quantity::FlawSize, Quantity::FlawSize.range().example)
                            .unit,
                    ),
                    save: words.text("flaws-longer-save"),
                    close: words.text("action-close"),
                });
            }
            mode => view.form = Some(self.flaw_form_view(piece, Some(&flaw.note), mode)),
        }
        Some(view)
    }

    fn seen_view(&self, piece: &Piece, flaw: &Flaw, now: Moment) -> SeenView {
        let words = self.words();
        let open = !flaw.decided() && !flaw.gone();
        let mut lines = vec![
            self.flaw_told(flaw, now),
            self.flaw_with_what(flaw),
            self.flaw_last_look(flaw, now),
        ];
        if open {
            let advice = self.glue_advice(piece, &flaw.note, None);
            let grade = words.text(&format!("treatment-{}", advice.grade.key()));
            lines.push(words.with(
                "flaws-suggested",
                &[("grade", grade.into()), ("why", advice.why.into())],
            ));
            lines.push(words.text("flaws-left-sound-line"));
        }
        let glued_today = flaw
            .last_treatment()
            .is_some_and(|(at, t)| t.treatment.is_glue() && at.date_naive() == now.date_naive());
        if glued_today && !flaw.gone() {
            lines.push(words.text("flaws-wait"));
        }
        lines.retain(|l| !l.is_empty());
        SeenView {
            letter: letter_of(piece, flaw),
            open,
            clock: small_face(piece, flaw),
            lines,
            tag: self.flaw_faces(flaw),
            note: flaw.note.note.clone(),
            look_title: words.text("flaws-look-title"),
            looks: FlawChange::ALL
                .iter()
                .map(|c| OptionView {
                    key: c.key(),
                    text: self.change_word(*c),
                    note: String::new(),
                    selected: false,
                })
                .collect(),
            lengths: self.lengths(flaw),
            photos: self.photos_section(&piece.id, &PhotoOn::Flaw(flaw.note.flaw.clone()), now),
            history_title: words.text("flaws-history"),
            history: self.history(flaw, now),
            treat: words.text(if flaw.decided() {
                "flaws-treat-again"
            } else {
                "flaws-decide"
            }),
            correct: words.text("flaws-correct"),
            take_back: if stands_alone(piece, flaw) {
                words.text("flaws-take-back")
            } else {
                String::new()
            },
        }
    }

    /// All lengths in the order in which they were measured.
    fn lengths(&self, flaw: &Flaw) -> String {
        let looked = flaw.events.iter().filter_map(|e| match e {
            FlawEvent::Looked { size_mm, .. } => size_mm.as_ref(),
            FlawEvent::Treated { .. } => None,
        });
        let all: Vec<_> = flaw.note.size_mm.iter().chain(looked).collect();
        if all.len() < 2 {
            return String::new();
        }
        let numbers = self.numbers();
        let last = all.len() - 1;
        let parts: Vec<String> = all
            .iter()
            .enumerate()
            .map(|(i, m)| {
                let shown = numbers.quantity(Quantity::FlawSize, m.value);
                if i == last {
                    shown.text()
                } else {
                    shown.number
                }
            })
            .collect();
        let then = self.words().text("flaws-lengths-then");
        self.words().with(
            "flaws-lengths",
            &[("all", parts.join(&format!(", {then} ")).into())],
        )
    }

    fn history(&self, flaw: &Flaw, now: Moment) -> Vec<HistoryRow> {
        let words = self.words();
        let dates = Dates::new(words, now.date_naive());
        let size = |m: &evenwall_piece::fact::Measure| self.length_text(m);
        let mut rows = vec![HistoryRow {
            day: dates.day_and_month(flaw.found_at.date_naive()),
            text: words.with(
                "flaws-history-found",
                &[(
                    "stage",
                    words.text(&format!("stage-{}", flaw.found_in.key())).into(),
                )],
            ),
            note: flaw.note.size_mm.as_ref().map_or_else(String::new, size),
        }];
        rows.extend(flaw.events.iter().map(|event| {
            match event {
                FlawEvent::Treated { at, treated } => {
                    let mut notes = Vec::new();
                    if let Some(face) = treated.face {
                        notes.push(words.text(&format!("face-{}", face.key())));
                    }
                    if let Some(goes) = treated
                        .goes
                        .filter(|_| treated.treatment != Treatment::Left)
                    {
                        notes.push(words.with("flaws-goes", &[("n", goes.into())]));
                    }
                    if let Some(day) = treated.look_again {
                        notes.push(words.with(
                            "flaws-history-again",
                            &[("day", dates.day_and_month(day).into())],
                        ));
                    }
                    HistoryRow {
                        day: dates.day_and_month(at.date_naive()),
                        text: words.text(&format!("treatment-{}", treated.treatment.key())),
                        note: notes.join(", "),
                    }
                }
                FlawEvent::Looked {
                    at,
                    change,
                    size_mm,
                    look_again,
                } => HistoryRow {
                    day: dates.day_and_month(at.date_naive()),
                    text: words.with(
                        "flaws-history-looked",
                        &[("found", self.found_word(*change).into())],
                    ),
                    note: size_mm
                        .as_ref()
                        .map(size)
                        .into_iter()
                        .chain(look_again.map(|day| {
                            let day = dates.day_and_month(day).into();
                            words.with("flaws-history-again", &[("day", day)])
                        }))
                        .collect::<Vec<_>>()
                        .join(", "),
                },
            }
        }));
        rows.reverse();
        rows
    }
}

/// True where the line that noted a flaw holds nothing else, so that it can be taken back by itself.
fn stands_alone(piece: &Piece, flaw: &Flaw) -> bool {
    piece
        .diary
        .iter()
        .filter(|e| e.entry.line == flaw.entry.line)
        .all(|e| match &e.fact {
            PieceFact::FlawFound(note) => note.flaw == flaw.note.flaw,
            PieceFact::FlawTreated(t) => t.flaw == flaw.note.flaw,
            PieceFact::FlawLooked { flaw: other, .. } => *other == flaw.note.flaw,
            PieceFact::MassChanged(_) => true,
            _ => false,
        })
}
