//! A picture drawn on a backend that only notes what it is asked to draw.

use std::cell::RefCell;
use std::rc::Rc;

use plotters::coord::Shift;
use plotters::drawing::{DrawingArea, IntoDrawingArea};
use plotters_backend::text_anchor::{HPos, VPos};
use plotters_backend::{
    BackendColor, BackendCoord, BackendStyle, BackendTextStyle, DrawingBackend, DrawingErrorKind,
};

use super::chart::Pen;
use super::labels::Rect;
use super::look::Look;
use super::palette::Palette;
use super::plot::draw;
use super::poster::{SIZE, Words, draw_alone};
use super::scene::{Scene, SceneCurve, SceneMark};

type Nothing = Result<(), DrawingErrorKind<std::fmt::Error>>;

/// Notes every text with the room it takes. Letters are six tenths of their height wide.
struct Notes {
    size: (u32, u32),
    texts: Rc<RefCell<Vec<(String, Rect)>>>,
}

impl DrawingBackend for Notes {
    type ErrorType = std::fmt::Error;

    fn get_size(&self) -> (u32, u32) {
        self.size
    }

    fn ensure_prepared(&mut self) -> Nothing {
        Ok(())
    }

    fn present(&mut self) -> Nothing {
        Ok(())
    }

    fn draw_pixel(&mut self, _: BackendCoord, _: BackendColor) -> Nothing {
        Ok(())
    }

    fn draw_line<S: BackendStyle>(&mut self, _: BackendCoord, _: BackendCoord, _: &S) -> Nothing {
        Ok(())
    }

    fn draw_rect<S: BackendStyle>(
        &mut self,
        _: BackendCoord,
        _: BackendCoord,
        _: &S,
        _: bool,
    ) -> Nothing {
        Ok(())
    }

    fn draw_circle<S: BackendStyle>(&mut self, _: BackendCoord, _: u32, _: &S, _: bool) -> Nothing {
        Ok(())
    }

    fn draw_path<S: BackendStyle, I: IntoIterator<Item = BackendCoord>>(
        &mut self,
        _: I,
        _: &S,
    ) -> Nothing {
        Ok(())
    }

    fn estimate_text_size<S: BackendTextStyle>(
        &self,
        text: &str,
        style: &S,
    ) -> Result<(u32, u32), DrawingErrorKind<Self::ErrorType>> {
        let letters = u32::try_from(text.chars().count()).unwrap_or(u32::MAX);
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "letters here are a few hundred units high at most"
        )]
        let high = style.size().ceil() as u32;
        Ok((letters * high * 6 / 10, high))
    }

    fn draw_text<S: BackendTextStyle>(
        &mut self,
        text: &str,
        style: &S,
        (x, y): BackendCoord,
    ) -> Nothing {
        let (wide, high) = self.estimate_text_size(text, style)?;
        let (wide, high) = (wide.cast_signed(), high.cast_signed());
        let left = match style.anchor().h_pos {
            HPos::Left => x,
            HPos::Center => x - wide / 2,
            HPos::Right => x - wide,
        };
        let top = match style.anchor().v_pos {
            VPos::Top => y,
            VPos::Center => y - high / 2,
            VPos::Bottom => y - high,
        };
        let room = Rect {
            left,
            top,
            right: left + wide,
            bottom: top + high,
        };
        self.texts.borrow_mut().push((text.to_owned(), room));
        Ok(())
    }
}

/// A gas ramp beside a coil line, with marks where a fork has them.
fn scene(full: f64, top: f64, unit: &str) -> Scene {
    let curve = |name: &str, pen, shape: fn(f64) -> f64| SceneCurve {
        name: name.to_owned(),
        pen,
        points: (0..=60)
            .map(|i| f64::from(i) / 60.0)
            .map(|part| (part * full, shape(part) * top))
            .collect(),
    };
    let mark = |label: &str, part: f64| SceneMark {
        label: format!("{label} {:.0} {unit}", part * full),
        at: part * full,
    };
    Scene {
        level_title: format!("Fork travel ({unit})"),
        upright_title: "Force (N)".to_owned(),
        level_end: full,
        upright_end: top,
        curves: vec![
            curve("Gas spring", Pen::Gas, |part| {
                0.05 + 0.2 * part + 0.65 * part * part * part
            }),
            curve("Coil spring", Pen::Coil, |part| 0.02 + 0.5 * part),
        ],
        marks: vec![
            mark("Free sag", 0.1),
            mark("Ride height", 0.22),
            mark("Full travel", 1.0),
        ],
        cursor: Some(full / 3.0),
    }
}

