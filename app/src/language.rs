//! Which language the page speaks: as the device asks, or as the rider chose.

use sagwright_core::words::{Book, Language};
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::HtmlSelectElement;
use yew::prelude::*;

use crate::browser;
use crate::hosted;
use crate::keeping;
use crate::words::{self, ADVICE_PART, ASKING, Tables, say};

/// The part of the address that names a language to begin in.
const ASKED: &str = "lang";

/// The language chosen on an earlier visit, else that of the address, such as `?lang=de`, else the first that the device asks
/// for and there is, else the first there is; where the page stands for a workshop, of those that it offers.
fn wanted() -> Language {
    let asked = browser::asked(ASKED)
        .into_iter()
        .chain(browser::languages());
    let asked = asked.filter_map(|tag| Language::of(&tag));
    hosted::language_offered(keeping::language().into_iter().chain(asked))
}

/// Speaks the wanted language from the first word on; English where its sentences do not arrive.
pub async fn begin() {
    let language = wanted();
    if !speak(language, &ASKING).await {
        speak(Language::English, &ASKING).await;
    }
}

/// Fetches the sentences of a language and speaks it from now on; `false` where they do not arrive whole.
pub async fn speak(language: Language, tables: &Tables) -> bool {
    let book = match language {
        Language::English => Some((tables.english)()),
        other => fetch(other, tables.parts).await,
    };
    let Some(book) = book else { return false };
    words::speak(language, book, browser::decimal_mark(language.tag()));
    browser::set_language(language.tag());
    true
}

/// Has the advice's sentences on the device before anybody wants them: then there may be no signal. English is part of the
/// program.
pub fn bring_advice(language: Language) {
    if language != Language::English {
        spawn_local(async move {
            // Where they do not arrive, the advice asks again.
            fetch(language, &[ADVICE_PART]).await;
        });
    }
}

async fn fetch(language: Language, parts: &[&str]) -> Option<Book> {
    let mut all = Book::of_tables(&[]);
    for part in parts {
        let (name, integrity) =
            browser::named(&format!("sagwright-words-{}{part}", language.tag()))?;
        let text = browser::file(&name, &integrity).await?;
        all = all.and(Book::from_json(&text).ok()?);
    }
    Some(all)
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
                if speak(language, &ASKING).await {
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
