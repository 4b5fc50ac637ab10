//! Outline view: five outlines scaled to the piece, diameters by station, where the stations lie.

use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::StationRef;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::vocabulary::Outline;
use evenwall_piece::wanted;

use super::asking::AskView;
use super::outline::{depths_now, needs_laying_out};
use crate::app::App;
use crate::drawing::{SectionDrawing, section_of, station_places};

/// One outline to pick.
#[derive(Debug, Clone, PartialEq)]
pub struct OutlineChoice {
    /// Its key.
    pub key: &'static str,
    /// Its word.
    pub text: String,
    /// The piece in this outline.
    pub drawing: SectionDrawing,
    /// Picked, or the usual one while none is.
    pub selected: bool,
}

/// The outside diameter at a station.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DiameterRow {
    /// The station's number.
    pub station: u8,
    /// "4, lower middle".
    pub name: String,
    /// "104 mm down, measured".
    pub note: String,
    /// The diameter.
    pub value: String,
    /// "measured" or "from the shape".
    pub source: String,
    /// True where it was measured.
    pub measured: bool,
    /// The row in words, for its button.
    pub label: String,
}

/// The page.
#[derive(Debug, Clone, PartialEq)]
pub struct OutlineView {
    /// The mark of the piece.
    pub mark: String,
    /// The title.
    pub title: String,
    /// The size it is drawn at.
    pub subtitle: String,
    /// Head of the outlines.
    pub outlines_title: String,
    /// The five outlines.
    pub outlines: Vec<OutlineChoice>,
    /// Head of the diameters.
    pub diameters_title: String,
    /// Why they are worth measuring, or not.
    pub diameters_text: String,
    /// The diameters.
    pub diameters: Vec<DiameterRow>,
    /// Diameters measured before the stations moved, each at its depth; empty for none.
    pub diameters_kept: String,
    /// Head of the stations.
    pub stations_title: String,
    /// How many stations at which depths.
    pub stations_text: String,
    /// Says that the height has changed; empty where the stations fit.
    pub lay_out_text: String,
    /// The button that lays them out again.
    pub lay_out: String,
    /// The station whose diameter is entered; 0 for none.
    pub editing: u8,
    /// Title of the entry.
    pub edit_title: String,
    /// What is typed; else a dash.
    pub number: String,
    /// The unit.
    pub unit: String,
    /// True while something is typed.
    pub typing: bool,
    /// Goes back to the shape; empty where nothing was measured.
    pub from_shape: String,
    /// The word that keeps the entry.
    pub save: String,
    /// The word on the key after whole inches.
    pub whole: String,
    /// True where the keypad has keys for inch fractions.
    pub fractions: bool,
    /// What is asked about the entry.
    pub ask: Option<AskView>,
    /// The word for closing.
    pub close: String,
    /// The word for back.
    pub back: String,
}

impl App {
    /// The outline page of the piece on top; `None` where there is none.
    #[must_use]
    pub fn outline_view(&self, _now: Moment) -> Option<OutlineView> {
        let piece = self.wall_piece()?;
        let words = self.words();
        let numbers = self.numbers();
        let state = &self.states.wall;
        let diameter = numbers.diameter(wanted::diameter(piece).mm).short();
        let height = numbers.diameter(wanted::height(piece).mm).short();
        let subtitle_id = match (wanted::diameter(piece).said, wanted::height(piece).said) {
            (true, true) => "wall-outline-size",
            _ => "wall-outline-size-usual",
        };
        let picked = wanted::outline(piece);
        let editing = state.diameter;
        let measured = editing.is_some_and(|n| piece.diameters.contains_key(&n));
        let keypad = state.keypad.as_ref().filter(|k| !k.is_empty());
        let unit = numbers.diameter(100.0).unit;
        Some(OutlineView {
            mark: piece.mark().to_owned(),
            title: words.text("wall-outline-title"),
            subtitle: words.with(
                subtitle_id,
                &[
                    ("diameter", diameter.number.into()),
                    ("height", height.text().into()),
                ],
            ),
            outlines_title: words.text("wall-outline-pick"),
            outlines: Outline::ALL
                .iter()
                .map(|outline| OutlineChoice {
                    key: outline.key(),
                    text: words.text(&format!("outline-{}", outline.key())),
                    drawing: section_of(&in_outline(piece, *outline)),
                    selected: picked == *outline,
                })
                .collect(),
            diameters_title: words.text("wall-diameters"),
            diameters_text: words.text("wall-diameters-text"),
            diameters: self.diameter_rows(piece),
            diameters_kept: self.diameters_kept(piece),
            stations_title: words.text("wall-stations-title"),
            stations_text: self.stations_text(piece),
            lay_out_text: if needs_laying_out(piece) {
                words.with(
                    "wall-lay-out-text",
                    &[
                        ("height", height.text().into()),
                        ("n", depths_now(piece).map_or(0, |d| d.len()).into()),
                    ],
                )
            } else {
                String::new()
            },
            lay_out: words.text("wall-lay-out"),
            editing: editing.unwrap_or(0),
            edit_title: editing.map_or_else(String::new, |n| {
                words.with("wall-diameter-at", &[("n", i64::from(n).into())])
            }),
            number: keypad.map_or_else(|| numbers.unknown().number, |k| k.text()),
            unit,
            typing: keypad.is_some(),
            from_shape: if measured {
                words.text("wall-back-to-shape")
            } else {
                String::new()
            },
            save: words.text("action-save"),
            whole: words.text("wall-whole"),
            fractions: crate::numbers::keypad::Keypad::new(
                crate::numbers::Quantity::OutsideDiameter,
                &numbers,
            )
            .has_fraction_keys(),
            ask: self.ask_view().filter(|_| editing.is_some()),
            close: words.text("action-close"),
            back: words.text("action-back"),
        })
    }