/// A look at a density.
fn look(density: u32) -> Look {
    Look {
        scale: f64::from(density),
        palette: Palette::PRINT,
        family: "sans-serif".to_owned(),
        letters: 15.0,
        heavy: 1.0,
    }
}

/// Draws on so many units and gives every text with its room, having asserted that each lies inside and on its own.
#[track_caller]
fn apart(size: (u32, u32), draw_on: impl FnOnce(&DrawingArea<Notes, Shift>)) -> Vec<String> {
    let texts = Rc::new(RefCell::new(Vec::new()));
    let root = Notes {
        size,
        texts: Rc::clone(&texts),
    }
    .into_drawing_area();
    draw_on(&root);
    drop(root);
    let texts = texts.borrow();
    let (right, bottom) = (size.0.cast_signed(), size.1.cast_signed());
    for (index, (text, room)) in texts.iter().enumerate() {
        assert!(
            room.left >= 0 && room.top >= 0 && room.right <= right && room.bottom <= bottom,
            "{text:?} is cut: {room:?} in {size:?}"
        );
        for (other, other_room) in texts.iter().skip(index + 1) {
            assert!(
                !room.overlaps(*other_room),
                "{text:?} and {other:?} overlap in {size:?}: {room:?} {other_room:?}"
            );
        }
    }
    texts.iter().map(|(text, _)| text.clone()).collect()
}

/// Draws at a width in CSS pixels and a density, and asserts that everything can be read.
#[track_caller]
fn reads_clearly(scene: &Scene, width: u32, density: u32) {
    let texts = apart((width * density, 340 * density), |root| {
        draw(root, scene, &look(density), &|_| ()).expect("a backend that notes never fails");
    });
    for name in ["Gas spring", "Coil spring", "Force (N)"] {
        assert!(
            texts.iter().any(|text| text == name),
            "{name:?} is missing at {width} px"
        );
    }
    for mark in &scene.marks {
        assert!(texts.contains(&mark.label));
    }
}

#[test]
fn a_picture_to_keep_has_its_words_around_it() {
    let words = Words {
        title: "Spring force over fork travel".to_owned(),
        message: "The gas fork starts at 310 N and ends at 5200 N; a coil that carries you as high would start at 130 N \
                  and end at 3700 N, which is softer at both ends of the travel."
            .to_owned(),
        from: "Sagwright, 26 November 2026".to_owned(),
    };
    for density in [2, 3, 8] {
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "whole and above nothing"
        )]
        let size = (SIZE.0 as u32 * density, SIZE.1 as u32 * density);
        let scene = Scene {
            cursor: None,
            ..scene(305.0, 10_000.0, "mm")
        };
        let texts = apart(size, |root| {
            draw_alone(root, &scene, &words, &look(density), &|_| ())
                .expect("a backend that notes never fails");
        });
        assert_eq!(texts[0], words.title);
        assert!(texts.contains(&words.from));
        let whole = texts.join(" ");
        assert!(whole.contains(&words.message), "{whole}");
        // Once in the key, once beside its curve.
        for name in ["Gas spring", "Coil spring"] {
            assert_eq!(texts.iter().filter(|text| *text == name).count(), 2);
        }
        assert!(whole.contains("Fork travel (mm)") && whole.contains("Force (N)"));
    }
}

#[test]
fn no_text_is_cut_or_covered_at_any_width_density_or_unit() {
    for scene in [
        scene(305.0, 10_000.0, "mm"),
        scene(12.0, 2500.0, "in"),
        scene(180.0, 800.0, "mm"),
    ] {
        for width in [270, 300, 346, 480, 640, 900, 1000] {
            for density in [1, 2, 3, 12] {
                reads_clearly(&scene, width, density);
            }
        }
    }
}
