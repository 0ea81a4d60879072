//! The advice for many riders at once: documents in, one advice a document and one table for all of them out.
//!
//! One bad document stops no other: it is named with what is wrong in it, and counted.

mod find;
mod rider;
mod table;

use std::fs;
use std::num::NonZeroUsize;
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::time::Instant;

use clap::Args;
use indicatif::{ParallelProgressIterator, ProgressBar, ProgressStyle};
use rayon::ThreadPoolBuilder;
use rayon::iter::{IntoParallelRefIterator, ParallelIterator};
use sagwright_core::advice::Options;
use sagwright_core::words::{Book, UnitChoice};
use sagwright_core::workshop::{self, Workshop};

use crate::trouble::Trouble;
use find::Found;
use rider::{Outcome, advised};

/// What the program ends with when documents were skipped; 1 is what it ends with when it could not begin or go on.
const SOME_SKIPPED: u8 = 3;

/// What is asked of a batch.
#[derive(Debug, Args)]
pub struct Batch {
    /// Riders' documents, and folders of them: every .json file directly in a folder is one.
    #[arg(required = true, value_name = "FILE")]
    inputs: Vec<PathBuf>,
    /// The folder to write into; it is made where there is none.
    #[arg(long, default_value = "advice", value_name = "FOLDER")]
    into: PathBuf,
    /// A workshop's document, whose prices are then used.
    #[arg(long, value_name = "FILE")]
    workshop: Option<PathBuf>,
    /// How many riders at once [default: as many as the machine has cores].
    #[arg(long, value_name = "NUMBER")]
    jobs: Option<NonZeroUsize>,
}

/// What all riders of a batch share.
struct Shared {
    book: Book,
    units: UnitChoice,
    options: Options,
}

/// Writes the advice for every document and the table of them, and tells what was skipped.
pub fn report(batch: &Batch) -> Result<ExitCode, Trouble> {
    let (book, units) = (Book::english(), UnitChoice::default());
    let prices = batch.workshop.as_deref();
    let options = Options {
        workshop: prices
            .map(|path| workshop_at(path, &book, &units))
            .transpose()?,
    };
    let found = find::documents(&batch.inputs, prices, &batch.into)?;
    if found.is_empty() {
        return Err(Trouble::new(
            "There is no document to advise on.",
            "Name riders' files, or a folder that has .json files in it.",
        ));
    }
    let make = |error| Trouble::file("Making", &batch.into, &error);
    fs::create_dir_all(&batch.into).map_err(make)?;
    let shared = Shared {
        book,
        units,
        options,
    };
    let start = Instant::now();
    let outcomes = all(&found, &shared, batch)?;
    let took = start.elapsed().as_secs_f64();
    table::write(&batch.into, &found, &outcomes, &shared.units)?;
    Ok(told(&found, &outcomes, &batch.into, took))
}

fn workshop_at(path: &Path, book: &Book, units: &UnitChoice) -> Result<Workshop, Trouble> {
    let refused = |problems: Vec<String>| {
        Trouble::new(
            format!("{} cannot be used: {}", path.display(), problems.join(" ")),
            "Put the workshop's document right, or leave --workshop out.",
        )
    };
    let json = rider::text_at(path).map_err(|problem| refused(vec![problem]))?;
    workshop::read(&json).map_err(|error| refused(error.lines(book, units)))
}

/// Advises on all of them, several at once, and shows how far it has come.
fn all(found: &[Found], shared: &Shared, batch: &Batch) -> Result<Vec<Outcome>, Trouble> {
    let pool = ThreadPoolBuilder::new()
        .num_threads(batch.jobs.map_or(0, NonZeroUsize::get))
        .build()
        .map_err(|error| {
            Trouble::new(
                format!("The machine gave no threads to work with: {error}."),
                "Ask for fewer with --jobs.",
            )
        })?;
    // Nothing is drawn where standard error is no screen.
    let bar = ProgressBar::new(found.len() as u64).with_style(
        ProgressStyle::with_template("{bar:30} {pos} of {len}, {per_sec}, {eta} left {msg}")
            .unwrap_or_else(|_| ProgressStyle::default_bar()),
    );
    let one = |document: &Found| {
        let outcome = advised(document, shared, &batch.into)?;
        if let Outcome::Skipped(problems) = &outcome {
            bar.suspend(|| name(document, problems));
        }
        Ok(outcome)
    };
    let outcomes = pool.install(|| {
        found
            .par_iter()
            .progress_with(bar.clone())
            .map(one)
            .collect()
    });
    bar.finish_and_clear();
    outcomes
}

/// Names a document that was skipped, with a line for each thing that is wrong in it.
fn name(document: &Found, problems: &[String]) {
    for problem in problems {
        eprintln!("{}: {problem}", document.path.display());
    }
}

fn told(found: &[Found], outcomes: &[Outcome], into: &Path, took: f64) -> ExitCode {
    let skipped = outcomes
        .iter()
        .filter(|outcome| matches!(outcome, Outcome::Skipped(_)))
        .count();
    #[expect(
        clippy::cast_precision_loss,
        reason = "nobody has 2^53 documents in a folder"
    )]
    let rate = found.len() as f64 / took;
    println!(
        "{} of {} advised on in {took:.1} s, {rate:.2} a second. Advice and {} are in {}.",
        found.len() - skipped,
        found.len(),
        find::TABLE,
        into.display()
    );
    if skipped == 0 {
        return ExitCode::SUCCESS;
    }
    println!("{skipped} skipped; the lines above and the table say why.");
    ExitCode::from(SOME_SKIPPED)
}
