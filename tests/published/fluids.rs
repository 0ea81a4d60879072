//! Oil and its flow against printed and exact values (`data/fluid_plate.csv`, `data/iso3448_vg.csv`).

use sagwright_core::bike::damping::Oil;
use sagwright_core::bike::damping::oil::{Fluid, iso_grade};
use sagwright_core::bike::damping::orifice::{Passage, orifice_m3_per_s};
use sagwright_core::units::{celsius, kelvin};
use serde::Deserialize;

use crate::{near, table};

#[derive(Deserialize)]
struct Row {
    id: String,
    source: String,
    quantity: String,
    published: Option<f64>,
    computed: f64,
}

fn rows(id: &str) -> Vec<Row> {
    let mut rows: Vec<Row> = table(include_str!("data/fluid_plate.csv"));
    rows.retain(|row| row.id == id);
    assert!(!rows.is_empty(), "the table has rows of {id}");
    rows
}

/// The number behind `mark` in words such as `d=2.0mm dp=10.0bar`.
fn after(text: &str, mark: &str) -> f64 {
    let rest = text.split_once(mark).expect("the row has this figure").1;
    let end = rest
        .find(|c: char| !c.is_ascii_digit() && c != '.' && c != '-')
        .unwrap_or(rest.len());
    rest[..end].parse().expect("a figure")
}

const M3_PER_S_IN_L_PER_MIN: f64 = 60_000.0;

/// Q = Cd A √(2 Δp / ρ) (Merritt, Hydraulic Control Systems; exact, flows in l/min). A passage without laminar part
/// has the same with the project's own discharge coefficient.
#[test]
fn orifice_flow() {
    let mut seen = 0;
    for row in rows("orifice") {
        if !row.quantity.starts_with("Q Cd") {
            continue;
        }
        let at = |mark| after(&row.quantity, mark);
        let (discharge, diameter_m) = (at("Cd="), at(" d=") * 1e-3);
        let (drop_pa, density) = (at("dp=") * 1e5, at("rho="));
        let area_m2 = core::f64::consts::PI / 4.0 * diameter_m * diameter_m;
        let flow = orifice_m3_per_s(discharge, area_m2, drop_pa, density);
        near(
            &row.quantity,
            flow * M3_PER_S_IN_L_PER_MIN,
            row.computed,
            1e-6,
        );
        if (discharge - 0.7).abs() < 1e-9 {
            let hole = Passage {
                area_m2,
                laminar_per_m3: 0.0,
            };
            let fluid = Fluid {
                density_kg_per_m3: density,
                viscosity_pa_s: 0.02,
            };
            near("drop", hole.drop_pa(flow, fluid), drop_pa, 1e-9);
        }
        seen += 1;
    }
    assert_eq!(seen, 4);
}

/// Laminar flow through an annular gap, Q = π D h³ Δp / (12 μ l) (plane Poiseuille flow; exact).
#[test]
fn laminar_gap() {
    let rows = rows("annulus");
    let (diameter_m, gap_m, length_m, viscosity_pa_s) = (50e-3, 0.05e-3, 10e-3, 0.0131);
    let gap = Passage::slot(core::f64::consts::PI * diameter_m, gap_m, length_m);
    let fluid = Fluid {
        density_kg_per_m3: 870.0,
        viscosity_pa_s,
    };
    let flow = 1e5 / gap.laminar(fluid);
    near("gap", flow * M3_PER_S_IN_L_PER_MIN, rows[0].computed, 1e-6);
}

/// A public spreadsheet of ASTM D341 (high), which takes T = t + 273 and starts from 32 mm²/s at 40 °C and 5.4 at 100 °C.
/// Its viscosity at 80 °C is printed with two digits.
#[test]
fn walther_against_a_spreadsheet() {
    let oil = Oil::new(870.0, (kelvin(313.0), 32.0), (kelvin(373.0), 5.4)).expect("a usual oil");
    for row in rows("d341") {
        let Some(printed) = row.published else {
            continue;
        };
        let (got, tolerance) = match row.quantity.as_str() {
            "A" => (oil.walther().0, 1e-5),
            "B" => (oil.walther().1, 2e-5),
            _ => (oil.kinematic_mm2_per_s(kelvin(353.0)), 5e-3),
        };
        near(&row.quantity, got, printed, tolerance);
    }
}

/// The same line through 273.15 K for two oils (computed independently), from −20 to 100 °C.
#[test]
fn viscosity_cold_and_hot() {
    let thick = Oil::of_sheet(870.0, 32.0, 5.4).expect("a usual oil");
    let thin = Oil::of_sheet(870.0, 15.0, 3.4).expect("a usual oil");
    let mut seen = 0;
    for row in rows("d341") {
        let oil = match row.source.as_str() {
            source if source.starts_with("VG32") => thick,
            source if source.starts_with("VG15") => thin,
            _ => continue,
        };
        let degrees = after(&row.quantity, "nu(");
        let got = oil.kinematic_mm2_per_s(celsius(degrees));
        near(&row.quantity, got, row.computed, 1e-6);
        seen += 1;
    }
    assert_eq!(seen, 21);
}

#[derive(Deserialize)]
struct Grade {
    #[serde(rename = "ISO_VG")]
    number: u16,
    #[serde(rename = "min_cSt_40C")]
    low: f64,
    mid: f64,
    max: f64,
}

/// ISO 3448: every grade at its middle, just inside its limits and just outside them (medium: limits from memory).
#[test]
fn viscosity_grades() {
    for row in table::<Grade>(include_str!("data/iso3448_vg.csv")) {
        for inside in [row.mid, row.low * 1.0001, row.max * 0.9999] {
            assert_eq!(iso_grade(inside), Some(row.number), "{inside}");
        }
        for outside in [row.low * 0.9999, row.max * 1.0001] {
            assert_ne!(iso_grade(outside), Some(row.number), "{outside}");
        }
    }
}

/// The generic oils are of the grades they are called after, and thin out by more than half from 40 to 100 °C.
#[test]
fn generic_oils() {
    for (oil, grade) in [
        (Oil::light(), 15),
        (Oil::medium(), 32),
        (Oil::engine_like(), 68),
    ] {
        assert_eq!(
            iso_grade(oil.kinematic_mm2_per_s(celsius(40.0))),
            Some(grade)
        );
        let [warm, hot] = [40.0, 100.0].map(|degrees| oil.kinematic_mm2_per_s(celsius(degrees)));
        assert!(hot < 0.5 * warm);
        // Mineral oil swells by some 0.7 % in 10 K (common practice).
        let [cool, later] = [15.0, 25.0].map(|degrees| oil.density_kg_per_m3(celsius(degrees)));
        near("swelling", cool / later - 1.0, 0.007, 0.1);
    }
}
