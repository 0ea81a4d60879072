//! The answers that are picked rather than typed. Each list is closed: a document with another word is refused.

/// Declares a closed list with its kebab-case words, its order and a way to walk it.
macro_rules! choice {
    ($(#[$doc:meta])* $name:ident { $($(#[$item_doc:meta])* $item:ident = $word:literal),+ $(,)? }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
        pub enum $name { $($(#[$item_doc])* #[cfg_attr(feature = "schema", schemars(rename = $word))] $item),+ }

        impl serde::Serialize for $name {
            fn serialize<S: serde::Serializer>(&self, writer: S) -> Result<S::Ok, S::Error> {
                writer.serialize_str(self.word())
            }
        }

        impl<'de> serde::Deserialize<'de> for $name {
            fn deserialize<D: serde::Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
                let place = $crate::listed::place(reader, &[$($word),+])?;
                Ok(Self::ALL[place])
            }
        }

        impl $name {
            /// Every item, in the order in which it is offered.
            pub const ALL: &[Self] = &[$(Self::$item),+];

            /// The word that stands for this item in documents and text keys.
            pub const fn word(self) -> &'static str {
                match self { $(Self::$item => $word),+ }
            }
        }
    };
}

pub(crate) use choice;

choice! {
    /// A plain yes or no.
    YesNo {
        /// Yes.
        Yes = "yes",
        /// No.
        No = "no",
    }
}

choice! {
    /// How fast the rider goes, in their own eyes.
    Pace {
        /// Still learning.
        Learning = "learning",
        /// Club pace: rides often, sometimes races for fun.
        Club = "club",
        /// Fast: races regularly.
        Fast = "fast",
        /// Expert: at or near the front.
        Expert = "expert",
    }
}

choice! {
    /// How the rider spends most of the time on the bike.
    Posture {
        /// Mostly seated.
        Seated = "seated",
        /// About half and half.
        Mixed = "mixed",
        /// Mostly standing.
        Standing = "standing",
    }
}

choice! {
    /// Generic classes of off-road motorcycle. No maker, no model: typical dimensions of a kind.
    BikeClass {
        /// Small-wheel youth motocross.
        SmallWheelYouth = "small-wheel-youth",
        /// Motocross, 125 two-stroke or alike.
        Motocross125 = "motocross-125",
        /// Motocross, 250.
        Motocross250 = "motocross-250",
        /// Motocross, 450.
        Motocross450 = "motocross-450",
        /// Enduro whose shock bolts straight to the swingarm.
        EnduroLinkless = "enduro-linkless",
        /// Enduro with a rear linkage.
        EnduroLinkage = "enduro-linkage",
        /// Trail bike: road-legal, shorter travel.
        Trail = "trail",
        /// Adventure bike: heavy, short travel.
        Adventure = "adventure",
    }
}

choice! {
    /// How much fuel is aboard on a usual ride.
    FuelLoad {
        /// Nearly empty.
        NearlyEmpty = "nearly-empty",
        /// About half.
        Half = "half",
        /// Full.
        Full = "full",
    }
}

choice! {
    /// What carries the front.
    ForkKind {
        /// A coil spring and damping in each leg.
        CoilBothLegs = "coil-both-legs",
        /// A coil spring in one leg, the damping in the other.
        CoilOneLeg = "coil-one-leg",
        /// A gas spring in one leg, the damping in the other.
        GasOneLeg = "gas-one-leg",
    }
}

choice! {
    /// How the shock reaches the swingarm.
    ShockKind {
        /// Through a linkage.
        Linkage = "linkage",
        /// Bolted straight to the swingarm.
        Linkless = "linkless",
    }
}

choice! {
    /// Which end of the bike.
    End {
        /// Front.
        Front = "front",
        /// Rear.
        Rear = "rear",
        /// Both ends, or the whole bike.
        Both = "both",
    }
}

choice! {
    /// Where on the track it happens.
    Phase {
        /// Braking for a turn.
        Braking = "braking",
        /// Tipping in.
        TurnEntry = "turn-entry",
        /// In the middle of the turn.
        MidTurn = "mid-turn",
        /// Driving out.
        Exit = "exit",
        /// Along a straight.
        Straight = "straight",
        /// Landing from a jump.
        Landing = "landing",
    }
}

choice! {
    /// How bad it is.
    Severity {
        /// I notice it.
        Slight = "slight",
        /// It slows me down.
        Clear = "clear",
        /// I ride around it or fear it.
        Bad = "bad",
    }
}

choice! {
    /// Since when.
    Since {
        /// As long as I have had the bike, or since it was new.
        Always = "always",
        /// It came on slowly.
        Slowly = "slowly",
        /// From one ride to the next.
        Suddenly = "suddenly",
        /// Since something was changed, serviced or fitted.
        SinceWork = "since-work",
    }
}

choice! {
    /// Kinds of ground.
    Terrain {
        /// Roots and rocks, small sharp chatter.
        RootsRocks = "roots-rocks",
        /// Bumps where riders brake.
        BrakingBumps = "braking-bumps",
        /// Long rows of big round bumps.
        Whoops = "whoops",
        /// Jumps and landings.
        Jumps = "jumps",
        /// Ruts and mud.
        RutsMud = "ruts-mud",
        /// Sand.
        Sand = "sand",
        /// Fast gravel.
        FastGravel = "fast-gravel",
    }
}

choice! {
    /// How much of a kind of ground a usual ride holds.
    Share {
        /// None or hardly any.
        None = "none",
        /// Some.
        Some = "some",
        /// A lot.
        Lot = "lot",
    }
}

choice! {
    /// What the rider complains of, one item per thing felt.
    Feeling {
        /// Small bumps beat up the hands.
        HarshSmallBumps = "harsh-small-bumps",
        /// Square edges and rocks jolt.
        HarshBigHits = "harsh-big-hits",
        /// The front drops away under braking.
        Dives = "dives",
        /// The suspension rides ever lower over a row of bumps.
        Packs = "packs",
        /// It uses all the travel with a bang.
        Bottoms = "bottoms",
        /// It never uses the last part of the travel.
        RampsUp = "ramps-up",
        /// The rear kicks up or sideways.
        Kicks = "kicks",
        /// It rocks and floats, slow to settle.
        Wallows = "wallows",
        /// It bounces back too fast.
        Springs = "springs-back",
        /// The front washes out or will not turn.
        Pushes = "pushes",
        /// The bars shake or the bike weaves.
        Headshake = "headshake",
        /// The rear squats under power.
        Squats = "squats",
        /// The tyre skips over bumps instead of following.
        Skips = "skips",
        /// It feels dead, does not move at first.
        Sticks = "sticks",
        /// It was fine at first and goes soft as the ride goes on.
        Fades = "fades",
        /// The bike sits too low or too high at one end.
        SitsWrong = "sits-wrong",
    }
}

choice! {
    /// Signs that end the tuning: any one means the bike is not to be ridden.
    StopSign {
        /// Oil on the brake disc, the pads or the tyre.
        OilOnBrake = "oil-on-brake",
        /// Bent, cracked or dented fork, clamp, linkage or frame.
        BentOrCracked = "bent-or-cracked",
        /// Loose or notchy steering head.
        LooseHead = "loose-head",
        /// Play in wheel or swingarm bearings, or at the axle.
        LooseWheel = "loose-wheel",
        /// Sudden loss of damping or collapse.
        SuddenLoss = "sudden-loss",
        /// A shake that grows, or needs force to hold.
        GrowingShake = "growing-shake",
        /// A wheel touches fender, exhaust or frame.
        WheelTouches = "wheel-touches",
        /// A broken spring, or a bang of metal at the end of the travel.
        MetalBang = "metal-bang",
        /// The fork or shock does not come back.
        NoReturn = "no-return",
    }
}

choice! {
    /// The pages of questions, in the order in which they are asked.
    Question {
        /// Rider weight.
        RiderWeight = "rider-weight",
        /// Whether that weight includes riding gear.
        RiderGear = "rider-gear",
        /// Pace.
        RiderPace = "rider-pace",
        /// Standing or seated.
        RiderPosture = "rider-posture",
        /// Body height.
        RiderHeight = "rider-height",
        /// Class of bike.
        BikeClass = "bike-class",
        /// Own weight of the bike.
        BikeWeight = "bike-weight",
        /// Fuel carried.
        BikeFuel = "bike-fuel",
        /// What carries the front.
        BikeFork = "bike-fork",
        /// Fork coil spring rate and preload.
        ForkSpring = "fork-spring",
        /// Fork gas pressure, temperature when set, marked maximum.
        ForkGas = "fork-gas",
        /// How the shock is mounted.
        BikeShock = "bike-shock",
        /// Shock spring rate and preload.
        ShockSpring = "shock-spring",
        /// Fork adjusters.
        ForkClickers = "fork-clickers",
        /// Shock adjusters.
        ShockClickers = "shock-clickers",
        /// Hours since service.
        ServiceHours = "service-hours",
        /// Kinds of ground.
        GroundMix = "ground-mix",
        /// Usual temperature and altitude.
        GroundUsual = "ground-usual",
        /// Today's temperature and altitude.
        GroundToday = "ground-today",
        /// What is wrong.
        Complaints = "complaints",
        /// End, moment, severity and history of each complaint.
        ComplaintDetail = "complaint-detail",
        /// Free and rider sag, front.
        SagFront = "sag-front",
        /// Free and rider sag, rear.
        SagRear = "sag-rear",
        /// Travel used.
        TravelUsed = "travel-used",
        /// Tyre pressures.
        TyrePressures = "tyre-pressures",
        /// Push test.
        PushTest = "push-test",
        /// Stop-riding signs.
        StopSigns = "stop-signs",
    }
}
