//! What a remedy would change on this bike, as far as statics can tell: sag, breakaway, end force, damping share.

use super::figure::Provenance;
use super::remedy_finding::Effect;
use super::sheet::{Sheet, input, reason};
use crate::bike::friction::Wear;
use crate::bike::{ForkSpring, Machine, SetUp, Surroundings};
use crate::intake::Field;
use crate::quantity::Dimension;
use crate::remedy::RemedyId;
use crate::stance::baseline::{fork_preload, shock_preload};
use crate::stance::clickers::CLICK;
use crate::stance::curves::{Speed, fork_curve};
use crate::stance::equivalent::other_kind;
use crate::stance::tyres::tyres;
use crate::stance::wanted::Case;
use crate::stance::{Breakaway, Pitch, Stance, StanceError, breakaway, settle};
use crate::words::Text;

/// Clicks that a "one or two clicks" remedy moves.
const CLICKS_MOVED: i32 = 2;

/// The computed effects of a remedy, none where statics cannot tell.
pub fn effects(sheet: &Sheet, id: RemedyId) -> Vec<Effect> {
    let advised = &sheet.baseline.set_up;
    if !told_enough(sheet, id) {
        return Vec::new();
    }
    let mut after = sheet.situation.now;
    match id {
        RemedyId::OpenForkCompression
        | RemedyId::OpenForkRebound
        | RemedyId::OpenShockCompression
        | RemedyId::OpenShockRebound => return vec![damping(-CLICKS_MOVED)],
        RemedyId::CloseForkCompression
        | RemedyId::CloseForkRebound
        | RemedyId::CloseShockCompression
        | RemedyId::CloseShockRebound => return vec![damping(CLICKS_MOVED)],
        RemedyId::SetTyres => return tyre_effects(sheet),
        RemedyId::ReduceDrag => after.fork.wear.slippery = true,
        RemedyId::ServiceSeals | RemedyId::ServiceForkOil => after.fork.wear = Wear::FRESH,
        RemedyId::ServiceLinkage | RemedyId::ServiceShock => after.shock.wear = Wear::FRESH,
        RemedyId::SetGasPressure | RemedyId::ForkSprings => after.fork.spring = advised.fork.spring,
        RemedyId::ForkSpacer => after.fork.spring = respaced(sheet, after.fork.spring),
        RemedyId::SetShockPreload => {
            let Ok(preload) = shock_preload(sheet.situation, after.shock.rate) else {
                return Vec::new();
            };
            after.shock.preload = preload;
        }
        RemedyId::ShockSpring => {
            after.shock = crate::bike::ShockSet {
                wear: after.shock.wear,
                ..advised.shock
            }
        }
        RemedyId::ConvertToCoil => return converted(sheet).unwrap_or_default(),
        _ => return Vec::new(),
    }
    changed(sheet, &after).unwrap_or_default()
}

/// A before that was never told would be fiction: what is fitted must be known where it is what changes.
fn told_enough(sheet: &Sheet, id: RemedyId) -> bool {
    let told = &sheet.situation.told;
    match id {
        RemedyId::SetGasPressure
        | RemedyId::ForkSprings
        | RemedyId::ForkSpacer
        | RemedyId::ConvertToCoil => told.fork_spring,
        RemedyId::SetShockPreload => told.shock_rate && told.shock_preload,
        RemedyId::ShockSpring => told.shock_rate,
        _ => true,
    }
}

/// The springs as fitted with the preload that suits them.
fn respaced(sheet: &Sheet, now: ForkSpring) -> ForkSpring {
    match now {
        ForkSpring::Coil { rate, springs, .. } => match fork_preload(sheet.situation, rate) {
            Ok(preload) => ForkSpring::Coil {
                rate,
                springs,
                preload,
            },
            Err(_) => now,
        },
        ForkSpring::Gas { .. } => now,
    }
}

/// How a bike sits and starts to move.
struct State {
    stance: Stance,
    breakaway: Breakaway,
    end_n: f64,
}

fn state(
    sheet: &Sheet,
    machine: &Machine,
    set_up: &SetUp,
    air: &Surroundings,
) -> Result<State, StanceError> {
    let load = &sheet.situation.load;
    let stance = settle(machine, load, set_up, air)?;
    let case = Case {
        machine,
        load,
        set_up,
        surroundings: air,
        pitch: Pitch::OtherAsSet,
    };
    let fork = crate::bike::fork::Fork::build(machine, &set_up.fork, air);
    let last = fork_curve(&fork, Speed::Quick(stance.ridden.fork.middle), 2);
    Ok(State {
        stance,
        breakaway: breakaway(&case)?,
        end_n: last.last().map_or(0.0, |point| point.force.value),
    })
}

