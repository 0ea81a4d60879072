//! A damper sized for a wanted damping.
//!
//! What is known of a bike is how much damping it should have at low speed; no rider can say what shims are inside.
//! So the hardware is typical, and its valves are sized as a tuner would: the bleed and the first bend of the shims
//! for low speed, and the share of the mid-valve so that it takes part without dominating. Force at high speed is not
//! aimed at: it follows from how shims open, and the checks of practice compare it. All choices below are from memory
//! unless said.

use super::super::limits::{OutOfRange, within};
use super::super::machine::Machine;
use super::super::shock::Shock;
use super::damper::{ClickedValve, Damper, MidValve, Plate};
use super::oil::{Fluid, Oil};
use super::orifice::{Needle, Passage};
use super::reservoir::Reservoir;
use super::valve::{Seat, ShimValve};
use crate::intake::{BikeClass, ForkKind};
use crate::units::{BAR_IN_PA, DampingRate, Pressure, ThermodynamicTemperature, celsius};
use core::f64::consts::PI;

/// Temperature of the oil on a usual ride, for which valves are sized, K.
pub const USUAL_OIL: ThermodynamicTemperature = celsius(40.0);
/// Speed of the axle up to which damping counts as low-speed, m/s (common practice: 0.1 to 0.3).
pub const LOW_SPEED: f64 = 0.3;
/// Speed of the axle in a hard hit, m/s.
pub const HIGH_SPEED: f64 = 3.0;
/// Speed at which shims leave their seat over [`LOW_SPEED`].
const CRACK_SPEED: f64 = 0.5;
/// Force at that speed over force at [`LOW_SPEED`].
const CRACK_FORCE: f64 = 0.54;
/// Length of the narrow part of a needle, m.
const NEEDLE_M: f64 = 3e-3;
/// What leaks past a closed clicker, in clicks.
const LEAK_CLICKS: f64 = 4.0;
/// Radius of the shims over that of the piston.
const SHIM_SHARE: f64 = 0.8;
/// Share of the ring of shims under which there are ports.
const PORTED: f64 = 0.35;
/// Radius of the clamp over that of the shims.
pub const CLAMP_SHARE: f64 = 0.45;
/// Leak past a mid-valve without float over the area of the annulus.
const SOLID_LEAK: f64 = 2e-3;

/// What a damper is made of before its valves are sized. Sizes in SI.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Hardware {
    /// Area of the piston, m².
    pub piston_m2: f64,
    /// Area of the rod, m².
    pub rod_m2: f64,
    /// Outer radius of the shims on the base valve, m.
    pub base_shim_m: f64,
    /// Reservoir.
    pub reservoir: Reservoir,
    /// Oil.
    pub oil: Oil,
    /// Dampers that share the work.
    pub count: u8,
    /// Speed of rod or shaft over speed of the axle, about ride height.
    pub speed_share: f64,
    /// Share of the compression force that the mid-valve makes at [`LOW_SPEED`].
    pub mid_low: f64,
    /// The same in a hard hit.
    pub mid_high: f64,
    /// Whether the mid-valve floats.
    pub floats: bool,
}

/// Damping that a damper should have, and where its clickers then stand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wanted {
    /// Compression at low speed of each damper, N s/m.
    pub compression: DampingRate,
    /// Rebound at low speed of each damper, N s/m.
    pub rebound: DampingRate,
    /// Clicks of compression from closed at which it has that, usually the middle of the range.
    pub compression_clicks: u8,
    /// Clicks of rebound from closed at which it has that.
    pub rebound_clicks: u8,
}

