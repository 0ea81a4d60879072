//! The force picture with all that says the same without it: sentence, key, read-out and table.

use std::rc::Rc;

use gloo::events::EventListener;
use gloo::utils::window;
use plotters::drawing::IntoDrawingArea;
use sagwright_core::advice::{CurveRole, ForceCurve, ForcePicture};
use sagwright_core::quantity::Dimension;
use sagwright_core::words::{Arg, Text};
use wasm_bindgen::JsValue;
use web_sys::{HtmlCanvasElement, HtmlInputElement};
use yew::prelude::*;

use super::backend::{PlotCanvas, UNITS_PER_PIXEL, context_of};
use super::force_plot::{dashes, draw};
use super::look::Look;
use super::palette::Palette;
use super::scene::{Scene, force_at};
use super::watch::{pixel_ratio, use_redraw_count};
use crate::advice_page::Voice;

/// Steps of the read-out over the whole travel.
const READ_STEPS: u32 = 60;
/// Rows of the table over the whole travel, besides the marks.
const TABLE_STEPS: u32 = 10;

/// What the figure shows and how it speaks.
#[derive(Debug, PartialEq, Properties)]
pub struct Props {
    /// The curves and marks.
    pub picture: Rc<ForcePicture>,
    /// Words and units.
    pub voice: Voice,
}

/// Spring force over travel: canvas, sentence, key, read-out and table.
#[component]
pub fn ForceFigure(props: &Props) -> Html {
    let Props { picture, voice } = props;
    let canvas = use_node_ref();
    let step = use_state(|| None::<u32>);
    let redraw = use_redraw_count(&canvas);
    let cursor = step.map(|step| travel_at(picture, step));
    // Left and right end of the plot, CSS pixels; the pointer is read against them.
    let span = use_mut_ref(|| (0.0, 0.0));
    {
        let (canvas, span) = (canvas.clone(), Rc::clone(&span));
        use_effect_with(
            (Rc::clone(picture), voice.clone(), cursor, redraw),
            move |(picture, voice, cursor, _)| {
                if let Some(ends) = paint(&canvas, picture, voice, *cursor, None) {
                    *span.borrow_mut() = ends;
                }
            },
        );
    }
    use_paper(&canvas, picture, voice, cursor);

    let on_read = {
        let step = step.clone();
        Callback::from(move |event: InputEvent| {
            let typed = event
                .target_dyn_into::<HtmlInputElement>()
                .and_then(|input| input.value().parse().ok());
            step.set(typed);
        })
    };
    let on_point = {
        let (step, span) = (step.clone(), Rc::clone(&span));
        Callback::from(move |event: PointerEvent| {
            step.set(step_under(f64::from(event.offset_x()), *span.borrow()));
        })
    };
    let message = voice.say(&picture.message);
    let read = cursor.map_or_else(
        || voice.words("picture.read.start"),
        |travel| read_out(picture, voice, travel),
    );

    html! {
        <figure class="picture">
            <figcaption class="picture-message">{ &message }</figcaption>
            <canvas
                ref={canvas}
                class="picture-canvas"
                role="img"
                aria-label={message.clone()}
                onpointermove={on_point}
            />
            <ul class="picture-key">
                { for picture.curves.iter().map(|curve| key_item(curve, voice)) }
            </ul>
            <label class="picture-read">
                <span>{ voice.words("picture.read.label") }</span>
                <input
                    type="range"
                    min="0"
                    max={READ_STEPS.to_string()}
                    step="1"
                    value={step.unwrap_or(0).to_string()}
                    aria-valuetext={read.clone()}
                    oninput={on_read}
                />
            </label>
            <p class="picture-read-out">{ read }</p>
            <details class="more">
                <summary>{ voice.words("picture.table") }</summary>
                { table(picture, voice, &message) }
            </details>
        </figure>
    }
}

