//! What was moved, step by step, with a way back.

use std::rc::Rc;

use sagwright_core::advice::what_if::{Lever, Trying};
use sagwright_core::remedy::RemedyId;
use yew::Reducible;

/// Something the rider moved.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Step {
    /// A setting, from where it stands to where it goes, SI.
    Move(Lever, f64, f64),
    /// A remedy, or none.
    Do(Option<RemedyId>),
    /// One step back.
    Undo,
    /// Everything as it stands.
    Reset,
}

/// All that was tried, the last of it at the end.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Course {
    steps: Vec<(Option<Lever>, Trying)>,
}

impl Course {
    /// What is tried now.
    pub fn trying(&self) -> Trying {
        self.steps
            .last()
            .map(|(_, trying)| trying.clone())
            .unwrap_or_default()
    }

    /// Whether there is a step to take back.
    pub fn can_undo(&self) -> bool {
        !self.steps.is_empty()
    }

    /// After a step.
    #[must_use]
    pub fn after(&self, step: Step) -> Self {
        let mut next = self.clone();
        let mut trying = self.trying();
        match step {
            Step::Move(lever, now, to) => {
                // Back where it stands, nothing is tried of it.
                if (now - to).abs() <= 1e-9 * now.abs().max(1e-6) {
                    trying.levers.remove(&lever);
                } else {
                    trying.levers.insert(lever, to);
                }
                // A lever that is still under the finger is one step, however far it went.
                if next
                    .steps
                    .last()
                    .is_some_and(|(last, _)| *last == Some(lever))
                {
                    next.steps.pop();
                }
                if trying != next.trying() {
                    next.steps.push((Some(lever), trying));
                }
            }
            Step::Do(remedy) => {
                trying.remedy = remedy;
                next.steps.push((None, trying));
            }
            Step::Undo => {
                next.steps.pop();
            }
            Step::Reset => next.steps.clear(),
        }
        next
    }
}

impl Reducible for Course {
    type Action = Step;

    fn reduce(self: Rc<Self>, step: Step) -> Rc<Self> {
        Rc::new(self.after(step))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn moved(course: &Course, lever: Lever, to: f64) -> Course {
        course.after(Step::Move(lever, 10.0, to))
    }

    #[test]
    fn each_lever_is_one_step_back() {
        let start = Course::default();
        assert!(start.trying().is_nothing() && !start.can_undo());
        let course = moved(
            &moved(&start, Lever::ForkRebound, 11.0),
            Lever::ForkRebound,
            14.0,
        );
        let course = moved(&course, Lever::ShockRebound, 7.0);
        let course = course.after(Step::Do(Some(RemedyId::ServiceSeals)));
        assert_eq!(course.trying().levers.len(), 2);
        let course = course.after(Step::Undo);
        assert_eq!(course.trying().remedy, None);
        let course = course.after(Step::Undo);
        assert_eq!(course.trying().levers.get(&Lever::ForkRebound), Some(&14.0));
        assert_eq!(course.trying().levers.len(), 1);
        let course = course.after(Step::Undo);
        assert!(course.trying().is_nothing() && !course.can_undo());
        assert_eq!(course.after(Step::Undo), course);
    }

    #[test]
    fn a_lever_put_back_is_not_tried() {
        let course = moved(&Course::default(), Lever::ForkRebound, 14.0);
        let course = moved(&course, Lever::ForkRebound, 10.0);
        assert!(course.trying().is_nothing() && !course.can_undo());
        let course = moved(
            &moved(&course, Lever::ForkRebound, 9.0),
            Lever::ShockRebound,
            3.0,
        );
        assert!(course.after(Step::Reset).trying().is_nothing());
    }
}
