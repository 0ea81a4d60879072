//! Both rides at one moment on one canvas, one above the other over the same ground.

use core::f64::consts::TAU;

use sagwright_core::advice::RidePicture;
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement};

use super::motion::{Side, ground, moment};
use super::pose::{HEAD_M, Place, Pose};
use crate::pictures::{
    Look, Pen, context_of, css_of, device_pixels, look_of, pixel_ratio, room_of, set_dashes,
};

/// What is written over one of the rides.
#[derive(Debug, Clone, PartialEq)]
pub struct Caption {
    /// Which bike it is.
    pub name: String,
    /// How far in it is.
    pub travels: String,
}

/// Length of ground that is seen, m: less on a narrow screen, so that the bike is not lost on it.
const SEEN_M: [f64; 2] = [3.4, 6.5];
/// Width at which all of it is seen, CSS pixels.
const WIDE: f64 = 900.0;
/// Height from the lowest ground drawn to the top of the helmet and some, m.
const HIGH_M: f64 = 2.25;
/// Ground below the rear wheel at rest, m.
const BELOW_M: f64 = 0.22;
/// How far ahead of the left edge the rear wheel is, as a part of what is seen.
const AHEAD: f64 = 0.3;
/// Distance between two posts along the ground, m.
const POSTS_M: f64 = 1.0;
/// Height of a line of words over that of its letters.
const LINE: f64 = 1.35;

/// Draws both rides `at_s` after the start; `None` where there is nothing to draw on.
pub fn draw(
    canvas: &HtmlCanvasElement,
    picture: &RidePicture,
    captions: &[Caption; 2],
    at_s: f64,
) -> Option<()> {
    let (wide, high) = room_of(canvas)?;
    let ratio = pixel_ratio();
    let (width, height) = (device_pixels(wide, ratio), device_pixels(high, ratio));
    // Setting the size wipes the canvas, which a moving picture needs only when it changes.
    if (canvas.width(), canvas.height()) != (width, height) {
        canvas.set_width(width);
        canvas.set_height(height);
    }
    let look = look_of(canvas, ratio, None)?;
    let context = context_of(canvas)?;
    context
        .set_transform(ratio, 0.0, 0.0, ratio, 0.0, 0.0)
        .ok()?;
    context.set_fill_style_str(&css_of(look.palette.paper));
    context.fill_rect(0.0, 0.0, wide, high);
    let lane_high = high / 2.0;
    for (side, (caption, top)) in Side::BOTH
        .into_iter()
        .zip(captions.iter().zip([0.0, lane_high]))
    {
        context.save();
        context.begin_path();
        context.rect(0.0, top, wide, lane_high);
        context.clip();
        let words = 2.0 * LINE * look.letters;
        let lane = Lane::over(
            &context,
            &look,
            side,
            (wide, lane_high - words, top + words),
        );
        lane.ride(picture, at_s);
        lane.caption(caption, top);
        context.restore();
    }
    Some(())
}

/// The room of one ride, and how places become pixels there.
struct Lane<'a> {
    context: &'a CanvasRenderingContext2d,
    look: &'a Look,
    side: Side,
    wide: f64,
    bottom: f64,
    per_m: f64,
}

impl<'a> Lane<'a> {
    fn over(
        context: &'a CanvasRenderingContext2d,
        look: &'a Look,
        side: Side,
        (wide, high, top): (f64, f64, f64),
    ) -> Self {
        let seen_m = (SEEN_M[1] * wide / WIDE).clamp(SEEN_M[0], SEEN_M[1]);
        Self {
            context,
            look,
            side,
            wide,
            bottom: top + high,
            per_m: (wide / seen_m).min(high / HIGH_M),
        }
    }

    const fn pen(&self) -> Pen {
        match self.side {
            Side::Before => Pen::Now,
            Side::After => Pen::Advised,
        }
    }

    fn ride(&self, picture: &RidePicture, at_s: f64) {
        let at = moment(picture, self.side, at_s);
        let seen_m = self.wide / self.per_m;
        let left_m = at.way_m - AHEAD * seen_m;
        // The eye follows the lie of the ground, not every bump.
        let eye_m = mean_ground(picture, at.way_m + 0.5 * picture.side.wheelbase_m);
        let on = |(along, up): Place| {
            (
                (along - left_m) * self.per_m,
                self.bottom - (up - eye_m + BELOW_M) * self.per_m,
            )
        };
        self.ground(picture, left_m, &on);
        self.bike(
            &Pose::of(&picture.side, &at),
            picture.side.tyre_radius_m,
            &on,
        );
    }

    /// The ground, in the dashes of its ride, with a post every metre to see how fast it goes.
    fn ground(&self, picture: &RidePicture, left_m: f64, on: &impl Fn(Place) -> (f64, f64)) {
        let context = self.context;
        context.begin_path();
        let step = 3.0;
        let mut x = -step;
        let mut first = true;
        while x <= self.wide + step {
            let way = left_m + x / self.per_m;
            let (x_on, y_on) = on((way, ground(picture, way)));
            if first {
                context.move_to(x_on, y_on);
            } else {
                context.line_to(x_on, y_on);
            }
            first = false;
            x += step;
        }
        self.dashes(self.pen().dashes());
        self.stroke(self.look.palette.curve(self.pen()), 3.0);
        self.dashes(&[]);
        let mut post = (left_m / POSTS_M).ceil() * POSTS_M;
        while (post - left_m) * self.per_m < self.wide {
            let (x, y) = on((post, ground(picture, post)));
            context.begin_path();
            context.move_to(x, y + 5.0);
            context.line_to(x, y + 13.0);
            self.stroke(self.look.palette.mark, 1.5);
            post += POSTS_M;
        }
    }

