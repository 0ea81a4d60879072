//! The quantities of the trade on top of [`uom`], which lacks names for two of them.
//!
//! Everything is SI inside; constructors and readers carry the unit in their name.

pub use uom::si::f64::{
    Angle, Area, Energy, Force, Length, Mass, Pressure, Ratio, Velocity, Volume,
};
use uom::si::f64::{MassRate, SurfaceTension};
pub use uom::si::f64::{TemperatureInterval, ThermodynamicTemperature};

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

/// Spring rate from newtons per millimetre.
pub fn newton_per_mm(value: f64) -> SpringRate {
    SpringRate::new::<uom::si::surface_tension::newton_per_meter>(value * 1e3)
}

/// Spring rate in newtons per millimetre.
pub fn to_newton_per_mm(rate: SpringRate) -> f64 {
    rate.value * 1e-3
}

/// Length from millimetres.
pub fn mm(value: f64) -> Length {
    Length::new::<uom::si::length::meter>(value * 1e-3)
}

/// Length in millimetres.
pub fn to_mm(length: Length) -> f64 {
    length.value * 1e3
}

/// Mass from kilograms.
pub fn kg(value: f64) -> Mass {
    Mass::new::<uom::si::mass::kilogram>(value)
}

/// Force from newtons.
pub fn newton(value: f64) -> Force {
    Force::new::<uom::si::force::newton>(value)
}

/// Pressure from bar. Whether gauge or absolute is said by the receiver.
pub fn bar(value: f64) -> Pressure {
    Pressure::new::<uom::si::pressure::pascal>(value * BAR_IN_PA)
}

/// Pressure in bar. Whether gauge or absolute is said by the giver.
pub fn to_bar(pressure: Pressure) -> f64 {
    pressure.value / BAR_IN_PA
}

/// Temperature from degrees Celsius.
pub fn celsius(value: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<uom::si::thermodynamic_temperature::kelvin>(
        value + ZERO_CELSIUS_IN_K,
    )
}

/// Angle from degrees.
pub fn degrees(value: f64) -> Angle {
    Angle::new::<uom::si::angle::radian>(value * core::f64::consts::PI / 180.0)
}

/// Damping rate from N s/m.
pub fn newton_second_per_meter(value: f64) -> DampingRate {
    DampingRate::new::<uom::si::mass_rate::kilogram_per_second>(value)
}
