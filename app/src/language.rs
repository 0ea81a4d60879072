//! Which language the page speaks: as the device asks, or as the rider chose.

use sagwright_core::words::{Book, Language};
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::HtmlSelectElement;
use yew::prelude::*;

use crate::browser;
use crate::hosted;
use crate::keeping;
use crate::words::{self, say};

/// The language chosen on an earlier visit, else the first that the device asks for and there is, else the first there is;
/// where the page stands for a workshop, of those that it offers.
fn wanted() -> Language {
    let asked = browser::languages();
    let asked = asked.iter().filter_map(|tag| Language::of(tag));
    hosted::language_offered(keeping::language().into_iter().chain(asked))
}

/// Speaks the wanted language from the first word on; English where its sentences do not arrive.
pub async fn begin() {
    let language = wanted();
    let spoken = speak(language).await;
    browser::set_language(if spoken { language } else { Language::English }.tag());
}

/// Fetches the sentences of a language and speaks it from now on; `false` where they do not arrive whole.
async fn speak(language: Language) -> bool {
    let book = match language {
        Language::English => Some(words::english()),
        other => fetch(other).await,
    };
    let Some(book) = book else { return false };
    words::speak(language, book, browser::decimal_mark(language.tag()));
    browser::set_language(language.tag());
    true
}

async fn fetch(language: Language) -> Option<Book> {
    let (name, integrity) = browser::table_of(language.tag())?;
    let text = browser::file(&name, &integrity).await?;
    Book::from_json(&text).ok()
}

/// Told when another language is spoken.
#[derive(Properties, PartialEq)]
pub struct Props {
    /// Which it is.
    pub on_spoken: Callback<Language>,
}

/// Where the language is chosen, each by the name it has for itself.
#[component]
pub fn LanguageSwitch(props: &Props) -> Html {
    let missing = use_state_eq(|| false);
    let onchange = {
        let (told, missing) = (props.on_spoken.clone(), missing.setter());
        Callback::from(move |event: Event| {
            let list = event.target();
            let list = list.and_then(|t| t.dyn_into::<HtmlSelectElement>().ok());
            let Some(language) = list.and_then(|list| Language::of(&list.value())) else {
                return;
            };
            let (told, missing) = (told.clone(), missing.clone());
            spawn_local(async move {
                if speak(language).await {
                    keeping::keep_language(language);
                    told.emit(language);
                } else {
                    missing.set(true);
                }
            });
        })
    };
    let spoken = words::language();
    let offered = hosted::languages();
    let options = offered.iter().map(|language| {
        html! {
            <option value={language.tag()} lang={language.tag()} selected={*language == spoken}>
                { language.own_name() }
            </option>
        }
    });
    html! {
        <div class="language">
            <label>
                <span>{ say("language.choose") }</span>
                <select {onchange}>{ for options }</select>
            </label>
            if spoken != Language::English { <p>{ say("language.unreviewed") }</p> }
            <p role="status">{ if *missing { say("language.missing") } else { String::new() } }</p>
        </div>
    }
}
