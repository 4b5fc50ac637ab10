//! Whatever the scale says, the forecast answers with finite numbers or a reason, and can be handed to a worker.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use super::*;
use crate::drying::{Case, Climate, Drier, Phase, Wall, Way, Wood};
use proptest::prelude::*;

fn way() -> impl Strategy<Value = Way> {
    prop_oneof![
        Just(Way::Open),
        (1e-6..1e-4_f64).prop_map(Way::Bag),
        (0.01..1.0_f64).prop_map(Way::Cover)
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn any_weights_give_finite_numbers_or_a_reason(
        steps in prop::collection::vec((0.0..20.0_f64, -0.3..0.1_f64), 1..9),
        first_way in way(), second_way in way(), moved in 0.0..40.0_f64, believed in 0.5..1.5_f64
    ) {
        let phase = |from_day, way| Phase { from_day, way, climate: Climate::steady(17.0, 0.62).unwrap() };
        let case = Case {
            wood: Wood::of_density(600.0),
            walls: vec![Wall::plain(9.0, 300.0), Wall { grain: 10.0, ..Wall::plain(25.0, 60.0) }],
            phases: vec![phase(0.0, first_way), phase(moved, second_way)],
        };
        let (mut day, mut mass) = (0.0, 450.0);
        let weighings: Vec<Weighing> = steps
            .iter()
            .map(|(later, change)| {
                day += later;
                mass *= 1.0 + change;
                Weighing { day, mass_g: mass }
            })
            .collect();
        let record = Record { weighings, resets: vec![], step_g: 1.0 };
        let priors = Priors::usual(believed * case.dry_mass_g());
        let house = Climate::steady(20.0, 0.45).unwrap();
        match outlook(&case, &record, priors, day, Some(&house)) {
            Err(e) => prop_assert!(!e.to_string().is_empty()),
            Ok(said) => {
                prop_assert!(said.now.mean.is_finite() && said.now.sd.is_finite() && said.now.mean >= 0.0);
                prop_assert!(said.fit.dry_sd <= 0.10 + 1e-12);
                for range in [said.here.mean, said.here.slowest].into_iter().chain(
                    said.finish.iter().flat_map(|f| [f.mean, f.slowest])
                ).flatten() {
                    prop_assert!(range.early <= range.middle && range.middle <= range.late && range.late.is_finite());
                }
                if said.here.slowest.is_none() {
                    prop_assert!(said.too_early.contains(&TooEarly::Never));
                }
                let days = [day, day + 10.0, day + 60.0];
                for p in band(&case, &said.fit, day, &days).unwrap() {
                    prop_assert!(p.moisture.iter().chain(&p.mass_g).all(|v| v.is_finite()));
                }
                if let Some(next) = next_weighing(&case, &said, &record, &days).unwrap() {
                    prop_assert!(days.contains(&next.day) && next.spread_then <= next.spread_now);
                }
            }
        }
    }
}

#[test]
fn what_a_worker_needs_can_be_sent_to_it() {
    fn sent<T: Send + 'static>() -> usize {
        std::mem::size_of::<T>()
    }
    assert!(
        sent::<Case>() > 0 && sent::<Record>() > 0 && sent::<Outlook>() > 0 && sent::<Drier>() > 0
    );
}
