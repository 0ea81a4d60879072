//! How to draw: colours, letters and scale.

use plotters::style::text_anchor::{HPos, Pos, VPos};
use plotters::style::{Color, FontStyle, IntoFont, RGBColor, ShapeStyle, TextStyle};

use super::palette::Palette;

/// Everything that the style sheet and the screen say about a picture.
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
    /// How much heavier than usual the theme wants strokes.
    pub heavy: f64,
}

impl Look {
    /// The same in letters of another height, CSS pixels.
    #[must_use]
    pub fn with_letters(self, letters: f64) -> Self {
        Self { letters, ..self }
    }

    /// The same with strokes as wide as usual.
    #[must_use]
    pub fn plain(self) -> Self {
        Self { heavy: 1.0, ..self }
    }

    /// CSS pixels in backend units.
    #[expect(
        clippy::cast_possible_truncation,
        reason = "a picture is a few thousand units wide"
    )]
    pub fn px(&self, css: f64) -> i32 {
        (css * self.scale).round() as i32
    }

    /// A line of a given CSS width in the usual theme; never thinner than the backend can draw.
    pub fn stroke(&self, color: RGBColor, css: f64) -> ShapeStyle {
        color.stroke_width(self.px(css * self.heavy).max(1).cast_unsigned())
    }

    /// Letters of a given weight, hung by the given corner.
    pub fn text(&self, color: RGBColor, weight: FontStyle, h: HPos, v: VPos) -> TextStyle<'_> {
        (self.family.as_str(), self.letters * self.scale, weight)
            .into_font()
            .color(&color)
            .pos(Pos::new(h, v))
    }
}
