//! Form reading: what was typed into a field of Shop becomes a number, a name or a day, or a sentence.

use chrono::{Days, NaiveDate};
use evenwall_piece::piece::Moment;

use crate::app::App;
use crate::details::{Day, read_day};
use crate::numbers::{Parsed, Quantity};

use super::form::Draft;

/// The longest name, in characters.
pub(super) const LONGEST_NAME: usize = 40;

impl App {
    /// A number, or a sentence for below its field.
    pub(super) fn read_number(&self, quantity: Quantity, typed: &str) -> Result<f64, String> {
        let numbers = self.numbers();
        match numbers.parse(quantity, typed) {
            Ok(Parsed::Value(entry)) => Ok(entry.value),
            Ok(Parsed::Ask {
                typed,
                readings,
                why,
            }) => Err(format!(
                "{} {}",
                numbers.reason(quantity, &typed, why),
                numbers.question(&readings)
            )),
            Err(error) => Err(error.message(&numbers, quantity)),
        }
    }

    /// A number that was there before. Untouched it stays what it was to the last figure, whatever its text was
    /// rounded to.
    pub(super) fn read_again(
        &self,
        quantity: Quantity,
        typed: &str,
        before: Option<f64>,
    ) -> Result<f64, String> {
        match before {
            Some(before) if self.numbers().quantity(quantity, before).number == typed => Ok(before),
            _ => self.read_number(quantity, typed),
        }
    }

    /// A number or nothing.
    pub(super) fn read_blank_or_number(
        &self,
        quantity: Quantity,
        typed: &str,
    ) -> Result<Option<f64>, String> {
        if typed.trim().is_empty() {
            return Ok(None);
        }
        self.read_number(quantity, typed).map(Some)
    }

    /// Where a number can be read in two ways: texts to put into the field instead. Empty else.
    pub(super) fn ways_to_read(&self, quantity: Quantity, typed: &str) -> Vec<String> {
        let numbers = self.numbers();
        match numbers.parse(quantity, typed) {
            Ok(Parsed::Ask { readings, .. }) => readings
                .iter()
                .filter(|r| r.allowed)
                .map(|r| numbers.label(r))
                .collect(),
            _ => Vec::new(),
        }
    }

    /// The basic density in kg/m3 or as a share of that of water, which tables call specific gravity.
    pub(super) fn read_density(&self, typed: &str) -> Result<Option<f64>, String> {
        let share = typed.trim().replace(',', ".").parse::<f64>().ok();
        match share.filter(|s| (0.15..=1.3).contains(s)) {
            Some(share) => Ok(Some((share * 1000.0).round())),
            None => self.read_blank_or_number(Quantity::BasicDensity, typed),
        }
    }

    /// A name in one line; may be empty.
    pub(super) fn read_name(&self, typed: &str) -> Result<String, String> {
        let name = typed
            .split(|c: char| c.is_whitespace() || c.is_control())
            .filter(|part| !part.is_empty())
            .collect::<Vec<_>>()
            .join(" ");
        let count = name.chars().count();
        if count > LONGEST_NAME {
            return Err(self.words().with(
                "shop-name-long",
                &[("count", count.into()), ("most", LONGEST_NAME.into())],
            ));
        }
        Ok(name)
    }

    /// When it happened: now, or at this time of day on an earlier day. `None` is now.
    pub(super) fn read_when(&self, draft: &Draft, now: Moment) -> Result<Option<Moment>, String> {
        let today = now.date_naive();
        let day = match draft.typed("when") {
            "yesterday" => today.checked_sub_days(Days::new(1)).unwrap_or(today),
            "day" => self.read_one_day(draft.typed("day"), today)?,
            _ => return Ok(None),
        };
        if day == today {
            return Ok(None);
        }
        Ok(day
            .and_time(now.time())
            .and_local_timezone(now.timezone())
            .single())
    }

    fn read_one_day(&self, typed: &str, today: NaiveDate) -> Result<NaiveDate, String> {
        match read_day(self, typed, today)? {
            Day::Day(day) => Ok(day),
            Day::Month(..) | Day::Year(_) => Err(self.words().text("shop-day-wanted")),
        }
    }
}
