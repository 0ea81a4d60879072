use std::fs;
use std::path::Path;

use super::*;
use crate::intake::{Field, Intake, Question, StopSign, read_unfinished};
use crate::quantity::Typed;
use crate::remedy::RemedyId;

fn gas() -> Intake {
    let text = include_str!("../../../../demo-data/gas-fork-right-but-harsh.json");
    read_unfinished(text).expect("a demo intake can be read")
}

fn coil() -> Intake {
    let text = include_str!("../../../../demo-data/enduro-that-packs-down.json");
    read_unfinished(text).expect("a demo intake can be read")
}

/// Every intake that riders can look at first.
fn demos() -> Vec<Intake> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../demo-data");
    let files = fs::read_dir(folder).expect("the folder of demo intakes");
    let texts = files.map(|file| {
        let path = file.expect("a file of it").path();
        fs::read_to_string(path).unwrap_or_default()
    });
    // The workshop's own file is no intake, and its page has a folder.
    texts
        .filter_map(|text| read_unfinished(&text).ok())
        .collect()
}

fn bench(intake: &Intake) -> Workbench {
    Workbench::of(intake).expect("a demo bike can be put together")
}

fn at(bench: &Workbench, lever: Lever) -> Movable {
    let all = bench.movable();
    let found = all.iter().find(|one| one.lever == lever);
    *found.unwrap_or_else(|| panic!("no {lever:?}"))
}

fn moved(bench: &Workbench, lever: Lever, steps: f64) -> Trying {
    let one = at(bench, lever);
    Trying {
        levers: [(lever, one.now + steps * one.step)].into(),
        remedy: None,
    }
}

/// A figure before and after.
fn row(what_if: &WhatIf, name: &str) -> (f64, f64) {
    let row = what_if.rows.iter().find(|row| row.name.key == name);
    row.map(|row| (row.before, row.after))
        .expect("a row of that name")
}

#[test]
fn each_fork_has_its_own_levers() {
    let has = |intake: &Intake, lever| {
        let all = bench(intake).movable();
        all.iter().any(|one| one.lever == lever)
    };
    assert!(has(&gas(), Lever::ForkPressure) && !has(&gas(), Lever::ForkRate));
    assert!(has(&coil(), Lever::ForkRate) && has(&coil(), Lever::ForkPreload));
    assert!(!has(&coil(), Lever::ForkPressure));
    for one in bench(&coil()).movable() {
        assert!(
            one.low <= one.now && one.now <= one.high && one.step > 0.0,
            "{one:?}"
        );
    }
}

/// The same bike with an answer at one end of what it may be.
fn told(intake: &Intake, field: Field, si: f64) -> Intake {
    let mut intake = intake.clone();
    let unit = field.dimension().units()[0];
    let answer = Typed {
        value: unit.from_si(si),
        unit,
        how: None,
    };
    field.set(&mut intake, Some(answer));
    intake
}

#[test]
fn whatever_is_tried_can_be_an_answer() {
    let mut looked_at = 0;
    for demo in demos() {
        let marked = Field::ForkPressureMax;
        let demo = match marked.get(&demo) {
            None => demo,
            Some(_) => told(&demo, marked, marked.allowed().high),
        };
        let fields = Lever::ALL.iter().filter_map(|lever| lever.field());
        let extreme = fields.flat_map(|field| {
            let may = field.allowed();
            [may.low, may.high].map(|si| told(&demo, field, si))
        });
        for bench in extreme.filter_map(|intake| Workbench::of(&intake)) {
            looked_at += 1;
            for one in bench.movable() {
                let Some(may) = one.lever.field().map(Field::allowed) else {
                    continue;
                };
                assert!(
                    may.holds(one.low) && may.holds(one.high),
                    "{one:?} goes beyond {may:?}"
                );
            }
        }
    }
    assert!(looked_at > 50, "{looked_at} bikes");
}

#[test]
fn what_stands_where_it_stands_moves_nothing() {
    let bench = bench(&gas());
    let looked = bench.look(&Trying::default()).expect("it stands");
    assert!(looked.feel.is_empty());
    assert!(
        looked
            .rows
            .iter()
            .all(|row| row.before.to_bits() == row.after.to_bits())
    );
}

