//! Weighings in order: what every rule on a run of weights starts from.

/// The weighings of (day, grams) by day, without those that are not finite or not above 0 g. Of several on one instant the
/// later given counts.
pub(crate) fn in_order(weighings: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let mut sorted: Vec<(f64, f64)> = weighings
        .iter()
        .copied()
        .filter(|(day, mass)| day.is_finite() && mass.is_finite() && *mass > 0.0)
        .collect();
    sorted.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut run: Vec<(f64, f64)> = Vec::with_capacity(sorted.len());
    for (day, mass) in sorted {
        match run.last_mut() {
            Some(last) if last.0 == day => last.1 = mass,
            _ => run.push((day, mass)),
        }
    }
    run
}

/// A step of a scale in g that can be reckoned with: itself, or 1 g where it is not above 0.
pub(crate) fn sound_step(scale_step_g: f64) -> f64 {
    if scale_step_g.is_finite() && scale_step_g > 0.0 {
        scale_step_g
    } else {
        1.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_run_is_by_day_and_the_later_given_of_two_counts() {
        let run = in_order(&[
            (9.0, 402.0),
            (2.0, 410.0),
            (9.0, 401.0),
            (f64::NAN, 400.0),
            (3.0, 0.0),
        ]);
        assert_eq!(run, [(2.0, 410.0), (9.0, 401.0)]);
        assert_eq!((sound_step(0.1), sound_step(-1.0)), (0.1, 1.0));
    }
}
