//! The sentences on the pages: the book of the advice and the books of the app in one.

use std::cell::RefCell;
use std::rc::Rc;

use sagwright_core::intake::Field;
use sagwright_core::quantity::Unit;
use sagwright_core::words::{Book, Language, Text, UnitChoice};

/// The app's own sentences, a file per subject.
///
/// A test proves that they are well-formed and that none is missing or left over. Other languages have the same files
/// beside these; the site hands them out one at a time.
pub const ENGLISH: &[&str] = &[
    include_str!("../words/en/pages.json"),
    include_str!("../words/en/advice.json"),
    include_str!("../words/en/drawings.json"),
    include_str!("../words/en/hosted.json"),
    include_str!("../words/en/store.json"),
    include_str!("../words/en/terms.json"),
    include_str!("../words/en/track.json"),
];

/// What the page speaks.
struct Spoken {
    language: Language,
    book: Rc<Book>,
    /// Its decimal mark.
    mark: char,
}

thread_local! {
    static SPOKEN: RefCell<Spoken> = RefCell::new(Spoken {
        language: Language::English,
        book: Rc::new(english()),
        mark: '.',
    });
}

/// English, which is part of the program.
pub fn english() -> Book {
    let own = ENGLISH.iter().filter_map(|part| Book::from_json(part).ok());
    own.fold(Book::english(), Book::and)
}

/// Adds the sentences of a part of the site that not every page carries.
pub fn join(table: &str) {
    // The tables are part of the program; a test proves them well-formed.
    if let Ok(more) = Book::from_json(table) {
        SPOKEN.with_borrow_mut(|spoken| {
            spoken.book = Rc::new(spoken.book.as_ref().clone().and(more));
        });
    }
}

/// From now on everything is said in another language. What is drawn already stays as it is.
pub fn speak(language: Language, book: Book, mark: char) {
    SPOKEN.with_borrow_mut(|spoken| {
        *spoken = Spoken {
            language,
            book: Rc::new(book),
            mark,
        };
    });
}

/// The language spoken.
pub fn language() -> Language {
    SPOKEN.with_borrow(|spoken| spoken.language)
}

/// The same units, numbers written as the language does.
pub fn marked(units: &UnitChoice) -> UnitChoice {
    SPOKEN.with_borrow(|spoken| units.clone().marked(spoken.mark))
}

/// All sentences.
pub fn book() -> Rc<Book> {
    SPOKEN.with_borrow(|spoken| Rc::clone(&spoken.book))
}

/// The sentence for a key without gaps.
pub fn say(key: &str) -> String {
    tell(&Text::new(key.to_owned()), &UnitChoice::default())
}

/// The sentence for `text` in the rider's units.
pub fn tell(text: &Text, units: &UnitChoice) -> String {
    book().say(text, units)
}

/// The sentence for a key, where there is one.
pub fn say_if_any(key: &str) -> Option<String> {
    book().has(key).then(|| say(key))
}

/// What stands beside a number: the sign of its unit, or the word for what is counted.
pub fn beside(field: Field, unit: Unit) -> String {
    let counted = say_if_any(&format!("unit.{}", field.path()));
    counted.unwrap_or_else(|| match unit {
        Unit::Click => say("unit.clicks"),
        unit => unit.symbol().to_owned(),
    })
}
