//! Rides in 32-bit lanes against the same rides in 64-bit ones: what the shorter numbers cost, figure by figure.
//! `docs/ride.md` keeps the table.

use sagwright_core::feel::{Feel, Metrics};
use sagwright_core::intake::{BikeClass, ForkKind, Pace};
use sagwright_core::lane::Lane;
use sagwright_core::ride::ground::fit::usual_size;
use sagwright_core::ride::ground::{Course, Feature};
use sagwright_core::ride::run::{Ride, SEARCH_STEP_S};
use sagwright_core::ride::{Bike, Candidate};
use wide::{f32x8, f64x8};

use crate::bikes::Ridden;

/// Pieces of each ground.
const SEEDS: [u64; 3] = [11, 47, 5];

/// Grounds, and whether they are as large as the bike's riders make them, as a search has those that ask for all travel.
const GROUNDS: [(Feature, bool); 8] = [
    (Feature::SmallRipple, false),
    (Feature::RootsRocks, false),
    (Feature::BrakingBumps, true),
    (Feature::Whoops, true),
    (Feature::JumpToSlope, true),
    (Feature::TakeOff, true),
    (Feature::Rollers, true),
    (Feature::Gravel, false),
];

/// What every set-up felt.
fn felt<T: Lane>(candidates: &[Candidate], course: &Course) -> Vec<Metrics<f64>> {
    let bike = Bike::<T>::of(candidates).expect("usual bikes");
    let mut feel = Feel::new(&course.clock(SEARCH_STEP_S), &bike.resting());
    let mut ride = Ride::start(&bike, course, SEARCH_STEP_S);
    while !ride.over() {
        ride.step();
        feel.step(&ride.sample());
    }
    let metrics = feel.metrics();
    (0..T::LANES).map(|lane| metrics.lane(lane)).collect()
}

/// The figures compared.
const NAMES: [&str; 24] = [
    "hand vibration",
    "body vibration",
    "body dose",
    "body fore and aft",
    "small bumps felt",
    "bumps",
    "bumps ignored",
    "packing, front",
    "packing, rear",
    "dive",
    "dive rate",
    "kick",
    "nose up",
    "rear lift",
    "stop force, front",
    "stop force, rear",
    "heave overshoot",
    "light, front",
    "light, rear",
    "unsteadiness, front",
    "unsteadiness, rear",
    "travel used, front",
    "travel used, rear",
    "deepest, rear",
];

/// These figures, each with the size below which a difference is measured against that size: of a figure that hardly happened
/// nobody asks the digits.
fn listed(m: &Metrics<f64>) -> [(f64, f64); 24] {
    [
        (m.hand_m_s2, 0.2),
        (m.body_m_s2, 0.2),
        (m.body_dose_m_s1_75, 0.5),
        (m.body_fore_aft_m_s2, 0.1),
        (m.small_bumps_felt, 0.05),
        (m.bumps, 1.0),
        (m.bumps_ignored, 0.1),
        (m.packed_m.front, 0.03),
        (m.packed_m.rear, 0.03),
        (m.dive_m, 0.02),
        (m.dive_rate_m_s, 0.1),
        (m.kick_rad_s, 0.3),
        (m.nose_up_rad_s, 0.3),
        (m.rear_lift_m, 0.02),
        (m.bottoming_n.front, 200.0),
        (m.bottoming_n.rear, 200.0),
        (m.heave_overshoot, 0.1),
        (m.light_share.front, 0.05),
        (m.light_share.rear, 0.05),
        (m.load_unsteadiness.front, 0.1),
        (m.load_unsteadiness.rear, 0.1),
        (m.travel_used.front, 0.1),
        (m.travel_used.rear, 0.1),
        (m.travel_deepest.rear, 0.1),
    ]
}

/// Largest difference of each figure between two sets of rides.
fn largest(narrow: &[Metrics<f64>], wide: &[Metrics<f64>]) -> [f64; 24] {
    let mut largest = [0.0_f64; 24];
    for (narrow, wide) in narrow.iter().zip(wide) {
        let pairs = listed(narrow).into_iter().zip(listed(wide));
        for (most, ((got, _), (wanted, least))) in largest.iter_mut().zip(pairs) {
            let off = (got - wanted).abs() / wanted.abs().max(least);
            assert!(off.is_finite(), "{got} instead of {wanted}");
            *most = most.max(off);
        }
    }
    largest
}

