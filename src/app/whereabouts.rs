//! Whereabouts: where a piece is, in words, and the bench on which it is asked what is due.

use chrono::NaiveDate;
use evenwall_piece::agenda::Bench;
use evenwall_piece::fact::End;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::Method;

use crate::app::App;
use crate::words::dates::Dates;

/// The key of an end, as its words and filters use it.
#[must_use]
pub const fn end_key(end: &End) -> &'static str {
    match end {
        End::Finished => "finished",
        End::Lost { .. } => "lost",
        End::GivenAway => "given-away",
        End::LeftAsIs => "left-as-is",
        End::CantFind => "cant-find",
    }
}

impl App {
    /// Days in words, as read at `now`.
    #[must_use]
    pub fn dates(&self, now: Moment) -> Dates {
        Dates::new(self.words(), now.date_naive())
    }

    /// Asks something of the workshop at a moment, with what this app knows of woods.
    pub fn with_bench<T>(&self, now: Moment, ask: impl FnOnce(&Bench<'_>) -> T) -> T {
        let moulds_easily = |piece: &Piece| self.moulds_easily(piece);
        let bench = Bench::new(self.shop(), now, &moulds_easily).with_foretold(self.foretold());
        ask(&bench.with_work_on(self.pieces()))
    }

    /// The day on which the turner is back, past or ahead, where Away was said last and no return since: as planned, or the
    /// day on which work was done before that.
    pub(crate) fn back_day(&self, now: Moment) -> Option<NaiveDate> {
        let (_, planned) = self.shop().away?;
        Some(self.with_bench(now, |bench| {
            let back = bench.last_return();
            back.map_or(planned, |day| day.min(planned))
        }))
    }

    /// How many local calendar days ago the present stage began, 0 on its first; what is dated ahead counts as today.
    #[must_use]
    pub fn day_of_stage(&self, piece: &Piece, now: Moment) -> u32 {
        piece.stage_since().map_or(0, |since| {
            let days = now
                .date_naive()
                .signed_duration_since(since.date_naive())
                .num_days();
            u32::try_from(days).unwrap_or(0)
        })
    }

    /// Where a piece is: "In the bag, day 9", "In paper, day 4", "Half-turned on the lathe", "Paused until Sat 14",
    /// "Finished".
    #[must_use]
    pub fn whereabouts(&self, piece: &Piece, now: Moment) -> String {
        let words = self.words();
        if piece.deleted.is_some() {
            return words.text("state-deleted");
        }
        if let Some((_, end)) = &piece.end {
            return words.text(&format!("end-{}", end_key(end)));
        }
        if piece.not_found.is_some() {
            return words.text("state-not-found");
        }
        if let Some((_, until)) = &piece.paused {
            match until {
                None => return words.text("state-paused"),
                Some(day) if *day > now.date_naive() => {
                    let day = self.dates(now).near(*day);
                    return words.with("state-paused-until", &[("day", day.into())]);
                }
                Some(_) => {}
            }
        }
        if piece.half_turned.is_some() {
            return words.text("half-turned");
        }
        let stage = piece.stage();
        let by_method = matches!(stage, Stage::Bag | Stage::Air) && piece.method != Method::Bag;
        let day = self.day_of_stage(piece, now);
        if day == 0 {
            let name = if by_method {
                words.text(&format!("method-{}", piece.method.key()))
            } else {
                words.text(&format!("stage-{}", stage.key()))
            };
            return words.with("whereabouts-since-today", &[("stage", name.into())]);
        }
        let id = if by_method {
            format!("method-in-words-{}", piece.method.key())
        } else {
            format!("stage-in-words-{}", stage.key())
        };
        words.with(&id, &[("day", day.into())])
    }
}
