//! From the address to a page and back. Everything after `#` belongs to us, so any static host will do.

use sagwright_core::intake::{Feeling, Question};

use crate::state::Page;

/// Where the rider is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Route {
    /// What this is, and where to begin.
    Landing,
    /// A question.
    Ask {
        /// Which.
        page: Page,
        /// Whether it was opened to change an answer, and leads back to the answers.
        changing: bool,
    },
    /// Reading the answers over.
    Check,
    /// The advice.
    Advice,
    /// The log at the track.
    Track,
    /// Answers and advice on one sheet, to print.
    Sheet,
    /// A workshop's own questions.
    Extra,
    /// Handing the answers to a workshop, and what became of those sent.
    Send,
    /// Opening a saved intake.
    Open,
    /// Opening answers from a link. The word with the answers stays in the address, where the page reads it.
    Link,
    /// Confirming that everything is to be cleared.
    StartAgain,
    /// An address that leads nowhere.
    Unknown,
}

/// Leads to answers in a link; what follows is theirs.
pub const LINK: &str = "link";

/// Leads back to the answers after a change.
const CHANGE: &str = "change";

impl Route {
    /// Whether the advice's program draws it.
    pub const fn is_on_stage(self) -> bool {
        matches!(
            self,
            Self::Advice | Self::Track | Self::Sheet | Self::Send | Self::Open | Self::Link
        )
    }

    /// A question on the way through.
    pub const fn ask(page: Page) -> Self {
        Self::Ask {
            page,
            changing: false,
        }
    }

    /// A question to change.
    pub const fn change(page: Page) -> Self {
        Self::Ask {
            page,
            changing: true,
        }
    }

    /// The route that a fragment such as `#/rider-weight` leads to.
    pub fn from_fragment(fragment: &str) -> Self {
        let path = fragment.strip_prefix('#').unwrap_or(fragment);
        let mut steps = path.split('/').filter(|step| !step.is_empty());
        let Some(first) = steps.next() else {
            return Self::Landing;
        };
        let rest: Vec<&str> = steps.collect();
        match (first, rest.as_slice()) {
            ("check", []) => Self::Check,
            ("advice", []) => Self::Advice,
            ("track", []) => Self::Track,
            ("sheet", []) => Self::Sheet,
            ("workshop", []) => Self::Extra,
            ("send", []) => Self::Send,
            ("open", []) => Self::Open,
            (LINK, _) => Self::Link,
            ("start-again", []) => Self::StartAgain,
            (first, rest) => Self::question(first, rest).unwrap_or(Self::Unknown),
        }
    }

    fn question(first: &str, rest: &[&str]) -> Option<Self> {
        let question = *Question::ALL.iter().find(|q| q.word() == first)?;
        let (page, rest) = if question == Question::ComplaintDetail {
            let (word, rest) = rest.split_first()?;
            let feeling = Feeling::ALL.iter().find(|f| f.word() == *word)?;
            (Page::Detail(*feeling), rest)
        } else {
            (Page::Ask(question), rest)
        };
        match rest {
            [] => Some(Self::ask(page)),
            [word] if *word == CHANGE => Some(Self::change(page)),
            _ => None,
        }
    }

    /// The fragment that leads here.
    pub fn fragment(self) -> String {
        match self {
            Self::Landing | Self::Unknown => "#/".to_owned(),
            Self::Ask { page, changing } => {
                let mut fragment = format!("#/{}", page.question().word());
                if let Page::Detail(feeling) = page {
                    fragment.extend(["/", feeling.word()]);
                }
                if changing {
                    fragment.extend(["/", CHANGE]);
                }
                fragment
            }
            Self::Check => "#/check".to_owned(),
            Self::Advice => "#/advice".to_owned(),
            Self::Track => "#/track".to_owned(),
            Self::Sheet => "#/sheet".to_owned(),
            Self::Extra => "#/workshop".to_owned(),
            Self::Send => "#/send".to_owned(),
            Self::Open => "#/open".to_owned(),
            Self::Link => format!("#/{LINK}"),
            Self::StartAgain => "#/start-again".to_owned(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_route_survives_its_address() {
        let asked = Question::ALL.iter().map(|q| Page::Ask(*q));
        let asked = asked.filter(|page| page.question() != Question::ComplaintDetail);
        let details = Feeling::ALL.iter().map(|f| Page::Detail(*f));
        let pages = asked.chain(details);
        let routes = pages.flat_map(|page| [Route::ask(page), Route::change(page)]);
        let others = [
            Route::Landing,
            Route::Check,
            Route::Advice,
            Route::Track,
            Route::Sheet,
            Route::Extra,
            Route::Send,
            Route::Open,
            Route::StartAgain,
        ];
        for route in routes.chain(others) {
            assert_eq!(Route::from_fragment(&route.fragment()), route);
        }
    }

    #[test]
    fn an_address_that_leads_nowhere_is_known_as_such() {
        for fragment in [
            "#/nowhere",
            "#/rider-weight/back",
            "#/check/change",
            "#/complaint-detail",
            "#/complaint-detail/glows",
            "#/rider-weight/change/change",
        ] {
            assert_eq!(Route::from_fragment(fragment), Route::Unknown, "{fragment}");
        }
        for fragment in ["", "#", "#/", "#//"] {
            assert_eq!(Route::from_fragment(fragment), Route::Landing, "{fragment}");
        }
    }
}
