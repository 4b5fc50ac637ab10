//! Weighing days: when the next weighing tells something that the last one did not.
//!
//! A weighing tells of the loss once the weight has changed by two steps of the scale: rounding then blurs the change by a fifth
//! (a difference of two rounded weights scatters by step / sqrt 6). Never sooner than the turner's own rhythm asks.

use crate::weighings::sound_step;

/// Steps of the scale that the weight should have changed by.
pub const STEPS_TO_TELL: f64 = 2.0;

/// Why the next weighing is on its day.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum WorthBecause {
    /// The rhythm asks for it, and it will tell.
    Rhythm,
    /// By then it will have changed by two steps of the scale; sooner would show little.
    TwoSteps,
    /// It hardly changes any more: this is the longest that is waited, to see that it stays put.
    StayingPut,
    /// Enough weighings by then to say whether it stays put.
    WouldDecide,
}

/// When the next weighing is worth it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NextWeighing {
    /// Days from the last weighing.
    pub days: u32,
    /// Why then.
    pub because: WorthBecause,
}

/// What is known of a piece's loss when the next weighing is asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Loss {
    /// Loss now, g a day; negative where it gains. Not a number counts as none.
    pub per_day_g: f64,
    /// Days in which the loss falls to 37 %; `None`: it goes on as it is (a bag).
    pub slows_over_days: Option<f64>,
}

/// Days until a loss has changed the weight by two steps of `scale_step_g`: the closed form for a loss that slows down
/// exponentially, -tau ln(1 - 2 step / (rate tau)). `None` when it never will.
#[must_use]
pub fn days_to_tell(loss: Loss, scale_step_g: f64) -> Option<f64> {
    let rate = loss.per_day_g.abs();
    if !(rate.is_finite() && rate > 0.0) {
        return None;
    }
    let wanted = STEPS_TO_TELL * sound_step(scale_step_g);
    match loss.slows_over_days {
        Some(tau) if tau.is_finite() && tau > 0.0 => {
            let share = wanted / (rate * tau);
            (share < 1.0).then(|| -tau * (-share).ln_1p())
        }
        _ => Some(wanted / rate),
    }
}

/// The next weighing after the last one: not before `asked_days` (the rhythm, 1 or more) and not after `latest_days`, which
/// gives way to the rhythm. `decides_in_days` are the days after which one more weighing could settle whether it stays put
/// ([`crate::staying::WouldDecide::more_days`]), used where it hardly changes any more.
#[must_use]
pub fn next_weighing(
    loss: Loss,
    scale_step_g: f64,
    asked_days: u32,
    latest_days: u32,
    decides_in_days: Option<u32>,
) -> NextWeighing {
    let asked = asked_days.max(1);
    let latest = latest_days.max(asked);
    let tells = days_to_tell(loss, scale_step_g)
        .map(f64::ceil)
        .filter(|d| *d <= f64::from(latest));
    match (tells, decides_in_days) {
        (Some(days), _) if days <= f64::from(asked) => NextWeighing {
            days: asked,
            because: WorthBecause::Rhythm,
        },
        (Some(days), _) => NextWeighing {
            days: days as u32, // between asked and latest
            because: WorthBecause::TwoSteps,
        },
        (None, Some(days)) if days <= latest => NextWeighing {
            // The slope wants weighings all along the way, so the rhythm stands.
            days: asked,
            because: WorthBecause::WouldDecide,
        },
        (None, _) => NextWeighing {
            days: latest,
            because: WorthBecause::StayingPut,
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn steady(per_day_g: f64) -> Loss {
        Loss {
            per_day_g,
            slows_over_days: None,
        }
    }

    #[test]
    fn a_bag_that_loses_eight_grams_a_day_is_weighed_by_its_rhythm() {
        let next = next_weighing(steady(8.0), 1.0, 3, 30, None);
        assert_eq!((next.days, next.because), (3, WorthBecause::Rhythm));
    }

    #[test]
    fn a_slow_loss_waits_until_it_can_be_seen() {
        let next = next_weighing(steady(0.2), 1.0, 7, 30, None);
        assert_eq!((next.days, next.because), (10, WorthBecause::TwoSteps));
        let fine = next_weighing(steady(0.2), 0.1, 7, 30, None);
        assert_eq!((fine.days, fine.because), (7, WorthBecause::Rhythm));
        // 0.2 g a day that slows over 8 days is 1.6 g in all: never two steps of 1 g.
        let slowing = Loss {
            per_day_g: 0.2,
            slows_over_days: Some(8.0),
        };
        assert_eq!(days_to_tell(slowing, 1.0), None);
        let waits = next_weighing(slowing, 1.0, 7, 30, None);
        assert_eq!((waits.days, waits.because), (30, WorthBecause::StayingPut));
        let near = next_weighing(slowing, 1.0, 7, 30, Some(14));
        assert_eq!((near.days, near.because), (7, WorthBecause::WouldDecide));
        assert_eq!(days_to_tell(steady(f64::NAN), 1.0), None);
    }

    proptest! {
        #[test]
        fn never_more_often_than_asked_and_the_loss_by_then_is_two_steps(
            rate in -20.0..20.0_f64, tau in 1.0..60.0_f64, asked in 0_u32..40, latest in 0_u32..60,
            decides in proptest::option::of(0_u32..100)
        ) {
            let loss = Loss { per_day_g: rate, slows_over_days: Some(tau) };
            let next = next_weighing(loss, 1.0, asked, latest, decides);
            prop_assert!(next.days >= asked.max(1) && next.days <= latest.max(asked).max(1));
            if let Some(days) = days_to_tell(loss, 1.0) {
                prop_assert!((rate.abs() * tau * (1.0 - (-days / tau).exp()) - 2.0).abs() < 1e-6);
            }
        }
    }
}
