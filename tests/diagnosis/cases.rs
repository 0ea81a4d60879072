//! Worked cases of common practice, from memory: what is said and measured, and the cause a practitioner would have among
//! the first three.

use crate::riders::{belief, coil, feels, gas, measured, since};
use sagwright_core::cause::Cause;
use sagwright_core::intake::End::{Both, Front, Rear};
use sagwright_core::intake::Feeling::{
    Bottoms, Dives, Fades, HarshBigHits, HarshSmallBumps, Headshake, Kicks, Packs, Pushes, RampsUp,
    SitsWrong, Skips, Springs, Squats, Sticks, Wallows,
};
use sagwright_core::intake::Since::{Always, SinceWork, Slowly, Suddenly};
use sagwright_core::intake::{Field, Intake, Look, Phase, PushFeel, YesNo};
use sagwright_core::quantity::Unit;

/// Asserts that `cause` is among the three most believed.
#[track_caller]
fn leads(intake: &Intake, cause: Cause) {
    let ranked = belief(intake).ranked();
    let found = ranked.iter().take(3).any(|(one, _)| *one == cause);
    assert!(found, "{cause:?} not among the first of {:?}", &ranked[..6]);
}

fn looked(mut intake: Intake, look: Look) -> Intake {
    intake.measured.looks = Some([(look, YesNo::Yes)].into());
    intake
}

#[test]
fn a_gas_fork_harsh_from_the_first_day_is_the_gas_leg_itself() {
    let said = vec![
        since(feels(HarshSmallBumps, Front), Always),
        since(feels(Sticks, Front), Always),
    ];
    leads(&gas(said), Cause::GasDrag);
}

#[test]
fn a_gas_fork_harsh_at_too_much_pressure_has_too_much_pressure() {
    let said = vec![feels(HarshSmallBumps, Front), feels(RampsUp, Front)];
    let numbers = [(Field::ForkPressure, 13.5, Unit::Bar)];
    leads(&measured(gas(said), &numbers), Cause::GasHigh);
}

#[test]
fn a_fork_grown_harsh_over_months_is_dry() {
    let said = vec![since(feels(HarshSmallBumps, Front), Slowly)];
    leads(&coil(said), Cause::ForkFriction);
}

#[test]
fn a_gas_fork_harsh_at_the_right_pressure_after_long_neglect_is_dry() {
    let said = vec![
        since(feels(HarshSmallBumps, Front), Slowly),
        feels(Sticks, Front),
    ];
    let numbers = [
        (Field::ForkPressure, 10.6, Unit::Bar),
        (Field::ForkHours, 120.0, Unit::Hour),
    ];
    leads(&measured(gas(said), &numbers), Cause::ForkFriction);
}

#[test]
fn a_fork_that_judders_since_the_wheel_was_out_is_bound() {
    let mut intake = coil(vec![since(feels(Sticks, Front), SinceWork)]);
    intake.measured.push_front = Some(PushFeel::Judders);
    leads(&intake, Cause::ForkBound);
}

#[test]
fn a_fork_that_frees_with_the_axle_loose_is_bound() {
    let said = vec![feels(HarshSmallBumps, Front), feels(Sticks, Front)];
    leads(
        &looked(coil(said), Look::FreesWithAxleLoose),
        Cause::ForkBound,
    );
}

/// Letting the gas out parts what pressure does from what dirt and bent or twisted legs do (common practice).
#[test]
fn a_sticking_gas_fork_is_told_by_what_is_left_without_its_gas() {
    let said = || vec![feels(HarshSmallBumps, Front), feels(Sticks, Front)];
    let told = |answer: YesNo| {
        let mut intake = gas(said());
        intake.measured.looks = Some([(Look::SticksWithoutGas, answer)].into());
        intake
    };
    leads(&told(YesNo::No), Cause::GasDrag);
    leads(&told(YesNo::Yes), Cause::ForkFriction);
}

#[test]
fn a_gas_fork_that_hangs_short_has_its_chambers_uneven() {
    let said = vec![since(feels(SitsWrong, Front), Suddenly)];
    leads(&looked(gas(said), Look::HangsShort), Cause::GasNegative);
}

#[test]
fn diving_and_bottoming_on_coils_is_a_soft_spring() {
    let said = vec![feels(Dives, Front), feels(Bottoms, Front)];
    leads(&coil(said), Cause::ForkRateSoft);
}

#[test]
fn diving_and_bottoming_on_gas_is_low_pressure() {
    let said = vec![feels(Dives, Front), feels(Bottoms, Front)];
    leads(&gas(said), Cause::GasLow);
}

#[test]
fn a_fork_that_will_not_use_its_travel_on_stiff_springs_is_too_stiff() {
    let said = vec![feels(RampsUp, Front), feels(Pushes, Front)];
    let numbers = [(Field::ForkRate, 6.0, Unit::NewtonPerMillimetre)];
    leads(&measured(coil(said), &numbers), Cause::ForkRateStiff);
}

#[test]
fn a_front_that_dives_with_its_clicker_open_lacks_compression() {
    let said = vec![feels(Dives, Front)];
    let numbers = [(Field::ForkCompressionNow, 23.0, Unit::Click)];
    leads(
        &measured(coil(said), &numbers),
        Cause::ForkCompressionLittle,
    );
}

