//! How much of everything a job holds, and whether one from outside keeps to it.

use std::collections::BTreeMap;

use sagwright_core::intake::check;
use sagwright_core::words::{Arg, Text};

use super::change::page_at;
use super::job::{Heard, JOB_VERSION, Job, Work};
use super::name::fits;
use super::told::Told;

/// Longest name or number of a rider, characters.
pub const LONGEST_NAME: usize = 100;

/// Longest way to reach a rider, characters.
pub const LONGEST_CONTACT: usize = 200;

/// Longest tag, characters.
pub const LONGEST_TAG: usize = 30;

/// Most tags of one job, those taken off counted too.
pub const MOST_TAGS: usize = 40;

/// Longest note, and longest line of what was done or heard, characters.
pub const LONGEST_NOTE: usize = 2_000;

/// Longest date or name of who did it, characters.
pub const LONGEST_LINE: usize = 100;

/// Most notes, visits or calls of one job, those taken out counted too.
pub const MOST_ENTRIES: usize = 200;

/// The largest job as text, bytes.
pub const LARGEST_JOB: usize = 1024 * 1024;

/// Reads a job from a file and sees that it keeps to the limits.
///
/// # Errors
/// What is wrong with it, in words.
pub fn read_job(name: &str, text: &str) -> Result<Job, Text> {
    if text.len() > LARGEST_JOB {
        return Err(Text::new("counter.bad.large"));
    }
    let job: Job = serde_json::from_str(text).map_err(|error| {
        Text::new("counter.bad.form").with("detail", Arg::Raw(shortened(&error.to_string())))
    })?;
    if job.version != JOB_VERSION {
        return Err(Text::new("counter.bad.version"));
    }
    if !fits(name, &job.intake) {
        return Err(Text::new("counter.bad.name"));
    }
    let intakes = [
        Ok(()),
        check(&job.intake),
        check(&job.now().document()),
        check(&job.after_work()),
    ];
    if let Some(error) = intakes.into_iter().find_map(Result::err) {
        let first = error.problems.into_iter().next();
        return Err(first.map_or_else(|| Text::new("counter.bad.limits"), |problem| problem.text));
    }
    if keeps_to_limits(&job) {
        Ok(job)
    } else {
        Err(Text::new("counter.bad.limits"))
    }
}

/// Whether everything in a job is as long and as many as it may be.
pub fn keeps_to_limits(job: &Job) -> bool {
    let visits = job.work.values().filter_map(|told| told.is.as_ref());
    let calls = job.heard.values().filter_map(|told| told.is.as_ref());
    within(&job.name.is, LONGEST_NAME)
        && within(&job.contact.is, LONGEST_CONTACT)
        && job.tags.len() <= MOST_TAGS
        && job.tags.keys().all(|tag| within(tag, LONGEST_TAG))
        && named(&job.notes)
        && job
            .notes
            .values()
            .all(|told| within(&told.is, LONGEST_NOTE))
        && named(&job.work)
        && visits.into_iter().all(work_within)
        && named(&job.heard)
        && calls.into_iter().all(heard_within)
        && job
            .corrected
            .keys()
            .all(|address| page_at(address).is_some())
}

fn work_within(work: &Work) -> bool {
    let lines = [&work.date, &work.by];
    let words = [&work.oil, &work.valving, &work.other];
    lines.into_iter().all(|line| within(line, LONGEST_LINE))
        && words.into_iter().all(|words| within(words, LONGEST_NOTE))
        && check(&work.set).is_ok()
}

fn heard_within(heard: &Heard) -> bool {
    within(&heard.date, LONGEST_LINE) && within(&heard.words, LONGEST_NOTE)
}

fn named<T>(entries: &BTreeMap<String, Told<T>>) -> bool {
    entries.len() <= MOST_ENTRIES && entries.keys().all(|name| within(name, LONGEST_LINE))
}

fn within(text: &str, most: usize) -> bool {
    text.chars().count() <= most
}

/// The first letters of a text from outside, enough to recognise it.
pub fn shortened(text: &str) -> String {
    const MOST: usize = 200;
    if text.chars().count() <= MOST {
        return text.to_owned();
    }
    text.chars()
        .take(MOST)
        .chain(std::iter::once('…'))
        .collect()
}
