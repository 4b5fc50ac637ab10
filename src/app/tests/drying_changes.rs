//! Promises of changes that are not drying: glue, wax, a re-cut, bark lost.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_drying;

use evenwall_app::action::Action;
use evenwall_app::drying::DryingAction;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::vocabulary::MassChange;
use support_drying::{Loft, id};

#[test]
fn something_changed_records_change_and_weight_in_one_line() {
    let mut loft = Loft::weighed(&[("2026-02-05", 815.0), ("2026-03-05", 800.0)]);
    let before = loft.view();
    loft.scale();
    loft.types("830\n");
    loft.answer("changed");
    loft.answer("wax");
    assert_eq!(loft.weights(), [815.0, 800.0, 830.0]);
    assert_eq!(loft.piece().mass_changes.len(), 1);
    assert_eq!(loft.piece().mass_changes[0].1, MassChange::Wax);
    let last: Vec<_> = loft.piece().diary.iter().rev().take(2).collect();
    assert_eq!(last[0].entry.line, last[1].entry.line);
    assert_eq!(
        loft.said(),
        "K07: 830\u{a0}g after wax. A new curve begins."
    );
    // The new weight stands on its own curve.
    let chart = loft.view().chart.unwrap();
    assert_eq!(chart.line.matches('M').count(), 2);
    assert_eq!(chart.breaks.len(), 1);
    assert_eq!(chart.breaks[0].text, "wax");
    loft.act(Action::Undo);
    assert_eq!(loft.view(), before, "one undo takes both back");
}

#[test]
fn a_change_noted_by_itself_starts_a_new_curve_and_can_be_undone() {
    let mut loft = Loft::weighed(&[("2026-02-26", 840.0), ("2026-03-05", 834.0)]);
    let before = loft.view();
    loft.drying(DryingAction::More(true));
    let more = loft.view().more.unwrap();
    assert_eq!(more.changes.len(), 5);
    loft.drying(DryingAction::MassChanged(id(), MassChange::Recut));
    let view = loft.view();
    assert!(view.more.is_none());
    assert!(view.last.note.contains("new curve"), "{}", view.last.note);
    assert!(view.figures.is_empty() && view.staying.is_none());
    assert_eq!(
        view.breaks,
        ["today: Re-cut. Weights before and after are not compared."]
    );
    loft.scale();
    assert_eq!(
        loft.weigh().last,
        "Last 834\u{a0}g, 7 days ago. Not compared: re-cut since."
    );
    // Nothing to compare it with: no question, however far off.
    loft.types("610\n");
    assert_eq!(loft.weights(), [840.0, 834.0, 610.0]);
    loft.act(Action::Undo);
    loft.act(Action::Undo);
    assert_eq!(loft.view(), before);
}

#[test]
fn the_change_that_cannot_be_kept_is_tried_again() {
    let mut loft = Loft::weighed(&[("2026-02-26", 840.0)]);
    loft.fail(true);
    loft.drying(DryingAction::MassChanged(id(), MassChange::Glue));
    assert!(loft.app.save_error().is_some());
    assert!(loft.piece().mass_changes.is_empty());
    loft.fail(false);
    loft.act(Action::TryAgain);
    assert_eq!(loft.piece().mass_changes.len(), 1);
    assert!(matches!(
        loft.piece().diary.last().unwrap().fact,
        PieceFact::MassChanged(MassChange::Glue)
    ));
}
