//! The few things asked of the browser, each harmless where the browser refuses.

use gloo::file::{Blob, ObjectUrl};
use js_sys::Reflect;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    CssStyleDeclaration, Document, Element, Event, HtmlAnchorElement, HtmlElement,
    HtmlInputElement, RequestCredentials, RequestInit, Response, Storage, Url, UrlSearchParams,
    Window,
};

use sagwright_core::words::Language;

use crate::keeping::Shelf;
use crate::route::Route;
use crate::words;

fn window() -> Option<Window> {
    web_sys::window()
}

fn document() -> Option<Document> {
    window()?.document()
}

/// The element that the app draws in, emptied of what the page showed while the app was on its way.
pub fn stage() -> Option<Element> {
    let stage = document()?.get_element_by_id("app")?;
    stage.set_inner_html("");
    Some(stage)
}

/// What stands after the address, `#` included.
pub fn fragment() -> String {
    let hash = window().and_then(|w| w.location().hash().ok());
    hash.unwrap_or_default()
}

/// Goes to a page, as if its link had been followed: the back button leads back.
pub fn go(route: Route) {
    follow(&route.fragment());
}

/// Follows a link on this page, such as `#/check`.
pub fn follow(fragment: &str) {
    if let Some(window) = window() {
        // Setting the fragment of one's own page cannot fail; where it does, the rider stays where they are.
        window.location().set_hash(fragment).ok();
    }
}

/// Goes to a page in place of this one: the back button leads to the one before.
pub fn replace(route: Route) {
    if let Some(window) = window() {
        // As above.
        window.location().replace(&route.fragment()).ok();
    }
}

/// Today, as the device writes a date in the language of the page, such as "26 November 2026".
pub fn today() -> String {
    let language = match words::language() {
        Language::English => "en-GB",
        other => other.tag(),
    };
    let options = js_sys::Object::new();
    // A plain object takes any property; without them the date is written shorter.
    Reflect::set(&options, &"dateStyle".into(), &"long".into()).ok();
    let date = js_sys::Date::new_0().to_locale_date_string(language, &options);
    date.into()
}

/// The day of a moment, milliseconds since 1970, where the device is: year, month and day, as "2026-11-26".
pub fn day(moment: u64) -> String {
    #[expect(
        clippy::cast_precision_loss,
        reason = "milliseconds of this era are whole numbers in a float"
    )]
    let date = js_sys::Date::new(&JsValue::from_f64(moment as f64));
    // Those of a moment that no calendar holds are no numbers and would be written as such.
    let (year, month, day) = (date.get_full_year(), date.get_month() + 1, date.get_date());
    format!("{year:04}-{month:02}-{day:02}")
}

/// The address of this site, without anything after `#`.
pub fn site() -> Option<String> {
    let address = window()?.location().href().ok()?;
    Some(match address.split_once('#') {
        Some((site, _)) => site.to_owned(),
        None => address,
    })
}

/// What the address asks for under `name`, between `?` and `#`.
pub fn asked(name: &str) -> Option<String> {
    let search = window()?.location().search().ok()?;
    UrlSearchParams::new_with_str(&search).ok()?.get(name)
}

/// The whole address of a file named from this page; `None` where it is on another site.
pub fn on_this_site(name: &str) -> Option<String> {
    let page = window()?.location();
    let address = Url::new_with_base(name, &page.href().ok()?).ok()?;
    (address.origin() == page.origin().ok()?).then(|| address.href())
}

/// Says in which language the page is written, for those who hear it.
pub fn set_language(tag: &str) {
    if let Some(root) = document().and_then(|d| d.document_element()) {
        // Any element takes an attribute.
        root.set_attribute("lang", tag).ok();
    }
}

/// The languages that the device asks for, the dearest first.
pub fn languages() -> Vec<String> {
    let asked = window().map(|window| window.navigator().languages());
    let asked = asked.iter().flat_map(js_sys::Array::iter);
    asked.filter_map(|tag| tag.as_string()).collect()
}

