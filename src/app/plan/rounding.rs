//! Rounding: the shown parts of a sum add up to its shown total.

/// The parts in whole steps that add up to the total in whole steps: each rounded down, what is lacking given to those that
/// lost most. Nothing for figures that are no numbers.
pub(super) fn parts_that_add_up<const N: usize>(parts: [f64; N], step: f64) -> ([f64; N], f64) {
    let total = (parts.iter().sum::<f64>() / step).round();
    let mut whole = parts.map(|p| (p / step + 1e-9).floor());
    let lost = |i: usize| parts[i] / step - (parts[i] / step + 1e-9).floor();
    let mut order: Vec<usize> = (0..N).collect();
    order.sort_by(|a, b| lost(*b).total_cmp(&lost(*a)));
    for i in order {
        if total - whole.iter().sum::<f64>() >= 0.5 {
            whole[i] += 1.0;
        }
    }
    (whole.map(|w| w * step), total * step)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shown_parts_add_up_to_the_shown_total() {
        // White ash, 150 mm, to 8 %: 5 + 1.595 + 2.5 + 0.339 = 9.434; each rounded by itself gives the same 9.4.
        let (parts, total) = parts_that_add_up([5.0, 1.595, 2.5, 0.339], 0.1);
        let tenths = |v: f64| (v * 10.0).round();
        let shown: Vec<f64> = parts.iter().map(|p| tenths(*p)).collect();
        assert_eq!((shown, tenths(total)), (vec![50.0, 16.0, 25.0, 3.0], 94.0));
        // Rounded by themselves these would read 0.3 + 0.3 + 0.3 = 1.0.
        let (parts, total) = parts_that_add_up([0.333, 0.334, 0.333], 0.1);
        assert_eq!(tenths(parts.iter().sum()), tenths(total));
        assert_eq!(tenths(total), 10.0);
    }
}
