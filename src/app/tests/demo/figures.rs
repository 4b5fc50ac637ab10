//! The figures of the demo shelf: weights, stations, marks and checklist lines as the app would record them.

use evenwall_app::woods::Known;
use evenwall_piece::checklist::{lines_of_stage, stage_of};
use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::{PieceFact, StationRef};
use evenwall_piece::mark::mark_problem;
use evenwall_piece::piece::Piece;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, Method, Room, Taken};
use evenwall_piece::wanted;
use evenwall_piece::weights::{runs, scale_too_coarse, staying_put};
use evenwall_wood::outline::Outline;
use evenwall_wood::outside::Outside;
use evenwall_wood::profile::Profile;
use evenwall_wood::stations::place_stations;
use evenwall_wood::steady::Reason;
use evenwall_wood::wall::Walls;

use super::{by_mark, today};

#[test]
fn the_weights_are_steady_falling_stuck_and_coarse() {
    let (app, now) = today();
    let put = |mark| staying_put(by_mark(&app, mark), app.shop(), now);
    let steady = put("J23");
    assert_eq!(steady.reason, Reason::Steady);
    assert!(steady.day >= 60 && steady.weighings >= 5);
    assert!(by_mark(&app, "J23").weighings.len() >= 15);
    assert_eq!(
        runs(by_mark(&app, "J23"), app.shop()).len(),
        2,
        "old and new scale"
    );
    assert_eq!(put("J24").reason, Reason::StillFalling);
    assert_eq!(put("J26").reason, Reason::NotLongEnough);
    let small = by_mark(&app, "J27").weighings.last().unwrap();
    let step = app.shop().scale_step_at(small.at);
    assert!(scale_too_coarse(small.net_g(), step));
    for piece in app.pieces() {
        for w in &piece.weighings {
            let step = app.shop().scale_step_at(w.at);
            let on_step = (w.mass_g.value / step).fract().abs() < 1e-9;
            assert!(on_step, "{} {:?} on a step of {step} g", piece.id, w.mass_g);
        }
        for pair in piece.weighings.windows(2) {
            let grown = pair[1].net_g() - pair[0].net_g();
            let glued = piece
                .mass_changes
                .iter()
                .any(|(at, _)| *at >= pair[0].at && *at <= pair[1].at);
            assert!(glued || grown <= 5.0, "{} gains {grown} g", piece.id);
        }
    }
}

/// Wood of the rough piece, cm3: its outline through the stations, the wall wanted, the spigot.
fn wood_cm3(piece: &Piece) -> Option<f64> {
    let mm = |field| piece.details.mm(field);
    let (d, h) = (mm(DetailField::Diameter)?, mm(DetailField::Height)?);
    let (wall, floor) = (mm(DetailField::WallWanted)?, mm(DetailField::FloorWanted)?);
    let outline = Outline::from_key(piece.details.text(DetailField::Outline)?)?;
    let shape = outline.scaled(d, h, mm(DetailField::Mouth), wall).ok()?;
    let depths = &piece.stations.depths_mm;
    let radii: Vec<f64> = depths.iter().map(|z| shape.radius_mm(*z)).collect();
    let outside = Outside::through(depths, &radii).ok()?;
    let profile = Profile::new(outside, &Walls::even(wall).ok()?, h, h - floor).ok()?;
    let spigot = mm(DetailField::SpigotDiameter)? / 20.0;
    Some(profile.wood_cm3() + std::f64::consts::PI * spigot * spigot * 0.8)
}

#[test]
fn the_weights_fit_the_size_and_the_wood() {
    let (app, _) = today();
    let mut judged = 0;
    for piece in app.pieces() {
        let density = match app.known_wood(piece.details.text(DetailField::Wood).unwrap_or("")) {
            Some(Known::Table(wood)) => wood.density.as_ref().map(|d| d.kg_m3),
            Some(Known::Own(wood)) => wood.density_kg_m3,
            None => None,
        };
        let (Some(density), Some(cm3)) = (density, wood_cm3(piece)) else {
            continue;
        };
        for w in piece.weighings.iter().filter(|w| w.stage != Stage::Finish) {
            let moisture = w.net_g() / (cm3 * density / 1000.0) - 1.0;
            let sound = match w.stage {
                // Green wood, and what has stood for long.
                Stage::Shape | Stage::Hollow | Stage::Stabilise | Stage::Bag => 0.2..1.3,
                Stage::Air | Stage::Settle => 0.08..0.6,
                _ => 0.06..0.16,
            };
            let alcohol = [Method::Alcohol, Method::Cupboard].contains(&piece.method);
            judged += 1;
            assert!(
                sound.contains(&moisture) || alcohol && moisture > 0.06,
                "{} {:?}: {moisture:.2} of {cm3:.0} cm3",
                piece.id,
                w.stage
            );
        }
    }
    assert!(judged > 80, "only {judged} weighings judged");
}

