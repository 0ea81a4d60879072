//! Rates of helical springs against worked examples (`data/springs.csv`; answers there are rounded to 3 or 4 digits).

use sagwright_core::bike::coil::helical_rate;
use sagwright_core::units::{
    INCH_IN_M, LBF_IN_N, PSI_IN_PA, metre, mm, newton_per_m, pascal, to_newton_per_mm,
};
use serde::Deserialize;

use crate::{near, table};

#[derive(Deserialize)]
struct Row {
    id: String,
    quantity: String,
    published: f64,
}

/// The printed answer of one example.
fn printed(id: &str, quantity: &str) -> f64 {
    let rows: Vec<Row> = table(include_str!("data/springs.csv"));
    let row = rows
        .iter()
        .find(|row| row.id == id && row.quantity.starts_with(quantity));
    row.expect("the table holds this example").published
}

/// Shigley's Mechanical Engineering Design, problem 10-3 (high): music wire d = 2.5 mm, D = 28.5 mm, 13 active coils,
/// G = 81.0e9 Pa. The tolerance is the rounding of the answer.
#[test]
fn shigley_problem_10_3() {
    let rate = helical_rate(pascal(81.0e9), mm(2.5), mm(28.5), 13.0);
    near(
        "rate",
        to_newton_per_mm(rate),
        printed("shigley_P10_3", "k"),
        4e-4,
    );
}

/// Shigley, example 10-1 (medium: from memory): d = 0.037 in, D taken as 0.400 in, G = 11.85 Mpsi, 10.5 active coils.
#[test]
fn shigley_example_10_1() {
    let inch = |value: f64| metre(value * INCH_IN_M);
    let rate = helical_rate(pascal(11.85e6 * PSI_IN_PA), inch(0.037), inch(0.400), 10.5);
    let printed = newton_per_m(printed("shigley_Ex10_1", "k") * LBF_IN_N / INCH_IN_M);
    near("rate", rate.value, printed.value, 1e-3);
}

/// Barton and Fieldhouse, Automotive Chassis Engineering, p. 213 (high): active coils for a wanted rate, d = 12.7 mm,
/// G = 79.3e9 Pa. Here the printed number of coils must give back the rate the example asked for.
#[test]
fn barton_page_213() {
    for (id, mean_mm, wanted) in [
        ("barton_p213_front", 120.0, 19.3),
        ("barton_p213_rear", 100.0, 42.3),
    ] {
        let rate = helical_rate(
            pascal(79.3e9),
            mm(12.7),
            mm(mean_mm),
            printed(id, "n for k"),
        );
        near(id, to_newton_per_mm(rate), wanted, 1e-3);
    }
}
