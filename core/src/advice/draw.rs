//! The force picture and the breakaway bars as numbers: this fork beside the other kind at equal sag.

use super::figure::{Provenance, ReasonInput};
use super::picture::{
    BreakawayRow, BreakawayTable, CurveRole, ForceCurve, ForcePicture, TravelMark,
};
use super::sheet::{Sheet, input, reason};
use crate::bike::fork::Fork;
use crate::bike::{ForkSpring, Machine, SetUp, Surroundings};
use crate::intake::Field;
use crate::quantity::Dimension;
use crate::stance::curves::{Speed, fork_curve};
use crate::stance::wanted::Case;
use crate::stance::{Breakaway, Pitch, Situation, StanceError, breakaway, equivalent::other_kind};
use crate::units::Length;
use crate::words::{Arg, Text};

/// Points of each curve: enough that the eye sees no corner at twice the width of a phone.
const POINTS: u16 = 81;

/// One fork ready to be drawn.
pub(super) struct Drawn {
    pub role: CurveRole,
    /// Travel in m and force in N.
    pub points: Vec<(f64, f64)>,
    breakaway: Breakaway,
}

impl Drawn {
    /// What it is called.
    pub fn name(&self) -> Text {
        name(self.role)
    }
}

/// Both pictures; nothing where the advised set-up finds no rest.
pub fn pictures(sheet: &Sheet) -> (ForcePicture, BreakawayTable) {
    let full_travel = sheet.situation.machine.fork_stroke.value;
    let forks = forks(sheet).unwrap_or_default();
    let marks = marks(sheet, full_travel);
    let message = message(&forks);
    let rows = forks
        .iter()
        .map(|fork| BreakawayRow {
            name: name(fork.role),
            role: fork.role,
            off_top_out: fork.breakaway.off_top_out.value,
            at_ride_height: fork.breakaway.at_ride_height.value,
        })
        .collect();
    let curves = forks
        .into_iter()
        .map(|fork| ForceCurve {
            name: name(fork.role),
            role: fork.role,
            points: fork.points,
        })
        .collect();
    let inputs = inputs(sheet);
    let picture = ForcePicture {
        message,
        curves,
        marks,
        full_travel,
        reason: reason("force-picture", inputs.clone()),
    };
    let breakaway = BreakawayTable {
        rows,
        off_top_out: reason("effect-off-top-out", inputs.clone()),
        at_ride_height: reason("effect-breakaway", inputs),
    };
    (picture, breakaway)
}

/// What the forces of the advised fork come from.
fn inputs(sheet: &Sheet) -> Vec<ReasonInput> {
    let fork = &sheet.baseline.set_up.fork;
    let mut inputs = match fork.spring {
        ForkSpring::Coil { rate, preload, .. } => vec![
            input(
                "fork-rate",
                rate.value,
                Dimension::Rate,
                Provenance::Computed,
            ),
            input(
                "fork-preload-set",
                preload.value,
                Dimension::Length,
                Provenance::Computed,
            ),
        ],
        ForkSpring::Gas { charge } => {
            vec![input(
                "fork-pressure",
                charge.value,
                Dimension::Pressure,
                Provenance::Computed,
            )]
        }
    };
    let hours = fork.wear.hours * 3600.0;
    inputs.push(input(
        "fork-hours",
        hours,
        Dimension::Time,
        sheet.provenance(Field::ForkHours),
    ));
    inputs
}

fn name(role: CurveRole) -> Text {
    Text::new(match role {
        CurveRole::Coil => "picture.coil",
        CurveRole::Gas => "picture.gas",
        CurveRole::Now => "picture.now",
        CurveRole::Tried => "picture.tried",
    })
}

