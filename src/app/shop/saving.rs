//! Saving: a filled-in form becomes facts, or sentences below its fields.

use evenwall_piece::piece::Moment;
use evenwall_piece::rhythm::{Rhythm, RhythmOf, Step};
use evenwall_piece::shop::{Climate, ShopFact};

use crate::app::{App, AppError};
use crate::numbers::{Dimension, Quantity};

use super::faults::{Faults, Outcome};
use super::form::{Draft, FormOf, StepList};
use super::number_settings::number_setting;
use super::rhythms::setting_key;

/// A whole number of days, read within its range.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // read within its range, 1 to some hundreds
fn days(value: f64) -> u32 {
    value.round() as u32
}

fn setting(key: impl Into<String>, value: String) -> Vec<ShopFact> {
    vec![ShopFact::Setting {
        key: key.into(),
        value,
    }]
}

/// A rhythm as it is stored; nothing where it is the usual one again.
fn rhythm_setting(of: RhythmOf, rhythm: &Rhythm) -> Vec<ShopFact> {
    let value = if *rhythm == of.usual() {
        String::new()
    } else {
        rhythm.to_text()
    };
    setting(setting_key(of), value)
}

impl App {
    pub(super) fn save_form(&mut self, now: Moment) -> Result<(), AppError> {
        let Some(draft) = self.states.shop.draft.clone() else {
            return Ok(());
        };
        if draft.of == FormOf::LogPath {
            self.log_open_typed(draft.typed("path"));
            return Ok(());
        }
        // This device's own, and no fact of the shop.
        if draft.of == FormOf::PictureFolder {
            let mut device = self.device().clone();
            device.picture_folder = draft.typed("folder").trim().to_owned();
            self.set_device(device)?;
            self.states.shop.draft = None;
            return Ok(());
        }
        if let FormOf::Device(field) = draft.of {
            return self.save_device_field(field, &draft, now);
        }
        match self.facts_of(&draft, now) {
            Ok((at, facts)) => self.keep_shop(at, facts, now),
            Err(errors) => {
                if let Some(open) = &mut self.states.shop.draft {
                    open.errors = errors;
                }
                Ok(())
            }
        }
    }

    pub(super) fn remove_in_form(&mut self, now: Moment) -> Result<(), AppError> {
        let Some(draft) = &self.states.shop.draft else {
            return Ok(());
        };
        let facts = match draft.of.clone() {
            FormOf::Jaws(Some(id)) => vec![ShopFact::JawsRemoved(id)],
            FormOf::Bar(Some(id)) => vec![ShopFact::BarRemoved(id)],
            FormOf::Wood(Some(id)) => vec![ShopFact::WoodRemoved(id)],
            FormOf::Step {
                of,
                list,
                place: Some(place),
            } => {
                let mut rhythm = self.shop().settings.rhythm(of);
                let steps = list.of_mut(&mut rhythm);
                if place < steps.len() {
                    steps.remove(place);
                }
                open_end(steps);
                rhythm_setting(of, &rhythm)
            }
            _ => Vec::new(),
        };
        self.keep_shop(None, facts, now)
    }

    fn facts_of(&mut self, draft: &Draft, now: Moment) -> Outcome {
        match &draft.of {
            FormOf::Climate => self.climate_facts(draft, now),
            FormOf::Number(key) => self.number_facts(key, draft),
            FormOf::Jaws(id) => self.jaws_facts(id.clone(), draft),
            FormOf::Bar(id) => self.bar_facts(id.clone(), draft),
            FormOf::Wood(id) => self.wood_facts(id.clone(), draft),
            FormOf::ScaleStep => self.scale_facts(draft),
            FormOf::NewScale => {
                let mut faults = Faults::default();
                let step = faults.take(
                    "step",
                    self.read_number(Quantity::ScaleStep, draft.typed("step")),
                );
                let at = faults.take("day", self.read_when(draft, now));
                let facts = step.zip(at);
                faults.or(facts.map(|(step_g, at)| (at, vec![ShopFact::NewScale { step_g }])))
            }
            FormOf::Step { of, list, place } => self.step_facts(*of, *list, *place, draft),
            // Opens a file and records nothing.
            FormOf::LogPath | FormOf::PictureFolder | FormOf::Device(_) => Ok((None, Vec::new())),
            FormOf::Offer(of) => {
                let mut faults = Faults::default();
                let read = self.read_blank_or_number(Quantity::Days, draft.typed("day"));
                let day = faults.take("day", read);
                let mut rhythm = self.shop().settings.rhythm(*of);
                faults.or(day.map(|day| {
                    rhythm.offer_after = day.map(days);
                    (None, rhythm_setting(*of, &rhythm))
                }))
            }
        }
    }

