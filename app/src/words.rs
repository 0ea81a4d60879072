//! The sentences on the pages: the book of the advice and the book of the wizard in one.

use std::sync::LazyLock;

use sagwright_core::words::{Book, Text, UnitChoice};

/// The app's own sentences. A test proves that they are well-formed and that none is missing or left over.
const ENGLISH: &str = include_str!("../words/en.json");

static BOOK: LazyLock<Book> = LazyLock::new(|| match Book::from_json(ENGLISH) {
    Ok(own) => Book::english().and(own),
    Err(_) => Book::english(),
});

/// The sentence for a key without gaps.
pub fn say(key: &str) -> String {
    tell(&Text::new(key.to_owned()), &UnitChoice::default())
}

/// The sentence for `text` in the rider's units.
pub fn tell(text: &Text, units: &UnitChoice) -> String {
    BOOK.say(text, units)
}

/// The sentence for a key, where there is one.
pub fn say_if_any(key: &str) -> Option<String> {
    BOOK.has(key).then(|| say(key))
}
