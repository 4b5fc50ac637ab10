//! Stamp: a number that changes when anything changes that a forecast is reckoned from; the same inputs give the same.

use std::hash::{DefaultHasher, Hash, Hasher};

use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::shop::Shop;

/// Details that a forecast reads.
const READ: [DetailField; 11] = [
    DetailField::Form,
    DetailField::Wood,
    DetailField::Grain,
    DetailField::Diameter,
    DetailField::Height,
    DetailField::SpigotLength,
    DetailField::SpigotDiameter,
    DetailField::Mouth,
    DetailField::WallWanted,
    DetailField::FloorWanted,
    DetailField::Outline,
];

/// The part that the workshop and the day give, the same for all pieces.
pub(super) fn of_shop(shop: &Shop, now: Moment) -> u64 {
    let mut h = DefaultHasher::new();
    now.date_naive().hash(&mut h);
    for (at, c) in shop.climate.iter().filter(|(at, _)| *at <= now) {
        (at, c.room, c.temp_c.to_bits(), c.rh_pct.to_bits()).hash(&mut h);
    }
    for (at, step) in &shop.scales {
        (at, step.to_bits()).hash(&mut h);
    }
    shop.settings.scale_step_g.to_bits().hash(&mut h);
    for wood in &shop.woods {
        (&wood.id, &wood.name).hash(&mut h);
        let figures = [wood.density_kg_m3, wood.green_mc_pct, wood.radial_pct];
        figures.map(|f| f.map(f64::to_bits)).hash(&mut h);
    }
    h.finish()
}

/// The stamp of a piece.
pub(super) fn of_piece(piece: &Piece, shop: u64) -> u64 {
    let mut h = DefaultHasher::new();
    shop.hash(&mut h);
    for field in READ {
        (
            piece.details.text(field),
            piece.details.mm(field).map(f64::to_bits),
        )
            .hash(&mut h);
    }
    for v in &piece.visits {
        (v.stage.index(), v.since).hash(&mut h);
    }
    piece.method.key().hash(&mut h);
    for entry in piece.diary.iter().filter(|e| !e.retracted) {
        if let PieceFact::MethodChosen(method) = entry.fact {
            (method.key(), entry.at).hash(&mut h);
        }
    }
    for l in &piece.looks {
        (l.at, l.feel.map(|f| f.key()), l.mould).hash(&mut h);
    }
    for w in &piece.weighings {
        (w.at, w.net_g().to_bits()).hash(&mut h);
    }
    for (at, change) in &piece.mass_changes {
        (at, change.key()).hash(&mut h);
    }
    piece.stations.count.hash(&mut h);
    for depth in &piece.stations.depths_mm {
        depth.to_bits().hash(&mut h);
    }
    piece.readings_from.hash(&mut h);
    for r in &piece.readings {
        let wall = r.reading.wall_mm.as_ref().map(|m| m.value.to_bits());
        (r.reading.station, r.reading.position, wall).hash(&mut h);
    }
    for (n, d) in &piece.diameters {
        (n, d.value.to_bits()).hash(&mut h);
    }
    h.finish()
}
