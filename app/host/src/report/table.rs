//! The table of a batch: a row per document, in the order they were found, for a spreadsheet or a script.

use std::io;
use std::path::Path;

use sagwright_core::advice::{Advice, SettingId};
use sagwright_core::words::{UnitChoice, number, plain_cell};
use tempfile::NamedTempFile;

use super::Shared;
use super::find::{Found, TABLE};
use super::rider::{Outcome, keep};
use crate::trouble::Trouble;

/// The columns before the settings that tell of the document.
const FIRST: [&str; 4] = ["file", "result", "advice", "problems"];

/// The columns before the settings that tell of the advice.
const SAID: [&str; 4] = ["says", "cause", "chance", "remedy"];

/// Decimals of a chance: enough that a near certain cause is not shown as a sure one.
const CHANCE_DECIMALS: usize = 4;

/// The cells of an advice: what it says, and the settings advised as plain numbers, which a spreadsheet can sort.
pub fn cells(advice: &Advice, shared: &Shared) -> Vec<String> {
    let say = |text| shared.book.say(text, &shared.units);
    let set_up = match advice {
        Advice::StopRiding(stop) => return vec![say(&stop.sentence)],
        Advice::SetUp(set_up) => set_up,
    };
    let likeliest = set_up.causes.first();
    let leading = set_up.remedies.iter().find(|remedy| remedy.leads);
    let mut cells = vec![
        say(&set_up.sentence),
        likeliest.map_or_else(String::new, |cause| say(&cause.name)),
        likeliest.map_or_else(String::new, |cause| {
            number(cause.probability, CHANCE_DECIMALS)
        }),
        leading.map_or_else(String::new, |remedy| say(&remedy.name)),
    ];
    cells.extend(SettingId::ALL.iter().map(|id| {
        let unit = shared.units.unit(id.dimension());
        let setting = set_up.settings.iter().find(|setting| setting.id == *id);
        setting.map_or_else(String::new, |setting| {
            number(unit.from_si(setting.advised.value), unit.decimals())
        })
    }));
    cells
}

/// Writes the table, all of it or nothing.
pub fn write(
    into: &Path,
    found: &[Found],
    outcomes: &[Outcome],
    units: &UnitChoice,
) -> Result<(), Trouble> {
    let path = into.join(TABLE);
    let written = || -> Result<(), io::Error> {
        let mut file = NamedTempFile::new_in(into)?;
        rows(&mut file, found, outcomes, units)?;
        keep(file, &path)
    };
    written().map_err(|error| Trouble::file("Writing", &path, &error))
}

fn rows(
    file: impl io::Write,
    found: &[Found],
    outcomes: &[Outcome],
    units: &UnitChoice,
) -> Result<(), csv::Error> {
    let mut table = csv::Writer::from_writer(file);
    let settings = SettingId::ALL.iter().map(|id| {
        let unit = units.unit(id.dimension());
        format!("{} ({})", id.word(), unit.symbol())
    });
    let names = FIRST.iter().chain(&SAID).map(ToString::to_string);
    let names: Vec<String> = names.chain(settings).collect();
    table.write_record(&names)?;
    for (document, outcome) in found.iter().zip(outcomes) {
        let file = document.path.to_string_lossy();
        let (result, advice, problems, said) = match outcome {
            // Who is told to stop gets no set-up, so their row ends with the sentence.
            Outcome::Advised(said) if said.len() == 1 => {
                ("stop-riding", &*document.advice, String::new(), &**said)
            }
            Outcome::Advised(said) => ("set-up", &*document.advice, String::new(), &**said),
            Outcome::Skipped(problems) => ("skipped", "", problems.join(" "), &[][..]),
        };
        let mut row = [&*file, result, advice, &problems].map(plain_cell).to_vec();
        row.extend_from_slice(said);
        row.resize(names.len(), String::new());
        table.write_record(&row)?;
    }
    table.flush()?;
    Ok(())
}
