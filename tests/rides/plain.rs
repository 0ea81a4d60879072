//! Vehicles of the textbooks, as bikes: springs, dampers and tyres without kinks.

use sagwright_core::bike::damping::{DamperLaw, ValveLaw};
use sagwright_core::ride::Bike;
use sagwright_core::ride::bike::Forces;
use sagwright_core::ride::ground::Course;
use sagwright_core::ride::ground::course::Riding;
use sagwright_core::ride::parts::Parts;

/// So small that it does not count, and so stiff that it does not give, beside the figures of an example.
const NOTHING: f64 = 1e-6;

/// A body on two springs, each on a wheel on a tyre.
#[derive(Debug, Clone, Copy)]
pub struct Plain {
    pub body_kg: f64,
    pub inertia_kg_m2: f64,
    /// Springs ahead of and behind the centre, m.
    pub away_m: [f64; 2],
    pub wheel_kg: [f64; 2],
    pub spring_n_per_m: [f64; 2],
    pub damper_n_s_per_m: [f64; 2],
    pub tyre_n_per_m: [f64; 2],
    /// Friction along each spring, N, and the way it gives before it slips, m.
    pub friction_n: [f64; 2],
    pub give_m: f64,
}

impl Plain {
    pub fn bike(&self) -> Bike<f64> {
        let g = sagwright_core::units::STANDARD_GRAVITY;
        let wheelbase_m = self.away_m[0] + self.away_m[1];
        let rest_n = [
            self.body_kg * g * self.away_m[1] / wheelbase_m,
            self.body_kg * g * self.away_m[0] / wheelbase_m,
        ];
        let rest_m = 0.5;
        let parts = Parts {
            sprung_kg: self.body_kg,
            pitch_kg_m2: self.inertia_kg_m2,
            front_kg: self.wheel_kg[0],
            rear_kg: self.wheel_kg[1],
            rider_kg: NOTHING,
            front_ahead_m: self.away_m[0],
            rear_behind_m: self.away_m[1],
            body_ahead_m: 0.0,
            grips_ahead_m: 0.0,
            pegs_above_m: 0.0,
            grips_above_m: 0.0,
            per_cos: 1.0,
            tan: 0.0,
            ratio: [1.0, 0.0, 0.0],
            tyre_n_per_m: self.tyre_n_per_m,
            tyre_n_s_per_m: [0.0; 2],
            friction_n_per_m: self.friction_n.map(|n| n / self.give_m),
            side_friction: 0.0,
            shaft_friction_n: self.friction_n[1],
            leg: [NOTHING, 0.0, 1.0],
            arm: [0.0; 2],
            hold: [0.0; 3],
            height_m: 0.0,
            transfer_kg_m: 0.0,
            total_kg: self.body_kg + self.wheel_kg[0] + self.wheel_kg[1],
            front_brake: 0.5,
            lines: [0.0; 2],
            grip: 1.0,
            travel_m: [1.0; 2],
            bump_n: [0.0; 2],
            shock_stroke_m: 1.0,
            rest_m: [rest_m; 2],
            rest_pitch_rad: ((rest_n[1] + self.wheel_kg[1] * g) / self.tyre_n_per_m[1]
                - (rest_n[0] + self.wheel_kg[0] * g) / self.tyre_n_per_m[0])
                / wheelbase_m,
            tyre_pitch_rad: 0.0,
            rest_n,
        };
        let spring = |end: usize| {
            move |_: usize, travel_m: f64| {
                rest_n[end] + self.spring_n_per_m[end] * (travel_m - rest_m)
            }
        };
        Bike::of_forces(
            parts,
            Forces {
                fork_n: spring(0),
                rear_n: spring(1),
                fork_friction_n: |_: usize, _: f64| self.friction_n[0],
            },
            viscous(self.damper_n_s_per_m[0]),
            viscous(self.damper_n_s_per_m[1]),
            wheelbase_m,
        )
    }
}

/// A damper of one coefficient in N s/m, for 1000 N s/m right to 3e-6 at 1 m/s and the closer the slower.
pub fn viscous(n_s_per_m: f64) -> DamperLaw {
    // A bleed so viscous that its orifice does not count, and shims that never open.
    let viscous = 1e4;
    let valve = ValveLaw {
        viscous,
        bleed: n_s_per_m / (2.0 * viscous),
        crack_speed: 0.0,
        start_offset: 1e8,
        start_square: 0.0,
        start_slope: 0.0,
        cubic_linear: 1.0,
        cubic_constant: 1e24,
        cubic_slope: 0.0,
        port: 0.0,
    };
    let shut = ValveLaw {
        viscous: 0.0,
        bleed: 0.0,
        start_offset: 1.0,
        cubic_constant: 1.0,
        ..valve
    };
    DamperLaw {
        base: valve,
        mid: shut,
        rebound: valve,
        refill: 0.0,
        float_m: 0.0,
        per_float: 0.0,
        solid: 1.0,
        rod_m2: 1e-4,
        annulus_m2: 1e-4,
        dampers: 1.0,
    }
}

/// Level ground for a while.
pub fn level(wheelbase_m: f64, lasts_s: f64) -> Course {
    Course::of_heights(Vec::new(), Riding::even(5.0), wheelbase_m, lasts_s)
}
