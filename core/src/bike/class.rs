//! Generic classes of bike: what a kind of off-road motorcycle usually is.
//!
//! No figure here belongs to any one motorcycle. All are common practice from memory, good for a starting
//! point and for showing how far from usual a bike is; a measured figure always goes before them.

use super::gas::{Column, GasSpring, Negative, QUICK_EXPONENT, SLOW_EXPONENT};
use crate::intake::BikeClass;
use crate::units::{Angle, Area, Band, Length, Mass, Pressure, SpringRate, bar, mm, square_metre};

/// Dimensions and usual figures of one class.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Class {
    /// Which class.
    pub kind: BikeClass,
    /// Mass ready to ride with a full tank, without rider, kg.
    pub wet_mass: Mass,
    /// Share of the wet mass on the front axle with the bike level, dimensionless.
    pub front_share: f64,
    /// Fuel in a full tank, kg.
    pub fuel: Mass,
    /// Wheelbase, m.
    pub wheelbase: Length,
    /// Unsprung mass at the front, kg.
    pub unsprung_front: Mass,
    /// Unsprung mass at the rear, kg.
    pub unsprung_rear: Mass,
    /// Height of the centre of the sprung mass over the ground, bike fully extended, m.
    pub sprung_height: Length,
    /// Height of the centre of a rider half seated, half standing, over the ground, bike fully extended, m.
    pub rider_height: Length,
    /// Angle of the fork from the vertical, rad.
    pub rake: Angle,
    /// Full stroke of the fork along the leg, m.
    pub fork_stroke: Length,
    /// Full vertical travel of the rear axle, m.
    pub rear_travel: Length,
    /// Motion ratio (shock stroke per axle travel) at full extension, dimensionless.
    pub ratio_top: f64,
    /// Motion ratio at full travel, dimensionless.
    pub ratio_bottom: f64,
    /// Body mass of the rider the class is usually sold for, kg.
    pub rider_body: Mass,
    /// What that rider wears and carries, kg.
    pub rider_gear: Mass,
    /// Rate per fork spring with one in each leg that practice gives that rider, N/m.
    pub fork_rate: Band<SpringRate>,
    /// Shock spring rate that practice gives that rider, N/m.
    pub shock_rate: Band<SpringRate>,
    /// Target of rider sag at the front along the leg, m.
    pub fork_sag: Length,
    /// Target of rider sag at the rear axle, vertical, m.
    pub rear_sag: Length,
    /// Usual fork spring preload, m.
    pub fork_preload: Length,
    /// Usual shock spring preload, m.
    pub shock_preload: Length,
    /// Area of the main chamber of a gas leg, m².
    pub gas_area: Area,
    /// Diameter of the shock shaft, m.
    pub shaft: Length,
}

/// How far a figure of a class may be from that of one bike: about one standard deviation.
///
/// Common practice, from memory: widths by which bikes sold under one class name differ.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spread {
    /// Wet mass, relative.
    pub wet_mass: f64,
    /// Front share, absolute.
    pub front_share: f64,
    /// Share of the rider on the front axle, absolute.
    pub rider_share: f64,
    /// Motion ratio, relative.
    pub motion_ratio: f64,
    /// Fork and rear travel, m.
    pub travel: Length,
    /// Gear worn by the rider, kg.
    pub gear: Mass,
    /// Preload of fork or shock, m.
    pub preload: Length,
    /// Fork spring rate as sold, relative to the middle of the band.
    pub fork_rate: f64,
    /// Shock spring rate as sold, relative to the middle of the band.
    pub shock_rate: f64,
    /// Friction, relative.
    pub friction: f64,
    /// Air gap over the oil, m.
    pub air_gap: Length,
}

/// Usual limits and counts that hold for every class; common practice.
impl Class {
    /// How far the figures of a class may be from one bike's.
    pub const SPREAD: Spread = Spread {
        wet_mass: 0.04,
        front_share: 0.01,
        rider_share: 0.02,
        motion_ratio: 0.04,
        travel: mm(8.0),
        gear: crate::units::kg(2.0),
        preload: mm(3.0),
        fork_rate: 0.05,
        shock_rate: 0.05,
        friction: 0.3,
        air_gap: mm(15.0),
    };
    /// Steps in which fork springs are sold, N/m: coarse and fine.
    pub const FORK_RATE_STEP: SpringRate = crate::units::newton_per_mm(0.2);
    /// Step in which shock springs are sold, N/m.
    pub const SHOCK_RATE_STEP: SpringRate = crate::units::newton_per_mm(2.0);
    /// Clicks from closed to open when nobody counted them, with the range usual on adjusters.
    pub const CLICKS: Band<u8> = Band {
        low: 18,
        middle: 24,
        high: 30,
    };
    /// Gas pressure of the shock's reservoir, gauge.
    pub const RESERVOIR: Band<Pressure> = Band {
        low: bar(8.0),
        middle: bar(10.0),
        high: bar(12.0),
    };
    /// Gas pressure of a full-size fork for its usual rider, gauge.
    pub const FORK_GAS: Band<Pressure> = Band {
        low: bar(8.5),
        middle: bar(10.0),
        high: bar(11.0),
    };
    /// Free sag at the rear axle when rider sag is right and the spring suits the rider.
    pub const REAR_FREE_SAG: Band<Length> = Band {
        low: mm(30.0),
        middle: mm(37.0),
        high: mm(45.0),
    };
    /// Air over the oil of a coil fork, squeezed to its end without spring.
    pub const AIR_GAP: Length = mm(100.0);
    /// Area of the air over the oil, both legs together, net of tubes and springs.
    ///
    /// Found backwards: the front rates of practice need some 40 to 70 N of air at ride height, in all eight classes.
    /// With the weight shared as on the level bike and an exponent of 1.2 that is 2.26e-3 m², which gives them within
    /// 1.2 %; with slow air and the bike pitched it is the value here.
    pub const TRAPPED_AREA: Area = square_metre(2.0e-3);

    /// The figures of a class.
    pub fn of(kind: BikeClass) -> &'static Self {
        super::classes::of(kind)
    }

    /// Mass of the class's usual rider with gear, kg.
    pub fn rider(&self) -> Mass {
        self.rider_body + self.rider_gear
    }

    /// The gas spring such a fork has in its one leg: main chamber, and a negative chamber filled through a port.
    ///
    /// Lengths are typical of full-size forks: 75 mm of main column left at full stroke, a negative column of
    /// 35 mm at full extension, a port that shuts 8 mm into the stroke, and an annulus of 0.80 of the main area.
    /// A negative column of 55 mm would do if the gas did not warm back to the leg's temperature while the
    /// rider sits still; with slow changes at constant temperature 35 mm gives the pressures of practice.
    pub fn gas_spring(&self) -> GasSpring {
        let area_m2 = self.gas_area.value;
        GasSpring {
            main: Column {
                area_m2,
                length_m: self.fork_stroke.value + 0.075,
                slow_exponent: SLOW_EXPONENT,
                quick_exponent: QUICK_EXPONENT,
            },
            negative: Negative::Chamber {
                area_m2: 0.803 * area_m2,
                length_m: 0.035,
                port_m: 0.008,
                fill: 1.0,
            },
        }
    }
}
