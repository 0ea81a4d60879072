//! How the checks went on this visit: answered and taken back, or put aside.

use std::iter;
use std::rc::Rc;

use sagwright_core::advice::NextCheck;
use sagwright_core::words::Text;
use yew::Reducible;

use crate::state::{Page, Subject, Wizard};

/// What was done with the checks since the page was opened.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Course {
    /// Answers given, the last one at the end.
    given: Vec<Given>,
    /// The last step.
    last: Option<Last>,
}

/// An answer, and all answers before it.
#[derive(Debug, Clone, PartialEq)]
struct Given {
    subject: Subject,
    before: Rc<Wizard>,
}

/// The last answer given or taken back.
#[derive(Debug, Clone, PartialEq)]
pub struct Last {
    /// What it was about.
    pub subject: Subject,
    /// All answers before this step.
    pub before: Rc<Wizard>,
    /// Whether it was taken back.
    pub back: bool,
}

/// Something done with a check.
#[derive(Debug, Clone, PartialEq)]
pub enum Step {
    /// Its answer was used; these were the answers before.
    Give(Subject, Rc<Wizard>),
    /// The last answer was taken back; these were the answers with it.
    TakeBack(Rc<Wizard>),
}

impl Reducible for Course {
    type Action = Step;

    fn reduce(self: Rc<Self>, step: Step) -> Rc<Self> {
        let mut next = (*self).clone();
        match step {
            Step::Give(subject, before) => {
                next.given.push(Given {
                    subject,
                    before: Rc::clone(&before),
                });
                next.last = Some(Last {
                    subject,
                    before,
                    back: false,
                });
            }
            Step::TakeBack(with) => {
                if let Some(given) = next.given.pop() {
                    next.last = Some(Last {
                        subject: given.subject,
                        before: with,
                        back: true,
                    });
                }
            }
        }
        Rc::new(next)
    }
}

impl Course {
    /// The last answer given or taken back.
    pub fn last(&self) -> Option<&Last> {
        self.last.as_ref()
    }

    /// The answer that can be taken back: what it was about, and the answers as they were before.
    pub fn undoable(&self) -> Option<(Subject, &Rc<Wizard>)> {
        let given = self.given.last();
        given.map(|given| (given.subject, &given.before))
    }
}

/// Which check is to be offered, each known by what it asks to do.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Offer {
    /// Those that cannot be done now.
    aside: Vec<Text>,
    /// Those that come before all others, the next one first: what the rider wants to do, or has the tools out for.
    wanted: Vec<Text>,
    /// How often another was asked for.
    turns: usize,
}

/// What the rider wants of the checks.
#[derive(Debug, Clone, PartialEq)]
pub enum Want {
    /// This one cannot be done now.
    NotNow(Text),
    /// All that were put aside are to be offered again.
    Again,
    /// This one is to be done now.
    This(Text),
    /// These are to come next: the tools are out.
    Next(Vec<Text>),
}

impl Reducible for Offer {
    type Action = Want;

    fn reduce(self: Rc<Self>, want: Want) -> Rc<Self> {
        let mut next = Rc::unwrap_or_clone(self);
        next.turns += usize::from(!matches!(want, Want::Next(_)));
        match want {
            Want::NotNow(what) => next.aside.push(what),
            Want::Again => next.aside.clear(),
            Want::This(what) => next.wanted.insert(0, what),
            Want::Next(all) => next.wanted = all,
        }
        Rc::new(next)
    }
}

impl Offer {
    /// The check to offer: one that is wanted, else the best of those not put aside; and what else the same tools are good for.
    pub fn of<'a>(&self, checks: &'a [NextCheck]) -> Option<(&'a NextCheck, Vec<&'a NextCheck>)> {
        let rounds = checks.iter().map(round);
        let mut rounds =
            rounds.map(|round| round.filter(|check| !self.aside.contains(&check.what)));
        let wanted = self.wanted.iter().find_map(|what| {
            let mut rounds = rounds.clone();
            rounds
                .find(|round| round.clone().any(|check| check.what == *what))
                .map(|round| (round, what))
        });
        if let Some((round, what)) = wanted {
            let (offered, besides): (Vec<_>, Vec<_>) = round.partition(|check| check.what == *what);
            return offered.first().map(|check| (*check, besides));
        }
        rounds.find_map(|mut round| round.next().map(|check| (check, round.collect())))
    }

    /// Whether any of these checks was put aside.
    pub fn has_aside(&self, checks: &[NextCheck]) -> bool {
        let mut all = checks.iter().flat_map(round);
        all.any(|check| self.aside.contains(&check.what))
    }

    /// How often another check was asked for.
    pub const fn turns(&self) -> usize {
        self.turns
    }
}

