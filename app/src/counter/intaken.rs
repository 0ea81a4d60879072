//! What became of what was brought in.

use sagwright_core::words::Text;

use super::job::Job;
use super::keeper::now;
use super::limits::read_job;
use crate::tasks::breath;

/// What became of the jobs brought in.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Intaken {
    /// New on the desk: the names of the first few, to open them.
    pub new: Vec<String>,
    /// How many were new.
    pub new_count: usize,
    /// There already, and something about them was news.
    pub updated: usize,
    /// There already, to the letter.
    pub same: Vec<String>,
    /// How many were there already to the letter.
    pub same_count: usize,
    /// Refused, and why: the first few.
    pub refused: Vec<Text>,
    /// How many were refused.
    pub refused_count: usize,
}

/// Names and refusals told one by one; of more, the number is told.
const TOLD: usize = 10;

/// Reads the jobs of a desk file slice after slice, so that the page stays quick; those that are no use are told.
pub async fn read_jobs(texts: Vec<(String, String)>) -> (Vec<(String, Job)>, Vec<Text>) {
    let (mut jobs, mut refused) = (Vec::new(), Vec::new());
    let now = now();
    for (at, (name, text)) in texts.into_iter().enumerate() {
        match read_job(&name, &text) {
            Ok(mut job) => {
                job.not_after(now);
                jobs.push((name, job));
            }
            Err(text) => refused.push(text),
        }
        if at % 100 == 99 {
            breath().await;
        }
    }
    (jobs, refused)
}

impl Intaken {
    /// Adds what was refused on the way in.
    pub fn refuse(&mut self, refused: Vec<Text>) {
        self.refused_count += refused.len();
        let room = TOLD.saturating_sub(self.refused.len());
        self.refused.extend(refused.into_iter().take(room));
    }

    /// Adds what became of others.
    pub fn add(&mut self, other: Self) {
        self.new_count += other.new_count;
        self.updated += other.updated;
        self.same_count += other.same_count;
        other.new.iter().for_each(|id| push_few(&mut self.new, id));
        other
            .same
            .iter()
            .for_each(|id| push_few(&mut self.same, id));
        let counted = other.refused_count - other.refused.len();
        self.refuse(other.refused);
        self.refused_count += counted;
    }
}

/// Names one more, where there is room.
pub fn push_few(names: &mut Vec<String>, id: &str) {
    if names.len() < TOLD {
        names.push(id.to_owned());
    }
}
