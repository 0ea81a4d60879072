//! What a revalve has to change, told in percent and in shims.

use super::sheet::Sheet;
use crate::bench::Bench;
use crate::bike::damping::design::LOW_SPEED;
use crate::cause::Cause;
use crate::cause::fault::Fault;
use crate::quantity::Dimension;
use crate::remedy::RemedyId;
use crate::remedy::relief::Case;
use crate::remedy::restack::{QUICK, Restack, Valve, restack};
use crate::words::{Arg, Text};

/// A cause believed less than this is no reason to touch its valve.
const LEAST_BELIEVED: f64 = 0.05;

/// For each valve that a remedy changes, from its likelier fault, as far as it is believed to go, to what suits.
pub fn restacked(sheet: &Sheet, case: &Case, id: RemedyId) -> Vec<Text> {
    let mut told: Vec<(Valve, f64, Fault)> = Vec::new();
    for cause in Cause::ALL {
        let Some((valve, _)) = Valve::of(*cause).filter(|(_, remedy)| *remedy == id) else {
            continue;
        };
        let (believed, degree) = believed_degree(case, *cause);
        if believed < LEAST_BELIEVED {
            continue;
        }
        let fault = Fault {
            cause: *cause,
            degree,
            plain: false,
        };
        match told.iter_mut().find(|(known, ..)| *known == valve) {
            Some(known) if known.1 >= believed => {}
            Some(known) => *known = (valve, believed, fault),
            None => told.push((valve, believed, fault)),
        }
    }
    if told.is_empty() {
        return Vec::new();
    }
    let Ok(bench) = Bench::of(sheet.situation, sheet.baseline) else {
        return Vec::new();
    };
    let suits = bench.advised();
    told.iter()
        .filter_map(|(valve, _, fault)| restack(&bench, *valve, &fault.put_on(&suits), &suits))
        .flat_map(|change| sentences(&change))
        .collect()
}

/// How much a cause is believed, and the degree that is expected of it.
fn believed_degree(case: &Case, cause: Cause) -> (f64, f64) {
    let (mut believed, mut sum) = (0.0, 0.0);
    for (hypothesis, chance) in case.hypotheses.iter().zip(&case.belief.of_hypotheses) {
        for fault in hypothesis
            .faults
            .iter()
            .filter(|fault| fault.cause == cause)
        {
            believed += chance;
            sum += chance * fault.degree;
        }
    }
    (believed, sum / believed.max(f64::MIN_POSITIVE))
}

fn sentences(change: &Restack) -> Vec<Text> {
    let key = match change.valve {
        Valve::ForkCompression => "restack.fork-compression",
        Valve::ForkRebound => "restack.fork-rebound",
        Valve::ShockCompression => "restack.shock-compression",
        Valve::ShockRebound => "restack.shock-rebound",
    };
    let force = Text::new(key)
        .with("low", Arg::Change(change.low, Dimension::Share))
        .with("quick", Arg::Change(change.quick, Dimension::Share))
        .with("low-speed", Arg::Plain(LOW_SPEED, 1))
        .with("quick-speed", Arg::Plain(QUICK, 0));
    let mut told = vec![force];
    if let Some((typical, swap)) = change.shims {
        let thickness = |length: crate::units::Length| Arg::Plain(1e3 * length.value, 2);
        let key = match (swap.out, swap.put) {
            (_, 0) => "restack.out",
            (0, _) => "restack.in",
            _ => "restack.swap",
        };
        told.push(
            Text::new(key)
                .with("count", Arg::Count(typical.count.into()))
                .with("thickness", thickness(typical.thickness))
                .with("out", Arg::Count(swap.out.into()))
                .with("put", Arg::Count(swap.put.into()))
                .with("new", thickness(swap.thickness)),
        );
    }
    told
}
