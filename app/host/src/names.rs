//! Names that change with the content, and the places in a text where they go.

use std::collections::{BTreeMap, BTreeSet};

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD as BASE64;
use sha2::{Digest as _, Sha256, Sha384};

use crate::trouble::Trouble;

/// Hexadecimal digits of SHA-256 kept in a file name: 64 bits, so that two contents never share one in practice.
const NAME_DIGITS: usize = 16;

/// A short fingerprint of some contents, for a file name.
pub fn fingerprint<'a>(contents: impl IntoIterator<Item = &'a [u8]>) -> String {
    let mut digest = Sha256::new();
    for content in contents {
        digest.update(content);
    }
    let hex = digest
        .finalize()
        .into_iter()
        .map(|byte| format!("{byte:02x}"));
    hex.collect::<String>()[..NAME_DIGITS].to_owned()
}

/// `base.css` with fingerprint `0123456789abcdef` becomes `base-0123456789abcdef.css`.
pub fn hashed_name(file: &str, fingerprint: &str) -> String {
    match file.rsplit_once('.') {
        Some((stem, kind)) => format!("{stem}-{fingerprint}.{kind}"),
        None => format!("{file}-{fingerprint}"),
    }
}

/// The end of a name after its last dot, which says what kind of file it is.
pub fn kind(file: &str) -> Option<&str> {
    file.rsplit_once('.').map(|(_, kind)| kind)
}

/// Whether a name carries a fingerprint, so that its content can never change under it.
pub fn is_hashed(file: &str) -> bool {
    let stem = file.split_once('.').map_or(file, |(stem, _)| stem);
    let stem = stem.strip_suffix("_bg").unwrap_or(stem);
    stem.rsplit_once('-').is_some_and(|(_, tail)| {
        tail.len() == NAME_DIGITS && tail.bytes().all(|byte| byte.is_ascii_hexdigit())
    })
}

/// The files reached from `start`: those, what they name, what those name, and so on.
pub fn reached<'a>(
    files: &BTreeMap<&'a str, &'a [u8]>,
    start: impl IntoIterator<Item = &'a str>,
) -> BTreeSet<&'a str> {
    let mut reached = BTreeSet::new();
    let mut waiting: Vec<&str> = start.into_iter().collect();
    while let Some(name) = waiting.pop() {
        let Some(content) = files.get(name) else {
            continue;
        };
        if !reached.insert(name) {
            continue;
        }
        if let Ok(text) = std::str::from_utf8(content) {
            waiting.extend(files.keys().copied().filter(|n| text.contains(n)));
        }
    }
    reached
}

/// The value of an `integrity` attribute (Subresource Integrity, W3C) for some content.
pub fn integrity(content: &[u8]) -> String {
    format!("sha384-{}", BASE64.encode(Sha384::digest(content)))
}

/// What stands for the placeholders in the sources.
#[derive(Debug, Default)]
pub struct Names {
    /// What each source file is called in the site, and its integrity value.
    files: BTreeMap<String, (String, String)>,
    /// The English sentences by key, as they are written in HTML.
    sentences: BTreeMap<String, String>,
}

impl Names {
    /// Records that `source` is published as `published`.
    pub fn insert(&mut self, source: &str, published: &str, content: &[u8]) {
        let entry = (published.to_owned(), integrity(content));
        self.files.insert(source.to_owned(), entry);
    }

    /// Records what is said under `key`.
    pub fn say(&mut self, key: &str, sentence: &str) {
        let escaped = sentence
            .replace('&', "&amp;")
            .replace('<', "&lt;")
            .replace('"', "&quot;");
        self.sentences.insert(key.to_owned(), escaped);
    }

