//! The whole desk as one file.

use std::collections::BTreeMap;

use sagwright_core::words::{Arg, Text};
use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;

use super::job::Job;
use super::limits::shortened;

/// What every such file says it is.
const KIND: &str = "sagwright-desk";

/// The form written by this build; a newer one is refused.
pub const DESK_VERSION: u32 = 1;

/// Largest file read, bytes. Five thousand jobs take some 15 MB.
pub const LARGEST_DESK: usize = 128 * 1024 * 1024;

/// Most jobs in one file.
pub const MOST_JOBS: usize = 20_000;

#[derive(Serialize)]
struct Written<'a> {
    kind: &'static str,
    version: u32,
    jobs: BTreeMap<&'a str, &'a Job>,
}

/// What a document says it is; everything else in it is passed over.
#[derive(Deserialize)]
struct Head {
    #[serde(default)]
    kind: Option<String>,
    #[serde(default)]
    version: Option<u32>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Read<'a> {
    #[serde(rename = "kind")]
    _kind: String,
    #[serde(rename = "version")]
    _version: u32,
    #[serde(borrow)]
    jobs: BTreeMap<String, &'a RawValue>,
}

/// The desk as a file.
///
/// # Errors
/// None for jobs: all their keys are strings.
pub fn to_file<'a>(
    jobs: impl Iterator<Item = (&'a str, &'a Job)>,
) -> Result<String, serde_json::Error> {
    serde_json::to_string(&Written {
        kind: KIND,
        version: DESK_VERSION,
        jobs: jobs.collect(),
    })
}

/// Whether a document says that it is a desk.
pub fn is_desk(text: &str) -> bool {
    serde_json::from_str::<Head>(text).is_ok_and(|head| head.kind.as_deref() == Some(KIND))
}

/// The jobs in a desk file, each still as text, for [`super::limits::read_job`] to read.
///
/// # Errors
/// What is wrong with the file as a whole, in words.
pub fn jobs_in(text: &str) -> Result<Vec<(String, String)>, Text> {
    if text.len() > LARGEST_DESK {
        return Err(Text::new("counter.bad.desk-large"));
    }
    let form = |error: serde_json::Error| {
        Text::new("counter.bad.desk-form").with("detail", Arg::Raw(shortened(&error.to_string())))
    };
    let head: Head = serde_json::from_str(text).map_err(form)?;
    match head.version {
        Some(DESK_VERSION) => {}
        Some(newer) if newer > DESK_VERSION => {
            return Err(Text::new("counter.bad.desk-newer"));
        }
        _ => return Err(Text::new("counter.bad.desk-version")),
    }
    let read: Read = serde_json::from_str(text).map_err(form)?;
    if read.jobs.len() > MOST_JOBS {
        return Err(Text::new("counter.bad.desk-many").with(
            "most",
            Arg::Count(i64::try_from(MOST_JOBS).unwrap_or(i64::MAX)),
        ));
    }
    let jobs = read.jobs.into_iter();
    Ok(jobs
        .map(|(name, text)| (name, text.get().to_owned()))
        .collect())
}
