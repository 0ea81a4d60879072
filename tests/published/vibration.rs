//! Weightings and doses of vibration against ISO 5349-1, ISO 2631-1, ISO 8041-1 and the examples of ISO 5349-2.
//!
//! *High*: the printed numbers were read in public pages, second hand; no standard was read directly. The two columns
//! stand at different frequencies: ISO 8041-1 annex B and ISO 5349-1 table A.2 at the exact band centres 10^(n/10),
//! ISO 2631-1 table 3 at the nominal ones. Mixing them costs up to 2.5 %.

use core::f64::consts::PI;

use sagwright_core::feel::exposure::daily;
use sagwright_core::feel::filter::Filter;
use sagwright_core::feel::weighting::{BODY_LEVEL, BODY_UP, HANDS, Weighting};
use serde::Deserialize;

use crate::{near, table};

#[derive(Deserialize)]
struct Hands {
    #[serde(rename = "f_exact_Hz=10^(n/10)")]
    exact_hz: f64,
    #[serde(rename = "printed_ISO8041-1_AnnexB")]
    annex_b: f64,
    #[serde(rename = "printed_ISO5349-1_TableA.2")]
    table_a2: Option<f64>,
}

#[derive(Deserialize)]
struct Body {
    #[serde(rename = "f_nominal_Hz")]
    nominal_hz: f64,
    #[serde(rename = "f_exact_Hz=10^(n/10)")]
    exact_hz: f64,
    #[serde(rename = "printed_ISO8041-1_AnnexB")]
    annex_b: f64,
    #[serde(rename = "printed_ISO2631-1:1997_Table3")]
    table_3: f64,
}

fn hands() -> Vec<Hands> {
    table(include_str!("data/weighting_Wh.csv"))
}

fn body_up() -> Vec<Body> {
    table(include_str!("data/weighting_Wk.csv"))
}

fn body_level() -> Vec<Body> {
    table(include_str!("data/weighting_Wd.csv"))
}

/// Rounding of a number printed to four figures, relative.
const FOUR_FIGURES: f64 = 5.1e-4;
/// Rounding of a number printed to three figures, the smallest of them to two.
const THREE_FIGURES: f64 = 6.5e-3;

/// Every band of Wh at the exact centres.
#[test]
fn hands_by_table() {
    let rows = hands();
    let printed = rows.iter().filter(|row| row.table_a2.is_some()).count();
    assert_eq!((rows.len(), printed), (38, 28));
    for row in rows {
        let got = HANDS.factor(row.exact_hz);
        let what = format!("Wh at {} Hz", row.exact_hz);
        near(&what, got, row.annex_b, FOUR_FIGURES);
        if let Some(table_a2) = row.table_a2 {
            near(&what, got, table_a2, THREE_FIGURES);
        }
    }
}

/// Every band of Wk and Wd, both columns each at its own centres.
#[test]
fn body_by_table() {
    check_body("Wk", &BODY_UP, &body_up());
    check_body("Wd", &BODY_LEVEL, &body_level());
}

fn check_body<const N: usize>(name: &str, weighting: &Weighting<N>, rows: &[Body]) {
    assert_eq!(rows.len(), 37, "{name}");
    for row in rows {
        let what = format!("{name} at {} Hz", row.nominal_hz);
        near(
            &what,
            weighting.factor(row.exact_hz),
            row.annex_b,
            FOUR_FIGURES,
        );
        // The factor printed for Wd at 10 Hz fits neither the definition nor the rows around it.
        if !(name == "Wd" && (row.nominal_hz - 10.0).abs() < 1e-9) {
            near(
                &what,
                weighting.factor(row.nominal_hz),
                row.table_3,
                THREE_FIGURES,
            );
        }
    }
}

/// Factors at the reference frequencies of ISO 8041-1 table 1 (high), printed to three or four figures.
#[test]
fn reference_frequencies() {
    let hundred_hz = 100.0 / (2.0 * PI);
    near("Wh", HANDS.factor(5.0 * hundred_hz), 0.202, 5e-4);
    near("Wk", BODY_UP.factor(hundred_hz), 0.7718, 1e-4);
    near("Wd", BODY_LEVEL.factor(hundred_hz), 0.1261, 2e-4);
}

