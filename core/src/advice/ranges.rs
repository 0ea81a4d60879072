//! How far every number of the card could be off, from one set of draws, and which answer would narrow them most.

use super::answer::{NarrowsMost, SettingId};
use crate::bike::ForkSpring;
use crate::intake::{BikeClass, Question};
use crate::sorted::{Map, Set};
use crate::stance::baseline::{Baseline, baseline, fork_pressure, fork_rate, shock_rate};
use crate::stance::clickers::{self, CLICK};
use crate::stance::tyres::tyres;
use crate::stance::unknowns::{
    Alone, DRAWS, Draw, FOUR_IN_FIVE, Input, Range, SEED, Share, around, draws, shares,
};
use crate::stance::{Situation, StanceError};
use crate::units::{Band, Pressure};
use crate::words::Text;

/// The range of every number that has one.
#[derive(Debug, Clone, PartialEq)]
pub struct Ranges(Map<SettingId, NumberRange>);

/// The range of one number.
#[derive(Debug, Clone, PartialEq)]
pub struct NumberRange {
    /// Where four of five draws lie; clicks are not rounded.
    pub range: Range,
    /// What it comes from, most first.
    pub shares: Vec<Share>,
}

impl Ranges {
    /// Draws what is not known of a situation and works the whole card out for each draw, on the springs advised.
    pub fn of(situation: &Situation, advised: &Baseline) -> Self {
        Self::from_draws(situation, advised, DRAWS, SEED)
    }

    /// As [`Self::of`], from so many draws and with that seed.
    pub fn from_draws(situation: &Situation, advised: &Baseline, count: u32, seed: u32) -> Self {
        let cards = Cards::of(situation, advised);
        let drawn: Vec<Card> = draws(situation, count, seed)
            .iter()
            .map(|draw| cards.of_draw(draw))
            .collect();
        let alone: Vec<(Input, Vec<(f64, Card)>)> = Input::ALL
            .into_iter()
            .map(|input| {
                let draws = around(situation, input);
                let cards = draws
                    .iter()
                    .map(|(draw, weight)| (*weight, cards.of_draw(draw)));
                (input, cards.collect())
            })
            .collect();
        let ids: Set<SettingId> = drawn.iter().flat_map(|card| card.keys()).copied().collect();
        let of = |id: SettingId| {
            let on = |card: &Card| card.get(&id).copied();
            let alone: Vec<Alone> = alone
                .iter()
                .map(|(input, cards)| Alone {
                    input: *input,
                    numbers: cards
                        .iter()
                        .map(|(weight, card)| (*weight, on(card)))
                        .collect(),
                })
                .collect();
            Some(NumberRange {
                range: Range::of(&drawn.iter().map(on).collect::<Vec<_>>())?,
                shares: shares(&alone),
            })
        };
        let ranges = ids.into_iter().filter_map(|id| Some((id, of(id)?)));
        Self(ranges.collect())
    }

    /// The range of one number.
    pub fn get(&self, id: SettingId) -> Option<&NumberRange> {
        self.0.get(&id)
    }

    /// Every number with its range.
    pub fn all(&self) -> impl Iterator<Item = (SettingId, &NumberRange)> {
        self.0.iter().map(|(id, range)| (*id, range))
    }

    /// Whether some number is out of reach in more than a third of the draws.
    pub fn often_out_of_reach(&self) -> bool {
        self.0.values().any(|number| number.range.lost > 1.0 / 3.0)
    }

    /// By how much an answer to each open question would narrow the ranges, on average over all numbers: 0 not at all, 1 to
    /// nothing. Questions that were answered by a guess are open.
    ///
    /// The variance that the question's inputs explain goes, but for what measuring leaves of it; a width goes with the root
    /// of the variance. That is right to a hundredth for what is measured or counted. It makes up to seven hundredths too much
    /// of a choice, since two kinds side by side widen a range less than they raise its variance.
    pub fn narrowing(&self, situation: &Situation) -> Vec<(Question, f64)> {
        let open: Set<Question> = Input::ALL
            .into_iter()
            .filter_map(|input| input.question(situation))
            .collect();
        let by_answer = |question: Question, number: &NumberRange| {
            let goes: f64 = number
                .shares
                .iter()
                .filter(|share| share.input.question(situation) == Some(question))
                .map(|share| share.share * (1.0 - share.input.left_by_an_answer(situation)))
                .sum();
            1.0 - (1.0 - goes).max(0.0).sqrt()
        };
        #[expect(clippy::cast_precision_loss, reason = "one for each row of the card")]
        let numbers = self.0.len().max(1) as f64;
        open.into_iter()
            .map(|question| {
                let sum: f64 = self
                    .0
                    .values()
                    .map(|range| by_answer(question, range))
                    .sum();
                (question, sum / numbers)
            })
            .collect()
    }

