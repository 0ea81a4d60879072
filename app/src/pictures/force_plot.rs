//! Draws spring force over travel on any plotters backend.

use plotters::chart::ChartBuilder;
use plotters::coord::Shift;
use plotters::drawing::{DrawingArea, DrawingAreaErrorKind};
use plotters::element::{Circle, PathElement, Rectangle};
use plotters::series::LineSeries;
use plotters::style::text_anchor::{HPos, VPos};
use plotters::style::{Color, FontStyle, TRANSPARENT};
use plotters_backend::DrawingBackend;
use sagwright_core::advice::CurveRole;

use super::frame::{Frame, TICK_PX, place};
use super::labels::{Point, Rect, beside_curve};
use super::look::Look;
use super::scene::{Scene, tick};

/// Lines and gaps of a curve's dashes, CSS pixels; the roles differ without colour.
pub const fn dashes(role: CurveRole) -> &'static [f64] {
    match role {
        CurveRole::Gas => &[],
        CurveRole::Coil => &[12.0, 6.0],
        CurveRole::Now => &[3.0, 5.0],
    }
}

/// Draws `scene` over the whole of `root` and gives where the plot came to lie. `set_dashes` is told the dashes
/// before and after each curve, because plotters has no word for them that draws in one stroke.
pub fn draw<DB: DrawingBackend>(
    root: &DrawingArea<DB, Shift>,
    scene: &Scene,
    look: &Look,
    set_dashes: &dyn Fn(&[f64]),
) -> Result<Rect, DrawingAreaErrorKind<DB::ErrorType>> {
    let palette = look.palette;
    root.fill(&palette.paper)?;
    let frame = Frame::lay_out(root, scene, look)?;
    let plot = frame.plot;
    let (root_width, root_height) = root.dim_in_pixel();
    let (root_width, root_height) = (root_width.cast_signed(), root_height.cast_signed());

    let mut chart = ChartBuilder::on(root)
        .margin_top(plot.top)
        .margin_right(root_width - plot.right)
        .margin_bottom(root_height - plot.bottom - frame.tick_labels)
        .x_label_area_size(frame.tick_labels)
        .y_label_area_size(plot.left)
        .build_cartesian_2d(0.0..scene.full_travel, 0.0..scene.top_force)?;
    let label_style = look.text(palette.ink, FontStyle::Normal, HPos::Center, VPos::Center);
    chart
        .configure_mesh()
        .x_labels(labels_that_fit(plot.right - plot.left, look.px(64.0)))
        .y_labels(labels_that_fit(plot.bottom - plot.top, look.px(44.0)))
        .x_label_formatter(&|value| tick(*value))
        .y_label_formatter(&|value| tick(*value))
        .max_light_lines(0)
        .light_line_style(TRANSPARENT)
        .bold_line_style(look.stroke(palette.grid, 1.0))
        .axis_style(look.stroke(palette.ink, 1.5))
        .set_all_tick_mark_size(look.px(TICK_PX))
        .label_style(label_style)
        .draw()?;
    frame.draw_titles(root, scene, look)?;
    frame.draw_marks(root, scene, look)?;

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
    name_curves(root, scene, look, &paths, &frame)?;
    draw_cursor(root, scene, look, &paths, plot)?;
    root.present()?;
    Ok(plot)
}

/// The line at which the reader reads, with a dot on every curve.
fn draw_cursor<DB: DrawingBackend>(
    root: &DrawingArea<DB, Shift>,
    scene: &Scene,
    look: &Look,
    paths: &[Vec<Point>],
    plot: Rect,
) -> Result<(), DrawingAreaErrorKind<DB::ErrorType>> {
    let Some(cursor) = scene.cursor else {
        return Ok(());
    };
    let at = place(cursor / scene.full_travel, plot.left, plot.right);
    root.draw(&PathElement::new(
        vec![(at, plot.top), (at, plot.bottom)],
        look.stroke(look.palette.ink, 1.0),
    ))?;
    for (curve, path) in scene.curves.iter().zip(paths) {
        if let Some(height) = height_at(path, at) {
            root.draw(&Circle::new(
                (at, height),
                look.px(5.0),
                look.palette.curve(curve.role).filled(),
            ))?;
        }
    }
    Ok(())
}

/// Writes each curve's name beside it, on a patch of paper so that the grid does not strike it through. A name
/// without room stands in the key beneath the picture alone.
fn name_curves<DB: DrawingBackend>(
    root: &DrawingArea<DB, Shift>,
    scene: &Scene,
    look: &Look,
    paths: &[Vec<Point>],
    frame: &Frame,
) -> Result<(), DrawingAreaErrorKind<DB::ErrorType>> {
    let poles = frame.poles();
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
            frame.plot,
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
