//! Hands the outline page to Slint and its touches to the app.

use crate::ui::visible::Shown as _;
use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::wall::WallAction;
use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::Outline;
use evenwall_ui::{AppWindow, DiameterItem, OutlineAdapter, OutlineItem};
use slint::{ComponentHandle, SharedString};

use super::{answers, type_key, wall};
use crate::ui::drawing::paths;
use crate::ui::models::fill;
use crate::ui::{Screens, on, on_touch};

/// Connects the callbacks.
pub(super) fn connect(screens: &Rc<Screens>) {
    let adapter = screens.window.global::<OutlineAdapter>();
    let station = |n: i32, make: fn(u8) -> WallAction| u8::try_from(n).ok().map(|n| wall(make(n)));
    adapter.on_back(on_touch(screens, || Action::Back));
    adapter.on_picked(on(screens, |key: SharedString| {
        Outline::from_key(&key).map(|o| wall(WallAction::PickOutline(o)))
    }));
    adapter.on_edit(on(screens, move |n| station(n, WallAction::EditDiameter)));
    adapter.on_back_to_shape(on(screens, move |n| station(n, WallAction::ShapeDiameter)));
    adapter.on_close_entry(on_touch(screens, || wall(WallAction::CloseDiameter)));
    adapter.on_keypad_key(on(screens, |key: SharedString| {
        Some(wall(WallAction::Key(key.into())))
    }));
    adapter.on_typed(type_key(screens));
    adapter.on_answer(on(screens, |id: SharedString| {
        Some(wall(WallAction::Answer(id.into())))
    }));
    adapter.on_lay_out_again(on_touch(screens, || wall(WallAction::LayOut)));
}

/// Shows the outline page.
pub(super) fn show(window: &AppWindow, app: &App, now: Moment) {
    let Some(view) = app.outline_view(now) else {
        return;
    };
    let a = window.global::<OutlineAdapter>();
    a.set_mark(view.mark.shown());
    a.set_title(view.title.shown());
    a.set_subtitle(view.subtitle.shown());
    a.set_outlines_title(view.outlines_title.into());
    let outlines = view.outlines.into_iter().map(|o| OutlineItem {
        key: o.key.into(),
        text: o.text.into(),
        paths: paths(o.drawing),
        selected: o.selected,
    });
    a.set_outlines(fill(a.get_outlines(), outlines.collect()));
    a.set_diameters_title(view.diameters_title.into());
    a.set_diameters_text(view.diameters_text.into());
    let diameters = view.diameters.into_iter().map(|d| DiameterItem {
        station: d.station.into(),
        name: d.name.shown(),
        value: d.value.into(),
        note: d.note.into(),
        measured: d.measured,
    });
    a.set_diameters(fill(a.get_diameters(), diameters.collect()));
    a.set_diameters_kept(view.diameters_kept.into());
    a.set_stations_title(view.stations_title.into());
    a.set_stations_text(view.stations_text.into());
    a.set_lay_out_text(view.lay_out_text.into());
    a.set_lay_out(view.lay_out.into());
    a.set_edit_title(view.edit_title.into());
    a.set_number(view.number.into());
    a.set_unit(view.unit.into());
    a.set_typing(view.typing);
    a.set_from_shape(view.from_shape.into());
    a.set_save(view.save.into());
    a.set_whole(view.whole.into());
    a.set_fractions(view.fractions);
    if let Some(ask) = &view.ask {
        a.set_answers(fill(a.get_answers(), answers(ask)));
    }
    let ask = view.ask.unwrap_or_default();
    a.set_ask_text(ask.text.into());
    a.set_ask_title(ask.title.into());
    a.set_close(view.close.into());
    a.set_back_label(view.back.into());
    a.set_editing(view.editing.into());
}
