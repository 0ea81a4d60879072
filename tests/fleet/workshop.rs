//! Checks done on the true bike: what a tape, a gauge, a push, a look or one lap shows, with the errors they have.

use crate::case::{Case, tell_hours};
use crate::luck::Luck;
use crate::stable::Stable;
use crate::truth::sound;
use sagwright_core::bench::Still;
use sagwright_core::bike::setup::ForkSpring;
use sagwright_core::cause::Cause;
use sagwright_core::cause::checks::{self, Check, How};
use sagwright_core::cause::looks;
use sagwright_core::intake::{
    Change, Field, Intake, Look, PushFeel, Question, Tried, Verdict, YesNo,
};
use sagwright_core::quantity::{Typed, Unit};

/// Errors: tape, m; gauges of fork and tyres, bar; mark of the travel used, m.
const TAPE_M: f64 = 0.004;
const GAUGE_BAR: f64 = 0.15;
const TYRE_GAUGE_BAR: f64 = 0.08;
const MARK_M: f64 = 0.004;
/// Share of damping faults that stand in the clickers, and how far two good settings differ, clicks.
const IN_CLICKERS: f64 = 0.6;
const TASTE_CLICKS: f64 = 2.0;
/// One click of the true bike, natural logarithm of force, and how bikes differ in that.
const CLICK: f64 = 0.05;
const CLICKS_DIFFER: f64 = 0.25;
/// How far springs are from what is printed on them, relative, and chance that it has worn off.
const PRINTED: f64 = 0.03;
const WORN_OFF: f64 = 0.2;
/// Error of a preload, mm: a printed free length and a ruler.
const PRELOAD_MM: f64 = 2.5;
/// Chance that one of several numbers of a check is not taken.
const LEFT_OUT: f64 = 0.10;

/// Answers so many checks out of all that need no lap.
pub fn answer_some(stable: &Stable, case: &Case, many: usize, luck: &mut Luck) -> Intake {
    let mut intake = case.intake.clone();
    let fits = |check: &Check| match check.how {
        How::Answer(_) => true,
        How::Look(look) => looks::fits(&case.intake, look),
        How::Try(_) => false,
    };
    let all: Vec<Check> = checks::all().filter(fits).collect();
    for _ in 0..many {
        answer(stable, case, &luck.one_of(&all), &mut intake, case.seed);
    }
    intake
}

/// Answers a check in the intake. The same case gives the same answer to the same check.
pub fn answer(stable: &Stable, case: &Case, check: &Check, intake: &mut Intake, seed: u64) {
    // What an answer is does not depend on what was asked before.
    let place = match check.how {
        How::Answer(question) => question as u64,
        How::Look(look) => 100 + look as u64,
        How::Try(change) => 200 + change as u64,
    };
    let luck = &mut Luck::seeded(seed, place);
    match check.how {
        How::Answer(question) => page(stable, case, question, intake, luck),
        How::Look(look) => {
            let yes = shows(case, look) + luck.normal(1.0) > SEEN;
            let answer = if yes { YesNo::Yes } else { YesNo::No };
            let looks = intake.measured.looks.get_or_insert_default();
            looks.insert(look, answer);
        }
        How::Try(change) => intake.tried.extend(lap(case, change, luck)),
    }
}

