//! Warnings: what wants attention while a piece dries. Never a probability of cracking.

use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Group;
use evenwall_piece::vocabulary::BagFeel;
use evenwall_wood::staying::Drift;

use super::ahead_view::WarningView;
use crate::app::App;

/// Difference between the middle of a wall and its faces above which it dries fast, fraction. A bag that is turned keeps it at
/// 0.01 to 0.03, an open shelf brings a green wall to 0.09: own drying model, no measurement.
const FAST: f64 = 0.05;
/// Wet answers running after which mould is likely, and where the wood moulds easily. Common practice, no source.
const WET_RUNNING: (usize, usize) = (3, 2);

impl App {
    /// What wants attention now.
    pub(super) fn warnings(&self, piece: &Piece, now: Moment) -> Vec<WarningView> {
        if !piece.living() || piece.stage().group() != Group::Drying {
            return Vec::new();
        }
        let words = self.words();
        let warning = |id: &str, note: String| WarningView {
            text: words.text(id),
            note,
        };
        let mut all = Vec::new();
        if let Some(seen) = self.foreseen(&piece.id) {
            let gradient = seen.against.gradient;
            if gradient >= FAST {
                let points = self.points(gradient);
                all.push(warning(
                    "drying-warn-fast",
                    words.with("drying-warn-fast-note", &[("points", points.into())]),
                ));
            }
            if let Some(days) = self.stuck_in_bag(piece, seen, now) {
                let time = self.dates(now).length(days.into());
                all.push(warning(
                    "drying-warn-stuck",
                    words.with("drying-warn-stuck-note", &[("time", time.into())]),
                ));
            }
            let judged = self.judged_weights(piece, now);
            if self.stuck_open(seen, &judged) {
                let note = words.text("drying-warn-above-note");
                all.push(warning("drying-warn-above", note));
            }
            if let Some(drift) = judged.drift {
                let note = words.text(match drift {
                    Drift::Drier => "drying-warn-drift-drier",
                    Drift::Damper => "drying-warn-drift-damper",
                });
                all.push(warning("drying-warn-drift", note));
            }
        }
        all.extend(self.mould_warning(piece));
        all
    }

    /// Wet several times running: mould likes that.
    fn mould_warning(&self, piece: &Piece) -> Option<WarningView> {
        let easily = self.moulds_easily(piece);
        let felt = piece.looks.iter().rev().filter(|l| l.feel.is_some());
        let wet = felt
            .clone()
            .take_while(|l| l.feel == Some(BagFeel::Wet) && l.stage == piece.stage())
            .count();
        let enough = if easily { WET_RUNNING.1 } else { WET_RUNNING.0 };
        let seen = felt.clone().next().is_some_and(|l| l.mould);
        if wet < enough || seen {
            return None;
        }
        let words = self.words();
        let id = if easily {
            "drying-warn-mould-easily"
        } else {
            "drying-warn-mould-note"
        };
        Some(WarningView {
            text: words.text("drying-warn-mould"),
            note: words.with(id, &[("n", wet.into())]),
        })
    }

    /// "3 points": a difference of moistures in whole points.
    pub(super) fn points(&self, difference: f64) -> String {
        let points = (100.0 * difference).round().max(0.0) as u32; // moistures differ by some tens at most
        self.words().with("drying-points", &[("n", points.into())])
    }
}
