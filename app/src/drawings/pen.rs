//! Lines and shapes written as SVG, in whole millimetres of the bike.

use std::fmt::Write as _;

/// A place in a side view, mm: forward of the rear axle of the bike at rest, up from the ground.
pub type Point = (f64, f64);

/// A place so much further along from `from`, mm.
pub fn shifted(from: Point, forward: f64, up: f64) -> Point {
    (from.0 + forward, from.1 + up)
}

/// A place a part of the way from one to another.
pub fn between(from: Point, to: Point, part: f64) -> Point {
    (
        from.0 + (to.0 - from.0) * part,
        from.1 + (to.1 - from.1) * part,
    )
}

/// One leg of an outline.
#[derive(Debug, Clone, Copy)]
pub enum Leg {
    /// Straight to a place.
    To(Point),
    /// Bent towards the first place on the way to the second.
    Bend(Point, Point),
}

/// Where a rigid body stands in the picture: turned, then moved.
#[derive(Debug, Clone, Copy)]
pub struct Pose {
    cos: f64,
    sin: f64,
    by: Point,
}

impl Pose {
    /// As it was laid out.
    pub const STILL: Self = Self {
        cos: 1.0,
        sin: 0.0,
        by: (0.0, 0.0),
    };

    /// Turned and moved so that `rear` comes to lie on `rear_to`, and `front` as high as `front_height`.
    pub fn standing(rear: Point, rear_to: Point, front: Point, front_height: f64) -> Self {
        let (ahead, above) = (front.0 - rear.0, front.1 - rear.1);
        let length = (ahead * ahead + above * above).sqrt();
        let rise = front_height - rear_to.1;
        let reach = (length * length - rise * rise).max(0.0).sqrt();
        // The turn that takes one direction to the other, by the product of the two.
        let square = length * length;
        let cos = (ahead * reach + above * rise) / square;
        let sin = (ahead * rise - above * reach) / square;
        let turned = (rear.0 * cos - rear.1 * sin, rear.0 * sin + rear.1 * cos);
        Self {
            cos,
            sin,
            by: (rear_to.0 - turned.0, rear_to.1 - turned.1),
        }
    }

    /// Where a place of the body is in the picture.
    pub fn of(self, (forward, up): Point) -> Point {
        (
            forward * self.cos - up * self.sin + self.by.0,
            forward * self.sin + up * self.cos + self.by.1,
        )
    }
}

/// Writes SVG elements.
#[derive(Debug)]
pub struct Pen {
    pose: Pose,
    svg: String,
}

impl Pen {
    /// A pen for things that stand as they were laid out.
    pub fn new() -> Self {
        Self {
            pose: Pose::STILL,
            svg: String::with_capacity(4096),
        }
    }

    /// From here on, things stand so.
    pub fn pose(&mut self, pose: Pose) {
        self.pose = pose;
    }

    /// What was written.
    pub fn finish(self) -> String {
        self.svg
    }

    /// A ring or disc of a radius in mm.
    pub fn circle(&mut self, class: &str, at: Point, radius: f64) {
        let (x, y) = self.place(at);
        let r = whole(radius);
        self.put(format_args!(
            "<circle class=\"{class}\" cx=\"{x}\" cy=\"{y}\" r=\"{r}\"/>"
        ));
    }

    /// Straight lines from place to place.
    pub fn line(&mut self, class: &str, points: &[Point]) {
        if let Some((first, rest)) = points.split_first() {
            let legs: Vec<Leg> = rest.iter().copied().map(Leg::To).collect();
            self.outline(class, *first, &legs);
        }
    }

    /// Legs from a starting place.
    pub fn outline(&mut self, class: &str, from: Point, legs: &[Leg]) {
        let (x, y) = self.place(from);
        self.put(format_args!("<path class=\"{class}\" d=\"M{x} {y}"));
        for leg in legs {
            match *leg {
                Leg::To(to) => {
                    let (x, y) = self.place(to);
                    self.put(format_args!("L{x} {y}"));
                }
                Leg::Bend(towards, to) => {
                    let ((cx, cy), (x, y)) = (self.place(towards), self.place(to));
                    self.put(format_args!("Q{cx} {cy} {x} {y}"));
                }
            }
        }
        self.put(format_args!("\"/>"));
    }

    /// A letter that the words beside the picture use, on its own ground.
    pub fn letter(&mut self, letter: char, at: Point) {
        let (x, y) = self.place(at);
        self.put(format_args!(
            "<circle class=\"tag\" cx=\"{x}\" cy=\"{y}\" r=\"85\"/><text x=\"{x}\" y=\"{}\">{letter}</text>",
            y + 42
        ));
    }

    fn place(&self, point: Point) -> (i32, i32) {
        let (x, y) = self.pose.of(point);
        (whole(x), whole(-y))
    }

    fn put(&mut self, text: std::fmt::Arguments<'_>) {
        // Writing into a string cannot fail.
        let _ = self.svg.write_fmt(text);
    }
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "drawings are a few thousand millimetres wide"
)]
fn whole(length: f64) -> i32 {
    length.round() as i32
}
