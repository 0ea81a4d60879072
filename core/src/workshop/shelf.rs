//! Which spring of a shelf to fit.

use crate::quantity::{Entry, RateUnit};
use crate::units::{Band, SpringRate, newton_per_m};

/// Rates closer than this read the same, N/m: half of the last digit that is shown.
const SAME: f64 = 50.0;

/// The spring of a shelf that comes nearest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Nearest {
    /// Its rate.
    pub rate: SpringRate,
    /// Whether it lies within what is advised.
    pub advised: bool,
}

/// Whether two rates read the same.
fn same(one: f64, two: f64) -> bool {
    (one - two).abs() <= SAME
}

/// The spring nearest to the middle of a band of rates: one within the band where there is one, else the nearest of all.
/// Of two as near as each other, the softer. `None` where the shelf has nothing but what is fitted already.
pub fn nearest(
    shelf: &[Entry<RateUnit>],
    wanted: &Band<SpringRate>,
    fitted: Option<SpringRate>,
) -> Option<Nearest> {
    let within = |rate: f64| (wanted.low.value - SAME..=wanted.high.value + SAME).contains(&rate);
    let off = |rate: f64| (rate - wanted.middle.value).abs();
    let other = |rate: &f64| fitted.is_none_or(|fitted| !same(*rate, fitted.value));
    let rates = shelf.iter().map(Entry::si).filter(other);
    let best = rates.min_by(|one, two| {
        let worse = |rate: f64| (!within(rate), off(rate));
        let (one_out, one_off) = worse(*one);
        let (two_out, two_off) = worse(*two);
        let order = one_out.cmp(&two_out).then(one_off.total_cmp(&two_off));
        order.then(one.total_cmp(two))
    })?;
    Some(Nearest {
        rate: newton_per_m(best),
        advised: within(best),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shelf(rates: &[(f64, RateUnit)]) -> Vec<Entry<RateUnit>> {
        let entry = |(value, unit): &(f64, RateUnit)| Entry {
            value: *value,
            unit: *unit,
            how: None,
        };
        rates.iter().map(entry).collect()
    }

    fn band(low: f64, middle: f64, high: f64) -> Band<SpringRate> {
        Band { low, middle, high }.map(|rate| newton_per_m(1e3 * rate))
    }

    #[test]
    fn the_nearest_within_the_band_is_taken_and_one_outside_it_is_told_as_such() {
        use RateUnit::{NewtonPerMillimetre as Metric, PoundForcePerInch as Pounds};
        let metric = shelf(&[(4.8, Metric), (4.4, Metric), (4.6, Metric)]);
        let found = |shelf: &[_], wanted| {
            let found = nearest(shelf, &wanted, None)?;
            Some((found.rate.value, found.advised))
        };
        assert_eq!(found(&metric, band(4.3, 4.61, 4.9)), Some((4600.0, true)));
        assert_eq!(found(&metric, band(4.3, 4.5, 4.9)), Some((4400.0, true)));
        // 4.4 is nearer, but lies outside.
        assert_eq!(found(&metric, band(4.46, 4.47, 4.7)), Some((4600.0, true)));
        assert_eq!(found(&metric, band(5.0, 5.2, 5.4)), Some((4800.0, false)));
        // What reads as the end of the band is within it.
        assert_eq!(found(&metric, band(4.84, 5.0, 5.4)), Some((4800.0, true)));
        // What is fitted already is no other spring.
        let fitted = Some(newton_per_m(4600.0));
        let other = nearest(&metric, &band(4.3, 4.61, 4.9), fitted).expect("two others");
        assert!((other.rate.value - 4800.0).abs() < 1e-9);
        assert_eq!(nearest(&metric[2..], &band(4.3, 4.61, 4.9), fitted), None);
        assert_eq!(found(&[], band(4.0, 5.0, 6.0)), None);
        let pounds = shelf(&[(270.0, Pounds), (300.0, Pounds)]);
        let (rate, advised) = found(&pounds, band(50.0, 52.0, 54.0)).expect("a full shelf");
        assert!(advised && (rate - 52_538.0).abs() < 1.0, "{rate}");
    }
}
