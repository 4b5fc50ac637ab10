//! Hands the wall pages to Slint and their touches to the app.

mod outline;
mod result;

use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::wall::{
    AskView, BarView, Spot, WallAction, WallSheet, WallView, station_from_key, typed,
};
use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::{Taken, WallFeel};
use evenwall_ui::{AppWindow, Choice, StationMark, WallAdapter, WallAnswer, WallBar, WallFact};
use slint::{ComponentHandle, SharedString};

use super::drawing::paths;
use super::models::fill;
use super::{Screens, on, on_touch};

fn wall(action: WallAction) -> Action {
    Action::Wall(action)
}

/// Lets callipers type: gives back whether the key was the page's.
fn type_key(screens: &Rc<Screens>) -> impl FnMut(SharedString, bool) -> bool + 'static {
    let screens = Rc::downgrade(screens);
    move |text, typing| match (screens.upgrade(), typed(&text, typing)) {
        (Some(screens), Some(action)) => {
            screens.act(wall(action));
            true
        }
        _ => false,
    }
}

/// A callback at a spot.
fn at_spot(
    screens: &Rc<Screens>,
    make: impl Fn(Spot, SharedString) -> Option<WallAction> + 'static,
) -> impl FnMut(SharedString, SharedString) + 'static {
    let screens = Rc::downgrade(screens);
    move |spot, text| {
        let action = Spot::from_key(&spot).and_then(|spot| make(spot, text));
        if let (Some(screens), Some(action)) = (screens.upgrade(), action) {
            screens.act(wall(action));
        }
    }
}

/// Connects the callbacks of the adapters.
pub fn connect(screens: &Rc<Screens>) {
    connect_wall(screens);
    result::connect(screens);
    outline::connect(screens);
}

fn connect_wall(screens: &Rc<Screens>) {
    let adapter = screens.window.global::<WallAdapter>();
    adapter.on_back(on_touch(screens, || Action::Back));
    adapter.on_finished(on_touch(screens, || wall(WallAction::Finish)));
    adapter.on_picked(on(screens, |key: SharedString| {
        station_from_key(&key).map(|s| wall(WallAction::Jump(s)))
    }));
    adapter.on_step(on(screens, |by: i32| {
        i8::try_from(by).ok().map(|by| wall(WallAction::Step(by)))
    }));
    adapter.on_open_sheet(on(screens, |key: SharedString| {
        let sheet = WallSheet::ALL.into_iter().find(|s| s.key() == key.as_str());
        sheet.map(|s| wall(WallAction::OpenSheet(s)))
    }));
    adapter.on_close_sheet(on_touch(screens, || wall(WallAction::CloseSheet)));
    let weak = Rc::downgrade(screens);
    adapter.on_sheet_row(move |which, id| {
        let action = match which.as_str() {
            "section" => station_from_key(&id).map(WallAction::ToggleSection),
            "taken" => Taken::from_key(&id).map(WallAction::HowTaken),
            "places" => id.parse().ok().map(WallAction::Places),
            _ => None,
        };
        if let (Some(screens), Some(action)) = (weak.upgrade(), action) {
            screens.act(wall(action));
        }
    });
    adapter.on_whole_round(on_touch(screens, || wall(WallAction::WholeRound)));
    adapter.on_choose_floor_way(on(screens, |way: SharedString| {
        Some(wall(WallAction::FloorByDepth(way == "depth")))
    }));
    adapter.on_quick_key(at_spot(screens, |spot, text| {
        Some(WallAction::Quick(spot, text.into()))
    }));
    adapter.on_feel_key(at_spot(screens, |spot, key| {
        WallFeel::from_key(&key).map(|feel| WallAction::Feel(spot, feel))
    }));
    adapter.on_cant(on(screens, |spot: SharedString| {
        Spot::from_key(&spot).map(|spot| wall(WallAction::CantReach(spot)))
    }));
    adapter.on_skip_key(on_touch(screens, || wall(WallAction::Skip)));
    adapter.on_other_key(on(screens, |open: bool| {
        Some(wall(WallAction::Other(open)))
    }));
    adapter.on_keypad_key(on(screens, |key: SharedString| {
        Some(wall(WallAction::Key(key.into())))
    }));
    adapter.on_typed(type_key(screens));
    adapter.on_answer(on(screens, |id: SharedString| {
        Some(wall(WallAction::Answer(id.into())))
    }));
    adapter.on_undo_key(on_touch(screens, || Action::Undo));
    adapter.on_redo_key(on_touch(screens, || Action::Redo));
}

/// Shows the page with this key.
pub fn show(window: &AppWindow, app: &App, page: &str, now: Moment) {
    match page {
        "wall" => show_wall(window, app, now),
        "wall-summary" => result::show(window, app, now),
        _ => outline::show(window, app, now),
    }
}

#[allow(clippy::cast_possible_truncation)] // millimetres and parts of a whole
fn f(number: f64) -> f32 {
    number as f32
}

fn bar(b: BarView) -> WallBar {
    WallBar {
        zero: f(b.zero),
        band_from: f(b.band_from),
        band_to: f(b.band_to),
        from: f(b.from),
        to: f(b.to),
        shown: b.shown,
    }
}

