//! From what was answered to a bike that can be computed: given figures where there are some, the class's elsewhere.

use crate::bike::friction::Wear;
use crate::bike::{Air, Class, ForkSpring, Machine, SetUp, Surroundings};
use crate::intake::{
    BikeClass, Field, ForkKind, FuelLoad, Intake, Pace, Posture, Question, Share, ShockKind,
    Terrain, YesNo,
};
use crate::units::{Length, Pressure, kelvin, kg, metre, newton_per_m, pascal};

use super::clickers::Ranges;
use super::loads::Load;

/// Hours since service taken when nobody counted: half of a usual interval (common practice).
const USUAL_HOURS: f64 = 20.0;

/// One rider on one bike on their ground, ready to compute with.
#[derive(Debug, Clone, PartialEq)]
pub struct Situation {
    /// The bike.
    pub machine: Machine,
    /// Who and what is aboard.
    pub load: Load,
    /// The set-up as it stands, the class's usual one where not told.
    pub now: SetUp,
    /// Where it was filled and where it rides.
    pub surroundings: Surroundings,
    /// Pace.
    pub pace: Pace,
    /// Kinds of ground with how much of each.
    pub ground: Vec<(Terrain, Share)>,
    /// Clicks of each adjuster from closed to open.
    pub ranges: Ranges,
    /// Positions of the shock's high-speed compression adjuster, quarter turns.
    pub high_speed_range: u8,
    /// Rider sag to aim at, front along the leg.
    pub fork_sag: Length,
    /// Rider sag to aim at, rear axle.
    pub rear_sag: Length,
    /// Preload of the fork springs from which their rate is worked out.
    pub fork_preload: Length,
    /// Preload of the shock spring from which its rate is worked out.
    pub shock_preload: Length,
    /// Highest fork pressure marked on the part, gauge, if told.
    pub marked_maximum: Option<Pressure>,
    /// What was told and what was taken instead.
    pub told: Told,
    /// The same rider on every class of bike it could be, the likeliest among them; empty where the class was told.
    pub could_be: Vec<Situation>,
}

/// Which answers were given. Each that was not has been filled from the class or from practice.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[expect(
    clippy::struct_excessive_bools,
    reason = "one yes or no per question is what it is"
)]
pub struct Told {
    /// Rider weight.
    pub rider: bool,
    /// Whether the weight included gear.
    pub gear: bool,
    /// Pace.
    pub pace: bool,
    /// Posture.
    pub posture: bool,
    /// Class of bike.
    pub class: bool,
    /// Weight of the bike.
    pub bike: bool,
    /// Fuel.
    pub fuel: bool,
    /// Kind of fork.
    pub fork_kind: bool,
    /// Kind of shock.
    pub shock_kind: bool,
    /// Fork spring rate, or gas pressure.
    pub fork_spring: bool,
    /// Fork preload.
    pub fork_preload: bool,
    /// Shock spring rate.
    pub shock_rate: bool,
    /// Shock preload.
    pub shock_preload: bool,
    /// Kinds of ground.
    pub ground: bool,
    /// Temperature today or usual.
    pub temperature: bool,
    /// Altitude today or usual.
    pub altitude: bool,
    /// Hours since service, fork and shock.
    pub hours: bool,
    /// Rider weight, but only as a guess.
    pub rider_guessed: bool,
    /// Weight of the bike, but only as a guess.
    pub bike_guessed: bool,
    /// Adjusters whose positions were counted.
    pub counted: Counted,
}

/// Adjusters whose positions from closed to open were counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[expect(
    clippy::struct_excessive_bools,
    reason = "one yes or no per adjuster is what it is"
)]
pub struct Counted {
    /// Fork compression.
    pub fork_compression: bool,
    /// Fork rebound.
    pub fork_rebound: bool,
    /// Shock low-speed compression.
    pub shock_compression: bool,
    /// Shock rebound.
    pub shock_rebound: bool,
    /// Shock high-speed compression.
    pub high_speed: bool,
}

impl Situation {
    /// Reads an intake that has passed its checks.
    pub fn of(intake: &Intake) -> Self {
        if let Some(class) = intake.bike.class {
            return Self::of_class(intake, class);
        }
        Self {
            could_be: possible_classes(intake)
                .into_iter()
                .map(|class| Self::of_class(intake, class))
                .collect(),
            ..Self::of_class(intake, likely_class(intake))
        }
    }

