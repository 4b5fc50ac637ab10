//! Oval view: one station drawn with its sum, and all stations in rows.

use evenwall_wood::fitted::FitError;

use super::reckoned::{Basis, Foreseen, PlaceSum, Reckoned, Shape};
use crate::app::App;
use crate::drawing::{OvalDrawing, OvalShapes, oval};

/// The oval of one station with the sum.
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
    /// What the lines mean: dashed, dotted, pale, filled. Which of them are drawn.
    pub legend: Vec<(&'static str, String)>,
    /// The station, its diameters and the difference in words.
    pub difference: String,
    /// The sum in words, or what is lacking for it.
    pub sum: String,
    /// How it stands against the finish wall: `even`, `neutral`, `thin`; empty text for nothing to say.
    pub tag_kind: &'static str,
    /// "0.5 mm to spare".
    pub tag: String,
    /// What the finish wall is.
    pub wanted: String,
}

/// A station in its row.
#[derive(Debug, Clone, PartialEq)]
pub struct PlaceRow {
    /// Its number.
    pub number: u8,
    /// "Station 3, the widest".
    pub title: String,
    /// Its diameters and what can be trued.
    pub note: String,
    /// `even`, `neutral`, `thin`.
    pub tag_kind: &'static str,
    /// "1.0 mm to spare"; empty where it is not known.
    pub tag: String,
    /// It is the one drawn.
    pub selected: bool,
}

impl App {
    /// "Station 3, the widest".
    pub(super) fn trueup_place_name(&self, number: u8, widest: bool) -> String {
        let id = if widest {
            "trueup-place-widest"
        } else {
            "wall-station"
        };
        self.words().with(id, &[("n", i64::from(number).into())])
    }

    fn trueup_name_of(&self, sum: &PlaceSum) -> String {
        self.trueup_place_name(sum.place.number, sum.place.widest)
    }

    /// A wall that is left, in whole steps of a calliper, never more than it is.
    pub(super) fn trueup_down(&self, mm: f64) -> f64 {
        let step = self.numbers().wall_step_mm();
        (mm / step + 1e-6).floor() * step
    }

    /// "195.0 by 189.0 mm".
    fn trueup_by(&self, longest_mm: f64, shortest_mm: f64) -> String {
        let numbers = self.numbers();
        self.words().with(
            "trueup-by",
            &[
                ("longest", numbers.diameter_fine(longest_mm).number.into()),
                ("shortest", numbers.diameter_fine(shortest_mm).text().into()),
            ],
        )
    }

    /// How a wall stands against the finish wall, kind and words. Under 1 mm to spare is tight.
    pub(super) fn trueup_stands(&self, left_mm: f64, finish_mm: f64) -> (&'static str, String) {
        let (words, numbers) = (self.words(), self.numbers());
        let spare = left_mm - finish_mm;
        if spare < 0.0 {
            let step = numbers.wall_step_mm();
            let by = numbers.wall((-spare / step - 1e-6).ceil().max(1.0) * step);
            let by = by.text();
            ("thin", words.with("trueup-short", &[("by", by.into())]))
        } else {
            let by = numbers.wall(self.trueup_down(spare)).text();
            if spare < 1.0 - 1e-6 {
                ("neutral", words.with("trueup-tight", &[("by", by.into())]))
            } else {
                ("even", words.with("trueup-spare", &[("by", by.into())]))
            }
        }
    }

