//! Vocabulary: the small closed lists the trade thinks in, each with a stable key for storage and words.

/// Declares an enum whose variants have stable keys; the key is what is stored and what the catalogue of words uses.
macro_rules! keyed {
    ($(#[$doc:meta])* $name:ident { $($(#[$vdoc:meta])* $variant:ident = $key:literal),+ $(,)? }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum $name { $($(#[$vdoc])* $variant),+ }

        impl $name {
            /// All values, in the order in which they are offered.
            pub const ALL: &'static [Self] = &[$(Self::$variant),+];

            /// The stable key: stored in journals and used by the catalogue of words.
            #[must_use]
            pub const fn key(self) -> &'static str {
                match self { $(Self::$variant => $key),+ }
            }

            /// The value with this key, or `None`.
            #[must_use]
            pub fn from_key(key: &str) -> Option<Self> {
                match key { $($key => Some(Self::$variant),)+ _ => None }
            }
        }
    };
}
pub(crate) use keyed;

keyed!(
    /// What is being made.
    Form {
        /// A hollow vessel, taller than wide, small mouth.
        Vessel = "vessel",
        /// A hollow form, wider than tall, small mouth.
        HollowForm = "hollow-form",
        /// An open bowl.
        Bowl = "bowl",
    }
);
keyed!(
    /// How the fibres run to the lathe axis.
    Grain {
        /// Fibres along the axis.
        End = "end",
        /// Fibres across the axis.
        Side = "side",
    }
);
keyed!(
    /// Where the pith lies in the section.
    Pith {
        /// In the hollow part.
        Bore = "bore",
        /// In the wall: it most often splits.
        Wall = "wall",
        /// Outside the piece.
        Outside = "outside",
        /// Not known.
        Unknown = "unknown",
    }
);
keyed!(
    /// An outline to pick, scaled to the piece.
    Outline {
        /// Round all over.
        Ball = "ball",
        /// Widest above the middle, narrowing to the foot.
        Egg = "egg",
        /// Widest below the middle.
        Pear = "pear",
        /// Widest close under the mouth.
        HighShoulder = "high-shoulder",
        /// Tall and slim.
        Tall = "tall",
    }
);
keyed!(
    /// How the piece dries; each has its own rhythm.
    Method {
        /// Plastic bag, felt and turned.
        Bag = "bag",
        /// Paper bag.
        Paper = "paper",
        /// Box or bag of shavings.
        Shavings = "shavings",
        /// Wax and shelf.
        Wax = "wax",
        /// Drying cupboard.
        Cupboard = "cupboard",
        /// Soaked in alcohol, then wrapped.
        Alcohol = "alcohol",
        /// Turned thin once and left to move.
        OnceThin = "once-thin",
    }
);
keyed!(
    /// What the inside of the bag feels like.
    BagFeel {
        /// Water on the film.
        Wet = "wet",
        /// Just moist.
        Damp = "damp",
        /// Nothing on the bag.
        Nothing = "nothing",
    }
);
keyed!(
    /// A wall judged by finger, without a number.
    WallFeel {
        /// Thicker than wanted.
        Heavy = "heavy",
        /// As wanted.
        Even = "even",
        /// Thinner than wanted.
        Thin = "thin",
    }
);
keyed!(
    /// How a wall was measured.
    Taken {
        /// Callipers, square across the wall.
        Callipers = "callipers",
        /// Between the fingers.
        Fingers = "fingers",
        /// A bent wire gauge.
        WireGauge = "wire-gauge",
        /// Light through the wet wall.
        Light = "light",
        /// The depth rod, for the floor.
        DepthRod = "depth-rod",
        /// Could not be reached: never counts as even.
        CantReach = "cant-reach",
    }
);
keyed!(
    /// A kind of flaw.
    FlawKind {
        /// A knot.
        Knot = "knot",
        /// Bark grown into the wood.
        BarkInclusion = "bark-inclusion",
        /// The pith.
        Pith = "pith",
        /// A drying crack.
        Check = "check",
        /// A crack along a ring.
        RingShake = "ring-shake",
        /// Soft, dozy wood.
        Punky = "punky",
    }
);
keyed!(
    /// What was decided about a flaw, or done to it.
    Treatment {
        /// Left alone until dry: a sound decision.
        Left = "left",
        /// Will be turned away later.
        TurnAway = "turn-away",
        /// Superglue, thin.
        Thin = "thin",
        /// Superglue, medium.
        Medium = "medium",
        /// Superglue, thick.
        Thick = "thick",
        /// Wax.
        Wax = "wax",
    }
);
impl Treatment {
    /// True for the three grades of superglue.
    #[must_use]
    pub const fn is_glue(self) -> bool {
        matches!(self, Self::Thin | Self::Medium | Self::Thick)
    }
}
keyed!(
    /// The side of the wall a treatment was put on.
    Face {
        /// The outside.
        Outside = "outside",
        /// The bore.
        Inside = "inside",
        /// Both.
        Both = "both",
    }
);
keyed!(
    /// What a second look at a flaw found.
    FlawChange {
        /// As long as before.
        Same = "same",
        /// Longer than before.
        Longer = "longer",
        /// Cannot be seen any more, cut away.
        Gone = "gone",
    }
);
keyed!(
    /// The answer to the first question of True.
    CrackAnswer {
        /// None found.
        None = "none",
        /// A hairline.
        Hairline = "hairline",
        /// Rim crack running into the wall, or a crack across the floor.
        RimOrFloor = "rim-or-floor",
    }
);
keyed!(
    /// How readings round a dried section were taken.
    RoundHow {
        /// Diameters by callipers, over half a turn.
        Diameters = "diameters",
        /// Distances from the centre mark, over a whole turn.
        FromCentre = "from-centre",
    }
);
keyed!(
    /// What the turner decided before remounting.
    TrueDecision {
        /// Carry on.
        Go = "go",
        /// Fill first; filling is never clearance.
        Fill = "fill",
        /// Scrap.
        Scrap = "scrap",
    }
);
keyed!(
    /// What changed the weight other than drying.
    MassChange {
        /// Superglue went on.
        Glue = "glue",
        /// Wax went on.
        Wax = "wax",
        /// It was cut again.
        Recut = "recut",
        /// Bark came off.
        BarkLost = "bark-lost",
        /// Anything else.
        Other = "other",
    }
);
keyed!(
    /// Where a lost piece failed.
    LostWhere {
        /// At the rim.
        Rim = "rim",
        /// At the shoulder.
        Shoulder = "shoulder",
        /// Along the wall.
        Wall = "wall",
        /// In the floor or at the pith.
        Floor = "floor",
        /// Beside a knot.
        Knot = "knot",
        /// At a bark inclusion.
        BarkInclusion = "bark-inclusion",
        /// Round the spigot or foot.
        Spigot = "spigot",
        /// Cut through the side.
        ThroughSide = "through-side",
        /// Cut through the floor.
        ThroughFloor = "through-floor",
        /// Not known.
        Unknown = "unknown",
    }
);
keyed!(
    /// How a lost piece was lost.
    LostHow {
        /// Cracked while drying.
        CrackedDrying = "cracked-drying",
        /// Cracked on the lathe.
        CrackedLathe = "cracked-lathe",
        /// A dig-in.
        DigIn = "dig-in",
        /// The spigot broke or pulled out.
        SpigotBroke = "spigot-broke",
        /// Broke while being remounted.
        BrokeRemounting = "broke-remounting",
        /// Too oval or too thin to true.
        TooOval = "too-oval",
        /// The spigot was too small to re-cut.
        SpigotSmall = "spigot-small",
        /// Mould or stain went too deep.
        Mould = "mould",
        /// Worm.
        Worm = "worm",
        /// Rot.
        Rot = "rot",
        /// Dropped.
        Dropped = "dropped",
        /// Spoiled by glue or finish.
        Spoiled = "spoiled",
        /// Given up.
        GivenUp = "given-up",
        /// Not known.
        Unknown = "unknown",
    }
);
keyed!(
    /// The turner's own guess why a piece was lost; several may be named.
    LostWhy {
        /// The wall was uneven.
        WallUneven = "wall-uneven",
        /// The floor was thick.
        FloorThick = "floor-thick",
        /// The pith.
        Pith = "pith",
        /// Dried too fast.
        TooFast = "too-fast",
        /// Shut up too long.
        ShutTooLong = "shut-too-long",
        /// The log was already checked.
        LogChecked = "log-checked",
        /// Moved to heat.
        MovedToHeat = "moved-to-heat",
        /// Forgotten.
        Forgotten = "forgotten",
        /// The wood itself.
        WoodItself = "wood-itself",
        /// Not known.
        Unknown = "unknown",
    }
);
keyed!(
    /// A room with a climate of its own.
    Room {
        /// The shop.
        Shop = "shop",
        /// The heated house.
        House = "house",
    }
);

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keys_are_unique_and_lead_back() {
        macro_rules! check { ($($t:ty),+) => { $(
            for v in <$t>::ALL { assert_eq!(<$t>::from_key(v.key()), Some(*v)); }
            let keys: std::collections::HashSet<_> = <$t>::ALL.iter().map(|v| v.key()).collect();
            assert_eq!(keys.len(), <$t>::ALL.len());
        )+ } }
        check!(
            Form, Grain, Pith, Outline, Method, BagFeel, WallFeel, Taken, FlawKind, Treatment, Face
        );
        check!(
            FlawChange,
            CrackAnswer,
            RoundHow,
            TrueDecision,
            MassChange,
            LostWhere,
            LostHow,
            LostWhy,
            Room
        );
        assert_eq!(Form::from_key("teapot"), None);
    }
}
