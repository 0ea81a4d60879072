//! What the eye tells the kinds of bike apart by, beside the figures that the core has of them.

use sagwright_core::intake::BikeClass;

/// Engine, as far as it shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Engine {
    /// A bulging exhaust.
    TwoStroke,
    /// A slim header pipe and a long silencer.
    FourStroke,
}

/// What stands before the bars.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Nose {
    /// A number plate.
    Plate,
    /// A small headlight.
    Light,
    /// A round headlight and a mirror.
    RoundLight,
    /// A fairing with a screen.
    Fairing,
}

/// How the shock reaches the swingarm, where that is what tells the class.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shock {
    /// Out of sight.
    Hidden,
    /// Bolted to the swingarm itself.
    Straight,
    /// Stands on a set of levers.
    Levers,
}

/// How a class looks. Lengths in mm, common practice from memory.
#[derive(Debug, Clone, Copy)]
pub struct Build {
    /// Outer radius of the front tyre.
    pub front_wheel: f64,
    /// Outer radius of the rear tyre.
    pub rear_wheel: f64,
    /// How thick the tyres stand on their rims.
    pub tyre: f64,
    /// Height of the seat.
    pub seat: f64,
    /// How far the tank rises over the seat.
    pub tank: f64,
    /// From the front axle to the top of the fork, without the stroke.
    pub fork: f64,
    /// How large the engine is, 1 for the largest of the racing bikes.
    pub bulk: f64,
    /// Engine.
    pub engine: Engine,
    /// What stands before the bars.
    pub nose: Nose,
    /// How the shock is shown.
    pub shock: Shock,
}

/// A full-size motocross bike, from which the others differ.
const RACER: Build = Build {
    front_wheel: 345.0,
    rear_wheel: 335.0,
    tyre: 75.0,
    seat: 955.0,
    tank: 25.0,
    fork: 615.0,
    bulk: 0.88,
    engine: Engine::FourStroke,
    nose: Nose::Plate,
    shock: Shock::Hidden,
};

impl Build {
    /// How a class looks.
    pub const fn of(kind: BikeClass) -> Self {
        match kind {
            BikeClass::SmallWheelYouth => Self {
                front_wheel: 311.0,
                rear_wheel: 288.0,
                tyre: 65.0,
                seat: 850.0,
                fork: 560.0,
                bulk: 0.7,
                engine: Engine::TwoStroke,
                ..RACER
            },
            BikeClass::Motocross125 => Self {
                bulk: 0.8,
                engine: Engine::TwoStroke,
                ..RACER
            },
            BikeClass::Motocross250 => RACER,
            BikeClass::Motocross450 => Self {
                bulk: 1.15,
                ..RACER
            },
            BikeClass::EnduroLinkless => Self {
                rear_wheel: 342.0,
                tyre: 85.0,
                tank: 40.0,
                engine: Engine::TwoStroke,
                nose: Nose::Light,
                shock: Shock::Straight,
                ..RACER
            },
            BikeClass::EnduroLinkage => Self {
                rear_wheel: 342.0,
                tyre: 85.0,
                tank: 40.0,
                nose: Nose::Light,
                shock: Shock::Levers,
                ..RACER
            },
            BikeClass::Trail => Self {
                rear_wheel: 335.0,
                tyre: 80.0,
                seat: 880.0,
                tank: 105.0,
                fork: 610.0,
                bulk: 0.85,
                nose: Nose::RoundLight,
                ..RACER
            },
            BikeClass::Adventure => Self {
                front_wheel: 348.0,
                rear_wheel: 345.0,
                tyre: 95.0,
                seat: 880.0,
                tank: 170.0,
                fork: 650.0,
                bulk: 1.25,
                nose: Nose::Fairing,
                ..RACER
            },
        }
    }
}
