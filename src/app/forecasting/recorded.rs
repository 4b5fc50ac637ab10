//! Recorded: a forecast goes into the diary once a weighing, so that it can be compared with what came of it.

use evenwall_piece::fact::{ForecastMade, PieceFact};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::weights::last_weighing;

use super::Foreseen;
use super::days::Stretch;
use crate::app::App;

/// The days of a forecast that may be told as days; `None` where it is too early to say or nothing lies ahead.
fn made(foreseen: &Foreseen, indoors: bool) -> Option<ForecastMade> {
    let weighed = foreseen.weighed.as_ref()?;
    let outlook = &weighed.outlook;
    if !outlook.too_early.is_empty() || weighed.odd().is_some() || !foreseen.weighed_lately() {
        return None;
    }
    let ahead = |stretch: Option<Stretch>| match stretch {
        Some(Stretch::Ahead(from, to)) => Some((from, to)),
        _ => None,
    };
    let here = ahead(foreseen.stretch(&outlook.here));
    let finish = outlook
        .finish
        .and_then(|road| ahead(foreseen.stretch(&road)));
    // Indoors it already stands in the house: what is ahead there is the finish-turn.
    let (into_house, to_finish) = if indoors {
        (None, here)
    } else {
        (here, finish)
    };
    (into_house.is_some() || to_finish.is_some()).then_some(ForecastMade {
        into_house,
        to_finish,
        weighings: u32::try_from(foreseen.weighings).unwrap_or(u32::MAX),
    })
}

/// True where a forecast from the last weighing stands in the diary already.
fn stands(piece: &Piece, made: &ForecastMade, now: Moment) -> bool {
    let weighed = last_weighing(piece, now).map(|w| w.at);
    piece.diary.iter().any(|e| {
        let same = |m: &ForecastMade| m.weighings == made.weighings;
        let fact = match &e.fact {
            PieceFact::ForecastMade(m) => same(m),
            _ => false,
        };
        fact && !e.retracted && Some(e.at) >= weighed
    })
}

impl App {
    /// Writes the forecast of a piece into its diary, once a weighing; nobody's act, so nothing to undo and nothing said. Where
    /// it cannot be kept it is left out: the next one will be.
    pub(super) fn record_forecast(&mut self, id: &PieceId, now: Moment) {
        if self.store().read_only().is_some() {
            return;
        }
        let indoors = |p: &Piece| p.stage() == evenwall_piece::stage::Stage::Indoors;
        let wanted = self.piece(id).and_then(|piece| {
            let made = made(self.foreseen(id)?, indoors(piece))?;
            (!stands(piece, &made, now)).then_some(made)
        });
        let Some(made) = wanted else { return };
        // An action is over when this runs: what it wrote and may try again is left alone.
        let (written, retry) = (std::mem::take(&mut self.written), self.retry.take());
        let unconfirmed = self.unconfirmed.take();
        self.record(id, now, vec![PieceFact::ForecastMade(made)], now)
            .ok();
        self.written = written;
        self.retry = retry;
        self.unconfirmed = unconfirmed;
    }
}
