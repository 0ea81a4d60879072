//! The side view of a bike, from the figures of its class and how it looks.

use sagwright_core::bike::Class;
use sagwright_core::intake::BikeClass;
use sagwright_core::units::Length;

use super::build::{Build, Engine, Nose, Shock};
use super::pen::Leg::{Bend, To};
use super::pen::{Pen, Point, Pose, between, shifted};

/// How a bike stands, mm.
#[derive(Debug, Clone, Copy, Default)]
pub struct Stance {
    /// How far the fork is pushed in, along the leg.
    pub front_in: f64,
    /// How far the rear axle has come up towards the seat.
    pub rear_in: f64,
    /// How high the front wheel hangs over the ground.
    pub front_up: f64,
    /// How high the rear wheel hangs over the ground.
    pub rear_up: f64,
}

/// A bike of one class.
#[derive(Debug, Clone, Copy)]
pub struct Bike {
    build: Build,
    wheelbase: f64,
    stroke: f64,
    /// Up along the fork, of length 1.
    along: Point,
}

/// Places on a bike as it stands in the picture.
#[derive(Debug, Clone, Copy)]
pub struct Places {
    /// Rear axle.
    pub rear_axle: Point,
    /// Front axle.
    pub front_axle: Point,
    /// Lower clamp, at the leg.
    pub clamp: Point,
    /// Top of the leg.
    pub fork_top: Point,
    /// Under the rear fender, straight over the axle of the bike at rest.
    pub fender: Point,
    /// Where the hands hold on.
    pub grip: Point,
    /// Where one sits.
    pub seat: Point,
    /// Where the feet stand.
    pub footrest: Point,
    /// How the chassis stands.
    pub chassis: Pose,
}

impl Bike {
    /// The usual bike of a class.
    pub fn of(kind: BikeClass) -> Self {
        let class = Class::of(kind);
        let (sin, cos) = libm::sincos(class.rake.value);
        Self {
            build: Build::of(kind),
            wheelbase: in_mm(class.wheelbase),
            stroke: in_mm(class.fork_stroke),
            along: (-sin, cos),
        }
    }

    /// Up along the fork from its axle, at full length.
    fn on_fork(&self, up: f64) -> Point {
        shifted(self.front_axle(), self.along.0 * up, self.along.1 * up)
    }

    fn front_axle(&self) -> Point {
        (self.wheelbase, self.build.front_wheel)
    }

    fn rear_axle(&self) -> Point {
        (0.0, self.build.rear_wheel)
    }

    fn pivot(&self) -> Point {
        (self.wheelbase * 0.385, self.build.rear_wheel + 85.0)
    }

    fn fork_length(&self) -> f64 {
        self.build.fork + self.stroke
    }

    /// Draws the bike and says where its places are.
    pub fn draw(&self, pen: &mut Pen, stance: Stance) -> Places {
        let rear = shifted(self.rear_axle(), 0.0, stance.rear_in);
        let front = self.on_fork(stance.front_in);
        let rear_to = shifted(self.rear_axle(), 0.0, stance.rear_up);
        let front_height = self.build.front_wheel + stance.front_up;
        let chassis = Pose::standing(rear, rear_to, front, front_height);
        pen.pose(chassis);
        self.wheel(pen, rear, self.build.rear_wheel);
        self.wheel(pen, front, self.build.front_wheel);
        self.engine(pen);
        self.rear_end(pen, rear);
        self.body(pen);
        self.front_end(pen, front);
        pen.pose(Pose::STILL);
        let seat = self.build.seat;
        Places {
            rear_axle: chassis.of(rear),
            front_axle: chassis.of(front),
            clamp: chassis.of(self.on_fork(self.fork_length() - 215.0)),
            fork_top: chassis.of(self.on_fork(self.fork_length())),
            fender: chassis.of((0.0, seat - 50.0)),
            grip: chassis.of(self.grip()),
            seat: chassis.of((self.wheelbase * 0.37, seat)),
            footrest: chassis.of(self.footrest()),
            chassis,
        }
    }

    fn grip(&self) -> Point {
        shifted(self.on_fork(self.fork_length()), -75.0, 115.0)
    }

    fn footrest(&self) -> Point {
        shifted(self.pivot(), -15.0, -25.0)
    }

    fn wheel(&self, pen: &mut Pen, at: Point, radius: f64) {
        let tyre = self.build.tyre;
        pen.circle("knobs", at, radius - 10.0);
        pen.circle("tyre", at, radius - tyre / 2.0 - 8.0);
        pen.circle("spokes", at, radius - tyre - 30.0);
        pen.circle("hub", at, 48.0);
    }

