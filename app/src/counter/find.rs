//! Finding a job: what the list knows of each, searched as it is typed.

use std::rc::Rc;

use sagwright_core::intake::{BikeClass, Feeling};
use sagwright_core::words::Text;

use super::job::{Job, Stage};
use super::told::Moment;

/// Rows on one leaf of the list.
pub const LEAF: usize = 50;

/// Longest title made from a note, characters.
const LONGEST_TITLE: usize = 70;

/// What the list knows of a job.
#[derive(Debug, Clone, PartialEq)]
pub struct Brief {
    /// The name it is kept under.
    pub id: String,
    /// The rider's name or number; the beginning of the note where none was told; empty where there is no note either.
    pub title: String,
    /// Where it stands.
    pub stage: Stage,
    /// Tags that are on.
    pub tags: Vec<String>,
    /// Kind of bike, as put right.
    pub class: Option<BikeClass>,
    /// What the rider complains of, as put right.
    pub feelings: Vec<Feeling>,
    /// When it came.
    pub came: Moment,
    /// When anything about it was told last.
    pub changed: Moment,
    /// Every word about it in small letters, to search in.
    letters: String,
}

impl Brief {
    /// What the list knows of `job`; `say` gives the words of the workshop's language.
    pub fn of(id: &str, job: &Job, say: &dyn Fn(&Text) -> String) -> Self {
        // Most jobs came as they are: then there is nothing to put together.
        let put_right = (!job.corrected.is_empty()).then(|| job.now().intake);
        let answers = put_right.as_ref().unwrap_or(&job.intake);
        let class = answers.bike.class;
        let complaints = answers.complaints.iter().flatten();
        let feelings: Vec<Feeling> = complaints.map(|one| one.feeling).collect();
        let tags: Vec<String> = job.tags().into_iter().map(str::to_owned).collect();
        let title = title(job);
        let mut words: Vec<String> = vec![
            title.clone(),
            job.contact.is.clone(),
            job.intake.note.clone(),
            say(&stage_name(job.stage.is)),
        ];
        words.extend(tags.iter().cloned());
        words.extend(class.map(|class| say(&class_name(class))));
        words.extend(feelings.iter().map(|feeling| say(&feeling_name(*feeling))));
        words.extend(job.notes().map(|(_, told)| told.is.clone()));
        for (_, work) in job.work() {
            let lines = [&work.date, &work.by, &work.oil, &work.valving, &work.other];
            words.extend(lines.into_iter().cloned());
        }
        words.extend(job.heard().map(|(_, heard)| heard.words.clone()));
        Self {
            id: id.to_owned(),
            title,
            stage: job.stage.is,
            tags,
            class,
            feelings,
            came: job.came,
            changed: job.changed(),
            letters: words.join("\n").to_lowercase(),
        }
    }
}

/// The rider's name or number, else the beginning of the note.
pub fn title(job: &Job) -> String {
    let told = job.name.is.trim();
    if !told.is_empty() {
        return told.to_owned();
    }
    let note = job.intake.note.trim();
    if note.chars().count() <= LONGEST_TITLE {
        return note.to_owned();
    }
    let short: String = note.chars().take(LONGEST_TITLE).collect();
    // Not in the middle of a word, where there is a gap at all.
    let whole = short
        .rsplit_once(' ')
        .map_or(short.as_str(), |(words, _)| words);
    whole.chars().chain(std::iter::once('…')).collect()
}

/// The words for a stage.
pub fn stage_name(stage: Stage) -> Text {
    Text::new(format!("counter.stage.{}", stage.word()))
}

/// The words for a kind of bike.
pub fn class_name(class: BikeClass) -> Text {
    Text::new(format!("choice.bike-class.{}", class.word()))
}

/// The words for something felt.
pub fn feeling_name(feeling: Feeling) -> Text {
    Text::new(format!("complaint.{}", feeling.word()))
}

/// In which order the list stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Order {
    /// The job that was touched last first.
    #[default]
    Touched,
    /// The last one to come in first.
    Newest,
    /// The first one to come in first.
    Oldest,
    /// By name.
    Name,
    /// By where it stands, then the one waiting longest first.
    Stage,
}

impl Order {
    /// All of them, as offered.
    pub const ALL: &[Self] = &[
        Self::Touched,
        Self::Newest,
        Self::Oldest,
        Self::Name,
        Self::Stage,
    ];

