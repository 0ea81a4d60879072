//! How good beliefs are against the truth.

use std::collections::BTreeMap;
use std::fmt::Write;

use crate::luck::Luck;
use sagwright_core::cause::{Cause, PerCause};

/// A belief with what was really there.
pub struct Judged {
    /// What was there.
    pub truth: Vec<Cause>,
    /// What was believed.
    pub belief: PerCause,
    /// What the rider's words cannot tell from what was there.
    pub alike: Vec<Cause>,
    /// Checks done by then, and the minutes they took.
    pub checks: [f64; 2],
}

impl Judged {
    /// Causes, most believed first.
    pub fn ranked(&self) -> Vec<Cause> {
        let mut all: Vec<Cause> = Cause::ALL.to_vec();
        all.sort_by(|a, b| self.belief[b.index()].total_cmp(&self.belief[a.index()]));
        all
    }

    /// Place of the best-placed true cause, from 0.
    pub fn place(&self) -> usize {
        self.place_of(|cause| self.truth.contains(&cause))
    }

    /// Place of the first that is true or feels like what is true, from 0.
    pub fn place_alike(&self) -> usize {
        self.place_of(|cause| self.truth.contains(&cause) || self.alike.contains(&cause))
    }

    fn place_of(&self, is: impl Fn(Cause) -> bool) -> usize {
        let ranked = self.ranked();
        let first = ranked.iter().position(|cause| is(*cause));
        first.unwrap_or(ranked.len())
    }
}

/// Figures over many beliefs.
#[derive(Debug, Clone, Copy)]
pub struct Score {
    /// How many.
    pub cases: usize,
    /// Checks done, and the minutes they took, on average.
    pub checks: [f64; 2],
    /// Share in which a true cause leads.
    pub top_1: f64,
    /// Share in which a true cause is among the first three.
    pub top_3: f64,
    /// The same two, causes that feel alike counted as one.
    pub alike: [f64; 2],
    /// Brier score: mean over cases of the sum over causes of (stated − true)².
    pub brier: f64,
    /// Mean of −ln of the chance stated for what was there.
    pub log_loss: f64,
    /// Expected calibration error of the leading cause, ten bins.
    pub leader_error: f64,
    /// What that would come to by luck alone if every stated chance were exactly right: with few cases in a bin the share that
    /// comes true strays, however honest the reader.
    pub leader_luck: f64,
    /// The error over all chances of 5 % and more.
    pub stated_error: f64,
}

/// One bin of a reliability curve.
#[derive(Debug, Clone, Copy, Default)]
pub struct Bin {
    /// How many chances fell into it.
    pub count: f64,
    /// Sum of what was stated.
    pub stated: f64,
    /// How often it was so.
    pub came: f64,
}

/// A reliability curve of ten bins from pairs of a stated chance and whether it was so.
pub fn reliability(pairs: impl Iterator<Item = (f64, bool)>) -> [Bin; 10] {
    let mut bins = [Bin::default(); 10];
    for (stated, came) in pairs {
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "a chance times ten"
        )]
        let bin = &mut bins[((stated * 10.0) as usize).min(9)];
        bin.count += 1.0;
        bin.stated += stated;
        bin.came += f64::from(u8::from(came));
    }
    bins
}

/// Mean distance of stated and true shares, weighted by count.
pub fn calibration_error(bins: &[Bin]) -> f64 {
    let all: f64 = bins.iter().map(|bin| bin.count).sum();
    let off: f64 = bins.iter().map(|bin| (bin.stated - bin.came).abs()).sum();
    off / all.max(1.0)
}

/// Stated chance of the leading cause and whether it was there, case by case.
pub fn leaders(all: &[Judged]) -> impl Iterator<Item = (f64, bool)> {
    all.iter().map(|one| {
        let leader = one.ranked()[0];
        (one.belief[leader.index()], one.truth.contains(&leader))
    })
}

/// Mean calibration error of the leading cause if what was stated came true by just these chances.
fn by_luck(all: &[Judged]) -> f64 {
    const DRAWS: u32 = 200;
    let mut luck = Luck::seeded(7, 0);
    let errors = (0..DRAWS).map(|_| {
        let drawn = leaders(all).map(|(stated, _)| (stated, luck.happens(stated)));
        calibration_error(&reliability(drawn))
    });
    errors.sum::<f64>() / f64::from(DRAWS)
}

/// Every stated chance worth printing.
pub fn stated(all: &[Judged]) -> impl Iterator<Item = (f64, bool)> {
    const WORTH: f64 = 0.05;
    all.iter().flat_map(|one| {
        Cause::ALL
            .iter()
            .map(|cause| (one.belief[cause.index()], one.truth.contains(cause)))
            .filter(|(chance, _)| *chance >= WORTH)
    })
}

