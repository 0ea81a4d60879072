//! The moving picture with all that steers it, and what says the same without it.

use std::cell::RefCell;
use std::rc::Rc;

use gloo::render::{AnimationFrame, request_animation_frame};
use sagwright_core::advice::RidePicture;
use sagwright_core::words::{Arg, Text};
use web_sys::{HtmlCanvasElement, HtmlInputElement, HtmlSelectElement};
use yew::prelude::*;

use super::draw::{Caption, draw};
use super::motion::{Names, Side, lasts_s, moment};
use super::table::{Numbers, seconds, travels};
use crate::advice_page::Voice;
use crate::pictures::use_redraw_count;

/// How far one press of a step goes, s.
const STEP_S: f64 = 0.1;
/// Speeds to choose from, with the keys of their names: as it is ridden, half, a quarter.
const SPEEDS: [(f64, &str); 3] = [
    (1.0, "film.speed.full"),
    (0.5, "film.speed.half"),
    (0.25, "film.speed.quarter"),
];
/// Speed it has at first: as ridden, a bump is gone before it is seen.
const FIRST_SPEED: usize = 1;
/// How often words and slider follow the picture while it moves, ms: words that change more often cannot be read.
const TOLD_EVERY_MS: f64 = 125.0;

/// A ride and how it is told.
#[derive(Debug, PartialEq, Properties)]
pub struct Props {
    /// The ride, before and after.
    pub picture: Rc<RidePicture>,
    /// What the two rides are called.
    pub names: Names,
    /// Words and units.
    pub voice: Voice,
}

/// Where the film stands, for those who draw between two renderings.
#[derive(Debug, Clone, Copy)]
struct Reel {
    at_s: f64,
    speed: f64,
    /// When the last frame was drawn and when words last followed, ms of the page's own clock.
    drawn_ms: Option<f64>,
    told_ms: f64,
}

/// The ride from the side. It stands still until it is asked to move, whatever motion the reader wants of pages.
#[component]
pub fn Film(props: &Props) -> Html {
    let Props {
        picture,
        names,
        voice,
    } = props;
    let canvas = use_node_ref();
    let redraw = use_redraw_count(&canvas);
    let speed = use_state_eq(|| FIRST_SPEED);
    let playing = use_state_eq(|| false);
    let at_s = use_state_eq(|| 0.0);
    let end_s = lasts_s(picture);
    let reel = use_mut_ref(|| Reel {
        at_s: 0.0,
        speed: SPEEDS[FIRST_SPEED].0,
        drawn_ms: None,
        told_ms: 0.0,
    });
    reel.borrow_mut().speed = SPEEDS[*speed].0;
    let show = {
        let (canvas, picture) = (canvas.clone(), Rc::clone(picture));
        let (voice, names) = (voice.clone(), *names);
        Rc::new(move |at_s: f64| {
            let captions = captions(&picture, &voice, names, at_s);
            // Where there is no canvas, words and table say it.
            canvas
                .cast::<HtmlCanvasElement>()
                .and_then(|canvas| draw(&canvas, &picture, &captions, at_s));
        })
    };
    {
        let show = Rc::clone(&show);
        use_effect_with(
            (Rc::clone(picture), voice.clone(), *at_s, redraw, *playing),
            move |(.., at_s, _, playing)| {
                if !playing {
                    show(*at_s);
                }
            },
        );
    }
    {
        let (reel, show) = (Rc::clone(&reel), Rc::clone(&show));
        let (tell, stop) = (at_s.setter(), playing.setter());
        // Whatever is drawn from stands here, so that a film that moves goes on with what it shows now.
        let drawn_from = (Rc::clone(picture), *playing, redraw, voice.clone());
        use_effect_with(drawn_from, move |(_, playing, ..)| {
            let frames = Rc::new(RefCell::new(None));
            if *playing {
                reel.borrow_mut().drawn_ms = None;
                let on_frame = Rc::new(move |now_ms: f64| {
                    let (at_s, tell_now) = reel.borrow_mut().on(now_ms, end_s);
                    show(at_s);
                    let over = at_s >= end_s;
                    if tell_now || over {
                        tell.set(at_s);
                    }
                    if over {
                        stop.set(false);
                    }
                    !over
                });
                next_frame(&frames, on_frame);
            }
            // Dropping the frame asked for last ends the film.
            move || drop(frames.borrow_mut().take())
        });
    }
    let go_to = {
        let (reel, at, playing) = (Rc::clone(&reel), at_s.setter(), playing.setter());
        Callback::from(move |to_s: f64| {
            let to_s = to_s.clamp(0.0, end_s);
            reel.borrow_mut().at_s = to_s;
            playing.set(false);
            at.set(to_s);
        })
    };
    let step = |by_s: f64| {
        let reel = Rc::clone(&reel);
        go_to.reform(move |_: MouseEvent| reel.borrow().at_s + by_s)
    };
    let on_play = {
        let (reel, at, playing) = (Rc::clone(&reel), at_s.setter(), playing.clone());
        Callback::from(move |_: MouseEvent| {
            let mut reel = reel.borrow_mut();
            if !*playing && reel.at_s >= end_s {
                reel.at_s = 0.0;
            }
            at.set(reel.at_s);
            playing.set(!*playing);
        })
    };
    let on_slide = go_to.reform(move |event: InputEvent| {
        let typed = event
            .target_dyn_into::<HtmlInputElement>()
            .and_then(|input| input.value().parse::<f64>().ok());
        typed.unwrap_or_default()
    });
    let on_speed = {
        let speed = speed.setter();
        Callback::from(move |event: Event| {
            let chosen = event
                .target_dyn_into::<HtmlSelectElement>()
                .and_then(|list| usize::try_from(list.selected_index()).ok());
            if let Some(place) = chosen.filter(|place| *place < SPEEDS.len()) {
                speed.set(place);
            }
        })
    };
    let said = said(picture, voice, *names, *at_s);
    let message = format!(
        "{} {}",
        voice.say(&picture.message),
        voice.say(&picture.rear_message)
    );
    let name = voice.with("film.name", "ground", picture.ground.clone().into());
    let speeds = SPEEDS.iter().enumerate().map(|(place, (_, key))| {
        html! { <option selected={place == *speed}>{ voice.words(*key) }</option> }
    });
    html! {
        <figure class="picture film">
            <figcaption class="picture-message">{ &name }</figcaption>
            <p>{ &message }</p>
            <canvas
                ref={canvas}
                class="picture-canvas film-canvas"
                role="img"
                aria-label={format!("{name}. {message}")}
            />
            <div class="film-steer" role="group" aria-label={name.clone()}>
                <button type="button" class="button" onclick={on_play}>
                    { voice.words(if *playing { "film.pause" } else { "film.play" }) }
                </button>
                <button type="button" class="button quiet" onclick={step(-STEP_S)}>
                    { voice.words("film.back") }
                </button>
                <button type="button" class="button quiet" onclick={step(STEP_S)}>
                    { voice.words("film.on") }
                </button>
                <label class="film-speed">
                    <span>{ voice.words("film.speed") }</span>
                    <select onchange={on_speed}>{ for speeds }</select>
                </label>
            </div>
            <label class="picture-read">
                <span>{ voice.words("film.time") }</span>
                <input
                    type="range"
                    min="0"
                    max={format!("{end_s:.2}")}
                    step="0.02"
                    value={format!("{:.2}", *at_s)}
                    aria-valuetext={said.clone()}
                    oninput={on_slide}
                />
            </label>
            <p class="picture-read-out film-said">{ said }</p>
            <details class="more">
                <summary>{ voice.words("picture.table") }</summary>
                <Numbers
                    picture={Rc::clone(picture)}
                    names={*names}
                    voice={voice.clone()}
                    {message}
                />
            </details>
        </figure>
    }
}