    /// Its word in text keys.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Touched => "touched",
            Self::Newest => "newest",
            Self::Oldest => "oldest",
            Self::Name => "name",
            Self::Stage => "stage",
        }
    }
}

/// Which jobs are listed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Shown {
    /// All but the closed ones.
    #[default]
    Open,
    /// All.
    All,
    /// Those that stand there.
    At(Stage),
}

/// What is asked of the list.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Wanted {
    /// Words that all have to be there, in any order and anywhere.
    pub words: String,
    /// Which jobs.
    pub shown: Shown,
    /// A tag that has to be on.
    pub tag: Option<String>,
    /// In which order.
    pub order: Order,
}

/// The jobs that are wanted, in the order that is.
pub fn find(all: &[Rc<Brief>], wanted: &Wanted) -> Vec<Rc<Brief>> {
    let words = wanted.words.to_lowercase();
    let words: Vec<&str> = words.split_whitespace().collect();
    let fits = |brief: &&Rc<Brief>| {
        let stage = match wanted.shown {
            Shown::All => true,
            Shown::Open => brief.stage != Stage::Closed,
            Shown::At(stage) => brief.stage == stage,
        };
        let tag = wanted.tag.as_ref();
        stage
            && tag.is_none_or(|tag| brief.tags.contains(tag))
            && words.iter().all(|word| brief.letters.contains(word))
    };
    let mut found: Vec<Rc<Brief>> = all.iter().filter(fits).cloned().collect();
    match wanted.order {
        Order::Touched => found.sort_by_key(|brief| std::cmp::Reverse(brief.changed)),
        Order::Newest => found.sort_by_key(|brief| std::cmp::Reverse(brief.came)),
        Order::Oldest => found.sort_by_key(|brief| brief.came),
        Order::Name => found.sort_by_cached_key(|brief| by_name(&brief.title)),
        Order::Stage => found.sort_by_key(|brief| (brief.stage, brief.came)),
    }
    found
}

/// Every tag in use, in order, each once.
pub fn tags_in_use(all: &[Rc<Brief>]) -> Vec<String> {
    let tags = all.iter().flat_map(|brief| brief.tags.iter().cloned());
    let tags: std::collections::BTreeSet<String> = tags.collect();
    tags.into_iter().collect()
}

/// How many leaves so many rows take; one where there are none.
pub fn leaves(rows: usize) -> usize {
    rows.div_ceil(LEAF).max(1)
}

/// A name as people sort it: small letters, and numbers by their value, so that "Rider 9" stands before "Rider 10".
/// Jobs without a name come last.
fn by_name(title: &str) -> (bool, Vec<(String, u64)>) {
    let mut parts: Vec<(String, u64)> = Vec::new();
    let mut letters = String::new();
    let mut number: Option<u64> = None;
    for c in title.to_lowercase().chars() {
        if let Some(digit) = c.to_digit(10) {
            let so_far = number.unwrap_or_default();
            number = Some(so_far.saturating_mul(10).saturating_add(digit.into()));
        } else {
            if let Some(number) = number.take() {
                parts.push((std::mem::take(&mut letters), number));
            }
            letters.push(c);
        }
    }
    parts.push((letters, number.unwrap_or_default()));
    (title.is_empty(), parts)
}

#[cfg(test)]
mod tests {
    use std::time::Instant;

    use super::*;
    use crate::counter::change::Change;
    use crate::counter::name::name_of;
    use crate::counter::speak;
    use crate::examples;
    use crate::words;

    fn brief(job: &Job) -> Rc<Brief> {
        speak();
        Rc::new(Brief::of(&name_of(&job.intake), job, &|text| {
            words::tell(text, &sagwright_core::words::UnitChoice::default())
        }))
    }

    /// A job for every example, one after the other, named and tagged.
    fn desk() -> Vec<Rc<Brief>> {
        let jobs = examples::riders().enumerate().map(|(at, rider)| {
            let moment = 100 + Moment::try_from(at).expect("few");
            let mut job = Job::new(rider, moment);
            job.hear(Change::Name(format!("Rider {}", 12 - at)), moment);
            let tag = if at % 2 == 0 { "race" } else { "loan bike" };
            job.hear(Change::Tag(tag.to_owned(), true), moment);
            let stage = Stage::ALL[at % Stage::ALL.len()];
            job.hear(Change::Stage(stage), 1_000 - moment);
            brief(&job)
        });
        jobs.collect()
    }

