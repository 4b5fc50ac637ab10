//! Half section: the drawing of the piece as it is now, with the walls read beside it.

use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{End, Measure, StationRef};
use evenwall_piece::piece::Piece;
use evenwall_records::report::{Anchor, Drawing, DrawnText, Stroke};

use crate::app::App;
use crate::drawing::{section_of, thinnest};

impl App {
    /// The half section with the thinnest wall of each station; `None` where nothing of the size is known.
    pub(super) fn report_section(&self, piece: &Piece) -> Option<Drawing> {
        let known = |field| piece.details.mm(field).is_some();
        if !known(DetailField::Diameter)
            && !known(DetailField::Height)
            && piece.diameters.is_empty()
        {
            return None;
        }
        let mut shown = piece.clone();
        if matches!(piece.end, Some((_, End::Finished))) {
            // Reversed and turned off.
            let none = Some(DetailValue::Length(Measure::plain(0.0)));
            shown.details.set(DetailField::SpigotLength, none);
        }
        let section = section_of(&shown);
        if section.width <= 0.0 {
            return None;
        }
        let numbers = self.numbers();
        let letter = (section.height / 24.0).max(section.width / 40.0);
        let room = 4.2 * letter;
        let mut texts = Vec::new();
        let mut last = f64::NEG_INFINITY;
        for spot in &section.stations {
            let station = match spot.number {
                0 => StationRef::Floor,
                n => StationRef::Wall(n),
            };
            let Some(mm) = thinnest(piece, station) else {
                continue;
            };
            // Letters that would stand on each other move down.
            let y = (spot.outer.1 + 0.35 * letter).max(last + 1.1 * letter);
            last = y;
            let x = if spot.number == 0 {
                section.width
            } else {
                spot.outer.0 + letter
            };
            texts.push(DrawnText {
                x: x.max(spot.outer.0 + 0.6 * letter),
                y,
                anchor: Anchor::Start,
                text: numbers.wall(mm).number,
            });
        }
        let words = self.words();
        let caption = match (self.report_walls(piece), section.measured) {
            (None, _) => words.text("records-section-wanted"),
            (Some(_), true) => words.text("records-section-measured"),
            (Some(_), false) => words.text("records-section-outline"),
        };
        Some(Drawing {
            class: "section",
            width: section.width + room,
            height: section.height.max(last + 0.5 * letter),
            paths: vec![
                (Stroke::Skin, section.skin),
                (Stroke::Thin, section.grain),
                (Stroke::Cut, section.wall),
                (Stroke::Line, section.outline),
                (Stroke::Line, section.bore),
                (Stroke::Thin, section.axis),
            ],
            texts,
            letter,
            says: words.with(
                "records-section-says",
                &[("mark", self.mark_of(&piece.id).into())],
            ),
            caption,
        })
    }
}
