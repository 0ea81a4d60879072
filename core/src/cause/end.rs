//! The numbers read of one end together: its spring, preload and sags, which hang together on sound bikes as well.
//!
//! Each number is taken for what it says beyond those before it, so that nothing is counted twice: with the covariances of
//! sound bikes and of measuring, the numbers are turned into innovations, which on any one bike are independent
//! (A. C. Harvey, *Forecasting, Structural Time Series Models and the Kalman Filter*, 1989, section 3.4, from memory).

use std::rc::Rc;

use super::measured::{Beside, Reading};
use super::rehearsal::Rehearsed;
use crate::stance::sound::{PARTS, Part, Parts};

/// A reading of an end, with the part of it that was read. Its `sigma` is that of measuring alone.
pub(super) struct Read {
    pub(super) part: Part,
    pub(super) reading: Reading,
    /// Whether it was read, and is not only supposed.
    pub(super) known: bool,
}

/// Readings of one end, first those that are known, as innovations on each other; `sound` are the covariances of sound bikes.
pub(super) fn together(reads: Vec<Read>, sound: &[Parts; PARTS]) -> Vec<Reading> {
    let count = reads.len();
    let covariance = |row: usize, column: usize| {
        let (a, b) = (&reads[row], &reads[column]);
        let measured = if row == column {
            a.reading.sigma * a.reading.sigma
        } else {
            0.0
        };
        sound[a.part as usize][b.part as usize] + measured
    };
    let (weights, variances) = innovations(count, covariance);
    let off: Vec<f64> = reads.iter().map(|read| read.reading.off_by).collect();
    let pushes: Rc<[_]> = reads
        .iter()
        .map(|read| Rc::clone(&read.reading.pushed))
        .collect();
    let mut beside: Vec<Beside> = Vec::new();
    let mut all = Vec::with_capacity(count);
    for (place, Read { reading, known, .. }) in reads.into_iter().enumerate() {
        let own = weights[place];
        let off_by = (0..=place).map(|other| own[other] * off[other]).sum();
        let pushes = Rc::clone(&pushes);
        let reading = Reading {
            off_by,
            sigma: variances[place].sqrt(),
            pushed: Rc::new(move |fault: &Rehearsed| {
                let each = pushes.iter().zip(own).take(place + 1);
                each.map(|(push, weight)| weight * push(fault)).sum()
            }),
            beside: beside.clone(),
            ..reading
        };
        if known {
            beside.push(Beside {
                off_by: reading.off_by / reading.sigma,
                sigma: reading.sigma,
                pushed: Rc::clone(&reading.pushed),
            });
        }
        all.push(reading);
    }
    all
}

/// The rows that turn numbers into what each says beyond those before it, and the variances of that: the inverse of the unit
/// lower triangle of the `LDLᵀ` of their covariances, and its diagonal.
fn innovations(count: usize, covariance: impl Fn(usize, usize) -> f64) -> ([Parts; PARTS], Parts) {
    let mut rows = [[0.0; PARTS]; PARTS];
    let mut variances = [0.0; PARTS];
    for place in 0..count {
        rows[place][place] = 1.0;
        let mut own = rows[place];
        for before in 0..place {
            // How far this number goes with what the one before it says.
            let goes = (0..=before)
                .map(|other| rows[before][other] * covariance(place, other))
                .sum::<f64>()
                / variances[before];
            for (own, of_before) in own.iter_mut().zip(rows[before]) {
                *own -= goes * of_before;
            }
        }
        rows[place] = own;
        variances[place] = (0..=place)
            .flat_map(|a| (0..=place).map(move |b| (a, b)))
            .map(|(a, b)| own[a] * own[b] * covariance(a, b))
            .sum();
    }
    (rows, variances)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cause::measured::ALWAYS;
    use crate::intake::Question;
    use crate::words::Text;
    use nalgebra::{Matrix4, Vector4};

    /// Covariances of sound bikes as they come out for a usual rider, rear: the spring in parts of a hundred, the rest in mm.
    const SOUND: [Parts; PARTS] = [
        [30.0, -10.0, -4.0, 13.0],
        [-10.0, 9.0, 0.5, -13.0],
        [-4.0, 0.5, 9.0, 5.0],
        [13.0, -13.0, 5.0, 30.0],
    ];

    fn reads(off_by: Parts, sigma: Parts) -> Vec<Read> {
        let read = |part: Part| Read {
            part,
            known: true,
            reading: Reading {
                question: Question::SagRear,
                text: Text::new("test"),
                off_by: off_by[part as usize],
                sigma: sigma[part as usize],
                pushed: Rc::new(|_| 0.0),
                shows: ALWAYS,
                beside: Vec::new(),
            },
        };
        Part::ALL.map(read).into()
    }

    /// Held against nalgebra's Cholesky decomposition.
    #[test]
    fn what_is_read_counts_as_much_in_parts_as_at_once() {
        let (off_by, sigma) = ([4.0, -6.0, 9.0, 2.0], [1.0, 2.0, 5.0, 5.0]);
        let parts = together(reads(off_by, sigma), &SOUND);
        let in_parts: f64 = parts
            .iter()
            .map(|part| {
                let z = part.off_by / part.sigma;
                -0.5 * z * z - libm::log(part.sigma)
            })
            .sum();
        let all = Matrix4::from_fn(|row, column| {
            let measured = if row == column {
                sigma[row] * sigma[row]
            } else {
                0.0
            };
            SOUND[row][column] + measured
        });
        let all = all.cholesky().expect("they are covariances");
        let off = Vector4::from(off_by);
        let at_once = -0.5 * off.dot(&all.solve(&off)) - 0.5 * libm::log(all.determinant());
        assert!((in_parts - at_once).abs() < 1e-9, "{in_parts} {at_once}");
    }

    #[test]
    fn numbers_that_go_together_say_little_on_top_of_each_other() {
        // A stiff spring with the preload that goes with it on sound bikes.
        let [first, second, ..] = &together(reads([5.5, -1.8, 0.0, 0.0], [0.1; 4]), &SOUND)[..]
        else {
            panic!("four were read");
        };
        assert!((first.off_by - 5.5).abs() < 1e-12);
        assert!(second.off_by.abs() < 0.1, "{}", second.off_by);
        assert!(second.sigma < 3.0, "{}", second.sigma);
    }
}