    /// Replaces every `{{name SOURCE}}`, `{{integrity SOURCE}}` and `{{say KEY}}` in `text`.
    ///
    /// `whose` names the text in messages. A placeholder that is unknown, or names an unknown file or key,
    /// is an error: left standing, it would be a broken link in the published site.
    pub fn fill(&self, whose: &str, text: &str) -> Result<String, Trouble> {
        let mut filled = String::with_capacity(text.len());
        let mut rest = text;
        while let Some((before, after)) = rest.split_once("{{") {
            let (inside, after) = after.split_once("}}").ok_or_else(|| {
                Trouble::new(
                    format!("{whose} has a `{{{{` without its `}}}}`."),
                    "Close the placeholder.",
                )
            })?;
            filled.push_str(before);
            filled.push_str(self.value(whose, inside)?);
            rest = after;
        }
        filled.push_str(rest);
        Ok(filled)
    }

    fn value(&self, whose: &str, inside: &str) -> Result<&str, Trouble> {
        let unknown = || {
            let known = self.files.keys().map(String::as_str).collect::<Vec<_>>();
            Trouble::new(
                format!("{whose} asks for `{{{{{inside}}}}}`, which the site does not have."),
                format!(
                    "Write `{{{{say KEY}}}}` with a key of the questions' sentences, or `{{{{name FILE}}}}` or \
                     `{{{{integrity FILE}}}}` with one of: {}.",
                    known.join(", ")
                ),
            )
        };
        let (what, source) = inside.split_once(' ').ok_or_else(unknown)?;
        if what == "say" {
            return self
                .sentences
                .get(source.trim())
                .map(String::as_str)
                .ok_or_else(unknown);
        }
        let (published, integrity) = self.files.get(source.trim()).ok_or_else(unknown)?;
        match what {
            "name" => Ok(published),
            "integrity" => Ok(integrity),
            _ => Err(unknown()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn fingerprints_follow_the_content_and_nothing_else() {
        // First 16 digits of SHA-256("abc"), the example of FIPS 180-4.
        assert_eq!(fingerprint([b"abc".as_slice()]), "ba7816bf8f01cfea");
        assert_eq!(fingerprint([b"a".as_slice(), b"bc"]), "ba7816bf8f01cfea");
        assert_ne!(fingerprint([b"abd".as_slice()]), "ba7816bf8f01cfea");
    }

    #[test]
    fn hashed_names_are_recognised_and_plain_ones_are_not() {
        let name = hashed_name("base.css", "ba7816bf8f01cfea");
        assert_eq!(name, "base-ba7816bf8f01cfea.css");
        assert!(is_hashed(&name));
        assert!(is_hashed("sagwright-ba7816bf8f01cfea_bg.wasm"));
        for plain in [
            "index.html",
            "sw.js",
            "two-words.css",
            "a-ba7816bf8f01cfeg.js",
        ] {
            assert!(!is_hashed(plain), "{plain} has no fingerprint");
        }
    }

    #[test]
    fn integrity_is_the_base64_of_sha384() {
        // SHA-384("abc"), the example of FIPS 180-4, in base64.
        assert_eq!(
            integrity(b"abc"),
            "sha384-ywB1P0WjXou1oD1pmsZQBycsMqsO3tFjGotgWkP/W+2AhgcroefMI1i67KE0yCWn"
        );
    }

    #[test]
    fn placeholders_are_filled_and_unknown_ones_named() {
        let mut names = Names::default();
        names.insert("styles/a.css", "a-1.css", b"abc");
        let text = "<link href=\"{{name styles/a.css}}\" integrity=\"{{integrity styles/a.css}}\">";
        let filled = names.fill("index.html", text).expect("both are known");
        assert!(filled.starts_with("<link href=\"a-1.css\" integrity=\"sha384-"));
        assert!(!filled.contains("{{"));

        names.say("ask", "A < B & \"C\"");
        let said = names.fill("index.html", "<p>{{say ask}}</p>");
        let said = said.expect("it is known");
        assert_eq!(said, "<p>A &lt; B &amp; &quot;C&quot;</p>");

        for wrong in [
            "{{say tell}}",
            "{{name b.css}}",
            "{{size styles/a.css}}",
            "{{name",
            "{{}}",
        ] {
            let trouble = names.fill("index.html", wrong).expect_err(wrong);
            assert!(trouble.to_string().starts_with("index.html"), "{trouble}");
        }
    }
}
