//! Ranges outside which a figure is a slip of the pen rather than a set-up.

use core::fmt;

/// A figure outside the range in which the model may be asked.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OutOfRange {
    /// What the figure is, with its unit.
    pub what: &'static str,
    /// The figure, in that unit.
    pub value: f64,
    /// Lowest accepted, in that unit.
    pub low: f64,
    /// Highest accepted, in that unit.
    pub high: f64,
}

impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self {
            what,
            value,
            low,
            high,
        } = self;
        write!(f, "{what} is {value}; it must be between {low} and {high}")
    }
}

impl core::error::Error for OutOfRange {}

/// Accepts `value` when it lies in `[low, high]`; NaN never does.
pub(crate) fn within(
    what: &'static str,
    value: f64,
    low: f64,
    high: f64,
) -> Result<(), OutOfRange> {
    if (low..=high).contains(&value) {
        Ok(())
    } else {
        Err(OutOfRange {
            what,
            value,
            low,
            high,
        })
    }
}