#[test]
fn springs_gas_preload_and_oil_move_what_they_should() {
    let bench_gas = bench(&gas());
    let more = bench_gas.look(&moved(&bench_gas, Lever::ForkPressure, 10.0));
    let more = more.expect("it stands");
    let (before, after) = row(&more, "setting.fork-rider-sag");
    assert!(after < before - 2e-3, "{before} {after}");
    let bench = bench(&coil());
    let look = |lever, steps| bench.look(&moved(&bench, lever, steps)).expect("it stands");
    let (before, after) = row(&look(Lever::ShockPreload, 5.0), "setting.rear-rider-sag");
    assert!(after < before - 2e-3, "{before} {after}");
    let (before, after) = row(&look(Lever::ForkRate, -3.0), "setting.fork-rider-sag");
    assert!(after > before + 2e-3, "{before} {after}");
    // More oil leaves less air, which is stiffer at the end of the travel and hardly at its beginning.
    let oil = look(Lever::OilLevel, -4.0);
    let (before, after) = row(&oil, "effect.end-force");
    assert!(after > before + 50.0, "{before} {after}");
    let (before, after) = row(&oil, "setting.fork-rider-sag");
    assert!((after - before).abs() < 3e-3, "{before} {after}");
    // A click in damps more, on its own circuit only.
    let clicked = look(Lever::ForkRebound, -2.0);
    assert!(row(&clicked, "what-if.damping.fork-rebound").1 > 1.05);
    assert!((row(&clicked, "what-if.damping.shock-rebound").1 - 1.0).abs() < 1e-9);
}

#[test]
fn what_is_tried_can_be_told_in_answers() {
    let intake = coil();
    let bench_now = bench(&intake);
    let trying = moved(&bench_now, Lever::ShockPreload, 3.0);
    let (answers, whole) = bench_now.answers(&trying);
    assert!(whole);
    let [(field, si)] = answers[..] else {
        panic!("{answers:?}");
    };
    assert_eq!(field, Field::ShockPreload);
    let mut told = intake;
    let unit = field.dimension().units()[0];
    let typed = Typed {
        value: unit.from_si(si),
        unit,
        how: None,
    };
    field.set(&mut told, Some(typed));
    let sag = |looked: &WhatIf, then: bool| {
        let (before, after) = row(looked, "setting.rear-rider-sag");
        if then { before } else { after }
    };
    let tried = bench_now.look(&trying).expect("it stands");
    let now = bench(&told).look(&Trying::default()).expect("it stands");
    assert!((sag(&tried, false) - sag(&now, true)).abs() < 1e-6);
    // What no answer holds is said to be missing.
    let (answers, whole) = bench_now.answers(&moved(&bench_now, Lever::OilLevel, 2.0));
    assert!(answers.is_empty() && !whole);
}

#[test]
fn remedies_are_those_that_change_something_and_can_be_looked_at() {
    let bench = bench(&gas());
    let all = bench.remedies();
    assert!(all.contains(&RemedyId::ReduceDrag), "{all:?}");
    for remedy in all {
        let trying = Trying {
            remedy: Some(remedy),
            ..Trying::default()
        };
        assert!(bench.look(&trying).is_ok(), "{remedy:?}");
    }
}

#[test]
fn a_bike_that_must_not_be_ridden_is_not_tried() {
    let mut intake = gas();
    intake.stop_signs = Some([StopSign::ALL[0]].into());
    assert_eq!(Workbench::of(&intake), None);
    // Nothing told at all is still a bike.
    let nothing = Intake {
        dont_know: [Question::StopSigns].into(),
        ..Intake::default()
    };
    assert!(Workbench::of(&nothing).is_some());
}

#[test]
fn a_change_is_ridden_beside_the_bike_as_it_stands() {
    let intake = coil();
    let bench = bench(&intake);
    let mut reports = 0_u32;
    let trying = moved(&bench, Lever::ForkCompression, -6.0);
    let ridden = ride_what_if(&bench, &trying, &mut |_| {
        reports += 1;
        true
    });
    let ridden = ridden.expect("it can be ridden");
    assert!(reports > 1 && ridden.rides > 0);
    assert!(
        ridden
            .feel
            .iter()
            .any(|one| one.before.to_bits() != one.after.to_bits())
    );
    let picture = &ridden.picture;
    assert_eq!(picture.before.front_wheel.len(), picture.before.fork.len());
    assert_eq!(picture.side.way.len(), picture.before.fork.len());
    assert_ne!(picture.before.fork, picture.after.fork);
    assert_eq!(ride_what_if(&bench, &trying, &mut |_| false), None);
}
