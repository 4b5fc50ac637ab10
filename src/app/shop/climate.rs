//! Climate: the air of shop and house, what wood settles at there, and the readings so far.

use evenwall_piece::piece::Moment;
use evenwall_piece::shop::{Climate, LoggedAir, LoggedReading, ShopEntry, ShopFact};
use evenwall_piece::vocabulary::Room;
use evenwall_wood::humidity::{BulbError, SEA_LEVEL_HPA, VENTILATED, humidity_from_bulbs};
use evenwall_wood::moisture::settling_moisture;

use crate::app::App;
use crate::numbers::Quantity;
use crate::words::dates::Dates;

use super::form::{Draft, FormOf};
use super::view::{RowKind, RowView, SectionView, ShopView};
use super::{ENTRIES, ShopAction};

/// The air of a heated house where it is not said: temperature in degrees C and humidity in per cent, from and to.
/// Common practice, no source.
pub const HOUSE_TEMP_C: f64 = 20.0;
/// See [`HOUSE_TEMP_C`].
pub const HOUSE_RH_PCT: (f64, f64) = (45.0, 50.0);

impl App {
    /// The moisture at which wood settles in this air, per cent; `None` outside what is known.
    pub(super) fn settles_at(&self, temp_c: f64, rh_pct: f64) -> Option<f64> {
        settling_moisture(temp_c, rh_pct / 100.0)
            .ok()
            .map(|m| m * 100.0)
    }

    fn settles_in_words(&self, temp_c: f64, rh_pct: f64) -> String {
        self.settles_at(temp_c, rh_pct)
            .map_or_else(String::new, |m| self.numbers().percent(m).text())
    }

    /// "18 °C, 65 %".
    pub(super) fn air_in_words(&self, climate: &Climate) -> String {
        let numbers = self.numbers();
        self.words().with(
            "shop-air",
            &[
                ("temp", numbers.temperature(climate.temp_c).text().into()),
                ("rh", numbers.percent(climate.rh_pct).text().into()),
            ],
        )
    }

    /// "yesterday, 08:42".
    pub(super) fn time_in_words(&self, at: Moment, now: Moment) -> String {
        let dates = Dates::new(self.words(), now.date_naive());
        let day = match (now.date_naive() - at.date_naive()).num_days() {
            0 | 1 => dates.near(at.date_naive()),
            _ => dates.day_and_month(at.date_naive()),
        };
        self.words().with(
            "shop-day-time",
            &[
                ("day", day.into()),
                ("time", at.format("%H:%M").to_string().into()),
            ],
        )
    }

    fn room_section(&self, room: Room, now: Moment) -> SectionView {
        let words = self.words();
        let numbers = self.numbers();
        let id = |part: &str| format!("{}-{part}", room.key());
        let plain = |part: &str, label: &str, value: String| {
            RowView::plain(id(part), words.text(label), value)
        };
        let (rows, note) = match self.shop().last_climate(room) {
            Some((at, c)) => {
                let rows = vec![
                    plain(
                        "temp",
                        "shop-temperature",
                        numbers.temperature(c.temp_c).text(),
                    ),
                    plain("rh", "shop-humidity", numbers.percent(c.rh_pct).text()),
                    plain(
                        "settles",
                        "shop-settles",
                        self.settles_in_words(c.temp_c, c.rh_pct),
                    ),
                ];
                let when = self.time_in_words(*at, now);
                (rows, words.with("shop-read-at", &[("when", when.into())]))
            }
            None if room == Room::House => {
                let (low, high) = HOUSE_RH_PCT;
                let range = |low: f64, high: f64| {
                    numbers
                        .range(&numbers.percent(low), &numbers.percent(high))
                        .text()
                };
                let settles = match (
                    self.settles_at(HOUSE_TEMP_C, low),
                    self.settles_at(HOUSE_TEMP_C, high),
                ) {
                    (Some(low), Some(high)) => range(low, high),
                    _ => String::new(),
                };
                let rows = vec![
                    plain(
                        "temp",
                        "shop-temperature",
                        numbers.temperature(HOUSE_TEMP_C).text(),
                    ),
                    plain("rh", "shop-humidity", range(low, high)),
                    plain("settles", "shop-settles", settles),
                ];
                (rows, words.text("shop-house-assumed"))
            }
            None => (
                vec![RowView::text(id("unread"), words.text("shop-air-unread"))],
                String::new(),
            ),
        };
        SectionView {
            key: room.key(),
            title: words.text(&format!("room-{}", room.key())),
            note,
            chart: self.air_chart(room, now),
            rows,
        }
    }

    /// A logger's file among the readings.
    fn log_entry_row(&self, entry: &ShopEntry, log: &LoggedAir, now: Moment) -> RowView {
        let dates = self.dates(now);
        let day = |r: Option<&LoggedReading>| {
            r.map_or_else(String::new, |r| dates.day_and_month(r.at.date_naive()))
        };
        let note = self.words().with(
            "log-from-to",
            &[
                ("from", day(log.readings.first()).into()),
                ("to", day(log.readings.last()).into()),
            ],
        );
        self.entry_row(entry, self.fact_in_words(&entry.fact), note)
    }