    /// Swingarm, and the shock where it is what tells the class.
    fn rear_end(&self, pen: &mut Pen, axle: Point) {
        let pivot = self.pivot();
        pen.line("arm", &[axle, pivot]);
        pen.circle("hub", pivot, 40.0);
        let top = (self.wheelbase * 0.33, self.build.seat - 130.0);
        match self.build.shock {
            Shock::Hidden => {}
            Shock::Straight => {
                let foot = between(axle, pivot, 0.56);
                pen.line("spring key", &[foot, top]);
                pen.circle("joint key", foot, 36.0);
            }
            Shock::Levers => {
                let foot = shifted(pivot, -75.0, -150.0);
                pen.line("spring key", &[shifted(foot, 0.0, 25.0), top]);
                let rod = between(axle, pivot, 0.62);
                pen.line("rod key", &[rod, foot, shifted(pivot, 75.0, -125.0)]);
                pen.circle("joint key", foot, 36.0);
                pen.circle("joint key", rod, 30.0);
            }
        }
    }

    fn engine(&self, pen: &mut Pen) {
        let bulk = self.build.bulk;
        let case = shifted(self.pivot(), 165.0, -10.0);
        let at = |forward: f64, up: f64| shifted(case, forward * bulk, up * bulk);
        // Crankcase, and the cylinder leaning forward a little.
        pen.outline(
            "engine",
            at(-150.0, 60.0),
            &[
                Bend(at(-190.0, -150.0), at(0.0, -150.0)),
                Bend(at(210.0, -150.0), at(180.0, 20.0)),
                Bend(at(160.0, 90.0), at(60.0, 100.0)),
            ],
        );
        let head = if self.build.engine == Engine::TwoStroke {
            250.0
        } else {
            340.0
        };
        let lean = head * 0.12;
        pen.outline(
            "engine",
            at(-70.0, 60.0),
            &[
                To(at(-80.0 + lean, head)),
                To(at(100.0 + lean, head)),
                To(at(120.0, 60.0)),
            ],
        );
        let head_tube = self.on_fork(self.fork_length() - 190.0);
        pen.line(
            "spar",
            &[
                shifted(head_tube, -60.0, 0.0),
                (self.wheelbase * 0.44, self.build.seat - 230.0),
                shifted(self.pivot(), 10.0, 0.0),
            ],
        );
        // From under the tank down to the front of the crankcase and along below it.
        pen.outline(
            "frame",
            shifted(head_tube, -70.0, -20.0),
            &[
                Bend(at(250.0, 130.0), at(190.0, -120.0)),
                Bend(at(170.0, -175.0), at(60.0, -175.0)),
                To(at(-170.0, -140.0)),
                To(self.pivot()),
            ],
        );
        match self.build.engine {
            Engine::TwoStroke => pen.outline(
                "chamber",
                at(110.0, 180.0),
                &[
                    Bend(at(330.0, 120.0), at(300.0, -20.0)),
                    Bend(at(270.0, -150.0), at(80.0, -90.0)),
                ],
            ),
            Engine::FourStroke => pen.outline(
                "header",
                at(115.0, 300.0),
                &[
                    Bend(at(300.0, 250.0), at(260.0, 60.0)),
                    Bend(at(240.0, -30.0), at(60.0, 0.0)),
                ],
            ),
        }
        let seat = self.build.seat;
        let (from, to, class) = match self.build.engine {
            Engine::TwoStroke => (150.0, -120.0, "silencer-slim"),
            Engine::FourStroke => (190.0, -190.0, "silencer"),
        };
        pen.line(class, &[(from, seat - 225.0), (to, seat - 130.0)]);
    }

    /// Tank, seat, side panels and rear fender.
    fn body(&self, pen: &mut Pen) {
        let (wheelbase, seat, tank) = (self.wheelbase, self.build.seat, self.build.tank);
        let head = self.on_fork(self.fork_length() - 190.0);
        let cap = (head.0 - 140.0, seat + tank + 20.0);
        let shroud = (head.0 - 40.0, seat - 300.0);
        let tail = (-self.build.rear_wheel * 0.85, seat + 35.0);
        pen.outline(
            "body",
            shifted(head, -30.0, -10.0),
            &[
                Bend(shifted(cap, 60.0, 30.0), cap),
                Bend(
                    shifted(cap, -150.0, 5.0),
                    (wheelbase * 0.41, seat - 5.0 + tank * 0.25),
                ),
                Bend(
                    (wheelbase * 0.3, seat - 20.0),
                    (wheelbase * 0.12, seat + 5.0),
                ),
                Bend((0.0, seat + 20.0), tail),
                To(shifted(tail, 10.0, -45.0)),
                Bend((60.0, seat - 70.0), (wheelbase * 0.13, seat - 225.0)),
                Bend(
                    (wheelbase * 0.2, seat - 290.0),
                    (wheelbase * 0.33, seat - 285.0),
                ),
                To((wheelbase * 0.41, seat - 175.0)),
                To(shifted(shroud, -230.0, 20.0)),
                Bend(shifted(shroud, -20.0, -30.0), shifted(shroud, 30.0, 60.0)),
            ],
        );
        if self.build.nose == Nose::Fairing {
            // A seat for two, a rack, and a case at its side.
            pen.line("rail", &[(60.0, seat + 70.0), shifted(tail, -20.0, 45.0)]);
            pen.outline(
                "case",
                (-250.0, seat - 20.0),
                &[
                    To((130.0, seat - 20.0)),
                    To((100.0, seat - 340.0)),
                    To((-230.0, seat - 340.0)),
                    To((-250.0, seat - 20.0)),
                ],
            );
            pen.outline(
                "body",
                (wheelbase * 0.16, seat - 10.0),
                &[
                    Bend((wheelbase * 0.18, seat + 75.0), (80.0, seat + 80.0)),
                    To((0.0, seat)),
                ],
            );
        }
        // Where the seat ends and the panels begin.
        pen.outline(
            "seam",
            shifted(cap, -60.0, -60.0),
            &[
                Bend(
                    (wheelbase * 0.42, seat - 60.0),
                    (wheelbase * 0.3, seat - 85.0),
                ),
                Bend((wheelbase * 0.15, seat - 70.0), (20.0, seat - 25.0)),
            ],
        );
    }

