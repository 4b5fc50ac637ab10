//! Drying sense: what the unevenness of the wall means for the way this piece dries, in one sentence, with the figures behind
//! it. Never a chance of cracking, never a promise.

use evenwall_piece::piece::Piece;
use evenwall_piece::stage::{Group, Stage};
use evenwall_piece::vocabulary::Method;
use evenwall_wood::evenness::Evenness;
use evenwall_wood::uneven::{Apart, Dries, GIVES_AT, apart, spread_of_ten_mm};

use super::sum::SumView;
use crate::app::App;

/// How a piece dries, as far as the drying model tells.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Sense {
    /// In a closed bag.
    Bag,
    /// On an open shelf, or turned thin and left to move.
    Shelf,
    /// In a drying cupboard: at least as hard as a shelf.
    Cupboard,
    /// Slower than a shelf, faster than a bag.
    Between(Method),
    /// Not worked out.
    Unknown,
    /// Past the wettest part.
    Past,
}

fn sense(piece: &Piece) -> Option<Sense> {
    let stage = piece.stage();
    match (stage.group(), stage) {
        (Group::Finishing, _) => None,
        (_, Stage::Air | Stage::Settle | Stage::Indoors) => Some(Sense::Past),
        _ => Some(match piece.method {
            Method::Bag => Sense::Bag,
            Method::OnceThin => Sense::Shelf,
            Method::Cupboard => Sense::Cupboard,
            Method::Alcohol => Sense::Unknown,
            between @ (Method::Paper | Method::Shavings | Method::Wax) => Sense::Between(between),
        }),
    }
}

/// True where walls differ by no more than the drying itself bears: the strain stays near what wood stretches in any case.
fn little(dries: Dries, spread_of_ten: f64) -> bool {
    let bears = match dries {
        Dries::Shelf => GIVES_AT,
        // At the limit rather than twice over it: two millimetres either way.
        Dries::Bag => 1.12 * GIVES_AT,
    };
    apart(dries, spread_of_ten).is_some_and(|a| a.strain <= bears + 3e-4)
}

impl App {
    /// The sentence; empty where nothing can be said.
    pub(super) fn drying_sentence(&self, piece: &Piece, evenness: Option<&Evenness>) -> String {
        let words = self.words();
        let (Some(sense), Some(evenness)) = (sense(piece), evenness) else {
            return String::new();
        };
        let Ok(spread) = spread_of_ten_mm(evenness.thickest_mm, evenness.thinnest_mm) else {
            return String::new();
        };
        let said = |id: &str| {
            let shown = self.numbers().wall(evenness.spread_mm()).short().text();
            words.with(id, &[("spread", shown.into())])
        };
        match sense {
            Sense::Past => words.text("wall-dry-past"),
            Sense::Unknown => words.text("wall-dry-alcohol"),
            Sense::Bag if little(Dries::Bag, spread) => said("wall-dry-bag-little"),
            Sense::Bag => said("wall-dry-bag-much"),
            Sense::Shelf if little(Dries::Shelf, spread) => said("wall-dry-shelf-little"),
            Sense::Shelf => said("wall-dry-shelf-much"),
            Sense::Cupboard if little(Dries::Shelf, spread) => said("wall-dry-cupboard-little"),
            Sense::Cupboard => said("wall-dry-cupboard-much"),
            Sense::Between(_) if little(Dries::Shelf, spread) => said("wall-dry-between-little"),
            Sense::Between(method) => words.with(
                "wall-dry-between-much",
                &[
                    (
                        "spread",
                        self.numbers()
                            .wall(evenness.spread_mm())
                            .short()
                            .text()
                            .into(),
                    ),
                    ("method", method.key().into()),
                ],
            ),
        }
    }

    /// The figures behind the sentence.
    pub(super) fn drying_sum(&self, piece: &Piece, evenness: Option<&Evenness>) -> Option<SumView> {
        let line = self.drying_sentence(piece, evenness);
        let evenness = evenness.filter(|_| !line.is_empty())?;
        let words = self.words();
        let spread = spread_of_ten_mm(evenness.thickest_mm, evenness.thinnest_mm).ok()?;
        let wall = |mm: f64| self.numbers().wall(mm).short().text();
        let figures = match (apart(Dries::Bag, spread), apart(Dries::Shelf, spread)) {
            (Some(bag), Some(shelf)) => [
                words.with(
                    "wall-dry-sum-walls",
                    &[
                        ("thin", wall(evenness.thinnest_mm).into()),
                        ("thick", wall(evenness.thickest_mm).into()),
                    ],
                ),
                self.apart_text("wall-dry-sum-bag", bag),
                self.apart_text("wall-dry-sum-shelf", shelf),
            ]
            .join("\n"),
            _ => words.text("wall-dry-sum-beyond"),
        };
        Some(SumView {
            title: words.text("wall-dry-title"),
            line,
            why: format!("{figures}\n{}", words.text("wall-dry-sum-both")),
            source: words.text("wall-dry-sum-source"),
        })
    }

    fn apart_text(&self, id: &str, apart: Apart) -> String {
        let one = |value: f64| format!("{value:.1}");
        self.words().with(
            id,
            &[
                ("points", one(apart.moisture_points).into()),
                ("strain", one(100.0 * apart.strain).into()),
                ("face", one(100.0 * apart.face_strain).into()),
            ],
        )
    }
}
