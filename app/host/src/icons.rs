//! The icons that operating systems want as pixels, drawn from our own SVG whenever the site is built.

use resvg::tiny_skia::{Pixmap, Transform};
use resvg::usvg::{Options, Tree};

use crate::trouble::Trouble;

/// Each drawing below `static/` and the width, in pixels, at which it is wanted.
///
/// 192 and 512 are what browsers ask of a site that can be installed; the drawing with room around it is for systems
/// that cut icons to their own shape, the small one for those that read it from the page.
pub const ICONS: [(&str, u32); 4] = [
    ("icon", 192),
    ("icon", 512),
    ("icon-maskable", 192),
    ("icon-maskable", 512),
];

/// The drawing as a square PNG, `width` pixels wide. `whose` names it in messages.
pub fn to_png(whose: &str, svg: &[u8], width: u32) -> Result<Vec<u8>, Trouble> {
    let trouble = |what: String| {
        Trouble::new(
            format!("{whose} could not be drawn at {width} pixels: {what}."),
            "Mend the drawing; it has to be a square SVG of plain shapes, without text.",
        )
    };
    let tree =
        Tree::from_data(svg, &Options::default()).map_err(|error| trouble(error.to_string()))?;
    let size = tree.size();
    if size.width().to_bits() != size.height().to_bits() {
        return Err(trouble(format!(
            "it is {} by {}",
            size.width(),
            size.height()
        )));
    }
    let mut picture =
        Pixmap::new(width, width).ok_or_else(|| trouble("no picture has that size".to_owned()))?;
    #[expect(
        clippy::cast_precision_loss,
        reason = "an icon is some hundred pixels wide, far below 2^24"
    )]
    let scale = width as f32 / size.width();
    resvg::render(
        &tree,
        Transform::from_scale(scale, scale),
        &mut picture.as_mut(),
    );
    picture
        .encode_png()
        .map_err(|error| trouble(error.to_string()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_drawing_becomes_a_picture_of_the_size_asked_for() {
        let svg = br##"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 2 2"><path d="M0 0 H1 V2 H0 Z" fill="#ff0000"/></svg>"##;
        let png = to_png("half.svg", svg, 48).expect("it is a square of plain shapes");
        let picture = Pixmap::decode_png(&png).expect("it was just made");
        assert_eq!((picture.width(), picture.height()), (48, 48));
        let colour = |x| picture.pixel(x, 24).map(|dot| (dot.red(), dot.alpha()));
        assert_eq!(colour(10), Some((255, 255)), "drawn on the left");
        assert_eq!(colour(40), Some((0, 0)), "empty on the right");
    }

    #[test]
    fn what_cannot_be_an_icon_is_named() {
        for svg in [
            "nonsense",
            r#"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 2 3"/>"#,
        ] {
            let trouble = to_png("odd.svg", svg.as_bytes(), 48).expect_err(svg);
            assert!(trouble.to_string().starts_with("odd.svg could not"));
        }
    }
}
