//! Each file compressed once, for the sizes printed and for the bytes served.

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::io::Write as _;
use std::thread;

use crate::names::reached;
use crate::offline::WORKER;
use crate::program::{FIRST_PAGE, starts_advice};
use crate::site::{HEADERS_FILE, Site};
use crate::trouble::Trouble;
use crate::words::{is_table, is_table_of_questions};

/// A file as it is, and as a host would send it.
#[derive(Debug, Clone)]
pub struct Packed {
    /// The file itself.
    pub raw: Vec<u8>,
    /// By gzip (RFC 1952).
    pub gzip: Vec<u8>,
    /// By Brotli (RFC 7932).
    pub brotli: Vec<u8>,
}

/// How hard to compress.
#[derive(Debug, Clone, Copy)]
pub enum Effort {
    /// As a host would once, for the sizes a visitor meets: seconds.
    Strongest,
    /// Enough for the way across this machine: a moment.
    Quick,
}

impl Effort {
    /// The level of gzip, 0 to 9, and the quality of Brotli, 0 to 11.
    fn levels(self) -> (u32, i32) {
        match self {
            Self::Strongest => (9, 11),
            Self::Quick => (1, 2),
        }
    }
}

impl Packed {
    fn new(raw: Vec<u8>, effort: Effort) -> Self {
        let (level, quality) = effort.levels();
        let mut gzip = flate2::write::GzEncoder::new(Vec::new(), flate2::Compression::new(level));
        let gzip = gzip.write_all(&raw).and_then(|()| gzip.finish());
        let parameters = brotli::enc::BrotliEncoderParams {
            quality,
            ..Default::default()
        };
        let mut packed = Vec::new();
        let brotli = brotli::BrotliCompress(&mut raw.as_slice(), &mut packed, &parameters);
        Self {
            gzip: gzip.expect("writing to memory does not fail"),
            brotli: brotli
                .map(|_| packed)
                .expect("writing to memory does not fail"),
            raw,
        }
    }
}

/// Compresses every file of a site that browsers load, on all cores.
pub fn pack(site: Site, effort: Effort) -> BTreeMap<String, Packed> {
    thread::scope(|scope| {
        let files = site.0.into_iter().filter(|(name, _)| name != HEADERS_FILE);
        let work: Vec<_> = files
            .map(|(name, raw)| (name, scope.spawn(move || Packed::new(raw, effort))))
            .collect();
        work.into_iter()
            .map(|(name, thread)| (name, thread.join().expect("compressing does not panic")))
            .collect()
    })
}

/// When a rider's browser loads a file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum When {
    /// Whoever opens the page, so that the first question can be answered.
    First,
    /// Once the rider has begun, so that the advice comes quickly, and without a signal.
    After,
    /// On the first visit not at all.
    Never,
}

/// When each file is loaded: the page and what it names, and so on; then the advice's program and the service worker. Of the
/// languages none is loaded but the one that is spoken, and English is part of the programs.
fn first_visit(files: &BTreeMap<String, Packed>) -> BTreeMap<&str, When> {
    let contents = files.iter();
    let contents = contents.map(|(name, file)| (name.as_str(), file.raw.as_slice()));
    let contents: BTreeMap<&str, &[u8]> = contents.filter(|(name, _)| !is_table(name)).collect();
    let mut at_once = contents.clone();
    at_once.retain(|name, _| !starts_advice(name));
    // The icons that the manifest names are asked for by whoever installs the site.
    for (name, content) in &mut at_once {
        if name.ends_with(".webmanifest") {
            *content = &[];
        }
    }
    let first = reached(&at_once, [FIRST_PAGE]);
    let whole = reached(&contents, [FIRST_PAGE, WORKER]);
    let names = files.keys().map(String::as_str);
    let when = |name: &str| match name {
        name if first.contains(name) => When::First,
        name if whole.contains(name) => When::After,
        _ => When::Never,
    };
    names.map(|name| (name, when(name))).collect()
}

/// What a first visit may download, compressed with brotli, bytes: a little more than it does. Whatever is added to it by
/// mistake then breaks the build that keeps to the budget.
const BUDGET: Visit = Visit {
    first: 236_000,
    translated: 250_000,
    whole: 949_500,
};

/// What a rider's browser downloads on the first visit, compressed with brotli, bytes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Visit {
    /// Until the rider begins: all that a visit downloads which only looks, and all that the first question needs.
    pub first: usize,
    /// The same in the language that has most to download: English is part of the program, the others come on top.
    pub translated: usize,
    /// In English, with what comes once they have begun.
    pub whole: usize,
}

impl Visit {
    /// Refuses a visit that downloads more than it may.
    pub fn keeps_to_budget(self) -> Result<(), Trouble> {
        let kept = [
            (self.first, BUDGET.first),
            (self.translated, BUDGET.translated),
            (self.whole, BUDGET.whole),
        ];
        if kept.iter().all(|(now, most)| now <= most) {
            return Ok(());
        }
        Err(Trouble::new(
            format!(
                "The first visit downloads {} bytes before the rider begins, {} in another language, and {} with what comes \
                 then; {}, {} and {} are allowed.",
                self.first,
                self.translated,
                self.whole,
                BUDGET.first,
                BUDGET.translated,
                BUDGET.whole
            ),
            "Look in the table above for what grew. What only the advice uses must not be called from the questions' \
             program. A build with other settings than the profile's own is always too large.",
        ))
    }
}

