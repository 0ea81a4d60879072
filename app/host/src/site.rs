//! The site as a set of files: put together from the sources, written to `dist/`, read back.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use wasm_bindgen_cli_support::Bindgen;

use crate::headers::headers_file;
use crate::icons::{ICONS, to_png};
use crate::names::{Names, fingerprint, hashed_name, kind};
use crate::offline::{WORKER, service_worker};
use crate::program::{PROGRAMS, Program, boot_name, boot_script};
use crate::trouble::Trouble;
use crate::words;

/// Told to the host that publishes the site; not part of the site itself.
pub const HEADERS_FILE: &str = "_headers";
/// The folder of the icons and of what installing the site asks for.
const STATIC: &str = "static";
/// The folder of the style sheets.
const STYLES: &str = "styles";
/// Kinds of file that may name other files, and so get their names last.
const NAMING: [&str; 2] = ["css", "webmanifest"];

/// Every file of the site: its name, with `/` between folders, and its content.
#[derive(Debug, Default, PartialEq, Eq)]
pub struct Site(pub BTreeMap<String, Vec<u8>>);

impl Site {
    /// Puts the site together from the sources below `root` and the compiled programs, in the order of [`PROGRAMS`];
    /// `framed_by` are the origins whose pages may frame it.
    pub fn assemble(root: &Path, wasm: &[PathBuf], framed_by: &[String]) -> Result<Self, Trouble> {
        let mut site = Self::default();
        let mut names = Names::default();
        for (program, wasm) in PROGRAMS.into_iter().zip(wasm) {
            site.add_program(program, wasm, &mut names)?;
        }
        site.add_icons(root, &mut names)?;
        for (part, sentences) in words::languages(root)? {
            let file = format!("{}-{part}.json", words::STEM);
            let published = hashed_name(&file, &fingerprint([sentences.as_slice()]));
            names.insert(
                &format!("{}/{part}.json", words::STEM),
                &published,
                &sentences,
            );
            site.0.insert(published, sentences);
        }
        for (key, sentence) in words::english(root)? {
            names.say(&key, &sentence);
        }
        site.add_folder(root, STATIC, &mut names)?;
        site.add_styles(root, &mut names)?;
        for program in PROGRAMS {
            let script = boot_script(program);
            site.add_text(&boot_name(program), &script, &mut names)?;
        }
        site.add_pages(root, &names)?;
        let worker = service_worker(&site.0)?;
        site.0.insert(WORKER.to_owned(), worker);
        let headers = headers_file(site.0.keys().map(String::as_str), framed_by);
        site.0.insert(HEADERS_FILE.to_owned(), headers.into_bytes());
        Ok(site)
    }

    /// Adds the page of every program that has one.
    fn add_pages(&mut self, root: &Path, names: &Names) -> Result<(), Trouble> {
        for page in PROGRAMS.iter().filter_map(|program| program.page) {
            let filled = names.fill(page, &read_text(&root.join(page))?)?;
            self.0.insert(page.to_owned(), filled.into_bytes());
        }
        Ok(())
    }

    /// Adds the style sheets of every program as one file; between them they have to use every one.
    fn add_styles(&mut self, root: &Path, names: &mut Names) -> Result<(), Trouble> {
        for program in PROGRAMS {
            let mut all = String::new();
            for style in program.styles {
                all.push_str(&read_text(&root.join(format!("{STYLES}/{style}.css")))?);
            }
            self.add_text(&format!("{}.css", program.name), &all, names)?;
        }
        for style in sources(root, STYLES)? {
            let used = |program: &Program| {
                let mut sheets = program.styles.iter();
                sheets.any(|sheet| style == format!("{STYLES}/{sheet}.css"))
            };
            if !PROGRAMS.iter().any(used) {
                return Err(Trouble::new(
                    format!("{style} is no program's, so no browser would load it."),
                    "Name it in app/host/src/program.rs, or remove the file.",
                ));
            }
        }
        Ok(())
    }

