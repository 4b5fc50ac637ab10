//! Sheet: choices over the page: the section, how it is measured, how many places round.

use evenwall_piece::piece::Piece;
use evenwall_piece::stage::Group;
use evenwall_piece::vocabulary::{FlawKind, Taken};

use super::WallSheet;
use super::spot::{station_key, stations_of};
use crate::app::App;

/// How a wall can be measured, in the order in which it is offered.
const WALL_TOOLS: [Taken; 4] = [
    Taken::Callipers,
    Taken::Fingers,
    Taken::WireGauge,
    Taken::Light,
];

/// One row of a sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SheetRow {
    /// What comes back.
    pub id: String,
    /// Its text.
    pub text: String,
    /// A line below it.
    pub note: String,
    /// Chosen.
    pub selected: bool,
}

/// A sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SheetView {
    /// Which: `section`, `taken` or `places`.
    pub key: &'static str,
    /// Its title.
    pub title: String,
    /// A line below the title; empty for none.
    pub text: String,
    /// Its rows.
    pub rows: Vec<SheetRow>,
    /// The button at its end; empty for none.
    pub button: String,
    /// A second button; empty for none.
    pub second: String,
}

impl App {
    pub(super) fn sheet_view(&self, piece: &Piece) -> Option<SheetView> {
        let state = &self.states.wall;
        let words = self.words();
        let sheet = state.sheet?;
        Some(match sheet {
            WallSheet::Section => SheetView {
                key: sheet.key(),
                title: words.text("wall-section-title"),
                text: words.text("wall-section-text"),
                rows: stations_of(piece)
                    .into_iter()
                    .map(|s| SheetRow {
                        id: station_key(s),
                        text: self.station_row(piece, s),
                        note: String::new(),
                        selected: !self.wall_cursor().round
                            && self.wall_cursor().section.contains(&s),
                    })
                    .collect(),
                button: words.text("action-done"),
                second: words.text("wall-whole-round"),
            },
            WallSheet::Taken => SheetView {
                key: sheet.key(),
                title: words.text("wall-taken-title"),
                text: String::new(),
                rows: WALL_TOOLS
                    .into_iter()
                    .map(|t| SheetRow {
                        id: t.key().to_owned(),
                        text: words.text(&format!("wall-tool-{}", t.key())),
                        note: words.text(&format!("wall-tool-note-{}", t.key())),
                        selected: state.taken == t,
                    })
                    .collect(),
                button: String::new(),
                second: String::new(),
            },
            WallSheet::Places => SheetView {
                key: sheet.key(),
                title: words.text("wall-places-title"),
                text: self
                    .places_hint(piece)
                    .map_or_else(|| words.text("wall-places-text"), |id| words.text(id)),
                rows: [
                    (1_u8, "wall-places-1", "wall-places-note-1"),
                    (2, "wall-places-2", "wall-places-note-2"),
                    (4, "wall-places-4", "wall-places-note-4"),
                ]
                .into_iter()
                .map(|(n, text, note)| SheetRow {
                    id: n.to_string(),
                    text: words.text(text),
                    note: words.text(note),
                    selected: state.places == n,
                })
                .collect(),
                button: String::new(),
                second: String::new(),
            },
        })
    }

    /// Why more than one place round is suggested here: a knot at this station, or a piece that has dried.
    pub(super) fn places_hint(&self, piece: &Piece) -> Option<&'static str> {
        let station = self.wall_cursor().at.station;
        let knot = piece.flaws.iter().any(|f| {
            f.note.kind == FlawKind::Knot && piece.station_of(f) == Some(station) && !f.gone()
        });
        if knot {
            Some("wall-places-hint-knot")
        } else if piece.stage().group() == Group::Finishing {
            Some("wall-places-hint-dried")
        } else {
            None
        }
    }
}
