//! The service worker with the list of the files it keeps on the device.

use std::collections::BTreeMap;

use crate::headers::content_type;
use crate::names::{fingerprint, integrity};
use crate::trouble::Trouble;

/// What the service worker is called in the site. The name has to stay, as browsers look for changes under it.
pub const WORKER: &str = "sw.js";

/// The page, and the address under which browsers ask for it.
const PAGE: (&str, &str) = ("index.html", "./");

/// The service worker for exactly these files.
///
/// Pictures stay out of the list: only installing the site asks for an icon, and the system keeps it from then on.
pub fn service_worker(files: &BTreeMap<String, Vec<u8>>) -> Result<Vec<u8>, Trouble> {
    let kept = || {
        files
            .iter()
            .filter(|(name, _)| content_type(name) != "image/png")
    };
    let listed: Vec<(&str, String)> = kept()
        .map(|(name, content)| {
            let name = if name == PAGE.0 { PAGE.1 } else { name };
            (name, integrity(content))
        })
        .collect();
    let list = serde_json::to_string_pretty(&listed).map_err(|error| {
        Trouble::new(
            format!("The list of files for {WORKER} could not be written: {error}."),
            "This is a fault of this program; please report it.",
        )
    })?;
    let template = include_str!("sw.js");
    let build = fingerprint(std::iter::once(template.as_bytes()).chain([list.as_bytes()]));
    Ok(template
        .replace("{{build}}", &build)
        .replace("{{files}}", &list)
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
    fn every_file_but_the_icons_is_listed_with_its_integrity() {
        let text = worker(&[
            ("a.css", "abc"),
            ("icon.png", "dots"),
            ("index.html", "page"),
        ]);
        for (name, content) in [("a.css", "abc"), ("./", "page")] {
            assert!(text.contains(&format!("\"{name}\"")), "{name} is missing");
            assert!(text.contains(&integrity(content.as_bytes())), "{name}");
        }
        assert!(!text.contains("icon.png"));
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
