//! What is pushed, looked at and tried on the bike, and how it comes out: closed lists too.

use super::choice;

choice! {
    /// What a slow push on the parked bike feels like.
    PushFeel {
        /// It moves at once and comes back smoothly.
        Smooth = "smooth",
        /// It needs a shove before it moves.
        SticksFirst = "sticks-first",
        /// It moves in steps or judders.
        Judders = "judders",
        /// It comes back slowly.
        SlowReturn = "slow-return",
        /// It comes back fast and overshoots.
        FastReturn = "fast-return",
    }
}

choice! {
    /// One change for one lap, small enough to take back and large enough to feel.
    Change {
        /// Fork compression four clicks out.
        ForkCompressionOpen = "fork-compression-open",
        /// Fork compression four clicks in.
        ForkCompressionClose = "fork-compression-close",
        /// Fork rebound four clicks out.
        ForkReboundOpen = "fork-rebound-open",
        /// Fork rebound four clicks in.
        ForkReboundClose = "fork-rebound-close",
        /// Shock low-speed compression four clicks out.
        ShockCompressionOpen = "shock-compression-open",
        /// Shock low-speed compression four clicks in.
        ShockCompressionClose = "shock-compression-close",
        /// Shock rebound four clicks out.
        ShockReboundOpen = "shock-rebound-open",
        /// Shock rebound four clicks in.
        ShockReboundClose = "shock-rebound-close",
        /// Half a bar less in a gas fork.
        ForkGasLess = "fork-gas-less",
        /// Half a bar more in a gas fork.
        ForkGasMore = "fork-gas-more",
        /// Shock spring 2 mm looser.
        ShockPreloadLess = "shock-preload-less",
        /// Shock spring 2 mm tighter.
        ShockPreloadMore = "shock-preload-more",
        /// A tenth of the pressure out of both tyres.
        TyresLess = "tyres-less",
        /// Fork tubes 5 mm further up through the clamps: the front sits lower.
        ForkUp = "fork-up-in-clamps",
        /// Fork tubes 5 mm down in the clamps: the front sits higher.
        ForkDown = "fork-down-in-clamps",
    }
}

impl Change {
    /// What takes it back, where that is a change of its own.
    pub const fn opposite(self) -> Option<Self> {
        Some(match self {
            Self::ForkCompressionOpen => Self::ForkCompressionClose,
            Self::ForkCompressionClose => Self::ForkCompressionOpen,
            Self::ForkReboundOpen => Self::ForkReboundClose,
            Self::ForkReboundClose => Self::ForkReboundOpen,
            Self::ShockCompressionOpen => Self::ShockCompressionClose,
            Self::ShockCompressionClose => Self::ShockCompressionOpen,
            Self::ShockReboundOpen => Self::ShockReboundClose,
            Self::ShockReboundClose => Self::ShockReboundOpen,
            Self::ForkGasLess => Self::ForkGasMore,
            Self::ForkGasMore => Self::ForkGasLess,
            Self::ShockPreloadLess => Self::ShockPreloadMore,
            Self::ShockPreloadMore => Self::ShockPreloadLess,
            Self::TyresLess => return None,
            Self::ForkUp => Self::ForkDown,
            Self::ForkDown => Self::ForkUp,
        })
    }
}

choice! {
    /// A look or a feel at the parked bike that has a yes or a no.
    Look {
        /// The fork moves more freely with the axle's pinch bolts loosened.
        FreesWithAxleLoose = "frees-with-axle-loose",
        /// The fork moves more freely after the tubes and wipers were cleaned and filmed with oil.
        FreesWhenCleaned = "frees-when-cleaned",
        /// Lifted off the ground, the gas fork stays short of its full length, or knocks as it tops out.
        HangsShort = "hangs-short",
        /// After ten quick pumps the fork squelches or comes back slack.
        ForkSquelches = "fork-squelches",
        /// After ten quick pumps the rear squelches or comes back slack.
        ShockSquelches = "shock-squelches",
        /// With the shock's lower bolt out, the rear wheel does not fall freely.
        LinkageStiff = "linkage-stiff",
        /// With the front brake on, rocking the bike knocks in the steering head.
        HeadKnocks = "head-knocks",
        /// A level on the ground shows the bars clearly higher or lower than on a bike that steers well.
        SitsOutOfLevel = "sits-out-of-level",
        /// The fork tubes stand 4 mm or more higher or lower in their clamps than the manual says.
        TubesOffTheMark = "tubes-off-the-mark",
        /// Measured as the manual says, the fork oil stands 10 mm or more off its level.
        OilOffTheLevel = "oil-off-the-level",
        /// Drawn from the fork, the oil is dark, thin or smells burnt.
        ForkOilSpent = "fork-oil-spent",
        /// The fork's shims are not those of the maker's list.
        ForkShimsOff = "fork-shims-off",
        /// The float of the fork's mid-valve is less than the maker's list says.
        MidValveTight = "mid-valve-tight",
        /// The shock's shims are not those of the maker's list.
        ShockShimsOff = "shock-shims-off",
        /// With all its gas let out, the gas fork still sticks when it is pushed in and drawn out by hand.
        SticksWithoutGas = "sticks-without-gas",
    }
}

choice! {
    /// How a change felt, against before.
    Verdict {
        /// Better.
        Better = "better",
        /// No different.
        Same = "same",
        /// Worse.
        Worse = "worse",
    }
}
