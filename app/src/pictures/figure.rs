//! A picture with all that says the same without it: sentence, key, read-out and table.

use std::rc::Rc;

use gloo::events::EventListener;
use gloo::utils::window;
use plotters::drawing::IntoDrawingArea;
use sagwright_core::words::{Arg, Text};
use web_sys::{HtmlCanvasElement, HtmlInputElement};
use yew::prelude::*;

use super::backend::PlotCanvas;
use super::canvas::{dashes_on, device_pixels, look_of, room_of};
use super::chart::{Chart, Curve};
use super::palette::Palette;
use super::plot::draw;
use super::save::buttons;
use super::scene::Scene;
use super::table::table;
use super::watch::{pixel_ratio, use_redraw_count};
use crate::advice_page::Voice;

/// Steps of the read-out over the whole level axis.
const READ_STEPS: u32 = 60;

/// What the figure shows and how it speaks.
#[derive(Debug, PartialEq, Properties)]
pub struct Props {
    /// The curves and marks.
    pub chart: Rc<Chart>,
    /// Words and units.
    pub voice: Voice,
}

/// A chart: canvas, sentence, key, read-out and table.
#[component]
pub fn Figure(props: &Props) -> Html {
    let Props { chart, voice } = props;
    let canvas = use_node_ref();
    let step = use_state(|| None::<u32>);
    let redraw = use_redraw_count(&canvas);
    let cursor = step.map(|step| chart.at(part_of(step)));
    // Left and right end of the plot, CSS pixels; the pointer is read against them.
    let span = use_mut_ref(|| (0.0, 0.0));
    {
        let (canvas, span) = (canvas.clone(), Rc::clone(&span));
        use_effect_with(
            (Rc::clone(chart), voice.clone(), cursor, redraw),
            move |(chart, voice, cursor, _)| {
                if let Some(ends) = paint(&canvas, chart, voice, *cursor, None) {
                    *span.borrow_mut() = ends;
                }
            },
        );
    }
    use_paper(&canvas, chart, voice, cursor);

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
    let failed = use_state_eq(|| false);
    let on_failed = {
        let set = failed.setter();
        Callback::from(move |so| set.set(so))
    };
    let message = voice.say(&chart.message);
    let read = cursor.map_or_else(
        || voice.words(chart.words.start),
        |at| read_out(chart, voice, at),
    );

    html! {
        <figure class="picture">
            <figcaption class="picture-message">{ &message }</figcaption>
            <canvas
                ref={canvas.clone()}
                class="picture-canvas"
                role="img"
                aria-label={message.clone()}
                onpointermove={on_point}
            />
            <ul class="picture-key">
                { for chart.curves.iter().map(|curve| key_item(curve, voice)) }
            </ul>
            <label class="picture-read">
                <span>{ voice.words(chart.words.read) }</span>
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
                { table(chart, voice, &message) }
            </details>
            { buttons(chart, voice, &canvas, &on_failed) }
            <p role="status" class="picture-failed">
                { if *failed { voice.words("picture.save.failed") } else { String::new() } }
            </p>
        </figure>
    }
}

/// Draws in black for as long as the page is being printed. The browser lays the page out as soon as the event
/// has been heard, so this cannot wait for the next drawing of the component.
#[hook]
fn use_paper(canvas: &NodeRef, chart: &Rc<Chart>, voice: &Voice, cursor: Option<f64>) {
    let canvas = canvas.clone();
    use_effect_with(
        (Rc::clone(chart), voice.clone(), cursor),
        move |(chart, voice, cursor)| {
            let before = {
                let (canvas, chart, voice) = (canvas.clone(), Rc::clone(chart), voice.clone());
                EventListener::new(&window(), "beforeprint", move |_| {
                    paint(&canvas, &chart, &voice, None, Some(Palette::PRINT));
                })
            };
            let (chart, voice, cursor) = (Rc::clone(chart), voice.clone(), *cursor);
            let after = EventListener::new(&window(), "afterprint", move |_| {
                paint(&canvas, &chart, &voice, cursor, None);
            });
            move || drop((before, after))
        },
    );
}

/// Draws the picture at the density of the screen, in the colours of the style sheet unless others are given.
/// Gives the ends of the plot in CSS pixels; `None` where there is no canvas to draw on.
fn paint(
    canvas: &NodeRef,
    chart: &Chart,
    voice: &Voice,
    cursor: Option<f64>,
    colours: Option<Palette>,
) -> Option<(f64, f64)> {
    let canvas = canvas.cast::<HtmlCanvasElement>()?;
    let (wide, high) = room_of(&canvas)?;
    let ratio = pixel_ratio();
    canvas.set_width(device_pixels(wide, ratio));
    canvas.set_height(device_pixels(high, ratio));
    let look = look_of(&canvas, ratio, colours)?;
    let set_dashes = dashes_on(&canvas, &look)?;
    let root = PlotCanvas::on(canvas)?.into_drawing_area();
    let scene = Scene::of(chart, voice, cursor);
    let plot = draw(&root, &scene, &look, &set_dashes).ok()?;
    Some((
        f64::from(plot.left) / look.scale,
        f64::from(plot.right) / look.scale,
    ))
}

/// How far along the level axis a step of the read-out lies.
fn part_of(step: u32) -> f64 {
    f64::from(step.min(READ_STEPS)) / f64::from(READ_STEPS)
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
fn read_out(chart: &Chart, voice: &Voice, at: f64) -> String {
    let values: Vec<String> = chart
        .curves
        .iter()
        .filter_map(|curve| {
            let height = curve.height_at(at)?;
            let text = Text::new("picture.read.curve")
                .with("name", curve.name.clone().into())
                .with("value", Arg::Raw(chart.upright.measure.say(voice, height)));
            Some(voice.say(&text))
        })
        .collect();
    let text = Text::new(chart.words.at)
        .with("at", Arg::Raw(chart.level.measure.say(voice, at)))
        .with("values", Arg::Raw(values.join("; ")));
    voice.say(&text)
}

fn key_item(curve: &Curve, voice: &Voice) -> Html {
    let pattern: Vec<String> = curve.pen.dashes().iter().map(f64::to_string).collect();
    html! {
        <li>
            <svg class={classes!("picture-stroke", curve.pen.class())}
                viewBox="0 0 48 8" width="48" height="8" aria-hidden="true">
                <line x1="0" y1="4" x2="48" y2="4" stroke-dasharray={pattern.join(" ")} />
            </svg>
            { voice.say(&curve.name) }
        </li>
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_pointer_is_read_only_over_the_plot() {
        assert_eq!(step_under(50.0, (50.0, 350.0)), Some(0));
        assert_eq!(step_under(200.0, (50.0, 350.0)), Some(READ_STEPS / 2));
        assert_eq!(step_under(40.0, (50.0, 350.0)), None);
        assert_eq!(step_under(351.0, (50.0, 350.0)), None);
        assert_eq!(step_under(10.0, (0.0, 0.0)), None);
    }
}
