//! True view: cracks first, then the oval and what can be left of the wall, the spigot, the decision.

use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::StationRef;
use evenwall_piece::piece::{Moment, OvalMeasured, Piece};
use evenwall_piece::stage::Stage;
use evenwall_piece::truing::{
    DoNotSpin, Fit, do_not_spin, first_to_look_at, most_left, ovality, spigot_fit, wall_to_true,
};
use evenwall_piece::vocabulary::{CrackAnswer, TrueDecision};
use evenwall_piece::wanted;

use super::SheetView;
use crate::app::App;
use crate::drawing::{OvalDrawing, oval};
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

/// The oval as measured, with the sum.
#[derive(Debug, Clone, PartialEq)]
pub struct OvalPart {
    /// At one true scale.
    pub drawing: OvalDrawing,
    /// What a screen reader says of it.
    pub label: String,
    /// In its middle: what can be left; empty where the wall is not known.
    pub caption: String,
    /// The figure.
    pub value: String,
    /// Its unit.
    pub unit: String,
    /// What the lines mean: dashed, pale, filled. Which of them are drawn.
    pub legend: Vec<(&'static str, String)>,
    /// The difference in words.
    pub difference: String,
    /// The sum in words, or what is lacking for it.
    pub sum: String,
    /// How it stands against the finish wall: `even`, `neutral`, `thin`; empty text for nothing to say.
    pub tag_kind: &'static str,
    /// "0.8 mm to spare".
    pub tag: String,
    /// What the finish wall is.
    pub wanted: String,
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
    /// The oval, once measured.
    pub oval: Option<OvalPart>,
    /// Heads the spigot.
    pub spigot_title: String,
    /// Label, figure, unit.
    pub spigot: (String, String, String),
    /// Whether it fits the jaws: `even` or `thin`, the words, and what is below.
    pub fits: Option<(&'static str, String, String)>,
    /// Heads the decision.
    pub decision_title: String,
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
        let measured = finish.oval.as_ref();
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
            longest: row("trueup-longest", measured.map(|o| o.longest_mm.value)),
            shortest: row("trueup-shortest", measured.map(|o| o.shortest_mm.value)),
            oval: measured.map(|o| self.oval_part(piece, o)),
            spigot_title: words.text("part-spigot"),
            spigot: row(
                "trueup-spigot-label",
                finish.spigot_mm.as_ref().map(|m| m.value),
            ),
            fits: finish.spigot_mm.as_ref().map(|m| self.fits(piece, m.value)),
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
        match (&piece.finish.oval, &piece.finish.decision) {
            (_, Some((_, TrueDecision::Scrap, _))) => Some("scrap"),
            (_, Some((_, TrueDecision::Fill, _))) => Some("fill"),
            (None, _) => Some("oval"),
            (Some(_), None) => Some("decide"),
            (Some(_), Some((_, TrueDecision::Go, _))) => {
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

    fn oval_part(&self, piece: &Piece, measured: &OvalMeasured) -> OvalPart {
        let (words, numbers) = (self.words(), self.numbers());
        let (longest, shortest) = (measured.longest_mm.value, measured.shortest_mm.value);
        let wall = wall_to_true(piece);
        let turned = piece.details.mm(DetailField::Diameter);
        let drawing = oval(turned, longest, shortest, wall.map(|(_, mm)| mm));
        let off = numbers.wall(ovality(measured)).text();
        let mut part = OvalPart {
            label: words.with(
                "trueup-drawing-label",
                &[
                    ("longest", numbers.diameter_fine(longest).text().into()),
                    ("shortest", numbers.diameter_fine(shortest).text().into()),
                ],
            ),
            caption: String::new(),
            value: String::new(),
            unit: String::new(),
            legend: [
                ("turned", !drawing.turned.is_empty(), "trueup-legend-turned"),
                ("dried", true, "trueup-legend-dried"),
                ("finish", !drawing.finish.is_empty(), "trueup-legend-finish"),
            ]
            .into_iter()
            .filter(|(_, drawn, _)| *drawn)
            .map(|(key, _, id)| (key, words.text(id)))
            .collect(),
            difference: words.with("trueup-difference", &[("off", off.as_str().into())]),
            sum: words.text("trueup-no-wall"),
            tag_kind: "neutral",
            tag: String::new(),
            wanted: String::new(),
            drawing,
        };
        let Some((station, wall)) = wall else {
            return part;
        };
        let left = most_left(wall, longest, shortest);
        let place = match station {
            StationRef::Wall(n) => words.with("piece-station-n", &[("n", n.into())]),
            StationRef::Floor => words.text("piece-station-floor"),
        };
        let shown = numbers.wall(left.max(0.0));
        part.sum = words.with(
            "trueup-sum",
            &[
                ("wall", numbers.wall(wall).text().into()),
                ("place", place.into()),
                ("half", numbers.wall(0.5 * ovality(measured)).text().into()),
                ("left", shown.text().into()),
            ],
        );
        part.caption = words.text("trueup-most-left");
        part.value = shown.number;
        part.unit = shown.unit;
        let finish = wanted::finish_wall(piece).mm;
        let spare = left - finish;
        part.wanted = words.with(
            "trueup-finish-wall",
            &[("wall", numbers.wall(finish).short().text().into())],
        );
        let by = numbers.wall(spare.abs()).text();
        (part.tag_kind, part.tag) = if spare < 0.0 {
            ("thin", words.with("trueup-short", &[("by", by.into())]))
        } else if spare < 1.0 {
            ("neutral", words.with("trueup-tight", &[("by", by.into())]))
        } else {
            ("even", words.with("trueup-spare", &[("by", by.into())]))
        };
        part
    }

    fn fits(&self, piece: &Piece, spigot_mm: f64) -> (&'static str, String, String) {
        let (words, numbers) = (self.words(), self.numbers());
        let fit = spigot_fit(piece, self.shop(), spigot_mm);
        let smallest = numbers.diameter_fine(fit.smallest_mm).short();
        let range = match &fit.jaws {
            Some(jaws) => {
                let largest = numbers.diameter_fine(jaws.largest_mm).short();
                words.with(
                    "trueup-jaws-range",
                    &[
                        ("name", jaws.name.as_str().into()),
                        ("range", numbers.range(&smallest, &largest).text().into()),
                    ],
                )
            }
            None => match piece.details.text(DetailField::Jaws) {
                Some(name) => words.with(
                    "trueup-jaws-unlisted",
                    &[
                        ("name", name.chars().take(60).collect::<String>().into()),
                        ("smallest", smallest.text().into()),
                    ],
                ),
                None => words.with(
                    "trueup-jaws-assumed",
                    &[("smallest", smallest.text().into())],
                ),
            },
        };
        let (kind, id) = match fit.fit {
            Fit::Fits => ("even", "trueup-fits"),
            Fit::TooSmall => ("thin", "trueup-too-small"),
            Fit::TooLarge => ("thin", "trueup-too-large"),
        };
        (kind, words.text(id), range)
    }
}
