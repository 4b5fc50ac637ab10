//! Standing: how a station stands against what is wanted there, and which stations are passed.

use std::collections::BTreeMap;

use evenwall_piece::fact::{Clock, StationRef};
use evenwall_piece::piece::{Moment, Piece, StationReading};
use evenwall_piece::settings::Settings;
use evenwall_piece::stage::Group;
use evenwall_piece::vocabulary::{Taken, WallFeel};
use evenwall_piece::wanted;
use evenwall_wood::evenness::{Tolerance, Verdict, verdict};

use super::measure::wanted_at;
use super::spot::stations_of;

/// What is known of a station.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Judged {
    /// Nothing yet.
    Never,
    /// It could not be reached. Never even.
    CantReach,
    /// Judged without a number.
    Felt(WallFeel),
    /// Read as a number.
    Read {
        /// The thinnest place round the station, mm.
        mm: f64,
        /// Against what is wanted.
        verdict: Verdict,
        /// How far above (or, negative, below) what is wanted, mm.
        off_mm: f64,
    },
}

impl Judged {
    /// Heavy, even or thin, by number or by finger; `None` where nothing is known.
    pub fn verdict(self) -> Option<Verdict> {
        match self {
            Self::Read { verdict, .. } => Some(verdict),
            Self::Felt(WallFeel::Heavy) => Some(Verdict::Heavy),
            Self::Felt(WallFeel::Even) => Some(Verdict::Even),
            Self::Felt(WallFeel::Thin) => Some(Verdict::Thin),
            Self::Never | Self::CantReach => None,
        }
    }

    /// The number, where there is one.
    pub fn mm(self) -> Option<f64> {
        match self {
            Self::Read { mm, .. } => Some(mm),
            _ => None,
        }
    }
}

/// The key of a verdict: of its words, its colour and its sign.
pub(super) const fn verdict_key(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Heavy => "heavy",
        Verdict::Even => "even",
        Verdict::Thin => "thin",
    }
}

/// A station with all that is known of it.
#[derive(Debug, Clone)]
pub(super) struct Standing<'a> {
    /// Which.
    pub station: StationRef,
    /// How it stands.
    pub judged: Judged,
    /// The reading that is shown: the thinnest place, else the last.
    pub shown: Option<&'a StationReading>,
    /// What is known of it was read in another part of the work: before True, or in True for a piece that went back.
    pub before: bool,
    /// A station below came down after this one did: leave it alone.
    pub passed: bool,
}

/// The tolerance of the present stage.
pub(super) fn tolerance(piece: &Piece, settings: &Settings) -> Tolerance {
    let mm = wanted::tolerance(piece, settings);
    Tolerance {
        heavy_mm: mm,
        thin_mm: mm,
    }
}

/// How a number stands at a station.
pub(super) fn judge_mm(piece: &Piece, settings: &Settings, station: StationRef, mm: f64) -> Judged {
    let wanted = wanted_at(piece, station);
    Judged::Read {
        mm,
        verdict: verdict(mm, wanted, tolerance(piece, settings)),
        off_mm: mm - wanted,
    }
}

/// How one reading stands by itself.
pub(super) fn judge(piece: &Piece, settings: &Settings, reading: &StationReading) -> Judged {
    let r = &reading.reading;
    match (&r.wall_mm, r.feel) {
        (Some(m), _) if m.value.is_finite() => judge_mm(piece, settings, r.station, m.value),
        (_, Some(feel)) => Judged::Felt(feel),
        _ => Judged::CantReach,
    }
}