/// Draws in black for as long as the page is being printed. The browser lays the page out as soon as the event
/// has been heard, so this cannot wait for the next drawing of the component.
#[hook]
fn use_paper(canvas: &NodeRef, picture: &Rc<ForcePicture>, voice: &Voice, cursor: Option<f64>) {
    let canvas = canvas.clone();
    use_effect_with(
        (Rc::clone(picture), voice.clone(), cursor),
        move |(picture, voice, cursor)| {
            let before = {
                let (canvas, picture, voice) = (canvas.clone(), Rc::clone(picture), voice.clone());
                EventListener::new(&window(), "beforeprint", move |_| {
                    paint(&canvas, &picture, &voice, None, Some(Palette::PRINT));
                })
            };
            let (picture, voice, cursor) = (Rc::clone(picture), voice.clone(), *cursor);
            let after = EventListener::new(&window(), "afterprint", move |_| {
                paint(&canvas, &picture, &voice, cursor, None);
            });
            move || drop((before, after))
        },
    );
}

/// Draws the picture at the density of the screen, in the colours of the style sheet unless others are given.
/// Gives the ends of the plot in CSS pixels; `None` where there is no canvas to draw on.
fn paint(
    canvas: &NodeRef,
    picture: &ForcePicture,
    voice: &Voice,
    cursor: Option<f64>,
    colours: Option<Palette>,
) -> Option<(f64, f64)> {
    let canvas = canvas.cast::<HtmlCanvasElement>()?;
    // The box inside the border. It need not be whole CSS pixels wide, and rounding it would blur the picture.
    let outside = canvas.get_bounding_client_rect();
    let border = f64::from(canvas.client_left() * 2);
    let (wide, high) = (outside.width() - border, outside.height() - border);
    if wide < 1.0 || high < 1.0 {
        return None;
    }
    let ratio = pixel_ratio();
    canvas.set_width(device_pixels(wide, ratio));
    canvas.set_height(device_pixels(high, ratio));
    let context = context_of(&canvas)?;
    let style = window().get_computed_style(&canvas).ok()??;
    let read = |name: &str| style.get_property_value(name).unwrap_or_default();
    let letters = read("font-size").trim_end_matches("px").parse();
    let look = Look {
        scale: ratio * f64::from(UNITS_PER_PIXEL),
        palette: colours.unwrap_or_else(|| Palette::of(&style, &context)),
        family: read("font-family"),
        letters: letters.unwrap_or(15.0),
    };
    let root = PlotCanvas::on(canvas)?.into_drawing_area();
    let set_dashes = |pattern: &[f64]| {
        let pattern: js_sys::Array = pattern
            .iter()
            .map(|part| JsValue::from_f64(part * look.scale))
            .collect();
        // Dashes of positive finite lengths are never refused.
        context.set_line_dash(&pattern).ok();
    };
    let scene = Scene::of(picture, voice, cursor);
    let plot = draw(&root, &scene, &look, &set_dashes).ok()?;
    Some((
        f64::from(plot.left) / look.scale,
        f64::from(plot.right) / look.scale,
    ))
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "a canvas is at least one and at most some thousand pixels wide"
)]
fn device_pixels(css: f64, ratio: f64) -> u32 {
    (css * ratio).round().max(1.0) as u32
}

/// The travel of a step of the read-out, m.
fn travel_at(picture: &ForcePicture, step: u32) -> f64 {
    picture.full_travel * f64::from(step.min(READ_STEPS)) / f64::from(READ_STEPS)
}

/// The step under a pointer at `x`; `None` left or right of the plot.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the part is checked to lie between 0 and 1"
)]
fn step_under(x: f64, (left, right): (f64, f64)) -> Option<u32> {
    let part = (x - left) / (right - left);
    (0.0..=1.0)
        .contains(&part)
        .then(|| (part * f64::from(READ_STEPS)).round() as u32)
}

/// "At 120 mm: coil spring 560 N; gas spring 640 N."
fn read_out(picture: &ForcePicture, voice: &Voice, travel: f64) -> String {
    let forces: Vec<String> = picture
        .curves
        .iter()
        .filter_map(|curve| {
            let force = force_at(curve, travel)?;
            let text = Text::new("picture.read.curve")
                .with("name", curve.name.clone().into())
                .with("force", Arg::Quantity(force, Dimension::Force));
            Some(voice.say(&text))
        })
        .collect();
    let text = Text::new("picture.read.at")
        .with("travel", Arg::Quantity(travel, Dimension::Length))
        .with("forces", Arg::Raw(forces.join("; ")));
    voice.say(&text)
}