fn choice(id: String, text: String, note: String, selected: bool) -> Choice {
    Choice {
        id: id.into(),
        text: text.into(),
        note: note.into(),
        icon: SharedString::default(),
        selected,
    }
}

fn answers(ask: &AskView) -> Vec<WallAnswer> {
    let answers = ask.answers.iter();
    answers
        .map(|a| WallAnswer {
            id: a.id.as_str().into(),
            text: a.text.as_str().into(),
            primary: a.primary,
        })
        .collect()
}

fn show_wall(window: &AppWindow, app: &App, now: Moment) {
    let Some(view) = app.wall_view(now) else {
        return;
    };
    let a = window.global::<WallAdapter>();
    a.set_mark_keys(fill(
        a.get_mark_keys(),
        view.marks.iter().map(|m| m.key.as_str().into()).collect(),
    ));
    let marks = view.marks.iter().map(|m| StationMark {
        number: m.number.as_str().into(),
        label: m.label.as_str().into(),
        inner_x: f(m.inner.0),
        inner_y: f(m.inner.1),
        outer_x: f(m.outer.0),
        outer_y: f(m.outer.1),
        slot: f(m.slot),
        state: m.state.into(),
        value: m.value.as_str().into(),
        kind: m.kind.into(),
        verdict: m.verdict.as_str().into(),
    });
    a.set_marks(fill(a.get_marks(), marks.collect()));
    show_panel(&a, &view);
    a.set_paths(paths(view.drawing));
    let feels = view.feels.into_iter();
    a.set_feels(fill(
        a.get_feels(),
        feels
            .map(|k| choice(k.key.into(), k.text, String::new(), false))
            .collect(),
    ));
    a.set_quick(fill(
        a.get_quick(),
        view.quick.into_iter().map(Into::into).collect(),
    ));
    a.set_floor_ways(fill(
        a.get_floor_ways(),
        view.floor_ways
            .into_iter()
            .map(|w| choice(w.label, w.value, String::new(), false))
            .collect(),
    ));
    if let Some(ask) = &view.ask {
        a.set_answers(fill(a.get_answers(), answers(ask)));
    }
    let ask = view.ask.unwrap_or_default();
    a.set_ask_text(ask.text.into());
    a.set_ask_title(ask.title.into());
    if let Some(sheet) = view.sheet {
        a.set_sheet_title(sheet.title.into());
        a.set_sheet_text(sheet.text.into());
        a.set_sheet_button(sheet.button.into());
        a.set_sheet_second(sheet.second.into());
        a.set_sheet_rows(fill(
            a.get_sheet_rows(),
            sheet
                .rows
                .into_iter()
                .map(|r| choice(r.id, r.text, r.note, r.selected))
                .collect(),
        ));
        a.set_sheet(sheet.key.into());
    } else {
        a.set_sheet(SharedString::default());
    }
}

fn show_panel(a: &WallAdapter<'_>, view: &WallView) {
    let text = |t: &str| SharedString::from(t);
    a.set_mark(text(&view.mark));
    a.set_title(text(&view.title));
    a.set_subtitle(text(&view.subtitle));
    a.set_finish(text(&view.finish));
    a.set_drawing_label(text(&view.drawing_label));
    a.set_spot(text(&view.spot));
    a.set_station(text(&view.station));
    a.set_station_note(text(&view.station_note));
    a.set_progress(text(&view.progress));
    a.set_number(text(&view.number));
    a.set_typing(view.typing);
    a.set_known(view.known);
    a.set_meaning(text(&view.meaning));
    a.set_kind(view.kind.into());
    a.set_verdict(text(&view.verdict));
    a.set_bar(bar(view.bar));
    a.set_when(text(&view.when));
    let facts = view.facts.iter().map(|r| WallFact {
        label: text(&r.label),
        value: text(&r.value),
    });
    a.set_facts(fill(a.get_facts(), facts.collect()));
    a.set_section(text(&view.section));
    a.set_section_label(text(&view.section_label));
    a.set_taken(text(&view.taken));
    a.set_can_choose_taken(view.can_choose_taken);
    a.set_places(text(&view.places));
    a.set_places_hint(view.places_hint);
    a.set_hint(text(&view.hint));
    a.set_round(text(&view.round));
    a.set_floor_way(view.floor_way.into());
    a.set_quick_now(text(&view.quick_now));
    a.set_other(text(&view.other));
    a.set_fewer(text(&view.fewer));
    a.set_skip(text(&view.skip));
    a.set_cant_reach(text(&view.cant_reach));
    a.set_undo(text(&view.undo));
    a.set_can_undo(view.can_undo);
    a.set_redo(text(&view.redo));
    a.set_status_kind(view.status.kind.into());
    a.set_status(text(&view.status.text));
    a.set_keypad(view.keypad);
    a.set_fractions(view.fractions);
    a.set_next(text(&view.next));
    a.set_whole(text(&view.whole));
    a.set_close(text(&view.close));
    a.set_back_label(text(&view.back));
}
