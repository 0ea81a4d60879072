//! Everything that can be told about a job at the counter.

use std::rc::Rc;

use sagwright_core::intake::{Field, Intake, Question};
use serde::Serialize;

use super::job::{Heard, Job, Part, Stage, Work};
use super::told::{Moment, Told};
use crate::route::Route;
use crate::state::{Action, Page, Subject, Wizard};

/// Something told.
#[derive(Debug, Clone, PartialEq)]
pub enum Change {
    /// The rider's name or number.
    Name(String),
    /// How to reach the rider.
    Contact(String),
    /// Where the job stands.
    Stage(Stage),
    /// A tag put on or taken off.
    Tag(String, bool),
    /// A note under its name; an empty one takes it out.
    Note(String, String),
    /// A visit under its name; `None` takes it out.
    Work(String, Option<Box<Work>>),
    /// What was heard back, under its name; `None` takes it out.
    Heard(String, Option<Heard>),
    /// A page's answers as these answers have them.
    Correct(Page, Rc<Wizard>),
}

/// The numbers a bike leaves with, in the order of the settings card.
pub const LEAVES_WITH: &[Field] = &[
    Field::ForkRate,
    Field::ForkPressure,
    Field::ForkPreload,
    Field::ForkCompressionNow,
    Field::ForkReboundNow,
    Field::ForkFreeSag,
    Field::ForkRiderSag,
    Field::FrontTyre,
    Field::ShockRate,
    Field::ShockPreload,
    Field::ShockLowNow,
    Field::ShockHighNow,
    Field::ShockReboundNow,
    Field::RearFreeSag,
    Field::RearRiderSag,
    Field::RearTyre,
];

impl Job {
    /// Takes in `change`, told at `now`. Saying the same again changes nothing.
    pub fn hear(&mut self, change: Change, now: Moment) {
        match change {
            Change::Name(name) => say(&mut self.name, name, now),
            Change::Contact(contact) => say(&mut self.contact, contact, now),
            Change::Stage(stage) => say(&mut self.stage, stage, now),
            Change::Tag(tag, on) => say(self.tags.entry(tag).or_default(), on, now),
            Change::Note(name, note) => say(self.notes.entry(name).or_default(), note, now),
            Change::Work(name, work) => {
                say(
                    self.work.entry(name).or_default(),
                    work.map(|work| *work),
                    now,
                );
            }
            Change::Heard(name, heard) => say(self.heard.entry(name).or_default(), heard, now),
            Change::Correct(page, answers) => {
                // Put right to what stands there already is not put right.
                if !same_on(page, &answers, &self.now()) {
                    let part = part_of(page, &answers);
                    say(self.corrected.entry(address(page)).or_default(), part, now);
                }
            }
        }
    }

    /// The answers as they came.
    pub fn as_came(&self) -> Wizard {
        Wizard::from_intake(self.intake.clone())
    }

    /// The answers with everything put right at the counter.
    pub fn now(&self) -> Wizard {
        let mut pages: Vec<(Page, &Part)> = self
            .corrected
            .iter()
            .filter_map(|(address, told)| Some((page_at(address)?, &told.is)))
            .collect();
        // What brings a question up goes before it.
        pages.sort_by_key(|(page, _)| *page);
        pages
            .into_iter()
            .fold(self.as_came(), |wizard, (page, part)| {
                let part = Rc::new(Wizard::from_intake(part.0.clone()));
                wizard.after(Action::Adopt(Subject::Page(page), part))
            })
    }

    /// The pages whose answers are others now than they came.
    pub fn pages_put_right(&self) -> Vec<Page> {
        let (came, now) = (self.as_came(), self.now());
        let pages = Page::all(&now.intake);
        let other = |page: &Page| !same_on(*page, &came, &now);
        pages.into_iter().filter(other).collect()
    }

    /// The answers with the numbers the bike left with, visit after visit, in place of those it came with.
    pub fn after_work(&self) -> Intake {
        let mut intake = self.now().document();
        for (_, work) in self.work() {
            for field in LEAVES_WITH {
                if let Some(number) = field.get(&work.set) {
                    field.set(&mut intake, Some(number));
                }
            }
        }
        intake
    }
}

/// Told now, or a moment after what was told before: then the clock has been set back in between.
fn say<T: PartialEq + Clone + Serialize>(told: &mut Told<T>, is: T, now: Moment) {
    if told.is != is {
        let at = now.max(told.at.saturating_add(1));
        *told = Told::new(is, at);
    }
}

/// The address a page is kept under.
pub fn address(page: Page) -> String {
    Route::ask(page).fragment()
}

/// The page at an address; `None` for an address that leads to no question.
pub fn page_at(address: &str) -> Option<Page> {
    match Route::from_fragment(address) {
        Route::Ask {
            page,
            changing: false,
        } => Some(page),
        _ => None,
    }
}

/// One page's answers alone.
fn part_of(page: Page, answers: &Wizard) -> Part {
    let empty = match page {
        // A complaint must be there before there can be more about it.
        Page::Detail(feeling) => Wizard::default().after(Action::Feel(feeling, true)),
        Page::Ask(_) => Wizard::default(),
    };
    let from = Rc::new(answers.clone());
    let mut intake = empty.after(Action::Adopt(Subject::Page(page), from)).intake;
    // A page passed with "I don't know" keeps in its boxes what stood there; the document leaves it out, and so does this.
    if let Page::Ask(question) = page
        && intake.dont_know.contains(&question)
    {
        let of_page = Field::ALL
            .iter()
            .filter(|field| field.question() == question);
        of_page.for_each(|field| field.set(&mut intake, None));
    }
    Part(intake)
}

/// Whether two sets of answers say the same on a page.
fn same_on(page: Page, one: &Wizard, other: &Wizard) -> bool {
    if page == Page::Ask(Question::Complaints) {
        // More about a complaint is another page's.
        let felt = |wizard: &Wizard| {
            let complaints = wizard.intake.complaints.as_ref();
            complaints.map(|all| all.iter().map(|one| one.feeling).collect::<Vec<_>>())
        };
        let passed = |wizard: &Wizard| wizard.is_passed(page);
        return felt(one) == felt(other) && passed(one) == passed(other);
    }
    part_of(page, one) == part_of(page, other)
}
