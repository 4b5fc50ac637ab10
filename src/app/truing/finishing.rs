//! Finishing: what Finish has recorded, and what it has not.

use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::StationRef;
use evenwall_piece::piece::{Piece, Weighing};
use evenwall_piece::stage::Stage;

use crate::app::App;

/// How many stations of a piece were read in Finish, the floor counted too, and how many there are.
pub(super) fn final_readings(piece: &Piece) -> (usize, usize) {
    let mut read: Vec<StationRef> = piece
        .readings_now()
        .filter(|r| r.stage == Stage::Finish)
        .map(|r| r.reading.station)
        .collect();
    read.sort_unstable();
    read.dedup();
    let walls = crate::drawing::station_places(piece).len();
    (read.len(), walls + 1)
}

/// The weight in Finish, the last of them.
pub(super) fn final_weight(piece: &Piece) -> Option<&Weighing> {
    piece
        .weighings
        .iter()
        .rev()
        .find(|w| w.stage == Stage::Finish)
}

impl App {
    /// What is not recorded, in words of a list.
    pub(super) fn not_recorded(&self, piece: &Piece) -> Vec<String> {
        let finish = &piece.finish;
        let all = [
            (final_readings(piece).0 > 0, "finish-lacks-walls"),
            (!finish.grits.is_empty(), "finish-lacks-grits"),
            (!finish.coats.is_empty(), "finish-lacks-coats"),
            (
                piece.details.text(DetailField::FinishedSize).is_some(),
                "finish-lacks-size",
            ),
            (final_weight(piece).is_some(), "finish-lacks-weight"),
            (finish.signed.is_some(), "finish-lacks-signed"),
        ];
        all.into_iter()
            .filter(|(there, _)| !there)
            .map(|(_, id)| self.words().text(id))
            .collect()
    }

    /// What a turner usually signs with: wood, year, mark.
    pub(super) fn usual_signature(&self, piece: &Piece) -> String {
        let year = piece
            .stage_since()
            .map_or_else(String::new, |at| at.format("%Y").to_string());
        [self.wood_of(piece), year, piece.mark().to_owned()]
            .into_iter()
            .filter(|part| !part.is_empty())
            .collect::<Vec<_>>()
            .join(", ")
    }

    /// The coats that went on before, each once, the last first.
    pub(super) fn coats_before(&self, piece: &Piece) -> Vec<String> {
        let mut before: Vec<String> = Vec::new();
        for (_, text) in piece.finish.coats.iter().rev() {
            if !before.contains(text) && text.chars().count() <= 40 {
                before.push(text.clone());
            }
        }
        before.truncate(3);
        before
    }
}
