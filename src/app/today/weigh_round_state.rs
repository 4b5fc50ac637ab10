//! Weigh round state: what a weigh round on its way remembers.

use evenwall_piece::ids::{LineId, PieceId};
use evenwall_piece::piece::Moment;

use crate::drying::Pad;

/// One piece weighed, or skipped.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct WeighDone {
    pub piece: PieceId,
    /// The line that holds the weight; `None` for a piece that was skipped.
    pub line: Option<LineId>,
    pub net_g: f64,
    /// What the undo line says.
    pub said: String,
}

/// One piece of the round.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct WeighOf {
    pub piece: PieceId,
    /// When it was weighed before the round, and net in g.
    pub last: Option<(Moment, f64)>,
    pub tare_g: f64,
}

/// A round on its way.
#[derive(Debug)]
pub(crate) struct WeighRoundState {
    pub order: Vec<WeighOf>,
    pub done: Vec<WeighDone>,
    /// The piece touched or weighed last.
    pub at: Option<PieceId>,
    pub keypad: Pad,
    pub error: String,
    /// Weighed bare although there was a tare last time.
    pub bare: bool,
}
