//! The site on a workshop's own page: what to write there, and the page of an invented workshop to look at.

use std::borrow::Cow;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use crate::names::{integrity, is_hashed};
use crate::pack::{Effort, pack};
use crate::serve::{Headers, Served};
use crate::site::Site;
use crate::trouble::Trouble;

/// How the script begins that defines the element for a workshop's page.
const SCRIPT: &str = "sagwright-intake-";

/// The invented workshop's page, among the sources.
const PAGE: &str = "demo-data/host-page";

/// Its files that come as they are.
const PLAIN: [&str; 2] = ["host.css", "host.js"];

/// What its workshop's document is called on the site.
const DOCUMENT: &str = "demo-workshop.json";

/// The name and the integrity value of the script.
fn script(site: &Site) -> Result<(&str, String), Trouble> {
    let mut files = site.0.iter();
    let found = files.find(|(name, _)| name.starts_with(SCRIPT) && is_hashed(name));
    let (name, content) = found.ok_or_else(|| {
        Trouble::new(
            "The site has no script for workshops' own pages.",
            "Build it anew with `cargo run -- build`.",
        )
    })?;
    Ok((name, integrity(content)))
}

/// What a workshop writes into its own page.
pub fn snippet(site: &Site) -> Result<String, Trouble> {
    let (script, integrity) = script(site)?;
    Ok(format!(
        "To embed it, write this into your page, with the address of the site in place of https://SITE/ \
         (docs/embedding.md says the rest):\n\n\
         <script type=\"module\" src=\"https://SITE/{script}\"\n  integrity=\"{integrity}\" crossorigin></script>\n\
         <sagwright-intake workshop=\"workshop.json\">\n  \
         <a href=\"https://SITE/?workshop=workshop.json\">How does your bike ride?</a>\n\
         </sagwright-intake>\n"
    ))
}

/// The page of an invented workshop around the site at `address`; the site gets the workshop's document.
pub fn host_page(root: &Path, site: &mut Site, address: &str) -> Result<Served, Trouble> {
    let folder = root.join(PAGE);
    let read = |name: &str| {
        let path = folder.join(name);
        fs::read_to_string(&path).map_err(|error| Trouble::file("Reading", &path, &error))
    };
    let (script, integrity) = script(site)?;
    let page = read("index.html")?
        .replace("{{site}}", address)
        .replace("{{script}}", script)
        .replace("{{integrity}}", &integrity);
    site.0
        .insert(DOCUMENT.to_owned(), read("workshop.json")?.into_bytes());
    let mut files = BTreeMap::from([("index.html".to_owned(), page.into_bytes())]);
    for name in PLAIN {
        files.insert(name.to_owned(), read(name)?.into_bytes());
    }
    let headers = headers(address);
    Ok(Served {
        files: pack(Site(files), Effort::Quick),
        headers: Box::new(move |_| headers.clone()),
    })
}

/// As strict a policy as a page can have that embeds the site at `address`: nothing but its own files, and of the site
/// the one script and the frame.
fn headers(address: &str) -> Headers {
    let site = address.trim_end_matches('/');
    vec![
        (
            "Content-Security-Policy",
            Cow::Owned(format!(
                "default-src 'none'; script-src 'self' {site}; style-src 'self'; frame-src {site}; \
                 base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
            )),
        ),
        ("Referrer-Policy", Cow::Borrowed("no-referrer")),
        ("X-Content-Type-Options", Cow::Borrowed("nosniff")),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    fn site() -> Site {
        let script = (
            "sagwright-intake-ba7816bf8f01cfea.js".to_owned(),
            b"abc".to_vec(),
        );
        Site(BTreeMap::from([script]))
    }

    /// SHA-384("abc"), the example of FIPS 180-4, in base64.
    const ABC: &str = "sha384-ywB1P0WjXou1oD1pmsZQBycsMqsO3tFjGotgWkP/W+2AhgcroefMI1i67KE0yCWn";

    #[test]
    fn what_to_write_into_a_page_names_the_script_with_its_integrity() {
        let text = snippet(&site()).expect("the script is there");
        assert!(
            text.contains("https://SITE/sagwright-intake-ba7816bf8f01cfea.js"),
            "{text}"
        );
        assert!(text.contains(ABC), "{text}");
        assert!(snippet(&Site::default()).is_err());
    }

    #[test]
    fn the_invented_page_is_filled_and_kept_strictly() {
        let root = Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/../.."));
        let mut site = site();
        let served =
            host_page(root, &mut site, "http://127.0.0.1:1/").expect("it is among the sources");
        assert!(site.0.contains_key(DOCUMENT));
        let page = String::from_utf8(served.files["index.html"].raw.clone()).expect("text");
        assert!(!page.contains("{{") && page.contains(ABC), "{page}");
        let policy = (served.headers)("index.html")[0].1.clone();
        assert!(policy.contains("frame-src http://127.0.0.1:1;"), "{policy}");
        assert!(!policy.contains("unsafe"), "{policy}");
    }
}
