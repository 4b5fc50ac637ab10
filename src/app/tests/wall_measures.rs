//! Promises of volume, weight and the section: told from what was measured and from nothing else, with a reason where not.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_wall;

use evenwall_app::action::Action;
use evenwall_app::drawing::{SectionDrawing, section};
use evenwall_app::route::Page;
use evenwall_app::sums::profile_of;
use evenwall_app::wall::{MeasuresView, WallAction, WallSum};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Clock, Measure, PieceFact, Reading, StationRef};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::Taken;
use evenwall_wood::half_section::{HalfSection, Sizes};
use evenwall_wood::wall::{WallAt, Walls};
use support_wall::{Wall, length};

const DEPTHS: [f64; 7] = [0.0, 15.0, 35.0, 60.0, 85.0, 110.0, 130.0];
const ACROSS: [f64; 7] = [70.0, 88.0, 116.0, 134.0, 128.0, 104.0, 78.0];
const WALLS: [f64; 7] = [9.0, 10.5, 11.0, 9.5, 10.0, 12.0, 14.0];

fn read(station: StationRef, mm: f64) -> PieceFact {
    PieceFact::Reading(Reading {
        station,
        position: Clock::TWELVE,
        wall_mm: Some(Measure::plain(mm)),
        feel: None,
        taken: match station {
            StationRef::Floor => Taken::DepthRod,
            StationRef::Wall(_) => Taken::Callipers,
        },
    })
}

fn across(station: u8, mm: f64) -> PieceFact {
    PieceFact::OutsideDiameter {
        station,
        diameter_mm: Some(Measure::plain(mm)),
    }
}

/// Stations at `depths` with diameters and walls, a height and what is left of the floor.
fn vessel(
    depths: &[f64],
    diameters: &[f64],
    walls: &[f64],
    height: f64,
    floor: f64,
) -> Vec<PieceFact> {
    let mut facts = vec![
        PieceFact::Detail {
            field: DetailField::Wood,
            value: Some(DetailValue::Text("white-ash".into())),
        },
        length(DetailField::Height, height),
        PieceFact::Stations {
            count: u8::try_from(depths.len()).unwrap(),
            depths_mm: depths.to_vec(),
        },
    ];
    facts.extend((1..).zip(diameters).map(|(n, d)| across(n, *d)));
    facts.extend((1..).zip(walls).map(|(n, w)| read(StationRef::Wall(n), *w)));
    facts.push(read(StationRef::Floor, floor));
    facts
}

/// The seven-station vessel of the science layer's own checks.
fn seven() -> Vec<PieceFact> {
    vessel(&DEPTHS, &ACROSS, &WALLS, 130.0, 18.0)
}

fn summary_of(facts: &[PieceFact], settings: &str) -> Wall {
    let mut w = Wall::with(facts, settings);
    w.open(Page::WallSummary);
    w
}

fn measures(w: &Wall) -> MeasuresView {
    w.summary().measures
}

/// Figures that a second implementation, written from the formulas alone, gave too.
#[test]
fn volumes_are_those_of_the_second_implementation() {
    let of = |facts: &[PieceFact]| profile_of(Wall::with(facts, "{}").piece()).unwrap();
    let near = |found: f64, told: f64| assert!((found - told).abs() < 1e-3, "{found} {told}");
    let d19 = of(&seven());
    near(d19.wood_cm3(), 530.7412);
    near(d19.capacity_ml(), 772.2453);
    near(d19.centre_of_mass_mm(), 72.8942);
    near(d19.expected_mass_g(550.0, 0.45).unwrap(), 423.2661);
    let depths: Vec<f64> = (0..7).map(|i| 20.0 * f64::from(i)).collect();
    // A zone of a sphere, radius 75 about 60 mm down.
    let zone: Vec<f64> = depths
        .iter()
        .map(|z| 2.0 * (75.0_f64.powi(2) - (z - 60.0).powi(2)).sqrt())
        .collect();
    let d20 = of(&vessel(&depths, &zone, &[10.0; 7], 120.0, 5.0));
    near(d20.wood_cm3(), 538.0667);
    near(d20.capacity_ml(), 1126.7025);
    near(d20.centre_of_mass_mm(), 61.7720);
    let tube = of(&vessel(&depths, &[120.0; 7], &[10.0; 7], 120.0, 15.0));
    near(tube.wood_cm3(), 532.499_955);
    near(tube.capacity_ml(), 824.668_072);
    near(tube.centre_of_mass_mm(), 71.615_044);
}

