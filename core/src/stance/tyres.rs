//! Tyre pressures to start from.

use super::situation::Situation;
use crate::intake::{BikeClass, Share, Terrain};
use crate::units::{BAR_IN_PA, Band, Pressure, pascal};

/// Gauge pressures of both tyres, cold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tyres {
    /// Front, Pa gauge.
    pub front: Band<Pressure>,
    /// Rear, Pa gauge.
    pub rear: Band<Pressure>,
}

/// Tyre pressures for the class and ground: common practice, from memory, for tubes and a rider of the class.
///
/// Rocks ask for more, against the rim; sand and mud for less, for the footprint. The tyre's own marking and its
/// maker's least pressure come first.
pub fn tyres(situation: &Situation) -> Tyres {
    // Front, rear, and how far either may be from it and still be taste, bar.
    let (front, rear, taste) = match situation.machine.class.kind {
        BikeClass::SmallWheelYouth => (0.85, 0.85, 0.1),
        BikeClass::Motocross125
        | BikeClass::Motocross250
        | BikeClass::Motocross450
        | BikeClass::EnduroLinkless
        | BikeClass::EnduroLinkage => (0.9, 0.85, 0.1),
        BikeClass::Trail => (1.3, 1.4, 0.3),
        BikeClass::Adventure => (1.8, 2.0, 0.4),
    };
    let much = |terrain| situation.ground.contains(&(terrain, Share::Lot));
    let mut shift = 0.0;
    if much(Terrain::RootsRocks) {
        shift += 0.05;
    }
    if much(Terrain::Sand) || much(Terrain::RutsMud) {
        shift -= 0.05;
    }
    let around = |bar: f64| {
        Band {
            low: bar + shift - taste,
            middle: bar + shift,
            high: bar + shift + taste,
        }
        .map(|bar| pascal(bar * BAR_IN_PA))
    };
    Tyres {
        front: around(front),
        rear: around(rear),
    }
}
