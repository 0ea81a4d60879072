//! How the checks went on this visit: answered and taken back, or put aside.

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

/// Checks that cannot be done now, known by what they ask to do.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Aside(Vec<Text>);

/// What becomes of those that cannot be done now.
#[derive(Debug, Clone, PartialEq)]
pub enum Putting {
    /// This is one more.
    Aside(Text),
    /// All are offered again.
    Back,
}

impl Reducible for Aside {
    type Action = Putting;

    fn reduce(self: Rc<Self>, putting: Putting) -> Rc<Self> {
        let mut next = Rc::unwrap_or_clone(self);
        match putting {
            Putting::Aside(what) => next.0.push(what),
            Putting::Back => next.0.clear(),
        }
        Rc::new(next)
    }
}

impl Aside {
    /// The check to offer: the best of those not put aside.
    pub fn offered<'a>(&self, checks: &'a [NextCheck]) -> Option<&'a NextCheck> {
        let mut open = checks.iter().filter(|check| !self.has(check));
        open.next()
    }

    /// Whether any of these checks was put aside.
    pub fn has_any(&self, checks: &[NextCheck]) -> bool {
        checks.iter().any(|check| self.has(check))
    }

    fn has(&self, check: &NextCheck) -> bool {
        self.0.contains(&check.what)
    }

    /// How many there are.
    pub fn count(&self) -> usize {
        self.0.len()
    }
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
        }
    }

    fn after<T: Reducible + Clone>(before: T, step: T::Action) -> T {
        Rc::unwrap_or_clone(Rc::new(before).reduce(step))
    }

    #[test]
    fn what_cannot_be_done_now_gives_way_to_the_next() {
        let checks = [check("push"), check("sag")];
        let aside = Aside::default();
        assert_eq!(aside.offered(&checks), Some(&checks[0]));
        assert!(!aside.has_any(&checks));
        let aside = after(aside, Putting::Aside(checks[0].what.clone()));
        assert_eq!(aside.offered(&checks), Some(&checks[1]));
        assert!(aside.has_any(&checks));
        let aside = after(aside, Putting::Aside(checks[1].what.clone()));
        assert_eq!(aside.offered(&checks), None);
        let aside = after(aside, Putting::Back);
        assert_eq!(aside.offered(&checks), Some(&checks[0]));
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