impl Reel {
    /// Moves on to the frame of `now_ms`: where it is then, and whether words should follow.
    fn on(&mut self, now_ms: f64, end_s: f64) -> (f64, bool) {
        /// A page that was hidden goes on where it stood rather than leap.
        const LONGEST_MS: f64 = 100.0;
        let passed_ms = self
            .drawn_ms
            .map_or(0.0, |last| (now_ms - last).clamp(0.0, LONGEST_MS));
        self.drawn_ms = Some(now_ms);
        self.at_s = (self.at_s + self.speed * passed_ms / 1000.0).min(end_s);
        let tell = now_ms - self.told_ms >= TOLD_EVERY_MS;
        if tell {
            self.told_ms = now_ms;
        }
        (self.at_s, tell)
    }
}

/// Asks for the next frame, and for the one after it as long as `on_frame` says to go on.
fn next_frame(frames: &Rc<RefCell<Option<AnimationFrame>>>, on_frame: Rc<dyn Fn(f64) -> bool>) {
    let again = Rc::downgrade(frames);
    let frame = request_animation_frame(move |now_ms| {
        if on_frame(now_ms)
            && let Some(frames) = again.upgrade()
        {
            next_frame(&frames, on_frame);
        }
    });
    *frames.borrow_mut() = Some(frame);
}

fn captions(picture: &RidePicture, voice: &Voice, names: Names, at_s: f64) -> [Caption; 2] {
    Side::BOTH.map(|side| Caption {
        name: voice.words(side.name(names)),
        travels: travels(voice, &moment(picture, side, at_s)),
    })
}

/// "At 1.20 s: as it is now, fork 120 mm, rear 95 mm; …".
fn said(picture: &RidePicture, voice: &Voice, names: Names, at_s: f64) -> String {
    let rides: Vec<String> = captions(picture, voice, names, at_s)
        .into_iter()
        .map(|Caption { name, travels }| {
            let text = Text::new("film.column")
                .with("bike", Arg::Raw(name))
                .with("what", Arg::Raw(travels));
            voice.say(&text)
        })
        .collect();
    let text = Text::new("picture.read.at")
        .with("at", Arg::Raw(seconds(voice, at_s)))
        .with("values", Arg::Raw(rides.join("; ")));
    voice.say(&text)
}