/// Before and after of a set-up changed on the same bike; only what changes is told.
fn changed(sheet: &Sheet, after: &SetUp) -> Result<Vec<Effect>, StanceError> {
    let (machine, set) = (&sheet.situation.machine, &sheet.situation.surroundings);
    let before = state(sheet, machine, &sheet.situation.now, set)?;
    let after = state(sheet, machine, after, &Surroundings::same(set.riding))?;
    Ok(compare(&before, &after))
}

/// Before and after of one coil spring in place of the gas, with thin oil and a slippery finish in its leg.
fn converted(sheet: &Sheet) -> Result<Vec<Effect>, StanceError> {
    let situation = sheet.situation;
    let today = Surroundings::same(situation.surroundings.riding);
    let before = state(
        sheet,
        &situation.machine,
        &situation.now,
        &situation.surroundings,
    )?;
    let (machine, mut set_up) = other_kind(situation, &sheet.baseline.set_up, &today)?;
    set_up.fork.wear = Wear {
        slippery: true,
        ..Wear::FRESH
    };
    let after = state(sheet, &machine, &set_up, &today)?;
    let mut effects = compare(&before, &after);
    if let ForkSpring::Coil { rate, preload, .. } = set_up.fork.spring {
        let new = |word, value, dimension| Effect {
            before: None,
            ..effect(word, 0.0, value, dimension)
        };
        effects.push(new("coil-rate", rate.value, Dimension::Rate));
        effects.push(new("coil-preload", preload.value, Dimension::Length));
    }
    Ok(effects)
}

fn compare(before: &State, after: &State) -> Vec<Effect> {
    // Below these no rider or tape could tell: 1 mm of sag, 2 N of breakaway, 20 N at the end of the travel.
    const SAG_M: f64 = 0.001;
    const BREAKAWAY_N: f64 = 2.0;
    const END_N: f64 = 20.0;
    let rows = [
        (
            "breakaway",
            before.breakaway.at_ride_height.value,
            after.breakaway.at_ride_height.value,
            Dimension::Force,
            BREAKAWAY_N,
        ),
        (
            "off-top-out",
            before.breakaway.off_top_out.value,
            after.breakaway.off_top_out.value,
            Dimension::Force,
            BREAKAWAY_N,
        ),
        (
            "end-force",
            before.end_n,
            after.end_n,
            Dimension::Force,
            END_N,
        ),
        (
            "fork-rider-sag",
            before.stance.ridden.fork.middle.value,
            after.stance.ridden.fork.middle.value,
            Dimension::Length,
            SAG_M,
        ),
        (
            "rear-rider-sag",
            before.stance.ridden.rear.middle.value,
            after.stance.ridden.rear.middle.value,
            Dimension::Length,
            SAG_M,
        ),
        (
            "rear-free-sag",
            before.stance.free.rear.middle.value,
            after.stance.free.rear.middle.value,
            Dimension::Length,
            SAG_M,
        ),
        (
            "rear-sag-band",
            spread(&before.stance),
            spread(&after.stance),
            Dimension::Length,
            SAG_M,
        ),
    ];
    rows.into_iter()
        .filter(|(_, before, after, _, least)| (after - before).abs() >= *least)
        .map(|(word, before, after, dimension, _)| effect(word, before, after, dimension))
        .collect()
}

/// Width of the friction band of rider sag at the rear, m.
fn spread(stance: &Stance) -> f64 {
    (stance.ridden.rear.high - stance.ridden.rear.low).value
}

fn effect(word: &'static str, before: f64, after: f64, dimension: Dimension) -> Effect {
    Effect {
        name: Text::new(format!("effect.{word}")),
        before: Some(before),
        after,
        dimension,
        reason: reason(&format!("effect-{word}"), Vec::new()),
    }
}

/// Low-speed damping after so many clicks in (positive) or out, as a share of what it was.
fn damping(clicks: i32) -> Effect {
    let after = libm::pow(1.0 + CLICK.middle, f64::from(clicks));
    let mut effect = effect("damping", 1.0, after, Dimension::Share);
    effect.reason.inputs.push(input(
        "click",
        CLICK.middle,
        Dimension::Share,
        Provenance::Practice,
    ));
    effect
}

fn tyre_effects(sheet: &Sheet) -> Vec<Effect> {
    let usual = tyres(sheet.situation);
    [
        ("front-tyre", Field::FrontTyre, usual.front),
        ("rear-tyre", Field::RearTyre, usual.rear),
    ]
    .into_iter()
    .filter_map(|(word, field, suits)| {
        let now = field.si(sheet.intake)?;
        Some(effect(word, now, suits.middle.value, Dimension::Pressure))
    })
    .collect()
}
