//! Ahead: moisture now and the two ready ranges in words, or why it is too early to say.

use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Stage;
use evenwall_wood::drying::READY_WITHIN;
use evenwall_wood::forecast::{BagLine, Road, TooEarly, WEIGHINGS};

use super::ahead_view::AheadView;
use super::view::FigureView;
use crate::app::App;
use crate::forecasting::{Assumed, Foreseen, Odd, SHOP_UNREAD, Sized, Stretch, Weighed, weeks};
use crate::shop::climate::{HOUSE_RH_PCT, HOUSE_TEMP_C};

/// Half a range of moisture that still counts as "about", fraction.
const ABOUT: f64 = 0.015;
/// Above this deviation nothing is said of the moisture, fraction: one weight of a piece whose size is not known.
const NO_MOISTURE: f64 = 0.25;
/// A road that may take longer than this many times its quickest is not told by its end.
const LONG_WEEKS: u32 = 52;

impl App {
    /// What is foreseen of a piece, in words.
    pub(super) fn ahead_view(&self, piece: &Piece, now: Moment) -> AheadView {
        let words = self.words();
        let mut view = AheadView::default();
        if let Some(failed) = self.forecast_failed(&piece.id) {
            view.note = failed.to_owned();
        } else if self.is_reckoning(piece, now) {
            view.note = words.text("forecast-reckoning");
        }
        let Some(seen) = self.foreseen(&piece.id) else {
            return view;
        };
        let told = seen
            .weighed
            .as_ref()
            .is_some_and(|w| self.days_may_be_told(seen, w));
        if let Some(weighed) = &seen.weighed {
            let spread = weighed.outlook.now.sd;
            if spread < NO_MOISTURE && weighed.odd() != Some(Odd::Rough) {
                view.moisture = Some(self.moisture_figure(weighed, now, seen));
            }
            if told {
                view.ready = self.ready_figures(piece, seen, weighed, now);
            } else {
                view.early = words.text("forecast-early");
                view.reasons = self.early_reasons(seen, weighed, now);
            }
        }
        if !told && let Some((here, finish)) = &seen.road {
            view.road = self.road_figure(here, finish.as_ref());
        }
        view.assumed = self.assumed_texts(&seen.assumed, piece);
        view
    }

    fn ready_figures(
        &self,
        piece: &Piece,
        seen: &Foreseen,
        weighed: &Weighed,
        now: Moment,
    ) -> Vec<FigureView> {
        let outlook = &weighed.outlook;
        let indoors = piece.stage() == Stage::Indoors;
        let mut figures = Vec::new();
        let first = if indoors {
            "forecast-finish"
        } else {
            "forecast-house"
        };
        figures.extend(
            seen.stretch(&outlook.here)
                .map(|s| self.ready_figure(first, s, now)),
        );
        if !indoors && let Some(finish) = &outlook.finish {
            let stretch = seen.stretch(finish);
            figures.extend(stretch.map(|s| self.ready_figure("forecast-finish", s, now)));
        }
        // Said once for both.
        if let [first, second] = figures.as_mut_slice()
            && first.note == second.note
        {
            second.note.clear();
        }
        figures
    }

    fn ready_figure(&self, label: &str, stretch: Stretch, now: Moment) -> FigureView {
        let words = self.words();
        let (value, note) = match stretch {
            Stretch::Ahead(from, to) => (
                self.day_range((from, to), Some(now.date_naive())),
                "forecast-as-it-is",
            ),
            Stretch::Behind => (words.text("forecast-by-now"), "forecast-by-now-note"),
            Stretch::Never => (words.text("forecast-never"), "forecast-never-note"),
            Stretch::Wide => (words.text("forecast-wide"), "forecast-early-wide"),
        };
        FigureView {
            label: words.text(label),
            value,
            unit: String::new(),
            note: words.text(note),
        }
    }

    fn moisture_figure(&self, weighed: &Weighed, now: Moment, seen: &Foreseen) -> FigureView {
        let (words, numbers) = (self.words(), self.numbers());
        let said = &weighed.outlook.now;
        let (low, high) = said.range();
        let percent = |m: f64| numbers.percent(100.0 * m);
        let sure = 0.5 * (high - low) <= ABOUT;
        let value = if sure {
            words.with(
                "forecast-about",
                &[("moisture", percent(said.mean).text().into())],
            )
        } else {
            words.with(
                "forecast-between",
                &[
                    ("low", percent(low).number.into()),
                    ("high", percent(high).text().into()),
                ],
            )
        };
        let settles = percent(said.settling).text();
        let note = if !sure {
            words.with("forecast-between-note", &[("settles", settles.into())])
        } else if said.mean <= said.settling + READY_WITHIN {
            words.with("forecast-settled-note", &[("settles", settles.into())])
        } else {
            words.with("forecast-about-note", &[("settles", settles.into())])
        };
        let label = if seen.weighed_lately() {
            words.text("forecast-moisture")
        } else {
            let day = self.dates(now).ago(seen.date(weighed.last_day));
            words.with("forecast-moisture-old", &[("ago", day.into())])
        };
        FigureView {
            label,
            value,
            unit: String::new(),
            note,
        }
    }

