//! The colours of a picture, read from the style sheet so that they follow its themes.

use plotters::style::RGBColor;
use web_sys::{CanvasRenderingContext2d, CssStyleDeclaration};

use super::chart::Pen;

/// The colours of one picture.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Palette {
    /// Behind everything.
    pub paper: RGBColor,
    /// Words and axes.
    pub ink: RGBColor,
    /// Grid lines.
    pub grid: RGBColor,
    /// Marks and the reading line.
    pub mark: RGBColor,
    gas: RGBColor,
    coil: RGBColor,
    now: RGBColor,
}

impl Palette {
    /// Black on white, for paper. Dashes tell the curves apart.
    pub const PRINT: Self = Self {
        paper: RGBColor(255, 255, 255),
        ink: RGBColor(0, 0, 0),
        grid: RGBColor(200, 200, 200),
        mark: RGBColor(80, 80, 80),
        gas: RGBColor(0, 0, 0),
        coil: RGBColor(0, 0, 0),
        now: RGBColor(0, 0, 0),
    };

    /// What the page wears in daylight, whatever it wears now: for a picture that is sent on, printed or pasted on white.
    pub const DAYLIGHT: Self = Self {
        paper: RGBColor(255, 255, 255),
        ink: RGBColor(0, 0, 0),
        grid: RGBColor(0xd8, 0xd2, 0xc8),
        mark: RGBColor(0x3d, 0x3a, 0x36),
        gas: RGBColor(0x87, 0x2a, 0x08),
        coil: RGBColor(0x0b, 0x3b, 0xd6),
        now: RGBColor(0, 0, 0),
    };

    /// The colours of the element whose computed `style` is given, from the custom properties of the page. One
    /// that the canvas cannot read is taken from [`Self::PRINT`].
    pub fn of(style: &CssStyleDeclaration, context: &CanvasRenderingContext2d) -> Self {
        let read = |name: &str, otherwise: RGBColor| {
            style
                .get_property_value(name)
                .ok()
                .and_then(|value| resolve(value.trim(), context))
                .unwrap_or(otherwise)
        };
        Self {
            paper: read("--paper", Self::PRINT.paper),
            ink: read("--ink", Self::PRINT.ink),
            grid: read("--plot-grid", Self::PRINT.grid),
            mark: read("--plot-mark", Self::PRINT.mark),
            gas: read("--plot-gas", Self::PRINT.gas),
            coil: read("--plot-coil", Self::PRINT.coil),
            now: read("--ink", Self::PRINT.now),
        }
    }

    /// The colour of a curve.
    pub const fn curve(&self, pen: Pen) -> RGBColor {
        match pen {
            Pen::Coil => self.coil,
            Pen::Gas | Pen::Advised => self.gas,
            Pen::Now | Pen::End => self.now,
        }
    }
}

/// Lets the canvas parse a CSS colour, system colours included, and reads it back in its plain form.
fn resolve(css: &str, context: &CanvasRenderingContext2d) -> Option<RGBColor> {
    if css.is_empty() {
        return None;
    }
    context.set_fill_style_str(css);
    hex(&context.fill_style().as_string()?)
}

/// A colour as CSS writes it.
pub fn css_of(RGBColor(red, green, blue): RGBColor) -> String {
    format!("#{red:02x}{green:02x}{blue:02x}")
}

/// `#rrggbb`, the form in which a canvas gives back an opaque colour.
fn hex(text: &str) -> Option<RGBColor> {
    let digits = text.strip_prefix('#')?;
    if digits.len() != 6 || !digits.is_ascii() {
        return None;
    }
    let part = |from: usize| u8::from_str_radix(digits.get(from..from + 2)?, 16).ok();
    Some(RGBColor(part(0)?, part(2)?, part(4)?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn daylight_is_what_the_style_sheet_makes_of_it() {
        let sheet = include_str!("../../../styles/theme.css");
        let daylight = Palette::DAYLIGHT;
        for (name, colour) in [
            ("paper", daylight.paper),
            ("ink", daylight.ink),
            ("plot-grid", daylight.grid),
            ("plot-mark", daylight.mark),
            ("plot-gas", daylight.gas),
            ("plot-coil", daylight.coil),
        ] {
            let line = format!("--{name}: light-dark({},", css_of(colour));
            assert!(sheet.contains(&line), "{line}");
        }
    }

    #[test]
    fn plain_colours_are_read_and_others_refused() {
        assert_eq!(hex("#0a10ff"), Some(RGBColor(10, 16, 255)));
        assert_eq!(hex("rgba(0, 0, 0, 0.5)"), None);
        assert_eq!(hex("#12345"), None);
        assert_eq!(hex("#12345é"), None);
    }
}
