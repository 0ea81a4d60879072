//! How far the numbers could be off: what a range must do when less is known, when more is drawn, and where the answer is
//! known in closed form.

use std::collections::BTreeMap;

use sagwright_core::advice::SettingId;
use sagwright_core::advice::ranges::{NumberRange, Ranges};
use sagwright_core::intake::{
    BikeClass, Field, FuelLoad, Intake, Pace, Posture, Question, Share, Terrain, YesNo, check, read,
};
use sagwright_core::quantity::{How, Typed};
use sagwright_core::stance::baseline::{fork_pressure, fork_rate, shock_rate};
use sagwright_core::stance::unknowns::{
    DRAWS, FOUR_IN_FIVE, Input, SEED, Spread, draws, moves, ranged,
};
use sagwright_core::stance::{Situation, StanceError, baseline};

/// Every demo intake, by name.
fn demos() -> Vec<(String, Intake)> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../demo-data");
    let mut demos: Vec<(String, Intake)> = std::fs::read_dir(folder)
        .expect("the demo data is there")
        .map(|entry| entry.expect("readable").path())
        .filter(|path| path.is_file() && !path.ends_with("workshop.json"))
        .map(|path| {
            let text = std::fs::read_to_string(&path).expect("readable");
            let name = path.file_stem().unwrap_or_default().to_string_lossy();
            (name.into_owned(), read(&text).expect("well-formed"))
        })
        .collect();
    demos.sort_by(|(a, _), (b, _)| a.cmp(b));
    demos
}

fn ranges_from(intake: &Intake, count: u32, seed: u32) -> Ranges {
    let situation = Situation::of(intake);
    Ranges::from_draws(&situation, &baseline(&situation), count, seed)
}

fn ranges(intake: &Intake) -> Ranges {
    ranges_from(intake, DRAWS, SEED)
}

fn width(number: &NumberRange) -> f64 {
    number.range.high - number.range.low
}

/// An answer that can be taken out: its name, and what takes it out and says whether it was there.
type Taker = (String, Box<dyn Fn(&mut Intake) -> bool>);

fn takers() -> Vec<Taker> {
    fn choice(name: &str, take: impl Fn(&mut Intake) -> bool + 'static) -> Taker {
        (name.to_owned(), Box::new(take))
    }
    let numbers = Field::ALL.iter().map(|&field| {
        choice(field.path(), move |intake| {
            let given = field.get(intake).is_some();
            field.set(intake, None);
            given
        })
    });
    let choices = [
        choice("gear", |i| i.rider.weight_in_gear.take().is_some()),
        choice("pace", |i| i.rider.pace.take().is_some()),
        choice("posture", |i| i.rider.posture.take().is_some()),
        choice("class", |i| i.bike.class.take().is_some()),
        choice("fuel", |i| i.bike.fuel.take().is_some()),
        choice("fork", |i| i.bike.fork.take().is_some()),
        choice("shock", |i| i.bike.shock.take().is_some()),
        choice("ground", |i| i.ground.mix.take().is_some()),
    ];
    numbers.chain(choices).collect()
}

/// Mean and how many of some ratios.
#[derive(Debug, Default, Clone, Copy)]
struct Mean {
    sum: f64,
    count: u32,
}

impl Mean {
    fn add(&mut self, value: f64) {
        self.sum += value;
        self.count += 1;
    }

    fn value(self) -> f64 {
        self.sum / f64::from(self.count)
    }
}