impl Score {
    /// Over all of these.
    #[expect(clippy::cast_precision_loss, reason = "some hundred cases")]
    pub fn of(all: &[Judged]) -> Self {
        let count = all.len().max(1) as f64;
        let share = |keep: &dyn Fn(&Judged) -> bool| {
            all.iter().filter(|one| keep(one)).count() as f64 / count
        };
        let brier = |one: &Judged| -> f64 {
            Cause::ALL
                .iter()
                .map(|cause| {
                    let so = f64::from(u8::from(one.truth.contains(cause)));
                    let off = one.belief[cause.index()] - so;
                    off * off
                })
                .sum()
        };
        let loss = |one: &Judged| -> f64 {
            let chances = one.truth.iter().map(|cause| one.belief[cause.index()]);
            let terms = chances.map(|chance| -libm::log(chance.max(1e-6)));
            terms.sum::<f64>() / one.truth.len() as f64
        };
        Self {
            cases: all.len(),
            checks: [0, 1].map(|of| all.iter().map(|one| one.checks[of]).sum::<f64>() / count),
            top_1: share(&|one| one.place() < 1),
            top_3: share(&|one| one.place() < 3),
            alike: [1, 3].map(|most| share(&|one| one.place_alike() < most)),
            brier: all.iter().map(brier).sum::<f64>() / count,
            log_loss: all.iter().map(loss).sum::<f64>() / count,
            leader_error: calibration_error(&reliability(leaders(all))),
            leader_luck: by_luck(all),
            stated_error: calibration_error(&reliability(stated(all))),
        }
    }

    /// As a row of a table.
    pub fn row(&self, name: &str) -> String {
        format!(
            "| {name} | {} | {:.1} | {:.0} | {:.3} | {:.3} | {:.3} | {:.3} | {:.3} | {:.3} | {:.3} | {:.3} | {:.3} |\n",
            self.cases,
            self.checks[0],
            self.checks[1],
            self.top_1,
            self.top_3,
            self.alike[0],
            self.alike[1],
            self.brier,
            self.log_loss,
            self.leader_error,
            self.leader_luck,
            self.stated_error
        )
    }
}

/// The head of tables made of [`Score::row`].
pub const HEAD: &str = "| | cases | checks | minutes | top-1 | top-3 | top-1, alike as one | top-3, alike as one | Brier | log loss | calibration error, leader | of that by luck | calibration error, all ≥ 5 % |\n|---|---|---|---|---|---|---|---|---|---|---|---|---|\n";

/// Recall of every cause.
pub fn by_cause(all: &[Judged]) -> String {
    let mut table = String::from(
        "| cause | cases | top-1 | top-3 | usually taken for |\n|---|---|---|---|---|\n",
    );
    for cause in Cause::ALL {
        let of: Vec<&Judged> = all.iter().filter(|one| one.truth == [*cause]).collect();
        if of.is_empty() {
            continue;
        }
        let within = |most: usize| of.iter().filter(|one| one.place() < most).count();
        let mut taken: BTreeMap<Cause, usize> = BTreeMap::new();
        for one in &of {
            let leader = one.ranked()[0];
            if leader != *cause {
                *taken.entry(leader).or_default() += 1;
            }
        }
        let mut taken: Vec<(Cause, usize)> = taken.into_iter().collect();
        taken.sort_by_key(|(_, count)| core::cmp::Reverse(*count));
        let words: Vec<String> = taken
            .iter()
            .take(3)
            .map(|(other, count)| format!("{} {count}", other.word()))
            .collect();
        let _ = writeln!(
            table,
            "| {} | {} | {} | {} | {} |",
            cause.word(),
            of.len(),
            within(1),
            within(3),
            words.join(", ")
        );
    }
    table
}

/// The confusions that happen most: truth, what led instead, how often.
pub fn confusions(all: &[Judged]) -> Vec<(Cause, Cause, usize)> {
    let mut counts: BTreeMap<(Cause, Cause), usize> = BTreeMap::new();
    for one in all {
        let leader = one.ranked()[0];
        if let [truth] = one.truth[..]
            && truth != leader
        {
            *counts.entry((truth, leader)).or_default() += 1;
        }
    }
    let mut counts: Vec<_> = counts.into_iter().map(|((a, b), n)| (a, b, n)).collect();
    counts.sort_by_key(|(.., count)| core::cmp::Reverse(*count));
    counts
}

/// A reliability curve as a table.
pub fn curve(bins: &[Bin; 10]) -> String {
    let mut table =
        String::from("| stated | how many | mean stated | came true |\n|---|---|---|---|\n");
    for (place, bin) in bins.iter().enumerate() {
        if bin.count > 0.0 {
            let _ = writeln!(
                table,
                "| {}–{} % | {} | {:.2} | {:.2} |",
                10 * place,
                10 * place + 10,
                bin.count,
                bin.stated / bin.count,
                bin.came / bin.count
            );
        }
    }
    table
}
