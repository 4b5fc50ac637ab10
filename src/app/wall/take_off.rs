//! Take-off: what comes off where, from the mouth to the floor.

use evenwall_piece::fact::StationRef;
use evenwall_piece::piece::Piece;
use evenwall_piece::settings::Settings;
use evenwall_piece::vocabulary::WallFeel;
use evenwall_wood::evenness::{Advice, advice, best_even_wall_mm};

use super::measure::wanted_at;
use super::standing::{Judged, Standing, tolerance};
use crate::app::App;

/// What to do at a station.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum TakeOff {
    /// About so much, then measure, mm.
    About(f64),
    /// Half of it, about so much, then measure, mm.
    Half(f64),
    /// Heavy by finger: a little, then measure.
    ALittle,
}

/// What comes off a station; `None` where nothing does: even, thin, unknown, or passed.
pub(super) fn take_off(
    piece: &Piece,
    settings: &Settings,
    standing: &Standing<'_>,
) -> Option<TakeOff> {
    if standing.passed {
        return None;
    }
    match standing.judged {
        Judged::Read { mm, .. } => {
            let wanted = wanted_at(piece, standing.station);
            match advice(mm, wanted, tolerance(piece, settings)) {
                Advice::About(mm) => Some(TakeOff::About(mm)),
                Advice::HalfThenMeasure(mm) => Some(TakeOff::Half(mm)),
                Advice::LeaveAlone | Advice::Short(_) => None,
            }
        }
        Judged::Felt(WallFeel::Heavy) => Some(TakeOff::ALittle),
        Judged::Felt(_) | Judged::Never | Judged::CantReach => None,
    }
}

/// The thickest wall that every station read can still be brought to, to whole steps downward, mm.
pub(super) fn best_wall(standings: &[Standing<'_>], step_mm: f64) -> Option<f64> {
    let walls: Vec<f64> = standings
        .iter()
        .filter(|s| s.station != StationRef::Floor)
        .filter_map(|s| s.judged.mm())
        .collect();
    let best = best_even_wall_mm(&walls)?;
    Some(((best / step_mm + 1e-6).floor() * step_mm).max(step_mm))
}

impl App {
    /// "about 1, then measure", "half of it, about 1, then measure".
    pub(super) fn take_off_text(&self, take_off: TakeOff) -> String {
        let words = self.words();
        let shown = |mm: f64| self.numbers().wall(mm).short().text();
        match take_off {
            TakeOff::About(mm) => words.with("wall-take-about", &[("off", shown(mm).into())]),
            TakeOff::Half(mm) => words.with("wall-take-half", &[("off", shown(mm).into())]),
            TakeOff::ALittle => words.text("wall-take-a-little"),
        }
    }
}
