//! Where a signal turns: its peaks and valleys, small wiggles left out.

use super::gather::above;
use crate::lane::Lane;

/// Finds the turning points of a signal. A turn is known once the signal has come back from it by `wiggle`.
#[derive(Debug, Clone, Copy)]
pub(super) struct Turns<T> {
    wiggle: T,
    /// Highest and lowest value since the last turn.
    top: T,
    bottom: T,
    /// 1 where the signal may still turn down (or up): both until it first moves, then one of them.
    can_peak: T,
    can_dip: T,
}

/// What the last value told.
#[derive(Debug, Clone, Copy)]
pub(super) struct Turn<T> {
    /// 1 in lanes where a peak became known.
    pub(super) peak: T,
    /// 1 in lanes where a valley became known.
    pub(super) valley: T,
    /// Height of that peak or valley; without meaning in lanes that have neither.
    pub(super) level: T,
}

impl<T: Lane> Turns<T> {
    /// For turns deeper than `wiggle`, above 0.
    ///
    /// The first turn known is the level from which the signal first left.
    pub(super) fn new(wiggle: f64) -> Self {
        Self {
            wiggle: T::splat(wiggle),
            top: T::splat(f64::NEG_INFINITY),
            bottom: T::splat(f64::INFINITY),
            can_peak: T::splat(1.0),
            can_dip: T::splat(1.0),
        }
    }

    pub(super) fn step(&mut self, value: T) -> Turn<T> {
        let (zero, one) = (T::splat(0.0), T::splat(1.0));
        self.top = self.top.greater(value);
        self.bottom = self.bottom.lesser(value);
        let peak = self.can_peak * above(self.top - value, self.wiggle);
        let valley = self.can_dip * above(value - self.bottom, self.wiggle);
        let level = peak.if_above(zero, self.top, self.bottom);
        // After a peak only a valley can follow, which is sought from here on, and the other way round.
        self.can_peak = peak.if_above(zero, zero, valley.if_above(zero, one, self.can_peak));
        self.can_dip = valley.if_above(zero, zero, peak.if_above(zero, one, self.can_dip));
        let turned = peak + valley;
        self.top = turned.if_above(zero, value, self.top);
        self.bottom = turned.if_above(zero, value, self.bottom);
        Turn {
            peak,
            valley,
            level,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Turns;

    /// Peaks and valleys of a signal walked through in small steps, as (is a peak, level).
    fn found(corners: &[f64]) -> Vec<(bool, f64)> {
        let mut turns = Turns::new(0.5);
        turns.step(corners[0]);
        let mut found = Vec::new();
        for pair in corners.windows(2) {
            for step in 1..=100 {
                let turn = turns.step(pair[0] + (pair[1] - pair[0]) * f64::from(step) / 100.0);
                if turn.peak + turn.valley > 0.0 {
                    found.push((turn.peak > 0.0, turn.level));
                }
            }
        }
        found
    }

    #[test]
    fn turns_are_where_the_signal_turned() {
        let turned = found(&[1.0, 4.0, 2.0, 3.0, -1.0, 0.0]);
        let wanted = [
            (false, 1.0),
            (true, 4.0),
            (false, 2.0),
            (true, 3.0),
            (false, -1.0),
        ];
        assert_eq!(turned, wanted);
    }

    #[test]
    fn wiggles_are_no_turns() {
        assert_eq!(found(&[0.0, 0.4, 0.0, 0.4, 0.1, -0.05]), []);
        assert_eq!(found(&[0.0, 2.0, 1.7, 3.0, 2.8]), [(false, 0.0)]);
    }

    #[test]
    fn a_signal_that_first_falls_leaves_a_peak() {
        assert_eq!(found(&[1.0, -2.0, 0.0]), [(true, 1.0), (false, -2.0)]);
    }
}
