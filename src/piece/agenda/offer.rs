//! Offer: the stage that is offered next, and on what grounds. Advice, never a lock. Common practice, no source.

use super::bench::Bench;
use super::standing::Standing;
use super::task::Why;
use crate::detail::DetailField;
use crate::fact::StationRef;
use crate::piece::Piece;
use crate::rhythm::RhythmOf;
use crate::stage::Stage;
use crate::weights::{caught_up_since, last_weighing, staying_put};

/// Above this a floor is thick and asks for more days, mm.
pub const THICK_FLOOR_MM: f64 = 15.0;

/// True where the floor is over 15 mm: as last read, else as wanted, else the wall wanted plus 2.
#[must_use]
pub fn thick_floor(piece: &Piece) -> bool {
    let read = piece
        .readings
        .iter()
        .rev()
        .filter(|r| r.reading.station == StationRef::Floor)
        .find_map(|r| r.reading.wall_mm.as_ref().map(|m| m.value));
    read.or_else(|| piece.details.mm(DetailField::FloorWanted))
        .or_else(|| piece.details.mm(DetailField::WallWanted).map(|w| w + 2.0))
        .is_some_and(|floor| floor > THICK_FLOOR_MM)
}

/// The stage offered, with its grounds.
#[must_use]
pub fn offer(piece: &Piece, bench: &Bench, s: &Standing) -> Option<(Stage, Why)> {
    let days = s.day_of_stay(bench.today);
    // A thick floor: 42 days of Air for 30, 28 indoors for 14; other numbers of the turner's own in proportion.
    let run = |thick_parts: u32, of_parts: u32| {
        let thick = thick_floor(piece);
        let asked = bench.rhythm(s.of).offer_after?;
        let asked = if thick {
            (asked * thick_parts).div_ceil(of_parts)
        } else {
            asked
        };
        (s.start.is_some() && days >= asked).then_some(thick)
    };
    let days_run = |thick_floor: bool, weighed: bool| Why::DaysRun {
        days,
        weighed,
        thick_floor,
    };
    let stays_put = || {
        let put = staying_put(piece, bench.shop, bench.now);
        put.steady
            .then_some((Stage::Indoors, Why::StayedPut { days: put.day }))
    };
    // By what is foreseen: settled where it stands, with weights that the plain rule finds too few yet.
    let foretold = bench.foretold(piece);
    let settled = |next: Stage| {
        let weighings = foretold.filter(|f| f.settled)?.weighings;
        Some((next, Why::Foretold { weighings }))
    };
    let stuck = || {
        let days = foretold?.stuck_days?;
        Some((Stage::Air, Why::Stuck { days }))
    };
    // Who does not weigh goes by the days alone.
    let unweighed = || {
        let long = s.start.is_some() && days >= bench.shop.settings.steady_days;
        (long && !bench.shop.weighs()).then_some((Stage::Indoors, days_run(false, false)))
    };
    match s.of {
        RhythmOf::Bag => s
            .dry_twice_on
            .map(|_| (Stage::Air, Why::NothingTwice))
            .or_else(stuck),
        RhythmOf::Air if s.damp_in_air => Some((Stage::Bag, Why::DampAgain)),
        RhythmOf::Air if s.state.is_felt() => None,
        RhythmOf::Air => run(7, 5).map(|thick| (Stage::Settle, days_run(thick, false))),
        RhythmOf::Settle => stays_put()
            .or_else(|| settled(Stage::Indoors))
            .or_else(unweighed),
        RhythmOf::Indoors => {
            let weighed = last_weighing(piece, bench.now).is_some();
            let run = run(2, 1).filter(|_| {
                let caught = |start| caught_up_since(piece, bench.shop, bench.now, start);
                !weighed || s.start.and_then(caught) == Some(true)
            });
            run.map(|thick| (Stage::True, days_run(thick, weighed)))
                .or_else(|| settled(Stage::True))
        }
        RhythmOf::OnceThin => run(1, 1).map(|thick| (Stage::Finish, days_run(thick, false))),
        RhythmOf::Paper
        | RhythmOf::Shavings
        | RhythmOf::Wax
        | RhythmOf::Cupboard
        | RhythmOf::Alcohol => run(7, 5)
            .map(|thick| (Stage::Settle, days_run(thick, false)))
            .or_else(stays_put),
    }
}
