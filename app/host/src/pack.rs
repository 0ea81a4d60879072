//! Each file compressed once, for the sizes printed and for the bytes served.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;
use std::io::Write as _;
use std::thread;

use crate::names::reached;
use crate::offline::WORKER;
use crate::program::FIRST_PAGE;
use crate::site::{HEADERS_FILE, Site};
use crate::words::is_table;

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

/// The files a rider's browser loads on the first visit: the page and the service worker, what they name, and so on. Of the
/// languages none is loaded but the one that is spoken, and English is part of the program.
fn first_visit(files: &BTreeMap<String, Packed>) -> BTreeSet<&str> {
    let contents = files.iter();
    let contents = contents.map(|(name, file)| (name.as_str(), file.raw.as_slice()));
    let mut first = reached(&contents.collect(), [FIRST_PAGE, WORKER]);
    first.retain(|name| !is_table(name));
    first
}

/// A table of the sizes of every file, in bytes, and of the whole first visit.
pub fn sizes(files: &BTreeMap<String, Packed>) -> String {
    let first = first_visit(files);
    let mut table = format!("{:>10} {:>10} {:>10}  file\n", "bytes", "gzip", "brotli");
    let mut row = |sizes: [usize; 3], name: &str| {
        // Writing to a String cannot fail.
        let _ = writeln!(
            table,
            "{:>10} {:>10} {:>10}  {name}",
            sizes[0], sizes[1], sizes[2]
        );
    };
    let mut total = [0; 3];
    for (name, file) in files {
        let sizes = [file.raw.len(), file.gzip.len(), file.brotli.len()];
        if first.contains(name.as_str()) {
            total = [0, 1, 2].map(|i| total[i] + sizes[i]);
            row(sizes, name);
        } else {
            row(sizes, &format!("{name} (not on the first visit)"));
        }
    }
    row(total, "the whole first visit");
    table
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
            ("dot.svg", "<svg/>"),
            ("index.html", "a.css"),
            ("kept.js", "js"),
            ("later.png", "png"),
            ("sw.js", "index.html kept.js"),
        ]);
        let expected = BTreeSet::from(["a.css", "dot.svg", "index.html", "kept.js", "sw.js"]);
        assert_eq!(first_visit(&files), expected);
        let table = sizes(&files);
        assert!(table.contains("later.png (not on the first visit)"));
        assert!(!table.contains("_headers"), "no browser loads it");
    }
}
