//! How the checks went on this visit: answered, taken back, put aside.

use std::rc::Rc;

use sagwright_core::advice::NextCheck;
use sagwright_core::words::Text;
use yew::Reducible;

use crate::state::{Page, Wizard};

/// What was done with the checks since the page was opened.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Course {
    /// Checks that cannot be done now, known by what they ask to do.
    aside: Vec<Text>,
    /// Answers given, the last one at the end.
    given: Vec<Given>,
    /// The last step.
    last: Option<Last>,
}

/// An answer, and all answers before it.
#[derive(Debug, Clone, PartialEq)]
struct Given {
    page: Page,
    before: Rc<Wizard>,
}

/// The last answer given or taken back.
#[derive(Debug, Clone, PartialEq)]
pub struct Last {
    /// Which page it was on.
    pub page: Page,
    /// All answers before this step.
    pub before: Rc<Wizard>,
    /// Whether it was taken back.
    pub back: bool,
}

/// Something done with a check.
#[derive(Debug, Clone, PartialEq)]
pub enum Step {
    /// Its answer was used; these were the answers before.
    Give(Page, Rc<Wizard>),
    /// The last answer was taken back; these were the answers with it.
    TakeBack(Rc<Wizard>),
    /// It cannot be done now.
    PutAside(Text),
    /// Those put aside are offered again.
    OfferAll,
}

impl Reducible for Course {
    type Action = Step;

    fn reduce(self: Rc<Self>, step: Step) -> Rc<Self> {
        let mut next = (*self).clone();
        match step {
            Step::Give(page, before) => {
                next.given.push(Given {
                    page,
                    before: Rc::clone(&before),
                });
                next.last = Some(Last {
                    page,
                    before,
                    back: false,
                });
            }
            Step::TakeBack(with) => {
                if let Some(given) = next.given.pop() {
                    next.last = Some(Last {
                        page: given.page,
                        before: with,
                        back: true,
                    });
                }
            }
            Step::PutAside(what) => next.aside.push(what),
            Step::OfferAll => next.aside.clear(),
        }
        Rc::new(next)
    }
}

impl Course {
    /// The check to offer: the best of those not put aside.
    pub fn offered<'a>(&self, checks: &'a [NextCheck]) -> Option<&'a NextCheck> {
        let mut open = checks.iter().filter(|check| !self.is_aside(check));
        open.next()
    }

    /// Whether another check could be offered instead of the one that is.
    pub fn has_other(&self, checks: &[NextCheck]) -> bool {
        checks.iter().filter(|check| !self.is_aside(check)).count() > 1
    }

    /// Whether any of these checks was put aside.
    pub fn has_aside(&self, checks: &[NextCheck]) -> bool {
        checks.iter().any(|check| self.is_aside(check))
    }

    fn is_aside(&self, check: &NextCheck) -> bool {
        self.aside.contains(&check.what)
    }

    /// The last answer given or taken back.
    pub fn last(&self) -> Option<&Last> {
        self.last.as_ref()
    }

    /// The answer that can be taken back: its page, and the answers as they were before.
    pub fn undoable(&self) -> Option<(Page, &Rc<Wizard>)> {
        self.given.last().map(|given| (given.page, &given.before))
    }

    /// How many checks have been put aside.
    pub fn aside_count(&self) -> usize {
        self.aside.len()
    }
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
            cautions: Vec::new(),
        }
    }

    fn after(course: Course, step: Step) -> Course {
        Rc::unwrap_or_clone(Rc::new(course).reduce(step))
    }

    #[test]
    fn what_cannot_be_done_now_gives_way_to_the_next() {
        let checks = [check("push"), check("sag")];
        let course = Course::default();
        assert_eq!(course.offered(&checks), Some(&checks[0]));
        assert!(course.has_other(&checks) && !course.has_aside(&checks));
        let course = after(course, Step::PutAside(checks[0].what.clone()));
        assert_eq!(course.offered(&checks), Some(&checks[1]));
        assert!(!course.has_other(&checks) && course.has_aside(&checks));
        let course = after(course, Step::PutAside(checks[1].what.clone()));
        assert_eq!(course.offered(&checks), None);
        let course = after(course, Step::OfferAll);
        assert_eq!(course.offered(&checks), Some(&checks[0]));
    }

    #[test]
    fn answers_are_taken_back_from_the_last_to_the_first() {
        let page = |question| Page::Ask(question);
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
            (last.page, &last.before, last.back),
            (second, &wizards[2], true)
        );
        let course = after(course, Step::TakeBack(Rc::clone(&wizards[1])));
        assert_eq!(course.undoable(), None);
        // With nothing left to take back nothing happens.
        let still = after(course.clone(), Step::TakeBack(Rc::clone(&wizards[0])));
        assert_eq!(still, course);
    }
}
