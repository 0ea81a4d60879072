//! Random ground against ISO 8608 (`data/iso8608_classes.csv`, from secondary sources: high for the classes).

#![expect(clippy::cast_precision_loss, reason = "a few thousand places")]

use sagwright_core::ride::ground::dice::Dice;
use sagwright_core::ride::ground::profile::STEP_M;
use sagwright_core::ride::ground::roughness::{Roughness, harmonics};
use serde::Deserialize;

use crate::{near, table};

#[derive(Deserialize)]
struct Row {
    class: String,
    lower_1e_6_m3: Option<f64>,
    mean_1e_6_m3: f64,
    upper_1e_6_m3: Option<f64>,
    rms_mm: f64,
}

fn row(class: Roughness) -> Row {
    let rows: Vec<Row> = table(include_str!("data/iso8608_classes.csv"));
    let name = format!("{class:?}");
    rows.into_iter()
        .find(|row| row.class == name)
        .expect("the table holds this class")
}

const CLASSES: [Roughness; 4] = [Roughness::C, Roughness::D, Roughness::E, Roughness::F];

/// The geometric means are those of the table and lie in the middle of their limits.
#[test]
fn classes_have_their_density() {
    for class in CLASSES {
        let row = row(class);
        near("mean", class.density_m3(), row.mean_1e_6_m3 * 1e-6, 1e-12);
        let (Some(lower), Some(upper)) = (row.lower_1e_6_m3, row.upper_1e_6_m3) else {
            panic!("these classes have both limits");
        };
        near("middle", (lower * upper).sqrt(), row.mean_1e_6_m3, 1e-12);
    }
}

/// One period of the ground, taken apart again: the power of every harmonic over the distance between two is
/// G(n) = G(0.1) (n / 0.1)⁻², exactly; in the sum that gives the slope of −2 and the roughness asked for.
#[test]
fn generated_ground_has_the_spectrum_of_its_class() {
    let [lowest, highest] = [0.05, 4.0];
    // One period of 20 m.
    let count = 2000;
    for (seed, class) in CLASSES.into_iter().enumerate() {
        let mut dice = Dice::seeded(seed as u64);
        let heights = harmonics(count, class.density_m3(), [lowest, highest], &mut dice);
        for harmonic in [1_u32, 2, 3, 7, 20, 41, 79] {
            let n = lowest * f64::from(harmonic);
            let (mut re, mut im) = (0.0, 0.0);
            for (i, height) in heights.iter().enumerate() {
                let angle = 2.0 * core::f64::consts::PI * n * i as f64 * STEP_M;
                re += height * libm::cos(angle);
                im += height * libm::sin(angle);
            }
            let amplitude = 2.0 * (re * re + im * im).sqrt() / count as f64;
            let density = amplitude * amplitude / 2.0 / lowest;
            let wanted = class.density_m3() * (0.1 / n) * (0.1 / n);
            near(&format!("{class:?} at {n} per m"), density, wanted, 1e-6);
        }
        // Above the highest there is nothing.
        let n = 4.5;
        let (mut re, mut im) = (0.0, 0.0);
        for (i, height) in heights.iter().enumerate() {
            let angle = 2.0 * core::f64::consts::PI * n * i as f64 * STEP_M;
            re += height * libm::cos(angle);
            im += height * libm::sin(angle);
        }
        assert!((re * re + im * im).sqrt() / (count as f64) < 1e-9);
    }
}

/// Root mean square height over the whole band of the table, 0.01 to 10 cycles/m: σ² = G n₀² (1/n₁ − 1/n₂). A sum of harmonics puts the
/// first of them at the lower limit and so holds more of the longest waves: π²/6 of it in place of 1, less what is above the band.
#[test]
fn generated_ground_has_the_height_of_its_class() {
    // One period of 100 m.
    let count = 10_000;
    for class in CLASSES {
        let mut dice = Dice::seeded(11);
        let heights = harmonics(count, class.density_m3(), [0.01, 10.0], &mut dice);
        let square: f64 = heights.iter().map(|h| h * h).sum::<f64>() / count as f64;
        let excess = (core::f64::consts::PI * core::f64::consts::PI / 6.0 - 1e-3) / (1.0 - 1e-3);
        let wanted = row(class).rms_mm * 1e-3 * excess.sqrt();
        near(&format!("{class:?}"), square.sqrt(), wanted, 1e-3);
    }
}