/// Taken over the demo intakes, a card has wider ranges for want of any one answer, and so has every number for want of
/// answers.
///
/// Not every number for want of every answer: preload is held within what is usual, so a rider who might be lighter than
/// was taken gets the least preload more often, and a number that stands at its limit does not differ.
#[test]
fn taking_an_answer_away_widens() {
    let demos: Vec<_> = demos()
        .into_iter()
        .map(|(_, intake)| (ranges(&intake), intake))
        .collect();
    let mut by_number: BTreeMap<SettingId, Mean> = BTreeMap::new();
    let mut widened = 0;
    for (name, take) in takers() {
        let mut by_answer = Mean::default();
        for (with, intake) in &demos {
            let mut less = intake.clone();
            let given = take(&mut less) && check(&less).is_ok();
            // Numbers of another kind of fork are not the same numbers.
            if !given || Situation::of(&less).machine.fork != Situation::of(intake).machine.fork {
                continue;
            }
            let without = ranges(&less);
            for (id, number) in with.all() {
                let Some(other) = without.get(id) else {
                    continue;
                };
                let grown = width(other) / width(number);
                by_answer.add(grown);
                if (grown - 1.0).abs() > 1e-9 {
                    by_number.entry(id).or_default().add(grown);
                }
            }
        }
        if by_answer.count > 0 {
            let mean = by_answer.value();
            // Altitude and what else moves a number itself moves its width by a hair.
            assert!(mean > 1.0 - 1e-3, "without {name}: {mean:.3}");
            widened += u32::from(mean > 1.01);
        }
    }
    assert!(widened >= 10, "only {widened} answers narrow anything");
    for (id, mean) in by_number {
        assert!(mean.value() > 1.0, "{id:?}: {:.3}", mean.value());
    }
}

/// The same answers give the same draws, another seed gives others.
#[test]
fn draws_can_be_had_again() {
    for (_, intake) in demos() {
        let situation = Situation::of(&intake);
        assert_eq!(ranges(&intake), ranges(&intake));
        assert_ne!(
            draws(&situation, DRAWS, SEED),
            draws(&situation, DRAWS, SEED + 1)
        );
    }
}

/// More draws, or others, move no end of any range by as much as it would be seen.
#[test]
fn more_draws_move_no_end_far() {
    let mut off = Mean::default();
    for (name, intake) in demos() {
        let few = ranges(&intake);
        let most = ranges_from(&intake, 4096, SEED + 1);
        let more = ranges_from(&intake, 256, SEED);
        for (id, few) in few.all() {
            let moved = |other: &Ranges| {
                let other = other.get(id).expect("the same card");
                let low = (few.range.low - other.range.low).abs();
                low.max((few.range.high - other.range.high).abs()) / width(other)
            };
            assert!(
                moved(&more) < 0.15,
                "{name}: {id:?} moves by {:.3}",
                moved(&more)
            );
            assert!(
                moved(&most) < 0.20,
                "{name}: {id:?} is off by {:.3}",
                moved(&most)
            );
            off.add(moved(&most));
        }
    }
    assert!(off.value() < 0.05, "{:.3}", off.value());
}

/// Where an answer is close to a straight line in what is not known, its range is that of the root of the sum of squares.
#[test]
fn ranges_agree_with_the_sum_of_squares() {
    type Answer = fn(&Situation) -> Result<f64, StanceError>;
    let answers: [Answer; 3] = [
        |s| fork_rate(s).map(|rate| rate.value),
        |s| fork_pressure(s).map(|pressure| pressure.value),
        |s| shock_rate(s).map(|rate| rate.value),
    ];
    let mut compared = 0;
    for (name, intake) in demos() {
        let situation = Situation::of(&intake);
        // A choice that was not made moves by steps, not along a line.
        let lines = [Input::Class, Input::Gear, Input::Posture, Input::Fuel]
            .iter()
            .all(|input| input.spread(&situation) == Spread::Known);
        if !lines {
            continue;
        }
        for answer in answers {
            let (Ok(sampled), Ok(moves)) = (ranged(&situation, answer), moves(&situation, answer))
            else {
                continue;
            };
            let squares: f64 = moves.iter().map(|m| m.moves_by * m.moves_by).sum();
            let ratio = sampled.half_width / (FOUR_IN_FIVE * squares.sqrt());
            assert!((ratio - 1.0).abs() < 0.15, "{name}: {ratio:.3}");
            compared += 1;
        }
    }
    assert!(compared >= 16, "only {compared} compared");
}