#[test]
fn a_front_that_jolts_on_edges_and_uses_no_travel_has_too_much_compression() {
    let said = vec![feels(HarshBigHits, Front), feels(RampsUp, Front)];
    leads(&coil(said), Cause::ForkCompressionMuch);
}

#[test]
fn packing_at_the_front_is_slow_fork_rebound() {
    let mut packs = feels(Packs, Front);
    packs.phases = [Phase::Straight].into();
    leads(&coil(vec![packs]), Cause::ForkReboundSlow);
}

#[test]
fn packing_at_the_rear_is_slow_shock_rebound() {
    let mut packs = feels(Packs, Rear);
    packs.phases = [Phase::Straight].into();
    leads(&coil(vec![packs]), Cause::ShockReboundSlow);
}

#[test]
fn a_front_that_springs_back_rebounds_too_fast() {
    leads(&coil(vec![feels(Springs, Front)]), Cause::ForkReboundFast);
}

#[test]
fn a_rear_that_kicks_springs_back_too_fast() {
    leads(&coil(vec![feels(Kicks, Rear)]), Cause::ShockReboundFast);
}

#[test]
fn a_rear_harsh_on_edges_that_uses_no_travel_has_too_much_compression() {
    let said = vec![feels(HarshBigHits, Rear), feels(RampsUp, Rear)];
    leads(&coil(said), Cause::ShockCompressionMuch);
}

#[test]
fn a_rear_that_wallows_and_bottoms_lacks_compression() {
    let said = vec![feels(Wallows, Rear), feels(Bottoms, Rear)];
    leads(&coil(said), Cause::ShockCompressionLittle);
}

#[test]
fn a_rear_that_squats_bottoms_and_sits_low_is_too_soft() {
    let said = vec![
        feels(Squats, Rear),
        feels(Bottoms, Rear),
        feels(SitsWrong, Rear),
    ];
    leads(&coil(said), Cause::ShockRateSoft);
}

#[test]
fn a_rear_that_sits_low_by_its_free_sag_too_lacks_preload() {
    let said = vec![feels(SitsWrong, Rear), feels(Squats, Rear)];
    let numbers = [
        (Field::RearFreeSag, 55.0, Unit::Millimetre),
        (Field::RearRiderSag, 123.0, Unit::Millimetre),
    ];
    leads(&measured(coil(said), &numbers), Cause::ShockPreload);
}

#[test]
fn a_rear_that_fades_has_lost_its_gas() {
    leads(&coil(vec![feels(Fades, Rear)]), Cause::ShockGasLost);
}

#[test]
fn a_fork_that_fades_has_lost_its_pressure_or_its_oil() {
    let said = coil(vec![since(feels(Fades, Front), Slowly)]);
    leads(&said, Cause::ForkReservoir);
    leads(&said, Cause::ForkOilWorn);
}

#[test]
fn a_fork_that_bottoms_since_work_with_spring_and_clicks_right_has_too_little_oil() {
    let said = vec![since(feels(Bottoms, Front), SinceWork)];
    let numbers = [
        (Field::ForkRate, 5.0, Unit::NewtonPerMillimetre),
        (Field::ForkCompressionNow, 12.0, Unit::Click),
    ];
    leads(&measured(coil(said), &numbers), Cause::ForkOilLow);
}

#[test]
fn a_fork_that_stops_short_since_its_oil_was_changed_has_too_much() {
    let said = vec![since(feels(RampsUp, Front), SinceWork)];
    leads(&coil(said), Cause::ForkOilHigh);
}

#[test]
fn a_rear_that_grew_harsh_and_sticks_runs_on_dry_bearings() {
    let said = vec![
        since(feels(HarshSmallBumps, Rear), Slowly),
        since(feels(Sticks, Rear), Slowly),
    ];
    leads(&coil(said), Cause::LinkageDry);
}

#[test]
fn harsh_at_both_ends_on_hard_tyres_is_the_tyres() {
    let said = vec![feels(HarshSmallBumps, Both), feels(Skips, Both)];
    let numbers = [
        (Field::FrontTyre, 1.5, Unit::Bar),
        (Field::RearTyre, 1.5, Unit::Bar),
    ];
    leads(&measured(coil(said), &numbers), Cause::TyreHigh);
}

#[test]
fn vague_in_turns_on_soft_tyres_is_the_tyres() {
    let said = vec![feels(Pushes, Front), feels(Wallows, Both)];
    let numbers = [
        (Field::FrontTyre, 0.55, Unit::Bar),
        (Field::RearTyre, 0.5, Unit::Bar),
    ];
    leads(&measured(coil(said), &numbers), Cause::TyreLow);
}

#[test]
fn a_shake_of_the_bars_puts_head_bearings_up() {
    leads(&coil(vec![feels(Headshake, Front)]), Cause::HeadBearings);
}

#[test]
fn a_shake_on_a_bike_that_stands_out_of_level_is_its_attitude() {
    let shake = coil(vec![feels(Headshake, Front)]);
    leads(&looked(shake, Look::SitsOutOfLevel), Cause::Attitude);
}

#[test]
fn nothing_wrong_is_believed_when_nothing_is_said_to_be_wrong() {
    assert_eq!(belief(&coil(vec![])).ranked()[0].0, Cause::NothingWrong);
}