impl Hardware {
    /// A leg of a fork with two chambers in it and a spring behind the oil: piston of 24 to 26 mm, rod of 12 to 13 mm,
    /// 1.5 bar rising to about 4 (common practice).
    pub fn fork_leg(machine: &Machine, ambient: Pressure) -> Self {
        let (piston_m, rod_m) = match machine.class.kind {
            BikeClass::SmallWheelYouth => (24e-3, 12e-3),
            _ => (26e-3, 13e-3),
        };
        let rod_m2 = disc_m2(rod_m);
        Self {
            piston_m2: disc_m2(piston_m),
            rod_m2,
            base_shim_m: 0.5 * SHIM_SHARE * piston_m,
            reservoir: Reservoir::Spring {
                extended_pa: 1.5 * BAR_IN_PA,
                rise_pa_per_m3: 2.5 * BAR_IN_PA / (rod_m2 * machine.fork_stroke.value),
                ambient_pa: ambient.value,
            },
            oil: Oil::light(),
            count: if machine.fork == ForkKind::CoilBothLegs {
                2
            } else {
                1
            },
            speed_share: 1.0,
            mid_low: 0.20,
            mid_high: 0.40,
            floats: true,
        }
    }

    /// A shock with its gas as it stands: piston of 44 to 50 mm. The main piston works without float. `travel_m` is
    /// the axle travel about which speeds are compared.
    pub fn shock(machine: &Machine, shock: &Shock, travel_m: f64) -> Self {
        let piston_m = match machine.class.kind {
            BikeClass::SmallWheelYouth => 44e-3,
            _ => 50e-3,
        };
        Self {
            piston_m2: disc_m2(piston_m),
            rod_m2: shock.reservoir.area_m2,
            base_shim_m: 8e-3,
            reservoir: Reservoir::Gas {
                column: shock.reservoir,
                extended_pa: shock.reservoir_pa,
            },
            oil: Oil::light(),
            count: 1,
            speed_share: shock.leverage.ratio(travel_m),
            mid_low: 0.30,
            mid_high: 0.45,
            floats: false,
        }
    }
}

/// One valve to be sized: the area whose oil it lets through, and two forces on it.
#[derive(Clone, Copy)]
struct Sized {
    guarded_m2: f64,
    crack: (f64, f64),
    through: (f64, f64),
    fluid: Fluid,
    seat: Seat,
}

impl Sized {
    /// Flow and pressure of the area at a speed in m/s and a force in N.
    fn flow_and_drop(&self, (speed, force_n): (f64, f64)) -> (f64, f64) {
        (self.guarded_m2 * speed, force_n / self.guarded_m2)
    }

    /// The hole that alone gives the force at which the shims leave their seat.
    fn hole(&self) -> Passage {
        let (flow, drop_pa) = self.flow_and_drop(self.crack);
        Passage::hole_for(flow, drop_pa, NEEDLE_M, self.fluid)
    }

    /// The shims that together with a bleed give the second force.
    fn shims(&self, bleed: Passage) -> ShimValve {
        let crack_pa = self.flow_and_drop(self.crack).1;
        let (flow, drop_pa) = self.flow_and_drop(self.through);
        let (turbulent, laminar) = (bleed.turbulent(self.fluid), bleed.laminar(self.fluid));
        // Flow of the bleed alone at that pressure, from Δp = turbulent Q² + laminar Q, without cancellation.
        let root = (laminar * laminar + 4.0 * turbulent * drop_pa).sqrt();
        let past_shims = flow - 2.0 * drop_pa / (laminar + root);
        let opening = past_shims / ((drop_pa - crack_pa) * drop_pa.sqrt());
        ShimValve::opening_as(self.seat, crack_pa, opening, self.fluid)
    }
}