fn forks(sheet: &Sheet) -> Result<Vec<Drawn>, StanceError> {
    let situation = sheet.situation;
    let advised = &sheet.baseline.set_up;
    let today = Surroundings::same(situation.surroundings.riding);
    let ride = sheet.baseline.stance?.ridden.fork.middle;
    let own = if situation.gas() {
        CurveRole::Gas
    } else {
        CurveRole::Coil
    };
    let mut forks = vec![drawn(
        own,
        &situation.machine,
        situation,
        advised,
        &today,
        ride,
    )?];
    let (machine, set_up) = other_kind(situation, advised, &today)?;
    let role = if situation.gas() {
        CurveRole::Coil
    } else {
        CurveRole::Gas
    };
    forks.push(drawn(role, &machine, situation, &set_up, &today, ride)?);
    if situation.told.fork_spring && differs(&situation.now, advised) {
        let set = &situation.surroundings;
        forks.push(drawn(
            CurveRole::Now,
            &situation.machine,
            situation,
            &situation.now,
            set,
            ride,
        )?);
    }
    Ok(forks)
}

/// One fork, from ride height on as a bump pushes it.
pub(super) fn drawn(
    role: CurveRole,
    machine: &Machine,
    situation: &Situation,
    set_up: &SetUp,
    surroundings: &Surroundings,
    ride: Length,
) -> Result<Drawn, StanceError> {
    let fork = Fork::build(machine, &set_up.fork, surroundings);
    let case = Case {
        machine,
        load: &situation.load,
        set_up,
        surroundings,
        pitch: Pitch::OtherAsSet,
    };
    // Up to ride height as the bike settles, from there as a bump pushes it: a quick stroke begins at ride height.
    let slow = fork_curve(&fork, Speed::Slow, POINTS);
    let quick = fork_curve(&fork, Speed::Quick(ride), POINTS);
    let points = slow
        .iter()
        .zip(&quick)
        .map(|(slow, quick)| if slow.travel < ride { slow } else { quick });
    Ok(Drawn {
        role,
        points: points
            .map(|point| (point.travel.value, point.force.value))
            .collect(),
        breakaway: breakaway(&case)?,
    })
}

/// Whether the fork's spring is worth drawing twice: more than 3 % apart.
fn differs(now: &SetUp, advised: &SetUp) -> bool {
    const APART: f64 = 0.03;
    let far = |a: f64, b: f64| (a - b).abs() > APART * b;
    match (now.fork.spring, advised.fork.spring) {
        (ForkSpring::Coil { rate: a, .. }, ForkSpring::Coil { rate: b, .. }) => {
            far(a.value, b.value)
        }
        (ForkSpring::Gas { charge: a }, ForkSpring::Gas { charge: b }) => far(a.value, b.value),
        _ => true,
    }
}

fn marks(sheet: &Sheet, full_travel: f64) -> Vec<TravelMark> {
    let mut marks = Vec::new();
    if let Ok(stance) = &sheet.baseline.stance {
        marks.push(mark("picture.free-sag", stance.free.fork.middle.value));
        marks.push(mark("picture.ride-height", stance.ridden.fork.middle.value));
    }
    marks.push(mark("picture.full-travel", full_travel));
    marks
}

fn mark(key: &'static str, travel: f64) -> TravelMark {
    TravelMark {
        name: Text::new(key),
        travel,
    }
}

/// What the picture says: where each starts and where each ends.
fn message(forks: &[Drawn]) -> Text {
    let of = |role| forks.iter().find(|fork| fork.role == role);
    let (Some(gas), Some(coil)) = (of(CurveRole::Gas), of(CurveRole::Coil)) else {
        return Text::new("picture.no-message");
    };
    let start = |fork: &Drawn| Arg::Quantity(fork.breakaway.off_top_out.value, Dimension::Force);
    let end = |fork: &Drawn| fork.points.last().map_or(0.0, |(_, force)| *force);
    Text::new("picture.message")
        .with("gas_start", start(gas))
        .with("coil_start", start(coil))
        .with("gas_end", Arg::Quantity(end(gas), Dimension::Force))
        .with("coil_end", Arg::Quantity(end(coil), Dimension::Force))
}
