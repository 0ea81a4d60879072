//! Draws spring force over travel on any plotters backend.

use plotters::chart::ChartBuilder;
use plotters::coord::Shift;
use plotters::drawing::{DrawingArea, DrawingAreaErrorKind};
use plotters::element::{Circle, PathElement, Rectangle};
use plotters::series::LineSeries;
use plotters::style::text_anchor::{HPos, Pos, VPos};
use plotters::style::{Color, FontStyle, IntoFont, RGBColor, ShapeStyle, TRANSPARENT, TextStyle};
use plotters_backend::DrawingBackend;
use sagwright_core::advice::CurveRole;

use super::labels::{Flag, Point, Rect, beside_curve, hang};
use super::palette::Palette;
use super::scene::{Scene, tick};

/// How to draw: colours, letters and scale.
#[derive(Debug, Clone, PartialEq)]
pub struct Look {
    /// Backend units per CSS pixel.
    pub scale: f64,
    /// Colours.
    pub palette: Palette,
    /// CSS font family.
    pub family: String,
    /// Letter height, CSS pixels.
    pub letters: f64,
}

/// Where the plot came to lie, backend units from the left edge.
pub type Span = (i32, i32);

/// Lines and gaps of a curve's dashes, CSS pixels; the roles differ without colour.
pub const fn dashes(role: CurveRole) -> &'static [f64] {
    match role {
        CurveRole::Gas => &[],
        CurveRole::Coil => &[12.0, 6.0],
        CurveRole::Now => &[3.0, 5.0],
    }
}

impl Look {
    /// CSS pixels in backend units.
    #[expect(
        clippy::cast_possible_truncation,
        reason = "a picture is a few thousand units wide"
    )]
    fn px(&self, css: f64) -> i32 {
        (css * self.scale).round() as i32
    }

    fn stroke(&self, color: RGBColor, css: f64) -> ShapeStyle {
        color.stroke_width(self.px(css).max(1).cast_unsigned())
    }

    fn text(&self, color: RGBColor, weight: FontStyle, h: HPos, v: VPos) -> TextStyle<'_> {
        (self.family.as_str(), self.letters * self.scale, weight)
            .into_font()
            .color(&color)
            .pos(Pos::new(h, v))
    }
}

/// Draws `scene` over the whole of `root`. `set_dashes` is told the dashes before and after each curve, because
/// plotters has no word for them that draws in one stroke.
pub fn draw<DB: DrawingBackend>(
    root: &DrawingArea<DB, Shift>,
    scene: &Scene,
    look: &Look,
    set_dashes: &dyn Fn(&[f64]),
) -> Result<Span, DrawingAreaErrorKind<DB::ErrorType>> {
    let palette = look.palette;
    root.fill(&palette.paper)?;

    let plain = look.text(palette.ink, FontStyle::Normal, HPos::Left, VPos::Top);
    let strong = look.text(palette.ink, FontStyle::Bold, HPos::Left, VPos::Top);
    let width_of = |text: &str, style: &TextStyle<'_>| {
        root.estimate_text_size(text, style)
            .map(|(wide, _)| wide.cast_signed())
    };
    let (root_width, root_height) = root.dim_in_pixel();
    let (root_width, root_height) = (root_width.cast_signed(), root_height.cast_signed());
    let line = look.px(look.letters * 1.5);
    let edge = look.px(6.0);
    let tick_length = look.px(5.0);

    let force_labels = width_of(&tick(scene.top_force), &plain)?.max(width_of("000", &plain)?);
    let left = force_labels + tick_length * 2 + edge;
    let right = root_width - look.px(18.0);
    let mut flags = Vec::with_capacity(scene.marks.len());
    for mark in &scene.marks {
        flags.push(Flag {
            pole: place(mark.at / scene.full_travel, left, right),
            width: width_of(&mark.label, &plain)?,
        });
    }
    let hung = hang(&flags, (left, root_width - edge), look.px(5.0));
    let lanes = hung.iter().map(|at| at.lane + 1).max().unwrap_or(0);
    // The name of the upright axis takes the first line, the lanes of the marks follow.
    let lanes = i32::try_from(lanes).unwrap_or(0);
    let top = edge + line * (1 + lanes);
    let bottom = root_height - line * 2 - tick_length * 2 - edge;

    let mut chart = ChartBuilder::on(root)
        .margin_top(top)
        .margin_right(root_width - right)
        .margin_bottom(root_height - bottom - line - tick_length)
        .x_label_area_size(line + tick_length)
        .y_label_area_size(left)
        .build_cartesian_2d(0.0..scene.full_travel, 0.0..scene.top_force)?;
    let label_style = look.text(palette.ink, FontStyle::Normal, HPos::Center, VPos::Center);
    chart
        .configure_mesh()
        .x_labels(labels_that_fit(right - left, look.px(64.0)))
        .y_labels(labels_that_fit(bottom - top, look.px(44.0)))
        .x_label_formatter(&|value| tick(*value))
        .y_label_formatter(&|value| tick(*value))
        .max_light_lines(0)
        .light_line_style(TRANSPARENT)
        .bold_line_style(look.stroke(palette.grid, 1.0))
        .axis_style(look.stroke(palette.ink, 1.5))
        .set_all_tick_mark_size(tick_length)
        .label_style(label_style)
        .draw()?;
    root.draw_text(&scene.force_title, &strong, (edge, edge))?;
    let title_width = width_of(&scene.travel_title, &strong)?;
    root.draw_text(
        &scene.travel_title,
        &strong,
        (right - title_width, root_height - line - edge / 2),
    )?;

    for ((flag, at), mark) in flags.iter().zip(&hung).zip(&scene.marks) {
        let row_top = |rows: usize| top - line * i32::try_from(rows).unwrap_or(0);
        root.draw(&PathElement::new(
            vec![(flag.pole, row_top(at.reach)), (flag.pole, bottom)],
            look.stroke(palette.mark, 2.0),
        ))?;
        let words_top = row_top(at.lane + 1);
        root.draw_text(&mark.label, &plain, (at.left, words_top))?;
    }

    for curve in &scene.curves {
        set_dashes(dashes(curve.role));
        chart.draw_series(LineSeries::new(
            curve.points.iter().copied(),
            look.stroke(palette.curve(curve.role), 3.0),
        ))?;
        set_dashes(&[]);
    }

    let paths: Vec<Vec<Point>> = scene
        .curves
        .iter()
        .map(|curve| {
            curve
                .points
                .iter()
                .map(|point| chart.plotting_area().map_coordinate(point))
                .collect()
        })
        .collect();
    name_curves(
        root,
        scene,
        look,
        &paths,
        &flags,
        Rect {
            left,
            top,
            right,
            bottom,
        },
    )?;

    if let Some(cursor) = scene.cursor {
        let at = place(cursor / scene.full_travel, left, right);
        root.draw(&PathElement::new(
            vec![(at, top), (at, bottom)],
            look.stroke(palette.ink, 1.0),
        ))?;
        for (curve, path) in scene.curves.iter().zip(&paths) {
            if let Some(height) = height_at(path, at) {
                root.draw(&Circle::new(
                    (at, height),
                    look.px(5.0),
                    palette.curve(curve.role).filled(),
                ))?;
            }
        }
    }
    root.present()?;
    Ok((left, right))
}

