//! Air: the moisture at which wood settles in shop and house, where climate is kept.

use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::Room;
use evenwall_wood::moisture::settling_moisture;

use crate::app::App;

/// A reading older than these days is called old. Common practice, no source.
const OLD_AFTER_DAYS: i64 = 14;

impl App {
    /// One sentence for each room whose air was read: "Wood settles at about 11 % in this shop."
    pub(super) fn air_texts(&self, now: Moment) -> Vec<String> {
        [Room::Shop, Room::House]
            .into_iter()
            .filter_map(|room| self.air_text(room, now))
            .collect()
    }

    fn air_text(&self, room: Room, now: Moment) -> Option<String> {
        let (at, air) = self
            .shop()
            .climate
            .iter()
            .rev()
            .find(|(at, c)| c.room == room && *at <= now)?;
        let (words, numbers) = (self.words(), self.numbers());
        let moisture = settling_moisture(air.temp_c, air.rh_pct / 100.0).ok()?;
        let text = words.with(
            match room {
                Room::Shop => "drying-air-shop",
                Room::House => "drying-air-house",
            },
            &[
                ("moisture", numbers.percent(100.0 * moisture).text().into()),
                ("temperature", numbers.temperature(air.temp_c).text().into()),
                ("humidity", numbers.percent(air.rh_pct).text().into()),
            ],
        );
        let day = at.date_naive();
        let old = now.date_naive().signed_duration_since(day).num_days() > OLD_AFTER_DAYS;
        Some(if old {
            let ago = self.dates(now).ago(day);
            let read = words.with("drying-air-old", &[("ago", ago.into())]);
            format!("{text} {read}")
        } else {
            text
        })
    }
}