impl Damper {
    /// Sizes the valves of a damper so that it has the wanted damping at [`LOW_SPEED`] with its oil at [`USUAL_OIL`].
    ///
    /// Damping 20 to 100 000 N s/m each, clicks 1 to 60.
    pub fn for_targets(hardware: &Hardware, wanted: &Wanted) -> Result<Self, OutOfRange> {
        check(hardware, wanted)?;
        let clicks = [wanted.compression_clicks, wanted.rebound_clicks].map(f64::from);
        let Hardware {
            piston_m2, rod_m2, ..
        } = *hardware;
        let annulus_m2 = piston_m2 - rod_m2;
        let fluid = hardware.oil.at(USUAL_OIL)?;
        let piston_shim_m = SHIM_SHARE * (piston_m2 / PI).sqrt();
        let seat = Seat::of(piston_shim_m, CLAMP_SHARE, PORTED)?;
        let base_seat = Seat::of(hardware.base_shim_m, CLAMP_SHARE, PORTED)?;
        let low = LOW_SPEED * hardware.speed_share;
        let top_speed = HIGH_SPEED * hardware.speed_share;
        let port_m2 = 0.3 * annulus_m2;

        let clicked = |guarded_m2: f64, seat: Seat, force_n: f64, clicks: f64| {
            let sized = Sized {
                guarded_m2,
                crack: (CRACK_SPEED * low, CRACK_FORCE * force_n),
                through: (low, force_n),
                fluid,
                seat,
            };
            let hole = sized.hole();
            ClickedValve {
                shims: sized.shims(hole),
                needle: Needle::reaching(hole, clicks, LEAK_CLICKS, NEEDLE_M),
                clicks,
                port_m2,
            }
        };
        let low_n = wanted.compression.value * low;
        let base = clicked(
            rod_m2,
            base_seat,
            (1.0 - hardware.mid_low) * low_n,
            clicks[0],
        );
        let base_high_n = base
            .valve()
            .law(rod_m2, fluid, top_speed)?
            .force_n(top_speed);
        let mid_high_n = base_high_n * hardware.mid_high / (1.0 - hardware.mid_high);
        let sized = Sized {
            guarded_m2: annulus_m2,
            crack: (low, hardware.mid_low * low_n),
            through: (top_speed, mid_high_n),
            fluid,
            seat,
        };
        let (plate, bleed) = if hardware.floats {
            let (flow, drop_pa) = sized.flow_and_drop(sized.crack);
            MidValve::floating(seat, flow, drop_pa, fluid)
        } else {
            let leak = sized.hole();
            (Plate::Solid { leak }, leak)
        };
        Ok(Self {
            piston_m2,
            rod_m2,
            base,
            mid: MidValve {
                shims: sized.shims(bleed),
                plate,
                port_m2,
            },
            rebound: clicked(annulus_m2, seat, wanted.rebound.value * low, clicks[1]),
            refill_m2: 0.5 * rod_m2,
            reservoir: hardware.reservoir,
            oil: hardware.oil,
            count: hardware.count,
            top_speed,
        })
    }

    /// This damper with the float taken out of its mid-valve, which then has nothing open but a small leak.
    #[must_use]
    pub fn without_float(mut self) -> Self {
        let leak_m2 = SOLID_LEAK * (self.piston_m2 - self.rod_m2);
        self.mid.plate = Plate::Solid {
            leak: Passage::hole(leak_m2, NEEDLE_M),
        };
        self
    }
}

/// Says which figure, if any, no damper could be sized from.
fn check(hardware: &Hardware, wanted: &Wanted) -> Result<(), OutOfRange> {
    let Wanted {
        compression,
        rebound,
        ..
    } = *wanted;
    let clicks = [wanted.compression_clicks, wanted.rebound_clicks].map(f64::from);
    within("compression damping in N s/m", compression.value, 20.0, 1e5)?;
    within("rebound damping in N s/m", rebound.value, 20.0, 1e5)?;
    within("clicks of compression", clicks[0], 1.0, 60.0)?;
    within("clicks of rebound", clicks[1], 1.0, 60.0)?;
    within(
        "speed of the damper over that of the axle",
        hardware.speed_share,
        0.1,
        1.5,
    )?;
    within(
        "radius of the base shims in m",
        hardware.base_shim_m,
        3e-3,
        30e-3,
    )?;
    within(
        "share of the mid-valve at low speed",
        hardware.mid_low,
        0.05,
        0.8,
    )?;
    within(
        "share of the mid-valve in a hard hit",
        hardware.mid_high,
        hardware.mid_low,
        0.8,
    )
}

/// Area of a disc, m².
fn disc_m2(diameter_m: f64) -> f64 {
    PI / 4.0 * diameter_m * diameter_m
}