fn page(stable: &Stable, case: &Case, question: Question, intake: &mut Intake, luck: &mut Luck) {
    let still = &case.found.still;
    let mm = |m: f64, luck: &mut Luck| 1e3 * (m + luck.normal(TAPE_M)).max(0.001);
    let mut tell = |field: Field, value: f64, unit: Unit| {
        let typed = Typed {
            value,
            unit,
            how: None,
        };
        field.set(intake, Some(typed));
    };
    match question {
        Question::ForkGas => {
            if let Some(gauge_pa) = still.gauge_pa {
                // What is told is what it was set to; what the air made of it since is not in there.
                let set_pa = gauge_pa / (1.0 + degree(case, Cause::GasShifted));
                let bar = (set_pa * 1e-5 + luck.normal(GAUGE_BAR)).clamp(1.0, 20.0);
                tell(Field::ForkPressure, bar, Unit::Bar);
            }
        }
        Question::GroundToday => {
            let [set_c, today_c] = airs(case, luck);
            tell(Field::ForkPressureTemperature, set_c, Unit::Celsius);
            tell(
                Field::TodayTemperature,
                today_c.clamp(-29.0, 54.0),
                Unit::Celsius,
            );
        }
        Question::ForkClickers | Question::ShockClickers => {
            let fields = [
                (Question::ForkClickers, Field::ForkCompressionNow),
                (Question::ForkClickers, Field::ForkReboundNow),
                (Question::ShockClickers, Field::ShockLowNow),
                (Question::ShockClickers, Field::ShockReboundNow),
            ];
            for (place, (page, field)) in fields.into_iter().enumerate() {
                if page == question {
                    tell(field, clicks(stable, case, place, luck), Unit::Click);
                }
            }
        }
        Question::ServiceHours => tell_hours(intake, case.hours),
        Question::SagFront | Question::SagRear => {
            let front = question == Question::SagFront;
            let (free, rider) = if front {
                (Field::ForkFreeSag, Field::ForkRiderSag)
            } else {
                (Field::RearFreeSag, Field::RearRiderSag)
            };
            let [free_m, ridden_m] =
                [still.free_m, still.ridden_m].map(|sag| if front { sag.front } else { sag.rear });
            let ridden_mm = mm(ridden_m, luck).max(11.0);
            tell(rider, ridden_mm, Unit::Millimetre);
            if !luck.happens(LEFT_OUT) {
                let free_mm = mm(free_m, luck).min(ridden_mm - 1.0);
                tell(free, free_mm, Unit::Millimetre);
            }
        }
        Question::ShockSpring | Question::ForkSpring => {
            if let Some((field, rate)) = printed_rate(case, question, luck) {
                tell(field, 1e-3 * rate, Unit::NewtonPerMillimetre);
                // The free length is printed beside the rate: where one has worn off, so has the other.
                let (field, mm) = preload_mm(case, question, luck);
                tell(field, mm, Unit::Millimetre);
            }
        }
        Question::TravelUsed => tell(
            Field::ForkTravelUsed,
            1e3 * used_m(case, luck),
            Unit::Millimetre,
        ),
        Question::TyrePressures => {
            let share = case.found.trial.condition.tyres;
            let rows = [
                (Field::FrontTyre, case.bike.pressures[0], share.front),
                (Field::RearTyre, case.bike.pressures[1], share.rear),
            ];
            for (field, pressure, share) in rows {
                if !luck.happens(LEFT_OUT) {
                    let bar = pressure.value * 1e-5 * share + luck.normal(TYRE_GAUGE_BAR);
                    tell(field, bar.clamp(0.2, 4.0), Unit::Bar);
                }
            }
        }
        Question::PushTest => {
            let now = |front: bool, luck: &mut Luck| {
                Some(push(
                    &case.found.still,
                    &case.sound.still,
                    case,
                    front,
                    luck,
                ))
            };
            intake.measured.push_front = now(true, luck);
            intake.measured.push_rear = now(false, luck);
        }
        _ => {}
    }
}

/// Air where the fork was filled and today's, °C, as a rider tells them.
fn airs(case: &Case, luck: &mut Luck) -> [f64; 2] {
    let set_c = 18.0 + luck.normal(6.0);
    let gauge_bar = case.found.still.gauge_pa.map_or(10.0, |pa| pa * 1e-5);
    // The pressure above vacuum goes with the temperature of the gas, which is near that of the air.
    let shift = degree(case, Cause::GasShifted);
    let warmer = shift * gauge_bar / (gauge_bar + 1.0) * (set_c + 273.15);
    [set_c, set_c + warmer + luck.normal(5.0)]
}

/// Travel of the fork by its mark, m.
fn used_m(case: &Case, luck: &mut Luck) -> f64 {
    let full_m = case.bike.situation.machine.fork_stroke.value;
    (case.found.fork_used() * full_m + luck.normal(MARK_M))
        .min(full_m)
        .max(0.02)
}

/// What is printed on a spring, N/m; `None` where it has worn off or there is no such spring.
fn printed_rate(case: &Case, question: Question, luck: &mut Luck) -> Option<(Field, f64)> {
    let set_up = &case.found.trial.set_up;
    let off = 1.0 + luck.normal(PRINTED);
    match (question, set_up.fork.spring) {
        (Question::ForkSpring, ForkSpring::Coil { rate, .. }) => {
            Some((Field::ForkRate, rate.value * off))
        }
        (Question::ShockSpring, _) if !luck.happens(WORN_OFF) => {
            Some((Field::ShockRate, set_up.shock.rate.value * off))
        }
        _ => None,
    }
}