    /// The station that is drawn: the one chosen, else the tightest, else the widest.
    fn trueup_shown<'a>(&self, sums: &'a Reckoned) -> Option<&'a PlaceSum> {
        let told = |p: &&PlaceSum| p.shape.is_some() || p.foreseen.is_some() || p.fault.is_some();
        let chosen = self.states.truing.shown;
        sums.places
            .iter()
            .find(|p| chosen == Some(p.place.number))
            .filter(told)
            .or_else(|| sums.places.get(sums.tightest?))
            .or_else(|| sums.places.iter().find(|p| p.place.measured.is_some()))
            .or_else(|| sums.places.iter().find(|p| p.place.widest))
            .filter(told)
    }

    pub(super) fn trueup_oval_part(&self, sums: &Reckoned) -> Option<OvalPart> {
        let sum = self.trueup_shown(sums)?;
        let words = self.words();
        let reckoned = match &sum.foreseen {
            Some(Foreseen::Shape { outer, .. }) => Some(outer.as_slice()),
            _ => None,
        };
        let shape = sum.shape.as_ref();
        let drawing = oval(&OvalShapes {
            turned_mm: sum.place.green.map(|g| g.mm),
            reckoned,
            outer: shape.map(|s| s.outer.as_slice()),
            inner: shape.and_then(|s| s.inner.as_deref()),
            axis: sums.axis,
            doubt_mm: shape.map_or(0.0, |s| s.doubt_mm),
        });
        let legend = [
            ("turned", !drawing.turned.is_empty(), "trueup-legend-turned"),
            (
                "reckoned",
                !drawing.reckoned.is_empty(),
                "trueup-legend-reckoned",
            ),
            ("dried", !drawing.outline.is_empty(), "trueup-legend-dried"),
            ("finish", !drawing.finish.is_empty(), "trueup-legend-finish"),
        ]
        .into_iter()
        .filter(|(_, drawn, _)| *drawn)
        .map(|(key, _, id)| (key, words.text(id)))
        .collect();
        let difference = self.trueup_difference(sum);
        let mut part = OvalPart {
            label: String::new(),
            caption: String::new(),
            value: String::new(),
            unit: String::new(),
            legend,
            sum: self.trueup_sum_words(sums, sum),
            difference,
            tag_kind: "neutral",
            tag: String::new(),
            wanted: String::new(),
            drawing,
        };
        let left = if sums.measured {
            sum.left_mm
        } else {
            sum.foreseen_wall_mm
        };
        if let Some(left) = left {
            let shown = self.numbers().wall(self.trueup_down(left.max(0.0)));
            part.caption = words.text(if sums.measured {
                "trueup-most-left"
            } else {
                "trueup-most-expected"
            });
            part.value = shown.number;
            part.unit = shown.unit;
            let finish = self.numbers().wall(sums.finish_mm).short().text();
            part.wanted = words.with("trueup-finish-wall", &[("wall", finish.into())]);
            (part.tag_kind, part.tag) = self.trueup_stands(left, sums.finish_mm);
        }
        part.label = self.trueup_drawing_label(sum, &part);
        Some(part)
    }

    /// What is drawn, with its figures, for who does not see it.
    fn trueup_drawing_label(&self, sum: &PlaceSum, part: &OvalPart) -> String {
        let (words, numbers) = (self.words(), self.numbers());
        let mut told = vec![words.with(
            "trueup-drawing-label",
            &[("station", self.trueup_name_of(sum).into())],
        )];
        if let Some(green) = sum.place.green {
            let size = numbers.diameter_fine(green.mm).text();
            told.push(words.with("trueup-drawing-turned", &[("size", size.into())]));
        }
        if let Some(Foreseen::Shape {
            longest_mm,
            shortest_mm,
            ..
        }) = &sum.foreseen
        {
            let by = self.trueup_by(*longest_mm, *shortest_mm);
            told.push(words.with("trueup-drawing-expected", &[("by", by.into())]));
        }
        if let Some(shape) = &sum.shape {
            let by = self.trueup_by(shape.longest_mm, shape.shortest_mm);
            told.push(words.with("trueup-drawing-dried", &[("by", by.into())]));
        }
        if !part.value.is_empty() {
            let wall = format!("{}\u{a0}{}", part.value, part.unit);
            told.push(words.with("trueup-drawing-left", &[("wall", wall.into())]));
        }
        told.join(" ")
    }

    /// The station, its diameters and by how much it is oval.
    fn trueup_difference(&self, sum: &PlaceSum) -> String {
        let (words, numbers) = (self.words(), self.numbers());
        let told = |id: &str, longest: f64, shortest: f64| {
            let off = numbers.diameter_fine(longest - shortest).text();
            words.with(
                id,
                &[
                    ("station", self.trueup_name_of(sum).into()),
                    ("by", self.trueup_by(longest, shortest).into()),
                    ("off", off.into()),
                ],
            )
        };
        match (&sum.shape, &sum.foreseen) {
            (Some(s), _) => {
                let id = if matches!(s.basis, Basis::OwnShrinkage | Basis::AsWidest) {
                    "trueup-difference-about"
                } else {
                    "trueup-difference"
                };
                told(id, s.longest_mm, s.shortest_mm)
            }
            (
                None,
                Some(Foreseen::Shape {
                    longest_mm,
                    shortest_mm,
                    ..
                }),
            ) => told("trueup-difference-about", *longest_mm, *shortest_mm),
            _ => self.trueup_name_of(sum),
        }
    }

    /// The sum of a station in words, or what is lacking for it.
    fn trueup_sum_words(&self, sums: &Reckoned, sum: &PlaceSum) -> String {
        let words = self.words();
        if let Some(fault) = &sum.fault {
            return words.text(match fault {
                FitError::TooFew { .. } | FitError::TooClose => "trueup-fault-few",
                FitError::Range(_) | FitError::NoBore { .. } => "trueup-fault-figures",
            });
        }
        let mut told = Vec::new();
        if sum.foreseen == Some(Foreseen::PithInWall) {
            told.push(words.text("trueup-pith-in-wall"));
        }
        match &sum.shape {
            Some(shape) => {
                told.push(self.trueup_basis_words(shape));
                told.push(self.trueup_wall_words(sum, shape));
            }
            None if sums.measured => told.push(words.text("trueup-not-measured-here")),
            None if sum.foreseen_wall_mm.is_some() => told.push(words.text("trueup-expected-sum")),
            None => told.push(words.text("trueup-no-wall")),
        }
        told.join(" ")
    }

    fn trueup_basis_words(&self, shape: &Shape) -> String {
        let words = self.words();
        let count = |n: usize| i64::try_from(n).unwrap_or(0);
        match shape.basis {
            Basis::Two => words.text("trueup-basis-two"),
            Basis::Diameters(n) => words.with("trueup-basis-diameters", &[("n", count(n).into())]),
            Basis::FromCentre(n) => words.with("trueup-basis-centre", &[("n", count(n).into())]),
            Basis::OwnShrinkage => words.text("trueup-basis-own"),
            Basis::AsWidest => words.text("trueup-basis-widest"),
        }
    }

    fn trueup_wall_words(&self, sum: &PlaceSum, shape: &Shape) -> String {
        let (words, numbers) = (self.words(), self.numbers());
        let Some(thinnest) = sum.place.thinnest_mm() else {
            return words.text("trueup-no-wall");
        };
        let wall = numbers.wall(thinnest).text();
        let dry = sum.place.walls.iter().all(|w| w.dry);
        let n = i64::try_from(sum.place.walls.len()).unwrap_or(0);
        let mut told = words.with(
            if dry {
                "trueup-wall-dry"
            } else {
                "trueup-wall-green"
            },
            &[("n", n.into()), ("wall", wall.into())],
        );
        if shape.inner.is_none() {
            told = format!("{told} {}", words.text("trueup-fault-figures"));
        }
        told
    }

    /// The stations of which something is known; empty where it is one alone.
    pub(super) fn trueup_place_rows(&self, sums: &Reckoned) -> Vec<PlaceRow> {
        let drawn = self.trueup_shown(sums).map(|p| p.place.number);
        let rows: Vec<PlaceRow> = sums
            .places
            .iter()
            .filter(|p| p.place.measured.is_some() || p.left_or_foreseen().is_some())
            .map(|p| self.trueup_place_row(sums, p, drawn == Some(p.place.number)))
            .collect();
        if rows.len() > 1 { rows } else { Vec::new() }
    }

    fn trueup_place_row(&self, sums: &Reckoned, sum: &PlaceSum, selected: bool) -> PlaceRow {
        let (words, numbers) = (self.words(), self.numbers());
        let left = if sums.measured {
            sum.left_mm
        } else {
            sum.foreseen_wall_mm
        };
        let size = match (&sum.shape, &sum.foreseen) {
            (Some(s), _) if sum.place.measured.is_some() => {
                self.trueup_by(s.longest_mm, s.shortest_mm)
            }
            (Some(s), _) => {
                let by = self.trueup_by(s.longest_mm, s.shortest_mm);
                words.with("trueup-about", &[("by", by.into())])
            }
            (None, Some(Foreseen::PithInWall)) => words.text("trueup-row-pith"),
            (
                None,
                Some(Foreseen::Shape {
                    longest_mm,
                    shortest_mm,
                    ..
                }),
            ) if sum.fault.is_none() => {
                let by = self.trueup_by(*longest_mm, *shortest_mm);
                words.with("trueup-about", &[("by", by.into())])
            }
            _ => words.text("trueup-row-fault"),
        };
        let note = match left {
            Some(left) => {
                let wall = numbers.wall(self.trueup_down(left.max(0.0))).text();
                words.with(
                    "trueup-row",
                    &[("size", size.into()), ("wall", wall.into())],
                )
            }
            None => words.with("trueup-row-no-wall", &[("size", size.into())]),
        };
        let (tag_kind, tag) = left.map_or(("neutral", String::new()), |left| {
            self.trueup_stands(left, sums.finish_mm)
        });
        PlaceRow {
            number: sum.place.number,
            title: self.trueup_name_of(sum),
            note,
            tag_kind,
            tag,
            selected,
        }
    }
}
