//! Damping oil: how dense and how thick it is, warm and cold.

use super::super::limits::{OutOfRange, within};
use crate::units::{ThermodynamicTemperature, celsius};

/// Temperature at which densities of oils are quoted, K (15 °C).
const DENSITY_K: f64 = 288.15;
/// Constant of lubricating oils in the volume correction, kg/m³ per K (API MPMS 11.1, group of lubricants, from memory).
const EXPANSION_KG_PER_M3_K: f64 = 0.627_8;
/// Offset of Walther's formula, mm²/s, for oils above 2 mm²/s (ASTM D341).
const WALTHER_MM2_PER_S: f64 = 0.7;
/// Relative width of a grade to either side (ISO 3448).
const GRADE_WIDTH: f64 = 0.10;
/// Grades and their middles at 40 °C, mm²/s (ISO 3448).
const GRADES: [(u16, f64); 18] = [
    (2, 2.2),
    (3, 3.2),
    (5, 4.6),
    (7, 6.8),
    (10, 10.0),
    (15, 15.0),
    (22, 22.0),
    (32, 32.0),
    (46, 46.0),
    (68, 68.0),
    (100, 100.0),
    (150, 150.0),
    (220, 220.0),
    (320, 320.0),
    (460, 460.0),
    (680, 680.0),
    (1000, 1000.0),
    (1500, 1500.0),
];

/// The viscosity grade an oil of this kinematic viscosity at 40 °C belongs to, if any: grades leave gaps (ISO 3448).
pub fn iso_grade(at_40_mm2_per_s: f64) -> Option<u16> {
    GRADES
        .iter()
        .find(|(_, middle)| (at_40_mm2_per_s - middle).abs() <= GRADE_WIDTH * middle)
        .map(|&(grade, _)| grade)
}

/// A mineral or synthetic oil between −40 and 150 °C.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Oil {
    /// Density at 15 °C, kg/m³.
    density_kg_per_m3: f64,
    /// Share of its volume taken by air.
    air_share: f64,
    /// Constant of Walther's line.
    walther_a: f64,
    /// Fall of Walther's line with the logarithm of temperature.
    walther_b: f64,
}

/// What an oil is at one temperature.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fluid {
    /// Density, kg/m³.
    pub density_kg_per_m3: f64,
    /// Dynamic viscosity, Pa s.
    pub viscosity_pa_s: f64,
}

impl Oil {
    /// An oil whose kinematic viscosity in mm²/s is known at two temperatures, colder first.
    ///
    /// ASTM D341 (Walther): log log(ν + 0.7) = A − B log T, for 2 mm²/s and more. Density 700 to 1100 kg/m³ at 15 °C.
    pub fn new(
        density_kg_per_m3: f64,
        colder: (ThermodynamicTemperature, f64),
        warmer: (ThermodynamicTemperature, f64),
    ) -> Result<Self, OutOfRange> {
        within("oil density in kg/m3", density_kg_per_m3, 700.0, 1100.0)?;
        let (cold_k, warm_k) = (colder.0.value, warmer.0.value);
        within("colder oil temperature in K", cold_k, 233.15, 423.15)?;
        within("warmer oil temperature in K", warm_k, cold_k + 5.0, 428.15)?;
        within("viscosity when colder in mm2/s", colder.1, 2.0, 1e6)?;
        within("viscosity when warmer in mm2/s", warmer.1, 1.0, colder.1)?;
        let height = |mm2_per_s: f64| libm::log10(libm::log10(mm2_per_s + WALTHER_MM2_PER_S));
        let walther_b =
            (height(colder.1) - height(warmer.1)) / (libm::log10(warm_k) - libm::log10(cold_k));
        Ok(Self {
            density_kg_per_m3,
            air_share: 0.0,
            walther_a: height(colder.1) + walther_b * libm::log10(cold_k),
            walther_b,
        })
    }

    /// An oil by its viscosities at 40 and 100 °C in mm²/s, as data sheets give them.
    pub fn of_sheet(density_kg_per_m3: f64, at_40: f64, at_100: f64) -> Result<Self, OutOfRange> {
        Self::new(
            density_kg_per_m3,
            (celsius(40.0), at_40),
            (celsius(100.0), at_100),
        )
    }

    /// Light fork oil: grade 15, 3.8 mm²/s at 100 °C (common practice, from memory).
    pub fn light() -> Self {
        Self::sound(850.0, 15.0, 3.8)
    }

    /// Medium fork oil: grade 32, 6.2 mm²/s at 100 °C (common practice, from memory).
    pub fn medium() -> Self {
        Self::sound(860.0, 32.0, 6.2)
    }

    /// Oil as thick as a light engine oil: grade 68, 10.5 mm²/s at 100 °C (common practice, from memory).
    pub fn engine_like() -> Self {
        Self::sound(870.0, 68.0, 10.5)
    }

    /// This oil with so much of its volume taken by air, 0 to 0.6, as after long use or once the gas behind it is lost.
    ///
    /// Air adds volume and next to no mass, so a valve that is ruled by the density of what passes it holds that much
    /// less. That the froth is squeezed in the stroke is no part of this.
    #[must_use]
    pub fn with_air(self, share: f64) -> Self {
        Self {
            air_share: share.clamp(0.0, 0.6),
            ..self
        }
    }

    fn sound(density: f64, at_40: f64, at_100: f64) -> Self {
        Self::of_sheet(density, at_40, at_100).expect(
            "the three oils written above lie within the limits, as the published checks prove",
        )
    }

    /// Constants A and B of Walther's line.
    pub fn walther(&self) -> (f64, f64) {
        (self.walther_a, self.walther_b)
    }

    /// Kinematic viscosity, mm²/s.
    pub fn kinematic_mm2_per_s(&self, temperature: ThermodynamicTemperature) -> f64 {
        let height = self.walther_a - self.walther_b * libm::log10(temperature.value);
        libm::exp10(libm::exp10(height)) - WALTHER_MM2_PER_S
    }

    /// Density, kg/m³: `ρ_15` exp(−α ΔT (1 + 0.8 α ΔT)) with α = 0.6278 / `ρ_15` (API MPMS 11.1, from memory).
    pub fn density_kg_per_m3(&self, temperature: ThermodynamicTemperature) -> f64 {
        let swell =
            EXPANSION_KG_PER_M3_K / self.density_kg_per_m3 * (temperature.value - DENSITY_K);
        self.density_kg_per_m3 * libm::exp(-swell * (1.0 + 0.8 * swell))
    }

    /// The oil at a temperature of −40 to 150 °C.
    pub fn at(&self, temperature: ThermodynamicTemperature) -> Result<Fluid, OutOfRange> {
        within("oil temperature in K", temperature.value, 233.15, 423.15)?;
        let density_kg_per_m3 = self.density_kg_per_m3(temperature);
        Ok(Fluid {
            density_kg_per_m3: density_kg_per_m3 * (1.0 - self.air_share),
            viscosity_pa_s: 1e-6 * self.kinematic_mm2_per_s(temperature) * density_kg_per_m3,
        })
    }
}