/// A check and what else the same tools are good for.
fn round(check: &NextCheck) -> impl Iterator<Item = &NextCheck> + Clone {
    iter::once(check).chain(&check.besides)
}

/// What a check finds out; `None` for one that nothing here can take down.
pub fn subject_of(check: &NextCheck) -> Option<Subject> {
    let page = |question| Subject::Page(Page::Ask(question));
    let look = check.look.map(Subject::Look);
    let lap = check.change.map(Subject::Lap);
    check.question.map(page).or(look).or(lap)
}

#[cfg(test)]
mod tests {
    use sagwright_core::intake::Question;

    use super::*;

    fn check(word: &'static str) -> NextCheck {
        NextCheck {
            what: Text::new(word),
            why: Text::new("x"),
            reading: Text::new("x"),
            minutes: 3,
            question: Some(Question::PushTest),
            look: None,
            change: None,
            cautions: Vec::new(),
            besides: Vec::new(),
        }
    }

    fn after<T: Reducible + Clone>(before: T, step: T::Action) -> T {
        Rc::unwrap_or_clone(Rc::new(before).reduce(step))
    }

    fn offered(offer: &Offer, checks: &[NextCheck]) -> Vec<&'static str> {
        let of = offer.of(checks);
        let all = of.map(|(check, besides)| iter::once(check).chain(besides).collect());
        let all: Vec<&NextCheck> = all.unwrap_or_default();
        let words = ["push", "sag", "level", "spring", "gauge"];
        let word = |check: &NextCheck| {
            let mut words = words.into_iter();
            words.find(|word| check.what == Text::new(*word))
        };
        all.into_iter().filter_map(word).collect()
    }

    fn tape() -> NextCheck {
        NextCheck {
            besides: vec![check("level"), check("spring")],
            ..check("sag")
        }
    }

    #[test]
    fn what_cannot_be_done_now_gives_way_to_the_next() {
        let checks = [check("push"), tape()];
        let not_now = |word| Want::NotNow(Text::new(word));
        let offer = Offer::default();
        assert_eq!(offered(&offer, &checks), ["push"]);
        assert!(!offer.has_aside(&checks));
        let offer = after(offer, not_now("push"));
        assert_eq!(offered(&offer, &checks), ["sag", "level", "spring"]);
        assert!(offer.has_aside(&checks));
        let offer = after(offer, not_now("sag"));
        assert_eq!(offered(&offer, &checks), ["level", "spring"]);
        let offer = ["level", "spring"]
            .into_iter()
            .fold(offer, |offer, word| after(offer, not_now(word)));
        assert_eq!(offer.of(&checks), None);
        let offer = after(offer, Want::Again);
        assert_eq!(offered(&offer, &checks), ["push"]);
        assert_eq!(offer.turns(), 5);
    }

    #[test]
    fn while_the_tools_are_out_the_rest_comes_first() {
        let this = after(Offer::default(), Want::This(Text::new("level")));
        assert_eq!(
            offered(&this, &[check("push"), tape()]),
            ["level", "sag", "spring"]
        );
        // Its answer is used, and another round would be the best now.
        let rest = ["sag", "spring"].map(Text::new).to_vec();
        let next = after(this, Want::Next(rest));
        let spring = NextCheck {
            besides: vec![check("spring")],
            ..check("gauge")
        };
        assert_eq!(
            offered(&next, &[check("push"), spring]),
            ["spring", "gauge"]
        );
        // What is not worth it any more is not offered.
        assert_eq!(offered(&next, &[check("push")]), ["push"]);
    }

    #[test]
    fn answers_are_taken_back_from_the_last_to_the_first() {
        let page = |question| Subject::Page(Page::Ask(question));
        let (first, second) = (page(Question::PushTest), page(Question::SagFront));
        let wizards = ["one", "two", "three"].map(|name| {
            let mut wizard = Wizard::default();
            wizard.intake.note = name.to_owned();
            Rc::new(wizard)
        });
        let course = after(Course::default(), Step::Give(first, Rc::clone(&wizards[0])));
        let course = after(course, Step::Give(second, Rc::clone(&wizards[1])));
        assert_eq!(course.undoable(), Some((second, &wizards[1])));
        let course = after(course, Step::TakeBack(Rc::clone(&wizards[2])));
        assert_eq!(course.undoable(), Some((first, &wizards[0])));
        let last = course.last().expect("a step was taken");
        assert_eq!(
            (last.subject, &last.before, last.back),
            (second, &wizards[2], true)
        );
        let course = after(course, Step::TakeBack(Rc::clone(&wizards[1])));
        assert_eq!(course.undoable(), None);
        // With nothing left to take back nothing happens.
        let still = after(course.clone(), Step::TakeBack(Rc::clone(&wizards[0])));
        assert_eq!(still, course);
    }
}
