//! Handing texts on by the browser's own means, each only where there is one.

use js_sys::{Function, Object, Promise, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};

use crate::browser::{gives, navigator};

/// Puts a text on the clipboard; `false` where the browser does not let it.
pub async fn copy(text: &str) -> bool {
    let Some(clipboard) = gives("clipboard") else {
        return false;
    };
    call(&clipboard, "writeText", &JsValue::from_str(text))
        .await
        .is_some()
}

/// Whether the browser can hand a text to other programs.
pub fn can_share() -> bool {
    gives("share").is_some()
}

/// Has the browser offer a text to other programs. Whoever closes that list again has shared nothing, which is fine.
pub async fn share(title: &str, text: &str) {
    let parcel = Object::new();
    for (name, value) in [("title", title), ("text", text)] {
        // A plain new object takes any value.
        let _ = Reflect::set(&parcel, &JsValue::from_str(name), &JsValue::from_str(value));
    }
    if let Some(navigator) = navigator() {
        call(&navigator, "share", &parcel).await;
    }
}

/// Asks the browser not to clear away what is kept for this site when the device runs short of room. Most decide
/// without asking the rider; whatever they decide, nothing else changes.
pub fn keep_for_good() {
    if let Some(storage) = gives("storage") {
        spawn_local(async move {
            call(&storage, "persist", &JsValue::UNDEFINED).await;
        });
    }
}

/// Calls a method by its name and waits for what it promises; `None` where there is none, or it fails.
async fn call(object: &JsValue, method: &str, argument: &JsValue) -> Option<JsValue> {
    let method: Function = Reflect::get(object, &JsValue::from_str(method))
        .ok()?
        .dyn_into()
        .ok()?;
    let promise: Promise = method.call1(object, argument).ok()?.dyn_into().ok()?;
    JsFuture::from(promise).await.ok()
}
