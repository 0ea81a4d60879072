//! Why a ride cannot be ridden.

use core::fmt;

use crate::bike::OutOfRange;
use crate::stance::StanceError;

/// Why a bike cannot be put together for a ride.
#[derive(Debug, Clone, PartialEq)]
pub enum RideError {
    /// It does not come to rest with its rider on it.
    Stance(StanceError),
    /// A figure is outside what can be computed.
    OutOfRange(OutOfRange),
    /// No set-up was given.
    Nothing,
    /// Set-ups that ride in step must share one wheelbase, since their rear wheels meet the same ground at one time.
    WheelbasesDiffer {
        /// Of the first set-up, m.
        first_m: f64,
        /// Of one that differs, m.
        other_m: f64,
    },
}

impl fmt::Display for RideError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Stance(problem) => write!(f, "{problem}"),
            Self::OutOfRange(problem) => write!(f, "{problem}"),
            Self::Nothing => write!(f, "no set-up was given to ride"),
            Self::WheelbasesDiffer { first_m, other_m } => write!(
                f,
                "set-ups that ride in step must share one wheelbase; given were {first_m} m and {other_m} m"
            ),
        }
    }
}

impl core::error::Error for RideError {}

impl From<StanceError> for RideError {
    fn from(problem: StanceError) -> Self {
        Self::Stance(problem)
    }
}

impl From<OutOfRange> for RideError {
    fn from(problem: OutOfRange) -> Self {
        Self::OutOfRange(problem)
    }
}
