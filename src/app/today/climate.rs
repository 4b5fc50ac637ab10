//! Climate: the chip with the shop's air and the moisture at which wood settles in it.

use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::Room;
use evenwall_wood::moisture::settling_moisture;

use super::view::ClimateView;
use crate::app::App;

/// A reading older than these days is called old. Common practice, no source.
const OLD_AFTER_DAYS: i64 = 14;

impl App {
    /// The shop's air; `None` where no reading was ever noted, or all are dated ahead.
    pub(super) fn climate_chip(&self, now: Moment) -> Option<ClimateView> {
        let shop = self.shop();
        let known = shop.climate.partition_point(|(at, _)| *at <= now);
        let (at, air) = shop.climate[..known]
            .iter()
            .rev()
            .find(|(_, c)| c.room == Room::Shop)?;
        let (words, numbers) = (self.words(), self.numbers());
        let days = now
            .date_naive()
            .signed_duration_since(at.date_naive())
            .num_days();
        let old = days > OLD_AFTER_DAYS;
        let air_text = words.with(
            "today-climate",
            &[
                ("temperature", numbers.temperature(air.temp_c).text().into()),
                ("humidity", numbers.percent(air.rh_pct).text().into()),
            ],
        );
        let settles = settling_moisture(air.temp_c, air.rh_pct / 100.0)
            .ok()
            .map(|m| {
                let moisture = numbers.percent(100.0 * m).text();
                words.with("today-settles", &[("moisture", moisture.into())])
            })
            .unwrap_or_default();
        let reading = if old {
            words.with("today-climate-old", &[("n", days.into())])
        } else {
            air_text
        };
        let label = words.with(
            "today-climate-label",
            &[
                ("reading", reading.as_str().into()),
                ("settles", settles.as_str().into()),
            ],
        );
        Some(ClimateView {
            reading,
            settles,
            old,
            label,
        })
    }
}
