//! Random ground of a roughness class.

use super::dice::Dice;
use super::profile::STEP_M;

/// Reference spatial frequency of ISO 8608, cycles/m.
pub const REFERENCE_PER_M: f64 = 0.1;

/// Roughness classes of ISO 8608 that unmade ground can have; geometric means.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Roughness {
    /// Class C.
    C,
    /// Class D.
    D,
    /// Class E.
    E,
    /// Class F.
    F,
}

impl Roughness {
    /// Displacement power spectral density at 0.1 cycles/m, m³, geometric mean of the class (ISO 8608, by secondary sources).
    pub const fn density_m3(self) -> f64 {
        match self {
            Self::C => 256e-6,
            Self::D => 1024e-6,
            Self::E => 4096e-6,
            Self::F => 16_384e-6,
        }
    }
}

/// Ground of `count` heights every [`STEP_M`] with G(n) = `density_m3` (n / 0.1)⁻² between two spatial frequencies in cycles/m, as a sum
/// of harmonics of random phase: √(2 G Δn) cos(2 π n x + φ), where Δn is `lowest` (`roughness` of period 1 / `lowest`).
///
/// Wavelengths longer than a few wheelbases lift the whole bike and need not be asked for.
pub fn harmonics(
    count: usize,
    density_m3: f64,
    [lowest, highest]: [f64; 2],
    dice: &mut Dice,
) -> Vec<f64> {
    let mut heights = vec![0.0; count];
    let mut n = lowest;
    while n <= highest {
        let ratio = REFERENCE_PER_M / n;
        let amplitude = ratio * (2.0 * density_m3 * lowest).sqrt();
        let phase = dice.between(0.0, 2.0 * core::f64::consts::PI);
        // Turned on step by step instead of one cosine per place: (c, s) ← (c, s) rotated by 2 π n Δx.
        let turn = 2.0 * core::f64::consts::PI * n * STEP_M;
        let (sin, cos) = (libm::sin(turn), libm::cos(turn));
        let (mut c, mut s) = (libm::cos(phase), libm::sin(phase));
        for height in &mut heights {
            *height += amplitude * c;
            (c, s) = (c * cos - s * sin, c * sin + s * cos);
        }
        n += lowest;
    }
    heights
}