#[test]
fn volume_and_a_range_of_weight_are_told_with_whose_figures() {
    let mut w = summary_of(&seven(), "{}");
    let m = measures(&w);
    let values: Vec<&str> = m.rows.iter().map(|r| r.value.as_str()).collect();
    assert_eq!(values, ["530\u{a0}cm³", "770\u{a0}ml", "73\u{a0}mm down"]);
    // 423 g and a tenth either way.
    assert_eq!(m.weight, "380\u{a0}to\u{a0}470\u{a0}g");
    assert_eq!(m.weight_label, "Expected weight, green");
    assert!(
        m.weight_note.contains("mean of White ash"),
        "{}",
        m.weight_note
    );
    assert!(!m.alarming && m.text.is_empty() && m.way.is_empty());
    w.wall(WallAction::OpenSum(WallSum::Weight));
    let sum = w.summary().sum.unwrap();
    assert_eq!(sum.line, m.weight);
    for part in ["530\u{a0}cm³", "550\u{a0}kg", "45\u{a0}%", "420\u{a0}g"] {
        assert!(sum.why.contains(part), "{part}: {}", sum.why);
    }
    w.wall(WallAction::CloseSum);
    assert_eq!(w.summary().sum, None);
    // The seven walls go from 9 to 14.
    assert_eq!(w.summary().spread, "5.0");
}

#[test]
fn inches_and_ounces_are_spoken_to_who_chose_them() {
    let w = summary_of(
        &seven(),
        r#"{"length":"inch-fraction","mass":"pound-ounce"}"#,
    );
    let m = measures(&w);
    let values: Vec<&str> = m.rows.iter().map(|r| r.value.as_str()).collect();
    assert_eq!(values[0], "32\u{a0}cu\u{a0}in");
    assert_eq!(values[1], "47\u{a0}cu\u{a0}in");
    assert!(m.weight.ends_with("oz"), "{}", m.weight);
    assert!(w.summary().drying.contains("in"), "{}", w.summary().drying);
}

#[test]
fn what_is_lacking_is_said_and_leads_to_where_it_is_entered() {
    // Nothing read: no figures are spoken of at all.
    let w = summary_of(&[], "{}");
    assert_eq!(measures(&w), MeasuresView::default());
    let walls = |n: u8| (1..=n).map(|i| read(StationRef::Wall(i), 10.0));
    let mut facts: Vec<PieceFact> = walls(1).collect();
    let lacks =
        |facts: &[PieceFact], part: &str, page: fn(evenwall_piece::ids::PieceId) -> Page| {
            let mut w = summary_of(facts, "{}");
            let m = measures(&w);
            assert!(m.text.contains(part) && !m.alarming, "{}", m.text);
            assert!(m.rows.is_empty() && m.weight.is_empty() && !m.way.is_empty());
            w.wall(WallAction::Supply);
            assert_eq!(w.app.route().page(), Some(&page(w.id())));
        };
    lacks(&facts, "outside diameters", Page::Outline);
    facts.extend((1..=3).map(|n| across(n, 150.0)));
    lacks(&facts, "two stations", Page::Wall);
    facts.extend(walls(3));
    lacks(&facts, "the floor", Page::Wall);
    facts.push(PieceFact::Detail {
        field: DetailField::Height,
        value: None,
    });
    lacks(&facts, "height", Page::Details);
}

#[test]
fn walls_that_make_no_vessel_get_a_reason_and_still_a_drawing() {
    // A wall of 46 mm under the shoulder: thicker than the curve of the outside bears.
    let mut walls = WALLS;
    walls[1] = 46.0;
    let facts = vessel(&DEPTHS, &ACROSS, &walls, 130.0, 18.0);
    let w = summary_of(&facts, "{}");
    let m = measures(&w);
    assert!(m.alarming && m.rows.is_empty(), "{m:?}");
    assert!(
        m.text.starts_with("The wall at station 2 ") && m.text.contains("thicker than the curve"),
        "{}",
        m.text
    );
    assert!(m.weight.is_empty());
    let d = w.summary().drawing;
    assert!(d.wall.len() > 100 && !d.wall.contains("NaN"));
    // A wall as thick as the piece is wide, without one diameter measured.
    let thick = summary_of(&[read(StationRef::Wall(4), 90.0)], "{}");
    let m = measures(&thick);
    assert!(m.alarming && m.text.contains("station 4"), "{}", m.text);
    assert!(m.text.contains("no hollow"));
}

#[test]
fn dried_wood_is_not_weighed_by_the_table() {
    let mut w = Wall::with(&seven(), "{}");
    w.move_to(Stage::Bag);
    w.open(Page::WallSummary);
    assert_eq!(measures(&w).weight_label, "Expected weight when green");
    w.move_to(Stage::True);
    w.open(Page::WallSummary);
    let m = measures(&w);
    assert!(m.weight.is_empty() && m.text.contains("only the scale"));
    assert_eq!(m.rows.len(), 3);
    // One wall of the trued piece is not put together with the rough ones.
    w.open(Page::Wall);
    w.jump("3");
    w.types("6\n");
    w.open(Page::WallSummary);
    assert!(measures(&w).text.contains("two stations"));
}

/// The points of a path.
fn points(path: &str) -> Vec<(f64, f64)> {
    let numbers: Vec<f64> = path
        .split_whitespace()
        .filter_map(|t| t.parse().ok())
        .collect();
    numbers.chunks_exact(2).map(|p| (p[0], p[1])).collect()
}