    /// Turns cargo's output into the module and the WebAssembly file a browser loads.
    ///
    /// The two share one fingerprint: a module works only with the very file it was made with.
    fn add_program(
        &mut self,
        program: Program,
        wasm: &Path,
        names: &mut Names,
    ) -> Result<(), Trouble> {
        let (glue_file, wasm_file) = (
            format!("{}.js", program.name),
            format!("{}_bg.wasm", program.name),
        );
        let trouble = |error: &dyn std::fmt::Display| {
            Trouble::new(
                format!(
                    "Making the browser's module from {} failed: {error}.",
                    wasm.display()
                ),
                "If it speaks of versions, wasm-bindgen and wasm-bindgen-cli-support in Cargo.toml must be the same.",
            )
        };
        let folder = tempfile::tempdir().map_err(|error| trouble(&error))?;
        let mut bindgen = Bindgen::new();
        bindgen
            .input_path(wasm)
            .out_name(program.name)
            .web(true)
            .map_err(|error| trouble(&format!("{error:#}")))?
            // Without the default path, `init()` needs an argument and a worker's loader has none to give.
            .omit_default_module_path(false)
            .remove_name_section(true)
            .remove_producers_section(true)
            .typescript(false)
            .generate(folder.path())
            .map_err(|error| trouble(&format!("{error:#}")))?;

        let mut made = BTreeMap::new();
        collect(folder.path(), "", &mut made)?;
        let (Some(wasm_bytes), Some(glue)) = (made.remove(&wasm_file), made.remove(&glue_file))
        else {
            return Err(trouble(&format!(
                "it wrote no {glue_file} or no {wasm_file}"
            )));
        };
        let glue = String::from_utf8(glue).map_err(|error| trouble(&error))?;
        let print = fingerprint([glue.as_bytes(), &wasm_bytes]);
        let wasm_name = format!("{}-{print}_bg.wasm", program.name);
        let glue_name = hashed_name(&glue_file, &print);
        if glue.matches(&wasm_file).count() != 1 {
            return Err(trouble(&format!(
                "{glue_file} does not name {wasm_file} exactly once"
            )));
        }
        let glue = glue.replace(&wasm_file, &wasm_name).into_bytes();
        names.insert(&format!("{}.wasm", program.name), &wasm_name, &wasm_bytes);
        names.insert(&glue_file, &glue_name, &glue);
        self.0.insert(wasm_name, wasm_bytes);
        self.0.insert(glue_name, glue);
        // What remains are scripts that some crate brings; the module imports them by these names.
        self.0.append(&mut made);
        Ok(())
    }

    /// Draws the icons; each is known as, say, `static/icon-192.png`.
    fn add_icons(&mut self, root: &Path, names: &mut Names) -> Result<(), Trouble> {
        for (drawing, width) in ICONS {
            let source = format!("{STATIC}/{drawing}.svg");
            let png = to_png(&source, &read(&root.join(&source))?, width)?;
            self.add(&format!("{STATIC}/{drawing}-{width}.png"), png, names);
        }
        Ok(())
    }

    /// Adds the files of one folder under names with a fingerprint; some kinds may name the others.
    fn add_folder(&mut self, root: &Path, folder: &str, names: &mut Names) -> Result<(), Trouble> {
        let (naming, others): (Vec<_>, Vec<_>) = sources(root, folder)?
            .into_iter()
            .partition(|source| kind(source).is_some_and(|kind| NAMING.contains(&kind)));
        for source in others {
            let content = read(&root.join(&source))?;
            self.add(&source, content, names);
        }
        for source in naming {
            let text = read_text(&root.join(&source))?;
            self.add_text(&source, &text, names)?;
        }
        Ok(())
    }

    fn add_text(&mut self, source: &str, text: &str, names: &mut Names) -> Result<(), Trouble> {
        let filled = names.fill(source, text)?;
        self.add(source, filled.into_bytes(), names);
        Ok(())
    }

    fn add(&mut self, source: &str, content: Vec<u8>, names: &mut Names) {
        let file = source.rsplit('/').next().unwrap_or(source);
        let published = hashed_name(file, &fingerprint([content.as_slice()]));
        names.insert(source, &published, &content);
        self.0.insert(published, content);
    }

    /// Writes the site to `dist`, replacing what was there only once everything is written.
    pub fn write(&self, dist: &Path) -> Result<(), Trouble> {
        let next = dist.with_extension(format!("next-{}", std::process::id()));
        let written = self.write_files(&next).and_then(|()| {
            if dist.exists() {
                fs::remove_dir_all(dist)
                    .map_err(|error| Trouble::file("Removing", dist, &error))?;
            }
            fs::rename(&next, dist).map_err(|error| Trouble::file("Making", dist, &error))
        });
        if written.is_err() {
            // The first trouble is the one to report; a leftover folder is harmless.
            let _ = fs::remove_dir_all(&next);
        }
        written
    }

