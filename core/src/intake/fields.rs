//! Every number the wizard asks for: where it stands in the document, what it may be, what is usual.

use super::Question;
use super::document::Intake;
use crate::quantity::{Dimension, Entry, How, Typed, Unit, UnitSet};

/// Smallest and largest value, SI.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Window {
    /// Smallest, SI.
    pub low: f64,
    /// Largest, SI.
    pub high: f64,
}

impl Window {
    /// Whether `si` lies inside, ends included.
    pub fn holds(self, si: f64) -> bool {
        (self.low..=self.high).contains(&si)
    }
}

fn typed<U: UnitSet>(entry: Option<&Entry<U>>) -> Option<Typed> {
    entry.map(|e| Typed {
        value: e.value,
        unit: e.unit.unit(),
        how: e.how,
    })
}

fn entry<U: UnitSet>(typed: Option<Typed>) -> Option<Entry<U>> {
    let typed = typed?;
    Some(Entry {
        value: typed.value,
        unit: U::of(typed.unit)?,
        how: typed.how,
    })
}

/// Declares the numeric fields: name, path, question, units, allowed window and usual window in the given unit.
macro_rules! fields {
    ($($(#[$doc:meta])* $name:ident: $path:literal, $question:ident, $dimension:ident,
        $unit:ident [$low:literal $high:literal] usual [$ulow:literal $uhigh:literal],
        $($place:ident).+ ;)+) => {
        /// A number in the intake document.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Field { $($(#[$doc])* $name),+ }

        impl Field {
            /// Every numeric field, in document order.
            pub const ALL: &[Self] = &[$(Self::$name),+];

            /// Where it stands in the document, as `part.name`.
            pub const fn path(self) -> &'static str {
                match self { $(Self::$name => $path),+ }
            }

            /// The page that asks for it.
            pub const fn question(self) -> Question {
                match self { $(Self::$name => Question::$question),+ }
            }

            /// What it measures.
            pub const fn dimension(self) -> Dimension {
                match self { $(Self::$name => Dimension::$dimension),+ }
            }

            /// The values accepted; outside, the answer is refused. SI.
            pub fn allowed(self) -> Window {
                match self {
                    $(Self::$name => Window { low: Unit::$unit.to_si($low), high: Unit::$unit.to_si($high) }),+
                }
            }

            /// The values met in practice; outside, another unit may be meant. SI, common practice.
            pub fn usual(self) -> Window {
                match self {
                    $(Self::$name => Window { low: Unit::$unit.to_si($ulow), high: Unit::$unit.to_si($uhigh) }),+
                }
            }

            /// The answer given, if any.
            pub fn get(self, intake: &Intake) -> Option<Typed> {
                match self { $(Self::$name => typed(intake.$($place).+.as_ref())),+ }
            }

            /// Puts an answer in, or takes it out. A unit that measures something else takes it out.
            pub fn set(self, intake: &mut Intake, answer: Option<Typed>) {
                match self { $(Self::$name => intake.$($place).+ = entry(answer)),+ }
            }
        }
    };
}

