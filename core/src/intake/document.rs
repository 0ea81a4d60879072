//! The intake document: every answer of one rider about one bike, versioned.

use serde::{Deserialize, Serialize};

use super::{
    BikeClass, Change, End, ExtraAnswer, Feeling, ForkKind, FuelLoad, Look, Pace, Phase, Posture,
    PushFeel, Question, Severity, Share, ShockKind, Since, StopSign, Terrain, Verdict, YesNo,
};
use crate::form::read_form;
use crate::quantity::{
    AltitudeUnit, ClickUnit, Entry, HeightUnit, LengthUnit, MassUnit, PressureUnit, RateUnit,
    TemperatureUnit, TimeUnit,
};
use crate::sorted::{Map, Set};

/// The version written by this build. Older ones are migrated on reading, newer ones refused.
pub const VERSION: u32 = 1;

/// Declares a part of the document: all answers optional, unknown names refused, absent ones not written.
macro_rules! part {
    ($(#[$doc:meta])* $name:ident { $($(#[$field_doc:meta])* $field:ident: $kind:ty),+ $(,)? }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Default, PartialEq, Serialize)]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        #[serde(deny_unknown_fields, default)]
        pub struct $name {
            $($(#[$field_doc])* #[serde(skip_serializing_if = "Option::is_none")] pub $field: Option<$kind>),+
        }

        read_form! { $name = $name::default(), needs [], { $($field),+ } }
    };
}

/// Everything one rider said and measured. An answer never given is absent, never a default.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Intake {
    /// Version of this document's form; now 1.
    pub version: u32,
    /// Free words, up to 500 characters: a name for this sheet, or that it is invented.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
    /// The rider.
    #[serde(default)]
    pub rider: Rider,
    /// The bike as it stands.
    #[serde(default)]
    pub bike: Bike,
    /// Where it is ridden.
    #[serde(default)]
    pub ground: Ground,
    /// What is felt. Absent: not asked yet. Empty: nothing is wrong, a baseline is wanted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub complaints: Option<Vec<Complaint>>,
    /// What was measured.
    #[serde(default)]
    pub measured: Measured,
    /// What was changed for a lap and how it felt, in the order it was tried; at most 60.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub tried: Vec<Tried>,
    /// Answers to what a workshop asked besides; at most 12.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub extra: Vec<ExtraAnswer>,
    /// Stop-riding signs seen. Absent: not asked yet. Empty: none seen.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stop_signs: Option<Set<StopSign>>,
    /// Questions answered with "I don't know".
    #[serde(default, skip_serializing_if = "Set::is_empty")]
    pub dont_know: Set<Question>,
}

read_form! {
    Intake = Intake::default(),
    needs [version],
    { version, note, rider, bike, ground, complaints, measured, tried, extra, stop_signs, dont_know }
}

impl Default for Intake {
    fn default() -> Self {
        Self {
            version: VERSION,
            note: String::new(),
            rider: Rider::default(),
            bike: Bike::default(),
            ground: Ground::default(),
            complaints: None,
            measured: Measured::default(),
            tried: Vec::new(),
            extra: Vec::new(),
            stop_signs: None,
            dont_know: Set::new(),
        }
    }
}

part! {
    /// The rider.
    Rider {
        /// Weight, 20 to 200 kg.
        weight: Entry<MassUnit>,
        /// Whether that weight includes riding gear.
        weight_in_gear: YesNo,
        /// Pace.
        pace: Pace,
        /// Standing or seated.
        posture: Posture,
        /// Body height, 100 to 230 cm.
        height: Entry<HeightUnit>,
    }
}

/// The bike as it stands.
#[derive(Debug, Clone, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields, default)]
pub struct Bike {
    /// Generic class.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub class: Option<BikeClass>,
    /// Weight ready to ride without rider, 40 to 350 kg.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub weight: Option<Entry<MassUnit>>,
    /// Fuel carried on a usual ride.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fuel: Option<FuelLoad>,
    /// What carries the front.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fork: Option<ForkKind>,
    /// Rate of each fork spring, 1.5 to 20 N/mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fork_rate: Option<Entry<RateUnit>>,
    /// Fork spring preload, 0 to 60 mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fork_preload: Option<Entry<LengthUnit>>,
    /// Fork gas pressure, gauge, 1 to 20 bar.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fork_pressure: Option<Entry<PressureUnit>>,
    /// Temperature of the fork when that pressure was set, -20 to 50 °C.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fork_pressure_temperature: Option<Entry<TemperatureUnit>>,
    /// Highest gas pressure marked on the fork, gauge, 5 to 25 bar.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fork_pressure_max: Option<Entry<PressureUnit>>,
    /// How the shock reaches the swingarm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shock: Option<ShockKind>,
    /// Shock spring rate, 20 to 180 N/mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shock_rate: Option<Entry<RateUnit>>,
    /// Shock spring preload, 0 to 40 mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shock_preload: Option<Entry<LengthUnit>>,
    /// Fork compression adjuster.
    #[serde(skip_serializing_if = "Adjuster::is_unknown")]
    pub fork_compression: Adjuster,
    /// Fork rebound adjuster.
    #[serde(skip_serializing_if = "Adjuster::is_unknown")]
    pub fork_rebound: Adjuster,
    /// Shock low-speed compression adjuster.
    #[serde(skip_serializing_if = "Adjuster::is_unknown")]
    pub shock_low_compression: Adjuster,
    /// Shock high-speed compression adjuster, in quarter turns.
    #[serde(skip_serializing_if = "Adjuster::is_unknown")]
    pub shock_high_compression: Adjuster,
    /// Shock rebound adjuster.
    #[serde(skip_serializing_if = "Adjuster::is_unknown")]
    pub shock_rebound: Adjuster,
    /// Hours since the fork was serviced, 0 to 3000.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fork_hours: Option<Entry<TimeUnit>>,
    /// Hours since the shock was serviced, 0 to 3000.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shock_hours: Option<Entry<TimeUnit>>,
}

read_form! {
    Bike = Bike::default(),
    needs [],
    { class, weight, fuel, fork, fork_rate, fork_preload, fork_pressure, fork_pressure_temperature, fork_pressure_max, shock, shock_rate, shock_preload, fork_compression, fork_rebound, shock_low_compression, shock_high_compression, shock_rebound, fork_hours, shock_hours }
}

part! {
    /// One adjuster, counted from fully closed (turned in, clockwise).
    Adjuster {
        /// How many clicks from fully closed to fully open, 4 to 60.
        range: Entry<ClickUnit>,
        /// Where it stands, clicks out from fully closed; at most `range`.
        now: Entry<ClickUnit>,
    }
}

impl Adjuster {
    /// Nothing is known of it.
    pub fn is_unknown(&self) -> bool {
        self.range.is_none() && self.now.is_none()
    }
}

part! {
    /// Where it is ridden.
    Ground {
        /// How much of each kind of ground a usual ride holds.
        mix: Map<Terrain, Share>,
        /// Usual temperature, -30 to 55 °C.
        usual_temperature: Entry<TemperatureUnit>,
        /// Usual altitude, -430 to 5500 m.
        usual_altitude: Entry<AltitudeUnit>,
        /// Today's temperature, -30 to 55 °C.
        today_temperature: Entry<TemperatureUnit>,
        /// Today's altitude, -430 to 5500 m.
        today_altitude: Entry<AltitudeUnit>,
    }
}

/// One thing felt.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Complaint {
    /// What is felt; each feeling at most once in a document.
    pub feeling: Feeling,
    /// Which end.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub end: Option<End>,
    /// When; empty means not known.
    #[serde(default, skip_serializing_if = "Set::is_empty")]
    pub phases: Set<Phase>,
    /// How bad.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub severity: Option<Severity>,
    /// Since when.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub since: Option<Since>,
}

/// One change ridden for a lap, and whether it stayed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub struct Tried {
    /// What was changed.
    pub change: Change,
    /// How each complaint was, against the lap before; complaints that were not looked at are left out.
    pub felt: Map<Feeling, Verdict>,
    /// Whether it stayed on the bike; absent means that it was put back before the next.
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    pub kept: bool,
}

part! {
    /// What was measured.
    Measured {
        /// Free sag at the front along the fork leg, bike alone on its wheels, 0 to 150 mm.
        fork_free_sag: Entry<LengthUnit>,
        /// Rider sag at the front along the fork leg, 5 to 200 mm; more than the free sag.
        fork_rider_sag: Entry<LengthUnit>,
        /// Free sag at the rear axle, vertical, 0 to 150 mm.
        rear_free_sag: Entry<LengthUnit>,
        /// Rider sag at the rear axle, vertical, 10 to 250 mm; more than the free sag.
        rear_rider_sag: Entry<LengthUnit>,
        /// Fork travel used on the hardest hits, 20 to 400 mm.
        fork_travel_used: Entry<LengthUnit>,
        /// Front tyre pressure, gauge, 0.2 to 4 bar.
        front_tyre: Entry<PressureUnit>,
        /// Rear tyre pressure, gauge, 0.2 to 4 bar.
        rear_tyre: Entry<PressureUnit>,
        /// Slow push on the parked bike's front.
        push_front: PushFeel,
        /// Slow push on the parked bike's rear.
        push_rear: PushFeel,
        /// What a look at the parked bike showed: yes or no.
        looks: Map<Look, YesNo>,
    }
}