/// Writes each curve's name beside it, on a patch of paper so that the grid does not strike it through. A name
/// without room stands in the key beneath the picture alone.
fn name_curves<DB: DrawingBackend>(
    root: &DrawingArea<DB, Shift>,
    scene: &Scene,
    look: &Look,
    paths: &[Vec<Point>],
    flags: &[Flag],
    area: Rect,
) -> Result<(), DrawingAreaErrorKind<DB::ErrorType>> {
    let poles: Vec<i32> = flags.iter().map(|flag| flag.pole).collect();
    let mut taken: Vec<Rect> = Vec::new();
    for (index, (curve, own)) in scene.curves.iter().zip(paths).enumerate() {
        let style = look.text(
            look.palette.curve(curve.role),
            FontStyle::Bold,
            HPos::Left,
            VPos::Top,
        );
        let (width, height) = root.estimate_text_size(&curve.name, &style)?;
        let others: Vec<&[Point]> = paths
            .iter()
            .enumerate()
            .filter(|(other, _)| *other != index)
            .map(|(_, path)| path.as_slice())
            .collect();
        let room = beside_curve(
            (width.cast_signed(), height.cast_signed()),
            own,
            &others,
            &taken,
            &poles,
            area,
            look.px(6.0),
        );
        if let Some(rect) = room {
            let pad = look.px(2.0);
            root.draw(&Rectangle::new(
                [
                    (rect.left - pad, rect.top - pad),
                    (rect.right + pad, rect.bottom + pad),
                ],
                look.palette.paper.filled(),
            ))?;
            root.draw_text(&curve.name, &style, (rect.left, rect.top))?;
            taken.push(rect);
        }
    }
    Ok(())
}

/// A part of the way from `left` to `right`.
#[expect(
    clippy::cast_possible_truncation,
    reason = "the part is clamped, the ends are a few thousand units apart"
)]
fn place(part: f64, left: i32, right: i32) -> i32 {
    let part = if part.is_finite() {
        part.clamp(0.0, 1.0)
    } else {
        0.0
    };
    left + (part * f64::from(right - left)).round() as i32
}

/// How many axis labels fit into `room` when each takes `each`; two at least.
fn labels_that_fit(room: i32, each: i32) -> usize {
    usize::try_from(room / each.max(1)).unwrap_or(0).max(2)
}

/// Height of a drawn curve at `x`.
fn height_at(path: &[Point], x: i32) -> Option<i32> {
    path.windows(2).find_map(|pair| match *pair {
        [(from, high), (to, low)] if x >= from && x <= to => {
            let run = to - from;
            Some(if run == 0 {
                high
            } else {
                high + (low - high) * (x - from) / run
            })
        }
        _ => None,
    })
}
