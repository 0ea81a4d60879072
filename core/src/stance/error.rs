//! Why a stance or a wanted set-up could not be found.

use core::fmt;

use crate::bike::OutOfRange;
use crate::intake::End;
use crate::solve::NoRoot;
use crate::units::{Force, to_bar};

/// What was asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Asked {
    /// Rate of each fork spring, N/m.
    ForkRate,
    /// Rate of the shock spring, N/m.
    ShockRate,
    /// Gauge pressure of the gas fork, Pa.
    ForkPressure,
    /// Fork spring preload, m.
    ForkPreload,
    /// Shock spring preload, m.
    ShockPreload,
}

/// Why there is no answer.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum StanceError {
    /// A figure of the bike, the load or the set-up is outside its range.
    Input(OutOfRange),
    /// The load goes beyond what the spring and its bump stop can hold.
    Bottoms {
        /// Which end.
        end: End,
        /// What the axle has to carry, N vertical.
        load: Force,
        /// What it holds at full travel, N vertical.
        most: Force,
    },
    /// Nothing between these limits gives the wanted sag.
    OutOfReach {
        /// What was asked for; limits are in its SI unit.
        asked: Asked,
        /// Lowest tried.
        low: f64,
        /// Highest tried.
        high: f64,
        /// Whether even the lowest is too much (else even the highest is too little).
        too_much: bool,
    },
    /// A coil was asked of a gas fork or the other way round.
    WrongSpring(Asked),
    /// The search broke off, which the shape of the springs should not allow.
    Search(NoRoot),
}

impl fmt::Display for StanceError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Input(problem) => problem.fmt(f),
            Self::Bottoms { end, load, most } => write!(
                f,
                "the {} has to carry {:.0} N but holds only {:.0} N at full travel",
                end.word(),
                load.value,
                most.value
            ),
            Self::OutOfReach {
                asked,
                low,
                high,
                too_much,
            } => {
                let (name, low, high) = match asked {
                    Asked::ForkRate => ("fork spring rate (N/mm)", low * 1e-3, high * 1e-3),
                    Asked::ShockRate => ("shock spring rate (N/mm)", low * 1e-3, high * 1e-3),
                    Asked::ForkPressure => {
                        let bars = |pa| to_bar(crate::units::pascal(pa));
                        ("fork pressure (bar gauge)", bars(low), bars(high))
                    }
                    Asked::ForkPreload => ("fork preload (mm)", low * 1e3, high * 1e3),
                    Asked::ShockPreload => ("shock preload (mm)", low * 1e3, high * 1e3),
                };
                let why = if too_much {
                    "the lowest is too much"
                } else {
                    "the highest is too little"
                };
                write!(
                    f,
                    "no {name} from {low} to {high} gives the wanted sag: {why}"
                )
            }
            Self::WrongSpring(asked) => write!(f, "{asked:?} makes no sense for this kind of fork"),
            Self::Search(problem) => problem.fmt(f),
        }
    }
}

impl core::error::Error for StanceError {}

impl From<OutOfRange> for StanceError {
    fn from(problem: OutOfRange) -> Self {
        Self::Input(problem)
    }
}
