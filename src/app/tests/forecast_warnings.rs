//! Promises of warnings, of the verdict with the room taken out, and of thick against thin.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_drying;

use evenwall_app::drying::DryingAction;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::piece::Moment;
use evenwall_piece::shop::{Climate, ShopFact};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, Room};
use evenwall_wood::drying::Tuning;
use support_drying::truth::{air, truth, vessel};
use support_drying::{Loft, noon, weighed};

fn texts(loft: &Loft) -> Vec<String> {
    let warnings = loft.view().warnings;
    warnings.into_iter().map(|w| w.text).collect()
}

fn bagged(walls: [f64; 7]) -> Vec<(Moment, Vec<PieceFact>)> {
    vec![
        (noon("2025-12-01"), vessel(walls)),
        (noon("2026-02-20"), vec![PieceFact::StageMoved(Stage::Bag)]),
    ]
}

fn look(day: &str, feel: BagFeel) -> (Moment, Vec<PieceFact>) {
    let look = PieceFact::Look {
        feel: Some(feel),
        mould: false,
        crack: false,
    };
    (noon(day), vec![look])
}

#[test]
fn a_green_wall_in_the_open_dries_fast_and_a_bag_does_not() {
    // Re-cut and wet again, it stands open for two days, or in the bag.
    let told = |stage: Stage| {
        let mut facts = vec![(noon("2025-12-01"), vessel([14.0; 7]))];
        facts.push((
            noon("2026-03-09"),
            vec![
                PieceFact::MassChanged(evenwall_piece::vocabulary::MassChange::Recut),
                PieceFact::StageMoved(stage),
            ],
        ));
        let plain = Loft::with(facts.clone(), &air(), "{}");
        let input = plain.app.forecast_input(plain.piece(), plain.now).unwrap();
        let wet = (1.5 * input.case.dry_mass_g()).round();
        facts.push((noon("2026-03-10"), vec![weighed(wet)]));
        let mut loft = Loft::with(facts, &air(), "{}");
        loft.settle();
        texts(&loft)
    };
    let fast = "Dries fast for its wall".to_owned();
    assert!(
        told(Stage::Settle).contains(&fast),
        "{:?}",
        told(Stage::Settle)
    );
    assert!(!told(Stage::Bag).contains(&fast));
}

#[test]
fn a_wet_piece_on_one_weight_in_the_bag_is_stuck() {
    let mut facts = bagged([12.0; 7]);
    let dry = {
        let loft = Loft::with(facts.clone(), &air(), "{}");
        let input = loft.app.forecast_input(loft.piece(), loft.now).unwrap();
        input.case.dry_mass_g()
    };
    for (n, day) in ["2026-02-20", "2026-02-26", "2026-03-04", "2026-03-10"]
        .into_iter()
        .enumerate()
    {
        facts.push((noon(day), vec![weighed((1.6 * dry).round() - n as f64)]));
    }
    let mut loft = Loft::with(facts, &air(), "{}");
    loft.settle();
    assert!(
        texts(&loft).contains(&"Hardly loses water in the bag".to_owned()),
        "{:?}",
        loft.view().warnings
    );
    let told = loft.app.foretold()[&support_drying::id()];
    assert_eq!(told.stuck_days, Some(18));
}

#[test]
fn wet_three_times_running_is_what_mould_likes() {
    let days = ["2026-02-22", "2026-02-25", "2026-03-01"];
    let mut facts = bagged([10.0; 7]);
    facts.extend(days[..2].iter().map(|d| look(d, BagFeel::Wet)));
    assert!(texts(&Loft::with(facts.clone(), &[], "{}")).is_empty());
    facts.push(look(days[2], BagFeel::Wet));
    let loft = Loft::with(facts.clone(), &[], "{}");
    assert_eq!(texts(&loft), ["Watch for mould"]);
    assert!(
        loft.view().warnings[0]
            .note
            .starts_with("Wet 3 times running.")
    );
    facts.push(look("2026-03-04", BagFeel::Damp));
    assert!(texts(&Loft::with(facts, &[], "{}")).is_empty());
}

