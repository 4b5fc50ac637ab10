//! What the science layer is given: figures with their basis, the house it settles in, the shape as measured and no other.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_wall;

use evenwall_app::app::App;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_app::sums::{NoShape, profile_of};
use evenwall_piece::fact::{Clock, Measure, PieceFact, Reading, StationRef};
use evenwall_piece::shop::{Climate, OwnWood, ShopFact};
use evenwall_piece::vocabulary::{Room, Taken};
use evenwall_wood::woods::Whose;

use support_wall::Wall;

fn app(facts: Vec<ShopFact>) -> App {
    let now = chrono::DateTime::parse_from_rfc3339("2026-03-12T08:42:00+00:00").unwrap();
    let mut store = MemoryStore::default();
    store.append_shop(now, now, facts).unwrap();
    App::open(Box::new(store), false, now).unwrap()
}

#[test]
fn figures_say_whose_they_are() {
    let own = |name: &str, radial_pct, tangential_pct| {
        ShopFact::Wood(OwnWood {
            id: format!("own-{name}"),
            name: name.into(),
            radial_pct,
            tangential_pct,
            density_kg_m3: None,
            green_mc_pct: None,
            moulds_easily: false,
        })
    };
    let app = app(vec![
        own("garden plum", Some(5.5), Some(9.5)),
        own("white ash", None, Some(9.0)),
    ]);
    let ash = app.wood_figures(Some("white-ash"));
    // Wood Handbook FPL-GTR-190, table 4-3: white ash 4.9 and 7.8 %.
    assert!((ash.figures.shrinkages.radial - 0.049).abs() < 1e-9);
    assert!(ash.whose.starts_with("Mean figures of"), "{}", ash.whose);
    let unsaid = app.wood_figures(None);
    assert!(unsaid.whose.contains("not said"), "{}", unsaid.whose);
    let odd = app.wood_figures(Some("lightning wood"));
    assert!(odd.whose.contains("Lightning wood"), "{}", odd.whose);
    let plum = app.wood_figures(Some("own-garden plum"));
    assert!((plum.figures.shrinkages.tangential - 0.095).abs() < 1e-9);
    assert!(plum.whose.starts_with("Your own"), "{}", plum.whose);
    // Half a pair is no pair: the table's wood of that name stands in, and the sentence says so.
    let half = app.wood_figures(Some("own-white ash"));
    assert_eq!(half.figures.shrinkages, ash.figures.shrinkages);
    assert_eq!(
        half.figures.shrinkages_from,
        Whose::StandIn("white-ash".into())
    );
    // 12 % in a green ash that shrinks 7.8 % to oven-dry: linear from 30 %, models of the Wood Handbook, chapter 4.
    assert!((ash.strains(0.12).tangential - 0.0468).abs() < 1e-9);
    assert_eq!(app.words().problems(), []);
}

#[test]
fn the_house_as_usual_until_it_is_read() {
    let usual = app(Vec::new());
    // 20 degrees C and 45 to 50 %: 8.5 to 9.2 % by Wood Handbook FPL-GTR-190, equation 4-5.
    let m = usual.settles_at_home();
    assert!((0.085..0.092).contains(&m), "{m}");
    assert_eq!(usual.settles_in(Room::Shop), None);
    let read = app(vec![
        ShopFact::Climate(Climate {
            room: Room::House,
            temp_c: 21.1,
            rh_pct: 65.0,
        }),
        ShopFact::Climate(Climate {
            room: Room::Shop,
            temp_c: 18.0,
            rh_pct: 60.0,
        }),
    ]);
    assert!((read.settles_at_home() - 0.119585).abs() < 1e-5);
    assert!((read.settles_in(Room::Shop).unwrap() - 0.110591).abs() < 1e-5);
}

fn read(station: StationRef, mm: f64) -> PieceFact {
    PieceFact::Reading(Reading {
        station,
        position: Clock::TWELVE,
        wall_mm: Some(Measure::plain(mm)),
        feel: None,
        taken: Taken::Callipers,
    })
}

fn across(station: u8, mm: f64) -> PieceFact {
    PieceFact::OutsideDiameter {
        station,
        diameter_mm: Some(Measure::plain(mm)),
    }
}

#[test]
fn a_shape_needs_what_was_measured_and_says_what_is_lacking() {
    let of = |facts: &[PieceFact]| profile_of(Wall::with(facts, "{}").piece());
    assert_eq!(of(&[]), Err(NoShape::FewDiameters(0)));
    let mut facts: Vec<PieceFact> = (1..=5).map(|n| across(n, 150.0)).collect();
    assert_eq!(of(&facts), Err(NoShape::FewWalls(0)));
    facts.extend((1..=7).map(|n| read(StationRef::Wall(n), 10.0)));
    assert_eq!(of(&facts), Err(NoShape::NoFloor));
    facts.push(read(StationRef::Floor, 12.0));
    let shape = of(&facts).unwrap();
    // A tube 150 across and 200 high with a bore of 130 to 188 deep: 1038.9 cm3 by hand, pi / 4 (150^2 200 - 130^2 188).
    let by_hand = std::f64::consts::PI / 4.0 * (22_500.0 * 200.0 - 16_900.0 * 188.0) / 1000.0;
    assert!(
        (shape.wood_cm3() - by_hand).abs() < 0.5,
        "{}",
        shape.wood_cm3()
    );
}