/// What stands between a whole number and its decimals in a language, as the browser's `Intl` has it.
pub fn decimal_mark(tag: &str) -> char {
    let tags = js_sys::Array::of1(&tag.into());
    let format = js_sys::Intl::NumberFormat::new(&tags, &js_sys::Object::new());
    let shown = format.format().call1(&JsValue::UNDEFINED, &1.5.into());
    let shown = shown.ok().and_then(|shown| shown.as_string());
    let mark = shown.and_then(|shown| shown.chars().find(|c| !c.is_numeric()));
    mark.unwrap_or('.')
}

/// A file of this site as text, whole and unchanged; `None` where it does not arrive so.
pub async fn file(name: &str, integrity: &str) -> Option<String> {
    let asked = RequestInit::new();
    asked.set_integrity(integrity);
    asked.set_credentials(RequestCredentials::SameOrigin);
    let answer = JsFuture::from(window()?.fetch_with_str_and_init(name, &asked)).await;
    let answer: Response = answer.ok()?.dyn_into().ok()?;
    if !answer.ok() {
        return None;
    }
    let text = JsFuture::from(answer.text().ok()?).await.ok()?;
    text.as_string()
}

/// The name and integrity of a file that the page names but does not load by itself; `None` where it names none such.
pub fn named(what: &str) -> Option<(String, String)> {
    let selector = format!("meta[name=\"{what}\"]");
    let entry = document()?.query_selector(&selector).ok()??;
    Some((
        entry.get_attribute("content")?,
        entry.get_attribute("data-integrity")?,
    ))
}

/// Moves the focus to an element, if it is there; where it is folded away, it is unfolded first.
pub fn focus(id: &str) {
    let element = document().and_then(|d| d.get_element_by_id(id));
    let fold = element.as_ref().and_then(|e| e.closest("details").ok()?);
    if let Some(fold) = fold {
        // The name is well-formed, so this cannot fail.
        fold.set_attribute("open", "").ok();
    }
    if let Some(element) = element.and_then(|e| e.dyn_into::<HtmlElement>().ok()) {
        // An element that cannot take the focus leaves it where it is.
        element.focus().ok();
    }
}

/// Moves the focus to a field and selects all of it, ready to be copied.
pub fn select(id: &str) {
    let element = document().and_then(|d| d.get_element_by_id(id));
    if let Some(field) = element.and_then(|e| e.dyn_into::<HtmlInputElement>().ok()) {
        // A field that cannot take the focus may still be selected.
        field.focus().ok();
        field.select();
    }
}

/// Scrolls to the top of the page.
pub fn scroll_to_top() {
    if let Some(window) = window() {
        window.scroll_to_with_x_and_y(0.0, 0.0);
    }
}

/// Whether a page has room for two columns: the same width at which the style sheets make them.
pub fn is_wide() -> bool {
    is_so("(min-width: 64rem)")
}

/// Whether the site was opened as an app of the device.
pub fn is_installed() -> bool {
    is_so("(display-mode: standalone)")
}

/// Whether what a media query says holds now.
fn is_so(query: &str) -> bool {
    let media = window().and_then(|w| w.match_media(query).ok().flatten());
    media.is_some_and(|media| media.matches())
}

/// Names the page in the browser's tab.
pub fn set_title(title: &str) {
    if let Some(document) = document() {
        document.set_title(title);
    }
}

/// Puts the style sheets' theme of that name on, or leaves it to the device; the browser's own bars follow.
pub fn wear(theme: Option<&str>) {
    let Some(root) = document().and_then(|d| d.document_element()) else {
        return;
    };
    // Neither can fail: the name of the attribute is well-formed.
    match theme {
        Some(name) => root.set_attribute("data-theme", name).ok(),
        None => root.remove_attribute("data-theme").ok(),
    };
    match_bars();
}