#[test]
fn marks_woods_stations_and_readings_are_as_the_app_records_them() {
    let (app, _) = today();
    for piece in app.pieces() {
        let others = app.pieces().filter(|p| p.id != piece.id);
        assert_eq!(mark_problem(piece.mark(), others), None, "{}", piece.id);
        if let Some(wood) = piece.details.text(DetailField::Wood) {
            let free_words = wood.contains(' ');
            let known = app.known_wood(wood).map(|w| w.key() == wood);
            assert!(free_words || known == Some(true), "{}: {wood}", piece.id);
        }
        if piece.stations.count == 0 {
            assert!(piece.readings.is_empty(), "{}", piece.id);
            continue;
        }
        let floor = piece.details.mm(DetailField::FloorWanted).unwrap();
        let placed = place_stations(wanted::height(piece).mm, floor).unwrap();
        let depths: Vec<f64> = placed.iter().map(|s| s.depth_mm).collect();
        assert_eq!(piece.stations.depths_mm, depths, "{}", piece.id);
        assert_eq!(usize::from(piece.stations.count), depths.len());
        for r in &piece.readings {
            if let StationRef::Wall(n) = r.reading.station {
                assert!((1..=piece.stations.count).contains(&n), "{}", piece.id);
            }
            let judged = r.reading.wall_mm.is_some() || r.reading.feel.is_some();
            assert!(
                judged || r.reading.taken == Taken::CantReach,
                "{}",
                piece.id
            );
        }
    }
}

#[test]
fn ticks_and_the_own_line_belong_to_the_checklist() {
    let (app, _) = today();
    let mut ticked = 0;
    for piece in app.pieces() {
        for id in piece.ticks.keys() {
            assert!(stage_of(id, app.shop()).is_some(), "{} {id}", piece.id);
            ticked += 1;
        }
    }
    assert!(ticked >= 10);
    let lines = lines_of_stage(Stage::Bag, app.shop(), true);
    assert!(lines.iter().any(|l| l.id.starts_with("own-")));
    let shop = app.shop();
    assert!(shop.jaws.len() >= 2 && shop.bars.len() >= 2 && shop.woods.len() == 1);
    assert_eq!((shop.scales.len(), shop.settings.bag_days.len()), (1, 3));
    let months = |room| {
        let of_room: Vec<_> = shop
            .climate
            .iter()
            .filter(|(_, c)| c.room == room)
            .collect();
        let first = of_room.first().unwrap().0;
        (
            of_room.len(),
            of_room
                .last()
                .unwrap()
                .0
                .signed_duration_since(first)
                .num_days(),
        )
    };
    assert!(months(Room::Shop).0 >= 10 && months(Room::Shop).1 > 150);
    assert!(months(Room::House).0 >= 4 && months(Room::House).1 > 100);
}

#[test]
fn the_corrections_say_what_was_meant() {
    let (app, _) = today();
    let reading = by_mark(&app, "K01").last_reading(StationRef::Wall(2), None);
    let mm = reading
        .and_then(|r| r.reading.wall_mm.as_ref())
        .map(|m| m.value);
    assert_eq!(mm, Some(10.5));
    let weights: Vec<f64> = by_mark(&app, "J33")
        .weighings
        .iter()
        .map(|w| w.net_g())
        .collect();
    assert!(weights.windows(2).all(|w| w[1] < w[0]), "{weights:?}");
    let wrong_bag = by_mark(&app, "K07").diary.iter().filter(|e| e.retracted);
    let facts: Vec<&PieceFact> = wrong_bag.map(|e| &e.fact).collect();
    assert!(matches!(
        facts[..],
        [PieceFact::Look {
            feel: Some(BagFeel::Nothing),
            ..
        }]
    ));
}
