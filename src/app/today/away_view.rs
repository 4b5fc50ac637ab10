//! Away view: before leaving, while away, and on the return.

use evenwall_piece::agenda::agenda;
use evenwall_piece::away::{BeforeLeaving, Leaving, before_leaving, on_return};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};

use super::away::BackChoice;
use super::list::Group;
use super::view::{ListView, TickView};
use crate::app::App;

/// One piece of the list before leaving.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LeavingView {
    /// The piece.
    pub piece: PieceId,
    /// "K07: open the neck".
    pub text: String,
    /// Its wood and where it stands.
    pub note: String,
    /// Done: the neck is open, or it is in paper.
    pub done: bool,
    /// False where a touch only opens the piece.
    pub ticks: bool,
}

/// Going away, being away, and coming back.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct AwayView {
    /// Its title.
    pub title: String,
    /// What it is for.
    pub intro: String,
    /// The word for going back.
    pub back: String,
    /// While away: "Away until Fri 20".
    pub away_until: String,
    /// The button that says so; empty while the turner is there.
    pub am_back: String,
    /// "When are you back?"; empty while away.
    pub when: String,
    /// The choices of the day.
    pub choices: Vec<TickView>,
    /// True while a day is to be typed.
    pub typing: bool,
    /// The label of that field.
    pub day_label: String,
    /// An example in it.
    pub day_hint: String,
    /// What was typed.
    pub typed: String,
    /// What is wrong with it.
    pub error: String,
    /// The word for clearing the field.
    pub clear: String,
    /// Heads the list before leaving; empty where the list is.
    pub act_title: String,
    /// What is to be done before.
    pub act: Vec<LeavingView>,
    /// Where nothing is to be done.
    pub nothing: String,
    /// Heads those that may wait; empty where there are none.
    pub wait_title: String,
    /// Their marks.
    pub wait: String,
    /// Heads those that are fine; empty where there are none.
    pub fine_title: String,
    /// Their marks.
    pub fine: String,
    /// The primary button: "Away until Fri 20"; empty while away or on the return.
    pub leave: String,
    /// Heads the list on the return.
    pub return_title: String,
    /// The one list on the return.
    pub list: ListView,
    /// Where all of it is answered.
    pub all_done: String,
}

/// A list of this many rows is shown whole.
const MOST: usize = 400;

impl App {
    /// What is to be done before leaving until the day that is chosen or recorded.
    pub(super) fn leaving(&self, now: Moment) -> Leaving {
        let today = now.date_naive();
        let recorded = self.back_day(now).filter(|b| *b > today);
        let day = match recorded {
            Some(day) => day,
            None => match self.back_on(now) {
                Ok(day) => day,
                Err(_) => return Leaving::default(),
            },
        };
        let pieces: Vec<&Piece> = self.pieces().collect();
        self.with_bench(now, |bench| before_leaving(&pieces, bench, day))
    }

    /// The list before leaving with what was ticked in its place.
    pub(super) fn leaving_rows(&self, now: Moment) -> Vec<LeavingView> {
        let leaving = self.leaving(now);
        let mut rows: Vec<LeavingView> = leaving
            .act
            .iter()
            .filter_map(|r| self.leaving_row(&r.piece, r.act, false, now))
            .collect();
        let mut done: Vec<_> = self
            .states
            .today
            .away
            .done
            .iter()
            .filter(|d| self.stands(&d.piece, &d.line))
            .collect();
        done.sort_by_key(|d| d.place);
        for d in done {
            let place = d.place.min(rows.len());
            if let Some(row) = self.leaving_row(&d.piece, d.act, true, now) {
                rows.insert(place, row);
            }
        }
        rows
    }

    fn leaving_row(
        &self,
        id: &PieceId,
        act: BeforeLeaving,
        done: bool,
        now: Moment,
    ) -> Option<LeavingView> {
        let piece = self.piece(id)?;
        let words = self.words();
        let mark = self.mark_of(id);
        let what = words.text(&format!("away-act-{}", act.key()));
        let wood = self.wood_of(piece);
        let stands = self.whereabouts(piece, now);
        Some(LeavingView {
            piece: id.clone(),
            text: words.with("away-act", &[("mark", mark.into()), ("act", what.into())]),
            note: if wood.is_empty() {
                stands
            } else {
                words.with(
                    "away-act-note",
                    &[("wood", wood.into()), ("stands", stands.into())],
                )
            },
            done,
            ticks: act != BeforeLeaving::FinishOrBag,
        })
    }

