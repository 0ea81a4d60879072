//! The next lap as it is told at the track: what to change, which way, what to ride and what to feel.

use serde::Serialize;

use super::answer::Caution;
use super::causes;
use super::cautions::cautions;
use crate::cause::checks::{Case, told_apart, worst_complaint};
use crate::cause::laps::{Lap, standing, turns};
use crate::intake::{Change, Field, Intake};
use crate::quantity::Dimension;
use crate::sorted::Set;
use crate::words::Text;

/// One change worth riding a lap with.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct NextLap {
    /// What to change; its result goes into [`crate::intake::Intake::tried`].
    pub change: Change,
    /// What to change, in a few words.
    pub what: Text,
    /// Which way to turn, and what to mind.
    pub turn: Text,
    /// From which number to which; empty where it has none.
    pub moves: Vec<LapMove>,
    /// What to ride.
    pub ride: Text,
    /// What to feel.
    pub feel: Text,
    /// Why this one.
    pub why: Text,
    /// Chance that the worst complaint is better, 0 to 1.
    pub better: f64,
    /// The gravest caution before doing it, where there is one.
    pub caution: Option<Caution>,
}

/// One number that a change moves.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LapMove {
    /// Its name.
    pub label: Text,
    /// Where it stands, SI or clicks from closed; `None` where nobody told.
    pub from: Option<f64>,
    /// Where to bring it.
    pub to: Option<f64>,
    /// What it measures.
    pub dimension: Dimension,
}

/// The laps to offer, the best first, and those to ride instead where one cannot be.
pub fn next_laps(case: &Case, ranked: &[Lap]) -> Vec<NextLap> {
    /// Who can do none of so many will not do the next one either.
    const MOST_OFFERED: usize = 4;
    let offered = ranked.iter().take(MOST_OFFERED);
    offered.filter_map(|lap| next_lap(case, lap)).collect()
}

fn next_lap(case: &Case, lap: &Lap) -> Option<NextLap> {
    let change = lap.change;
    let worst = worst_complaint(case.intake)?;
    let (first, second) = told_apart(case, &lap.check());
    Some(NextLap {
        change,
        what: Text::new(format!("lap.do.{}", change.word())),
        turn: turn_text(change),
        moves: turns(case.intake, change)
            .into_iter()
            .map(|turn| LapMove {
                label: number_name(turn.field),
                from: turn.from,
                to: turn.to,
                dimension: turn.field.dimension(),
            })
            .collect(),
        ride: Text::new("lap.ride"),
        feel: Text::new("lap.feel").with(
            "feeling",
            Text::new(format!("feeling.{}", worst.word())).into(),
        ),
        why: Text::new("lap.why")
            .with("a", causes::name(first).into())
            .with("b", causes::name(second).into())
            .with("chance", causes::chance(lap.better).into()),
        better: lap.better,
        caution: change_cautions(change).into_iter().next(),
    })
}

/// What a number that laps move is called.
fn number_name(field: Field) -> Text {
    Text::new(match field {
        Field::ForkCompressionNow => "lap.of.fork-compression",
        Field::ForkReboundNow => "lap.of.fork-rebound",
        Field::ShockLowNow => "lap.of.shock-compression",
        Field::ShockReboundNow => "lap.of.shock-rebound",
        Field::ForkPressure => "lap.of.fork-gas",
        Field::ShockPreload => "lap.of.shock-preload",
        Field::FrontTyre => "lap.of.front-tyre",
        _ => "lap.of.rear-tyre",
    })
}

/// The numbers that laps left moved: as each was told, and as it stands.
pub fn moved_by_laps(intake: &Intake) -> Vec<LapMove> {
    let kept = intake.tried.iter().filter(|lap| lap.kept);
    let fields: Set<Field> = kept
        .flat_map(|lap| turns(intake, lap.change))
        .map(|turn| turn.field)
        .collect();
    let moved = fields.into_iter().map(|field| LapMove {
        label: number_name(field),
        from: field.si(intake),
        to: standing(intake, field),
        dimension: field.dimension(),
    });
    moved
        .filter(|one| one.to.is_some() && one.from != one.to)
        .collect()
}

/// The numbers by which a change is taken off the bike again: from where it brought them to where they stood.
pub fn put_back(intake: &Intake, change: Change) -> Vec<LapMove> {
    let turns = turns(intake, change).into_iter();
    let back = turns.map(|turn| LapMove {
        label: number_name(turn.field),
        from: turn.to,
        to: turn.from,
        dimension: turn.field.dimension(),
    });
    back.filter(|one| one.to.is_some()).collect()
}

/// Which way to turn.
fn turn_text(change: Change) -> Text {
    Text::new(match change {
        Change::ForkCompressionOpen
        | Change::ForkReboundOpen
        | Change::ShockCompressionOpen
        | Change::ShockReboundOpen => "lap.turn.out",
        Change::ForkCompressionClose
        | Change::ForkReboundClose
        | Change::ShockCompressionClose
        | Change::ShockReboundClose => "lap.turn.in",
        Change::ForkGasLess => "lap.turn.gas-less",
        Change::ForkGasMore => "lap.turn.gas-more",
        Change::ShockPreloadLess => "lap.turn.preload-less",
        Change::ShockPreloadMore => "lap.turn.preload-more",
        Change::TyresLess => "lap.turn.tyres-less",
        Change::ForkUp => "lap.turn.clamps-up",
        Change::ForkDown => "lap.turn.clamps-down",
    })
}

/// Cautions before a change, gravest first.
pub fn change_cautions(change: Change) -> Vec<Caution> {
    cautions(match change {
        Change::ForkGasLess | Change::ForkGasMore => &["gas-fork", "marked-maximum"],
        Change::ForkUp | Change::ForkDown => &["axle-clamps", "clearance"],
        Change::ShockPreloadMore | Change::ShockPreloadLess => &["spring-preload", "clearance"],
        Change::TyresLess => &["tyres"],
        _ => &["clicks"],
    })
}
