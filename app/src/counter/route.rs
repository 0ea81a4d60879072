//! From the address to a page of the counter and back.

use super::change::{address, page_at};
use crate::state::Page;

/// Where somebody at the counter is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Place {
    /// All jobs.
    Desk,
    /// Bringing riders in.
    BringIn,
    /// The desk as a file, and clearing it.
    Filing,
    /// The workshop's settings.
    Settings,
    /// One job.
    Job(String),
    /// Putting one page of its answers right.
    Answer(String, Page),
    /// Writing down what was done; with the name of the visit where there is one already.
    Work(String, Option<String>),
    /// Writing down what was heard back.
    Heard(String, Option<String>),
    /// The card to print.
    Card(String),
    /// The job beside itself or another.
    Beside(String, Side),
    /// Confirming that a rider is to be deleted.
    Delete(String),
    /// Confirming that everything is to be deleted.
    DeleteAll,
    /// An address that leads nowhere.
    Unknown,
}

/// What a job is held against.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Side {
    /// The answers as they came.
    AsCame,
    /// The bike as it left.
    AsLeft,
    /// Another rider.
    Other(String),
}

const AS_CAME: &str = "as-it-came";
const AS_LEFT: &str = "as-it-left";

impl Place {
    /// The place that a fragment such as `#/job/…` leads to.
    pub fn from_fragment(fragment: &str) -> Self {
        let path = fragment.strip_prefix('#').unwrap_or(fragment);
        let steps: Vec<&str> = path.split('/').filter(|step| !step.is_empty()).collect();
        match steps.as_slice() {
            [] => Self::Desk,
            ["bring-in"] => Self::BringIn,
            ["filing"] => Self::Filing,
            ["settings"] => Self::Settings,
            ["delete-all"] => Self::DeleteAll,
            ["job", id, rest @ ..] if is_name(id) => Self::of_job((*id).to_owned(), rest),
            _ => Self::Unknown,
        }
    }

    fn of_job(id: String, rest: &[&str]) -> Self {
        match rest {
            [] => Self::Job(id),
            ["answer", page @ ..] => match page_at(&["#/", &page.join("/")].concat()) {
                Some(page) => Self::Answer(id, page),
                None => Self::Unknown,
            },
            ["work"] => Self::Work(id, None),
            ["work", name] if is_name(name) => Self::Work(id, Some((*name).to_owned())),
            ["heard"] => Self::Heard(id, None),
            ["heard", name] if is_name(name) => Self::Heard(id, Some((*name).to_owned())),
            ["card"] => Self::Card(id),
            ["delete"] => Self::Delete(id),
            ["beside", AS_CAME] => Self::Beside(id, Side::AsCame),
            ["beside", AS_LEFT] => Self::Beside(id, Side::AsLeft),
            ["beside", other] if is_name(other) => {
                Self::Beside(id, Side::Other((*other).to_owned()))
            }
            _ => Self::Unknown,
        }
    }

    /// The fragment that leads here.
    pub fn fragment(&self) -> String {
        let of_job = |id: &String, rest: &[&str]| {
            let mut fragment = ["#/job/", id].concat();
            for step in rest {
                fragment.extend(["/", step]);
            }
            fragment
        };
        match self {
            Self::Desk | Self::Unknown => "#/".to_owned(),
            Self::BringIn => "#/bring-in".to_owned(),
            Self::Filing => "#/filing".to_owned(),
            Self::Settings => "#/settings".to_owned(),
            Self::DeleteAll => "#/delete-all".to_owned(),
            Self::Job(id) => of_job(id, &[]),
            Self::Answer(id, page) => {
                let page = address(*page);
                of_job(id, &["answer", page.trim_start_matches("#/")])
            }
            Self::Work(id, None) => of_job(id, &["work"]),
            Self::Work(id, Some(name)) => of_job(id, &["work", name]),
            Self::Heard(id, None) => of_job(id, &["heard"]),
            Self::Heard(id, Some(name)) => of_job(id, &["heard", name]),
            Self::Card(id) => of_job(id, &["card"]),
            Self::Delete(id) => of_job(id, &["delete"]),
            Self::Beside(id, Side::AsCame) => of_job(id, &["beside", AS_CAME]),
            Self::Beside(id, Side::AsLeft) => of_job(id, &["beside", AS_LEFT]),
            Self::Beside(id, Side::Other(other)) => of_job(id, &["beside", other]),
        }
    }
}

/// Whether a step of the address can be a name of ours: what else stands there leads nowhere.
fn is_name(step: &str) -> bool {
    step.bytes().all(|b| b.is_ascii_hexdigit() || b == b'-')
}

#[cfg(test)]
mod tests {
    use sagwright_core::intake::{Feeling, Question};

    use super::*;

    #[test]
    fn every_place_survives_its_address() {
        let id = || "0123abcd-2".to_owned();
        for place in [
            Place::Desk,
            Place::BringIn,
            Place::Filing,
            Place::Settings,
            Place::DeleteAll,
            Place::Job(id()),
            Place::Answer(id(), Page::Ask(Question::SagFront)),
            Place::Answer(id(), Page::Detail(Feeling::Dives)),
            Place::Work(id(), None),
            Place::Work(id(), Some("1764-0001".to_owned())),
            Place::Heard(id(), None),
            Place::Heard(id(), Some("1764-0001".to_owned())),
            Place::Card(id()),
            Place::Delete(id()),
            Place::Beside(id(), Side::AsCame),
            Place::Beside(id(), Side::AsLeft),
            Place::Beside(id(), Side::Other("99".to_owned())),
        ] {
            assert_eq!(Place::from_fragment(&place.fragment()), place);
        }
    }

    #[test]
    fn an_address_that_leads_nowhere_is_known_as_such() {
        for fragment in [
            "#/nowhere",
            "#/job/<script>",
            "#/job/1/answer/glow",
            "#/job",
        ] {
            assert_eq!(Place::from_fragment(fragment), Place::Unknown, "{fragment}");
        }
    }
}
