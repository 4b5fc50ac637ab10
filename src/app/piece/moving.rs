//! Moving: from one stage to another, with the advice that belongs to it; never a lock.

use chrono::{NaiveDate, NaiveTime, TimeZone};
use evenwall_piece::fact::{PieceFact, StationRef};
use evenwall_piece::glue::is_crack;
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Flaw, Moment, Piece};
use evenwall_piece::stage::Stage;

use crate::action::Action;
use crate::app::{App, AppError};
use crate::piece::{PieceAction, StagesState};
use crate::question::{Choice, ChoiceStyle, Question};
use crate::route::Page;
use crate::words::dates::Dates;

/// Noon of a day at the place of `now`, never after now.
pub(crate) fn noon(day: NaiveDate, now: Moment) -> Moment {
    let noon = NaiveTime::from_hms_opt(12, 0, 0).unwrap_or_default();
    now.offset()
        .from_local_datetime(&day.and_time(noon))
        .single()
        .map_or(now, |m| m.min(now))
}

impl App {
    pub(crate) fn move_to(
        &mut self,
        id: &PieceId,
        stage: Stage,
        day: Option<NaiveDate>,
        sure: bool,
        now: Moment,
    ) -> Result<(), AppError> {
        let Some(piece) = self.piece(id) else {
            return Ok(());
        };
        let open = undecided(piece);
        let leaves = piece.stage() == Stage::Stabilise && stage.index() > Stage::Stabilise.index();
        if leaves && open > 0 && !sure {
            self.ask_undecided(id, stage, day, open);
            return Ok(());
        }
        let glued = glued_cracks(piece).len();
        let at = day.map_or(now, |d| noon(d, now));
        self.retry_with(Action::Piece(PieceAction::MoveTo {
            piece: id.clone(),
            stage,
            day,
            sure: true,
        }));
        self.record(id, at, vec![PieceFact::StageMoved(stage)], now)?;
        self.states.piece.stages = StagesState::default();
        self.states.piece.earlier = false;
        self.states.piece.look_now = false;
        let mark = self.mark_of(id);
        let words = self.words();
        let name = words.text(&format!("stage-{}", stage.key()));
        let said = match day {
            Some(day) => words.with(
                "piece-said-moved-on",
                &[
                    ("mark", mark.into()),
                    ("stage", name.into()),
                    ("day", Dates::new(words, now.date_naive()).near(day).into()),
                ],
            ),
            None => words.with(
                "piece-said-moved",
                &[("mark", mark.into()), ("stage", name.into())],
            ),
        };
        self.say(said);
        if stage == Stage::True && glued > 0 {
            self.tell_glued(id, now);
        }
        Ok(())
    }

    fn ask_undecided(&mut self, id: &PieceId, stage: Stage, day: Option<NaiveDate>, open: usize) {
        let words = self.words();
        let name = words.text(&format!("stage-{}", stage.key()));
        let choice = |label: String, style, action| Choice {
            label,
            style,
            action,
        };
        let question = Question {
            title: words.with("piece-undecided-title", &[("n", open.into())]),
            text: words.text("piece-undecided-text"),
            choices: vec![
                choice(
                    words.text("piece-undecided-see"),
                    ChoiceStyle::Primary,
                    Some(Action::Open(Page::Flaws(id.clone()))),
                ),
                choice(
                    words.with("piece-undecided-go", &[("stage", name.into())]),
                    ChoiceStyle::Plain,
                    Some(Action::Piece(PieceAction::MoveTo {
                        piece: id.clone(),
                        stage,
                        day,
                        sure: true,
                    })),
                ),
            ],
            caution: false,
        };
        self.ask(question);
    }

    /// Glued cracks come back first thing in True.
    fn tell_glued(&mut self, id: &PieceId, now: Moment) {
        let words = self.words();
        let dates = Dates::new(words, now.date_naive());
        let Some(piece) = self.piece(id) else { return };
        let mut lines = vec![words.text("piece-glued-text")];
        for flaw in glued_cracks(piece) {
            let day = flaw
                .last_treatment()
                .map_or(flaw.found_at.date_naive(), |(at, _)| at.date_naive());
            lines.push(words.with(
                "piece-glued-line",
                &[
                    ("what", self.flaw_place(flaw).into()),
                    ("day", dates.day_and_month(day).into()),
                ],
            ));
        }
        let choice = |label: String, style, action| Choice {
            label,
            style,
            action,
        };
        let question = Question {
            title: words.text("piece-glued-title"),
            text: lines.join("\n"),
            choices: vec![
                choice(
                    words.text("piece-glued-look"),
                    ChoiceStyle::Primary,
                    Some(Action::Open(Page::Truing(id.clone()))),
                ),
                choice(words.text("action-close"), ChoiceStyle::Plain, None),
            ],
            caution: true,
        };
        self.ask(question);
    }

    /// A flaw with its place: "Check, station 3, 4 o'clock".
    pub(crate) fn flaw_place(&self, flaw: &Flaw) -> String {
        let words = self.words();
        let mut parts = vec![words.text(&format!("flaw-kind-{}", flaw.note.kind.key()))];
        match flaw.note.station {
            Some(StationRef::Wall(_)) if let Some(mm) = flaw.depth_mm => {
                parts.push(self.flaw_depth(mm));
            }
            Some(StationRef::Wall(n)) => {
                parts.push(words.with("piece-station-n", &[("n", n.into())]));
            }
            Some(StationRef::Floor) => {
                parts.push(words.text("piece-station-floor"));
            }
            None => {}
        }
        if let Some(clock) = flaw.note.clock {
            parts.push(words.with("piece-clock", &[("n", clock.hour().into())]));
        }
        parts.join(", ")
    }
}

/// How many flaws are neither decided nor cut away.
pub(crate) fn undecided(piece: &Piece) -> usize {
    piece
        .flaws
        .iter()
        .filter(|f| !f.decided() && !f.gone())
        .count()
}

/// The cracks that were glued and are not cut away: a glued crack stays a crack, and a glued knot never was one.
pub(crate) fn glued_cracks(piece: &Piece) -> Vec<&Flaw> {
    piece
        .flaws
        .iter()
        .filter(|f| {
            !f.gone()
                && is_crack(f.note.kind)
                && f.last_treatment()
                    .is_some_and(|(_, t)| t.treatment.is_glue())
        })
        .collect()
}