    fn diameter_rows(&self, piece: &Piece) -> Vec<DiameterRow> {
        let words = self.words();
        let numbers = self.numbers();
        let drawing = section_of(piece);
        station_places(piece)
            .into_iter()
            .map(|(n, depth, _)| {
                let drawn = drawing.stations.iter().find(|s| s.number == n);
                let measured = piece.diameters.get(&n).map(|m| m.value);
                let mm = measured.or_else(|| drawn.map(|s| s.diameter_mm));
                let value = mm.map_or_else(|| numbers.unknown(), |mm| numbers.diameter(mm));
                let source = words.text(if measured.is_some() {
                    "wall-measured"
                } else {
                    "wall-from-shape"
                });
                let station = self.station_name(StationRef::Wall(n));
                let value = value.short().text();
                DiameterRow {
                    station: n,
                    label: format!("{station}, {value}, {source}"),
                    name: station,
                    note: words.with(
                        "wall-depth-source",
                        &[
                            ("depth", numbers.diameter(depth).text().into()),
                            ("source", source.as_str().into()),
                        ],
                    ),
                    value,
                    source,
                    measured: measured.is_some(),
                }
            })
            .collect()
    }

    /// "Measured before the stations moved, and still counted: 141 mm, 66 mm down."
    fn diameters_kept(&self, piece: &Piece) -> String {
        if piece.diameters_between.is_empty() {
            return String::new();
        }
        let words = self.words();
        let shown = |mm: f64| self.numbers().diameter(mm).short().text();
        let each: Vec<String> = piece
            .diameters_between
            .iter()
            .map(|(depth, measure)| {
                words.with(
                    "wall-diameter-kept",
                    &[
                        ("diameter", shown(measure.value).into()),
                        ("depth", shown(*depth).into()),
                    ],
                )
            })
            .collect();
        words.with("wall-diameters-kept", &[("each", each.join("; ").into())])
    }

    fn stations_text(&self, piece: &Piece) -> String {
        let numbers = self.numbers();
        let places = station_places(piece);
        let depths: Vec<String> = places
            .iter()
            .map(|p| numbers.diameter(p.1).short().number)
            .collect();
        let unit = numbers.diameter(100.0).unit;
        self.words().with(
            if wanted::height(piece).said {
                "wall-stations-at"
            } else {
                "wall-stations-usual"
            },
            &[
                ("n", places.len().into()),
                ("depths", depths.join(", ").into()),
                ("unit", unit.into()),
            ],
        )
    }
}

/// The piece as it would be in another outline, with the same size and without diameters measured.
fn in_outline(piece: &Piece, outline: Outline) -> Piece {
    let mut other = piece.clone();
    other.diary = Vec::new();
    other.diameters.clear();
    other.diameters_between.clear();
    other.details.set(
        DetailField::Outline,
        Some(DetailValue::Text(outline.key().to_owned())),
    );
    other
}