    fn titles(found: &[Rc<Brief>]) -> Vec<&str> {
        found.iter().map(|brief| brief.title.as_str()).collect()
    }

    fn wanted(words: &str) -> Wanted {
        Wanted {
            words: words.to_owned(),
            shown: Shown::All,
            ..Wanted::default()
        }
    }

    #[test]
    fn every_word_has_to_be_there_wherever_it_stands() {
        let desk = desk();
        assert_eq!(find(&desk, &wanted("")).len(), desk.len());
        assert_eq!(find(&desk, &wanted("  RIDER  ")).len(), desk.len());
        assert_eq!(
            titles(&find(&desk, &wanted("FRESHLY rider 12"))),
            ["Rider 12"]
        );
        // By tag, by note, by what is felt.
        assert_eq!(find(&desk, &wanted("loan bike")).len(), desk.len() / 2);
        assert_eq!(titles(&find(&desk, &wanted("serviced race"))), ["Rider 12"]);
        assert_eq!(find(&desk, &wanted("rider nobody")).len(), 0);
        // A search is no pattern.
        assert_eq!(find(&desk, &wanted(".*")).len(), 0);
    }

    #[test]
    fn closed_jobs_are_out_of_the_way_until_asked_for() {
        let desk = desk();
        let open = find(&desk, &Wanted::default());
        let closed = find(
            &desk,
            &Wanted {
                shown: Shown::At(Stage::Closed),
                ..Wanted::default()
            },
        );
        assert!(!closed.is_empty());
        assert_eq!(open.len() + closed.len(), desk.len());
        let race = Wanted {
            tag: Some("race".to_owned()),
            ..wanted("")
        };
        assert_eq!(find(&desk, &race).len(), desk.len() / 2);
        assert_eq!(tags_in_use(&desk), ["loan bike", "race"]);
    }

    #[test]
    fn every_order_is_its_own() {
        let desk = desk();
        let first_two = |order| {
            let found = find(
                &desk,
                &Wanted {
                    order,
                    ..wanted("")
                },
            );
            [found[0].title.clone(), found[1].title.clone()]
        };
        assert_eq!(first_two(Order::Newest), ["Rider 3", "Rider 4"]);
        assert_eq!(first_two(Order::Oldest), ["Rider 12", "Rider 11"]);
        // The first to come were put on their stages last; the very first was new already.
        assert_eq!(first_two(Order::Touched), ["Rider 11", "Rider 10"]);
        assert_eq!(first_two(Order::Name), ["Rider 3", "Rider 4"]);
        let by_name = find(
            &desk,
            &Wanted {
                order: Order::Name,
                ..wanted("")
            },
        );
        assert_eq!(titles(&by_name)[6..8], ["Rider 9", "Rider 10"]);
        assert_eq!(first_two(Order::Stage), ["Rider 12", "Rider 6"]);
    }

    #[test]
    fn a_job_without_a_name_is_called_by_its_note() {
        let rider = examples::riders().next().expect("there are examples");
        let job = Job::new(rider, 1);
        assert_eq!(
            title(&job),
            "Invented rider: freshly serviced gas fork at the right pressure, and…"
        );
        let mut bare = job.clone();
        bare.intake.note = String::new();
        assert_eq!(title(&bare), "");
    }

    #[test]
    fn five_thousand_jobs_are_searched_while_a_key_is_pressed() {
        let jobs: Vec<Rc<Brief>> = desk().into_iter().cycle().take(5_000).collect();
        let start = Instant::now();
        let found = find(
            &jobs,
            &Wanted {
                order: Order::Name,
                ..wanted("rider whoops")
            },
        );
        assert!(!found.is_empty());
        // Many times what it takes, and still a tenth of what is promised in a browser.
        assert!(start.elapsed().as_millis() < 500, "{:?}", start.elapsed());
    }

    #[test]
    fn leaves_hold_all_rows() {
        for (rows, expected) in [(0, 1), (1, 1), (50, 1), (51, 2), (5_000, 100)] {
            assert_eq!(leaves(rows), expected, "{rows}");
        }
    }
}
