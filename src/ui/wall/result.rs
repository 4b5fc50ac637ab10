//! Hands the result of measuring to Slint and its touches to the app.

use crate::ui::visible::Shown as _;
use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::route::Page;
use evenwall_app::wall::{MeasuresView, WallAction, WallSum, station_from_key};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_ui::{AppWindow, MeasureItem, SummaryItem, TakeOffItem, WallSummaryAdapter};
use slint::{ComponentHandle, SharedString};

use super::{bar, wall};
use crate::ui::drawing::paths;
use crate::ui::models::fill;
use crate::ui::{Screens, on, on_touch};

/// Connects the callbacks.
pub(super) fn connect(screens: &Rc<Screens>) {
    let adapter = screens.window.global::<WallSummaryAdapter>();
    adapter.on_back(on_touch(screens, || Action::Back));
    adapter.on_picked(on(screens, |key: SharedString| {
        station_from_key(&key).map(|s| wall(WallAction::Measure(s)))
    }));
    adapter.on_take_best(on_touch(screens, || wall(WallAction::TakeBestWall)));
    adapter.on_leave_thin(on_touch(screens, || wall(WallAction::LeaveThin)));
    adapter.on_open_sum(on(screens, |which: SharedString| match which.as_str() {
        "drying" => Some(wall(WallAction::OpenSum(WallSum::Drying))),
        "weight" => Some(wall(WallAction::OpenSum(WallSum::Weight))),
        _ => None,
    }));
    adapter.on_close_sum(on_touch(screens, || wall(WallAction::CloseSum)));
    adapter.on_supply(on_touch(screens, || wall(WallAction::Supply)));
    adapter.on_whole_round(on_touch(screens, || wall(WallAction::WholeRound)));
    let weak = Rc::downgrade(screens);
    adapter.on_primary_key(move || {
        if let Some(screens) = weak.upgrade() {
            let adapter = screens.window.global::<WallSummaryAdapter>();
            let action = match (adapter.get_goes_on(), page_piece(&screens)) {
                (true, _) => wall(WallAction::GoOn),
                (false, Some(id)) => Action::Open(Page::Wall(id)),
                (false, None) => return,
            };
            screens.act(action);
        }
    });
    let weak = Rc::downgrade(screens);
    adapter.on_open_outline(move || {
        if let Some(screens) = weak.upgrade()
            && let Some(id) = page_piece(&screens)
        {
            screens.act(Action::Open(Page::Outline(id)));
        }
    });
}

fn page_piece(screens: &Screens) -> Option<PieceId> {
    screens.read(|app| app.route().page().and_then(Page::piece).cloned())
}

fn measures(a: &WallSummaryAdapter<'_>, view: MeasuresView) {
    a.set_measures_title(view.title.into());
    let rows = view.rows.into_iter().map(|r| MeasureItem {
        label: r.label.into(),
        value: r.value.into(),
    });
    a.set_measures(fill(a.get_measures(), rows.collect()));
    a.set_weight_label(view.weight_label.into());
    a.set_weight(view.weight.into());
    a.set_weight_note(view.weight_note.shown());
    a.set_measures_text(view.text.into());
    a.set_measures_alarming(view.alarming);
    a.set_way(view.way.into());
}

/// Shows the result.
pub(super) fn show(window: &AppWindow, app: &App, now: Moment) {
    let Some(view) = app.wall_summary_view(now) else {
        return;
    };
    let a = window.global::<WallSummaryAdapter>();
    a.set_mark(view.mark.shown());
    a.set_title(view.title.shown());
    a.set_subtitle(view.subtitle.shown());
    a.set_spread_label(view.spread_label.into());
    a.set_spread(view.spread.into());
    a.set_unit(view.unit.into());
    a.set_read(view.read.into());
    a.set_paths(paths(view.drawing));
    a.set_bar_label(view.bar_label.into());
    let rows = view.rows.into_iter().map(|r| SummaryItem {
        key: r.key.into(),
        number: r.number.into(),
        name: r.name.shown(),
        reading: r.reading.into(),
        how: r.how.into(),
        kind: r.kind.into(),
        verdict: r.verdict.into(),
        bar: bar(r.bar),
        dashed: r.dashed,
        note: r.note.into(),
        label: r.label.into(),
    });
    a.set_rows(fill(a.get_rows(), rows.collect()));
    a.set_take_off_title(view.take_off_title.into());
    a.set_take_off_order(view.take_off_order.into());
    let take_off = view.take_off.into_iter().map(|t| TakeOffItem {
        key: t.key.into(),
        station: t.station.into(),
        name: t.name.shown(),
        text: t.text.into(),
    });
    a.set_take_off(fill(a.get_take_off(), take_off.collect()));
    a.set_nothing(view.nothing.into());
    a.set_thin_title(view.thin_title.into());
    a.set_thin_text(view.thin_text.into());
    a.set_alarming(view.alarming);
    a.set_best_wall(view.best_wall.into());
    a.set_leave(view.leave.into());
    a.set_alone(fill(
        a.get_alone(),
        view.alone.into_iter().map(Into::into).collect(),
    ));
    a.set_short(view.short.into());
    measures(&a, view.measures);
    a.set_drying_title(view.drying_title.into());
    a.set_drying(view.drying.into());
    a.set_sum_open(view.sum.is_some());
    // A sheet that closes keeps its text while it goes.
    if let Some(sum) = view.sum {
        a.set_sum_title(sum.title.into());
        a.set_sum_line(sum.line.shown());
        a.set_sum_why(sum.why.shown());
        a.set_sum_source(sum.source.shown());
    }
    a.set_close_text(view.close.into());
    a.set_even(view.even.into());
    a.set_primary(view.primary.into());
    a.set_goes_on(view.goes_on);
    a.set_round(view.round.into());
    a.set_outline(view.outline.into());
    a.set_back_label(view.back.into());
}
