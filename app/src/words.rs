//! The sentences on the pages: the book of the advice and the books of the app in one.

use std::cell::RefCell;
use std::rc::Rc;

use sagwright_core::intake::Field;
use sagwright_core::quantity::Unit;
use sagwright_core::words::{Book, Language, Text, UnitChoice};

/// The sentences that a program of the site carries: the English are part of it, those of other languages come from the
/// site, which hands them out in the same parts.
pub struct Tables {
    /// In English.
    pub english: fn() -> Book,
    /// The parts of another language, as the page names them beside the language's tag.
    pub parts: &'static [&'static str],
}

/// What the questions need.
pub const ASKING: Tables = Tables {
    english: asking,
    parts: &[""],
};

/// The part that only the advice needs.
pub const ADVICE_PART: &str = "-advice";

/// What the advice needs, which asks questions too.
pub const ADVISING: Tables = Tables {
    english: advising,
    parts: &["", ADVICE_PART],
};

/// The app's own sentences about answers, a file per subject.
///
/// A test proves that they are well-formed and that none is missing or left over. Other languages have the same files
/// beside these.
fn asking() -> Book {
    Book::english_of_answers().and(Book::of_tables(&[
        include_str!("../words/en/pages.json"),
        include_str!("../words/en/drawings.json"),
        include_str!("../words/en/hosted.json"),
        include_str!("../words/en/terms.json"),
    ]))
}

/// The same with those about the advice.
fn advising() -> Book {
    asking()
        .and(Book::english_of_advice())
        .and(Book::of_tables(&[
            include_str!("../words/en/advice.json"),
            include_str!("../words/en/around-advice.json"),
            include_str!("../words/en/sending.json"),
            include_str!("../words/en/store.json"),
            include_str!("../words/en/track.json"),
        ]))
}

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
        book: Rc::new(at_first()),
        mark: '.',
    });
}

/// What is spoken before a program says what it speaks: nothing, and in tests everything.
fn at_first() -> Book {
    if cfg!(test) {
        advising()
    } else {
        Book::of_tables(&[])
    }
}

/// From now on everything is said in this language. What is drawn already stays as it is.
pub fn speak(language: Language, book: Book, mark: char) {
    SPOKEN.with_borrow_mut(|spoken| {
        *spoken = Spoken {
            language,
            book: Rc::new(book),
            mark,
        };
    });
}

/// Whether anything is spoken yet, and it is this language.
pub fn speaks(language: Language) -> bool {
    SPOKEN.with_borrow(|spoken| spoken.language == language && !spoken.book.is_empty())
}

/// Whether anything is spoken yet.
pub fn speaks_any() -> bool {
    SPOKEN.with_borrow(|spoken| !spoken.book.is_empty())
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
