//! Every page of the site, for the checks and pictures that are made of all of them.

use anyhow::{Context as _, Result};

use crate::Page;

/// The answers that have to be on the page's own device before a page shows what it is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rider {
    /// Nobody was here yet.
    Nobody,
    /// An example rider whose fork stands on gas.
    Gas,
    /// An example rider whose fork stands on a steel spring.
    Coil,
    /// An example rider who saw a stop-riding sign.
    Stopped,
}

impl Rider {
    /// How the button of the example begins on the first page.
    const fn example(self) -> Option<&'static str> {
        match self {
            Self::Nobody => None,
            Self::Gas => Some("Freshly serviced gas fork"),
            Self::Coil => Some("Enduro without linkage"),
            Self::Stopped => Some("Bars that shake harder"),
        }
    }
}

/// A page of the site and the way there.
#[derive(Debug, Clone, Copy)]
pub struct Place {
    /// Name for the picture's file; for a question, the question's own word.
    pub name: &'static str,
    /// The fragment of the address.
    pub fragment: &'static str,
    /// How its heading begins.
    pub heading: &'static str,
    /// Whose answers are loaded first.
    pub rider: Rider,
}

const fn place(
    rider: Rider,
    name: &'static str,
    fragment: &'static str,
    heading: &'static str,
) -> Place {
    Place {
        name,
        fragment,
        heading,
        rider,
    }
}

use Rider::{Coil, Gas, Nobody, Stopped};

/// A link with the answers of an invented rider.
const LINK: &str = concat!("#/link/", include_str!("../../links/first.txt"));

/// Every page. Those of one rider stand together, so that each rider is loaded once.
#[rustfmt::skip]
pub const PAGES: &[Place] = &[
    place(Nobody, "landing", "#/", "Find out what your suspension needs"),
    place(Nobody, "open", "#/open", "Open a saved intake"),
    place(Nobody, "link-refused", "#/link/1.junk", "This link cannot be opened"),
    place(Nobody, "link", LINK, "Answers from a link"),
    place(Nobody, "unknown-address", "#/nowhere", "Find out what your suspension needs"),
    place(Nobody, "rider-weight-blank", "#/rider-weight", "How much do you weigh?"),
    place(Nobody, "check-blank", "#/check", "Check your answers"),
    place(Nobody, "advice-signs-first", "#/advice", "Your advice"),
    place(Nobody, "not-asked", "#/fork-gas", "This question has no place"),
    place(Gas, "rider-weight", "#/rider-weight", "How much do you weigh?"),
    place(Gas, "rider-gear", "#/rider-gear", "Is that weight with your riding gear on?"),
    place(Gas, "rider-pace", "#/rider-pace", "How fast do you ride?"),
    place(Gas, "rider-posture", "#/rider-posture", "How do you spend most of a ride?"),
    place(Gas, "rider-height", "#/rider-height", "How tall are you?"),
    place(Gas, "bike-class", "#/bike-class", "What kind of bike is it?"),
    place(Gas, "bike-weight", "#/bike-weight", "What does the bike weigh"),
    place(Gas, "bike-fuel", "#/bike-fuel", "How much fuel"),
    place(Gas, "bike-fork", "#/bike-fork", "What carries the front"),
    place(Gas, "fork-gas", "#/fork-gas", "What is the gas pressure"),
    place(Gas, "bike-shock", "#/bike-shock", "How does the shock reach the swingarm?"),
    place(Gas, "shock-spring", "#/shock-spring", "Which shock spring"),
    place(Gas, "fork-clickers", "#/fork-clickers", "Where do the fork clickers stand?"),
    place(Gas, "shock-clickers", "#/shock-clickers", "Where do the shock clickers stand?"),
    place(Gas, "service-hours", "#/service-hours", "How long ago was the suspension serviced?"),
    place(Gas, "ground-mix", "#/ground-mix", "What ground do you ride on?"),
    place(Gas, "ground-usual", "#/ground-usual", "What are the usual temperature and altitude?"),
    place(Gas, "ground-today", "#/ground-today", "And today?"),
    place(Gas, "complaints", "#/complaints", "What is wrong?"),
    place(Gas, "complaint-detail", "#/complaint-detail/harsh-small-bumps", "It beats up my hands"),
    place(Gas, "sag-front", "#/sag-front", "What is the sag at the front?"),
    place(Gas, "sag-rear", "#/sag-rear", "What is the sag at the rear?"),
    place(Gas, "travel-used", "#/travel-used", "How much of the fork's travel do you use?"),
    place(Gas, "tyre-pressures", "#/tyre-pressures", "What are your tyre pressures?"),
    place(Gas, "push-test", "#/push-test", "What does a slow push feel like?"),
    place(Gas, "stop-signs", "#/stop-signs", "Have you seen any of these?"),
    place(Gas, "rider-pace-change", "#/rider-pace/change", "How fast do you ride?"),
    place(Gas, "landing-again", "#/", "Find out what your suspension needs"),
    place(Gas, "check", "#/check", "Check your answers"),
    place(Gas, "advice-gas", "#/advice", "Your advice"),
    place(Gas, "sheet", "#/sheet", "Answers on one sheet"),
    place(Gas, "link-replacing", LINK, "Answers from a link"),
    place(Gas, "start-again", "#/start-again", "Clear all your answers?"),
    place(Coil, "fork-spring", "#/fork-spring", "Which fork springs are in it?"),
    place(Coil, "advice-coil", "#/advice", "Your advice"),
    place(Coil, "track", "#/track", "At the track"),
    place(Stopped, "advice-stop", "#/advice", "Your advice"),
];

