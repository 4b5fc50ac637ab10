//! Form: what is noted about a flaw before it is saved, and the facts that saving gives.

use chrono::{Days, NaiveDate};
use evenwall_piece::fact::{Clock, FlawNote, FlawTreated, PieceFact, StationRef};
use evenwall_piece::ids::FlawId;
use evenwall_piece::vocabulary::{Face, FlawKind, MassChange, Treatment};

use crate::measured::Field;

/// When to look at a flaw again.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum AgainChoice {
    /// Not said.
    #[default]
    NotSaid,
    /// In three days.
    ThreeDays,
    /// In a week.
    Week,
    /// In two weeks.
    TwoWeeks,
    /// On a day that is typed.
    Typed,
}

impl AgainChoice {
    /// All choices in the order in which they are offered.
    pub const ALL: [Self; 5] = [
        Self::NotSaid,
        Self::ThreeDays,
        Self::Week,
        Self::TwoWeeks,
        Self::Typed,
    ];

    /// Stable key.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::NotSaid => "not-said",
            Self::ThreeDays => "three-days",
            Self::Week => "week",
            Self::TwoWeeks => "two-weeks",
            Self::Typed => "typed",
        }
    }

    /// The choice with this key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|c| c.key() == key)
    }

    /// The day that a choice of so many days gives; `None` where none is said or it is typed.
    pub(super) fn day(self, today: NaiveDate) -> Option<NaiveDate> {
        let days = match self {
            Self::NotSaid | Self::Typed => return None,
            Self::ThreeDays => 3,
            Self::Week => 7,
            Self::TwoWeeks => 14,
        };
        today.checked_add_days(Days::new(days))
    }
}

/// The most goes that can be counted.
const MOST_GOES: u8 = 20;
/// The most characters of own words that are kept.
const MOST_WORDS: usize = 20_000;

/// A flaw as it is being noted, decided or corrected.
#[derive(Debug, Clone, PartialEq)]
pub struct FlawForm {
    pub(crate) kind: Option<FlawKind>,
    pub(crate) station: Option<StationRef>,
    pub(crate) clock: Option<Clock>,
    pub(crate) treatment: Option<Treatment>,
    /// What is folded away is open.
    pub(crate) more: bool,
    pub(crate) size: Field,
    pub(crate) through: bool,
    pub(crate) face: Option<Face>,
    pub(crate) goes: u8,
    pub(crate) again: AgainChoice,
    pub(crate) again_day: Field,
    pub(crate) note: String,
}

impl Default for FlawForm {
    fn default() -> Self {
        Self {
            kind: None,
            station: None,
            clock: None,
            treatment: None,
            more: false,
            size: Field::default(),
            through: false,
            face: None,
            goes: 1,
            again: AgainChoice::NotSaid,
            again_day: Field::default(),
            note: String::new(),
        }
    }
}

impl FlawForm {
    /// The form that shows a flaw as it was noted; `size` is its length as it can be typed again.
    pub(super) fn of(note: &FlawNote, size: String) -> Self {
        Self {
            kind: Some(note.kind),
            station: note.station,
            clock: note.clock,
            more: true,
            size: Field::of(size),
            through: note.through,
            note: note.note.clone(),
            ..Self::default()
        }
    }

    pub(super) fn set_clock(&mut self, hour: f64) {
        let hour = if hour.is_finite() { hour.round() } else { 0.0 };
        let hour = hour.rem_euclid(12.0);
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // 0 to 11
        let hour = hour as u8;
        self.clock = Clock::new(if hour == 0 { 12 } else { hour });
    }

    pub(super) fn step_clock(&mut self, by: i8) {
        // The first step shows the pencil line.
        self.clock = match self.clock {
            None => Some(Clock::TWELVE),
            Some(clock) => {
                let hour = (i16::from(clock.hour()) + i16::from(by)).rem_euclid(12);
                Clock::new(if hour == 0 {
                    12
                } else {
                    u8::try_from(hour).unwrap_or(12)
                })
            }
        };
    }

    pub(super) fn step_goes(&mut self, by: i8) {
        self.goes = self.goes.saturating_add_signed(by).clamp(1, MOST_GOES);
    }

    /// True where something goes on the wood.
    pub(super) fn goes_on(&self) -> bool {
        self.treatment.is_some_and(goes_on)
    }

    pub(super) const fn can_less(&self) -> bool {
        self.goes > 1
    }

    pub(super) const fn can_more(&self) -> bool {
        self.goes < MOST_GOES
    }

    /// The flaw as noted, with its length read beforehand; `None` while its kind is not chosen.
    pub(super) fn note(
        &self,
        flaw: FlawId,
        size: Option<evenwall_piece::fact::Measure>,
    ) -> Option<FlawNote> {
        Some(FlawNote {
            flaw,
            kind: self.kind?,
            station: self.station,
            clock: self.clock,
            size_mm: size,
            through: self.through,
            note: self.note.trim().chars().take(MOST_WORDS).collect(),
        })
    }

    /// What was done, and what it changed about the weight; nothing while nothing is chosen.
    pub(super) fn treated(&self, flaw: FlawId, look_again: Option<NaiveDate>) -> Vec<PieceFact> {
        let Some(treatment) = self.treatment else {
            return Vec::new();
        };
        let on = goes_on(treatment);
        let mut facts = vec![PieceFact::FlawTreated(FlawTreated {
            flaw,
            treatment,
            face: self.face.filter(|_| on),
            goes: on.then_some(self.goes),
            look_again,
        })];
        // Weights before and after are not compared.
        if on {
            facts.push(PieceFact::MassChanged(if treatment == Treatment::Wax {
                MassChange::Wax
            } else {
                MassChange::Glue
            }));
        }
        facts
    }
}

/// True for glue and wax: they go on a face and add weight.
pub(super) const fn goes_on(treatment: Treatment) -> bool {
    treatment.is_glue() || matches!(treatment, Treatment::Wax)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_touch_on_the_clock_is_the_nearest_hour_and_nought_is_twelve() {
        let mut form = FlawForm::default();
        for (at, hour) in [
            (0.2, 12),
            (11.6, 12),
            (12.0, 12),
            (3.4, 3),
            (3.6, 4),
            (f64::NAN, 12),
        ] {
            form.set_clock(at);
            assert_eq!(form.clock.map(Clock::hour), Some(hour), "{at}");
        }
    }

    #[test]
    fn the_clock_steps_round_and_begins_at_the_pencil_line() {
        let mut form = FlawForm::default();
        let mut hours = Vec::new();
        for by in [1, 1, -1, -1, -1] {
            form.step_clock(by);
            hours.push(form.clock.map_or(0, Clock::hour));
        }
        assert_eq!(hours, [12, 1, 12, 11, 10]);
    }

    #[test]
    fn goes_stay_between_one_and_twenty() {
        let mut form = FlawForm::default();
        form.step_goes(-1);
        assert_eq!(form.goes, 1);
        for _ in 0..40 {
            form.step_goes(1);
        }
        assert_eq!(form.goes, MOST_GOES);
        assert!(!form.can_more() && form.can_less());
    }
}
