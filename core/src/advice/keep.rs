//! What rides depend on, and so which answers leave rides as good as they were.

use crate::intake::{Field, Intake, Measured, Question};
use crate::quantity::Typed;

/// What becomes of rides when answers have changed since.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Keep {
    /// They would come out the same: nothing that is ridden has changed.
    Good,
    /// The bike is set up otherwise than it was ridden. What they found holds until they are ridden again.
    UntilRidden,
    /// Another rider, bike or ground: they say nothing about it.
    Not,
}

/// What the rides on `before` are worth now that the answers are `now`.
///
/// Rides are of a rider on a bike over ground: what is felt, measured or reckoned in hours changes what is believed
/// about the bike, not how it rides.
pub fn keep(before: &Intake, now: &Intake) -> Keep {
    let (before, now) = (ridden_part(before), ridden_part(now));
    if before == now {
        Keep::Good
    } else if without_set_up(before) == without_set_up(now) {
        Keep::UntilRidden
    } else {
        Keep::Not
    }
}

/// The answers that rides look at; all others are taken out, so that no ride can depend on them.
///
/// Hours since service are among those taken out: a bike worn by neglect is a fault to be found, not how it should be.
pub(super) fn ridden_part(intake: &Intake) -> Intake {
    let signs = intake.stop_signs.iter().flatten().take(1);
    let mut part = Intake {
        version: intake.version,
        rider: intake.rider.clone(),
        bike: intake.bike.clone(),
        ground: intake.ground.clone(),
        measured: Measured {
            front_tyre: intake.measured.front_tyre,
            rear_tyre: intake.measured.rear_tyre,
            ..Measured::default()
        },
        // A bike that must not be ridden is not ridden, whichever the sign.
        stop_signs: Some(signs.copied().collect()),
        ..Intake::default()
    };
    for field in [
        Field::RiderHeight,
        Field::ForkHours,
        Field::ShockHours,
        Field::ShockHighNow,
    ] {
        field.set(&mut part, None);
    }
    // How a number is known narrows or widens what is believed, and does not move the bike.
    for field in Field::ALL {
        let known = field.get(&part).map(|typed| Typed { how: None, ..typed });
        field.set(&mut part, known);
    }
    part
}

/// The same without how the bike is set up: its springs, gas and the air it was filled in, adjusters and tyres.
fn without_set_up(mut part: Intake) -> Intake {
    for field in Field::ALL {
        if matches!(
            field.question(),
            Question::ForkSpring
                | Question::ForkGas
                | Question::ShockSpring
                | Question::ForkClickers
                | Question::ShockClickers
                | Question::TyrePressures
                | Question::GroundUsual
                | Question::GroundToday
        ) {
            field.set(&mut part, None);
        }
    }
    part
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cause::checks::{How as Done, all};
    use crate::intake::{
        BikeClass, Complaint, Feeling, ForkKind, PushFeel, Share, StopSign, Terrain,
    };
    use crate::quantity::How;

    fn given(field: Field, value: f64) -> Intake {
        let mut intake = Intake::default();
        put(&mut intake, field, value, None);
        intake
    }

    fn put(intake: &mut Intake, field: Field, value: f64, how: Option<How>) {
        let unit = field.dimension().units()[0];
        field.set(intake, Some(Typed { value, unit, how }));
    }

    /// What becomes of rides on an empty document once this has been said.
    fn after(change: impl FnOnce(&mut Intake)) -> Keep {
        let before = Intake {
            stop_signs: Some([].into()),
            ..Intake::default()
        };
        let mut now = before.clone();
        change(&mut now);
        assert_ne!(before, now, "nothing was said");
        keep(&before, &now)
    }

    #[test]
    fn what_is_felt_measured_or_reckoned_needs_no_new_ride() {
        for field in [
            Field::ForkFreeSag,
            Field::ForkRiderSag,
            Field::RearFreeSag,
            Field::RearRiderSag,
            Field::ForkTravelUsed,
            Field::ForkHours,
            Field::ShockHours,
            Field::ShockHighNow,
            Field::RiderHeight,
        ] {
            let kept = after(|intake| put(intake, field, 40.0, None));
            assert_eq!(kept, Keep::Good, "{}", field.path());
        }
        let dives = Complaint {
            feeling: Feeling::Dives,
            end: None,
            phases: [].into(),
            severity: None,
            since: None,
        };
        assert_eq!(after(|i| i.complaints = Some(vec![dives])), Keep::Good);
        let sticks = Some(PushFeel::SticksFirst);
        assert_eq!(after(|i| i.measured.push_front = sticks), Keep::Good);
        assert_eq!(after(|i| i.note = "A name".to_owned()), Keep::Good);
        let unknown = Question::SagFront;
        assert_eq!(after(|i| i.dont_know.extend([unknown])), Keep::Good);
    }

    #[test]
    fn another_set_up_is_ridden_again() {
        for field in [
            Field::ForkRate,
            Field::ForkPreload,
            Field::ForkPressure,
            Field::ForkPressureTemperature,
            Field::ForkPressureMax,
            Field::ShockRate,
            Field::ShockPreload,
            Field::ForkCompressionNow,
            Field::ForkReboundRange,
            Field::ShockLowNow,
            Field::ShockReboundNow,
            Field::TodayTemperature,
            Field::FrontTyre,
            Field::RearTyre,
        ] {
            let kept = after(|intake| put(intake, field, 12.0, None));
            assert_eq!(kept, Keep::UntilRidden, "{}", field.path());
        }
    }

    #[test]
    fn another_rider_bike_or_ground_makes_the_rides_void() {
        for field in [Field::RiderWeight, Field::BikeWeight] {
            let kept = after(|intake| put(intake, field, 40.0, None));
            assert_eq!(kept, Keep::Not, "{}", field.path());
        }
        assert_eq!(
            after(|i| i.bike.class = Some(BikeClass::Motocross250)),
            Keep::Not
        );
        assert_eq!(
            after(|i| i.bike.fork = Some(ForkKind::GasOneLeg)),
            Keep::Not
        );
        let sand = [(Terrain::Sand, Share::Lot)].into();
        assert_eq!(after(|i| i.ground.mix = Some(sand)), Keep::Not);
        let cracked = StopSign::ALL[0];
        assert_eq!(after(|i| i.stop_signs = Some([cracked].into())), Keep::Not);
    }

    #[test]
    fn how_a_number_is_known_moves_no_bike() {
        let mut guessed = Intake::default();
        put(&mut guessed, Field::ShockRate, 48.0, Some(How::Guess));
        assert_eq!(keep(&given(Field::ShockRate, 48.0), &guessed), Keep::Good);
    }

    #[test]
    fn no_check_makes_the_rides_void() {
        for field in Field::ALL {
            if all().any(|check| check.how == Done::Answer(field.question())) {
                assert_ne!(
                    keep(&Intake::default(), &given(*field, 12.0)),
                    Keep::Not,
                    "{}",
                    field.path()
                );
            }
        }
    }
}
