//! The sentences on the pages: the book of the advice and the books of the app in one.

use std::cell::RefCell;
use std::rc::Rc;

use sagwright_core::intake::Field;
use sagwright_core::quantity::Unit;
use sagwright_core::words::{Book, Text, UnitChoice};

/// The app's own sentences, a file per subject.
///
/// A test proves that they are well-formed and that none is missing or left over.
pub const ENGLISH: &[&str] = &[
    include_str!("../words/en.json"),
    include_str!("../words/en-advice.json"),
    include_str!("../words/en-drawings.json"),
    include_str!("../words/en-store.json"),
    include_str!("../words/en-terms.json"),
];

thread_local! {
    static BOOK: RefCell<Rc<Book>> = RefCell::new(Rc::new(english()));
}

fn english() -> Book {
    let own = ENGLISH.iter().filter_map(|part| Book::from_json(part).ok());
    own.fold(Book::english(), Book::and)
}

/// Adds the sentences of a part of the site that not every page carries.
pub fn join(table: &str) {
    // The tables are part of the program; a test proves them well-formed.
    if let Ok(more) = Book::from_json(table) {
        BOOK.with_borrow_mut(|book| *book = Rc::new(book.as_ref().clone().and(more)));
    }
}

/// All sentences.
pub fn book() -> Rc<Book> {
    BOOK.with_borrow(Rc::clone)
}

/// The sentence for a key without gaps.
pub fn say(key: &str) -> String {
    tell(&Text::new(key.to_owned()), &UnitChoice::default())
}

/// The sentence for `text` in the rider's units.
pub fn tell(text: &Text, units: &UnitChoice) -> String {
    BOOK.with_borrow(|book| book.say(text, units))
}

/// The sentence for a key, where there is one.
pub fn say_if_any(key: &str) -> Option<String> {
    BOOK.with_borrow(|book| book.has(key)).then(|| say(key))
}

/// What stands beside a number: the sign of its unit, or the word for what is counted where that is no click.
pub fn beside(field: Field, unit: Unit) -> String {
    say_if_any(&format!("unit.{}", field.path())).unwrap_or_else(|| unit.symbol().to_owned())
}
