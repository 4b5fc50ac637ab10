//! Due: the tasks of one piece on one day.
//!
//! A look is due at the local date of the last one (its own offset) plus its days, compared with today's local date, so
//! that neither daylight saving nor a journey nor a clock set back moves it. A missed look stays until answered, paused
//! or the piece ends.

use chrono::NaiveDate;

use super::bench::Bench;
use super::calendar::{days_after, days_from_to, wait_for_return};
use super::offer::offer;
use super::standing::{Standing, standing};
use super::task::{Nudge, Task, TaskKind, Urgency, Why};
use super::weighing::weighing;
use crate::bag::{BagState, Wait};
use crate::piece::Piece;
use crate::rhythm::RhythmOf;

/// True while no reminders are wanted: paused without a day, or until a day that is still ahead.
#[must_use]
pub fn is_paused(piece: &Piece, today: NaiveDate) -> bool {
    piece
        .paused
        .is_some_and(|(_, until)| until.is_none_or(|day| day > today))
}

/// A day with the end of a pause and the days away applied, and whether the days away moved it.
pub(crate) fn settled(due: NaiveDate, piece: &Piece, bench: &Bench) -> (NaiveDate, bool) {
    // Until reminders start again nothing was due.
    let resumed = piece.paused.and_then(|(_, until)| until);
    let due = resumed.map_or(due, |day| due.max(day));
    let waited = wait_for_return(due, bench.days_away(), bench.today);
    (waited, waited != due)
}

fn task(piece: &Piece, bench: &Bench, kind: TaskKind, due: NaiveDate, why: Why) -> Task {
    Task {
        piece: piece.id.clone(),
        kind,
        due,
        days_late: days_from_to(due, bench.today).max(0),
        urgency: Urgency::WhenYouLike,
        why,
        last: None,
        dated_ahead: None,
        is_next_look: false,
        also_weigh: false,
        fell_due_away: false,
    }
}

fn graded(mut task: Task, late: Urgency) -> Task {
    if task.is_late() {
        task.urgency = late;
    }
    task
}

/// How much a late look matters by the state of the bag.
fn late_look(state: BagState) -> Urgency {
    if state == BagState::Closed {
        Urgency::Serious
    } else {
        Urgency::Soon
    }
}

/// All that one piece asks for, offers of a stage included; duplicate marks need the other pieces and are added by
/// [`super::agenda`]. At most one task is the next look, and a living, unpaused piece in a drying stage has exactly one.
#[must_use]
pub fn tasks_of(piece: &Piece, bench: &Bench) -> Vec<Task> {
    let mut tasks = Vec::new();
    if !piece.living() {
        return tasks;
    }
    let today = bench.today;
    if piece.came_back {
        let why = Why::RecordedAfterDeletion;
        tasks.push(task(piece, bench, TaskKind::CameBack, today, why));
    }
    if is_paused(piece, today) {
        return tasks;
    }
    let standing = standing(piece, bench);
    if let Some(lost) = find(piece, bench, standing.as_ref()) {
        tasks.push(lost);
        return tasks;
    }
    flaw_looks(piece, bench, &mut tasks);
    if let Some(waiting) = half_turned(piece, bench, standing.is_some()) {
        tasks.push(waiting);
        return tasks;
    }
    if let Some(standing) = standing {
        looks_and_weighings(piece, bench, &standing, &mut tasks);
        if let Some((stage, why)) = offer(piece, bench, &standing) {
            tasks.push(task(piece, bench, TaskKind::OfferStage(stage), today, why));
        }
    }
    tasks
}

fn find(piece: &Piece, bench: &Bench, standing: Option<&Standing>) -> Option<Task> {
    let since = piece.not_found?.date_naive().min(bench.today);
    let (due, away) = match standing {
        Some(s) => next_look_due(piece, bench, s),
        None => (since, false),
    };
    let mut t = task(piece, bench, TaskKind::Find, due, Why::NotFoundOn(since));
    t.is_next_look = standing.is_some();
    t.fell_due_away = away;
    Some(graded(
        t,
        standing.map_or(Urgency::Soon, |s| late_look(s.state)),
    ))
}