    /// Fork, clamps, front fender, bars and what stands before them.
    fn front_end(&self, pen: &mut Pen, axle: Point) {
        let length = self.fork_length();
        let (clamp, top) = (self.on_fork(length - 215.0), self.on_fork(length));
        let seal = self.on_fork(self.stroke + 110.0);
        Self::fender(pen, clamp);
        pen.line("tube", &[axle, seal]);
        pen.line("leg", &[seal, top]);
        pen.circle("hub", axle, 48.0);
        for at in [clamp, self.on_fork(length - 25.0)] {
            pen.line(
                "clamp",
                &[shifted(at, 30.0, 16.0), shifted(at, -75.0, -37.0)],
            );
        }
        let grip = self.grip();
        pen.outline(
            "bars",
            shifted(top, -10.0, 0.0),
            &[To(shifted(top, -15.0, 85.0)), To(shifted(grip, -55.0, 0.0))],
        );
        self.nose(pen, clamp, top);
    }

    fn fender(pen: &mut Pen, clamp: Point) {
        let low = shifted(clamp, 10.0, -45.0);
        pen.outline(
            "body",
            shifted(low, -260.0, -120.0),
            &[
                Bend(shifted(low, -120.0, 45.0), shifted(low, 40.0, 50.0)),
                Bend(shifted(low, 270.0, 40.0), shifted(low, 430.0, -95.0)),
                Bend(shifted(low, 230.0, -15.0), shifted(low, 40.0, 0.0)),
                Bend(shifted(low, -130.0, 0.0), shifted(low, -260.0, -120.0)),
            ],
        );
    }

    fn nose(&self, pen: &mut Pen, clamp: Point, top: Point) {
        let (foot, brow) = (shifted(clamp, 75.0, 40.0), shifted(top, 85.0, 20.0));
        match self.build.nose {
            Nose::Plate => pen.line("plate", &[foot, brow]),
            Nose::Light => {
                pen.outline(
                    "body",
                    shifted(foot, -30.0, 0.0),
                    &[
                        Bend(shifted(foot, 150.0, 20.0), shifted(foot, 130.0, 90.0)),
                        Bend(shifted(brow, 90.0, 40.0), shifted(brow, -10.0, 70.0)),
                        To(shifted(brow, -55.0, 10.0)),
                    ],
                );
                pen.circle("lamp", shifted(foot, 85.0, 85.0), 42.0);
            }
            Nose::RoundLight => {
                let lamp = shifted(between(foot, brow, 0.6), 75.0, 0.0);
                pen.circle("body", lamp, 105.0);
                pen.circle("lamp", shifted(lamp, 45.0, 0.0), 55.0);
                let grip = self.grip();
                pen.line("rail", &[grip, shifted(grip, 50.0, 110.0)]);
                pen.circle("hub", shifted(grip, 50.0, 130.0), 34.0);
            }
            Nose::Fairing => {
                pen.outline(
                    "body",
                    shifted(clamp, -250.0, -150.0),
                    &[
                        Bend(shifted(clamp, 80.0, -40.0), shifted(foot, 190.0, 60.0)),
                        Bend(shifted(brow, 190.0, 10.0), shifted(brow, 90.0, 70.0)),
                        To(shifted(brow, -60.0, 60.0)),
                        Bend(shifted(brow, -220.0, -60.0), shifted(clamp, -330.0, 90.0)),
                    ],
                );
                pen.outline(
                    "screen",
                    shifted(brow, 120.0, 50.0),
                    &[
                        Bend(shifted(brow, 10.0, 190.0), shifted(brow, -110.0, 310.0)),
                        Bend(shifted(brow, -110.0, 160.0), shifted(brow, -60.0, 60.0)),
                    ],
                );
                pen.circle("lamp", shifted(foot, 95.0, 130.0), 55.0);
            }
        }
    }
}

fn in_mm(length: Length) -> f64 {
    length.value * 1e3
}
