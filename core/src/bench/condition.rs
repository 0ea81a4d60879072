//! The state of what is neither a spring nor a clicker: valves inside, oil, gas behind it, tyres, attitude, steering head.

use crate::feel::Ends;

/// How a bike's parts are, beyond its set-up. [`Condition::SOUND`] is a bike with nothing amiss.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Condition {
    /// Damping that the valves give over what suits, with the clickers where they are: fork compression, fork rebound,
    /// shock compression, shock rebound. 0.2 to 5, 1 when it suits.
    pub valving: [f64; 4],
    /// Share of the compression that a fork's mid-valve without float makes; `None` for one that floats as it should.
    pub mid_valve: Option<MidValveShare>,
    /// Pressure behind the fork's oil over what it should be, 0 to 1.
    pub fork_reservoir: f64,
    /// Share of air in the volume of the oil, 0 to 0.6.
    pub air: Ends<f64>,
    /// Void that each stroke has to close, m along the leg and at the shaft.
    pub void_m: Ends<f64>,
    /// Tyre pressure over what suits.
    pub tyres: Ends<f64>,
    /// How much higher than usual the bike is held at the front by where the fork sits in its clamps, m; negative: lower.
    pub raised_m: f64,
    /// Looseness of the steering head: 0 when sound, 1 when play can just be felt at the bars, 2 when it can be heard.
    pub head_play: f64,
}

/// Share of the compression force that a mid-valve makes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MidValveShare {
    /// At low speed, 0.05 to 0.8.
    pub low_speed: f64,
    /// In a hard hit, at least that of low speed, at most 0.8.
    pub hard_hit: f64,
}

impl Condition {
    /// Nothing amiss.
    pub const SOUND: Self = Self {
        valving: [1.0; 4],
        mid_valve: None,
        fork_reservoir: 1.0,
        air: Ends {
            front: 0.0,
            rear: 0.0,
        },
        void_m: Ends {
            front: 0.0,
            rear: 0.0,
        },
        tyres: Ends {
            front: 1.0,
            rear: 1.0,
        },
        raised_m: 0.0,
        head_play: 0.0,
    };
}
