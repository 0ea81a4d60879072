//! The canvas as plotters wants it: lines and areas by `plotters-canvas`, text by the canvas itself.
//!
//! `plotters-canvas` leaves the measuring of text to plotters, which puts a `<span style="…">` into the page
//! for every label. A strict Content-Security-Policy refuses that style, and each span costs a layout. Here
//! text is measured with `measureText`, so nothing is added to the page.

use plotters_backend::text_anchor::{HPos, VPos};
use plotters_backend::{
    BackendColor, BackendCoord, BackendStyle, BackendTextStyle, DrawingBackend, DrawingErrorKind,
};
use plotters_canvas::CanvasBackend;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement};

/// Backend units per device pixel. Plotters has whole-number coordinates; a quarter of a pixel keeps curves
/// free of visible kinks at any density.
pub const UNITS_PER_PIXEL: u32 = 4;

/// A drawing backend over one canvas.
pub struct PlotCanvas {
    canvas: HtmlCanvasElement,
    context: CanvasRenderingContext2d,
    lines: CanvasBackend,
}

type Fault = DrawingErrorKind<<CanvasBackend as DrawingBackend>::ErrorType>;

impl PlotCanvas {
    /// Prepares `canvas`, whose width and height are in device pixels. `None` where there is no 2D context.
    pub fn on(canvas: HtmlCanvasElement) -> Option<Self> {
        let context = context_of(&canvas)?;
        let shrink = 1.0 / f64::from(UNITS_PER_PIXEL);
        context
            .set_transform(shrink, 0.0, 0.0, shrink, 0.0, 0.0)
            .ok()?;
        context.set_line_join("round");
        let lines = CanvasBackend::with_canvas_object(canvas.clone())?;
        Some(Self {
            canvas,
            context,
            lines,
        })
    }

    fn set_font<S: BackendTextStyle>(&self, style: &S) {
        self.context.set_font(&format!(
            "{} {}px {}",
            style.style().as_str(),
            style.size(),
            style.family().as_str()
        ));
    }

    /// A level or upright line as a filled bar whose edges lie on device pixels, so that it is sharp.
    fn sharp_bar<S: BackendStyle>(
        &mut self,
        from: BackendCoord,
        to: BackendCoord,
        style: &S,
    ) -> Result<(), Fault> {
        let width = snap(style.stroke_width().cast_signed()).max(UNITS_PER_PIXEL.cast_signed());
        let corner = (from.0.min(to.0), from.1.min(to.1));
        let far = (from.0.max(to.0), from.1.max(to.1));
        let (upper_left, lower_right) = if from.0 == to.0 {
            let left = snap(corner.0 - width / 2);
            ((left, corner.1), (left + width, far.1))
        } else {
            let top = snap(corner.1 - width / 2);
            ((corner.0, top), (far.0, top + width))
        };
        self.lines
            .draw_rect(upper_left, lower_right, &style.color(), true)
    }
}

/// The 2D context of a canvas, if it has one.
pub fn context_of(canvas: &HtmlCanvasElement) -> Option<CanvasRenderingContext2d> {
    canvas.get_context("2d").ok()??.dyn_into().ok()
}

/// The nearest coordinate on the edge of a device pixel.
fn snap(coordinate: i32) -> i32 {
    let unit = UNITS_PER_PIXEL.cast_signed();
    (coordinate + unit / 2).div_euclid(unit) * unit
}

/// Plotters' colour as CSS writes it.
fn css(color: BackendColor) -> String {
    let (r, g, b) = color.rgb;
    format!("rgba({r},{g},{b},{})", color.alpha)
}

fn fault(_: JsValue) -> Fault {
    // plotters-canvas keeps its error's text private; the only thing that fails here is a lost context.
    DrawingErrorKind::FontError(Box::new(std::fmt::Error))
}

/// A text size in whole units, rounded up so that nothing is cut.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "text on a canvas is between nothing and a few thousand pixels wide"
)]
fn whole(size: f64) -> u32 {
    size.ceil().clamp(0.0, f64::from(u32::MAX)) as u32
}