    /// The whole road in weeks, never as a date.
    fn road_figure(&self, here: &Road, finish: Option<&Road>) -> Option<FigureView> {
        let words = self.words();
        let span = |road: &Road| {
            let (low, high) = weeks(&road.slowest?);
            Some(if high > LONG_WEEKS {
                words.with("forecast-weeks-open", &[("low", low.max(1).into())])
            } else {
                words.with(
                    "forecast-weeks",
                    &[("low", low.into()), ("high", high.into())],
                )
            })
        };
        let finish = finish.and_then(span);
        let note = finish.map_or_else(
            || words.text("forecast-road-note"),
            |weeks| words.with("forecast-road-note-finish", &[("weeks", weeks.into())]),
        );
        Some(FigureView {
            label: words.text("forecast-road"),
            value: span(here)?,
            unit: String::new(),
            note,
        })
    }

    fn early_reasons(&self, seen: &Foreseen, weighed: &Weighed, now: Moment) -> Vec<String> {
        let words = self.words();
        let outlook = &weighed.outlook;
        let mut reasons: Vec<String> = Vec::new();
        reasons.extend(weighed.odd().map(|odd| {
            words.text(match odd {
                Odd::Slow => "forecast-odd-slow",
                Odd::Fast => "forecast-odd-fast",
                Odd::Rough => "forecast-odd-rough",
            })
        }));
        if !seen.weighed_lately() {
            reasons.push(words.text("forecast-early-old"));
        }
        for reason in &outlook.too_early {
            reasons.push(match reason {
                TooEarly::FewWeighings { have } => words.with(
                    "forecast-early-few",
                    &[("n", (*have).into()), ("of", WEIGHINGS.into())],
                ),
                TooEarly::LittleLost { .. } => words.text("forecast-early-little"),
                TooEarly::StraightInBag => self.straight_text(seen, outlook.bag_line, now),
                TooEarly::MovedSince { day } => {
                    let day = self.dates(now).near(seen.date(*day));
                    words.with("forecast-early-moved", &[("day", day.into())])
                }
                TooEarly::WideRange { .. } => words.text("forecast-early-wide"),
                TooEarly::Never => words.text("forecast-early-never"),
            });
        }
        reasons
    }

    /// The straight part of the bag, and when it ends.
    fn straight_text(&self, seen: &Foreseen, line: Option<BagLine>, now: Moment) -> String {
        let words = self.words();
        let today = now.date_naive();
        let bends = line.and_then(|line| {
            let first = seen.weighed.as_ref()?.outlook.first_day();
            let (from, to) = (seen.date(first + line.early), seen.date(first + line.late));
            (to > today).then(|| self.day_range((from.max(today), to), Some(today)))
        });
        match bends {
            Some(range) => words.with("forecast-early-straight-until", &[("range", range.into())]),
            None => words.text("forecast-early-straight"),
        }
    }

    fn assumed_texts(&self, assumed: &Assumed, piece: &Piece) -> Vec<String> {
        let (words, numbers) = (self.words(), self.numbers());
        let air = |id: &str, temp_c: f64, rh_pct: f64| {
            words.with(
                id,
                &[
                    ("temperature", numbers.temperature(temp_c).text().into()),
                    ("humidity", numbers.percent(rh_pct).text().into()),
                ],
            )
        };
        let mut texts = Vec::new();
        let indoors = piece.stage() == Stage::Indoors;
        if assumed.shop_air && !indoors {
            texts.push(air("forecast-assumed-shop", SHOP_UNREAD.0, SHOP_UNREAD.1));
        }
        if assumed.house_air {
            let rh = 0.5 * (HOUSE_RH_PCT.0 + HOUSE_RH_PCT.1);
            texts.push(air("forecast-assumed-house", HOUSE_TEMP_C, rh));
        }
        if assumed.walls {
            texts.push(words.text("forecast-assumed-walls"));
        }
        match assumed.sized {
            Sized::Measured => {}
            Sized::Said => texts.push(words.text("forecast-assumed-outline")),
            Sized::Unsaid => texts.push(words.text("forecast-assumed-size")),
        }
        texts
    }
}