    /// As [`Self::of`], supposing the bike is of this class.
    pub fn of_class(intake: &Intake, kind: BikeClass) -> Self {
        let class = Class::of(kind);
        let fork = intake.bike.fork.unwrap_or(ForkKind::CoilBothLegs);
        let shock = intake.bike.shock.unwrap_or(Machine::usual_shock(kind));
        let mut machine = Machine::of(kind, fork, shock);
        if let Some(mass_kg) = Field::BikeWeight.si(intake) {
            machine.wet_mass = kg(mass_kg);
        }
        Self {
            load: load(intake, class),
            now: as_it_stands(intake, &machine),
            surroundings: surroundings(intake),
            pace: intake.rider.pace.unwrap_or(Pace::Club),
            ground: intake
                .ground
                .mix
                .iter()
                .flatten()
                .map(|(terrain, share)| (*terrain, *share))
                .collect(),
            ranges: ranges(intake),
            high_speed_range: clicks(intake, Field::ShockHighRange, Class::CLICKS.middle / 2),
            fork_sag: class.fork_sag,
            rear_sag: class.rear_sag,
            fork_preload: class.fork_preload,
            shock_preload: class.shock_preload,
            marked_maximum: Field::ForkPressureMax.si(intake).map(pascal),
            told: told(intake),
            could_be: Vec::new(),
            machine,
        }
    }

    /// Whether the fork is carried by gas.
    pub fn gas(&self) -> bool {
        self.machine.fork == ForkKind::GasOneLeg
    }

    /// Every question whose answer was filled in, in the order asked.
    pub fn assumed(&self) -> Vec<Question> {
        let t = &self.told;
        let fork_spring = if self.gas() {
            Question::ForkGas
        } else {
            Question::ForkSpring
        };
        [
            (t.rider, Question::RiderWeight),
            (t.gear || !t.rider, Question::RiderGear),
            (t.pace, Question::RiderPace),
            (t.posture, Question::RiderPosture),
            (t.class, Question::BikeClass),
            (t.bike, Question::BikeWeight),
            (t.fuel, Question::BikeFuel),
            (t.fork_kind, Question::BikeFork),
            (t.shock_kind, Question::BikeShock),
            (t.fork_spring, fork_spring),
            (t.shock_rate, Question::ShockSpring),
            (
                t.counted.fork_compression && t.counted.fork_rebound,
                Question::ForkClickers,
            ),
            (
                t.counted.shock_compression && t.counted.shock_rebound,
                Question::ShockClickers,
            ),
            (t.hours, Question::ServiceHours),
            (t.ground, Question::GroundMix),
            (
                t.temperature && t.altitude || !self.gas(),
                Question::GroundToday,
            ),
        ]
        .into_iter()
        .filter_map(|(told, question)| (!told).then_some(question))
        .collect()
    }
}

/// The class taken when none is told: the enduro bike of that shock, which lies in the middle of all classes, or the class
/// whose weight is nearest where the weight told rules that out.
fn likely_class(intake: &Intake) -> BikeClass {
    let middle = match intake.bike.shock {
        Some(ShockKind::Linkless) => BikeClass::EnduroLinkless,
        Some(ShockKind::Linkage) | None => BikeClass::EnduroLinkage,
    };
    let possible = possible_classes(intake);
    if possible.contains(&middle) {
        return middle;
    }
    let off_kg = |class: &BikeClass| {
        let told_kg = Field::BikeWeight.si(intake).unwrap_or_default();
        (told_kg - Class::of(*class).wet_mass.value).abs()
    };
    possible
        .into_iter()
        .min_by(|a, b| off_kg(a).total_cmp(&off_kg(b)))
        .unwrap_or(middle)
}

/// The classes that a bike nobody named could be of: all whose weight the one told does not rule out, and all there are
/// where it rules out every one.
fn possible_classes(intake: &Intake) -> Vec<BikeClass> {
    /// Bikes of one class further than this from its usual weight are next to none, standard deviations.
    const MOST_OFF: f64 = 3.0;
    let fits = |class: &BikeClass| {
        let usual_kg = Class::of(*class).wet_mass.value;
        let most_kg = MOST_OFF * Class::SPREAD.wet_mass * usual_kg;
        Field::BikeWeight
            .si(intake)
            .is_none_or(|told_kg| (told_kg - usual_kg).abs() <= most_kg)
    };
    let fitting: Vec<BikeClass> = BikeClass::ALL.iter().copied().filter(fits).collect();
    if fitting.is_empty() {
        BikeClass::ALL.to_vec()
    } else {
        fitting
    }
}

fn load(intake: &Intake, class: &Class) -> Load {
    let rider_kg = match (Field::RiderWeight.si(intake), intake.rider.weight_in_gear) {
        (Some(body_kg), Some(YesNo::Yes)) => body_kg,
        (Some(body_kg), Some(YesNo::No) | None) => body_kg + class.rider_gear.value,
        (None, _) => class.rider().value,
    };
    let posture = intake.rider.posture.unwrap_or(Posture::Mixed);
    Load::of(
        kg(rider_kg),
        posture,
        intake.bike.fuel.unwrap_or(FuelLoad::Full),
    )
}

