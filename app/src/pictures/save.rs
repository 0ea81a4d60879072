//! A picture and its numbers as files, made on the device.

use std::rc::Rc;

use gloo::file::Blob;
use plotters::drawing::IntoDrawingArea;
use sagwright_core::words::Arg;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::HtmlCanvasElement;
use yew::prelude::*;

use super::backend::PlotCanvas;
use super::canvas::{dashes_on, device_pixels, look_of};
use super::chart::Chart;
use super::palette::Palette;
use super::poster::{SIZE, Words, draw_alone};
use super::scene::Scene;
use super::table::csv;
use super::watch::pixel_ratio;
use crate::advice_page::Voice;
use crate::browser;

/// Least device pixels per CSS pixel of a picture to keep: sharp on paper and on any screen.
const LEAST_DENSITY: f64 = 2.0;
/// Letter height of a picture to keep, CSS pixels.
const LETTERS: f64 = 17.0;

/// The buttons under a picture. `shown` is its canvas on the page, in whose letters it is kept. `failed` is told
/// whether the last picture could not be made.
pub fn buttons(chart: &Rc<Chart>, voice: &Voice, shown: &NodeRef, failed: &Callback<bool>) -> Html {
    let name = voice.say(&chart.name);
    let button = |key: &'static str, onclick: Callback<MouseEvent>| {
        html! {
            <button type="button" class="button quiet" {onclick}>
                { voice.words(key) }
                <span class="vh">{ " " }{ &name }</span>
            </button>
        }
    };
    let save_picture = {
        let (chart, voice, shown) = (Rc::clone(chart), voice.clone(), shown.clone());
        let failed = failed.clone();
        Callback::from(move |_: MouseEvent| {
            // What went wrong before is over.
            failed.emit(false);
            let file = format!("{}.png", voice.words(chart.words.file));
            let started = drawn(&chart, &voice, &shown)
                .and_then(|canvas| hand_over(&canvas, file, failed.clone()));
            if started.is_none() {
                failed.emit(true);
            }
        })
    };
    let save_numbers = {
        let (chart, voice) = (Rc::clone(chart), voice.clone());
        Callback::from(move |_: MouseEvent| {
            // Memory takes whatever is written.
            if let Ok(text) = csv(&chart, &voice) {
                let file = format!("{}.csv", voice.words(chart.words.file));
                browser::save_file(&file, "text/csv;charset=utf-8", &text);
            }
        })
    };
    html! {
        <div class="picture-save">
            { button("picture.save.png", save_picture) }
            { button("picture.save.csv", save_numbers) }
        </div>
    }
}

/// The picture with all its words, on a canvas that is not on the page.
fn drawn(chart: &Chart, voice: &Voice, shown: &NodeRef) -> Option<HtmlCanvasElement> {
    let shown = shown.cast::<HtmlCanvasElement>()?;
    let density = pixel_ratio().max(LEAST_DENSITY);
    let look = look_of(&shown, density, Some(Palette::DAYLIGHT))?
        .with_letters(LETTERS)
        .plain();
    let canvas = gloo::utils::document().create_element("canvas").ok()?;
    let canvas: HtmlCanvasElement = canvas.dyn_into().ok()?;
    canvas.set_width(device_pixels(SIZE.0, density));
    canvas.set_height(device_pixels(SIZE.1, density));
    let root = PlotCanvas::on(canvas.clone())?.into_drawing_area();
    let words = Words {
        title: voice.say(&chart.name),
        message: voice.say(&chart.message),
        from: voice.with("picture.save.from", "date", Arg::Raw(browser::today())),
    };
    let scene = Scene::of(chart, voice, None);
    let set_dashes = dashes_on(&canvas, &look)?;
    draw_alone(&root, &scene, &words, &look, &set_dashes).ok()?;
    drop(root);
    Some(canvas)
}

/// Has the canvas packed as PNG and handed to the rider.
fn hand_over(canvas: &HtmlCanvasElement, file: String, failed: Callback<bool>) -> Option<()> {
    let packed =
        Closure::once_into_js(
            move |blob: JsValue| match blob.dyn_into::<web_sys::Blob>() {
                Ok(blob) => browser::save_blob(&file, Blob::from(blob)),
                Err(_) => failed.emit(true),
            },
        );
    canvas.to_blob(packed.unchecked_ref()).ok()
}
