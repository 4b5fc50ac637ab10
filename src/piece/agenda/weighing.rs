//! Weighing: when a drying piece is due on the scale.
//!
//! Absence is never nagged: outside Settle, where the weighing is the look, a piece is asked for only once somebody has
//! begun to weigh it. A piece never weighed is offered the scale with its looks. What is foreseen of a piece may ask for it later
//! than its rhythm, never sooner. Whoever does not weigh at all is never asked.

use chrono::NaiveDate;

use super::bench::Bench;
use super::calendar::{days_after, on_weigh_day};
use super::standing::Standing;
use super::task::Why;
use crate::piece::Piece;
use crate::rhythm::RhythmOf;
use crate::weights::last_weighing;

/// A weighing that is due, before pauses and days away.
#[derive(Debug, Clone, PartialEq)]
pub struct DueWeighing {
    /// Its day.
    pub due: NaiveDate,
    /// Why.
    pub why: Why,
    /// The local day of the last weighing that counts.
    pub last: Option<NaiveDate>,
}

/// The next weighing of a drying piece, `None` where none is asked for.
#[must_use]
pub fn weighing(piece: &Piece, bench: &Bench, s: &Standing) -> Option<DueWeighing> {
    if !bench.shop.weighs() {
        return None;
    }
    let rhythm = bench.rhythm(s.of);
    let is_the_look = s.look_is_weighing(bench);
    if rhythm.weighings.is_empty() && !is_the_look {
        return None;
    }
    let every_on = |date: NaiveDate| {
        let day = s.day_of_stay(date);
        rhythm
            .weigh_every(day)
            .or_else(|| s.of.usual().weigh_every(day))
            .unwrap_or(14)
    };
    let weigh_day = bench.shop.settings.weigh_day;
    let after = |last: NaiveDate, not_before: NaiveDate| {
        let every = every_on(last);
        // Indoors is judged by weighings a week apart, whatever is foreseen.
        let foretold = bench.foretold(piece).filter(|_| s.of != RhythmOf::Indoors);
        let (every, why) = match foretold.map(|f| f.next_weighing(every)) {
            Some(next) if next.days > every => {
                let (days, because) = (next.days, next.because);
                (days, Why::TellsMost { days, because })
            }
            _ => (every, Why::Rhythm { every }),
        };
        let plain = days_after(last, every);
        if plain <= not_before {
            (not_before, Why::StartOfStage)
        } else {
            let last = last.max(not_before);
            (on_weigh_day(plain, last, every, weigh_day), why)
        }
    };
    let Some(last) = last_weighing(piece, bench.now).map(|w| w.at.date_naive()) else {
        if !is_the_look {
            return None;
        }
        // Somebody without a scale answers by looking it over.
        let due = match (s.anchor, s.answered) {
            (Some(anchor), true) => after(anchor.date_naive(), NaiveDate::MIN).0,
            (Some(anchor), false) => anchor.date_naive(),
            (None, _) => bench.today,
        };
        let why = if s.anchor.is_none() {
            Why::DatedAhead
        } else {
            Why::NeverWeighed
        };
        return Some(DueWeighing {
            due,
            why,
            last: None,
        });
    };
    let start = s.start.unwrap_or(NaiveDate::MIN);
    let (due, why) = if last < start && s.of == RhythmOf::Indoors {
        // The day it comes in is the one the others are judged by.
        (start, Why::StartOfStage)
    } else {
        after(last, start)
    };
    Some(DueWeighing {
        due,
        why,
        last: Some(last),
    })
}