    fn bike(&self, pose: &Pose, radius_m: f64, on: &impl Fn(Place) -> (f64, f64)) {
        let palette = self.look.palette;
        let (ink, own) = (palette.ink, palette.curve(self.pen()));
        let m = |length: f64| (length * self.per_m).max(1.5);
        for axle in pose.axles {
            self.wheel(on(axle), radius_m, pose.turned_rad);
        }
        self.line(&pose.swingarm, on, ink, m(0.055));
        self.line(&pose.shock, on, own, m(0.07));
        self.line(&pose.inner, on, ink, m(0.045));
        self.line(&pose.outer, on, own, m(0.075));
        let [body, engine, guard] = &pose.outlines;
        self.filled(engine, on, palette.grid);
        self.filled(body, on, own);
        self.filled(guard, on, own);
        // An edge of paper keeps a limb apart from what is behind it.
        for (limb, width) in [
            (&pose.leg[..], 0.12),
            (&pose.trunk[..], 0.19),
            (&pose.arm[..], 0.085),
        ] {
            self.line(limb, on, palette.paper, m(width + 0.045));
            self.line(limb, on, ink, m(width));
        }
        self.line(&pose.bar, on, ink, m(0.045));
        let (x, y) = on(pose.head);
        self.circle(x, y, HEAD_M * self.per_m);
        self.context.set_fill_style_str(&css_of(own));
        self.context.fill();
        self.stroke(ink, 2.0);
    }

    fn wheel(&self, (x, y): (f64, f64), radius_m: f64, turned_rad: f64) {
        let palette = self.look.palette;
        let (tyre, radius) = (0.085 * self.per_m, radius_m * self.per_m);
        let rim = radius - tyre;
        self.context.begin_path();
        for spoke in 0..6 {
            let (sin, cos) = libm::sincos(turned_rad + f64::from(spoke) * TAU / 12.0);
            self.context.move_to(x - rim * cos, y + rim * sin);
            self.context.line_to(x + rim * cos, y - rim * sin);
        }
        self.stroke(palette.mark, 1.0);
        self.circle(x, y, radius - tyre / 2.0);
        self.context.set_line_width(tyre);
        self.context.set_stroke_style_str(&css_of(palette.ink));
        self.context.stroke();
        self.circle(x, y, 0.05 * self.per_m);
        self.context.set_fill_style_str(&css_of(palette.ink));
        self.context.fill();
    }

    fn circle(&self, x: f64, y: f64, radius: f64) {
        self.context.begin_path();
        // An arc of positive finite radius is never refused.
        self.context.arc(x, y, radius.max(0.5), 0.0, TAU).ok();
    }

    fn trace(&self, places: &[Place], on: &impl Fn(Place) -> (f64, f64)) {
        self.context.begin_path();
        for place in places {
            let (x, y) = on(*place);
            self.context.line_to(x, y);
        }
    }

    fn line(
        &self,
        places: &[Place],
        on: &impl Fn(Place) -> (f64, f64),
        colour: plotters::style::RGBColor,
        width: f64,
    ) {
        self.trace(places, on);
        self.context.set_line_cap("round");
        self.context.set_line_join("round");
        self.context.set_line_width(width);
        self.context.set_stroke_style_str(&css_of(colour));
        self.context.stroke();
    }

    /// An outline filled, with an edge so that it stands out from whatever is behind.
    fn filled(
        &self,
        places: &[Place],
        on: &impl Fn(Place) -> (f64, f64),
        colour: plotters::style::RGBColor,
    ) {
        self.trace(places, on);
        self.context.close_path();
        self.context.set_fill_style_str(&css_of(colour));
        self.context.fill();
        self.context.set_line_join("round");
        self.stroke(self.look.palette.paper, 1.0);
    }

    fn stroke(&self, colour: plotters::style::RGBColor, css: f64) {
        self.context.set_line_width(css * self.look.heavy);
        self.context.set_stroke_style_str(&css_of(colour));
        self.context.stroke();
    }

    fn dashes(&self, pattern: &[f64]) {
        self.context.set_line_cap("butt");
        set_dashes(self.context, pattern, 1.0);
    }

    fn caption(&self, caption: &Caption, top: f64) {
        let Look {
            family, letters, ..
        } = self.look;
        let context = self.context;
        context.set_text_baseline("top");
        for (line, (text, weight)) in [(&caption.name, "bold"), (&caption.travels, "normal")]
            .into_iter()
            .enumerate()
        {
            let down = if line == 0 { 0.3 } else { 0.3 + LINE };
            context.set_font(&format!("{weight} {letters}px {family}"));
            context.set_fill_style_str(&css_of(self.look.palette.ink));
            // A canvas that has lost its letters still shows the ride.
            context.fill_text(text, 10.0, top + down * letters).ok();
        }
    }
}

/// Mean height of the ground a wheelbase or so around a way, m.
fn mean_ground(picture: &RidePicture, way_m: f64) -> f64 {
    const HALF: i32 = 8;
    const STEP_M: f64 = 0.25;
    let all = (-HALF..=HALF).map(|step| ground(picture, way_m + f64::from(step) * STEP_M));
    all.sum::<f64>() / f64::from(2 * HALF + 1)
}
