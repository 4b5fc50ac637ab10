//! Measured: checklist lines that tick themselves by what was recorded anyway.

use std::collections::BTreeSet;

use crate::detail::DetailField;
use crate::fact::{Measure, StationRef};
use crate::piece::{Flaw, Piece, Weighing};
use crate::shop::Shop;
use crate::stage::Stage;
use crate::vocabulary::{Pith, Room, keyed};

keyed!(
    /// The record that ticks a line.
    Link {
        /// Where the pith lies.
        Pith = "pith",
        /// The diameter of the spigot as cut.
        SpigotCut = "spigot-cut",
        /// Rim to foot line.
        Height = "height",
        /// The depth drilled.
        DepthDrilled = "depth-drilled",
        /// Every station read in this stage; "can't reach" says so too.
        Stations = "stations",
        /// The floor read in this stage.
        Floor = "floor",
        /// Every flaw decided.
        FlawsDecided = "flaws-decided",
        /// Every flaw with its station and place round the piece.
        FlawsPlaced = "flaws-placed",
        /// Every flaw treated or left with a day to look again.
        FlawsLookAgain = "flaws-look-again",
        /// Weighed in this stage or an earlier one.
        WeighedSoFar = "weighed-so-far",
        /// Weighed in this stage.
        Weighed = "weighed",
        /// Weighed three times in this stage.
        WeighedThrice = "weighed-thrice",
        /// The shop's air read since the stage began.
        ShopAir = "shop-air",
        /// The question about cracks answered.
        Cracks = "cracks",
        /// Longest and shortest diameter.
        Oval = "oval",
        /// The spigot's round size.
        SpigotTrued = "spigot-trued",
        /// A coat of finish.
        Coats = "coats",
        /// Signed.
        Signed = "signed",
    }
);

/// What a record says so far.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Measured {
    /// It was said; there is no number to show.
    Said,
    /// A length, mm.
    Mm(f64),
    /// A weight without tare, g.
    Grams(f64),
    /// Longest and shortest diameter, mm.
    Oval {
        /// The longest.
        longest_mm: f64,
        /// The shortest.
        shortest_mm: f64,
    },
    /// Some of several.
    Of {
        /// How many are recorded, at most `all`.
        done: usize,
        /// How many there are, 1 or more.
        all: usize,
    },
}

impl Measured {
    /// True where nothing is left of it.
    #[must_use]
    pub const fn complete(&self) -> bool {
        match self {
            Self::Of { done, all } => *done >= *all,
            _ => true,
        }
    }
}

impl Link {
    /// What is recorded of it for a piece in a stage; `None` while there is nothing.
    pub(super) fn measured(self, piece: &Piece, stage: Stage, shop: &Shop) -> Option<Measured> {
        let detail = |field| piece.details.mm(field).map(Measured::Mm);
        let said = |said: bool| said.then_some(Measured::Said);
        match self {
            Self::Pith => said(piece.details.pith() != Pith::Unknown),
            Self::SpigotCut => detail(DetailField::SpigotDiameter),
            Self::Height => detail(DetailField::Height),
            Self::DepthDrilled => detail(DetailField::DepthDrilled),
            Self::Stations => stations(piece, stage),
            Self::Floor => floor(piece, stage),
            Self::FlawsDecided => flaws(piece, Flaw::decided),
            Self::FlawsPlaced => flaws(piece, |f| {
                f.note.station.is_some() && f.note.clock.is_some()
            }),
            Self::FlawsLookAgain => flaws(piece, |f| {
                f.last_treatment()
                    .is_some_and(|(_, t)| t.look_again.is_some())
            }),
            Self::WeighedSoFar => weight(piece, |w| w.stage <= stage),
            Self::Weighed => weight(piece, |w| w.stage == stage),
            Self::WeighedThrice => {
                let times = piece.weighings.iter().filter(|w| w.stage == stage).count();
                of(times.min(3), 3)
            }
            Self::ShopAir => {
                let entered = piece.visits.iter().rev().find(|v| v.stage == stage);
                let read = shop.last_climate(Room::Shop).zip(entered);
                said(read.is_some_and(|((at, _), visit)| *at >= visit.since))
            }
            Self::Cracks => said(piece.finish.cracks.is_some()),
            Self::Oval => {
                let (longest_mm, shortest_mm) = widest_oval(piece)?;
                Some(Measured::Oval {
                    longest_mm,
                    shortest_mm,
                })
            }
            Self::SpigotTrued => piece
                .finish
                .spigot_mm
                .as_ref()
                .and_then(finite)
                .map(Measured::Mm),
            Self::Coats => said(!piece.finish.coats.is_empty()),
            Self::Signed => said(piece.finish.signed.is_some()),
        }
    }
}

/// Longest and shortest diameter at the widest place; where only stations were measured, at the widest of them.
fn widest_oval(piece: &Piece) -> Option<(f64, f64)> {
    let stations = piece.finish.ovals.values();
    let widest = || {
        stations
            .filter_map(|o| o.measured.span_mm())
            .max_by(|a, b| a.0.total_cmp(&b.0))
    };
    match &piece.finish.oval {
        Some(oval) => finite(&oval.longest_mm).zip(finite(&oval.shortest_mm)),
        None => widest(),
    }
}

fn finite(measure: &Measure) -> Option<f64> {
    Some(measure.value).filter(|v| v.is_finite())
}

fn of(done: usize, all: usize) -> Option<Measured> {
    (done > 0).then_some(Measured::Of { done, all })
}

fn stations(piece: &Piece, stage: Stage) -> Option<Measured> {
    let laid_out = 1..=piece.stations.count;
    let read: BTreeSet<u8> = piece
        .readings_now()
        .filter(|r| r.stage == stage)
        .filter_map(|r| match r.reading.station {
            StationRef::Wall(n) if laid_out.contains(&n) => Some(n),
            _ => None,
        })
        .collect();
    of(read.len(), usize::from(piece.stations.count))
}

fn floor(piece: &Piece, stage: Stage) -> Option<Measured> {
    let of_floor = |r: &&crate::piece::StationReading| {
        r.stage == stage && r.reading.station == StationRef::Floor
    };
    let last = piece.readings_now().rev().find(of_floor)?;
    last.reading
        .wall_mm
        .as_ref()
        .and_then(finite)
        .map(Measured::Mm)
}

fn flaws(piece: &Piece, done: impl Fn(&Flaw) -> bool) -> Option<Measured> {
    let there: Vec<&Flaw> = piece.flaws.iter().filter(|f| !f.gone()).collect();
    of(there.iter().filter(|f| done(f)).count(), there.len())
}

fn weight(piece: &Piece, counts: impl Fn(&Weighing) -> bool) -> Option<Measured> {
    let last = piece.weighings.iter().rev().find(|w| counts(w))?;
    Some(last.net_g())
        .filter(|g| g.is_finite())
        .map(Measured::Grams)
}
