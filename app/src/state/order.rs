//! The pages in their order, and which of them apply to this rider.

use sagwright_core::intake::{Feeling, ForkKind, Intake, Question};

/// A page that asks something.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Page {
    /// A question asked once.
    Ask(Question),
    /// End, moment, severity and history of one complaint.
    Detail(Feeling),
}

/// A part of the journey; its name stands above the question.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Section {
    /// The rider.
    Rider,
    /// The bike.
    Bike,
    /// The ground.
    Ground,
    /// What is felt.
    Complaints,
    /// What was measured.
    Measured,
    /// Stop-riding signs.
    Safety,
}

impl Section {
    /// Every section, in order.
    pub const ALL: &[Self] = &[
        Self::Rider,
        Self::Bike,
        Self::Ground,
        Self::Complaints,
        Self::Measured,
        Self::Safety,
    ];

    /// The word for it in text keys.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Rider => "rider",
            Self::Bike => "bike",
            Self::Ground => "ground",
            Self::Complaints => "complaints",
            Self::Measured => "measured",
            Self::Safety => "safety",
        }
    }
}

/// How far along its section a page is, where that can be said reliably.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Step {
    /// Counted from 1.
    pub at: usize,
    /// Pages in all.
    pub of: usize,
}

impl Page {
    /// Every page that applies to these answers, in the order in which they are asked.
    pub fn all(intake: &Intake) -> Vec<Self> {
        let mut pages = Vec::with_capacity(Question::ALL.len());
        for question in Question::ALL {
            match question {
                Question::ComplaintDetail => {
                    let complaints = intake.complaints.iter().flatten();
                    pages.extend(complaints.map(|c| Self::Detail(c.feeling)));
                }
                asked if applies(*asked, intake) => pages.push(Self::Ask(*asked)),
                _ => {}
            }
        }
        pages
    }

    /// The question this page belongs to.
    pub const fn question(self) -> Question {
        match self {
            Self::Ask(question) => question,
            Self::Detail(_) => Question::ComplaintDetail,
        }
    }

    /// The section this page belongs to.
    pub const fn section(self) -> Section {
        use Question as Q;
        match self.question() {
            Q::RiderWeight | Q::RiderGear | Q::RiderPace | Q::RiderPosture | Q::RiderHeight => {
                Section::Rider
            }
            Q::BikeClass
            | Q::BikeWeight
            | Q::BikeFuel
            | Q::BikeFork
            | Q::ForkSpring
            | Q::ForkGas
            | Q::BikeShock
            | Q::ShockSpring
            | Q::ForkClickers
            | Q::ShockClickers
            | Q::ServiceHours => Section::Bike,
            Q::GroundMix | Q::GroundUsual | Q::GroundToday => Section::Ground,
            Q::Complaints | Q::ComplaintDetail => Section::Complaints,
            Q::SagFront | Q::SagRear | Q::TravelUsed | Q::TyrePressures | Q::PushTest => {
                Section::Measured
            }
            Q::StopSigns => Section::Safety,
        }
    }

    /// Where this page stands in its section; `None` while the section's length depends on this very answer.
    pub fn step(self, intake: &Intake) -> Option<Step> {
        if self == Self::Ask(Question::Complaints) {
            return None;
        }
        let counted = |page: &Self| {
            page.section() == self.section() && *page != Self::Ask(Question::Complaints)
        };
        let pages: Vec<Self> = Self::all(intake).into_iter().filter(counted).collect();
        let at = pages.iter().position(|page| *page == self)? + 1;
        let of = pages.len();
        (of > 1).then_some(Step { at, of })
    }

    /// The page before, if any.
    pub fn before(self, intake: &Intake) -> Option<Self> {
        let pages = Self::all(intake);
        let at = pages.iter().position(|page| *page == self)?;
        at.checked_sub(1).and_then(|i| pages.get(i)).copied()
    }

    /// The page after, if any.
    pub fn after(self, intake: &Intake) -> Option<Self> {
        let pages = Self::all(intake);
        let at = pages.iter().position(|page| *page == self)?;
        pages.get(at + 1).copied()
    }

    /// Whether an answer on this page can bring up `other`.
    pub const fn brings_up(self, other: Self) -> bool {
        match (self, other) {
            (Self::Ask(Question::BikeFork), Self::Ask(question)) => {
                matches!(question, Question::ForkSpring | Question::ForkGas)
            }
            (Self::Ask(Question::Complaints) | Self::Detail(_), Self::Detail(_)) => true,
            _ => false,
        }
    }
}

/// Whether a question has a place in these answers at all.
pub const fn applies(question: Question, intake: &Intake) -> bool {
    match question {
        Question::ForkGas => matches!(intake.bike.fork, Some(ForkKind::GasOneLeg)),
        Question::ForkSpring => !matches!(intake.bike.fork, Some(ForkKind::GasOneLeg)),
        Question::ComplaintDetail => match &intake.complaints {
            Some(complaints) => !complaints.is_empty(),
            None => false,
        },
        _ => true,
    }
}