/// Weights at rest in a room that gets drier week by week.
fn drifting() -> Loft {
    let mut shop: Vec<(&str, ShopFact)> = Vec::new();
    let days = [
        "2026-01-10",
        "2026-01-17",
        "2026-01-24",
        "2026-01-31",
        "2026-02-07",
        "2026-02-14",
        "2026-02-21",
        "2026-02-28",
        "2026-03-07",
        "2026-03-11",
    ];
    let mut facts = vec![(noon("2025-12-01"), vessel([8.0; 7]))];
    for (n, day) in days.into_iter().enumerate() {
        let climate = Climate {
            room: Room::Shop,
            temp_c: 15.0,
            rh_pct: 66.0 - 2.0 * n as f64,
        };
        shop.push((day, ShopFact::Climate(climate)));
    }
    let settled = |day: usize| {
        let rh = 0.01 * (66.0 - 2.0 * (day as f64 - 0.4));
        evenwall_wood::moisture::settling_moisture(15.0, rh).unwrap()
    };
    for (n, day) in days.into_iter().enumerate() {
        facts.push((
            noon(day),
            vec![weighed((700.0 * (1.0 + settled(n))).round())],
        ));
    }
    let mut loft = Loft::with(facts, &shop, "{}");
    loft.settle();
    loft
}

#[test]
fn a_room_that_dries_out_is_not_taken_for_a_piece_that_does() {
    let loft = drifting();
    let verdict = loft.view().verdict.unwrap();
    assert!(verdict.stable, "{verdict:?}");
    assert_eq!(verdict.text, "With the room taken out it stays put");
    let warnings = loft.view().warnings;
    let drift = warnings.iter().find(|w| w.text == "The room drifts");
    assert!(drift.unwrap().note.contains("gets drier"), "{warnings:?}");
    // The plain rule of the trade says something else, and stands beside it.
    assert!(!loft.view().staying.unwrap().steady);
}

#[test]
fn without_the_air_only_the_plain_rule_speaks() {
    let loft = Loft::weighed(&[
        ("2026-01-15", 840.0),
        ("2026-01-29", 839.0),
        ("2026-02-12", 839.0),
        ("2026-03-05", 839.0),
    ]);
    assert_eq!(loft.view().verdict, None);
    assert!(loft.view().staying.is_some());
}

#[test]
fn a_piece_that_still_loses_says_how_much_and_an_undecided_one_what_would_decide() {
    let slow = Tuning {
        diffusion: 0.5,
        ..Tuning::default()
    };
    let facts = vec![(noon("2025-12-01"), vessel([24.0; 7]))];
    let days = [
        "2026-01-10",
        "2026-01-20",
        "2026-01-30",
        "2026-02-09",
        "2026-02-20",
        "2026-03-05",
    ];
    let t = truth(facts.clone(), &air(), slow, &days, 1.0);
    let verdict = t.loft.view().verdict.unwrap();
    assert_eq!(verdict.text, "With the room taken out it still loses");
    assert!(
        verdict.why.contains("% of its weight a week"),
        "{verdict:?}"
    );
    let t = truth(facts, &air(), slow, &days[3..], 1.0);
    let verdict = t.loft.view().verdict.unwrap();
    assert!(verdict.text.ends_with("cannot tell yet"), "{verdict:?}");
    assert!(!verdict.why.is_empty());
}

#[test]
fn thick_against_thin_names_the_stations_and_keeps_its_numbers_behind_a_tap() {
    let walls = [6.0, 6.0, 8.0, 10.0, 14.0, 14.0, 14.0];
    let mut loft = Loft::with(bagged(walls), &air(), "{}");
    loft.settle();
    let view = loft.view().uneven.unwrap();
    assert!(!view.open);
    assert!(view.text.contains("on an open shelf, and"), "{view:?}");
    let seen = loft.app.foreseen(&support_drying::id()).unwrap();
    // Published nowhere; own drying model: a shelf parts thick from thin more than a bag does.
    assert!(
        seen.against.on_shelf > 1.3 * seen.against.in_bag,
        "{:?}",
        seen.against
    );
    assert_eq!(seen.against.walls_mm, Some((6.0, 14.0)));
    loft.drying(DryingAction::Uneven(true));
    let open = loft.view().uneven.unwrap();
    assert!(open.open && open.meaning.contains("does not say whether a piece cracks"));
    assert!(open.numbers.contains("Floor") || open.numbers.contains("Station"));
}
