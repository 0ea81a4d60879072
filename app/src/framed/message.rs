//! What the page around may say, and what is taken of it: pure, without a browser.
//!
//! A message is the JSON text of one object. Nothing in it is run and nothing of it is shown; whatever is wrong with one, it
//! is put aside whole.

use sagwright_core::sorted;
use serde_json::{Map, Value};

/// By this a message is known as one of ours.
pub const APP: &str = "sagwright";

/// The version of the messages that is spoken here.
pub const VERSION: u64 = 1;

/// Longest text of a message, bytes. The longest there can be has under 2000.
pub const LARGEST: usize = 4096;

/// Longest single value, bytes.
const LONGEST_VALUE: usize = 64;

/// Most values of a look.
const MOST_VALUES: usize = 12;

/// What the page around says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Said {
    /// It has heard that this page is there, and looks like this.
    Begin(sorted::Map<String, String>),
    /// It looks like this from now on.
    Look(sorted::Map<String, String>),
    /// It has the answers of this name.
    Taken(String),
    /// It does not take the answers of this name.
    Refused(String),
}

/// One message.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Message {
    /// The name that this page has given itself when it was loaded.
    pub frame: String,
    /// Its number: each is higher than the one before.
    pub number: u64,
    /// What it says.
    pub said: Said,
}

/// Why a message is put aside.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Unheard {
    /// Another window than the one around sent it.
    Stranger,
    /// It came from another origin than the first one.
    Origin,
    /// It is no text.
    NoText,
    /// It is too long.
    TooLong,
    /// It is no JSON object of ours.
    NotOurs,
    /// It is of another version.
    Version,
    /// It is for a page that is gone, or for another one.
    OtherFrame,
    /// Its number was there before.
    Replayed,
    /// Nobody knows what it says.
    Kind,
    /// It does not say what it has to.
    Form,
    /// Nothing else is heard before `begin`.
    TooEarly,
}

impl Unheard {
    /// The reason, for whoever builds the page around; it stands in the browser's console.
    pub const fn reason(self) -> &'static str {
        match self {
            Self::Stranger => "it came from another window than the page around",
            Self::Origin => "it came from another origin than the first message",
            Self::NoText => "it is no text",
            Self::TooLong => "it is too long",
            Self::NotOurs => "it is no message of Sagwright",
            Self::Version => "it is of another version",
            Self::OtherFrame => "it is for a page that is gone",
            Self::Replayed => "a message of that number was here before",
            Self::Kind => "its kind is unknown",
            Self::Form => "something in it is missing or wrong",
            Self::TooEarly => "`begin` has to come first",
        }
    }
}

impl Message {
    /// Reads a message.
    ///
    /// # Errors
    /// [`Unheard`] where it is not one.
    pub fn read(text: &str) -> Result<Self, Unheard> {
        if text.len() > LARGEST {
            return Err(Unheard::TooLong);
        }
        let Ok(Value::Object(told)) = serde_json::from_str(text) else {
            return Err(Unheard::NotOurs);
        };
        if told.get("app").and_then(Value::as_str) != Some(APP) {
            return Err(Unheard::NotOurs);
        }
        if told.get("version").and_then(Value::as_u64) != Some(VERSION) {
            return Err(Unheard::Version);
        }
        let said = match word(&told, "kind")?.as_str() {
            "begin" => Said::Begin(look(&told)?),
            "look" => Said::Look(look(&told)?),
            "taken" => Said::Taken(word(&told, "id")?),
            "refused" => Said::Refused(word(&told, "id")?),
            _ => return Err(Unheard::Kind),
        };
        let number = told.get("number").and_then(Value::as_u64);
        Ok(Self {
            frame: word(&told, "frame")?,
            number: number.ok_or(Unheard::Form)?,
            said,
        })
    }
}

fn word(told: &Map<String, Value>, name: &str) -> Result<String, Unheard> {
    let found = told.get(name).and_then(Value::as_str);
    let found = found.filter(|found| found.len() <= LONGEST_VALUE);
    found.map(str::to_owned).ok_or(Unheard::Form)
}

fn look(told: &Map<String, Value>) -> Result<sorted::Map<String, String>, Unheard> {
    let Some(Value::Object(look)) = told.get("look") else {
        return Err(Unheard::Form);
    };
    if look.len() > MOST_VALUES || look.keys().any(|name| name.len() > LONGEST_VALUE) {
        return Err(Unheard::Form);
    }
    let names = look.keys();
    names
        .map(|name| Ok((name.clone(), word(look, name)?)))
        .collect()
}

/// The line to the page around, as far as it can be judged without a browser.
#[derive(Debug)]
pub struct Line {
    frame: String,
    origin: Option<String>,
    last: u64,
}

impl Line {
    /// A line of a page that has given itself this name.
    pub fn new(frame: String) -> Self {
        Self {
            frame,
            origin: None,
            last: 0,
        }
    }

    /// Where the page around is; `None` before it has said anything.
    pub fn origin(&self) -> Option<&str> {
        self.origin.as_deref()
    }