/// How a station stands. It goes by the thinnest of the places read round it; the last word at a place counts.
pub(super) fn standing<'a>(
    piece: &'a Piece,
    settings: &Settings,
    station: StationRef,
) -> Standing<'a> {
    let round = piece.readings_round(station);
    let number = |r: &StationReading| {
        let value = r.reading.wall_mm.as_ref().map(|m| m.value);
        value.filter(|v| v.is_finite() && *v > 0.0)
    };
    let thinnest = round
        .iter()
        .copied()
        .filter_map(|r| number(r).map(|mm| (mm, r)))
        .min_by(|a, b| a.0.total_cmp(&b.0));
    // The last in the order of the diary, among those that count.
    let last = piece
        .readings_now()
        .rev()
        .find(|r| round.iter().any(|o| o.entry == r.entry));
    let (judged, shown) = match (thinnest, last) {
        (Some((mm, reading)), _) => (judge_mm(piece, settings, station, mm), Some(reading)),
        (None, Some(reading)) => {
            // By finger the thin place round a station is what counts.
            let felt = |feel| round.iter().any(|r| r.reading.feel == Some(feel));
            let judged = [WallFeel::Thin, WallFeel::Heavy, WallFeel::Even]
                .into_iter()
                .find(|f| felt(*f))
                .map_or(Judged::CantReach, Judged::Felt);
            (judged, Some(reading))
        }
        (None, None) => (Judged::Never, None),
    };
    // One place out of reach leaves the rest unsure: what is even elsewhere is not called even all round.
    let unsure = round.iter().any(|r| r.reading.taken == Taken::CantReach);
    let judged = match judged.verdict() {
        Some(Verdict::Even) if unsure => Judged::CantReach,
        _ => judged,
    };
    Standing {
        station,
        judged,
        shown,
        before: shown.is_some() && !piece.read_in_this_part(station),
        passed: false,
    }
}

/// How much thinner a reading must be than the one before to show that wood came off, mm. Less is the tool's own
/// uncertainty. Common practice, no source.
const CAME_OFF_MM: f64 = 0.4;

/// When wood last came off at a station in this part of the work. Each place round it is compared with itself: a wall that
/// is thinner at 6 o'clock than at 12 o'clock is uneven, not worked.
fn worked_at(piece: &Piece, station: StationRef) -> Option<Moment> {
    let mut before: BTreeMap<Clock, f64> = BTreeMap::new();
    let mut worked = None;
    for r in piece.readings_now() {
        if r.reading.station != station || !r.stage.same_part(piece.stage()) {
            continue;
        }
        let Some(mm) = r.reading.wall_mm.as_ref().map(|m| m.value) else {
            continue;
        };
        let earlier = before.insert(r.reading.position, mm);
        if earlier.is_some_and(|b| b - mm >= CAME_OFF_MM) {
            worked = Some(r.at);
        }
    }
    worked
}

/// All stations from mouth to floor. One above a station that was worked later is passed: the wood that backed it up is
/// gone.
pub(super) fn standings<'a>(piece: &'a Piece, settings: &Settings) -> Vec<Standing<'a>> {
    let stations = stations_of(piece);
    let worked: Vec<Option<Moment>> = stations.iter().map(|s| worked_at(piece, *s)).collect();
    stations
        .iter()
        .enumerate()
        .map(|(i, station)| {
            let mut standing = standing(piece, settings, *station);
            let below = worked[i + 1..].iter().flatten().max();
            standing.passed = match (below, worked[i]) {
                (Some(below), Some(here)) => *below > here,
                (Some(_), None) => standing.judged != Judged::Never,
                (None, _) => false,
            } && *station != StationRef::Floor;
            standing
        })
        .collect()
}

/// True where a thin station will not make the finish wall.
pub(super) fn alarming(piece: &Piece, settings: &Settings, standing: &Standing<'_>) -> bool {
    let Judged::Read {
        mm,
        verdict: Verdict::Thin,
        ..
    } = standing.judged
    else {
        return false;
    };
    let least = match piece.stage().group() {
        Group::Finishing => wanted::finish_wall(piece).mm,
        _ => wanted::least_rough(piece, settings),
    };
    standing.station != StationRef::Floor && mm < least - 1e-3
}
