//! Where the adjusters start.

use sagwright_core::intake::{BikeClass, ForkKind, Pace, Share, Terrain};
use sagwright_core::stance::clickers::{Clickers, MARGIN, Ranges, clickers};
use sagwright_core::stance::{Pitch, StanceError};

use crate::reference::{Reference, between};

fn start(bike: &Reference, pace: Pace, ground: &[(Terrain, Share)]) -> Clickers {
    clickers(
        &bike.case(Pitch::OtherAsSet),
        pace,
        ground,
        &Ranges::default(),
    )
    .expect("the usual bike settles")
}

/// Around 500 N s/m of compression for the fork of a 450 as a whole.
#[test]
fn fork_of_a_450() {
    let bike = Reference::on_target(BikeClass::Motocross450, ForkKind::CoilBothLegs);
    let found = start(&bike, Pace::Club, &[]).fork_compression;
    between("at the axle", found.at_axle.value, 450.0, 600.0);
    between("along the legs", found.at_part.value, 380.0, 550.0);
}

/// The usual rider at club pace starts in the middle of every adjuster, in every class and with every fork.
#[test]
fn usual_rider_starts_in_the_middle() {
    for &kind in BikeClass::ALL {
        for &fork in ForkKind::ALL {
            let found = start(&Reference::usual(kind, fork), Pace::Club, &[]);
            for one in [
                found.fork_compression,
                found.fork_rebound,
                found.shock_compression,
                found.shock_rebound,
            ] {
                assert_eq!(
                    one.clicks.middle,
                    one.range / 2,
                    "{} {}",
                    kind.word(),
                    fork.word()
                );
                assert_eq!(one.clipped, None);
            }
        }
    }
}

/// Rocks and learners start further out, jumps, whoops and pace further in.
#[test]
fn ground_and_pace_move_the_start_the_right_way() {
    let bike = Reference::on_target(BikeClass::Motocross250, ForkKind::CoilBothLegs);
    let clicks = |pace, ground: &[(Terrain, Share)]| {
        start(&bike, pace, ground).fork_compression.clicks.middle
    };
    let middle = clicks(Pace::Club, &[]);
    assert!(clicks(Pace::Learning, &[]) > middle);
    assert!(clicks(Pace::Expert, &[]) < middle);
    assert!(clicks(Pace::Club, &[(Terrain::RootsRocks, Share::Lot)]) > middle);
    assert!(clicks(Pace::Club, &[(Terrain::Jumps, Share::Lot)]) < middle);
    assert!(clicks(Pace::Club, &[(Terrain::Whoops, Share::Some)]) < middle);
    assert_eq!(clicks(Pace::Club, &[(Terrain::Jumps, Share::None)]), middle);
}

/// A heavier rider on springs that suit needs more damping, so fewer clicks out.
#[test]
fn heavier_rider_needs_more_damping() {
    let mut bike = Reference::on_target(BikeClass::Motocross250, ForkKind::CoilBothLegs);
    let before = start(&bike, Pace::Club, &[]).shock_rebound;
    bike.load.rider *= 1.25;
    bike.set_up.shock.rate *= 1.18;
    let after = start(&bike, Pace::Club, &[]).shock_rebound;
    assert!(after.at_axle > before.at_axle);
    assert!(after.clicks.middle < before.clicks.middle);
}

/// One damping leg carries the whole of what two would share.
#[test]
fn one_leg_does_the_work_of_two() {
    let both = Reference::on_target(BikeClass::EnduroLinkage, ForkKind::CoilBothLegs);
    let one = Reference::on_target(BikeClass::EnduroLinkage, ForkKind::CoilOneLeg);
    let both = start(&both, Pace::Club, &[]).fork_rebound;
    let one = start(&one, Pace::Club, &[]).fork_rebound;
    between(
        "per leg",
        one.each_damper.value / both.each_damper.value,
        1.999,
        2.001,
    );
}

/// An adjuster with too few clicks says what it could not reach.
#[test]
fn a_short_adjuster_says_what_was_cut_off() {
    let bike = Reference::on_target(BikeClass::Motocross450, ForkKind::CoilBothLegs);
    let ranges = Ranges {
        fork_compression: 8,
        ..Ranges::default()
    };
    let ground = [(Terrain::RootsRocks, Share::Lot)];
    let found = clickers(
        &bike.case(Pitch::OtherAsSet),
        Pace::Learning,
        &ground,
        &ranges,
    )
    .expect("settles");
    let short = found.fork_compression;
    assert_eq!(short.clicks.middle, 8 - MARGIN);
    let clipped = short.clipped.expect("eight clicks do not reach that far");
    assert!(clipped.wanted > 8.0);
    between("too firm", clipped.share, 1.1, 1.6);

    let none = Ranges {
        shock_rebound: 3,
        ..Ranges::default()
    };
    let refused = clickers(&bike.case(Pitch::OtherAsSet), Pace::Club, &[], &none);
    assert!(matches!(refused, Err(StanceError::Input(_))));
}
