//! Look: a bag felt or a piece looked over, answered on the piece's own page.

use evenwall_piece::agenda::{Bench, TaskKind, standing, tasks_of, what_if};
use evenwall_piece::bag::{BagAnswer, BagState};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::vocabulary::BagFeel;

use crate::app::{App, AppError};
use crate::piece::view::{AnswerView, LookView};
use crate::words::dates::Dates;

impl App {
    /// Asks something of the workshop at a moment, as the agenda wants it.
    pub(crate) fn at_the_bench<T>(&self, now: Moment, ask: impl FnOnce(&Bench) -> T) -> T {
        self.with_bench(now, ask)
    }

    /// The answers of a look, each saying what is done and when.
    pub(crate) fn look_view(&self, piece: &Piece, now: Moment) -> Option<LookView> {
        // Where the next look is a weighing, as in Settle, no look falls due of itself.
        let (state, due) = self.at_the_bench(now, |bench| {
            let tasks = tasks_of(piece, bench);
            let look = tasks
                .iter()
                .find(|t| matches!(t.kind, TaskKind::Look | TaskKind::LookOver));
            Some((standing(piece, bench)?.state, look.map(|t| t.due)))
        })?;
        let words = self.words();
        let dates = Dates::new(words, now.date_naive());
        let due_now = due.is_some_and(|d| d <= now.date_naive());
        if !due_now && !self.states.piece.look_now {
            return None;
        }
        let note = |feel: Option<BagFeel>| match self.leads_to(piece, feel, false, now) {
            // Two lines, so that a day is never torn apart.
            Some((act, Some(day))) => format!("{act}\n{day}"),
            Some((act, None)) => act,
            None => String::new(),
        };
        let answer =
            |key: &'static str, text: String, icon: &'static str, note: String| AnswerView {
                key,
                text,
                icon,
                note,
            };
        let felt = state != BagState::NoBag;
        let answers = if felt {
            [
                (BagFeel::Wet, "drop-full"),
                (BagFeel::Damp, "drop-half"),
                (BagFeel::Nothing, "drop-empty"),
            ]
            .into_iter()
            .map(|(feel, icon)| {
                let text = words.text(&format!("feel-{}", feel.key()));
                answer(feel.key(), text, icon, note(Some(feel)))
            })
            .collect()
        } else {
            let fine = words.text("piece-look-fine");
            vec![answer("fine", fine, "tick", note(None))]
        };
        Some(LookView {
            title: words.text(if felt {
                "piece-look-bag"
            } else {
                "piece-look-over"
            }),
            due: match due {
                Some(due) if due_now => dates.due(due),
                Some(due) => words.with("piece-look-not-due", &[("day", dates.near(due).into())]),
                None => String::new(),
            },
            late: due.is_some_and(|d| d < now.date_naive()),
            answers,
            mould: words.text("piece-look-mould"),
            crack: words.text("piece-look-crack"),
        })
    }

    pub(crate) fn looked(
        &mut self,
        piece: &PieceId,
        feel: Option<BagFeel>,
        mould: bool,
        crack: bool,
        now: Moment,
    ) -> Result<(), AppError> {
        let leads = self
            .piece(piece)
            .and_then(|p| self.leads_to(p, feel, mould, now));
        self.record(
            piece,
            now,
            vec![PieceFact::Look { feel, mould, crack }],
            now,
        )?;
        self.states.piece.look_now = false;
        let words = self.words();
        let mark = self.mark_of(piece);
        let what = match (feel, mould, crack) {
            (Some(feel), ..) => words.text(&format!("feel-{}", feel.key())),
            (None, true, _) => words.text("piece-look-mould"),
            (None, false, true) => words.text("piece-look-crack"),
            (None, false, false) => words.text("piece-look-fine"),
        };
        let said = match leads {
            Some((act, Some(day))) => words.with(
                "piece-said-looked",
                &[
                    ("mark", mark.into()),
                    ("what", what.into()),
                    ("act", act.into()),
                    ("day", day.into()),
                ],
            ),
            _ => words.with(
                "piece-said-looked-only",
                &[("mark", mark.into()), ("what", what.into())],
            ),
        };
        self.say(said);
        Ok(())
    }

    /// What an answer leads to, and the day of the next look: "turn it", "Sat 14".
    fn leads_to(
        &self,
        piece: &Piece,
        feel: Option<BagFeel>,
        mould: bool,
        now: Moment,
    ) -> Option<(String, Option<String>)> {
        let answer = BagAnswer::of_look(feel, mould);
        let outcome = self.at_the_bench(now, |bench| what_if(piece, bench, answer, mould))?;
        let words = self.words();
        let dates = Dates::new(words, now.date_naive());
        Some((
            words.text(&format!("piece-act-{}", outcome.act.key())),
            outcome.next_look.map(|day| dates.near(day)),
        ))
    }
}
