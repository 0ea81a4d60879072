//! Reading the words of closed lists: one reader for all of them, since one for each list took a fifth of the program that
//! asks the questions.

use core::fmt;

use serde::de::{Deserializer, Error, Visitor};

/// The place among `words` of the word that stands next in a document.
///
/// # Errors
/// The reader's own, where no word stands there, or another.
pub(crate) fn place<'de, D: Deserializer<'de>>(
    reader: D,
    words: &'static [&'static str],
) -> Result<usize, D::Error> {
    reader.deserialize_str(Listed(words))
}

/// The place of `word` among `words`.
///
/// # Errors
/// That it is none of them.
pub(crate) fn place_of<E: Error>(word: &str, words: &'static [&'static str]) -> Result<usize, E> {
    let place = words.iter().position(|one| *one == word);
    place.ok_or_else(|| E::unknown_variant(word, words))
}

/// One of a list of words.
struct Listed(&'static [&'static str]);

impl Visitor<'_> for Listed {
    type Value = usize;

    fn expecting(&self, told: &mut fmt::Formatter) -> fmt::Result {
        told.write_str("one of ")?;
        for (at, word) in self.0.iter().enumerate() {
            let before = if at == 0 { "`" } else { "`, `" };
            told.write_str(before)?;
            told.write_str(word)?;
        }
        told.write_str("`")
    }

    fn visit_str<E: Error>(self, word: &str) -> Result<usize, E> {
        place_of(word, self.0)
    }
}

#[cfg(test)]
mod tests {
    use crate::intake::{Pace, YesNo};

    #[test]
    fn a_word_of_the_list_is_taken_and_all_else_named() {
        assert_eq!(
            serde_json::from_str::<YesNo>("\"no\"").ok(),
            Some(YesNo::No)
        );
        let told = |json: &str| {
            let refused = serde_json::from_str::<Pace>(json).expect_err("it is no pace");
            refused.to_string()
        };
        let words = "expected one of `learning`, `club`, `fast`, `expert`";
        assert!(told("\"slow\"").starts_with(&format!("unknown variant `slow`, {words}")));
        assert!(told("3").starts_with(&format!("invalid type: integer `3`, {words}")));
        assert!(told("{\"club\":null}").contains(words));
    }
}
