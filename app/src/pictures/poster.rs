//! A picture that is read alone: its title and message above the plot, its key and where it comes from beneath.

use plotters::coord::Shift;
use plotters::drawing::{DrawingArea, DrawingAreaErrorKind};
use plotters::element::PathElement;
use plotters::style::FontStyle;
use plotters::style::text_anchor::{HPos, VPos};
use plotters_backend::DrawingBackend;

use super::look::Look;
use super::plot::draw;
use super::scene::{Scene, SceneCurve};

/// Size of the whole, CSS pixels: wide enough for a page of text, high enough for the plot and what stands around it.
pub const SIZE: (f64, f64) = (960.0, 780.0);

/// Letters of the title over those of the text.
const TITLE: f64 = 1.4;
/// Height of a line over that of its letters.
const LINE: f64 = 1.4;
/// Space around everything, CSS pixels.
const MARGIN: f64 = 20.0;
/// A piece of a curve in the key, CSS pixels.
const STROKE: f64 = 48.0;

/// The words around the plot.
#[derive(Debug, Clone, PartialEq)]
pub struct Words {
    /// What the picture shows.
    pub title: String,
    /// Its message.
    pub message: String,
    /// Who drew it, and when.
    pub from: String,
}

/// Curves side by side in the key, each with its place from the left.
type Row<'a> = Vec<(i32, &'a SceneCurve)>;
type Done<DB> = Result<(), DrawingAreaErrorKind<<DB as DrawingBackend>::ErrorType>>;

/// Draws the whole of it over `root`. `set_dashes` is as in [`draw`].
pub fn draw_alone<DB: DrawingBackend>(
    root: &DrawingArea<DB, Shift>,
    scene: &Scene,
    words: &Words,
    look: &Look,
    set_dashes: &dyn Fn(&[f64]),
) -> Done<DB> {
    root.fill(&look.palette.paper)?;
    let large = look.clone().with_letters(look.letters * TITLE);
    let margin = look.px(MARGIN);
    let (width, height) = root.dim_in_pixel();
    let room = width.cast_signed() - 2 * margin;

    let mut top = margin;
    for (text, look, weight) in [
        (&words.title, &large, FontStyle::Bold),
        (&words.message, look, FontStyle::Normal),
    ] {
        let style = look.text(look.palette.ink, weight, HPos::Left, VPos::Top);
        let width_of = |text: &str| {
            root.estimate_text_size(text, &style)
                .map_or(0, |(wide, _)| wide.cast_signed())
        };
        for line in lines(text, room, width_of) {
            root.draw_text(&line, &style, (margin, top))?;
            top += line_of(look);
        }
    }

    let key = key_rows(root, scene, look, room)?;
    let rows = i32::try_from(key.len()).unwrap_or(0);
    let bottom = height.cast_signed() - margin - line_of(look) * (rows + 1);
    let plain = look.text(look.palette.ink, FontStyle::Normal, HPos::Left, VPos::Top);
    for (row, top) in key
        .iter()
        .zip((1..).map(|row| bottom + line_of(look) * (row - 1)))
    {
        for (left, curve) in row {
            set_dashes(curve.pen.dashes());
            let middle = top + look.px(look.letters * 0.5);
            root.draw(&PathElement::new(
                vec![
                    (margin + left, middle),
                    // A slant of one unit, because a level line is drawn as a bar without dashes.
                    (margin + left + look.px(STROKE), middle + 1),
                ],
                look.stroke(look.palette.curve(curve.pen), 3.0),
            ))?;
            set_dashes(&[]);
            let beside = margin + left + look.px(STROKE + 8.0);
            root.draw_text(&curve.name, &plain, (beside, top))?;
        }
    }
    root.draw_text(&words.from, &plain, (margin, bottom + line_of(look) * rows))?;

    // The names of the axes stand at the edge of the plot's own room.
    let room = root.margin(top, height.cast_signed() - bottom, margin / 2, margin / 2);
    draw(&room, scene, look, set_dashes)?;
    root.present()
}

/// Height of a line of text.
fn line_of(look: &Look) -> i32 {
    look.px(look.letters * LINE)
}

/// The curves in rows as they fit side by side.
fn key_rows<'a, DB: DrawingBackend>(
    root: &DrawingArea<DB, Shift>,
    scene: &'a Scene,
    look: &Look,
    room: i32,
) -> Result<Vec<Row<'a>>, DrawingAreaErrorKind<DB::ErrorType>> {
    let plain = look.text(look.palette.ink, FontStyle::Normal, HPos::Left, VPos::Top);
    let mut rows: Vec<Row> = vec![Row::new()];
    let mut left = 0;
    for curve in &scene.curves {
        let (words, _) = root.estimate_text_size(&curve.name, &plain)?;
        let wide = look.px(STROKE + 8.0) + words.cast_signed();
        if left > 0 && left + wide > room {
            rows.push(Row::new());
            left = 0;
        }
        if let Some(row) = rows.last_mut() {
            row.push((left, curve));
        }
        left += wide + look.px(24.0);
    }
    Ok(rows)
}

/// Breaks a text between its words into lines of at most `room`; a word that is longer stands alone.
fn lines(text: &str, room: i32, width_of: impl Fn(&str) -> i32) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    // Spaces that do not break stay within their word.
    for word in text.split(' ').filter(|word| !word.is_empty()) {
        match lines.last_mut() {
            Some(line) if width_of(&format!("{line} {word}")) <= room => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_break_between_words_and_fill_their_room() {
        let width = |text: &str| i32::try_from(text.chars().count()).unwrap_or(i32::MAX);
        assert_eq!(lines("a bb ccc dd", 5, width), ["a bb", "ccc", "dd"]);
        assert_eq!(lines("a bb ccc dd", 6, width), ["a bb", "ccc dd"]);
        assert_eq!(lines("unbreakable", 3, width), ["unbreakable"]);
        assert_eq!(lines("560\u{a0}N off", 5, width), ["560\u{a0}N", "off"]);
        assert!(lines("", 5, width).is_empty());
    }
}
