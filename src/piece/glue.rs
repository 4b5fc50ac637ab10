//! Glue: thin or medium for a flaw, by what still comes off that face; and the face that is still to treat.
//!
//! Common practice, no source. Thin soaks and stains deepest, and only the wood that will still come off that face takes
//! the stain with it. Leaving a flaw until dry is a sound decision too: this suggests a grade, never that glue is wanted.

use crate::fact::{FlawNote, StationRef};
use crate::piece::{Flaw, FlawEvent, Piece};
use crate::stage::Stage;
use crate::vocabulary::{Face, FlawKind, Treatment};
use crate::wanted;

/// A wall thinner than this lets thin glue run through, mm. Common practice, no source.
pub const THIN_WALL_MM: f64 = 8.0;
/// Less than this still to come off a face does not take a stain of thin with it, mm. Common practice, no source: a rough
/// wall of 10 for a finish wall of 5 loses 2.5 on each face, and its stains are turned away.
pub const LITTLE_MM: f64 = 2.0;
/// The share of what still comes off that comes off either face. Common practice, no source.
pub const SHARE_OF_A_FACE: f64 = 0.5;

/// Why a grade is suggested.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum GlueWhy {
    /// It goes through the wall: thin would run through.
    RunsThrough,
    /// The wall is thin here: thin would run through.
    ThinWall {
        /// The wall, mm.
        wall_mm: f64,
    },
    /// Bark leaves gaps, and medium bridges them.
    Gap,
    /// A hairline takes nothing thicker than thin.
    Hairline {
        /// What still comes off that face, mm.
        comes_off_mm: f64,
    },
    /// Thin soaks deepest, and enough still comes off that face to take the stain with it.
    Soaks {
        /// What still comes off that face, mm.
        comes_off_mm: f64,
    },
    /// Little still comes off that face: a stain of thin would stay.
    LittleComesOff {
        /// What still comes off that face, mm; 0 in Finish.
        comes_off_mm: f64,
    },
}

/// A grade of superglue and the reason for it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Suggestion {
    /// [`Treatment::Thin`] or [`Treatment::Medium`].
    pub grade: Treatment,
    /// The reason.
    pub why: GlueWhy,
}

impl Suggestion {
    /// True where a stain of the grade suggested would stay to be seen.
    #[must_use]
    pub fn stain_stays(&self) -> bool {
        match self.why {
            GlueWhy::Hairline { comes_off_mm } => comes_off_mm < LITTLE_MM,
            _ => false,
        }
    }
}

/// The wall at a station, mm: the thinnest place read round it last, else the thinnest of all stations, else the wall
/// wanted. The floor goes by its own reading, else by the floor wanted.
#[must_use]
pub fn wall_there(piece: &Piece, station: Option<StationRef>) -> f64 {
    let thinnest = |station: StationRef| {
        piece
            .readings_round(station)
            .iter()
            .filter_map(|r| r.reading.wall_mm.as_ref())
            .map(|m| m.value)
            .filter(|v| v.is_finite() && *v > 0.0)
            .reduce(f64::min)
    };
    if let Some(read) = station.and_then(thinnest) {
        return read;
    }
    match station {
        Some(StationRef::Floor) => wanted::floor(piece).mm,
        _ => (1..=piece.stations.count)
            .filter_map(|n| thinnest(StationRef::Wall(n)))
            .reduce(f64::min)
            .unwrap_or(wanted::wall_now(piece).mm),
    }
}

/// What still comes off one face at a station, mm: the wall there less the finish wall, shared between the faces.
/// Nothing in Finish, where what was trued is done.
#[must_use]
pub fn comes_off(piece: &Piece, station: Option<StationRef>) -> f64 {
    if piece.stage() == Stage::Finish {
        return 0.0;
    }
    let finish = match station {
        // The floor wanted is the wall plus 2.
        Some(StationRef::Floor) => wanted::finish_wall(piece).mm + 2.0,
        _ => wanted::finish_wall(piece).mm,
    };
    (SHARE_OF_A_FACE * (wall_there(piece, station) - finish)).max(0.0)
}

/// Thin or medium for a flaw, with the reason.
///
/// | first that holds | grade |
/// |---|---|
/// | goes through the wall, or the wall is under 8 mm there | medium: thin would run through |
/// | bark inclusion | medium: it bridges the gaps |
/// | check or ring shake | thin: nothing thicker gets in |
/// | under 2 mm still comes off that face, or Finish | medium: a stain of thin would stay |
/// | else | thin: it soaks deepest, and what comes off takes the stain with it |
#[must_use]
pub fn suggest(piece: &Piece, flaw: &FlawNote) -> Suggestion {
    let wall_mm = wall_there(piece, flaw.station);
    let comes_off_mm = comes_off(piece, flaw.station);
    let medium = |why| Suggestion {
        grade: Treatment::Medium,
        why,
    };
    let thin = |why| Suggestion {
        grade: Treatment::Thin,
        why,
    };
    if flaw.through {
        return medium(GlueWhy::RunsThrough);
    }
    if wall_mm < THIN_WALL_MM {
        return medium(GlueWhy::ThinWall { wall_mm });
    }
    match flaw.kind {
        FlawKind::BarkInclusion => medium(GlueWhy::Gap),
        FlawKind::Check | FlawKind::RingShake => thin(GlueWhy::Hairline { comes_off_mm }),
        FlawKind::Knot | FlawKind::Pith | FlawKind::Punky if comes_off_mm < LITTLE_MM => {
            medium(GlueWhy::LittleComesOff { comes_off_mm })
        }
        FlawKind::Knot | FlawKind::Pith | FlawKind::Punky => thin(GlueWhy::Soaks { comes_off_mm }),
    }
}

/// True for what is a crack whatever was put into it.
#[must_use]
pub const fn is_crack(kind: FlawKind) -> bool {
    matches!(kind, FlawKind::Check | FlawKind::RingShake)
}

/// The face that is still to treat of a flaw that goes through the wall; `None` where both were recorded, where it does
/// not go through, where it was cut away, and where it was left or will be turned away.
#[must_use]
pub fn face_to_treat(flaw: &Flaw) -> Option<Face> {
    let left = flaw
        .last_treatment()
        .is_some_and(|(_, t)| matches!(t.treatment, Treatment::Left | Treatment::TurnAway));
    if !flaw.note.through || flaw.gone() || left {
        return None;
    }
    let on = |face: Face| {
        flaw.events.iter().any(|e| match e {
            FlawEvent::Treated { treated, .. } => {
                (treated.treatment.is_glue() || treated.treatment == Treatment::Wax)
                    && matches!(treated.face, Some(f) if f == face || f == Face::Both)
            }
            FlawEvent::Looked { .. } => false,
        })
    };
    match (on(Face::Outside), on(Face::Inside)) {
        (true, true) => None,
        (true, false) => Some(Face::Inside),
        (false, true) => Some(Face::Outside),
        (false, false) => Some(Face::Both),
    }
}
