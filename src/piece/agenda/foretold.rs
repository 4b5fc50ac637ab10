//! Foretold: what is foreseen of a piece, as far as the agenda asks. Others reckon it; without it the plain rules stand.

use std::collections::HashMap;

use chrono::NaiveDate;
use evenwall_wood::weighing_days::{Loss, NextWeighing, WorthBecause, next_weighing};

use crate::ids::PieceId;

/// Longest wait between two weighings that a forecast may make of the rhythm's, days.
const LATEST_DAYS: u32 = 30;

/// What is foreseen of one piece.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Foretold {
    /// The local day of its last weighing when it was foreseen; another weighing since makes it out of date.
    pub weighed_on: NaiveDate,
    /// What it loses now.
    pub loss: Loss,
    /// The step of the scale, g.
    pub step_g: f64,
    /// Days after which one more weighing could settle whether it stays put.
    pub decides_in_days: Option<u32>,
    /// Weighings it was foreseen from.
    pub weighings: u32,
    /// It has probably settled where it stands.
    pub settled: bool,
    /// It hardly loses water although it is wet, for so many days.
    pub stuck_days: Option<u32>,
}

/// What is foreseen, by piece.
pub type ForetoldOf = HashMap<PieceId, Foretold>;

impl Foretold {
    /// When the next weighing tells most, where the rhythm asks for one every so many days: never sooner. A piece that hardly
    /// changes keeps its rhythm: the plain rule counts its weighings.
    #[must_use]
    pub fn next_weighing(&self, every: u32) -> NextWeighing {
        let latest = (2 * every).min(LATEST_DAYS);
        let next = next_weighing(self.loss, self.step_g, every, latest, self.decides_in_days);
        match next.because {
            WorthBecause::StayingPut => NextWeighing {
                days: every,
                ..next
            },
            _ => next,
        }
    }
}