    fn readings_section(&self, now: Moment) -> Option<SectionView> {
        let words = self.words();
        let shown = self.states.shop.shown;
        let all = self.shop().history.iter().rev();
        let readings: Vec<_> = all
            .filter(|e| matches!(e.fact, ShopFact::Climate(_) | ShopFact::ClimateLog(_)))
            .collect();
        let rows = readings.iter().take(shown).filter_map(|entry| {
            let c = match &entry.fact {
                ShopFact::Climate(c) => c,
                ShopFact::ClimateLog(log) => return Some(self.log_entry_row(entry, log, now)),
                _ => return None,
            };
            let what = format!(
                "{}: {}",
                words.text(&format!("room-{}", c.room.key())),
                self.air_in_words(c)
            );
            let when = self.time_in_words(entry.at, now);
            let settles = self.settles_in_words(c.temp_c, c.rh_pct);
            let settles = words.with("shop-settles-at", &[("value", settles.into())]);
            Some(self.entry_row(entry, what, format!("{when} · {settles}")))
        });
        let mut rows: Vec<RowView> = rows.collect();
        if readings.len() > shown {
            rows.push(self.older_row());
        }
        (!rows.is_empty()).then(|| SectionView {
            key: "readings",
            title: words.text("shop-readings"),
            rows,
            ..SectionView::default()
        })
    }

    /// The row that asks for older entries.
    pub(super) fn older_row(&self) -> RowView {
        let title = self.words().with("shop-older", &[("n", ENTRIES.into())]);
        RowView::touching(RowKind::Add, "older", title, ShopAction::Older).icon("chevron-down")
    }

    pub(super) fn climate_page(&self, now: Moment) -> ShopView {
        let words = self.words();
        let mut sections = vec![
            self.room_section(Room::Shop, now),
            self.room_section(Room::House, now),
        ];
        sections.push(self.log_row());
        sections.extend(self.readings_section(now));
        ShopView {
            title: words.text("shop-climate"),
            intro: words.text("shop-climate-intro"),
            curves: self.air_curves(),
            sections,
            primary: Some(RowView::touching(
                RowKind::Add,
                "new-reading",
                words.text("shop-climate-new"),
                ShopAction::Form(FormOf::Climate),
            )),
            ..ShopView::default()
        }
    }

    /// The humidity from both bulbs in per cent, or a sentence for below the wet one.
    pub(super) fn humidity_of_bulbs(&self, dry_c: f64, wet_c: f64) -> Result<f64, String> {
        let numbers = self.numbers();
        let shown = |c: f64| numbers.temperature(c).text();
        // Anything else a figure in range can do: both bulbs were read already within their own ranges.
        humidity_from_bulbs(dry_c, wet_c, SEA_LEVEL_HPA, VENTILATED)
            .map(|h| h * 100.0)
            .map_err(|error| {
                let id = match error {
                    BulbError::WetAboveDry { .. } => "shop-bulbs-swapped",
                    BulbError::TooFarApart { .. } | BulbError::Range(_) => "shop-bulbs-apart",
                };
                self.words().with(
                    id,
                    &[("dry", shown(dry_c).into()), ("wet", shown(wet_c).into())],
                )
            })
    }

    /// What follows from the reading typed so far: the humidity from both bulbs, and what wood settles at.
    pub(super) fn climate_follows(&self, draft: &Draft) -> String {
        let words = self.words();
        let read = |quantity, key| self.read_number(quantity, draft.typed(key)).ok();
        let Some(temp) = read(Quantity::Temperature, "temp") else {
            return String::new();
        };
        let bulbs = draft.typed("way") == "bulbs";
        let rh = if bulbs {
            read(Quantity::WetBulb, "wet").and_then(|wet| self.humidity_of_bulbs(temp, wet).ok())
        } else {
            read(Quantity::Humidity, "rh")
        };
        let Some(rh) = rh else {
            return String::new();
        };
        let settles = self.settles_in_words(temp, rh);
        let settles = words.with("shop-settles-follows", &[("value", settles.into())]);
        if bulbs {
            let rh = self.numbers().percent(rh).text();
            let humidity = words.with("shop-humidity-follows", &[("value", rh.into())]);
            format!("{humidity} {settles}")
        } else {
            settles
        }
    }

    /// The air of the shop in words, for the list of pages.
    pub(super) fn climate_in_words(&self) -> String {
        match self.shop().last_climate(Room::Shop) {
            Some((_, c)) => {
                let air = self.air_in_words(c);
                let settles = self.settles_in_words(c.temp_c, c.rh_pct);
                self.words().with(
                    "shop-climate-now",
                    &[("air", air.into()), ("settles", settles.into())],
                )
            }
            None => self.words().text("shop-air-unread"),
        }
    }
}