impl DrawingBackend for PlotCanvas {
    type ErrorType = <CanvasBackend as DrawingBackend>::ErrorType;

    fn get_size(&self) -> (u32, u32) {
        (
            self.canvas.width() * UNITS_PER_PIXEL,
            self.canvas.height() * UNITS_PER_PIXEL,
        )
    }

    fn ensure_prepared(&mut self) -> Result<(), Fault> {
        self.lines.ensure_prepared()
    }

    fn present(&mut self) -> Result<(), Fault> {
        self.lines.present()
    }

    fn draw_pixel(&mut self, point: BackendCoord, color: BackendColor) -> Result<(), Fault> {
        self.lines.draw_pixel(point, color)
    }

    fn draw_line<S: BackendStyle>(
        &mut self,
        from: BackendCoord,
        to: BackendCoord,
        style: &S,
    ) -> Result<(), Fault> {
        if from.0 == to.0 || from.1 == to.1 {
            self.sharp_bar(from, to, style)
        } else {
            self.lines.draw_line(from, to, style)
        }
    }

    fn draw_rect<S: BackendStyle>(
        &mut self,
        upper_left: BackendCoord,
        bottom_right: BackendCoord,
        style: &S,
        fill: bool,
    ) -> Result<(), Fault> {
        self.lines.draw_rect(upper_left, bottom_right, style, fill)
    }

    fn draw_path<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(
        &mut self,
        path: I,
        style: &S,
    ) -> Result<(), Fault> {
        let points: Vec<BackendCoord> = path.into_iter().collect();
        match points.as_slice() {
            [from, to] if from.0 == to.0 || from.1 == to.1 => self.sharp_bar(*from, *to, style),
            _ => self.lines.draw_path(points, style),
        }
    }

    fn draw_circle<S: BackendStyle>(
        &mut self,
        center: BackendCoord,
        radius: u32,
        style: &S,
        fill: bool,
    ) -> Result<(), Fault> {
        self.lines.draw_circle(center, radius, style, fill)
    }

    fn fill_polygon<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(
        &mut self,
        path: I,
        style: &S,
    ) -> Result<(), Fault> {
        self.lines.fill_polygon(path, style)
    }

    fn draw_text<S: BackendTextStyle>(
        &mut self,
        text: &str,
        style: &S,
        at: BackendCoord,
    ) -> Result<(), Fault> {
        let anchor = style.anchor();
        self.context.set_text_align(match anchor.h_pos {
            HPos::Left => "left",
            HPos::Center => "center",
            HPos::Right => "right",
        });
        self.context.set_text_baseline(match anchor.v_pos {
            VPos::Top => "top",
            VPos::Center => "middle",
            VPos::Bottom => "bottom",
        });
        self.context.set_fill_style_str(&css(style.color()));
        self.set_font(style);
        self.context
            .fill_text(text, f64::from(at.0), f64::from(at.1))
            .map_err(fault)
    }

    fn estimate_text_size<S: BackendTextStyle>(
        &self,
        text: &str,
        style: &S,
    ) -> Result<(u32, u32), Fault> {
        self.set_font(style);
        let measured = self.context.measure_text(text).map_err(fault)?;
        Ok((whole(measured.width()), whole(style.size())))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn snapping_lands_on_pixel_edges() {
        for coordinate in -20..20 {
            let snapped = snap(coordinate);
            assert_eq!(snapped.rem_euclid(UNITS_PER_PIXEL.cast_signed()), 0);
            assert!((snapped - coordinate).abs() <= UNITS_PER_PIXEL.cast_signed() / 2);
        }
    }

    #[test]
    fn colours_are_written_as_css_reads_them() {
        let color = BackendColor {
            rgb: (1, 20, 255),
            alpha: 0.5,
        };
        assert_eq!(css(color), "rgba(1,20,255,0.5)");
    }
}
