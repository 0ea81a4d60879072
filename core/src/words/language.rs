//! The languages that there are sentences in.

use serde::{Deserialize, Deserializer, Serialize};

use crate::listed;

/// A language with a full table of sentences. Documents name it by its tag.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default, Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub enum Language {
    /// English, in which the sentences are written first.
    #[default]
    #[serde(rename = "en")]
    English,
    /// Spanish.
    #[serde(rename = "es")]
    Spanish,
    /// French.
    #[serde(rename = "fr")]
    French,
    /// German.
    #[serde(rename = "de")]
    German,
}

impl<'de> Deserialize<'de> for Language {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        let place = listed::place(reader, &["en", "es", "fr", "de"])?;
        Ok(Self::ALL[place])
    }
}

impl Language {
    /// Every language, as offered.
    pub const ALL: &[Self] = &[Self::English, Self::Spanish, Self::French, Self::German];

    /// Its tag after BCP 47, which is also the name of its folders of tables.
    pub const fn tag(self) -> &'static str {
        match self {
            Self::English => "en",
            Self::Spanish => "es",
            Self::French => "fr",
            Self::German => "de",
        }
    }

    /// What it calls itself.
    pub const fn own_name(self) -> &'static str {
        match self {
            Self::English => "English",
            Self::Spanish => "Español",
            Self::French => "Français",
            Self::German => "Deutsch",
        }
    }

    /// The language of a tag such as `de-AT`, whatever its case; `None` for one without a table.
    pub fn of(tag: &str) -> Option<Self> {
        let primary = tag.split(['-', '_']).next().unwrap_or_default();
        let mut all = Self::ALL.iter().copied();
        all.find(|language| primary.eq_ignore_ascii_case(language.tag()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tags_lead_to_their_language_and_others_to_none() {
        for language in Language::ALL {
            assert_eq!(Language::of(language.tag()), Some(*language));
        }
        assert_eq!(Language::of("de-AT"), Some(Language::German));
        assert_eq!(Language::of("FR_ca"), Some(Language::French));
        for other in ["", "eng", "pt-BR", "<script>"] {
            assert_eq!(Language::of(other), None, "{other}");
        }
    }
}
