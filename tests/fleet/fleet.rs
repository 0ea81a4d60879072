//! Many stables with their cases, worked through on every core.

use std::sync::Mutex;
use std::sync::atomic::{AtomicUsize, Ordering};

use crate::case::Case;
use crate::luck::Luck;
use crate::stable::Stable;

/// One stable with its cases.
pub struct Row {
    /// What the library knows.
    pub stable: Stable,
    /// Bikes with one hidden cause, or none.
    pub single: Vec<Case>,
    /// Bikes with two.
    pub double: Vec<Case>,
}

/// How large a fleet is.
#[derive(Debug, Clone, Copy)]
pub struct Size {
    /// Stables.
    pub stables: usize,
    /// Cases with at most one fault in each.
    pub single: usize,
    /// Cases with two.
    pub double: usize,
}

/// Draws a fleet; another seed gives another one.
pub fn fleet(seed: u64, size: Size) -> Vec<Row> {
    let places: Vec<u64> = (0..size.stables as u64).collect();
    in_parallel(&places, |place| {
        let mut luck = Luck::seeded(seed, *place);
        let stable = Stable::draw(&mut luck);
        let mut cases = |count: usize, many: usize| -> Vec<Case> {
            let drawn = (0..count).map(|_| Case::draw(&stable, many, &mut luck));
            drawn.flatten().collect()
        };
        let (single, double) = (cases(size.single, 1), cases(size.double, 2));
        Row {
            stable,
            single,
            double,
        }
    })
}

/// Does the same for each of many, on every core; the answers in their order.
pub fn in_parallel<T: Sync, R: Send>(all: &[T], work: impl Fn(&T) -> R + Sync) -> Vec<R> {
    let next = AtomicUsize::new(0);
    let done: Mutex<Vec<(usize, R)>> = Mutex::new(Vec::new());
    let cores = std::env::var("THREADS")
        .ok()
        .and_then(|v| v.parse().ok())
        .unwrap_or(std::thread::available_parallelism().map_or(2, usize::from));
    std::thread::scope(|scope| {
        for _ in 0..cores {
            scope.spawn(|| {
                loop {
                    let place = next.fetch_add(1, Ordering::Relaxed);
                    let Some(one) = all.get(place) else { break };
                    let answer = work(one);
                    done.lock().expect("no worker panics").push((place, answer));
                }
            });
        }
    });
    let mut done = done.into_inner().expect("no worker panics");
    done.sort_by_key(|(place, _)| *place);
    done.into_iter().map(|(_, answer)| answer).collect()
}