/// Gain of a running filter at frequencies in Hz, from its answer to a single unit value.
fn gains<const N: usize>(weighting: &Weighting<N>, step_s: f64, hz: &[f64]) -> Vec<f64> {
    let mut filter = Filter::<f64, N>::new(weighting, step_s);
    // The slowest limit, 0.4 Hz, fades as exp(−1.8 t): after 20 s nothing is left to rounding.
    let mut answer = Vec::new();
    let (mut at_s, mut input) = (0.0, 1.0);
    while at_s < 20.0 {
        answer.push(filter.step(input));
        input = 0.0;
        at_s += step_s;
    }
    let gain = |hz: &f64| {
        let (mut real, mut imaginary) = (0.0, 0.0);
        let mut time_s = 0.0;
        for value in &answer {
            let angle = 2.0 * PI * hz * time_s;
            real += value * libm::cos(angle);
            imaginary += value * libm::sin(angle);
            time_s += step_s;
        }
        libm::hypot(real, imaginary)
    };
    hz.iter().map(gain).collect()
}

/// Every band up to `to_hz` of the filter that runs along with a ride, within `relative` of the printed factor.
fn check_running<const N: usize>(
    name: &str,
    weighting: &Weighting<N>,
    rows: &[(f64, f64)],
    step_s: f64,
    to_hz: f64,
    relative: f64,
) {
    let (hz, printed): (Vec<f64>, Vec<f64>) = rows
        .iter()
        .filter(|(hz, _)| *hz <= to_hz * 1.01)
        .copied()
        .unzip();
    let mut worst: f64 = 0.0;
    for ((hz, printed), got) in hz.iter().zip(&printed).zip(gains(weighting, step_s, &hz)) {
        near(
            &format!("{name} at {hz} Hz, step {step_s} s"),
            got,
            *printed,
            relative,
        );
        worst = worst.max((got / weighting.factor(*hz) - 1.0).abs());
    }
    println!("{name}: step {step_s} s, to {to_hz} Hz: at most {worst:.2e} off the definition");
}

/// The running filters against every printed band of their reach.
///
/// ISO 8041-1 allows a meter 12 % up and 11 % down in the middle of its range (from memory). At steps of 0.5 ms the filters
/// are within 0.4 % up to 100 Hz and 2.2 % up to 250 Hz, at 1 ms within 1.4 % and 9.2 %.
#[test]
fn running_filters_by_table() {
    let hands: Vec<_> = hands()
        .iter()
        .map(|row| (row.exact_hz, row.annex_b))
        .collect();
    let pairs = |rows: Vec<Body>| -> Vec<_> {
        rows.iter().map(|row| (row.exact_hz, row.annex_b)).collect()
    };
    let (up, level) = (pairs(body_up()), pairs(body_level()));
    for (step_s, to_hz, relative) in [
        (5e-4, 100.0, 0.004),
        (5e-4, 250.0, 0.022),
        (1e-3, 100.0, 0.014),
        (1e-3, 250.0, 0.092),
    ] {
        check_running("Wh", &HANDS, &hands, step_s, to_hz, relative);
        check_running("Wk", &BODY_UP, &up, step_s, to_hz, relative);
        check_running("Wd", &BODY_LEVEL, &level, step_s, to_hz, relative);
    }
}

/// Worked days of ISO 5349-2:2001, E.2.1, E.2.4 and E.3, and of ISO 5349-1:2001, 5.3 (high), printed to one decimal.
#[test]
fn worked_days() {
    let days: [(&[(f64, f64)], f64); 4] = [
        (&[(7.4, 2.5)], 4.1),
        (&[(14.6, 10.0 / 9.0)], 5.4),
        (&[(4.6, 2.0), (6.0, 1.0), (3.6, 2.0)], 3.6),
        (&[(2.0, 1.0), (3.5, 3.0), (10.0, 0.5)], 3.4),
    ];
    for (parts, printed) in days {
        let got = daily(parts);
        assert!(
            (got - printed).abs() <= 0.05,
            "{parts:?}: {got} instead of {printed}"
        );
    }
}