fn as_it_stands(intake: &Intake, machine: &Machine) -> SetUp {
    let mut now = SetUp::usual(machine);
    match &mut now.fork.spring {
        ForkSpring::Coil { rate, preload, .. } => {
            if let Some(n_per_m) = Field::ForkRate.si(intake) {
                *rate = newton_per_m(n_per_m);
            }
            if let Some(m) = Field::ForkPreload.si(intake) {
                *preload = metre(m);
            }
        }
        ForkSpring::Gas { charge } => {
            if let Some(pa) = Field::ForkPressure.si(intake) {
                *charge = pascal(pa);
            }
        }
    }
    if let Some(n_per_m) = Field::ShockRate.si(intake) {
        now.shock.rate = newton_per_m(n_per_m);
    }
    if let Some(m) = Field::ShockPreload.si(intake) {
        now.shock.preload = metre(m);
    }
    let worn = |field: Field| Wear {
        hours: field.si(intake).map_or(USUAL_HOURS, |s| s / 3600.0),
        ..Wear::FRESH
    };
    now.fork.wear = worn(Field::ForkHours);
    now.shock.wear = worn(Field::ShockHours);
    now
}

/// Filled where the rider usually is, ridden where they are today; the workshop's air where neither is told.
fn surroundings(intake: &Intake) -> Surroundings {
    let or = |first: Field, second: Field| first.si(intake).or(second.si(intake));
    let air = |altitude_m: Option<f64>, temperature_k: Option<f64>| {
        let temperature = temperature_k.map_or(Air::WORKSHOP.temperature, kelvin);
        // The intake's own limits lie inside the atmosphere's, so this does not fail on a checked intake.
        Air::at(metre(altitude_m.unwrap_or(0.0)), temperature).unwrap_or(Air::WORKSHOP)
    };
    Surroundings {
        filled: air(
            Field::UsualAltitude.si(intake),
            or(Field::ForkPressureTemperature, Field::UsualTemperature),
        ),
        riding: air(
            or(Field::TodayAltitude, Field::UsualAltitude),
            or(Field::TodayTemperature, Field::UsualTemperature),
        ),
        bled: true,
    }
}

fn ranges(intake: &Intake) -> Ranges {
    let usual = Ranges::default();
    Ranges {
        fork_compression: clicks(intake, Field::ForkCompressionRange, usual.fork_compression),
        fork_rebound: clicks(intake, Field::ForkReboundRange, usual.fork_rebound),
        shock_compression: clicks(intake, Field::ShockLowRange, usual.shock_compression),
        shock_rebound: clicks(intake, Field::ShockReboundRange, usual.shock_rebound),
    }
}

/// A count of clicks, whole.
fn clicks(intake: &Intake, field: Field, otherwise: u8) -> u8 {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "the intake holds these between 0 and 60"
    )]
    field
        .si(intake)
        .map_or(otherwise, |count| count.round().clamp(0.0, 60.0) as u8)
}

fn told(intake: &Intake) -> Told {
    let given = |field: Field| field.get(intake).is_some();
    let (rider, bike, ground) = (&intake.rider, &intake.bike, &intake.ground);
    Told {
        rider: given(Field::RiderWeight),
        gear: rider.weight_in_gear.is_some(),
        pace: rider.pace.is_some(),
        posture: rider.posture.is_some(),
        class: bike.class.is_some(),
        bike: given(Field::BikeWeight),
        fuel: bike.fuel.is_some(),
        fork_kind: bike.fork.is_some(),
        shock_kind: bike.shock.is_some(),
        fork_spring: given(Field::ForkRate) || given(Field::ForkPressure),
        fork_preload: given(Field::ForkPreload),
        shock_rate: given(Field::ShockRate),
        shock_preload: given(Field::ShockPreload),
        ground: ground.mix.is_some(),
        temperature: given(Field::TodayTemperature) || given(Field::UsualTemperature),
        altitude: given(Field::TodayAltitude) || given(Field::UsualAltitude),
        hours: given(Field::ForkHours) && given(Field::ShockHours),
        rider_guessed: Field::RiderWeight.is_guess(intake),
        bike_guessed: Field::BikeWeight.is_guess(intake),
        counted: Counted {
            fork_compression: given(Field::ForkCompressionRange),
            fork_rebound: given(Field::ForkReboundRange),
            shock_compression: given(Field::ShockLowRange),
            shock_rebound: given(Field::ShockReboundRange),
            high_speed: given(Field::ShockHighRange),
        },
    }
}
