//! Bands: by what pieces are told apart, and the band in which each falls.

use evenwall_piece::detail::DetailField;
use evenwall_piece::vocabulary::{Method, Pith};

use super::Fared;
use crate::app::App;

/// By what pieces are told apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Kind {
    /// The wood.
    #[default]
    Wood,
    /// The wall as it went to dry.
    Wall,
    /// Thickest less thinnest.
    Evenness,
    /// Where the pith lay.
    Pith,
    /// How it dried.
    Method,
}

impl Kind {
    /// All, in the order in which they are offered.
    pub const ALL: [Self; 5] = [
        Self::Wood,
        Self::Wall,
        Self::Evenness,
        Self::Pith,
        Self::Method,
    ];

    /// Stable key.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Wood => "wood",
            Self::Wall => "wall",
            Self::Evenness => "evenness",
            Self::Pith => "pith",
            Self::Method => "method",
        }
    }

    /// The one with this key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|k| k.key() == key)
    }
}

/// Ends of the bands of the wall, mm: round about the walls that are left for small, middling and large pieces. Common
/// practice, no source.
const WALLS_MM: [f64; 4] = [8.0, 10.0, 12.0, 15.0];
/// Ends of the bands of thickest less thinnest, mm: a hair more than can be felt, the tolerance either way, and beyond.
/// Common practice, no source.
const SPREADS_MM: [f64; 3] = [1.5, 3.0, 5.0];

/// The band of one piece. Bands are listed by `order`, those of one order by name.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Band {
    /// Its place; what is not known comes last.
    pub order: usize,
    /// In words.
    pub name: String,
    /// False where it is not known: not compared with the others.
    pub known: bool,
}

const LAST: usize = usize::MAX;

impl App {
    fn unknown_band(&self, id: &str) -> Band {
        Band {
            order: LAST,
            name: self.words().text(id),
            known: false,
        }
    }

    /// "under 8 mm", "8 to 10 mm", "15 mm and over": the first end is in the upper band.
    fn band_of(&self, mm: f64, ends: &[f64]) -> Band {
        let (words, numbers) = (self.words(), self.numbers());
        let order = ends.partition_point(|end| *end <= mm);
        let at = |place: usize| ends.get(place).map(|mm| numbers.wall(*mm));
        let name = match (order.checked_sub(1).and_then(at), at(order)) {
            (None, Some(to)) => words.with("dried-well-under", &[("to", to.text().into())]),
            (Some(from), Some(to)) => numbers.range(&from, &to).text(),
            (Some(from), None) => words.with("dried-well-over", &[("from", from.text().into())]),
            (None, None) => String::new(),
        };
        Band {
            order,
            name,
            known: true,
        }
    }

    pub(super) fn band(&self, fared: &Fared<'_>, by: Kind) -> Band {
        let words = self.words();
        let piece = fared.piece;
        let keyed = |order: Option<usize>, name: String| Band {
            order: order.unwrap_or(LAST - 1),
            name,
            known: true,
        };
        match by {
            Kind::Wood => match piece.details.text(DetailField::Wood) {
                Some(_) => keyed(Some(0), self.wood_of(piece)),
                None => self.unknown_band("dried-well-not-said"),
            },
            Kind::Wall => match fared.wall {
                Some(wall) => self.band_of(wall.wall_mm, &WALLS_MM),
                None => self.unknown_band("dried-well-not-said"),
            },
            Kind::Evenness => match fared.wall.and_then(|w| w.spread_mm) {
                Some(spread) => self.band_of(spread, &SPREADS_MM),
                None => self.unknown_band("dried-well-not-read"),
            },
            Kind::Pith => match piece.details.pith() {
                Pith::Unknown => self.unknown_band("dried-well-not-said"),
                pith => keyed(
                    Pith::ALL.iter().position(|p| *p == pith),
                    words.text(&format!("pith-{}", pith.key())),
                ),
            },
            Kind::Method => keyed(
                Method::ALL.iter().position(|m| *m == piece.method),
                words.text(&format!("method-{}", piece.method.key())),
            ),
        }
    }
}
