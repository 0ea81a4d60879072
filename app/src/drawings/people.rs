//! Riders and helpers, as plain figures.

use super::bike::Places;
use super::pen::Leg::{Bend, To};
use super::pen::{Pen, Point, between, shifted};

/// Which way a figure looks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Facing {
    /// Where the bike goes.
    Front,
    /// Where it came from.
    Rear,
}

impl Facing {
    /// 1 for forward, -1 for backward.
    pub const fn sign(self) -> f64 {
        match self {
            Self::Front => 1.0,
            Self::Rear => -1.0,
        }
    }
}

/// The joints of a figure seen from the side.
#[derive(Debug, Clone, Copy)]
struct Figure {
    facing: Facing,
    hip: Point,
    shoulder: Point,
    elbow: Point,
    hand: Point,
    knee: Point,
    foot: Point,
}

impl Figure {
    fn draw(&self, pen: &mut Pen) {
        let ahead = |from: Point, by: f64, up: f64| shifted(from, by * self.facing.sign(), up);
        pen.line(
            "limb",
            &[
                self.hip,
                self.knee,
                self.foot,
                ahead(self.foot, 110.0, -15.0),
            ],
        );
        pen.line("trunk", &[self.hip, self.shoulder]);
        let head = between(
            between(self.hip, self.shoulder, 1.38),
            ahead(self.shoulder, 60.0, 190.0),
            0.6,
        );
        pen.circle("head", head, 125.0);
        // The peak of the helmet, and the gap to look through.
        pen.line(
            "brim",
            &[ahead(head, 30.0, 100.0), ahead(head, 205.0, 120.0)],
        );
        pen.line("peak", &[ahead(head, 45.0, 5.0), ahead(head, 115.0, 0.0)]);
        pen.line("limb", &[self.shoulder, self.elbow, self.hand]);
    }
}

/// A rider on the seat, hands on the bars, feet on the footrests.
pub fn seated(pen: &mut Pen, bike: &Places) {
    let hip = shifted(bike.seat, -30.0, 85.0);
    let shoulder = shifted(hip, 230.0, 480.0);
    let elbow = shifted(between(shoulder, bike.grip, 0.5), 15.0, -130.0);
    Figure {
        facing: Facing::Front,
        hip,
        shoulder,
        elbow,
        hand: bike.grip,
        knee: shifted(bike.footrest, 250.0, 400.0),
        foot: shifted(bike.footrest, 0.0, 45.0),
    }
    .draw(pen);
}

/// Somebody standing beside the bike, leaning on their hands.
pub fn leaning(pen: &mut Pen, hands: Point, facing: Facing) {
    let behind = |from: Point, by: f64, height: f64| (from.0 - by * facing.sign(), height);
    let shoulder = behind(hands, 270.0, (hands.1 + 330.0).max(1330.0));
    Figure {
        facing,
        hip: behind(hands, 540.0, 900.0),
        shoulder,
        elbow: shifted(between(shoulder, hands, 0.5), -25.0 * facing.sign(), -10.0),
        hand: hands,
        knee: behind(hands, 500.0, 480.0),
        foot: behind(hands, 580.0, 45.0),
    }
    .draw(pen);
}

/// A wide arrow from one place to another, straight up or down.
pub fn push(pen: &mut Pen, from: Point, to: Point) {
    let way = (to.1 - from.1).signum();
    let neck = shifted(to, 0.0, -150.0 * way);
    pen.outline(
        "arrow",
        shifted(from, -55.0, 0.0),
        &[
            To(shifted(neck, -55.0, 0.0)),
            To(shifted(neck, -130.0, 0.0)),
            To(to),
            To(shifted(neck, 130.0, 0.0)),
            To(shifted(neck, 55.0, 0.0)),
            To(shifted(from, 55.0, 0.0)),
            Bend(from, shifted(from, -55.0, 0.0)),
        ],
    );
}