    /// The open question whose answer would narrow the numbers most, where it is worth asking.
    pub fn narrows_most(&self, situation: &Situation) -> Option<NarrowsMost> {
        /// Less than this is not seen on the card.
        const WORTH_ASKING: f64 = 0.02;
        /// From here on the rider sees it at once.
        const MUCH: f64 = 0.1;
        let (question, by) = self
            .narrowing(situation)
            .into_iter()
            .max_by(|(_, a), (_, b)| a.total_cmp(b))
            .filter(|(_, by)| *by > WORTH_ASKING)?;
        let guessed = match question {
            Question::RiderWeight => situation.told.rider_guessed,
            Question::BikeWeight => situation.told.bike_guessed,
            _ => false,
        };
        let key = match (guessed, by > MUCH) {
            (false, true) => "narrows.answered",
            (false, false) => "narrows.answered-little",
            (true, true) => "narrows.measured",
            (true, false) => "narrows.measured-little",
        };
        let answer = Text::new(format!("narrows.{}", question.word()));
        Some(NarrowsMost {
            question,
            narrows_by: by,
            text: Text::new(key).with("answer", answer.into()),
        })
    }
}

/// Every number of the card that has an answer, SI.
type Card = Map<SettingId, f64>;

/// What the card is worked out on for one draw after the other.
struct Cards<'a> {
    advised: &'a Baseline,
    /// What bikes of the other classes are advised: each is told to fit the springs of its own.
    others: Vec<(BikeClass, Baseline)>,
}

impl<'a> Cards<'a> {
    fn of(situation: &Situation, advised: &'a Baseline) -> Self {
        let class = |situation: &Situation| situation.machine.class.kind;
        Self {
            advised,
            others: situation
                .could_be
                .iter()
                .filter(|other| class(other) != class(situation))
                .map(|other| (class(other), baseline(other)))
                .collect(),
        }
    }

    fn of_draw(&self, draw: &Draw) -> Card {
        let class = draw.situation.machine.class.kind;
        let other = self.others.iter().find(|(other, _)| *other == class);
        card(draw, other.map_or(self.advised, |(_, baseline)| baseline))
    }
}

/// The card of one draw; clicks are not rounded.
fn card(draw: &Draw, advised: &Baseline) -> Card {
    let situation = &draw.situation;
    let anew = advised.set_anew(situation);
    let mut found = Map::new();
    let mut put = |id: SettingId, value: Result<f64, StanceError>| {
        if let Ok(value) = value {
            found.insert(id, value);
        }
    };
    if let ForkSpring::Coil { preload, .. } = anew.set_up.fork.spring {
        put(SettingId::ForkRate, fork_rate(situation).map(|r| r.value));
        put(SettingId::ForkPreload, Ok(preload.value));
    } else {
        let pressure = fork_pressure(situation).map(|p| p.value);
        put(SettingId::ForkPressure, pressure);
    }
    put(SettingId::ShockRate, shock_rate(situation).map(|r| r.value));
    put(SettingId::ShockPreload, Ok(anew.set_up.shock.preload.value));
    if let Ok(stance) = anew.stance {
        put(SettingId::ForkFreeSag, Ok(stance.free.fork.middle.value));
        put(SettingId::ForkRiderSag, Ok(stance.ridden.fork.middle.value));
        put(SettingId::RearFreeSag, Ok(stance.free.rear.middle.value));
        put(SettingId::RearRiderSag, Ok(stance.ridden.rear.middle.value));
    }
    let taste = draw.at(Input::Taste) / FOUR_IN_FIVE;
    if let Ok(start) = &anew.clickers {
        let click = CLICK.middle * libm::exp(draw.off_by(Input::Click));
        let mut clicks =
            |id, one: &clickers::Baseline| put(id, Ok(one.held(one.exact(taste, click))));
        clicks(SettingId::ForkCompression, &start.fork_compression);
        clicks(SettingId::ForkRebound, &start.fork_rebound);
        clicks(SettingId::ShockLowCompression, &start.shock_compression);
        clicks(SettingId::ShockRebound, &start.shock_rebound);
        let turns = f64::from(situation.high_speed_range);
        put(
            SettingId::ShockHighCompression,
            Ok(high_speed(turns, taste)),
        );
    }
    let pressures = tyres(situation);
    let tyre_taste = draw.at(Input::TyreTaste) / FOUR_IN_FIVE;
    put(SettingId::FrontTyre, Ok(tyre(pressures.front, tyre_taste)));
    put(SettingId::RearTyre, Ok(tyre(pressures.rear, tyre_taste)));
    found
}

/// Quarter turns from closed of a high-speed adjuster that has so many: the middle, and an eighth of the range to either
/// side as taste (common practice). `taste` is 1 for firm.
pub fn high_speed(turns: f64, taste: f64) -> f64 {
    (turns * (0.5 - 0.125 * taste)).clamp(0.0, turns)
}

/// A tyre pressure for a taste: 1 is the upper end of what is usual, −1 the lower, Pa gauge.
fn tyre(usual: Band<Pressure>, taste: f64) -> f64 {
    let half_pa = 0.5 * (usual.high - usual.low).value;
    usual.middle.value + taste * half_pa
}
