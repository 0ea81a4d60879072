//! Every reader of text that comes from outside the program, by name.
//!
//! The tests here hand each of them its corpus, parts of it put together wrongly, and what is built to harm; the fuzzer in
//! `../fuzz` looks for more. Each reader tells whether it took the text. What it takes must keep to its checks and come
//! back from its own writer as it went in; what it refuses must be refused in words that there are. A failure is a panic,
//! as a fuzzer wants it.

mod in_core;

use sagwright_app::readers::Reader;

/// A reader with its name, which is also that of the folder of its corpus.
#[derive(Debug, Clone, Copy)]
pub struct Named {
    /// The name.
    pub name: &'static str,
    /// The reader, of texts: browsers and the program for many files hand over nothing else.
    read: Reader,
}

impl Named {
    /// Reads bytes as a browser reads a file: what is no UTF-8 becomes the sign for that.
    pub fn read(self, bytes: &[u8]) -> bool {
        (self.read)(&String::from_utf8_lossy(bytes))
    }
}

/// All readers.
pub fn all() -> impl Iterator<Item = Named> {
    let both = in_core::READERS
        .iter()
        .chain(sagwright_app::readers::READERS);
    both.map(|&(name, read)| Named { name, read })
}

/// The reader of that name.
pub fn named(name: &str) -> Option<Named> {
    all().find(|reader| reader.name == name)
}
