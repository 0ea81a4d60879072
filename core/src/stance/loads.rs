//! What each axle carries.

use crate::bike::limits::within;
use crate::bike::{Class, Machine, OutOfRange};
use crate::intake::{FuelLoad, Posture};
use crate::units::{Mass, STANDARD_GRAVITY};

/// How much higher the centre of a standing rider is than that of one half seated, m; a seated one is as much
/// lower (from memory).
const STANDING_RISE_M: f64 = 0.09;

/// Who and what is aboard.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Load {
    /// Rider with everything worn and carried, kg.
    pub rider: Mass,
    /// Share of the rider on the front axle, dimensionless.
    pub rider_front_share: f64,
    /// How the rider spends most of the time.
    pub posture: Posture,
    /// Fuel aboard on a usual ride.
    pub fuel: FuelLoad,
}

impl Load {
    /// A rider in a posture, with the share on the front axle that practice gives it: 0.36 seated, 0.44 standing,
    /// 0.42 in the usual mix of both.
    pub const fn of(rider: Mass, posture: Posture, fuel: FuelLoad) -> Self {
        let rider_front_share = match posture {
            Posture::Seated => 0.36,
            Posture::Mixed => 0.42,
            Posture::Standing => 0.44,
        };
        Self {
            rider,
            rider_front_share,
            posture,
            fuel,
        }
    }

    /// The class's usual rider, half seated and half standing, with a full tank.
    pub fn usual(class: &Class) -> Self {
        Self::of(class.rider(), Posture::Mixed, FuelLoad::Full)
    }

    /// Says which figure, if any, is out of range.
    pub fn check(&self) -> Result<(), OutOfRange> {
        within("rider with gear in kg", self.rider.value, 15.0, 220.0)?;
        within("rider share on the front", self.rider_front_share, 0.2, 0.6)
    }
}

/// Share of a full tank that is missing.
const fn missing_fuel(fuel: FuelLoad) -> f64 {
    match fuel {
        FuelLoad::NearlyEmpty => 0.85,
        FuelLoad::Half => 0.5,
        FuelLoad::Full => 0.0,
    }
}

/// Weight on the springs, as a function of pitch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Weights {
    /// On the front springs with the bike level, N vertical at the axle.
    pub front_level_n: f64,
    /// On the rear springs with the bike level, N vertical at the axle.
    pub rear_level_n: f64,
    /// What leaves the front for the rear for each radian of nose-up pitch, N/rad.
    pub shift_n_per_rad: f64,
}

impl Weights {
    /// Bike with or without its rider. Fuel is taken from both axles in the bike's own shares.
    pub fn of(machine: &Machine, load: &Load, ridden: bool) -> Self {
        let class = machine.class;
        let bike_kg = machine.wet_mass.value - missing_fuel(load.fuel) * class.fuel.value;
        let rider_kg = if ridden { load.rider.value } else { 0.0 };
        let (unsprung_front, unsprung_rear) =
            (class.unsprung_front.value, class.unsprung_rear.value);
        let front_kg =
            bike_kg * machine.front_share - unsprung_front + rider_kg * load.rider_front_share;
        let rear_kg = bike_kg * (1.0 - machine.front_share) - unsprung_rear
            + rider_kg * (1.0 - load.rider_front_share);
        let rider_height_m = class.rider_height.value
            + match load.posture {
                Posture::Seated => -STANDING_RISE_M,
                Posture::Mixed => 0.0,
                Posture::Standing => STANDING_RISE_M,
            };
        let sprung_kg = bike_kg - unsprung_front - unsprung_rear;
        let moment_kg_m = sprung_kg * class.sprung_height.value + rider_kg * rider_height_m;
        Self {
            front_level_n: front_kg * STANDARD_GRAVITY,
            rear_level_n: rear_kg * STANDARD_GRAVITY,
            shift_n_per_rad: moment_kg_m * STANDARD_GRAVITY / class.wheelbase.value,
        }
    }

    /// On the front springs at a nose-up pitch in rad, N vertical at the axle.
    pub fn front_n(&self, pitch_rad: f64) -> f64 {
        self.front_level_n - self.shift_n_per_rad * pitch_rad
    }

    /// On the rear springs at a nose-up pitch in rad, N vertical at the axle.
    pub fn rear_n(&self, pitch_rad: f64) -> f64 {
        self.rear_level_n + self.shift_n_per_rad * pitch_rad
    }
}
