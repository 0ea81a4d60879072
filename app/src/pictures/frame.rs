//! Where things lie in the force picture: the plot, the marks above it, the names of its axes.

use plotters::coord::Shift;
use plotters::drawing::{DrawingArea, DrawingAreaErrorKind};
use plotters::element::PathElement;
use plotters::style::FontStyle;
use plotters::style::text_anchor::{HPos, VPos};
use plotters_backend::DrawingBackend;

use super::labels::{Flag, Hung, Rect, hang};
use super::look::Look;
use super::scene::{Scene, tick};

/// Length of a tick on an axis, CSS pixels.
pub const TICK_PX: f64 = 5.0;

/// Gap between the edge of the picture and what stands nearest to it, CSS pixels.
const EDGE_PX: f64 = 6.0;

/// The picture laid out, backend units.
#[derive(Debug, Clone, PartialEq)]
pub struct Frame {
    /// The plot itself.
    pub plot: Rect,
    /// Height of the numbers beneath the plot, ticks included.
    pub tick_labels: i32,
    flags: Vec<Flag>,
    hung: Vec<Hung>,
    line: i32,
    edge: i32,
}

impl Frame {
    /// Measures the words of `scene` and finds room for everything.
    pub fn lay_out<DB: DrawingBackend>(
        root: &DrawingArea<DB, Shift>,
        scene: &Scene,
        look: &Look,
    ) -> Result<Self, DrawingAreaErrorKind<DB::ErrorType>> {
        let plain = look.text(look.palette.ink, FontStyle::Normal, HPos::Left, VPos::Top);
        let width_of = |text: &str| {
            root.estimate_text_size(text, &plain)
                .map(|(wide, _)| wide.cast_signed())
        };
        let (width, height) = root.dim_in_pixel();
        let (width, height) = (width.cast_signed(), height.cast_signed());
        let line = look.px(look.letters * 1.5);
        let (edge, tick_length) = (look.px(EDGE_PX), look.px(TICK_PX));

        let force_labels = width_of(&tick(scene.top_force))?.max(width_of("000")?);
        let left = force_labels + tick_length * 2 + edge;
        // The last number of the level axis is centred on the end of the plot.
        let right = width - width_of(&tick(scene.full_travel))?.max(edge * 4) / 2 - edge;
        let mut flags = Vec::with_capacity(scene.marks.len());
        for mark in &scene.marks {
            flags.push(Flag {
                pole: place(mark.at / scene.full_travel, left, right),
                width: width_of(&mark.label)?,
            });
        }
        let hung = hang(&flags, (left, width - edge), look.px(5.0));
        let lanes = hung.iter().map(|at| at.lane + 1).max().unwrap_or(0);
        let tick_labels = line + tick_length;
        // The name of the upright axis takes the first line, the lanes of the marks follow; the name of the level
        // axis takes the last.
        let top = edge + line * (1 + i32::try_from(lanes).unwrap_or(0));
        let bottom = (height - line - tick_labels - edge).max(top + line);
        Ok(Self {
            plot: Rect {
                left,
                top,
                right,
                bottom,
            },
            tick_labels,
            flags,
            hung,
            line,
            edge,
        })
    }

    /// Where the marks stand.
    pub fn poles(&self) -> Vec<i32> {
        self.flags.iter().map(|flag| flag.pole).collect()
    }

    /// Writes the names of both axes.
    pub fn draw_titles<DB: DrawingBackend>(
        &self,
        root: &DrawingArea<DB, Shift>,
        scene: &Scene,
        look: &Look,
    ) -> Result<(), DrawingAreaErrorKind<DB::ErrorType>> {
        let strong = |h| look.text(look.palette.ink, FontStyle::Bold, h, VPos::Top);
        root.draw_text(
            &scene.force_title,
            &strong(HPos::Left),
            (self.edge, self.edge),
        )?;
        root.draw_text(
            &scene.travel_title,
            &strong(HPos::Right),
            (self.plot.right, self.plot.bottom + self.tick_labels),
        )
    }

    /// Draws every mark with its words.
    pub fn draw_marks<DB: DrawingBackend>(
        &self,
        root: &DrawingArea<DB, Shift>,
        scene: &Scene,
        look: &Look,
    ) -> Result<(), DrawingAreaErrorKind<DB::ErrorType>> {
        let plain = look.text(look.palette.ink, FontStyle::Normal, HPos::Left, VPos::Top);
        let row_top = |rows: usize| self.plot.top - self.line * i32::try_from(rows).unwrap_or(0);
        for ((flag, at), mark) in self.flags.iter().zip(&self.hung).zip(&scene.marks) {
            root.draw(&PathElement::new(
                vec![
                    (flag.pole, row_top(at.reach)),
                    (flag.pole, self.plot.bottom),
                ],
                look.stroke(look.palette.mark, 2.0),
            ))?;
            root.draw_text(&mark.label, &plain, (at.left, row_top(at.lane + 1)))?;
        }
        Ok(())
    }
}

/// A part of the way from `left` to `right`.
#[expect(
    clippy::cast_possible_truncation,
    reason = "the part is clamped, the ends are a few thousand units apart"
)]
pub fn place(part: f64, left: i32, right: i32) -> i32 {
    let part = if part.is_finite() {
        part.clamp(0.0, 1.0)
    } else {
        0.0
    };
    left + (part * f64::from(right - left)).round() as i32
}
