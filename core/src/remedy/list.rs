//! The remedies and their tiers.

use crate::intake::choice;

choice! {
    /// From free to wholesale.
    Tier {
        /// Adjusters, pressure, upkeep: free.
        Adjust = "adjust",
        /// Consumables and cleaning.
        Service = "service",
        /// Small machining, revalve, friction treatment, another spring.
        Workshop = "workshop",
        /// Gas to coil, another kind of spring.
        Convert = "convert",
        /// New internals.
        Replace = "replace",
    }
}

choice! {
    /// Something that can be done.
    RemedyId {
        /// Set rear sag with shock preload.
        SetShockPreload = "set-shock-preload",
        /// Set the fork's gas pressure.
        SetGasPressure = "set-gas-pressure",
        /// Level the negative chamber: extend fully and cycle slowly.
        LevelNegative = "level-negative",
        /// Bleed trapped air and correct the pressure for temperature and altitude.
        BleedAir = "bleed-air",
        /// Fewer clicks of fork compression damping (open).
        OpenForkCompression = "open-fork-compression",
        /// More fork compression damping (close).
        CloseForkCompression = "close-fork-compression",
        /// Faster fork rebound (open).
        OpenForkRebound = "open-fork-rebound",
        /// Slower fork rebound (close).
        CloseForkRebound = "close-fork-rebound",
        /// Less shock compression damping (open).
        OpenShockCompression = "open-shock-compression",
        /// More shock compression damping (close).
        CloseShockCompression = "close-shock-compression",
        /// Faster shock rebound (open).
        OpenShockRebound = "open-shock-rebound",
        /// Slower shock rebound (close).
        CloseShockRebound = "close-shock-rebound",
        /// Set tyre pressures.
        SetTyres = "set-tyres",
        /// Level the bike: slide the fork in the clamps, match the sags.
        LevelBike = "level-bike",
        /// Let axle and clamps find their line, tighten in the manual's order.
        AlignAxle = "align-axle",
        /// Clean and grease seals and bushings, new wipers where worn.
        ServiceSeals = "service-seals",
        /// Fresh oil of the right grade and level in the fork.
        ServiceForkOil = "service-fork-oil",
        /// Clean and grease linkage and swingarm bearings.
        ServiceLinkage = "service-linkage",
        /// Fresh oil and gas in the shock, by a workshop.
        ServiceShock = "service-shock",
        /// Check, adjust and grease the steering head.
        ServiceHead = "service-head",
        /// Slippery finish on the tubes and thin engine-type oil in the leg that does no damping.
        ReduceDrag = "reduce-drag",
        /// Another fork spring or pair of springs.
        ForkSprings = "fork-springs",
        /// Another fork preload spacer.
        ForkSpacer = "fork-spacer",
        /// Another shock spring.
        ShockSpring = "shock-spring",
        /// Restack the fork's valves.
        RevalveFork = "revalve-fork",
        /// Give the mid-valve float.
        FloatMidValve = "float-mid-valve",
        /// Restack the shock's valves.
        RevalveShock = "revalve-shock",
        /// Restore the pressure behind the fork's oil.
        RestoreReservoir = "restore-reservoir",
        /// Convert the gas leg to a coil spring.
        ConvertToCoil = "convert-to-coil",
        /// New fork internals.
        ReplaceForkInternals = "replace-fork-internals",
        /// A new shock.
        ReplaceShock = "replace-shock",
        /// Leave the bike alone; ride, then ask again.
        RideOn = "ride-on",
    }
}
