//! The two requests that are made for a workshop: its document is read, and a rider's answers are sent.

use gloo::timers::callback::Timeout;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    AbortController, Headers, RequestCredentials, RequestInit, RequestRedirect, Response,
};

/// How long an answer may take, ms. A phone at the edge of its signal needs some seconds.
const PATIENCE_MS: u32 = 15_000;

/// What became of a request.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Answered {
    /// There was an answer: its status, what it asked to wait for, s, and its text, where that was wanted.
    With(u16, Option<u32>, String),
    /// There was none.
    Nothing,
}

/// Asks for a text.
pub async fn read(address: &str) -> Answered {
    let asked = RequestInit::new();
    asked.set_credentials(RequestCredentials::SameOrigin);
    ask(address, &asked, Wanted::Text).await
}

/// Sends a document, which has this name however often it is sent. It goes to this very address and nowhere further,
/// and nothing that the browser knows about the rider goes with it.
pub async fn send(address: &str, name: &str, text: &str) -> Answered {
    let asked = RequestInit::new();
    asked.set_method("POST");
    asked.set_body(&text.into());
    asked.set_credentials(RequestCredentials::Omit);
    let Ok(headers) = Headers::new() else {
        return Answered::Nothing;
    };
    for (header, value) in [
        ("Content-Type", "application/json"),
        ("Idempotency-Key", name),
    ] {
        // Both are plain names with plain values.
        headers.set(header, value).ok();
    }
    asked.set_headers_headers(&headers);
    ask(address, &asked, Wanted::Status).await
}

/// What of an answer is waited for.
#[derive(Clone, Copy, PartialEq)]
enum Wanted {
    /// Its status: it tells all there is to know, and what comes after it may never end.
    Status,
    /// All of it.
    Text,
}

async fn ask(address: &str, asked: &RequestInit, wanted: Wanted) -> Answered {
    // Whoever answers elsewhere is not the one whose address was shown.
    asked.set_redirect(RequestRedirect::Error);
    let Ok(patience) = AbortController::new() else {
        return Answered::Nothing;
    };
    asked.set_signal(Some(&patience.signal()));
    let end = Timeout::new(PATIENCE_MS, move || patience.abort());
    let answered = answer(address, asked, wanted).await;
    drop(end);
    answered.unwrap_or(Answered::Nothing)
}

async fn answer(address: &str, asked: &RequestInit, wanted: Wanted) -> Option<Answered> {
    let window = web_sys::window()?;
    let answer = JsFuture::from(window.fetch_with_str_and_init(address, asked)).await;
    let answer: Response = answer.ok()?.dyn_into().ok()?;
    let wait = answer.headers().get("Retry-After").ok().flatten();
    let wait = wait.and_then(|wait| wait.trim().parse().ok());
    let text = match wanted {
        Wanted::Status => String::new(),
        Wanted::Text => {
            let text = JsFuture::from(answer.text().ok()?).await.ok()?;
            text.as_string().unwrap_or_default()
        }
    };
    Some(Answered::With(answer.status(), wait, text))
}
