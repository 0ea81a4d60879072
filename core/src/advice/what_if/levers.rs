//! What can be moved on a bike to see what it would do.

use serde::{Deserialize, Serialize};

use crate::bench::{Bench, Trial};
use crate::bike::{Class, ForkSpring};
use crate::intake::{Field, Intake, check, choice};
use crate::quantity::Dimension;
use crate::remedy::RemedyId;
use crate::remedy::apply::{Suits, done};
use crate::ride::RideError;
use crate::sorted::Map;
use crate::stance::baseline::fork_step;
use crate::stance::{Baseline, Situation, baseline};
use crate::units::{metre, newton_per_m, pascal};
use crate::words::Text;

choice! {
    /// A setting that can be moved.
    Lever {
        /// Rate of each fork spring, N/m.
        ForkRate = "fork-rate",
        /// Gas pressure of the fork, gauge, in the air it was filled in, Pa.
        ForkPressure = "fork-pressure",
        /// Preload of the fork springs, m.
        ForkPreload = "fork-preload",
        /// Air over the oil in each leg, squeezed to its end, m: more oil leaves less of it.
        OilLevel = "oil-level",
        /// Fork compression, clicks from closed.
        ForkCompression = "fork-compression",
        /// Fork rebound, clicks from closed.
        ForkRebound = "fork-rebound",
        /// Rate of the shock spring, N/m.
        ShockRate = "shock-rate",
        /// Preload of the shock spring, m.
        ShockPreload = "shock-preload",
        /// Shock low-speed compression, clicks from closed.
        ShockCompression = "shock-low-compression",
        /// Shock rebound, clicks from closed.
        ShockRebound = "shock-rebound",
    }
}

impl Lever {
    /// What it measures.
    pub const fn dimension(self) -> Dimension {
        match self {
            Self::ForkRate | Self::ShockRate => Dimension::Rate,
            Self::ForkPressure => Dimension::Pressure,
            Self::ForkPreload | Self::ShockPreload | Self::OilLevel => Dimension::Length,
            Self::ForkCompression
            | Self::ForkRebound
            | Self::ShockCompression
            | Self::ShockRebound => Dimension::Clicks,
        }
    }

    /// Its label.
    pub fn label(self) -> Text {
        Text::new(format!("setting.{}", self.word()))
    }

    /// The answer that says where it stands, where there is one.
    pub const fn field(self) -> Option<Field> {
        match self {
            Self::ForkRate => Some(Field::ForkRate),
            Self::ForkPressure => Some(Field::ForkPressure),
            Self::ForkPreload => Some(Field::ForkPreload),
            Self::OilLevel => None,
            Self::ForkCompression => Some(Field::ForkCompressionNow),
            Self::ForkRebound => Some(Field::ForkReboundNow),
            Self::ShockRate => Some(Field::ShockRate),
            Self::ShockPreload => Some(Field::ShockPreload),
            Self::ShockCompression => Some(Field::ShockLowNow),
            Self::ShockRebound => Some(Field::ShockReboundNow),
        }
    }

    /// Its place among the four adjusters.
    const fn adjuster(self) -> Option<usize> {
        match self {
            Self::ForkCompression => Some(0),
            Self::ForkRebound => Some(1),
            Self::ShockCompression => Some(2),
            Self::ShockRebound => Some(3),
            _ => None,
        }
    }

    /// Where it stands on a bike, SI; `None` where the bike has no such thing.
    fn on(self, trial: &Trial) -> Option<f64> {
        let (fork, shock) = (&trial.set_up.fork, &trial.set_up.shock);
        if let Some(place) = self.adjuster() {
            return Some(f64::from(trial.clicks[place]));
        }
        match (self, fork.spring) {
            (Self::ForkRate, ForkSpring::Coil { rate, .. }) => Some(rate.value),
            (Self::ForkPreload, ForkSpring::Coil { preload, .. }) => Some(preload.value),
            (Self::ForkPressure, ForkSpring::Gas { charge }) => Some(charge.value),
            (Self::OilLevel, _) => Some(fork.air_gap.value),
            (Self::ShockRate, _) => Some(shock.rate.value),
            (Self::ShockPreload, _) => Some(shock.preload.value),
            _ => None,
        }
    }