/// Every answer a question could get: what was taken anyway, as measured, where it asks for a number; each kind otherwise.
fn answers(intake: &Intake, question: Question) -> Vec<Intake> {
    fn each<T: Copy>(intake: &Intake, all: &[T], set: impl Fn(&mut Intake, T)) -> Vec<Intake> {
        let with = |answer: &T| {
            let mut more = intake.clone();
            set(&mut more, *answer);
            more
        };
        all.iter().map(with).collect()
    }
    let situation = Situation::of(intake);
    let measured = |numbers: &[(Field, f64)]| {
        let mut more = intake.clone();
        for (field, si) in numbers {
            let unit = field.dimension().units()[0];
            let typed = Typed {
                value: unit.from_si(*si),
                unit,
                how: Some(How::Measured),
            };
            field.set(&mut more, Some(typed));
        }
        vec![more]
    };
    let count = |field: Field, usual: f64| (field, field.si(intake).unwrap_or(usual));
    match question {
        Question::RiderWeight => {
            let gear = situation.machine.class.rider_gear;
            let worn = intake.rider.weight_in_gear == Some(YesNo::Yes);
            let rider = situation.load.rider;
            let told = if worn { rider } else { rider - gear };
            measured(&[(Field::RiderWeight, told.value)])
        }
        Question::BikeWeight => measured(&[(Field::BikeWeight, situation.machine.wet_mass.value)]),
        Question::ForkClickers => measured(&[
            count(Field::ForkCompressionRange, 24.0),
            count(Field::ForkReboundRange, 24.0),
        ]),
        Question::ShockClickers => measured(&[
            count(Field::ShockLowRange, 24.0),
            count(Field::ShockReboundRange, 24.0),
            count(Field::ShockHighRange, 12.0),
        ]),
        Question::RiderGear => each(intake, YesNo::ALL, |i, a| i.rider.weight_in_gear = Some(a)),
        Question::RiderPosture => each(intake, Posture::ALL, |i, a| i.rider.posture = Some(a)),
        Question::RiderPace => each(intake, Pace::ALL, |i, a| i.rider.pace = Some(a)),
        Question::BikeFuel => each(intake, FuelLoad::ALL, |i, a| i.bike.fuel = Some(a)),
        Question::BikeClass => each(intake, BikeClass::ALL, |i, a| i.bike.class = Some(a)),
        Question::GroundMix => each(intake, Terrain::ALL, |i, a| {
            i.ground.mix = Some([(a, Share::Lot)].into());
        }),
        other => panic!("{other:?} does not move a range"),
    }
}

/// The answer said to narrow the numbers most does so within a hair of the one that does most, and by about what was said,
/// on average over all it could be.
#[test]
fn the_answer_named_narrows_most() {
    let sparse = demos().into_iter().map(|(name, intake)| {
        let mut less = intake;
        (
            less.rider.weight_in_gear,
            less.rider.posture,
            less.bike.fuel,
        ) = (None, None, None);
        (name, less)
    });
    let cases = demos()
        .into_iter()
        .chain(sparse)
        .chain([("nothing".to_owned(), Intake::default())]);
    let mut named = 0;
    for (name, intake) in cases {
        let situation = Situation::of(&intake);
        let before = ranges(&intake);
        let Some(most) = before.narrows_most(&situation) else {
            continue;
        };
        named += 1;
        let narrows = |question: Question| {
            let mut mean = Mean::default();
            for answered in answers(&intake, question) {
                let after = ranges(&answered);
                for (id, number) in before.all() {
                    let left = after.get(id).expect("the same card");
                    mean.add(1.0 - width(left) / width(number));
                }
            }
            mean.value()
        };
        let found: Vec<(Question, f64, f64)> = before
            .narrowing(&situation)
            .into_iter()
            .map(|(question, said)| (question, said, narrows(question)))
            .collect();
        let best = found.iter().map(|(_, _, does)| *does).fold(0.0, f64::max);
        let does = narrows(most.question);
        assert!(
            does > best - 0.03,
            "{name}: {:?} of {found:.3?}",
            most.question
        );
        for (question, said, does) in &found {
            // A weight also rules out classes, which is not counted to it.
            if situation.told.class || *question != Question::BikeWeight {
                assert!(
                    (said - does).abs() < 0.08,
                    "{name}: {question:?} {said:.3} {does:.3}"
                );
            }
        }
    }
    assert!(named >= 10, "only {named} intakes have an answer to name");
}
