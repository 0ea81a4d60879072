//! The service worker with the list of the files it keeps on the device.

use std::collections::BTreeMap;

use crate::headers::content_type;
use crate::names::{fingerprint, integrity, reached};
use crate::program::FIRST_PAGE;
use crate::trouble::Trouble;
use crate::words::is_table;

/// What the service worker is called in the site. The name has to stay, as browsers look for changes under it.
pub const WORKER: &str = "sw.js";

/// The riders' page, and the address under which browsers ask for it.
const PAGE: (&str, &str) = (FIRST_PAGE, "./");

/// The service worker for these files; the list in it is what a rider needs.
///
/// Pictures stay out of the list: only installing the site asks for an icon, and the system keeps it from then on. So do
/// the sentences of other languages, of which a rider reads one: they have a list of their own.
pub fn service_worker(files: &BTreeMap<String, Vec<u8>>) -> Result<Vec<u8>, Trouble> {
    let contents = files.iter();
    let contents = contents.map(|(name, content)| (name.as_str(), content.as_slice()));
    let contents: BTreeMap<&str, &[u8]> = contents.collect();
    let list = |names: &mut dyn Iterator<Item = &str>| {
        let listed: Vec<(&str, String)> = names
            .filter_map(|name| {
                let listed = if name == PAGE.0 { PAGE.1 } else { name };
                Some((listed, integrity(contents.get(name)?)))
            })
            .collect();
        serde_json::to_string_pretty(&listed).map_err(|error| {
            Trouble::new(
                format!("The list of files for {WORKER} could not be written: {error}."),
                "This is a fault of this program; please report it.",
            )
        })
    };
    let kept = reached(&contents, [PAGE.0]).into_iter();
    let mut kept = kept.filter(|name| content_type(name) != "image/png" && !is_table(name));
    let always = list(&mut kept)?;
    let tables = list(&mut contents.keys().copied().filter(|name| is_table(name)))?;
    let template = include_str!("sw.js");
    let build = fingerprint([template.as_bytes(), always.as_bytes(), tables.as_bytes()]);
    Ok(template
        .replace("{{build}}", &build)
        .replace("{{files}}", &always)
        .replace("{{tables}}", &tables)
        .into_bytes())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn worker(files: &[(&str, &str)]) -> String {
        let owned = |(name, text): &(&str, &str)| ((*name).to_owned(), text.as_bytes().to_vec());
        let made = service_worker(&files.iter().map(owned).collect()).expect("any files will do");
        String::from_utf8(made).expect("it is a script")
    }

    #[test]
    fn all_a_rider_needs_but_the_icons_is_listed_with_its_integrity() {
        let text = worker(&[
            ("a.css", "abc"),
            ("words-de-1.json", "Wörter"),
            ("icon.png", "dots"),
            ("index.html", "a.css icon.png"),
            ("other.css", "def"),
            ("workshop.html", "a.css other.css"),
        ]);
        for (name, content) in [("a.css", "abc"), ("./", "a.css icon.png")] {
            assert!(text.contains(&format!("\"{name}\"")), "{name} is missing");
            assert!(text.contains(&integrity(content.as_bytes())), "{name}");
        }
        for name in ["icon.png", "other.css", "\"workshop.html\""] {
            assert!(!text.contains(name), "{name} is not for every rider");
        }
        let (files, tables) = text
            .split_once("const TABLES")
            .expect("they have their list");
        assert!(!files.contains("words-de") && tables.contains("words-de"));
        assert!(!text.contains("{{"), "a placeholder was left standing");
    }

    #[test]
    fn another_content_makes_another_build() {
        let build = |text: &str| {
            let line = text.lines().find(|line| line.starts_with("const BUILD"));
            line.map(str::to_owned).expect("the build is named")
        };
        let one = worker(&[("index.html", "one")]);
        assert_eq!(build(&one), build(&worker(&[("index.html", "one")])));
        assert_ne!(build(&one), build(&worker(&[("index.html", "two")])));
    }
}
