//! The air around the bike: pressure by altitude, and what a closed chamber does when it changes.

use super::limits::{OutOfRange, within};
use crate::units::{Length, Pressure, STANDARD_GRAVITY, ThermodynamicTemperature, celsius, pascal};

/// Sea-level pressure of the standard atmosphere, Pa (ISO 2533).
pub const SEA_LEVEL_PA: f64 = 101_325.0;
/// Sea-level temperature of the standard atmosphere, K (ISO 2533).
const SEA_LEVEL_K: f64 = 288.15;
/// Fall of temperature with altitude up to 11 km, K/m (ISO 2533).
const LAPSE_K_PER_M: f64 = 0.006_5;
/// Gas constant of air, J/(kg K) (ISO 2533).
const AIR_J_PER_KG_K: f64 = 287.052_87;
/// Earth radius that turns geometric into geopotential altitude, m (ISO 2533).
const EARTH_RADIUS_M: f64 = 6_356_766.0;

/// Air at one place: what surrounds the bike or what was pumped in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Air {
    /// Absolute pressure, Pa.
    pub ambient: Pressure,
    /// Temperature, K.
    pub temperature: ThermodynamicTemperature,
}

impl Air {
    /// Sea level and 20 °C, the state at which class figures are quoted.
    pub const WORKSHOP: Self = Self {
        ambient: pascal(SEA_LEVEL_PA),
        temperature: celsius(20.0),
    };

    /// Air at a geometric altitude of −500 to 9000 m and any temperature of −40 to 150 °C.
    ///
    /// Pressure is the standard atmosphere's (ISO 2533): weather moves the real one by some 2 %.
    /// The upper temperature is that of hot oil, since the air in question may be inside a fork.
    pub fn at(altitude: Length, temperature: ThermodynamicTemperature) -> Result<Self, OutOfRange> {
        within("temperature in K", temperature.value, 233.15, 423.15)?;
        Ok(Self {
            ambient: standard_pressure(altitude)?,
            temperature,
        })
    }
}

/// Absolute pressure of the standard atmosphere at a geometric altitude of −500 to 9000 m (ISO 2533).
pub fn standard_pressure(altitude: Length) -> Result<Pressure, OutOfRange> {
    let h = altitude.value;
    within("altitude in m", h, -500.0, 9000.0)?;
    let geopotential_m = EARTH_RADIUS_M * h / (EARTH_RADIUS_M + h);
    let ratio = 1.0 - LAPSE_K_PER_M * geopotential_m / SEA_LEVEL_K;
    let exponent = STANDARD_GRAVITY / (AIR_J_PER_KG_K * LAPSE_K_PER_M);
    Ok(pascal(SEA_LEVEL_PA * libm::pow(ratio, exponent)))
}

/// Where chambers were filled and where the bike rides.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Surroundings {
    /// Air when gas was charged and fork legs were last opened.
    pub filled: Air,
    /// Ambient pressure where the bike rides, and temperature of its gas there.
    pub riding: Air,
    /// Whether the fork legs were opened to the air at the place of the ride, which lets trapped air out.
    pub bled: bool,
}

impl Surroundings {
    /// Filled and ridden in the air in which class figures are quoted.
    pub const USUAL: Self = Self::same(Air::WORKSHOP);

    /// Filled and ridden in the same air.
    pub const fn same(air: Air) -> Self {
        Self {
            filled: air,
            riding: air,
            bled: true,
        }
    }
}

/// What a gauge reads on a chamber of constant volume after temperature and ambient pressure changed.
///
/// Gay-Lussac: absolute pressure is proportional to absolute temperature. Gauge is absolute less ambient.
/// Ideal gas; against real nitrogen or air the error to 20 bar between −10 and 60 °C is below 0.6 % (see the published checks).
pub fn gauge_after(gauge: Pressure, filled: Air, now: Air) -> Pressure {
    (gauge + filled.ambient) * (now.temperature.value / filled.temperature.value) - now.ambient
}

/// What to pump in air `filling` so that the chamber reads `wanted` gauge in air `riding`.
pub fn gauge_to_set(wanted: Pressure, filling: Air, riding: Air) -> Pressure {
    gauge_after(wanted, riding, filling)
}

/// Absolute pressure now of gas shut in at `absolute` when its temperature was `filled`.
pub(crate) fn warmed_pa(absolute_pa: f64, filled: Air, now: Air) -> f64 {
    absolute_pa * (now.temperature.value / filled.temperature.value)
}
