//! True view: cracks first, then the oval and what can be left of the wall, the spigot, the decision.

use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Stage;
use evenwall_piece::truing::{DoNotSpin, do_not_spin, first_to_look_at};
use evenwall_piece::vocabulary::{CrackAnswer, TrueDecision};

use super::{OvalPart, PlaceRow, SheetView};
use crate::app::App;
use crate::flaws::OptionView;
use crate::piece::view::HeadView;
use crate::words::dates::Dates;

/// A crack, or what was glued, to be looked at first.
#[derive(Debug, Clone, PartialEq)]
pub struct CrackRow {
    /// The flaw's id.
    pub id: String,
    /// "Check, 22 mm, station 2, 1 o'clock".
    pub title: String,
    /// "Glued Wed 11 Mar, still a crack".
    pub note: String,
}

/// Something that is not known, and where to get it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LackRow {
    /// `wall` or `size`.
    pub key: &'static str,
    /// What is not known.
    pub title: String,
    /// What it would tell.
    pub note: String,
}

/// The page True.
#[derive(Debug, Clone, PartialEq)]
pub struct TrueView {
    /// The head.
    pub head: HeadView,
    /// The first question.
    pub crack_title: String,
    /// What to do before answering it.
    pub crack_note: String,
    /// What is looked at first.
    pub cracks: Vec<CrackRow>,
    /// The answers.
    pub answers: Vec<OptionView>,
    /// When it was answered; empty while it was not.
    pub answered: String,
    /// The button that notes a crack; empty where none was answered.
    pub note_crack: String,
    /// What speaks against spinning it; empty for nothing that was recorded.
    pub caution: String,
    /// Below it.
    pub caution_note: String,
    /// Heads the oval.
    pub oval_title: String,
    /// Longest: label, figure, unit.
    pub longest: (String, String, String),
    /// Shortest: label, figure, unit.
    pub shortest: (String, String, String),
    /// The button for another station, or more readings.
    pub more: String,
    /// The oval of one station: expected, and as measured.
    pub oval: Option<OvalPart>,
    /// Heads the stations; empty where there is no more than one.
    pub places_title: String,
    /// The stations with what is known of them; touching one draws it.
    pub places: Vec<PlaceRow>,
    /// How the piece moved against the table, a line each.
    pub moved: Vec<String>,
    /// What the sums rest on and what they leave out, a line each.
    pub notes: Vec<String>,
    /// What is not known and would tell more.
    pub lacks: Vec<LackRow>,
    /// Heads the spigot.
    pub spigot_title: String,
    /// What the spigot was to be expected to be now; empty once it is round again.
    pub spigot_expected: String,
    /// Label, figure, unit.
    pub spigot: (String, String, String),
    /// Whether it fits the jaws: `even` or `thin`, the words, and what is below.
    pub fits: Option<(&'static str, String, String)>,
    /// Heads the decision.
    pub decision_title: String,
    /// What the sums and the cracks speak for: `caution`, `even`, `neutral`, `thin`, and the words; empty for nothing to say.
    pub advice: (&'static str, String),
    /// Label and what was decided.
    pub decision: (String, String),
    /// When and why.
    pub decision_note: String,
    /// The sheet over the page.
    pub sheet: Option<SheetView>,
    /// The button below: words and icon; empty words for none.
    pub next: (String, &'static str),
    /// The stage's standing caution.
    pub stage_caution: String,
}

impl App {
    /// The page True; `None` where the piece is gone.
    #[must_use]
    pub fn true_view(&self, now: Moment) -> Option<TrueView> {
        let piece = self.truing_piece()?;
        let (words, numbers) = (self.words(), self.numbers());
        let dates = Dates::new(words, now.date_naive());
        let finish = &piece.finish;
        let answer = finish.cracks.as_ref().map(|(_, a)| *a);
        let against = do_not_spin(piece);
        let figure = |mm: Option<f64>| match mm {
            Some(mm) => {
                let shown = numbers.diameter_fine(mm).short();
                (shown.number, shown.unit)
            }
            None => (numbers.unknown().number, String::new()),
        };
        let row = |id: &str, mm: Option<f64>| {
            let (number, unit) = figure(mm);
            (words.text(id), number, unit)
        };
        let sums = self.truing_sums(piece);
        let widest = sums.places.iter().find(|p| p.place.widest);
        let span = widest
            .and_then(|p| p.place.measured.as_ref()?.span_mm())
            .unzip();
        let places = self.trueup_place_rows(&sums);
        let caution = match (&against, answer) {
            (Some(why), _) => self.spin_caution(why),
            (None, Some(CrackAnswer::Hairline)) => words.text("trueup-hairline"),
            (None, _) => String::new(),
        };
        Some(TrueView {
            head: self.inner_head(piece, "trueup-title"),
            crack_title: words.text("trueup-any-crack"),
            crack_note: words.text("trueup-crack-how"),
            cracks: first_to_look_at(piece)
                .into_iter()
                .map(|flaw| {
                    let told = self.flaw_told(flaw, now);
                    CrackRow {
                        id: flaw.note.flaw.to_string(),
                        title: self.flaw_place(flaw),
                        note: if told.is_empty() {
                            words.text("trueup-undecided")
                        } else {
                            told
                        },
                    }
                })
                .collect(),
            answers: CrackAnswer::ALL
                .iter()
                .map(|a| OptionView {
                    key: a.key(),
                    text: words.text(&format!("crack-answer-{}", a.key())),
                    note: words.text(&format!("trueup-answer-{}", a.key())),
                    selected: answer == Some(*a),
                })
                .collect(),
            answered: finish.cracks.as_ref().map_or_else(String::new, |(at, _)| {
                let day = dates.day_and_month(at.date_naive());
                words.with("trueup-answered", &[("day", day.into())])
            }),
            note_crack: match answer {
                Some(CrackAnswer::Hairline | CrackAnswer::RimOrFloor) => {
                    words.text("trueup-note-crack")
                }
                _ => String::new(),
            },
            caution_note: if against.is_some() {
                words.text("trueup-filling")
            } else {
                String::new()
            },
            caution,
            oval_title: words.text("trueup-oval"),
            longest: row("trueup-longest", span.0),
            shortest: row("trueup-shortest", span.1),
            more: words.text("trueup-more"),
            oval: self.trueup_oval_part(&sums),
            places_title: if places.is_empty() {
                String::new()
            } else {
                words.text("trueup-places")
            },
            places,
            moved: self.trueup_moved(piece, &sums),
            notes: self.truing_notes(piece, &sums),
            lacks: self.truing_lacks(&sums),
            spigot_title: words.text("part-spigot"),
            spigot: row(
                "trueup-spigot-label",
                finish.spigot_mm.as_ref().map(|m| m.value),
            ),
            spigot_expected: self.trueup_spigot_expected(piece, &sums),
            fits: finish
                .spigot_mm
                .as_ref()
                .map(|m| self.trueup_fits(piece, m.value)),
            advice: self.truing_advice(piece, &sums),
            decision_title: words.text("trueup-decision"),
            decision: (
                words.text("trueup-decision-label"),
                finish.decision.as_ref().map_or_else(
                    || words.text("trueup-not-decided"),
                    |(_, d, _)| words.text(&format!("true-decision-{}", d.key())),
                ),
            ),
            decision_note: finish
                .decision
                .as_ref()
                .map_or_else(String::new, |(at, _, reason)| {
                    let day = dates.day_and_month(at.date_naive());
                    if reason.is_empty() {
                        day
                    } else {
                        words.with(
                            "trueup-day-reason",
                            &[("day", day.into()), ("reason", reason.into())],
                        )
                    }
                }),
            sheet: self.truing_sheet_view(),
            next: self.truing_step(piece).map_or_else(
                || (String::new(), ""),
                |step| {
                    let icon = match step {
                        "oval" => "oval",
                        "finish" => "arrow-right",
                        "fill" => "list",
                        _ => "tick",
                    };
                    (words.text(&format!("trueup-next-{step}")), icon)
                },
            ),
            stage_caution: words.text("caution-true"),
        })
    }

    /// What the button below is for; `None` before the cracks were looked for, and once the piece is past True.
    pub(super) fn truing_step(&self, piece: &Piece) -> Option<&'static str> {
        if !piece.living() || piece.finish.cracks.is_none() {
            return None;
        }
        match (piece.finish.oval_measured(), &piece.finish.decision) {
            (_, Some((_, TrueDecision::Scrap, _))) => Some("scrap"),
            (_, Some((_, TrueDecision::Fill, _))) => Some("fill"),
            (false, _) => Some("oval"),
            (true, None) => Some("decide"),
            (true, Some((_, TrueDecision::Go, _))) => {
                (piece.stage() != Stage::Finish).then_some("finish")
            }
        }
    }

    /// Why it should not be spun, in plain words.
    pub(super) fn spin_caution(&self, why: &DoNotSpin) -> String {
        self.words().text(match why {
            DoNotSpin::RimOrFloor => "trueup-do-not-spin",
            DoNotSpin::Through => "trueup-do-not-spin-through",
            DoNotSpin::InFloor => "trueup-do-not-spin-floor",
        })
    }
}
