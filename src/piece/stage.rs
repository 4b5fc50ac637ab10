//! Stage: the nine stages from the log to the finished piece, in four groups.

use crate::vocabulary::keyed;

keyed!(
    /// One of the nine stages. They may be walked in any order and are never locked.
    Stage {
        /// Outside turned oversize, spigot cut, hole drilled.
        Shape = "shape",
        /// Hollowed to an even wall.
        Hollow = "hollow",
        /// Flaws decided and treated.
        Stabilise = "stabilise",
        /// Closed bag, or another drying method.
        Bag = "bag",
        /// Neck open.
        Air = "air",
        /// Weighed until the weight stays put.
        Settle = "settle",
        /// In the heated house.
        Indoors = "indoors",
        /// Remounted and trued.
        True = "true",
        /// Final wall, sanded, reversed, finished.
        Finish = "finish",
    }
);
keyed!(
    /// A group of stages.
    Group {
        /// Shape and Hollow.
        Roughing = "roughing",
        /// Stabilise.
        Stabilising = "stabilising",
        /// Bag, Air, Settle, Indoors.
        Drying = "drying",
        /// True and Finish.
        Finishing = "finishing",
    }
);

impl Stage {
    /// The group this stage belongs to.
    #[must_use]
    pub const fn group(self) -> Group {
        match self {
            Self::Shape | Self::Hollow => Group::Roughing,
            Self::Stabilise => Group::Stabilising,
            Self::Bag | Self::Air | Self::Settle | Self::Indoors => Group::Drying,
            Self::True | Self::Finish => Group::Finishing,
        }
    }

    /// True where two stages belong to one part of the work: True and Finish are one part, all before them another. A wall
    /// read before drying says little about the one that is trued. Common practice, no source.
    #[must_use]
    pub fn same_part(self, other: Self) -> bool {
        (self.group() == Group::Finishing) == (other.group() == Group::Finishing)
    }

    /// Its place on the path, 0 to 8.
    #[must_use]
    pub const fn index(self) -> usize {
        self as usize
    }

    /// The stage that usually follows; `None` after Finish.
    #[must_use]
    pub fn next(self) -> Option<Self> {
        Self::ALL.get(self.index() + 1).copied()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nine_stages_follow_each_other() {
        assert_eq!(Stage::ALL.len(), 9);
        let mut walked = vec![Stage::Shape];
        while let Some(next) = walked.last().and_then(|s| s.next()) {
            walked.push(next);
        }
        assert_eq!(walked, Stage::ALL);
    }
}