const fn role_class(role: CurveRole) -> &'static str {
    match role {
        CurveRole::Coil => "role-coil",
        CurveRole::Gas => "role-gas",
        CurveRole::Now => "role-now",
    }
}

fn key_item(curve: &ForceCurve, voice: &Voice) -> Html {
    let pattern: Vec<String> = dashes(curve.role).iter().map(f64::to_string).collect();
    html! {
        <li>
            <svg class={classes!("picture-stroke", role_class(curve.role))}
                viewBox="0 0 48 8" width="48" height="8" aria-hidden="true">
                <line x1="0" y1="4" x2="48" y2="4" stroke-dasharray={pattern.join(" ")} />
            </svg>
            { voice.say(&curve.name) }
        </li>
    }
}

/// The travels of the table, m: even steps and every mark with its name, in order.
fn table_rows(picture: &ForcePicture) -> Vec<(f64, Option<&Text>)> {
    let even = (0..=TABLE_STEPS).map(|step| {
        let part = f64::from(step) / f64::from(TABLE_STEPS);
        (picture.full_travel * part, None)
    });
    let marks = picture
        .marks
        .iter()
        .map(|mark| (mark.travel, Some(&mark.name)));
    let mut rows: Vec<_> = marks.chain(even).collect();
    rows.sort_by(|a, b| a.0.total_cmp(&b.0));
    // A mark that stands on an even step needs no second row; the sort is stable, so the mark comes first.
    rows.dedup_by(|later, earlier| later.1.is_none() && (later.0 - earlier.0).abs() < 5e-4);
    rows
}

fn table(picture: &ForcePicture, voice: &Voice, message: &str) -> Html {
    let heads = picture.curves.iter().map(|curve| {
        html! { <th scope="col">{ voice.say(&curve.name) }</th> }
    });
    let rows = table_rows(picture).into_iter().map(|(travel, mark)| {
        let cells = picture.curves.iter().map(|curve| {
            let force = force_at(curve, travel)
                .map(|force| voice.quantity(force, Dimension::Force))
                .unwrap_or_default();
            html! { <td>{ force }</td> }
        });
        html! {
            <tr>
                <th scope="row">
                    { voice.quantity(travel, Dimension::Length) }
                    if let Some(name) = mark {
                        <span class="hint">{ " " }{ voice.say(name) }</span>
                    }
                </th>
                { for cells }
            </tr>
        }
    });
    html! {
        <div class="scroller" tabindex="0" role="region" aria-label={voice.words("picture.table")}>
            <table class="data">
                <caption>{ message }</caption>
                <thead>
                    <tr>
                        <th scope="col">{ voice.words("picture.table.travel") }</th>
                        { for heads }
                    </tr>
                </thead>
                <tbody>{ for rows }</tbody>
            </table>
        </div>
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use sagwright_core::advice::TravelMark;

    fn picture(marks: &[f64]) -> ForcePicture {
        ForcePicture {
            message: Text::new("x"),
            curves: Vec::new(),
            marks: marks
                .iter()
                .map(|&travel| TravelMark {
                    name: Text::new("mark"),
                    travel,
                })
                .collect(),
            full_travel: 0.3,
        }
    }

    #[test]
    fn the_table_holds_even_steps_and_every_mark_in_order() {
        let picture = picture(&[0.035, 0.12, 0.3]);
        let rows = table_rows(&picture);
        assert!(rows.windows(2).all(|pair| pair[0].0 < pair[1].0));
        assert_eq!(rows.iter().filter(|row| row.1.is_some()).count(), 3);
        // Eleven even steps; two of the marks stand on one.
        assert_eq!(rows.len(), 12);
    }

    #[test]
    fn the_pointer_is_read_only_over_the_plot() {
        assert_eq!(step_under(50.0, (50.0, 350.0)), Some(0));
        assert_eq!(step_under(200.0, (50.0, 350.0)), Some(READ_STEPS / 2));
        assert_eq!(step_under(40.0, (50.0, 350.0)), None);
        assert_eq!(step_under(351.0, (50.0, 350.0)), None);
        assert_eq!(step_under(10.0, (0.0, 0.0)), None);
    }
}