/// Set-up by set-up, the mean over pieces of ground.
fn means(pieces: &[Vec<Metrics<f64>>]) -> Vec<Metrics<f64>> {
    (0..f32x8::LANES)
        .map(|set_up| {
            let all: Vec<_> = pieces.iter().map(|piece| piece[set_up]).collect();
            Metrics::mean(&all).expect("pieces")
        })
        .collect()
}

/// Eight set-ups of a bike over the pieces of a ground, each made as large as `size` says: what each felt, by piece.
fn ridden<T: Lane>(
    bike: &Ridden,
    feature: Feature,
    size: impl Fn(&Course) -> f64,
) -> Vec<Vec<Metrics<f64>>> {
    let candidates: Vec<Candidate> = (0..8_u8)
        .map(|i| {
            let mut candidate = bike.candidate();
            candidate.fork_damper.dampers *= 0.8 + 0.05 * f64::from(i);
            candidate.shock_damper.dampers *= 1.2 - 0.05 * f64::from(i);
            candidate
        })
        .collect();
    SEEDS
        .iter()
        .map(|seed| {
            let mut course = bike.course(feature, Pace::Club, *seed);
            course.size = size(&course);
            felt::<T>(&candidates, &course)
        })
        .collect()
}

/// Largest differences between single rides, and between means over the pieces.
fn compared(a: &[Vec<Metrics<f64>>], b: &[Vec<Metrics<f64>>]) -> [[f64; 24]; 2] {
    [
        largest(&a.concat(), &b.concat()),
        largest(&means(a), &means(b)),
    ]
}

/// The larger of two differences, figure by figure.
fn larger(a: [f64; 24], b: [f64; 24]) -> [f64; 24] {
    core::array::from_fn(|figure| a[figure].max(b[figure]))
}

/// A bike of each kind.
fn bikes() -> [Ridden; 3] {
    [
        Ridden::usual(BikeClass::Motocross450, ForkKind::GasOneLeg),
        Ridden::usual(BikeClass::Adventure, ForkKind::CoilBothLegs),
        Ridden::usual(BikeClass::SmallWheelYouth, ForkKind::CoilBothLegs),
    ]
}

/// On the grounds of a search no figure of a single ride differs by more than 0.05 % (measured; asserted is 0.2 %), and no
/// mean over three pieces by more than 0.02 % (0.1 %).
#[test]
fn short_numbers_cost_little() {
    let mut worst = [[0.0; 24]; 2];
    for bike in bikes() {
        for (feature, fitted) in GROUNDS {
            let size = |course: &Course| {
                if fitted {
                    usual_size(&bike.candidate(), course).expect("a sound bike")
                } else {
                    1.0
                }
            };
            let narrow = ridden::<f32x8>(&bike, feature, size);
            let wide = ridden::<f64x8>(&bike, feature, size);
            let [alone, together] = compared(&narrow, &wide);
            worst = [larger(worst[0], alone), larger(worst[1], together)];
        }
    }
    for (figure, name) in NAMES.iter().enumerate() {
        let [alone, together] = worst.map(|of| of[figure]);
        println!("{name}: {alone:.0e} alone, {together:.0e} in the mean");
        assert!(alone < 2e-3, "{name}: {alone}");
        assert!(together < 1e-3, "{name}: {together}");
    }
}

/// Whoops larger than a bike can take throw it about, and the smallest difference grows from one to the next, whatever it
/// comes from: short numbers change such rides no more than ground does that is larger by a millionth (measured: up to
/// a tenth alone and 0.03 in the mean; asserted is three times what that ground does).
#[test]
fn whoops_that_throw_the_bike_tell_no_digits() {
    let most = |of: [f64; 24]| of.into_iter().fold(0.0, f64::max);
    let mut worst = [[0.0_f64; 2]; 2];
    for bike in bikes() {
        let wide = ridden::<f64x8>(&bike, Feature::Whoops, |_| 1.0);
        let nudged = ridden::<f64x8>(&bike, Feature::Whoops, |_| 1.0 + 1e-6);
        let narrow = ridden::<f32x8>(&bike, Feature::Whoops, |_| 1.0);
        for (worst, other) in worst.iter_mut().zip([&narrow, &nudged]) {
            let [alone, together] = compared(other, &wide).map(most);
            println!(
                "{:?}: {alone:.0e} alone, {together:.0e} in the mean",
                bike.bike.machine.class.kind
            );
            *worst = [worst[0].max(alone), worst[1].max(together)];
        }
    }
    let [narrow, nudged] = worst;
    assert!(
        narrow[0] < 3.0 * nudged[0] && narrow[1] < 3.0 * nudged[1],
        "{narrow:?} {nudged:?}"
    );
}
