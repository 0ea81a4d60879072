//! The causes looked at.

use crate::intake::{End, choice};

choice! {
    /// Something that makes a bike ride badly, or the finding that nothing does.
    Cause {
        /// The fork spring is too soft for bike and rider.
        ForkRateSoft = "fork-rate-soft",
        /// The fork spring is too stiff for bike and rider.
        ForkRateStiff = "fork-rate-stiff",
        /// Too little or too much preload in the fork for a rate that suits.
        ForkPreload = "fork-preload",
        /// Gas pressure in the fork too low.
        GasLow = "gas-low",
        /// Gas pressure in the fork too high.
        GasHigh = "gas-high",
        /// Gas pressure that suited when it was set, moved since by colder, warmer or thinner air.
        GasShifted = "gas-shifted",
        /// The negative chamber has not levelled with the main one: a fork pulled down or topped out hard.
        GasNegative = "gas-negative",
        /// A gas leg's own nature: steep start, pressure on the seals, soft middle.
        GasDrag = "gas-drag",
        /// Dry, dirty or worn seals and bushings in the fork.
        ForkFriction = "fork-friction",
        /// The legs bind: axle, clamps or a bent tube hold them out of line.
        ForkBound = "fork-bound",
        /// Too little oil (too large an air gap) in the fork.
        ForkOilLow = "fork-oil-low",
        /// Too much oil (too small an air gap) in the fork.
        ForkOilHigh = "fork-oil-high",
        /// Fork oil worn, aerated or of the wrong grade.
        ForkOilWorn = "fork-oil-worn",
        /// Fork compression damping too strong.
        ForkCompressionMuch = "fork-compression-much",
        /// Fork compression damping too weak.
        ForkCompressionLittle = "fork-compression-little",
        /// Fork rebound too slow.
        ForkReboundSlow = "fork-rebound-slow",
        /// Fork rebound too fast.
        ForkReboundFast = "fork-rebound-fast",
        /// The mid-valve dominates the base valve, or has no float.
        MidValve = "mid-valve",
        /// The pressure behind the fork's oil is lost.
        ForkReservoir = "fork-reservoir",
        /// The shock spring is too soft.
        ShockRateSoft = "shock-rate-soft",
        /// The shock spring is too stiff.
        ShockRateStiff = "shock-rate-stiff",
        /// Rear sag off through preload, with a rate that suits.
        ShockPreload = "shock-preload",
        /// Shock compression damping too strong.
        ShockCompressionMuch = "shock-compression-much",
        /// Shock compression damping too weak.
        ShockCompressionLittle = "shock-compression-little",
        /// Shock rebound too slow.
        ShockReboundSlow = "shock-rebound-slow",
        /// Shock rebound too fast.
        ShockReboundFast = "shock-rebound-fast",
        /// The shock has lost its gas, or its oil is worn out.
        ShockGasLost = "shock-gas-lost",
        /// Linkage or swingarm bearings dry or seizing.
        LinkageDry = "linkage-dry",
        /// The bike stands nose-down or nose-up: front and rear do not match.
        Attitude = "attitude",
        /// Tyre pressure too high.
        TyreHigh = "tyre-high",
        /// Tyre pressure too low.
        TyreLow = "tyre-low",
        /// Steering-head bearings loose or notchy.
        HeadBearings = "head-bearings",
        /// Nothing is wrong with the bike: the ground or the expectation.
        NothingWrong = "nothing-wrong",
    }
}

impl Cause {
    /// How many causes there are.
    pub const COUNT: usize = Self::ALL.len();

    /// Its place in [`Self::ALL`].
    pub const fn index(self) -> usize {
        self as usize
    }

    /// The end of the bike it sits at.
    pub const fn end(self) -> End {
        match self {
            Self::ShockRateSoft
            | Self::ShockRateStiff
            | Self::ShockPreload
            | Self::ShockCompressionMuch
            | Self::ShockCompressionLittle
            | Self::ShockReboundSlow
            | Self::ShockReboundFast
            | Self::ShockGasLost
            | Self::LinkageDry => End::Rear,
            Self::Attitude | Self::TyreHigh | Self::TyreLow | Self::NothingWrong => End::Both,
            _ => End::Front,
        }
    }

    /// Whether only a gas fork can have it.
    pub const fn needs_gas(self) -> bool {
        matches!(
            self,
            Self::GasLow | Self::GasHigh | Self::GasShifted | Self::GasNegative | Self::GasDrag
        )
    }

    /// Whether only a coil fork can have it.
    pub const fn needs_coil(self) -> bool {
        matches!(
            self,
            Self::ForkRateSoft | Self::ForkRateStiff | Self::ForkPreload
        )
    }
}
