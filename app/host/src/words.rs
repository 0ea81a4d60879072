//! The sentences of every language but English, which is part of the program: one file a language, whole or refused.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use crate::trouble::Trouble;

/// Where sentences lie below the root, a folder per language in each.
const FOLDERS: [&str; 2] = ["core/words", "app/words"];

/// The files of sentences that only the advice needs, without their ending; all others are of the questions.
const ADVICE: [&str; 11] = [
    "advice",
    "answers",
    "around-advice",
    "causes",
    "cautions",
    "checks",
    "laps",
    "remedies",
    "sending",
    "store",
    "track",
];

/// The language in which every sentence is written first.
const FIRST: &str = "en";

/// What the files of sentences are called in the site, before their fingerprint and language.
pub const STEM: &str = "words";

/// Whether a file of the site holds the sentences of a language.
pub fn is_table(name: &str) -> bool {
    name.strip_prefix(STEM)
        .is_some_and(|rest| rest.starts_with('-'))
}

/// Whether a file of the site holds the sentences of a language that the questions need.
pub fn is_table_of_questions(name: &str) -> bool {
    let advice = format!("{}-", Part::Advice.suffix());
    is_table(name) && !name.contains(&advice)
}

/// Sentences by key.
type Sentences = BTreeMap<String, String>;

/// A part of the sentences, in one file of the site for each language.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Part {
    /// What the questions need.
    Questions,
    /// What only the advice needs.
    Advice,
}

impl Part {
    /// Both.
    const ALL: [Self; 2] = [Self::Questions, Self::Advice];

    /// What stands behind the tag of the language in the name of the file.
    const fn suffix(self) -> &'static str {
        match self {
            Self::Questions => "",
            Self::Advice => "-advice",
        }
    }

    /// Whether a file of sentences, named without its ending, is of this part.
    fn holds(self, stem: &str) -> bool {
        (self == Self::Advice) == ADVICE.contains(&stem)
    }
}

/// The English sentences that the questions need.
pub fn english(root: &Path) -> Result<BTreeMap<String, String>, Trouble> {
    sentences(root, FIRST, Part::Questions)
}

/// Every other language in its parts: the tag, with the part behind it, and the sentences as one JSON object.
///
/// A language that lacks a sentence, has one too many, or one with other gaps than the English, is an error: nobody would
/// see it before a rider does.
pub fn languages(root: &Path) -> Result<Vec<(String, Vec<u8>)>, Trouble> {
    let mut all = Vec::new();
    for tag in tags(&root.join(FOLDERS[0]))? {
        for part in Part::ALL {
            all.push((
                format!("{tag}{}", part.suffix()),
                language(root, &tag, part)?,
            ));
        }
    }
    Ok(all)
}

/// One part of one language.
fn language(root: &Path, tag: &str, part: Part) -> Result<Vec<u8>, Trouble> {
    let (english, told) = (sentences(root, FIRST, part)?, sentences(root, tag, part)?);
    let wrong = differences(&english, &told);
    if !wrong.is_empty() {
        return Err(Trouble::new(
            format!(
                "The sentences in {tag} are not those in {FIRST}: {}.",
                wrong.join("; ")
            ),
            format!("Put it right in core/words/{tag} or app/words/{tag}."),
        ));
    }
    serde_json::to_vec(&told).map_err(|error| {
        Trouble::new(
            format!("The sentences in {tag} could not be written: {error}."),
            "This is a fault of this program; please report it.",
        )
    })
}

/// The languages beside the first, in order.
fn tags(folder: &Path) -> Result<Vec<String>, Trouble> {
    let entries = fs::read_dir(folder).map_err(|error| Trouble::file("Reading", folder, &error))?;
    let mut tags = Vec::new();
    for entry in entries {
        let entry = entry.map_err(|error| Trouble::file("Reading", folder, &error))?;
        let name = entry.file_name().to_string_lossy().into_owned();
        if entry.path().is_dir() && name != FIRST && !name.starts_with('.') {
            tags.push(name);
        }
    }
    tags.sort();
    Ok(tags)
}

/// Every sentence of a part of a language, from all its files.
fn sentences(root: &Path, tag: &str, part: Part) -> Result<Sentences, Trouble> {
    let mut all = Sentences::new();
    for folder in FOLDERS {
        let folder = root.join(folder).join(tag);
        let entries =
            fs::read_dir(&folder).map_err(|error| Trouble::file("Reading", &folder, &error))?;
        for entry in entries {
            let path = entry
                .map_err(|error| Trouble::file("Reading", &folder, &error))?
                .path();
            let stem = path.file_stem().and_then(|stem| stem.to_str());
            let ours = stem.is_some_and(|stem| part.holds(stem));
            if !ours || path.extension().is_none_or(|kind| kind != "json") {
                continue;
            }
            let text = fs::read_to_string(&path)
                .map_err(|error| Trouble::file("Reading", &path, &error))?;
            let table: Sentences = serde_json::from_str(&text).map_err(|error| {
                Trouble::new(
                    format!("{} is not a table of sentences: {error}.", path.display()),
                    "Write it as one JSON object of key and sentence.",
                )
            })?;
            all.extend(table);
        }
    }
    Ok(all)
}

/// What is wrong with a translation, a few words for each key.
fn differences(english: &Sentences, told: &Sentences) -> Vec<String> {
    let missing = english.keys().filter(|key| !told.contains_key(*key));
    let idle = told.keys().filter(|key| !english.contains_key(*key));
    let gaps = english.iter().filter(|(key, sentence)| {
        let other = told.get(*key);
        other.is_some_and(|other| gaps(sentence) != gaps(other))
    });
    missing
        .map(|key| format!("{key} is missing"))
        .chain(idle.map(|key| format!("{key} is not asked for")))
        .chain(gaps.map(|(key, _)| format!("{key} has other gaps")))
        .collect()
}

/// The gaps of a sentence, `{name}`, each once, in order of their names.
fn gaps(sentence: &str) -> Vec<&str> {
    let mut gaps: Vec<&str> = sentence
        .split('{')
        .skip(1)
        .filter_map(|rest| rest.split_once('}').map(|(name, _)| name))
        .collect();
    gaps.sort_unstable();
    gaps.dedup();
    gaps
}

#[cfg(test)]
mod tests {
    use super::*;

    fn table(rows: &[(&str, &str)]) -> Sentences {
        let owned = |(key, sentence): &(&str, &str)| ((*key).to_owned(), (*sentence).to_owned());
        rows.iter().map(owned).collect()
    }

    #[test]
    fn what_is_missing_idle_or_gapped_otherwise_is_named() {
        let english = table(&[("a", "one {n}"), ("b", "two"), ("c", "{x} and {y}")]);
        let told = table(&[("a", "un {m}"), ("c", "{y} et {x}"), ("d", "quatre")]);
        assert_eq!(
            differences(&english, &told),
            ["b is missing", "d is not asked for", "a has other gaps"]
        );
        assert!(differences(&english, &english).is_empty());
    }

    #[test]
    fn every_language_here_is_whole() {
        let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
        let all = languages(&root).unwrap_or_else(|trouble| panic!("{trouble}"));
        let tags: Vec<&str> = all.iter().map(|(tag, _)| tag.as_str()).collect();
        let expected = ["de", "de-advice", "es", "es-advice", "fr", "fr-advice"];
        assert_eq!(tags, expected);
    }
}