/// Gives the browser's own bars the colour of the page.
pub fn match_bars() {
    let root = document().and_then(|d| d.document_element());
    let style = root.and_then(|root| window()?.get_computed_style(&root).ok()?);
    let paper = style.and_then(|style| style.get_property_value("--paper").ok());
    let bars = document().and_then(|d| d.query_selector_all("meta[name=theme-color]").ok());
    if let (Some(paper), Some(bars)) = (paper, bars) {
        for at in 0..bars.length() {
            let bar = bars
                .item(at)
                .and_then(|node| node.dyn_into::<Element>().ok());
            bar.and_then(|bar| bar.set_attribute("content", &paper).ok());
        }
    }
}

/// The style that the page itself has, before the style sheets.
pub fn style_of_page() -> Option<CssStyleDeclaration> {
    let root: HtmlElement = document()?.document_element()?.dyn_into().ok()?;
    Some(root.style())
}

/// Tells everybody on the page who listens for `event` on the window.
pub fn tell(event: &str) {
    if let (Some(window), Ok(event)) = (window(), Event::new(event)) {
        // Fails only for an event that is being told already.
        window.dispatch_event(&event).ok();
    }
}

/// Opens the browser's print dialogue.
pub fn print() {
    if let Some(window) = window() {
        // Some embedded browsers cannot print; their own menu still can.
        window.print().ok();
    }
}

/// The browser, as it shows itself to pages.
pub fn navigator() -> Option<JsValue> {
    Some(window()?.navigator().into())
}

/// What the browser gives its pages under `name`, such as a clipboard; `None` where it does not.
///
/// Read by name, because a plain read throws in a frame without rights and gives nothing outside a secure context.
pub fn gives(name: &str) -> Option<JsValue> {
    let found = Reflect::get(&navigator()?, &JsValue::from_str(name)).ok()?;
    found.is_truthy().then_some(found)
}

/// The device's storage; `None` where it is blocked, as in some private windows and frames.
fn storage() -> Option<Storage> {
    window()?.local_storage().ok().flatten()
}

/// The device as a place to keep texts.
#[derive(Debug, Clone, Copy)]
pub struct Device;

impl Shelf for Device {
    fn kept(&self, name: &str) -> Option<String> {
        storage()?.get_item(name).ok().flatten()
    }

    fn keep(&self, name: &str, text: &str) -> bool {
        storage().is_some_and(|storage| storage.set_item(name, text).is_ok())
    }
}

/// A script of this page's own that runs the module at `address`; `None` where the page may start a worker with that as it is.
/// In a frame without an origin every address is another site's, and a worker may only be started with one's own script: a
/// plain one, as browsers start no module from there. What the page says to it first may come before the module is there,
/// so it is kept as `handedOver`.
pub fn wrapped(address: &str) -> Option<ObjectUrl> {
    let origin = Reflect::get(&window()?.into(), &"origin".into()).ok()?;
    if origin.as_string()? != "null" {
        return None;
    }
    // An address as the browser writes it has no quotation mark in it.
    let script = format!(
        "self.handedOver = new Promise((take) => \
         addEventListener('message', ({{ data }}) => take(data), {{ once: true }})); import(\"{address}\");"
    );
    Some(ObjectUrl::from(Blob::new_with_options(
        script.as_str(),
        Some("text/javascript"),
    )))
}

/// Hands the rider a text as a file.
pub fn save_file(name: &str, kind: &str, content: &str) {
    save_blob(name, Blob::new_with_options(content, Some(kind)));
}

/// Hands the rider a file.
pub fn save_blob(name: &str, content: Blob) {
    let url = ObjectUrl::from(content);
    let link = document().and_then(|d| d.create_element("a").ok());
    if let Some(link) = link.and_then(|e| e.dyn_into::<HtmlAnchorElement>().ok()) {
        link.set_href(&url);
        link.set_download(name);
        link.click();
    }
}
