//! Rhythm: after how many days a look and a weighing fall due, by method and stage. Common practice, no source.

use crate::vocabulary::keyed;

keyed!(
    /// What has a rhythm of its own: the stages of the bag method, and each other method.
    RhythmOf {
        /// Closed bag: only its weighings; its looks follow [`crate::bag`] and [`crate::settings::BagAfter`].
        Bag = "bag",
        /// Neck open.
        Air = "air",
        /// Weighed until the weight stays put.
        Settle = "settle",
        /// In the heated house.
        Indoors = "indoors",
        /// Paper bag.
        Paper = "paper",
        /// Shavings.
        Shavings = "shavings",
        /// Wax and shelf.
        Wax = "wax",
        /// Drying cupboard.
        Cupboard = "cupboard",
        /// Alcohol, wrapped.
        Alcohol = "alcohol",
        /// Once-turned thin.
        OnceThin = "once-thin",
    }
);

/// One step of a rhythm: every so many days until a day of the stage is reached.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Step {
    /// Days between two.
    pub every: u32,
    /// Up to this day since the stage began; `None`: from here on.
    pub until_day: Option<u32>,
}

/// After how many days a look and a weighing fall due.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Rhythm {
    /// Steps for looks; empty: no looks of their own.
    pub looks: Vec<Step>,
    /// Steps for weighings; empty: none asked for.
    pub weighings: Vec<Step>,
    /// After how many days the next stage is offered; `None`: not by days.
    pub offer_after: Option<u32>,
}

fn steps(list: &[(u32, Option<u32>)]) -> Vec<Step> {
    list.iter()
        .map(|&(every, until_day)| Step { every, until_day })
        .collect()
}

impl RhythmOf {
    /// The default of common practice, no source.
    #[must_use]
    pub fn usual(self) -> Rhythm {
        let make =
            |looks: &[(u32, Option<u32>)], weighings: &[(u32, Option<u32>)], offer_after| Rhythm {
                looks: steps(looks),
                weighings: steps(weighings),
                offer_after,
            };
        match self {
            Self::Bag => make(&[(1, Some(1)), (3, None)], &[], None),
            Self::Air => make(&[(3, Some(3)), (7, None)], &[(7, None)], Some(30)),
            // Monthly after 120 days. The look is at the weighing.
            Self::Settle => make(&[], &[(14, Some(120)), (30, None)], None),
            Self::Indoors => make(
                &[(2, Some(2)), (5, Some(7)), (7, None)],
                &[(7, None)],
                Some(14),
            ),
            Self::Paper | Self::Shavings => make(
                &[(3, Some(3)), (7, Some(28)), (14, None)],
                &[(14, None)],
                None,
            ),
            Self::Wax => make(
                &[(3, Some(3)), (4, Some(7)), (14, Some(56)), (30, None)],
                &[(30, None)],
                None,
            ),
            Self::Cupboard => make(&[(1, Some(3)), (3, None)], &[(3, Some(3)), (7, None)], None),
            Self::Alcohol => make(&[(2, Some(2)), (7, None)], &[(7, None)], None),
            Self::OnceThin => make(&[(1, Some(3)), (3, Some(14)), (7, None)], &[], Some(14)),
        }
    }
}

impl Rhythm {
    /// The days until the next look, on a given day of the stage; `None`: no looks.
    #[must_use]
    pub fn look_every(&self, day_of_stage: u32) -> Option<u32> {
        every(&self.looks, day_of_stage)
    }

    /// The days until the next weighing, on a given day of the stage; `None`: none asked for.
    #[must_use]
    pub fn weigh_every(&self, day_of_stage: u32) -> Option<u32> {
        every(&self.weighings, day_of_stage)
    }

    /// Reads `looks/weighings/offer`, each step `every` or `every<day`: `3<3 7/7/30`. `None` where it is not that.
    #[must_use]
    pub fn parse(text: &str) -> Option<Self> {
        let mut parts = text.split('/');
        let looks = parse_steps(parts.next()?)?;
        let weighings = parse_steps(parts.next()?)?;
        let offer = parts.next()?.trim();
        if parts.next().is_some() {
            return None;
        }
        let offer_after = if offer.is_empty() {
            None
        } else {
            Some(day(offer)?)
        };
        Some(Self {
            looks,
            weighings,
            offer_after,
        })
    }

    /// The text that [`Rhythm::parse`] reads.
    #[must_use]
    pub fn to_text(&self) -> String {
        let show = |steps: &[Step]| {
            let one = |s: &Step| {
                s.until_day
                    .map_or(s.every.to_string(), |d| format!("{}<{d}", s.every))
            };
            steps.iter().map(one).collect::<Vec<_>>().join(" ")
        };
        let offer = self.offer_after.map(|d| d.to_string()).unwrap_or_default();
        format!("{}/{}/{offer}", show(&self.looks), show(&self.weighings))
    }
}

fn day(text: &str) -> Option<u32> {
    text.parse().ok().filter(|d| (1..=3650).contains(d))
}

fn parse_steps(text: &str) -> Option<Vec<Step>> {
    text.split_whitespace()
        .map(|word| match word.split_once('<') {
            Some((e, d)) => Some(Step {
                every: day(e)?,
                until_day: Some(day(d)?),
            }),
            None => Some(Step {
                every: day(word)?,
                until_day: None,
            }),
        })
        .collect()
}

/// On the last day of a step the next step counts, so that `1<1 3` means: after one day, then every three.
fn every(steps: &[Step], day_of_stage: u32) -> Option<u32> {
    steps
        .iter()
        .find(|s| s.until_day.is_none_or(|until| day_of_stage < until))
        .or(steps.last())
        .map(|s| s.every)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn every_usual_rhythm_reads_back() {
        for of in RhythmOf::ALL {
            assert_eq!(
                Rhythm::parse(&of.usual().to_text()),
                Some(of.usual()),
                "{of:?}"
            );
        }
        for bad in ["", "3", "x/7/30", "0/7/30", "3/7/30/1", "3<x/7/"] {
            assert_eq!(Rhythm::parse(bad), None, "{bad}");
        }
    }

    #[test]
    fn indoors_is_looked_at_on_days_2_7_and_14() {
        let r = RhythmOf::Indoors.usual();
        let mut day = 0;
        let mut days = Vec::new();
        while day < 14 {
            day += r.look_every(day).unwrap();
            days.push(day);
        }
        assert_eq!(days, [2, 7, 14]);
    }
}
