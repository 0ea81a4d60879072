//! Standard atmosphere (ISO 2533), against `ambiance` 1.3.1 (computed; `data/isa_pressure.csv`).

use sagwright_core::bike::atmosphere::standard_pressure;
use sagwright_core::units::metre;
use serde::Deserialize;

use crate::table;

#[derive(Deserialize)]
struct Row {
    #[serde(rename = "h_geometric_m")]
    altitude_m: f64,
    #[serde(rename = "p_ambiance_Pa")]
    pressure_pa: f64,
}

/// The two agree to the 0.03 Pa that is known between the tabulated and the closed form.
#[test]
fn pressure_by_altitude() {
    for row in table::<Row>(include_str!("data/isa_pressure.csv")) {
        let got_pa = standard_pressure(metre(row.altitude_m))
            .expect("within range")
            .value;
        let error_pa = (got_pa - row.pressure_pa).abs();
        assert!(
            error_pa < 0.03,
            "{} m: off by {error_pa} Pa",
            row.altitude_m
        );
    }
}

#[test]
fn altitude_out_of_range_is_refused() {
    assert!(standard_pressure(metre(9001.0)).is_err());
    assert!(standard_pressure(metre(f64::NAN)).is_err());
}
