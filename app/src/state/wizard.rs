//! The answers given, as typed and as understood.

use sagwright_core::intake::{Complaint, Feeling, Field, Intake, Question};
use sagwright_core::quantity::Unit;
use sagwright_core::sorted::{Map, Set};
use sagwright_core::words::UnitChoice;

use super::order::{Page, applies};
use super::slot::{Aspect, Slot};
use super::typed::TypedText;

/// Everything the rider has said so far.
///
/// Invariant: a number stands in `intake` exactly when its box in `typed` holds one within the allowed range.
/// Answers that a later answer made void stay here, in case it is taken back; [`Wizard::document`] leaves them out.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Wizard {
    /// The answers, as a document that is not finished.
    pub intake: Intake,
    /// Every number as typed.
    pub typed: Map<Field, TypedText>,
    /// Which unit each kind of number is typed and shown in.
    pub units: UnitChoice,
    /// Groups in which the rider picked "I can't say", where the document has no word for that.
    pub cannot_say: Set<Slot>,
}

impl Wizard {
    /// The wizard as it stands after these answers were given: for an opened document.
    ///
    /// Each quantity is shown in the unit in which the document first gives it.
    pub fn from_intake(intake: Intake) -> Self {
        let mut wizard = Self::default();
        for field in Field::ALL.iter().rev() {
            if let Some(answer) = field.get(&intake) {
                wizard.units.choose(field.dimension(), answer.unit);
                wizard.typed.insert(*field, TypedText::from_answer(answer));
            }
        }
        wizard.intake = intake;
        wizard
    }

    /// The answers that apply, as the document that is saved, checked and advised on.
    pub fn document(&self) -> Intake {
        let mut intake = self.intake.clone();
        for field in Field::ALL {
            let question = field.question();
            if !applies(question, &self.intake) || self.intake.dont_know.contains(&question) {
                field.set(&mut intake, None);
            }
        }
        for told in &mut intake.extra {
            told.answer = told.answer.trim().to_owned();
        }
        intake.extra.retain(|told| !told.answer.is_empty());
        intake.dont_know.retain(|q| applies(*q, &self.intake));
        let vague = |c: &Complaint| self.is_answered(Page::Detail(c.feeling)) && has_no_detail(c);
        if self.intake.complaints.iter().flatten().any(vague) {
            intake.dont_know.insert(Question::ComplaintDetail);
        }
        intake
    }

    /// Whether nothing at all has been said yet.
    pub fn is_untouched(&self) -> bool {
        self.intake == Intake::default() && self.typed.values().all(TypedText::is_blank)
    }

    /// The first page that has no answer, in order.
    pub fn first_open(&self) -> Option<Page> {
        let pages = Page::all(&self.intake);
        pages.into_iter().find(|page| !self.is_answered(*page))
    }

    /// Whether this page has an answer, "I don't know" included.
    pub fn is_answered(&self, page: Page) -> bool {
        let question = page.question();
        if let Page::Detail(feeling) = page {
            let said = self.complaint(feeling).is_some_and(|c| !has_no_detail(c));
            return said || self.cannot_say.iter().any(|slot| is_about(*slot, feeling));
        }
        if self.intake.dont_know.contains(&question) {
            return true;
        }
        match question {
            Question::GroundMix => {
                let mix = self.intake.ground.mix.as_ref();
                mix.is_some_and(|mix| !mix.is_empty())
            }
            Question::Complaints => self.intake.complaints.is_some(),
            Question::StopSigns => self.intake.stop_signs.is_some(),
            Question::PushTest => {
                let measured = &self.intake.measured;
                measured.push_front.is_some() || measured.push_rear.is_some()
            }
            single if Slot::is_single(single) => Slot::One(single).get(self).is_some(),
            _ => fields_of(question).any(|field| field.get(&self.intake).is_some()),
        }
    }

    /// Whether the whole page was answered with "I don't know".
    pub fn is_passed(&self, page: Page) -> bool {
        match page {
            Page::Ask(question) => self.intake.dont_know.contains(&question),
            Page::Detail(feeling) => Aspect::ALL
                .iter()
                .all(|aspect| self.cannot_say.contains(&Slot::Detail(feeling, *aspect))),
        }
    }

    /// The complaint about `feeling`, if it was made.
    pub fn complaint(&self, feeling: Feeling) -> Option<&Complaint> {
        let complaints = self.intake.complaints.as_ref()?;
        complaints.iter().find(|c| c.feeling == feeling)
    }

    /// The complaint about `feeling`, to be changed.
    pub fn complaint_mut(&mut self, feeling: Feeling) -> Option<&mut Complaint> {
        let complaints = self.intake.complaints.as_mut()?;
        complaints.iter_mut().find(|c| c.feeling == feeling)
    }

    /// The unit in which `field` is shown now.
    pub fn unit_of(&self, field: Field) -> Unit {
        self.units.unit(field.dimension())
    }

    /// What the box of `field` shows now.
    pub fn shown(&self, field: Field) -> String {
        let typed = self.typed.get(&field);
        typed.map_or_else(String::new, |typed| typed.shown_in(self.unit_of(field)))
    }

    /// The box of `field`, blank if nothing was typed yet.
    pub fn box_of(&mut self, field: Field) -> &mut TypedText {
        let unit = self.unit_of(field);
        let blank = || TypedText::blank(unit);
        self.typed.entry(field).or_insert_with(blank)
    }

    /// Takes what stands in the box of `field` over into the answers, if it is a number that can be worked with.
    pub fn settle(&mut self, field: Field) {
        let typed = self.typed.get(&field).and_then(TypedText::answer);
        let usable = typed.filter(|t| t.value.is_finite() && field.allowed().holds(t.si()));
        field.set(&mut self.intake, usable);
    }

    /// The wizard with the boxes of `page` taken as its answer: something typed overrules "I don't know".
    #[must_use]
    pub fn accepted(&self, page: Page) -> Self {
        let mut next = self.clone();
        let question = page.question();
        let typed_here = |field: &Field| {
            let typed = self.typed.get(field);
            typed.is_some_and(|typed| !typed.is_blank())
        };
        if fields_of(question).any(|field| typed_here(&field)) {
            next.intake.dont_know.remove(&question);
        }
        fields_of(question).for_each(|field| next.settle(field));
        next
    }
}

/// The number boxes of a page, in order.
pub fn fields_of(question: Question) -> impl Iterator<Item = Field> {
    let fields = Field::ALL.iter().copied();
    fields.filter(move |field| field.question() == question)
}

fn has_no_detail(complaint: &Complaint) -> bool {
    complaint.end.is_none()
        && complaint.phases.is_empty()
        && complaint.severity.is_none()
        && complaint.since.is_none()
}

fn is_about(slot: Slot, feeling: Feeling) -> bool {
    matches!(slot, Slot::Detail(of, _) if of == feeling)
}

impl Aspect {
    /// Everything asked about a complaint, in order.
    pub const ALL: &[Self] = &[Self::End, Self::Phases, Self::Severity, Self::Since];
}
