//! Every question that can be asked, by group. A new group is a file with its `QUESTIONS` and a line here.

use crate::question::Question;
use crate::{
    air, bar, closed_ring, diffusion, drying, evenness, forecast, kept, measured, own_shrinkage,
    profile, rough_wall, scale, section, shrinkage, side_grain, speed, spigot, staying, trueing,
    weights, woods,
};

/// A group of questions with its heading.
pub struct Group {
    /// Heading on the page.
    pub heading: &'static str,
    /// Its questions.
    pub questions: &'static [Question],
}

/// Every group, in the order of the page.
pub const GROUPS: &[Group] = &[
    Group {
        heading: "Air and settling moisture",
        questions: air::QUESTIONS,
    },
    Group {
        heading: "Weights and moisture",
        questions: weights::QUESTIONS,
    },
    Group {
        heading: "Shrinkage",
        questions: shrinkage::QUESTIONS,
    },
    Group {
        heading: "Woods",
        questions: woods::QUESTIONS,
    },
    Group {
        heading: "Dried section",
        questions: section::QUESTIONS,
    },
    Group {
        heading: "Closed ring",
        questions: closed_ring::QUESTIONS,
    },
    Group {
        heading: "Wall left when trueing, closed forms",
        questions: trueing::QUESTIONS,
    },
    Group {
        heading: "Wall left when trueing, measured",
        questions: measured::QUESTIONS,
    },
    Group {
        heading: "The piece's own shrinkage",
        questions: own_shrinkage::QUESTIONS,
    },
    Group {
        heading: "Wall to leave when roughing",
        questions: rough_wall::QUESTIONS,
    },
    Group {
        heading: "Side grain",
        questions: side_grain::QUESTIONS,
    },
    Group {
        heading: "Profile of a vessel",
        questions: profile::QUESTIONS,
    },
    Group {
        heading: "Evenness and stations",
        questions: evenness::QUESTIONS,
    },
    Group {
        heading: "Spigot",
        questions: spigot::QUESTIONS,
    },
    Group {
        heading: "Bar and drill",
        questions: bar::QUESTIONS,
    },
    Group {
        heading: "Speed",
        questions: speed::QUESTIONS,
    },
    Group {
        heading: "How fast water moves",
        questions: diffusion::QUESTIONS,
    },
    Group {
        heading: "Drying over time",
        questions: drying::QUESTIONS,
    },
    Group {
        heading: "Forecast from weighings",
        questions: forecast::QUESTIONS,
    },
    Group {
        heading: "Staying put",
        questions: staying::QUESTIONS,
    },
    Group {
        heading: "Scale and rhythm",
        questions: scale::QUESTIONS,
    },
    Group {
        heading: "What dried well",
        questions: kept::QUESTIONS,
    },
];

/// Every question, in the order of the page.
pub fn all() -> impl Iterator<Item = &'static Question> {
    GROUPS.iter().flat_map(|g| g.questions.iter())
}

/// The question called `name`.
#[must_use]
pub fn find(name: &str) -> Option<&'static Question> {
    all().find(|q| q.name == name)
}

/// The names of all questions, for a sentence.
#[must_use]
pub fn names() -> String {
    all().map(|q| q.name).collect::<Vec<_>>().join(", ")
}
