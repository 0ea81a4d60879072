//! Every kind of lane computes as a plain number does.

use sagwright_core::lane::Lane;
#[cfg(target_arch = "wasm32")]
use wasm_bindgen_test::wasm_bindgen_test as test;
use wide::{f32x4, f32x8, f64x2, f64x4, f64x8};

/// Pairs of numbers, with zeros of either sign.
const PAIRS: [[f64; 2]; 12] = [
    [1.5, 2.5],
    [-2.25, -2.25],
    [0.1, 0.3],
    [7.0, -7.0],
    [-0.3, 0.4],
    [1e9, 1e-9],
    [3.0, 2.0],
    [0.0, 5.0],
    [0.0, -0.0],
    [-0.0, 0.0],
    [-1e-30, -0.0],
    [16_777_217.0, 1.0],
];

/// Sums on two numbers or rows of them.
fn sums<T: Lane>(a: T, b: T) -> [T; 6] {
    [a + b, a - b, a * b, a / b, -a, (a * a).sqrt()]
}

/// Choices between two numbers or rows of them.
fn choices<T: Lane>(a: T, b: T) -> [T; 6] {
    [
        a.greater(b),
        a.lesser(b),
        a.between(-b.size(), b.size()),
        a.if_above(b, T::splat(1.0), a),
        a.size(),
        b.size(),
    ]
}

/// `T`, lane by lane, against the plain number `P`.
fn as_plain<T: Lane, P: Lane>() {
    let same = |pair: &dyn Fn(usize) -> [f64; 2],
                all: &dyn Fn([T; 2]) -> [T; 6],
                plain: &dyn Fn([P; 2]) -> [P; 6]| {
        let rows = all([0, 1].map(|which| T::from_lanes(|lane| pair(lane)[which])));
        for lane in 0..T::LANES {
            let wanted = plain(pair(lane).map(P::splat));
            for (operation, (row, wanted)) in rows.iter().zip(wanted).enumerate() {
                let (got, wanted) = (row.lane(lane), wanted.lane(0));
                assert!(
                    got.to_bits() == wanted.to_bits() || got.is_nan() && wanted.is_nan(),
                    "lane {lane} of {}, operation {operation} of {:?}: {got}, not {wanted}",
                    T::LANES,
                    pair(lane)
                );
            }
        }
    };
    for first in 0..PAIRS.len() {
        let pair = |lane: usize| PAIRS[(first + lane) % PAIRS.len()];
        same(&pair, &|[a, b]| sums(a, b), &|[a, b]| sums(a, b));
        same(&pair, &|[a, b]| choices(a, b), &|[a, b]| choices(a, b));
    }
    for pair in [[f64::NAN, 1.0], [1.0, f64::NAN]] {
        same(&|_| pair, &|[a, b]| choices(a, b), &|[a, b]| choices(a, b));
    }
}

/// Parts of a cell, one for each lane.
const PARTS: [f64; 8] = [0.0, 0.37, 0.5, 1.99, 2.01, 3.4, 4.75, 0.01];

/// Whole parts of places, and rows of four, lane by lane.
fn looks_up<T: Lane>() {
    for first in 0..128_u16 {
        let place = |lane: usize| (f64::from(first) + PARTS[lane]) % 128.0;
        let marked = T::from_lanes(place) - T::splat(0.5) + T::splat(T::WHOLE);
        let rows =
            T::rows(|lane| [0.0, 1.0, 2.0, 3.0].map(|row| T::one(row + place(lane).floor())));
        for lane in 0..T::LANES {
            let near = f64::from(u8::try_from(marked.last_bits(lane) % 128).expect("below 128"));
            assert!(
                (place(lane) - 0.5 - near).abs() <= 0.5,
                "{} {near}",
                place(lane)
            );
            for (row, more) in rows.iter().zip([0.0, 1.0, 2.0, 3.0]) {
                assert_eq!(
                    row.lane(lane).to_bits(),
                    (place(lane).floor() + more).to_bits()
                );
            }
        }
    }
}

#[test]
fn every_lane_computes_as_a_plain_number() {
    as_plain::<f64, f64>();
    as_plain::<f64x2, f64>();
    as_plain::<f64x4, f64>();
    as_plain::<f64x8, f64>();
    as_plain::<f32, f32>();
    as_plain::<f32x4, f32>();
    as_plain::<f32x8, f32>();
}

#[test]
fn every_lane_looks_up_its_own_cell() {
    looks_up::<f64>();
    looks_up::<f64x2>();
    looks_up::<f64x4>();
    looks_up::<f64x8>();
    looks_up::<f32>();
    looks_up::<f32x4>();
    looks_up::<f32x8>();
}
