//! Input: all that a forecast of a piece is reckoned from, taken from its diary and from the workshop.

use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::shop::Shop;
use evenwall_piece::stage::{Group, Stage};
use evenwall_piece::weights::run_at;
use evenwall_wood::drying::{Case, Climate, ClimateError, Way, Wood};
use evenwall_wood::forecast::{Priors, Record, Weighing};
use evenwall_wood::woods::Figures;

use super::phases::{Rooms, phases, rooms};
use super::walls::{Shape, Sized, shape_of, taken_together};
use crate::drying::local_days;

/// How far a guess of the oven-dry mass may be off, standard deviation of its logarithm, by how well the size is known: a
/// table's density misses a piece by a tenth; an outline picked adds as much; a moisture guessed from the stage twice that.
/// Own judgement, no source.
const DRY_SD: [f64; 3] = [0.10, 0.15, 0.20];
/// The same of the humidity where the room was never read, fraction; own judgement.
const UNREAD_SD: f64 = 0.08;

/// What had to be assumed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Assumed {
    /// How well the size is known.
    pub sized: Sized,
    /// No wall was read: the wall wanted stands in.
    pub walls: bool,
    /// The air of the shop was never read.
    pub shop_air: bool,
    /// The air of the house was never read.
    pub house_air: bool,
}

/// What a forecast is reckoned from; it can go to another thread.
#[derive(Debug, Clone, PartialEq)]
pub struct Input {
    /// The piece as the fit sees it: its walls taken together where they dry alike.
    pub case: Case,
    /// Its walls one by one and by name.
    pub shape: Shape,
    /// Its weighings since the last change of mass or scale, and before.
    pub record: Record,
    /// What is believed before they speak.
    pub priors: Priors,
    /// Local days since 1970 at which the count of days begins.
    pub zero: f64,
    /// Today, on that count.
    pub today: f64,
    /// The day on which its drying began, on that count.
    pub began: f64,
    /// Its moisture then, fraction: that of the wood when felled.
    pub green: f64,
    /// The air of the house where it is not there yet.
    pub house: Option<Climate>,
    /// The air of both rooms.
    pub rooms: Rooms,
    /// Weighings in the present run.
    pub weighings: usize,
    /// What had to be assumed.
    pub assumed: Assumed,
}

/// Why nothing can be reckoned.
#[derive(Debug, Clone, PartialEq)]
pub enum NoInput {
    /// It is not drying.
    NotDrying,
    /// Its sizes give no shape.
    NoShape,
    /// A reading of the air is outside what the model knows.
    Air(ClimateError),
}

/// The likely moisture at a weighing that was not the first thing done: by the stage it was made in. Own judgement.
fn likely_moisture(stage: Stage, green: f64, days_dried: f64) -> f64 {
    match stage {
        _ if days_dried < 4.0 => green,
        Stage::Settle => green.min(0.18),
        Stage::Indoors => green.min(0.13),
        Stage::Air => green.min(0.28),
        _ => green.min(0.40),
    }
}

/// Takes together what a forecast of `piece` needs, its wood having these figures.
///
/// # Errors
/// [`NoInput`] where there is nothing to reckon from.
pub fn input(piece: &Piece, shop: &Shop, figures: &Figures, now: Moment) -> Result<Input, NoInput> {
    let drying = |v: &&evenwall_piece::piece::StageVisit| v.stage.group() == Group::Drying;
    let began = piece.visits.iter().find(drying).ok_or(NoInput::NotDrying)?;
    let run = run_at(piece, shop, now);
    let first_weighed = piece.weighings.first().map_or(began.since, |w| w.at);
    let zero = local_days(began.since.min(first_weighed)).floor();
    let day = |at: Moment| local_days(at) - zero;
    let rooms = rooms(shop, zero, now).map_err(NoInput::Air)?;
    let mut shape = shape_of(piece).ok_or(NoInput::NoShape)?;
    let green = figures.green_moisture.clamp(0.2, 2.5);
    let wood = Wood::of_density(figures.density_kg_m3.clamp(80.0, 1400.0));
    // What the lathe took off in between is no drying.
    let turned = piece
        .visits
        .iter()
        .filter(|v| {
            matches!(v.stage, Stage::Hollow | Stage::True | Stage::Finish) && v.since <= now
        })
        .map(|v| day(v.since));
    let resets: Vec<f64> = turned.chain(run.since.map(day)).collect();
    let record = Record {
        weighings: piece
            .weighings
            .iter()
            .filter(|w| w.at <= now && w.net_g().is_finite() && w.net_g() > 0.1)
            .map(|w| Weighing {
                day: day(w.at),
                mass_g: w.net_g(),
            })
            .collect(),
        resets,
        step_g: run.step_g.clamp(0.0, 100.0),
    };
    let first = record.fitted().ok().and_then(|f| f.first().copied());
    if let (Sized::Unsaid, Some(first)) = (shape.sized, first) {
        let stage = run.weighings.first().map_or(Stage::Bag, |w| w.stage);
        let moisture = likely_moisture(stage, green, first.day - day(began.since));
        resize(&mut shape, wood, first.mass_g / (1.0 + moisture));
    }
    let case = Case {
        wood,
        walls: taken_together(&shape.walls),
        phases: phases(piece, &rooms, zero, now),
    };
    let mut priors = Priors::of(&case);
    priors.dry_sd = DRY_SD[shape.sized as usize];
    if !rooms.shop_read {
        priors.humidity_sd = UNREAD_SD;
    }
    Ok(Input {
        assumed: Assumed {
            sized: shape.sized,
            walls: !shape.read,
            shop_air: !rooms.shop_read,
            house_air: !rooms.house_read,
        },
        weighings: record.fitted().map_or(0, <[Weighing]>::len),
        house: (piece.stage() != Stage::Indoors).then(|| rooms.house.clone()),
        today: day(now),
        began: day(began.since),
        case,
        shape,
        record,
        priors,
        zero,
        green,
        rooms,
    })
}

/// Scales the areas so that the walls weigh `dry_g` oven-dry.
fn resize(shape: &mut Shape, wood: Wood, dry_g: f64) {
    let volume: f64 = shape
        .walls
        .iter()
        .map(evenwall_wood::drying::Wall::volume_cm3)
        .sum();
    let by = dry_g / (1e-3 * wood.density * volume).max(1e-9);
    for wall in &mut shape.walls {
        wall.area_cm2 = (wall.area_cm2 * by).clamp(0.01, 100_000.0);
    }
}

impl Input {
    /// True where it is in a closed bag today.
    #[must_use]
    pub fn in_bag(&self) -> bool {
        self.case
            .phase_at(self.today)
            .is_some_and(|p| matches!(p.way, Way::Bag(_)))
    }
}