    /// Takes up the one list on the return, where there is one.
    pub(super) fn take_up_return(&mut self, now: Moment) {
        let pieces: Vec<&Piece> = self.pieces().collect();
        let order = self.with_bench(now, |bench| {
            let agenda = agenda(&pieces, bench);
            on_return(&agenda, bench)
                .map(|r| r.rows.into_iter().map(|row| row.piece).collect::<Vec<_>>())
        });
        if let Some(order) = order {
            self.states.today.away.order = order;
            self.states.today.away.returned = true;
        }
    }

    /// Away as it stands.
    #[must_use]
    pub fn away_view(&self, now: Moment) -> AwayView {
        let mut view = self.away_plain(now);
        view.list = self.drawn(view.list);
        view
    }

    /// The same without drawings.
    pub(super) fn away_plain(&self, now: Moment) -> AwayView {
        let words = self.words();
        let today = now.date_naive();
        let mut view = AwayView {
            title: words.text("away-title"),
            back: words.text("action-back"),
            ..AwayView::default()
        };
        let away = self.back_day(now);
        if let Some(back) = away {
            let day = self.dates(now).near(back);
            view.am_back = words.text("away-am-back");
            view.away_until = if back > today {
                words.with("today-away-until", &[("day", day.into())])
            } else {
                words.with("away-was-until", &[("day", day.into())])
            };
        }
        if self.states.today.away.returned {
            self.fill_return(&mut view, now);
            return view;
        }
        if away.is_none_or(|back| back <= today) {
            self.fill_choice(&mut view, now);
        }
        self.fill_leaving(&mut view, now);
        view
    }

    fn fill_return(&self, view: &mut AwayView, now: Moment) {
        let words = self.words();
        let order = &self.states.today.away.order;
        let pieces: Vec<&Piece> = self.pieces().collect();
        self.with_bench(now, |bench| {
            let agenda = agenda(&pieces, bench);
            let due = Self::main_tasks(Self::due_tasks(&agenda), order);
            let rows = self.kept_in_order("return", order, &due, bench);
            let group = Group::of("return", None, rows, MOST);
            view.title = words.text("today-back");
            view.away_until.clear();
            view.return_title = words.text("away-return");
            view.list = self.listed(vec![group], bench);
            if due.is_empty() {
                view.all_done = words.text("catch-up-all-done");
            } else {
                view.intro = words.with("today-back-note", &[("n", due.len().into())]);
            }
        });
    }

    fn fill_choice(&self, view: &mut AwayView, now: Moment) {
        let words = self.words();
        let state = &self.states.today.away;
        view.intro = words.text("away-intro");
        view.when = words.text("away-when");
        view.choices = BackChoice::ALL
            .into_iter()
            .map(|c| TickView {
                key: c.key(),
                text: words.text(&format!("away-back-{}", c.key())),
                on: c == state.choice,
            })
            .collect();
        view.typing = state.choice == BackChoice::Typed;
        view.day_label = words.text("away-day");
        view.day_hint = words.text("away-day-hint");
        view.clear = words.text("action-clear");
        view.typed.clone_from(&state.typed);
        view.error.clone_from(&state.error);
        view.leave = match self.back_on(now) {
            Ok(day) => words.with("away-leave", &[("day", self.dates(now).near(day).into())]),
            Err(_) => words.text("away-leave-typed"),
        };
    }

    fn fill_leaving(&self, view: &mut AwayView, now: Moment) {
        let words = self.words();
        let leaving = self.leaving(now);
        view.act = self.leaving_rows(now);
        if view.act.is_empty() {
            view.nothing = words.text("away-nothing");
        } else {
            view.act_title = words.text("away-act-title");
        }
        let marks = |of: &[PieceId]| {
            let marks: Vec<String> = of.iter().map(|id| self.mark_of(id)).collect();
            marks.join(", ")
        };
        // A ticked one stands in the list above already.
        let ticked = |id: &&PieceId| view.act.iter().all(|r| r.piece != **id);
        let wait: Vec<PieceId> = leaving.may_wait.iter().filter(ticked).cloned().collect();
        let fine: Vec<PieceId> = leaving.fine.iter().filter(ticked).cloned().collect();
        if !wait.is_empty() {
            view.wait_title = words.text("away-wait-title");
            view.wait = marks(&wait);
        }
        if !fine.is_empty() {
            view.fine_title = words.text("away-fine-title");
            view.fine = marks(&fine);
        }
    }
}
