//! Riders as they come: each seed makes one, who is the same on every machine.

use sagwright_core::bike::Class;
use sagwright_core::intake::{
    BikeClass, Complaint, End, Feeling, Intake, Pace, Posture, Severity, Share, Terrain, check,
    write,
};
use sagwright_core::quantity::{Entry, MassUnit};
use sagwright_core::ride::ground::dice::Dice;
use sagwright_core::sorted::{Map, Set};

/// The document of the rider of this seed.
pub fn document(seed: u64) -> String {
    let mut dice = Dice::seeded(seed);
    let mut intake = Intake::default();
    let class = one_of(&mut dice, BikeClass::ALL);
    intake.note = format!("Invented rider {seed}.");
    intake.bike.class = Some(class);
    intake.rider.weight = Some(Entry {
        value: (Class::of(class).rider_body.value * dice.between(0.85, 1.2)).round(),
        unit: MassUnit::Kilogram,
        how: None,
    });
    intake.rider.pace = Some(one_of(&mut dice, Pace::ALL));
    intake.rider.posture = Some(one_of(&mut dice, Posture::ALL));
    let mix: Map<Terrain, Share> = Terrain::ALL
        .iter()
        .map(|terrain| (*terrain, one_of(&mut dice, Share::ALL)))
        .collect();
    intake.ground.mix = Some(mix);
    let mut complaints: Map<Feeling, Complaint> = Map::new();
    for _ in 0..=dice.bits() % 3 {
        let feeling = one_of(&mut dice, Feeling::ALL);
        let complaint = Complaint {
            feeling,
            end: Some(one_of(&mut dice, End::ALL)),
            phases: Set::default(),
            severity: Some(one_of(&mut dice, Severity::ALL)),
            since: None,
        };
        complaints.insert(feeling, complaint);
    }
    let complaints = complaints.into_iter().map(|(_, complaint)| complaint);
    intake.complaints = Some(complaints.collect());
    check(&intake).expect("riders as they come pass the checks");
    write(&intake).expect("plain data")
}

fn one_of<T: Copy>(dice: &mut Dice, all: &[T]) -> T {
    let many = all.len() as u64;
    all[usize::try_from(dice.bits() % many).unwrap_or_default()]
}
