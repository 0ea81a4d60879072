//! Tyres as springs: what is left of a wheel's hold on the ground between two bumps.

use super::limits::{OutOfRange, within};
use crate::intake::BikeClass;
use crate::units::{BAR_IN_PA, DampingRate, Length, Pressure, SpringRate};
use crate::units::{metre, newton_per_mm, newton_second_per_meter, to_bar};

/// One tyre on its rim, loaded through its contact with the ground.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tyre {
    /// Vertical rate, N/m.
    pub rate: SpringRate,
    /// Vertical damping while well pressed to the ground, N s/m.
    pub damping: DampingRate,
    /// Radius without load, m.
    pub radius: Length,
}

/// Pressure for which [`FRONT`] and [`REAR`] quote their rates, Pa gauge.
const QUOTED_PA: f64 = 0.85 * BAR_IN_PA;

/// How rate follows pressure at one end; common practice, from memory.
struct Knobbly {
    /// Rate at [`QUOTED_PA`], N/mm.
    quoted: f64,
    /// Rise of rate with pressure, N/mm per bar.
    per_bar: f64,
    /// What the carcass alone keeps, N/mm.
    least: f64,
    /// Beyond this it would no longer be an off-road tyre, N/mm.
    most: f64,
    /// Damping, N s/m.
    damping: f64,
}

const FRONT: Knobbly = Knobbly {
    quoted: 85.0,
    per_bar: 68.0,
    least: 80.0,
    most: 150.0,
    damping: 350.0,
};
const REAR: Knobbly = Knobbly {
    quoted: 100.0,
    per_bar: 70.0,
    least: 95.0,
    most: 180.0,
    damping: 400.0,
};

impl Knobbly {
    fn at(&self, pressure: Pressure, radius_m: f64) -> Result<Tyre, OutOfRange> {
        let bar = to_bar(pressure);
        within("tyre pressure in bar", bar, 0.2, 3.5)?;
        let rate = self.quoted + self.per_bar * (bar - QUOTED_PA / BAR_IN_PA);
        Ok(Tyre {
            rate: newton_per_mm(rate.clamp(self.least, self.most)),
            damping: newton_second_per_meter(self.damping),
            radius: metre(radius_m),
        })
    }
}

impl Tyre {
    /// The front tyre of a class at a gauge pressure of 0.2 to 3.5 bar.
    ///
    /// Radii are those of a tyre of usual section on a 21-inch rim, 17-inch on small wheels (common practice).
    pub fn front(kind: BikeClass, pressure: Pressure) -> Result<Self, OutOfRange> {
        let small = kind == BikeClass::SmallWheelYouth;
        FRONT.at(pressure, if small { 0.295 } else { 0.345 })
    }

    /// The rear tyre of a class at a gauge pressure of 0.2 to 3.5 bar, on an 18- or 19-inch rim, 14-inch on small wheels.
    pub fn rear(kind: BikeClass, pressure: Pressure) -> Result<Self, OutOfRange> {
        let small = kind == BikeClass::SmallWheelYouth;
        REAR.at(pressure, if small { 0.265 } else { 0.33 })
    }
}
