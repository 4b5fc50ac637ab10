//! Agenda: what the agenda is told of a forecast: when the next weighing tells most, what has probably settled, what is stuck.

use evenwall_piece::agenda::{Foretold, ForetoldOf};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::room_weights::{Judged, judged};
use evenwall_piece::stage::Stage;
use evenwall_piece::weights::run_at;
use evenwall_wood::staying::Verdict;

use super::Foreseen;
use super::days::Stretch;
use crate::app::App;

/// Days between two weighings in Settle.
const FORTNIGHT: u32 = 14;
/// In a closed bag a piece that loses less than this share of its weight a week is stuck while it is wet. Own judgement, no
/// source: the tightest bag of the model that is turned at all loses three times as much.
const STUCK_A_WEEK: f64 = 0.003;
/// Over at least this many days.
const STUCK_DAYS: f64 = 10.0;
/// Wetter than this a bag has work to do, fraction.
const WET: f64 = 0.20;
/// Open, a piece that stays put so much above where wood settles is stuck, fraction.
const ABOVE: f64 = 0.03;

/// What lists show of a forecast: an offer, or another day for the scale than a fortnight's rhythm gives.
fn shown(foretold: Option<&Foretold>) -> (bool, bool, u32) {
    foretold.map_or((false, false, FORTNIGHT), |f| {
        (
            f.settled,
            f.stuck_days.is_some(),
            f.next_weighing(FORTNIGHT).days,
        )
    })
}

impl App {
    /// What is foreseen of the pieces, for the agenda.
    #[must_use]
    pub fn foretold(&self) -> &ForetoldOf {
        &self.forecasts.foretold
    }

    /// What the slope of its weights says, plain and with the room taken out; the wall that follows the air is the mean one.
    pub(crate) fn judged_weights(&self, piece: &Piece, now: Moment) -> Judged {
        let wall = super::shape_of(piece).map_or(10.0, |shape| {
            let volume: f64 = shape.walls.iter().map(|w| w.volume_cm3()).sum();
            let thick: f64 = shape
                .walls
                .iter()
                .map(|w| w.volume_cm3() * w.thickness_mm)
                .sum();
            thick / volume.max(1e-9)
        });
        judged(piece, self.shop(), now, wall)
    }

    /// Renews what the agenda is told of a piece; true where a list may show something else for it.
    pub(super) fn renew_foretold(&mut self, id: &PieceId, now: Moment) -> bool {
        let new = self
            .piece(id)
            .and_then(|piece| self.foretold_of(piece, self.foreseen(id)?, now));
        let old = match new {
            Some(f) => self.forecasts.foretold.insert(id.clone(), f),
            None => self.forecasts.foretold.remove(id),
        };
        shown(old.as_ref()) != shown(new.as_ref())
    }

    fn foretold_of(&self, piece: &Piece, foreseen: &Foreseen, now: Moment) -> Option<Foretold> {
        let weighed = foreseen.weighed.as_ref()?;
        let run = run_at(piece, self.shop(), now);
        let last = run.weighings.last()?;
        let judged = self.judged_weights(piece, now);
        let in_its_air = judged.in_its_air.as_ref().map(|i| &i.staying);
        let staying = in_its_air.unwrap_or(&judged.plain);
        let behind = foreseen.stretch(&weighed.outlook.here) == Some(Stretch::Behind);
        // Without the room's air the plain rule of the trade decides alone.
        let settled = foreseen.weighed_lately()
            && weighed.odd().is_none()
            && weighed.outlook.too_early.is_empty()
            && behind
            && in_its_air.is_some_and(|s| s.verdict == Verdict::Stable)
            && matches!(piece.stage(), Stage::Settle | Stage::Indoors);
        Some(Foretold {
            weighed_on: last.at.date_naive(),
            loss: weighed.loss,
            step_g: run.step_g,
            decides_in_days: staying.would_decide.and_then(|w| w.more_days),
            weighings: u32::try_from(foreseen.weighings).unwrap_or(u32::MAX),
            settled,
            stuck_days: foreseen
                .in_bag
                .then(|| self.stuck_in_bag(piece, foreseen, now))
                .flatten(),
        })
    }

    /// Days for which a wet piece in a closed bag has hardly lost water; `None` where it does or that is not known.
    pub(crate) fn stuck_in_bag(
        &self,
        piece: &Piece,
        foreseen: &Foreseen,
        now: Moment,
    ) -> Option<u32> {
        let wet = foreseen.weighed.as_ref()?.outlook.now.range().0 > WET;
        if !foreseen.in_bag || !wet {
            return None;
        }
        let run = run_at(piece, self.shop(), now).by_day();
        let last = *run.last()?;
        // The longest stretch up to the last weight over which it hardly lost anything.
        let slow = |w: &&(f64, f64)| {
            let days = last.0 - w.0;
            days >= STUCK_DAYS && (w.1 - last.1) < STUCK_A_WEEK * last.1 * days / 7.0
        };
        let first = run.iter().find(slow)?;
        Some((last.0 - first.0) as u32) // whole days of a diary
    }

    /// True where a piece in the open stays put well above where wood settles there.
    pub(crate) fn stuck_open(&self, foreseen: &Foreseen, judged: &Judged) -> bool {
        let Some(weighed) = foreseen.weighed.as_ref().filter(|_| !foreseen.in_bag) else {
            return false;
        };
        let staying = judged
            .in_its_air
            .as_ref()
            .map_or(&judged.plain, |i| &i.staying);
        let now = &weighed.outlook.now;
        staying.verdict == Verdict::Stable && now.range().0 > now.settling + ABOVE
    }
}
