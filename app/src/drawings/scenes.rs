//! How to measure on a whole bike: sag at both ends, the push test, gas with the wheel off the ground.

use sagwright_core::intake::{BikeClass, End};

use super::bike::{Bike, Places, Stance};
use super::pen::Leg::{Bend, To};
use super::pen::{Pen, Point, Pose, between, shifted};
use super::people::{Facing, leaning, push, seated};

/// The bike in the drawings; any full-size one would do.
const SHOWN: BikeClass = BikeClass::Motocross250;

/// Free sag and rider sag in the drawings, mm. About twice what they are on a bike, so that they can be seen.
const FREE: f64 = 65.0;
const RIDDEN: f64 = 160.0;

/// One of the three measurements that sag is the difference of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Load {
    /// The wheel off the ground.
    Hanging,
    /// The bike alone on its wheels.
    Alone,
    /// The rider on it.
    Ridden,
}

/// One measurement of sag at one end.
pub fn sag(end: End, load: Load) -> String {
    let mut pen = Pen::new();
    let hanging = Stance {
        front_up: if end == End::Front { 130.0 } else { 0.0 },
        rear_up: if end == End::Front { 0.0 } else { 130.0 },
        ..Stance::default()
    };
    let sunk = |by: f64| Stance {
        front_in: by,
        rear_in: by,
        ..Stance::default()
    };
    let (stance, letter) = match load {
        Load::Hanging => (hanging, 'A'),
        Load::Alone => (sunk(FREE), 'B'),
        Load::Ridden => (sunk(RIDDEN), 'C'),
    };
    ground(&mut pen);
    let bike = Bike::of(SHOWN).draw(&mut pen, stance);
    match load {
        Load::Hanging => stand(&mut pen, &bike),
        Load::Alone => {}
        Load::Ridden => seated(&mut pen, &bike),
    }
    if end == End::Front {
        let aside = |at: Point| shifted(at, 215.0, 108.0);
        witness(&mut pen, bike.front_axle, aside(bike.front_axle));
        witness(&mut pen, bike.clamp, aside(bike.clamp));
        let (from, to) = (aside(bike.front_axle), aside(bike.clamp));
        measure(&mut pen, from, to);
        pen.letter(letter, shifted(between(from, to, 0.5), 190.0, 95.0));
    } else {
        let fender = (bike.rear_axle.0, bike.fender.1);
        measure(&mut pen, bike.rear_axle, fender);
        pen.letter(
            letter,
            shifted(between(bike.rear_axle, fender, 0.5), -190.0, 0.0),
        );
    }
    pen.finish()
}

/// How the shock reaches the swingarm of a class, seen on the whole bike.
pub fn rear_end(kind: BikeClass) -> String {
    let mut pen = Pen::new();
    ground(&mut pen);
    Bike::of(kind).draw(&mut pen, Stance::default());
    pen.finish()
}

/// A slow push at one end.
pub fn push_test(end: End) -> String {
    let mut pen = Pen::new();
    let stance = match end {
        End::Rear => Stance {
            rear_in: 130.0,
            front_in: 25.0,
            ..Stance::default()
        },
        _ => Stance {
            front_in: 130.0,
            rear_in: 25.0,
            ..Stance::default()
        },
    };
    ground(&mut pen);
    let bike = Bike::of(SHOWN).draw(&mut pen, stance);
    let (hands, facing) = match end {
        End::Rear => (bike.chassis.of((40.0, 985.0)), Facing::Rear),
        _ => (bike.grip, Facing::Front),
    };
    leaning(&mut pen, hands, facing);
    let at = shifted(hands, 210.0 * facing.sign(), 20.0);
    push(&mut pen, shifted(at, 0.0, 400.0), at);
    pen.finish()
}

/// Gas read with the pump on the leg and the front wheel hanging free.
pub fn pump() -> String {
    let mut pen = Pen::new();
    ground(&mut pen);
    let stance = Stance {
        front_up: 150.0,
        ..Stance::default()
    };
    let bike = Bike::of(SHOWN).draw(&mut pen, stance);
    stand(&mut pen, &bike);
    let cap = shifted(bike.fork_top, -10.0, 25.0);
    let gauge = shifted(cap, 330.0, 250.0);
    let along = |by: f64| shifted(gauge, by, -by * 0.25);
    pen.outline("hose", cap, &[Bend(shifted(cap, -30.0, 280.0), gauge)]);
    pen.line("pump", &[along(150.0), along(560.0)]);
    pen.line("rod", &[along(560.0), along(720.0)]);
    pen.line(
        "handle",
        &[
            shifted(along(720.0), -25.0, -95.0),
            shifted(along(720.0), 25.0, 95.0),
        ],
    );
    pen.circle("dial", gauge, 160.0);
    pen.line("needle", &[gauge, shifted(gauge, 65.0, 75.0)]);
    pen.finish()
}

fn ground(pen: &mut Pen) {
    pen.pose(Pose::STILL);
    pen.line("ground", &[(-420.0, 0.0), (2260.0, 0.0)]);
}

/// A stand under the engine that lifts the wheel.
fn stand(pen: &mut Pen, bike: &Places) {
    let under = bike.chassis.of((720.0, 260.0));
    pen.outline(
        "stand",
        shifted(under, -170.0, -10.0),
        &[
            To(shifted(under, 170.0, -10.0)),
            To((under.0 + 260.0, 0.0)),
            To((under.0 - 260.0, 0.0)),
            To(shifted(under, -170.0, -10.0)),
        ],
    );
}

fn witness(pen: &mut Pen, from: Point, to: Point) {
    pen.line("witness", &[from, between(from, to, 1.15)]);
}

/// A length between two places.
fn measure(pen: &mut Pen, from: Point, to: Point) {
    pen.line("halo", &[from, to]);
    pen.line("measure", &[from, to]);
    for (tip, tail) in [(from, to), (to, from)] {
        head(pen, tip, tail);
    }
}

/// The head of a thin arrow that comes from `tail`.
fn head(pen: &mut Pen, tip: Point, tail: Point) {
    let (ahead, above) = (tip.0 - tail.0, tip.1 - tail.1);
    let length = (ahead * ahead + above * above).sqrt().max(1.0);
    let (ahead, above) = (ahead / length, above / length);
    let back = shifted(tip, -ahead * 95.0, -above * 95.0);
    let side = |by: f64| shifted(back, -above * by, ahead * by);
    pen.outline("tip", tip, &[To(side(48.0)), To(side(-48.0)), To(tip)]);
}