    /// Moves it on a bike that has it.
    fn put(self, trial: &mut Trial, si: f64) {
        if let Some(place) = self.adjuster() {
            #[expect(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "an adjuster has at most 60 clicks"
            )]
            let clicks = si.round().clamp(0.0, 60.0) as u8;
            trial.clicks[place] = clicks;
            return;
        }
        let (fork, shock) = (&mut trial.set_up.fork, &mut trial.set_up.shock);
        match (self, &mut fork.spring) {
            (Self::ForkRate, ForkSpring::Coil { rate, .. }) => *rate = newton_per_m(si),
            (Self::ForkPreload, ForkSpring::Coil { preload, .. }) => *preload = metre(si),
            (Self::ForkPressure, ForkSpring::Gas { charge }) => *charge = pascal(si),
            (Self::OilLevel, _) => fork.air_gap = metre(si),
            (Self::ShockRate, _) => shock.rate = newton_per_m(si),
            (Self::ShockPreload, _) => shock.preload = metre(si),
            _ => {}
        }
    }
}

/// What is tried: settings moved, and then perhaps a remedy done. Empty is the bike as it stands.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Trying {
    /// Settings with where they are moved to, SI.
    pub levers: Map<Lever, f64>,
    /// A remedy done.
    pub remedy: Option<RemedyId>,
}

impl Trying {
    /// Whether nothing is tried.
    pub fn is_nothing(&self) -> bool {
        self.levers.is_empty() && self.remedy.is_none()
    }
}

/// A setting of this bike and how far it can be moved, SI.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Movable {
    /// Which.
    pub lever: Lever,
    /// Where it stands.
    pub now: f64,
    /// Least.
    pub low: f64,
    /// Most.
    pub high: f64,
    /// Step.
    pub step: f64,
}

/// A rider's bike as it stands, ready to be changed.
#[derive(Debug, Clone, PartialEq)]
pub struct Workbench {
    pub(super) intake: Intake,
    pub(super) situation: Situation,
    pub(super) baseline: Baseline,
}

impl Workbench {
    /// From answers; `None` where they do not pass their checks, where a stop-riding sign was seen, or where the bike cannot
    /// be put together.
    pub fn of(intake: &Intake) -> Option<Self> {
        check(intake).ok()?;
        if intake
            .stop_signs
            .as_ref()
            .is_some_and(|signs| !signs.is_empty())
        {
            return None;
        }
        let situation = Situation::of(intake);
        let suits = baseline(&situation);
        let bench = Self {
            intake: intake.clone(),
            baseline: suits,
            situation,
        };
        bench.bench().ok()?;
        Some(bench)
    }

