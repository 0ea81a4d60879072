//! What a canvas is drawn on with: its look, its pixels, its dashes.

use gloo::utils::window;
use wasm_bindgen::JsValue;
use web_sys::{CanvasRenderingContext2d, HtmlCanvasElement};

use super::backend::{UNITS_PER_PIXEL, context_of};
use super::look::Look;
use super::palette::Palette;

/// How the style sheet wants what stands on this canvas drawn, at a density, in its own colours unless others are given.
pub fn look_of(canvas: &HtmlCanvasElement, density: f64, colours: Option<Palette>) -> Option<Look> {
    let context = context_of(canvas)?;
    let style = window().get_computed_style(canvas).ok()??;
    let read = |name: &str| style.get_property_value(name).unwrap_or_default();
    let letters = read("font-size").trim_end_matches("px").parse();
    Some(Look {
        scale: density * f64::from(UNITS_PER_PIXEL),
        palette: colours.unwrap_or_else(|| Palette::of(&style, &context)),
        family: read("font-family"),
        letters: letters.unwrap_or(15.0),
        heavy: read("--heavy").trim().parse().unwrap_or(1.0),
    })
}

/// Width and height inside the border of a canvas on the page, CSS pixels; `None` where there is nothing to draw on. They
/// need not be whole, and rounding them would blur the picture.
pub fn room_of(canvas: &HtmlCanvasElement) -> Option<(f64, f64)> {
    let outside = canvas.get_bounding_client_rect();
    let border = f64::from(canvas.client_left() * 2);
    let (wide, high) = (outside.width() - border, outside.height() - border);
    (wide >= 1.0 && high >= 1.0).then_some((wide, high))
}

/// Sets dashes, given in the units of `context` over `scale`.
pub fn set_dashes(context: &CanvasRenderingContext2d, pattern: &[f64], scale: f64) {
    let pattern: js_sys::Array = pattern
        .iter()
        .map(|part| JsValue::from_f64(part * scale))
        .collect();
    // Dashes of positive finite lengths are never refused.
    context.set_line_dash(&pattern).ok();
}

/// Sets the dashes of a canvas, given in CSS pixels.
pub fn dashes_on(canvas: &HtmlCanvasElement, look: &Look) -> Option<impl Fn(&[f64]) + use<>> {
    let (context, scale) = (context_of(canvas)?, look.scale);
    Some(move |pattern: &[f64]| set_dashes(&context, pattern, scale))
}

/// Whole device pixels of a length in CSS pixels, one at least.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a canvas is at least one and at most some thousand pixels wide"
)]
pub fn device_pixels(css: f64, density: f64) -> u32 {
    (css * density).round().max(1.0) as u32
}
