//! Which documents a batch is about, and where the advice for each goes.

use std::collections::BTreeSet;
use std::ffi::OsStr;
use std::fs;
use std::path::{Path, PathBuf};

use crate::trouble::Trouble;

/// The name of the table beside the advice.
pub const TABLE: &str = "summary.csv";

/// A document, and the name of the file that its advice goes to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Found {
    /// Where it is.
    pub path: PathBuf,
    /// The file of its advice, in the folder of the batch.
    pub advice: String,
}

/// The documents named and those in folders named, each once, in the order named and by name within a folder. A file that
/// is not there is still one of them, so that it is told with the others what became of it.
///
/// # Errors
/// A folder that cannot be listed, or advice that would be written over a document.
pub fn documents(
    inputs: &[PathBuf],
    workshop: Option<&Path>,
    into: &Path,
) -> Result<Vec<Found>, Trouble> {
    let mut paths = Vec::new();
    for input in inputs {
        if input.is_dir() {
            paths.extend(in_folder(input)?);
        } else {
            paths.push(input.clone());
        }
    }
    let mut seen: BTreeSet<PathBuf> = workshop.map(whole).into_iter().collect();
    paths.retain(|path| seen.insert(whole(path)));
    let found = named(paths);
    // Both by the folder's whole path: the files of advice are not there yet.
    let folder = whole(into);
    let written = found.iter().map(|one| one.advice.as_str()).chain([TABLE]);
    for name in written {
        if seen.contains(&folder.join(name)) {
            return Err(Trouble::new(
                format!("{} would be written over.", into.join(name).display()),
                "Name another folder with --into.",
            ));
        }
    }
    Ok(found)
}

/// The same path however it was named; as named where there is nothing.
fn whole(path: &Path) -> PathBuf {
    path.canonicalize().unwrap_or_else(|_| path.to_owned())
}

fn in_folder(folder: &Path) -> Result<Vec<PathBuf>, Trouble> {
    let list = |error| Trouble::file("Listing", folder, &error);
    let mut paths = Vec::new();
    for entry in fs::read_dir(folder).map_err(list)? {
        let path = entry.map_err(list)?.path();
        let json = path
            .extension()
            .is_some_and(|end| end.eq_ignore_ascii_case("json"));
        if json && path.is_file() {
            paths.push(path);
        }
    }
    paths.sort();
    Ok(paths)
}

/// A name for the advice of each: that of its document, with a number where two folders hold the same.
fn named(paths: Vec<PathBuf>) -> Vec<Found> {
    let mut taken = BTreeSet::new();
    let name = |path: PathBuf| {
        let stem = path
            .file_stem()
            .map_or("rider".into(), OsStr::to_string_lossy);
        let names = (1..).map(|number| match number {
            1 => format!("{stem}.advice.json"),
            _ => format!("{stem}-{number}.advice.json"),
        });
        // Some file systems take `A` and `a` for one name.
        let mut free = names.skip_while(|name| !taken.insert(name.to_lowercase()));
        let advice = free.next().unwrap_or_default();
        Found { path, advice }
    };
    paths.into_iter().map(name).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn documents_of_one_name_get_advice_of_their_own() {
        let paths = [
            "a/x.json",
            "b/x.json",
            "b/X.json",
            "c/x-2.json",
            "/dev/stdin",
        ];
        let found = named(paths.map(PathBuf::from).to_vec());
        let names: Vec<&str> = found.iter().map(|one| one.advice.as_str()).collect();
        let expected = [
            "x.advice.json",
            "x-2.advice.json",
            "X-3.advice.json",
            "x-2-2.advice.json",
            "stdin.advice.json",
        ];
        assert_eq!(names, expected);
    }
}
