//! The quantities of the trade on top of [`uom`], which lacks names for two of them.
//!
//! Everything is SI inside; constructors and readers carry the unit in their name.

use core::marker::PhantomData;

pub use uom::si::f64::ThermodynamicTemperature;
pub use uom::si::f64::{Angle, Area, Energy, Force, Length, Mass, Pressure, Ratio};
use uom::si::f64::{MassRate, SurfaceTension};
use uom::si::{Dimension, Quantity, Units};

/// Spring rate, N/m. Same dimension as surface tension, which is where `uom` keeps it.
pub type SpringRate = SurfaceTension;

/// Viscous damping coefficient, N s/m (dimension kg/s).
pub type DampingRate = MassRate;

/// Kilogram-force in newtons, exact (standard gravity, CGPM 1901).
pub const KGF_IN_N: f64 = 9.806_65;
/// Pound-force in newtons, exact (international pound and standard gravity).
pub const LBF_IN_N: f64 = 4.448_221_615_260_5;
/// Pound in kilograms, exact (international agreement of 1959).
pub const LB_IN_KG: f64 = 0.453_592_37;
/// Inch in metres, exact (international agreement of 1959).
pub const INCH_IN_M: f64 = 0.025_4;
/// Foot in metres, exact (international agreement of 1959).
pub const FOOT_IN_M: f64 = 0.304_8;
/// Pound-force per square inch in pascals (lbf / in², from the exact factors above).
pub const PSI_IN_PA: f64 = LBF_IN_N / (INCH_IN_M * INCH_IN_M);
/// Bar in pascals, exact.
pub const BAR_IN_PA: f64 = 1e5;
/// 0 °C in kelvin, exact (SI brochure).
pub const ZERO_CELSIUS_IN_K: f64 = 273.15;
/// Standard acceleration of gravity, m/s² (CGPM 1901, exact by definition).
pub const STANDARD_GRAVITY: f64 = 9.806_65;

/// A quantity from its value in SI base units; `const`, which `uom`'s own constructors are not.
const fn si<D, U>(value: f64) -> Quantity<D, U, f64>
where
    D: Dimension + ?Sized,
    U: Units<f64> + ?Sized,
{
    Quantity {
        dimension: PhantomData,
        units: PhantomData,
        value,
    }
}

/// Spring rate from newtons per metre.
pub const fn newton_per_m(value: f64) -> SpringRate {
    si(value)
}

/// Spring rate from newtons per millimetre.
pub const fn newton_per_mm(value: f64) -> SpringRate {
    si(value * 1e3)
}

/// Spring rate in newtons per millimetre.
pub const fn to_newton_per_mm(rate: SpringRate) -> f64 {
    rate.value * 1e-3
}

/// Length from metres.
pub const fn metre(value: f64) -> Length {
    si(value)
}

/// Length from millimetres.
pub const fn mm(value: f64) -> Length {
    si(value * 1e-3)
}

/// Length in millimetres.
pub const fn to_mm(length: Length) -> f64 {
    length.value * 1e3
}

/// Area from square metres.
pub const fn square_metre(value: f64) -> Area {
    si(value)
}

/// Mass from kilograms.
pub const fn kg(value: f64) -> Mass {
    si(value)
}

/// Force from newtons.
pub const fn newton(value: f64) -> Force {
    si(value)
}

/// Energy from joules.
pub const fn joule(value: f64) -> Energy {
    si(value)
}

/// Pressure from pascals. Whether gauge or absolute is said by the receiver.
pub const fn pascal(value: f64) -> Pressure {
    si(value)
}

/// Pressure from bar. Whether gauge or absolute is said by the receiver.
pub const fn bar(value: f64) -> Pressure {
    si(value * BAR_IN_PA)
}

/// Pressure in bar. Whether gauge or absolute is said by the giver.
pub const fn to_bar(pressure: Pressure) -> f64 {
    pressure.value / BAR_IN_PA
}

/// Temperature from kelvin.
pub const fn kelvin(value: f64) -> ThermodynamicTemperature {
    si(value)
}

/// Temperature from degrees Celsius.
pub const fn celsius(value: f64) -> ThermodynamicTemperature {
    si(value + ZERO_CELSIUS_IN_K)
}

/// Temperature in degrees Celsius.
pub const fn to_celsius(temperature: ThermodynamicTemperature) -> f64 {
    temperature.value - ZERO_CELSIUS_IN_K
}

/// Angle from radians.
pub const fn radian(value: f64) -> Angle {
    si(value)
}

/// Angle from degrees.
pub const fn degrees(value: f64) -> Angle {
    si(value * core::f64::consts::PI / 180.0)
}

/// Damping rate from N s/m.
pub const fn newton_second_per_meter(value: f64) -> DampingRate {
    si(value)
}

/// A figure that is a range rather than a number, because friction or usage makes it one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band<T> {
    /// Lower end.
    pub low: T,
    /// The figure to work with when one is needed.
    pub middle: T,
    /// Upper end.
    pub high: T,
}

impl<T: Copy> Band<T> {
    /// Changes every figure of the band in the same way. The order of the ends is kept as it is.
    pub fn map<U>(self, mut change: impl FnMut(T) -> U) -> Band<U> {
        Band {
            low: change(self.low),
            middle: change(self.middle),
            high: change(self.high),
        }
    }
}

impl<T: PartialOrd> Band<T> {
    /// Whether `value` lies between the ends, both included.
    pub fn contains(&self, value: &T) -> bool {
        self.low <= *value && *value <= self.high
    }
}
