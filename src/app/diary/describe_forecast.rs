//! Describe: a forecast as it was made, in words.

use evenwall_piece::fact::ForecastMade;

use super::describe::Described;
use super::filter::Filter;
use crate::app::App;

impl App {
    /// "Forecast: into the house 10 to 18 March".
    pub(super) fn describe_forecast(&self, made: &ForecastMade) -> Described {
        let words = self.words();
        let said = |id: &str, range: Option<_>| {
            range.map(|range| words.with(id, &[("range", self.day_range(range, None).into())]))
        };
        let parts: Vec<String> = [
            said("diary-forecast-house", made.into_house),
            said("diary-forecast-finish", made.to_finish),
        ]
        .into_iter()
        .flatten()
        .collect();
        let what = if parts.is_empty() {
            words.text("diary-forecast-none")
        } else {
            parts.join(", ")
        };
        Described {
            icon: "clock",
            title: words.with("diary-forecast", &[("what", what.into())]),
            note: words.with("diary-forecast-from", &[("n", made.weighings.into())]),
            filter: Filter::Forecasts,
        }
    }
}