    fn climate_facts(&self, draft: &Draft, now: Moment) -> Outcome {
        let mut faults = Faults::default();
        let temp = self.read_number(Quantity::Temperature, draft.typed("temp"));
        let temp = faults.take("temp", temp);
        let rh = if draft.typed("way") == "bulbs" {
            let wet = self.read_number(Quantity::WetBulb, draft.typed("wet"));
            let wet = faults.take("wet", wet);
            temp.zip(wet).and_then(|(temp, wet)| {
                let read = self.humidity_of_bulbs(temp, wet);
                faults.take("wet", read)
            })
        } else {
            let rh = self.read_number(Quantity::Humidity, draft.typed("rh"));
            faults.take("rh", rh)
        };
        let at = faults.take("day", self.read_when(draft, now));
        let room = Self::room_of(draft);
        let facts = temp.zip(rh).zip(at).map(|((temp_c, rh_pct), at)| {
            // To a tenth: what the instrument can tell, not what the sum of two bulbs comes to.
            let rh_pct = (rh_pct * 10.0).round() / 10.0;
            let climate = Climate {
                room,
                temp_c,
                rh_pct,
            };
            (at, vec![ShopFact::Climate(climate)])
        });
        faults.or(facts)
    }

    fn number_facts(&self, key: &str, draft: &Draft) -> Outcome {
        let mut faults = Faults::default();
        let Some(number) = number_setting(key) else {
            return faults.or(None);
        };
        let now = (number.value)(&self.shop().settings);
        let read = if draft.typed("value").trim().is_empty() {
            Ok(None)
        } else {
            self.read_again(number.quantity, draft.typed("value"), Some(now))
                .map(Some)
        };
        let value = faults.take("value", read);
        faults.or(value.map(|value| {
            let text = match value {
                None => String::new(),
                Some(v) if (v - number.usual()).abs() < 1e-9 => String::new(),
                Some(v) if number.quantity.dimension() == Dimension::Count => days(v).to_string(),
                Some(v) => v.to_string(),
            };
            (None, setting(key, text))
        }))
    }

    /// Another step for the scale in use: of the setting, or of the last new scale, whose line is replaced.
    fn scale_facts(&self, draft: &Draft) -> Outcome {
        let mut faults = Faults::default();
        let now = self.scale_step();
        let read = self.read_again(Quantity::ScaleStep, draft.typed("step"), Some(now));
        let step = faults.take("step", read);
        let last = self.shop().scales.last().map(|(at, _)| *at);
        let line = self
            .shop()
            .history
            .iter()
            .rev()
            .find(|e| Some(e.at) == last && matches!(e.fact, ShopFact::NewScale { .. }))
            .map(|e| e.line.clone());
        faults.or(step.map(|step_g| match (last, line) {
            _ if (step_g - now).abs() < 1e-9 => (None, Vec::new()),
            (Some(at), Some(line)) => {
                let facts = vec![ShopFact::Retracts(line), ShopFact::NewScale { step_g }];
                (Some(at), facts)
            }
            _ => (None, setting("scale_step_g", step_g.to_string())),
        }))
    }

    fn step_facts(
        &self,
        of: RhythmOf,
        list: StepList,
        place: Option<usize>,
        draft: &Draft,
    ) -> Outcome {
        let mut faults = Faults::default();
        let mut rhythm = self.shop().settings.rhythm(of);
        let mut steps = list.of(&rhythm).to_vec();
        let ends = match place {
            Some(place) => place + 1 < steps.len(),
            None => !steps.is_empty(),
        };
        let every = faults.take(
            "every",
            self.read_number(Quantity::Days, draft.typed("every")),
        );
        let until = if ends {
            let read = self.read_number(Quantity::Days, draft.typed("until"));
            faults.take("until", read).map(Some)
        } else {
            Some(None)
        };
        if let Some(place) = place.filter(|p| *p < steps.len()) {
            steps.remove(place);
        }
        if let Some(Some(until)) = until
            && steps.iter().any(|s| s.until_day == Some(days(until)))
        {
            let fault = self
                .words()
                .with("shop-until-taken", &[("day", days(until).into())]);
            faults.add("until", fault);
        }
        faults.or(every.zip(until).map(|(every, until)| {
            steps.push(Step {
                every: days(every),
                until_day: until.map(days),
            });
            // The one that goes on for ever stands last.
            steps.sort_by_key(|s| s.until_day.unwrap_or(u32::MAX));
            open_end(&mut steps);
            *list.of_mut(&mut rhythm) = steps;
            (None, rhythm_setting(of, &rhythm))
        }))
    }
}

/// The last step goes on for ever.
fn open_end(steps: &mut [Step]) {
    if let Some(last) = steps.last_mut() {
        last.until_day = None;
    }
}