/// A table of the sizes of every file, in bytes, of what comes before the rider begins, and with what comes then; and that
/// visit.
pub fn sizes(files: &BTreeMap<String, Packed>) -> (String, Visit) {
    let when = first_visit(files);
    let mut table = format!("{:>10} {:>10} {:>10}  file\n", "bytes", "gzip", "brotli");
    let mut row = |sizes: [usize; 3], name: &str| {
        // Writing to a String cannot fail.
        let _ = writeln!(
            table,
            "{:>10} {:>10} {:>10}  {name}",
            sizes[0], sizes[1], sizes[2]
        );
    };
    let (mut first, mut whole) = ([0; 3], [0; 3]);
    let add = |total: &mut [usize; 3], sizes: [usize; 3]| {
        *total = [0, 1, 2].map(|i| total[i] + sizes[i]);
    };
    let of = |file: &Packed| [file.raw.len(), file.gzip.len(), file.brotli.len()];
    for (name, file) in files {
        let sizes = of(file);
        match when.get(name.as_str()) {
            Some(When::First) => {
                add(&mut first, sizes);
                add(&mut whole, sizes);
                row(sizes, name);
            }
            Some(When::After) => {
                add(&mut whole, sizes);
                row(sizes, &format!("{name} (once the rider begins)"));
            }
            _ => row(sizes, &format!("{name} (not on the first visit)")),
        }
    }
    row(first, "the first visit, until the rider begins");
    let tables = files.iter().filter(|(name, _)| is_table_of_questions(name));
    let longest = tables
        .map(|(_, file)| of(file))
        .max_by_key(|sizes| sizes[2]);
    let mut translated = first;
    add(&mut translated, longest.unwrap_or_default());
    row(translated, "the same in the language with most to download");
    row(
        whole,
        "in English with the advice and what the device keeps, once they have begun",
    );
    let visit = Visit {
        first: first[2],
        translated: translated[2],
        whole: whole[2],
    };
    (table, visit)
}

#[cfg(test)]
mod tests {
    use std::io::Read as _;

    use super::*;

    fn packed(files: &[(&str, &str)]) -> BTreeMap<String, Packed> {
        let owned = |(name, text): &(&str, &str)| ((*name).to_owned(), text.as_bytes().to_vec());
        pack(Site(files.iter().map(owned).collect()), Effort::Strongest)
    }

    #[test]
    fn packed_files_unpack_to_themselves() {
        let text = "abc ".repeat(1000);
        let file = Packed::new(text.clone().into_bytes(), Effort::Strongest);
        assert!(file.brotli.len() < file.gzip.len() && file.gzip.len() < file.raw.len());
        let mut back = String::new();
        flate2::read::GzDecoder::new(file.gzip.as_slice())
            .read_to_string(&mut back)
            .expect("it was just packed");
        assert_eq!(back, text);
        back.clear();
        brotli::Decompressor::new(file.brotli.as_slice(), 4096)
            .read_to_string(&mut back)
            .expect("it was just packed");
        assert_eq!(back, text);
    }

    #[test]
    fn a_quick_effort_still_packs() {
        let raw = (0..20_000_u32)
            .flat_map(|i| (i / 7).to_le_bytes())
            .collect::<Vec<u8>>();
        let quick = Packed::new(raw.clone(), Effort::Quick);
        let strongest = Packed::new(raw, Effort::Strongest);
        assert!(strongest.brotli.len() <= quick.brotli.len());
        assert!(quick.brotli.len() < quick.raw.len() / 2);
    }

    #[test]
    fn the_first_visit_follows_names_and_leaves_the_rest() {
        let files = packed(&[
            ("_headers", "a.css later.png"),
            ("a.css", "dot.svg"),
            ("advice-boot-1.js", "advice.js"),
            ("advice.js", "js"),
            ("dot.svg", "<svg/>"),
            ("index.html", "a.css advice-boot-1.js b.webmanifest"),
            ("b.webmanifest", "big.png"),
            ("big.png", "png"),
            ("later.png", "png"),
            ("sw.js", "index.html advice-boot-1.js advice.js"),
            ("words-de-1.json", "kurz"),
            (
                "words-de-advice-2.json",
                "lang, und noch länger, und noch viel länger",
            ),
        ]);
        let expected = BTreeMap::from([
            ("a.css", When::First),
            ("advice-boot-1.js", When::After),
            ("advice.js", When::After),
            ("b.webmanifest", When::First),
            ("big.png", When::After),
            ("dot.svg", When::First),
            ("index.html", When::First),
            ("later.png", When::Never),
            ("sw.js", When::After),
            ("words-de-1.json", When::Never),
            ("words-de-advice-2.json", When::Never),
        ]);
        assert_eq!(first_visit(&files), expected);
        let (table, visit) = sizes(&files);
        assert!(table.contains("later.png (not on the first visit)"));
        assert!(!table.contains("_headers"), "no browser loads it");
        assert!(0 < visit.first && visit.first < visit.whole);
        assert_eq!(
            visit.translated,
            visit.first + files["words-de-1.json"].brotli.len()
        );
    }

    #[test]
    fn a_visit_over_its_budget_is_refused_with_all_figures() {
        assert_eq!(BUDGET.keeps_to_budget(), Ok(()));
        for over in [[1, 0, 0], [0, 1, 0], [0, 0, 1]] {
            let visit = Visit {
                first: BUDGET.first + over[0],
                translated: BUDGET.translated + over[1],
                whole: BUDGET.whole + over[2],
            };
            let told = visit.keeps_to_budget().expect_err("it is over").to_string();
            for figure in [visit.first, visit.translated, visit.whole] {
                assert!(told.contains(&figure.to_string()), "{told}");
            }
        }
    }
}
