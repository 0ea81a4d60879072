//! A picture with all that says the same without it: sentence, key, read-out and table.

use std::rc::Rc;

use gloo::events::EventListener;
use gloo::utils::window;
use plotters::drawing::IntoDrawingArea;
use sagwright_core::words::{Arg, Text};
use wasm_bindgen::JsValue;
use web_sys::{HtmlCanvasElement, HtmlInputElement};
use yew::prelude::*;

use super::backend::{PlotCanvas, UNITS_PER_PIXEL, context_of};
use super::chart::{Chart, Curve};
use super::look::Look;
use super::palette::Palette;
use super::plot::draw;
use super::scene::Scene;
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
    let message = voice.say(&chart.message);
    let read = cursor.map_or_else(
        || voice.words(chart.words.start),
        |at| read_out(chart, voice, at),
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
        heavy: read("--heavy").trim().parse().unwrap_or(1.0),
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
    let scene = Scene::of(chart, voice, cursor);
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

/// The places of the table, SI: even steps and every mark with its name, in order.
fn table_rows(chart: &Chart) -> Vec<(f64, Option<&Text>)> {
    let even = (0..=chart.table_steps).map(|step| {
        let part = f64::from(step) / f64::from(chart.table_steps);
        (chart.at(part), None)
    });
    let marks = chart.marks.iter().map(|mark| (mark.at, Some(&mark.name)));
    let mut rows: Vec<_> = marks.chain(even).collect();
    rows.sort_by(|a, b| a.0.total_cmp(&b.0));
    // A mark that stands on an even step needs no second row; the sort is stable, so the mark comes first.
    rows.dedup_by(|later, earlier| later.1.is_none() && (later.0 - earlier.0).abs() < 5e-4);
    rows
}

fn table(chart: &Chart, voice: &Voice, message: &str) -> Html {
    let heads = chart.curves.iter().map(|curve| {
        html! { <th scope="col">{ voice.say(&curve.name) }</th> }
    });
    let rows = table_rows(chart).into_iter().map(|(at, mark)| {
        let cells = chart.curves.iter().map(|curve| {
            let height = curve
                .height_at(at)
                .map(|height| chart.upright.measure.say(voice, height))
                .unwrap_or_default();
            html! { <td>{ height }</td> }
        });
        html! {
            <tr>
                <th scope="row">
                    { chart.level.measure.say(voice, at) }
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
                        <th scope="col">{ voice.words(chart.words.column) }</th>
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
    use sagwright_core::advice::{ForcePicture, Reason, TravelMark};

    use super::*;

    fn chart(marks: &[f64]) -> Chart {
        Chart::of_force(&ForcePicture {
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
            reason: Reason {
                because: Text::new("x"),
                inputs: Vec::new(),
                equation: Text::new("x"),
                source: Text::new("x"),
                sensitivity: Vec::new(),
                range_from: Vec::new(),
            },
        })
    }

    #[test]
    fn the_table_holds_even_steps_and_every_mark_in_order() {
        let chart = chart(&[0.035, 0.12, 0.3]);
        let rows = table_rows(&chart);
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
