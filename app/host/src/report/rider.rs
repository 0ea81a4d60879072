//! One rider of a batch: from the document to the file with the advice.

use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

use sagwright_core::advice::advise;
use sagwright_core::intake::{LARGEST_DOCUMENT, read};
use serde_json::Value;
use tempfile::NamedTempFile;

use super::find::Found;
use super::{Shared, table};
use crate::trouble::Trouble;

/// What became of a document.
#[derive(Debug)]
pub enum Outcome {
    /// Its advice is written; these are its cells in the table.
    Advised(Vec<String>),
    /// It cannot be used, with a line for each thing that is wrong in it.
    Skipped(Vec<String>),
}

/// Reads a document, works out its advice with rides, and writes it.
///
/// # Errors
/// Advice that cannot be written: then the rest could not be either.
pub fn advised(document: &Found, shared: &Shared, into: &Path) -> Result<Outcome, Trouble> {
    let json = match text_at(&document.path) {
        Ok(json) => json,
        Err(problem) => return Ok(Outcome::Skipped(vec![problem])),
    };
    let advice = match read(&json).and_then(|intake| advise(&intake, &shared.options)) {
        Ok(advice) => advice,
        Err(error) => {
            let problems = error.lines(&shared.book, &shared.units);
            return Ok(Outcome::Skipped(problems));
        }
    };
    let path = into.join(&document.advice);
    let failed = |error: io::Error| Trouble::file("Writing", &path, &error);
    let mut told = serde_json::to_value(&advice).map_err(|error| failed(error.into()))?;
    shared.book.spell_out(&mut told, &shared.units);
    whole_file(into, &path, &told).map_err(failed)?;
    Ok(Outcome::Advised(table::cells(&advice, shared)))
}

/// The text of a document, or why there is none. No more of it is read than a document may have.
pub fn text_at(path: &Path) -> Result<String, String> {
    let unread = |error: io::Error| {
        format!("It cannot be read: {error}. Check its name and who may read it.")
    };
    // One byte more shows that it is too large, which the reader then says.
    let most = LARGEST_DOCUMENT as u64 + 1;
    let mut bytes = Vec::new();
    let file = File::open(path).map_err(unread)?;
    file.take(most).read_to_end(&mut bytes).map_err(unread)?;
    // The cut may fall within a letter; what is cut is refused for its length.
    if bytes.len() > LARGEST_DOCUMENT {
        return Ok(String::from_utf8_lossy(&bytes).into_owned());
    }
    String::from_utf8(bytes)
        .map_err(|_| "It is not text in UTF-8. Save it again as UTF-8.".to_owned())
}

/// Writes all of it or nothing, so that a run cut off leaves no half advice.
fn whole_file(folder: &Path, path: &Path, told: &Value) -> io::Result<()> {
    let mut file = NamedTempFile::new_in(folder)?;
    serde_json::to_writer_pretty(io::BufWriter::new(&mut file), told)?;
    keep(file, path)
}

/// Gives a file that is whole its name.
pub fn keep(file: NamedTempFile, path: &Path) -> io::Result<()> {
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt as _;
        // A temporary file is its owner's alone; advice is as any other file.
        file.as_file()
            .set_permissions(std::fs::Permissions::from_mode(0o644))?;
    }
    file.persist(path).map_err(|error| error.error)?;
    Ok(())
}