/// How far the spring of that page is squeezed, by its free length and a ruler, mm.
fn preload_mm(case: &Case, question: Question, luck: &mut Luck) -> (Field, f64) {
    let set_up = &case.found.trial.set_up;
    let (field, preload) = match (question, set_up.fork.spring) {
        (Question::ForkSpring, ForkSpring::Coil { preload, .. }) => (Field::ForkPreload, preload),
        _ => (Field::ShockPreload, set_up.shock.preload),
    };
    let mm = 1e3 * preload.value + luck.normal(PRELOAD_MM);
    let allowed = field.allowed();
    (field, mm.clamp(1e3 * allowed.low, 1e3 * allowed.high))
}

/// The faults that each of the four adjusters can stand for.
const DAMPING: [[Cause; 2]; 4] = [
    [Cause::ForkCompressionMuch, Cause::ForkCompressionLittle],
    [Cause::ForkReboundSlow, Cause::ForkReboundFast],
    [Cause::ShockCompressionMuch, Cause::ShockCompressionLittle],
    [Cause::ShockReboundSlow, Cause::ShockReboundFast],
];

/// The damping fault at one of the four adjusters, and whether it stands in the clickers. The other ones stand in the shims.
fn damping_fault(case: &Case, place: usize) -> Option<(f64, bool)> {
    let mut faults = case.faults.iter();
    let fault = faults.find(|fault| DAMPING[place].contains(&fault.cause))?;
    let mut luck = Luck::seeded(case.seed, 300 + place as u64);
    Some((fault.degree, luck.happens(IN_CLICKERS)))
}

/// Where one of the four adjusters stands: where it would suit, give or take taste, and off by the fault where it
/// stands in the clickers.
fn clicks(stable: &Stable, case: &Case, place: usize, luck: &mut Luck) -> f64 {
    let start = stable.suits.clickers.as_ref().expect("drawn with a bench");
    let one = [
        &start.fork_compression,
        &start.fork_rebound,
        &start.shock_compression,
        &start.shock_rebound,
    ][place];
    let mut now = f64::from(one.clicks.middle) + luck.normal(TASTE_CLICKS);
    let click = CLICK * luck.factor(CLICKS_DIFFER);
    if let Some((degree, true)) = damping_fault(case, place) {
        now -= degree / click;
    }
    now.round().clamp(0.0, f64::from(one.range))
}

/// The strongest of what a slow push shows, on top of what hands differ in.
fn push(now: &Still, sound: &Still, case: &Case, front: bool, luck: &mut Luck) -> PushFeel {
    let at = |ends: sagwright_core::feel::Ends<f64>| if front { ends.front } else { ends.rear };
    let held_n = at(now.breakaway_n) - at(sound.breakaway_n);
    let place = if front { 1 } else { 3 };
    let slower = libm::log(now.damping_n_s_per_m[place] / sound.damping_n_s_per_m[place]);
    let void_m = at(now.void_m) - at(sound.void_m);
    let wear = &case.found.trial.set_up;
    let binding_n = if front {
        wear.fork.wear.binding.value
    } else {
        wear.shock.wear.binding.value
    };
    let strengths = [
        (PushFeel::Smooth, 1.6),
        (PushFeel::SticksFirst, held_n / 35.0),
        (PushFeel::Judders, binding_n / 45.0),
        (PushFeel::SlowReturn, slower / 0.22),
        (PushFeel::FastReturn, 0.6 * void_m / 0.002 - slower / 0.22),
    ];
    let noisy = strengths.map(|(feel, strength)| (feel, strength + luck.normal(0.8)));
    let strongest = noisy.into_iter().max_by(|a, b| a.1.total_cmp(&b.1));
    strongest.map_or(PushFeel::Smooth, |(feel, _)| feel)
}

/// What has to show for a yes, in standard deviations of what eyes and hands differ in.
const SEEN: f64 = 1.4;

/// How far this cause is there.
fn degree(case: &Case, cause: Cause) -> f64 {
    let of = case.faults.iter().filter(|fault| fault.cause == cause);
    of.map(|fault| fault.degree).sum()
}

/// Share of the low-speed compression that the mid-valve makes beyond a sound one's.
fn tight(case: &Case) -> f64 {
    (degree(case, Cause::MidValve) - sound(Cause::MidValve)).max(0.0)
}

