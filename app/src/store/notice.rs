//! Pages of the site tell each other which records they have written.

use gloo::events::EventListener;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{BroadcastChannel, MessageEvent};
use yew::Callback;

use super::Kind;
use super::entry::Write;

/// Parts a kind from a name. No kind has it in its word.
const MARK: char = ' ';

/// A record that another page has written or forgotten.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Notice {
    /// Its kind.
    pub kind: Kind,
    /// The name it is kept under.
    pub id: String,
}

impl Notice {
    /// As text for the other pages.
    pub fn to_text(&self) -> String {
        let mut text = self.kind.word().to_owned();
        text.push(MARK);
        text.push_str(&self.id);
        text
    }

    /// From the text of another page; `None` for what is no notice.
    pub fn from_text(text: &str) -> Option<Self> {
        let (word, id) = text.split_once(MARK)?;
        Some(Self {
            kind: Kind::of(word)?,
            id: id.to_owned(),
        })
    }
}

/// Tells the other pages what was written.
pub fn tell(channel: &str, kind: Kind, writes: &[Write]) {
    let Ok(channel) = BroadcastChannel::new(channel) else {
        return;
    };
    for write in writes {
        let notice = Notice {
            kind,
            id: write.id.clone(),
        };
        // A text can always be handed over.
        channel
            .post_message(&JsValue::from_str(&notice.to_text()))
            .ok();
    }
    channel.close();
}

/// Hears other pages for as long as it lives.
#[derive(Debug)]
pub struct Listener {
    channel: BroadcastChannel,
    _listener: EventListener,
}

impl Listener {
    pub(super) fn start(channel: &str, heard: Callback<Notice>) -> Option<Self> {
        let channel = BroadcastChannel::new(channel).ok()?;
        let listener = EventListener::new(&channel, "message", move |event| {
            let message = event.dyn_ref::<MessageEvent>();
            let text = message.and_then(|message| message.data().as_string());
            if let Some(notice) = text.as_deref().and_then(Notice::from_text) {
                heard.emit(notice);
            }
        });
        Some(Self {
            channel,
            _listener: listener,
        })
    }
}

impl Drop for Listener {
    fn drop(&mut self) {
        self.channel.close();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_notice_survives_the_way_and_nonsense_is_none() {
        for kind in Kind::ALL {
            let notice = Notice {
                kind: *kind,
                id: "a name with spaces".to_owned(),
            };
            assert_eq!(Notice::from_text(&notice.to_text()), Some(notice));
        }
        for text in ["", "logs", "letters one"] {
            assert_eq!(Notice::from_text(text), None, "{text}");
        }
    }
}