fields! {
    /// Rider weight.
    RiderWeight: "rider.weight", RiderWeight, Mass, Kilogram [20.0 200.0] usual [30.0 130.0], rider.weight;
    /// Rider height.
    RiderHeight: "rider.height", RiderHeight, Height, Centimetre [100.0 230.0] usual [120.0 210.0], rider.height;
    /// Bike weight ready to ride, without rider.
    BikeWeight: "bike.weight", BikeWeight, Mass, Kilogram [40.0 350.0] usual [60.0 270.0], bike.weight;
    /// Fork spring rate, each spring.
    ForkRate: "bike.fork_rate", ForkSpring, Rate, NewtonPerMillimetre [1.5 20.0] usual [2.5 13.5], bike.fork_rate;
    /// Fork spring preload.
    ForkPreload: "bike.fork_preload", ForkSpring, Length, Millimetre [0.0 60.0] usual [0.0 30.0], bike.fork_preload;
    /// Fork gas pressure, gauge.
    ForkPressure: "bike.fork_pressure", ForkGas, Pressure, Bar [1.0 20.0] usual [5.0 15.0], bike.fork_pressure;
    /// Temperature of the fork when its pressure was set.
    ForkPressureTemperature: "bike.fork_pressure_temperature", ForkGas, Temperature, Celsius [-20.0 50.0] usual [-10.0 45.0], bike.fork_pressure_temperature;
    /// Highest gas pressure marked on the fork, gauge.
    ForkPressureMax: "bike.fork_pressure_max", ForkGas, Pressure, Bar [5.0 25.0] usual [10.0 20.0], bike.fork_pressure_max;
    /// Shock spring rate.
    ShockRate: "bike.shock_rate", ShockSpring, Rate, NewtonPerMillimetre [20.0 180.0] usual [30.0 140.0], bike.shock_rate;
    /// Shock spring preload.
    ShockPreload: "bike.shock_preload", ShockSpring, Length, Millimetre [0.0 40.0] usual [2.0 25.0], bike.shock_preload;
    /// Fork compression: positions in all.
    ForkCompressionRange: "bike.fork_compression.range", ForkClickers, Clicks, Click [4.0 60.0] usual [10.0 40.0], bike.fork_compression.range;
    /// Fork compression: where it stands.
    ForkCompressionNow: "bike.fork_compression.now", ForkClickers, Clicks, Click [0.0 60.0] usual [0.0 40.0], bike.fork_compression.now;
    /// Fork rebound: positions in all.
    ForkReboundRange: "bike.fork_rebound.range", ForkClickers, Clicks, Click [4.0 60.0] usual [10.0 40.0], bike.fork_rebound.range;
    /// Fork rebound: where it stands.
    ForkReboundNow: "bike.fork_rebound.now", ForkClickers, Clicks, Click [0.0 60.0] usual [0.0 40.0], bike.fork_rebound.now;
    /// Shock low-speed compression: positions in all.
    ShockLowRange: "bike.shock_low_compression.range", ShockClickers, Clicks, Click [4.0 60.0] usual [10.0 40.0], bike.shock_low_compression.range;
    /// Shock low-speed compression: where it stands.
    ShockLowNow: "bike.shock_low_compression.now", ShockClickers, Clicks, Click [0.0 60.0] usual [0.0 40.0], bike.shock_low_compression.now;
    /// Shock high-speed compression, in quarter turns: positions in all.
    ShockHighRange: "bike.shock_high_compression.range", ShockClickers, Clicks, Click [4.0 60.0] usual [6.0 40.0], bike.shock_high_compression.range;
    /// Shock high-speed compression, in quarter turns: where it stands.
    ShockHighNow: "bike.shock_high_compression.now", ShockClickers, Clicks, Click [0.0 60.0] usual [0.0 40.0], bike.shock_high_compression.now;
    /// Shock rebound: positions in all.
    ShockReboundRange: "bike.shock_rebound.range", ShockClickers, Clicks, Click [4.0 60.0] usual [10.0 40.0], bike.shock_rebound.range;
    /// Shock rebound: where it stands.
    ShockReboundNow: "bike.shock_rebound.now", ShockClickers, Clicks, Click [0.0 60.0] usual [0.0 40.0], bike.shock_rebound.now;
    /// Hours since the fork was serviced.
    ForkHours: "bike.fork_hours", ServiceHours, Time, Hour [0.0 3000.0] usual [0.0 500.0], bike.fork_hours;
    /// Hours since the shock was serviced.
    ShockHours: "bike.shock_hours", ServiceHours, Time, Hour [0.0 3000.0] usual [0.0 500.0], bike.shock_hours;
    /// Usual temperature while riding.
    UsualTemperature: "ground.usual_temperature", GroundUsual, Temperature, Celsius [-30.0 55.0] usual [-20.0 48.0], ground.usual_temperature;
    /// Usual altitude of riding.
    UsualAltitude: "ground.usual_altitude", GroundUsual, Altitude, Metre [-430.0 5500.0] usual [-100.0 4000.0], ground.usual_altitude;
    /// Today's temperature.
    TodayTemperature: "ground.today_temperature", GroundToday, Temperature, Celsius [-30.0 55.0] usual [-20.0 48.0], ground.today_temperature;
    /// Today's altitude.
    TodayAltitude: "ground.today_altitude", GroundToday, Altitude, Metre [-430.0 5500.0] usual [-100.0 4000.0], ground.today_altitude;
    /// Free sag at the front, along the fork leg, bike alone.
    ForkFreeSag: "measured.fork_free_sag", SagFront, Length, Millimetre [0.0 150.0] usual [5.0 80.0], measured.fork_free_sag;
    /// Rider sag at the front, along the fork leg.
    ForkRiderSag: "measured.fork_rider_sag", SagFront, Length, Millimetre [5.0 200.0] usual [25.0 120.0], measured.fork_rider_sag;
    /// Free sag at the rear axle, vertical, bike alone.
    RearFreeSag: "measured.rear_free_sag", SagRear, Length, Millimetre [0.0 150.0] usual [5.0 90.0], measured.rear_free_sag;
    /// Rider sag at the rear axle, vertical.
    RearRiderSag: "measured.rear_rider_sag", SagRear, Length, Millimetre [10.0 250.0] usual [40.0 160.0], measured.rear_rider_sag;
    /// Fork travel used on the hardest hits, from the marker.
    ForkTravelUsed: "measured.fork_travel_used", TravelUsed, Length, Millimetre [20.0 400.0] usual [80.0 330.0], measured.fork_travel_used;
    /// Front tyre pressure, gauge.
    FrontTyre: "measured.front_tyre", TyrePressures, Pressure, Bar [0.2 4.0] usual [0.4 3.0], measured.front_tyre;
    /// Rear tyre pressure, gauge.
    RearTyre: "measured.rear_tyre", TyrePressures, Pressure, Bar [0.2 4.0] usual [0.4 3.2], measured.rear_tyre;
}

impl Field {
    /// Other units in which a number would be usual where it is not in the unit given: "did you mean kgf/mm?".
    ///
    /// Empty when the number is usual as it stands.
    pub fn likelier_units(self, value: f64, unit: Unit) -> Vec<Unit> {
        let usual = self.usual();
        if usual.holds(unit.to_si(value)) {
            return Vec::new();
        }
        let others = self.dimension().units().iter().copied();
        others
            .filter(|other| *other != unit && usual.holds(other.to_si(value)))
            .collect()
    }

    /// The answer in SI, if given.
    pub fn si(self, intake: &Intake) -> Option<f64> {
        self.get(intake).map(|t| t.si())
    }

    /// Whether the answer is a guess rather than measured or read.
    pub fn is_guess(self, intake: &Intake) -> bool {
        self.get(intake).is_some_and(|t| t.how == Some(How::Guess))
    }
}