    /// What a message says. `around` is whether the window around sent it, `origin` where that is, `text` what was sent, if
    /// that is a text.
    ///
    /// # Errors
    /// [`Unheard`] where it is not to be heeded.
    pub fn hear(
        &mut self,
        around: bool,
        origin: &str,
        text: Option<&str>,
    ) -> Result<Said, Unheard> {
        if !around {
            return Err(Unheard::Stranger);
        }
        if self.origin.as_deref().is_some_and(|known| known != origin) {
            return Err(Unheard::Origin);
        }
        let message = Message::read(text.ok_or(Unheard::NoText)?)?;
        if message.frame != self.frame {
            return Err(Unheard::OtherFrame);
        }
        if message.number <= self.last {
            return Err(Unheard::Replayed);
        }
        if self.origin.is_none() && !matches!(message.said, Said::Begin(_)) {
            return Err(Unheard::TooEarly);
        }
        self.last = message.number;
        self.origin.get_or_insert_with(|| origin.to_owned());
        Ok(message.said)
    }
}

#[cfg(any(test, feature = "readers"))]
impl Message {
    /// The message as text.
    pub fn to_text(&self) -> String {
        let (kind, name, value) = match &self.said {
            Said::Begin(look) => ("begin", "look", serde_json::json!(look)),
            Said::Look(look) => ("look", "look", serde_json::json!(look)),
            Said::Taken(id) => ("taken", "id", serde_json::json!(id)),
            Said::Refused(id) => ("refused", "id", serde_json::json!(id)),
        };
        serde_json::json!({
            "app": APP, "version": VERSION, "kind": kind,
            "frame": self.frame, "number": self.number, name: value,
        })
        .to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const HOST: &str = "https://works.example";

    fn begin(number: u64) -> String {
        let look = sorted::Map::from([("accent".to_owned(), "#1d4d2b".to_owned())]);
        let said = Said::Begin(look);
        let frame = "one".to_owned();
        Message {
            frame,
            number,
            said,
        }
        .to_text()
    }

    fn line() -> Line {
        Line::new("one".to_owned())
    }

    #[test]
    fn only_the_window_around_is_heard_and_only_from_where_it_first_spoke() {
        let mut line = line();
        let text = begin(1);
        assert_eq!(line.hear(false, HOST, Some(&text)), Err(Unheard::Stranger));
        assert_eq!(line.origin(), None);
        assert!(line.hear(true, HOST, Some(&text)).is_ok());
        assert_eq!(line.origin(), Some(HOST));
        for elsewhere in [
            "https://works.example.evil",
            "http://works.example",
            "null",
            "",
        ] {
            let heard = line.hear(true, elsewhere, Some(&begin(2)));
            assert_eq!(heard, Err(Unheard::Origin), "{elsewhere}");
        }
        assert_eq!(line.origin(), Some(HOST));
    }

    #[test]
    fn a_message_is_heard_once_and_never_by_a_page_loaded_later() {
        let mut line = line();
        assert!(line.hear(true, HOST, Some(&begin(3))).is_ok());
        for number in [0, 2, 3] {
            let heard = line.hear(true, HOST, Some(&begin(number)));
            assert_eq!(heard, Err(Unheard::Replayed), "{number}");
        }
        assert!(line.hear(true, HOST, Some(&begin(4))).is_ok());
        let mut later = Line::new("two".to_owned());
        let heard = later.hear(true, HOST, Some(&begin(5)));
        assert_eq!(heard, Err(Unheard::OtherFrame));
        assert_eq!(later.origin(), None, "it has not begun");
    }

    #[test]
    fn what_is_refused_moves_nothing() {
        let mut line = line();
        let taken = begin(1).replace("begin", "taken").replace("look", "id");
        for (text, why) in [
            (None, Unheard::NoText),
            (Some(" ".repeat(LARGEST + 1)), Unheard::TooLong),
            (Some("[]".to_owned()), Unheard::NotOurs),
            (
                Some(begin(1).replace("sagwright", "other")),
                Unheard::NotOurs,
            ),
            (
                Some(begin(1).replace("\"version\":1", "\"version\":2")),
                Unheard::Version,
            ),
            (Some(begin(1).replace("begin", "run")), Unheard::Kind),
            (
                Some(begin(1).replace("\"number\":1", "\"number\":-1")),
                Unheard::Form,
            ),
            (Some(begin(1).replace("\"#1d4d2b\"", "[]")), Unheard::Form),
            (Some(taken), Unheard::Form),
            (
                Some(
                    begin(1)
                        .replace("begin", "taken")
                        .replace("\"look\":{", "\"id\":\"a\",\"look\":{"),
                ),
                Unheard::TooEarly,
            ),
        ] {
            assert_eq!(line.hear(true, HOST, text.as_deref()), Err(why), "{text:?}");
        }
        assert_eq!((line.origin(), line.last), (None, 0));
    }

    #[test]
    fn the_longest_message_there_can_be_fits() {
        let value = |at: usize| format!("{at:064}");
        let look = (0..MOST_VALUES).map(|at| (value(at), value(at))).collect();
        let message = Message {
            frame: value(0),
            number: u64::MAX,
            said: Said::Look(look),
        };
        let text = message.to_text();
        assert!(text.len() <= LARGEST, "{}", text.len());
        assert_eq!(Message::read(&text), Ok(message));
    }
}
