//! How the advice is spoken: the sentences of one language and the units one reader chose.

use std::borrow::Cow;
use std::rc::Rc;

use sagwright_core::quantity::Dimension;
use sagwright_core::words::{Arg, Book, Text, UnitChoice};

/// A language and a choice of units, handed to every part of the page.
#[derive(Debug, Clone)]
pub struct Voice {
    book: Rc<Book>,
    units: UnitChoice,
}

impl PartialEq for Voice {
    /// One book is shared by the whole page, so the pointer says enough; comparing every sentence would not.
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.book, &other.book) && self.units == other.units
    }
}

impl Voice {
    /// Speaks from `book` in `units`.
    pub fn new(book: Rc<Book>, units: UnitChoice) -> Self {
        Self { book, units }
    }

    /// The units chosen.
    pub fn units(&self) -> &UnitChoice {
        &self.units
    }

    /// A sentence of the advice.
    pub fn say(&self, text: &Text) -> String {
        self.book.say(text, &self.units)
    }

    /// A sentence of the page without gaps.
    pub fn words(&self, key: impl Into<Cow<'static, str>>) -> String {
        self.say(&Text::new(key))
    }

    /// A quantity (SI) with its unit.
    pub fn quantity(&self, si: f64, dimension: Dimension) -> String {
        self.units.show(si, dimension)
    }

    /// A sentence of the page with one gap filled.
    pub fn with(&self, key: &'static str, gap: &'static str, value: Arg) -> String {
        self.say(&Text::new(key).with(gap, value))
    }
}