fn half_turned(piece: &Piece, bench: &Bench, drying: bool) -> Option<Task> {
    let since = piece.half_turned?.date_naive().min(bench.today);
    let (nudge, due) = if since == bench.today {
        (Nudge::Evening, since)
    } else {
        (Nudge::Morning, days_after(since, 1))
    };
    let kind = TaskKind::HalfTurned(nudge);
    let mut t = task(piece, bench, kind, due, Why::LeftHalfTurned);
    t.urgency = Urgency::Soon;
    t.is_next_look = drying;
    t.last = Some(since);
    // Wet wood half-hollowed moves by the day.
    Some(graded(t, Urgency::Serious))
}

fn flaw_looks(piece: &Piece, bench: &Bench, tasks: &mut Vec<Task>) {
    for flaw in &piece.flaws {
        if let Some(day) = flaw.look_again() {
            let (due, away) = settled(day, piece, bench);
            let kind = TaskKind::FlawLook(flaw.note.flaw.clone());
            let mut t = task(piece, bench, kind, due, Why::LookAgainDay);
            t.last = flaw.last_treatment().map(|(at, _)| at.date_naive());
            t.fell_due_away = away;
            tasks.push(graded(t, Urgency::Soon));
        }
    }
}

/// The day of the one next look of a drying piece, with all applied, and whether the days away moved it.
pub(crate) fn next_look_due(piece: &Piece, bench: &Bench, s: &Standing) -> (NaiveDate, bool) {
    let due = match weighing(piece, bench, s).filter(|_| s.look_is_weighing(bench)) {
        Some(weighing) => weighing.due,
        None => s.due(piece, bench),
    };
    settled(due, piece, bench)
}

fn why_look(s: &Standing, days: u32) -> Why {
    match (s.anchor, s.wait, s.feel) {
        (None, ..) => Why::DatedAhead,
        (_, Wait::Mould, _) => Why::AfterMould,
        (_, Wait::First, _) => Why::FirstLook,
        (_, Wait::Wet | Wait::Damp | Wait::Nothing, Some(feel)) => Why::After(feel),
        _ => Why::Rhythm { every: days },
    }
}

fn looks_and_weighings(piece: &Piece, bench: &Bench, s: &Standing, tasks: &mut Vec<Task>) {
    let weigh = weighing(piece, bench, s).map(|w| {
        let (due, away) = settled(w.due, piece, bench);
        let mut t = task(piece, bench, TaskKind::Weigh, due, w.why);
        t.last = w.last;
        t.fell_due_away = away;
        t
    });
    let ahead = last_dated_ahead(piece, bench);
    if s.look_is_weighing(bench)
        && let Some(mut weigh) = weigh
    {
        weigh.is_next_look = true;
        weigh.dated_ahead = ahead;
        tasks.push(weigh);
        return;
    }
    let (due, away) = next_look_due(piece, bench, s);
    let kind = if s.state.is_felt() {
        TaskKind::Look
    } else {
        TaskKind::LookOver
    };
    let why = why_look(s, s.days(piece, bench));
    let mut look = graded(task(piece, bench, kind, due, why), late_look(s.state));
    look.is_next_look = true;
    look.fell_due_away = away;
    look.dated_ahead = ahead;
    look.last = s.anchor.filter(|_| s.answered).map(|m| m.date_naive());
    // Offered at each look of a bag, and wherever a rhythm of weighings is there to be begun.
    let offered = !bench.rhythm(s.of).weighings.is_empty() && weigh.is_none();
    look.also_weigh = bench.shop.weighs() && (s.of == RhythmOf::Bag || offered);
    if let Some(weigh) = weigh {
        let both_now = look.due <= bench.today && weigh.due <= bench.today;
        if both_now || look.due == weigh.due {
            look.also_weigh = true;
        } else {
            tasks.push(weigh);
        }
    }
    tasks.push(look);
}

/// The latest look or weighing dated after now, to be shown.
fn last_dated_ahead(piece: &Piece, bench: &Bench) -> Option<NaiveDate> {
    let look = piece.looks.last().map(|l| l.at);
    let weighed = piece.weighings.last().map(|w| w.at);
    look.into_iter()
        .chain(weighed)
        .filter(|at| *at > bench.now)
        .max()
        .map(|at| at.date_naive())
}