/// Distance from a point to a row of points.
fn away(from: (f64, f64), row: &[(f64, f64)]) -> f64 {
    row.windows(2)
        .map(|s| {
            let (dx, dy) = (s[1].0 - s[0].0, s[1].1 - s[0].1);
            let length = dx * dx + dy * dy;
            let t = if length > 0.0 {
                (((from.0 - s[0].0) * dx + (from.1 - s[0].1) * dy) / length).clamp(0.0, 1.0)
            } else {
                0.0
            };
            (from.0 - s[0].0 - t * dx).hypot(from.1 - s[0].1 - t * dy)
        })
        .fold(f64::INFINITY, f64::min)
}

#[test]
fn the_section_is_the_measured_profile_at_one_scale() {
    let w = summary_of(&seven(), "{}");
    let drawing: SectionDrawing = section(w.piece(), true);
    let shape = profile_of(w.piece()).unwrap();
    let bore = points(&drawing.bore);
    let axis = drawing.axis_x * drawing.width;
    let rim = drawing.stations[0].outer.1;
    for (n, spot) in drawing.stations.iter().take(7).enumerate() {
        // One scale both ways: the outer point lies half the diameter from the axis and its depth below the rim.
        assert!((spot.outer.0 - axis - 0.5 * ACROSS[n]).abs() < 1e-6);
        assert!((spot.outer.1 - rim - DEPTHS[n]).abs() < 1e-6);
        // The wall read, square to the surface.
        let (dx, dy) = (spot.outer.0 - spot.inner.0, spot.outer.1 - spot.inner.1);
        assert!((dx.hypot(dy) - WALLS[n]).abs() < 1e-6);
        let inner = shape.bore_points()[n];
        assert!((spot.inner.0 - axis - inner.radius_mm).abs() < 1e-6);
        assert!((spot.inner.1 - rim - inner.depth_mm).abs() < 1e-6);
    }
    // The line drawn passes where the callipers' inner tip was; the lowest lies under the floor's turn.
    for spot in &drawing.stations[1..6] {
        assert!(away(spot.inner, &bore) < 0.3, "{}", away(spot.inner, &bore));
    }
    let floor = bore.last().unwrap();
    assert!((floor.1 - rim - 112.0).abs() < 0.01 && (floor.0 - axis).abs() < 0.01);
}

#[test]
fn the_bore_drawn_is_that_of_the_science_layer() {
    let mut facts = seven();
    facts.push(length(DetailField::Mouth, 40.0));
    let w = summary_of(&facts, "{}");
    let drawing = section(w.piece(), true);
    let read: Vec<WallAt> = DEPTHS
        .iter()
        .zip(WALLS)
        .map(|(depth, wall_mm)| WallAt {
            depth_mm: *depth,
            wall_mm,
        })
        .collect();
    let sizes = Sizes {
        height_mm: 130.0,
        floor_depth_mm: 112.0,
        mouth_mm: Some(40.0),
    };
    let shape = profile_of(w.piece()).unwrap();
    let drawn =
        HalfSection::draw(shape.outside(), &Walls::through(&read).unwrap(), sizes, 64).unwrap();
    let axis = drawing.axis_x * drawing.width;
    let rim = drawing.stations[0].outer.1;
    let bore = points(&drawing.bore);
    assert_eq!(bore.len(), drawn.inner.len());
    for (path, point) in bore.iter().zip(&drawn.inner) {
        assert!((path.0 - axis - point.radius_mm).abs() < 0.01);
        assert!((path.1 - rim - point.depth_mm).abs() < 0.01);
    }
}

#[test]
fn a_diameter_keeps_its_depth_when_the_stations_are_laid_out_anew() {
    let mut facts = vessel(
        &[10.0, 39.0, 69.0, 98.0, 128.0, 157.0, 178.0],
        &[110.0, 135.0, 148.0, 150.0, 140.0, 115.0, 90.0],
        &[10.0; 7],
        200.0,
        12.0,
    );
    facts.push(length(DetailField::Height, 182.0));
    let mut w = Wall::with(&facts, "{}");
    w.open(Page::Outline);
    let outline = |w: &Wall| w.app.outline_view(w.now).unwrap();
    let before = outline(&w);
    assert!(before.lay_out_text.contains("keep the depth") && before.diameters_kept.is_empty());
    w.wall(WallAction::LayOut);
    let kept = outline(&w).diameters_kept;
    assert!(kept.contains("150\u{a0}mm at 98\u{a0}mm down"), "{kept}");
    // The outside drawn still goes through it.
    let spots = section(w.piece(), true).stations;
    let axis = {
        let d = section(w.piece(), true);
        d.axis_x * d.width
    };
    let rim = spots[0].outer.1 - spots[0].depth_mm;
    let outer = points(&section(w.piece(), true).outline);
    assert!(away((axis + 75.0, rim + 98.0), &outer) < 0.5);
    w.act(Action::Undo);
    assert!(outline(&w) == before, "the views differ");
}