/// How clearly the shims of one end, whose adjusters are these two, are not those of the maker's list: counted and measured,
/// they are seen to be others nine times in ten.
fn other_shims(case: &Case, first: usize) -> f64 {
    let in_shims = [first, first + 1]
        .iter()
        .any(|place| damping_fault(case, *place).is_some_and(|(_, in_clickers)| !in_clickers));
    if in_shims { 2.7 } else { 0.0 }
}

/// How strongly a look shows something, in standard deviations of what eyes and hands differ in.
fn shows(case: &Case, look: Look) -> f64 {
    let (now, sound) = (&case.found, &case.sound);
    let (fork, shock) = (&now.trial.set_up.fork.wear, &now.trial.set_up.shock.wear);
    let condition = &now.trial.condition;
    let void_m = |front: bool| {
        let of = |still: &Still| {
            if front {
                still.void_m.front
            } else {
                still.void_m.rear
            }
        };
        of(&now.still) - of(&sound.still)
    };
    match look {
        Look::FreesWithAxleLoose => fork.binding.value / 40.0,
        Look::FreesWhenCleaned => (fork.hours - sound.trial.set_up.fork.wear.hours) / 45.0,
        // Hands feel what drags at a slide when no gas pushes against them.
        Look::SticksWithoutGas => {
            let dry_h = fork.hours - sound.trial.set_up.fork.wear.hours;
            dry_h / 50.0 + fork.binding.value / 45.0
        }
        Look::HangsShort => {
            let fill = |trial: &sagwright_core::bench::Trial| match trial.machine.gas.negative {
                sagwright_core::bike::gas::Negative::Chamber { fill, .. } => fill,
                _ => 1.0,
            };
            (fill(&now.trial) - fill(&sound.trial)).abs() / 0.15
        }
        Look::ForkSquelches => void_m(true) / 0.001,
        Look::ShockSquelches => void_m(false) / 0.001,
        Look::LinkageStiff => shock.binding.value / 60.0,
        Look::HeadKnocks => 1.8 * condition.head_play,
        // A ruler reads to a millimetre, but where the maker meant them to stand is known to some three.
        Look::TubesOffTheMark => 1e3 * condition.raised_m.abs() / 2.7,
        // A ruler in a leg whose damper was bled well or not so well is good to some 6 mm, and 10 mm are asked for.
        Look::OilOffTheLevel => {
            let gap = |trial: &sagwright_core::bench::Trial| trial.set_up.fork.air_gap.value;
            let off_mm = 1e3 * (gap(&now.trial) - gap(&sound.trial)).abs();
            SEEN + (off_mm - 10.0) / 6.0
        }
        // Oil darkens before it is worn: a tenth of its volume in air is seen about as often as not.
        Look::ForkOilSpent => degree(case, Cause::ForkOilWorn) / 0.08,
        // A feeler gauge against the float on the maker's list tells a twelfth more of the work about as often as not; what
        // shims make of it tells less.
        Look::MidValveTight => tight(case) / 0.06,
        Look::ForkShimsOff => other_shims(case, 0).max(tight(case) / 0.15),
        Look::ShockShimsOff => other_shims(case, 2),
        Look::SitsOutOfLevel => (now.still.nose_up_rad - sound.still.nose_up_rad).abs() / 0.006,
    }
}

/// One change ridden for a lap: better or worse where the rider's own steps say so.
fn lap(case: &Case, change: Change, luck: &mut Luck) -> Option<Tried> {
    let changed = case.bike.bench().changed(&case.found.trial, change)?;
    let ridden = case.bike.ride(changed).ok()?;
    let felt = ridden.against(&case.sound, &case.bike.grounds);
    let said = case.intake.complaints.iter().flatten();
    let verdicts = said.map(|complaint| {
        let moved = felt.worse(complaint.feeling) - case.felt.worse(complaint.feeling);
        let noticed = case.rider.gain(complaint.feeling) * moved + luck.normal(0.6);
        let verdict = if noticed < -1.0 {
            Verdict::Better
        } else if noticed > 1.0 {
            Verdict::Worse
        } else {
            Verdict::Same
        };
        (complaint.feeling, verdict)
    });
    Some(Tried {
        change,
        felt: verdicts.collect(),
        kept: false,
    })
}