    pub(super) fn bench(&self) -> Result<Bench<'_>, RideError> {
        Ok(Bench::of(&self.situation, &self.baseline)?.as_told(&self.intake))
    }

    /// Every setting that this bike has.
    pub fn movable(&self) -> Vec<Movable> {
        let Ok(bench) = self.bench() else {
            return Vec::new();
        };
        let now = bench.now();
        let levers = Lever::ALL.iter();
        levers
            .filter_map(|lever| {
                let at = lever.on(&now)?;
                let (low, high, step) = self.reach(*lever, at, &bench);
                // What is tried can become an answer, so it stays within what an answer may be.
                let may = lever.field().map(Field::allowed);
                let (low, high) =
                    may.map_or((low, high), |may| (low.max(may.low), high.min(may.high)));
                Some(Movable {
                    lever: *lever,
                    now: at,
                    low: low.min(at),
                    high: high.max(at),
                    step,
                })
            })
            .collect()
    }

    /// Least, most and step of a lever: what is sold, what is screwed and what a part takes. Common practice, from memory.
    fn reach(&self, lever: Lever, at: f64, bench: &Bench) -> (f64, f64, f64) {
        /// How far from the spring fitted another is looked at, steps.
        const SPRINGS: f64 = 8.0;
        const BAR: f64 = 1e5;
        const MM: f64 = 1e-3;
        match lever {
            Lever::ForkRate | Lever::ShockRate => {
                let step = match lever {
                    Lever::ForkRate => fork_step(&self.situation.machine).value,
                    _ => Class::SHOCK_RATE_STEP.value,
                };
                ((at - SPRINGS * step).max(step), at + SPRINGS * step, step)
            }
            Lever::ForkPressure => {
                let most = self
                    .situation
                    .marked_maximum
                    .map_or(at + 4.0 * BAR, |most| most.value);
                ((at - 4.0 * BAR).max(BAR), most, 0.1 * BAR)
            }
            Lever::ForkPreload => (0.0, 25.0 * MM, MM),
            Lever::ShockPreload => (0.0, 30.0 * MM, MM),
            Lever::OilLevel => (60.0 * MM, 150.0 * MM, 5.0 * MM),
            Lever::ForkCompression
            | Lever::ForkRebound
            | Lever::ShockCompression
            | Lever::ShockRebound => {
                let last = lever.adjuster().map_or(0, |place| bench.ranges()[place]);
                (0.0, f64::from(last), 1.0)
            }
        }
    }

    /// The remedies that would change something on this bike beyond what the levers move by a click or two.
    pub fn remedies(&self) -> Vec<RemedyId> {
        let Ok(bench) = self.bench() else {
            return Vec::new();
        };
        let (now, healthy) = (bench.now(), bench.advised());
        let suits = Suits::new(&bench, &healthy);
        let all = RemedyId::ALL.iter().copied();
        all.filter(|remedy| {
            let after = done(*remedy, &suits, &now);
            after != now && after.clicks == now.clicks
        })
        .collect()
    }

    /// The bike as it stands, and as tried.
    pub(super) fn trials(bench: &Bench, trying: &Trying) -> (Trial, Trial) {
        let now = bench.now();
        let mut tried = now.clone();
        for (lever, si) in &trying.levers {
            lever.put(&mut tried, *si);
        }
        if let Some(remedy) = trying.remedy {
            let healthy = bench.advised();
            tried = done(remedy, &Suits::new(bench, &healthy), &tried);
        }
        (now, tried)
    }

    /// The answers that would say what is tried, SI, and whether they say all of it.
    pub fn answers(&self, trying: &Trying) -> (Vec<(Field, f64)>, bool) {
        let Ok(bench) = self.bench() else {
            return (Vec::new(), false);
        };
        let (now, tried) = Self::trials(&bench, trying);
        // What answers can say is put on the bike as it stands; what then is still missing they cannot say.
        let mut said = now.clone();
        let mut answers = Vec::new();
        for lever in Lever::ALL {
            let (Some(field), Some(after)) = (lever.field(), lever.on(&tried)) else {
                continue;
            };
            if lever.on(&now) != Some(after) {
                lever.put(&mut said, after);
                answers.push((field, after));
            }
        }
        let hours = |hours: f64| hours * 3600.0;
        let (fork, shock) = (&tried.set_up.fork.wear, &tried.set_up.shock.wear);
        if fork.hours < now.set_up.fork.wear.hours {
            said.set_up.fork.wear.hours = fork.hours;
            answers.push((Field::ForkHours, hours(fork.hours)));
        }
        if shock.hours < now.set_up.shock.wear.hours {
            said.set_up.shock.wear.hours = shock.hours;
            answers.push((Field::ShockHours, hours(shock.hours)));
        }
        (answers, said == tried)
    }
}