    fn write_files(&self, folder: &Path) -> Result<(), Trouble> {
        for (name, content) in &self.0 {
            let path = folder.join(name);
            let parent = path.parent().unwrap_or(folder);
            fs::create_dir_all(parent).map_err(|error| Trouble::file("Making", parent, &error))?;
            fs::write(&path, content).map_err(|error| Trouble::file("Writing", &path, &error))?;
        }
        Ok(())
    }

    /// Reads a site written before.
    pub fn read(dist: &Path) -> Result<Self, Trouble> {
        if !dist.join("index.html").is_file() {
            return Err(Trouble::new(
                format!("There is no site in {}.", dist.display()),
                "Run `cargo run -- build` first.",
            ));
        }
        let mut site = Self::default();
        collect(dist, "", &mut site.0)?;
        Ok(site)
    }
}

/// The paths, from the root, of the files in one folder, sorted; none where there is no such folder.
fn sources(root: &Path, folder: &str) -> Result<Vec<String>, Trouble> {
    let mut files = BTreeMap::new();
    if root.join(folder).is_dir() {
        collect(&root.join(folder), &format!("{folder}/"), &mut files)?;
    }
    Ok(files.into_keys().collect())
}

/// Reads every file below a folder, under its path from there with `prefix` before it.
fn collect(
    folder: &Path,
    prefix: &str,
    files: &mut BTreeMap<String, Vec<u8>>,
) -> Result<(), Trouble> {
    let entries = fs::read_dir(folder).map_err(|error| Trouble::file("Reading", folder, &error))?;
    for entry in entries {
        let path = entry
            .map_err(|error| Trouble::file("Reading", folder, &error))?
            .path();
        let Some(name) = path.file_name().and_then(|name| name.to_str()) else {
            return Err(Trouble::new(
                format!("{} has a name that is not Unicode.", path.display()),
                "Rename it.",
            ));
        };
        if name.starts_with('.') {
            continue;
        }
        if path.is_dir() {
            collect(&path, &format!("{prefix}{name}/"), files)?;
        } else {
            files.insert(format!("{prefix}{name}"), read(&path)?);
        }
    }
    Ok(())
}

fn read(path: &Path) -> Result<Vec<u8>, Trouble> {
    fs::read(path).map_err(|error| Trouble::file("Reading", path, &error))
}

fn read_text(path: &Path) -> Result<String, Trouble> {
    fs::read_to_string(path).map_err(|error| Trouble::file("Reading", path, &error))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn site(files: &[(&str, &str)]) -> Site {
        let owned = |(name, text): &(&str, &str)| ((*name).to_owned(), text.as_bytes().to_vec());
        Site(files.iter().map(owned).collect())
    }

    #[test]
    fn a_site_written_twice_holds_only_the_second() {
        let folder = tempfile::tempdir().expect("a temporary folder can be made");
        let dist = folder.path().join("dist");
        let first = site(&[("index.html", "old"), ("gone.css", "x")]);
        let second = site(&[("index.html", "new"), ("snippets/a/b.js", "y")]);
        first.write(&dist).expect("an empty place takes a site");
        second.write(&dist).expect("an old site is replaced");
        assert_eq!(Site::read(&dist), Ok(second));
        let left = fs::read_dir(folder.path()).expect("it was just made");
        assert_eq!(left.count(), 1, "nothing but dist is left behind");
    }

    #[test]
    fn an_empty_folder_is_not_served_as_a_site() {
        let folder = tempfile::tempdir().expect("a temporary folder can be made");
        let trouble = Site::read(folder.path()).expect_err("there is nothing in it");
        assert!(trouble.to_string().contains("cargo run -- build"));
    }

    #[test]
    fn a_style_sheet_can_name_a_picture_and_changes_its_name_with_it() {
        let folder = tempfile::tempdir().expect("a temporary folder can be made");
        let styles = folder.path().join("styles");
        fs::create_dir(&styles).expect("a folder can be made");
        let publish = |picture: &str| {
            fs::write(styles.join("dot.svg"), picture).expect("a file can be written");
            fs::write(
                styles.join("a.css"),
                "b{background:url({{name styles/dot.svg}})}",
            )
            .expect("a file can be written");
            let (mut site, mut names) = (Site::default(), Names::default());
            site.add_folder(folder.path(), "styles", &mut names)
                .expect("both files are there");
            site
        };
        let (one, other) = (publish("<svg/>"), publish("<svg></svg>"));
        assert_eq!(one.0.len(), 2);
        assert!(one.0.keys().all(|name| !other.0.contains_key(name)));
    }
}