/// Where the advice shows once it is worked out; its heading stands there before.
const ADVICE: &str = "#/advice";

/// Where a lap is proposed once the bike is ridden; its heading stands there before.
const TRACK: &str = "#/track";

/// The tag of the language in which the tests know what is written.
const ENGLISH: &str = "en";

impl Page {
    /// Has the page speak the language of a tag, chosen where riders choose it.
    async fn speak(&self, language: &str) -> Result<()> {
        let tag = serde_json::json!(language);
        self.is_true(&format!(
            "(() => {{ const list = document.querySelector('.language select'); if (!list) return false; \
               if (list.value !== {tag}) {{ list.value = {tag}; list.dispatchEvent(new Event('change', {{ bubbles: true }})); }} \
               return document.documentElement.lang === {tag}; }})()"
        ))
        .await
    }

    /// Opens an invented rider from the first page; leads to the answers.
    pub async fn open_example(&self, beginning: &str) -> Result<()> {
        self.open("#/").await?;
        self.arrives_at("Find out what your suspension needs")
            .await?;
        self.click("Try an example rider").await?;
        self.click(beginning).await?;
        self.arrives_at("Check your answers").await
    }

    /// Opens an example and asks for its advice; the rides may still run.
    pub async fn advice_of(&self, example: &str) -> Result<()> {
        self.open_example(example).await?;
        self.click("Get my advice").await
    }

    /// Visits every page and does something there; an error says on which.
    pub async fn each(&self, check: impl AsyncFn(&Place) -> Result<()>) -> Result<()> {
        self.each_in(ENGLISH, check).await
    }

    /// The same in the language of a tag, such as `de`.
    pub async fn each_in(
        &self,
        language: &str,
        check: impl AsyncFn(&Place) -> Result<()>,
    ) -> Result<()> {
        let mut loaded = Nobody;
        self.open("#/").await?;
        self.speak(language).await?;
        for place in PAGES {
            if place.rider != loaded {
                if let Some(example) = place.rider.example() {
                    // Examples are found by their English names.
                    self.speak(ENGLISH).await?;
                    self.open_example(example).await.context(example)?;
                    self.speak(language).await?;
                }
                loaded = place.rider;
            }
            self.open(place.fragment).await.context(place.name)?;
            if language == ENGLISH {
                self.arrives_at(place.heading).await.context(place.name)?;
            }
            if place.fragment == ADVICE && place.rider != Nobody {
                self.is_shown(".advice").await.context(place.name)?;
            }
            if place.fragment == TRACK {
                self.is_shown(".lap").await.context(place.name)?;
            }
            check(place).await.context(place.name)?;
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use sagwright_core::intake::Question;

    use super::*;

    #[test]
    fn every_question_has_its_page_here() {
        for question in Question::ALL {
            let word = question.word();
            let listed = PAGES.iter().any(|place| place.name == word);
            assert!(listed, "no page is listed for the question {word}");
        }
    }

    #[test]
    fn no_picture_overwrites_another() {
        for (at, place) in PAGES.iter().enumerate() {
            let before = PAGES.iter().take(at);
            assert!(
                before.into_iter().all(|other| other.name != place.name),
                "{} is listed twice",
                place.name
            );
        }
    }

    #[test]
    fn the_pages_of_one_rider_stand_together() {
        let mut riders: Vec<Rider> = PAGES.iter().map(|place| place.rider).collect();
        riders.dedup();
        assert_eq!(riders, [Nobody, Gas, Coil, Stopped]);
    }
}
