//! Hands the bag round and the weigh round to Slint, and their touches to the app.

use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::numbers::keypad::Key;
use evenwall_app::route::Page;
use evenwall_app::today::{BagAction, CountView, Seen, TodayAction, WeighAction};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::BagFeel;
use evenwall_ui::{AppWindow, BagRoundAdapter, CountRow, WeighRoundAdapter, WeighRow};
use slint::{ComponentHandle, SharedString};

use super::models::fill;
use super::today::{answer, tick};
use super::visible::Shown as _;
use super::{Screens, on, on_touch};

/// Connects the callbacks of both rounds.
pub fn connect(screens: &Rc<Screens>) {
    connect_bag_round(screens);
    connect_weigh_round(screens);
}

fn connect_bag_round(screens: &Rc<Screens>) {
    let page = screens.window.global::<BagRoundAdapter>();
    let bag = |action| Action::Today(TodayAction::Bag(action));
    page.on_back(on_touch(screens, || Action::Back));
    page.on_answered(on(screens, move |key: SharedString| {
        BagFeel::from_key(&key).map(|feel| bag(BagAction::Answer(feel)))
    }));
    page.on_ticked(on(screens, move |key: SharedString| {
        Seen::from_key(&key).map(|seen| bag(BagAction::Tick(seen)))
    }));
    page.on_skipped(on_touch(screens, move || bag(BagAction::Skip)));
    page.on_not_there(on_touch(screens, move || bag(BagAction::CantFind)));
    page.on_asked_all_damp(on_touch(screens, move || bag(BagAction::AskAllDamp)));
    page.on_undone(on_touch(screens, move || bag(BagAction::Undo)));
    let weak = std::rc::Rc::downgrade(screens);
    page.on_photo_wanted(move || {
        if let Some(screens) = weak.upgrade()
            && let Some(action) = screens.read(|app| app.bag_round_photo())
        {
            screens.act(action);
        }
    });
    page.on_look_again(on_touch(screens, move || bag(BagAction::Again)));
    page.on_opened(on(screens, |id: SharedString| {
        PieceId::new(&id)
            .ok()
            .map(|id| Action::Open(Page::Flaw(id, None)))
    }));
}

fn connect_weigh_round(screens: &Rc<Screens>) {
    let page = screens.window.global::<WeighRoundAdapter>();
    let weigh = |action| Action::Today(TodayAction::Weigh(action));
    page.on_back(on_touch(screens, || Action::Back));
    page.on_picked(on(screens, move |id: SharedString| {
        PieceId::new(&id)
            .ok()
            .map(|id| weigh(WeighAction::Pick(id)))
    }));
    page.on_screen_key(on(screens, move |key: SharedString| {
        let pressed = match key.as_str() {
            "back" => Key::Backspace,
            "next" => Key::Enter,
            key => match key.chars().next()?.to_digit(10) {
                Some(digit) => Key::Digit(u8::try_from(digit).ok()?),
                None => Key::Point,
            },
        };
        Some(weigh(WeighAction::Key(pressed)))
    }));
    let of_keyboard = Rc::downgrade(screens);
    page.on_typed_key(move |text| {
        let Some(screens) = of_keyboard.upgrade() else {
            return false;
        };
        let Some(key) = screens.read(|app| app.weigh_key_typed(&text)) else {
            return false;
        };
        screens.act(weigh(WeighAction::Key(key)));
        true
    });
    page.on_take_pounds(on_touch(screens, move || weigh(WeighAction::Pounds)));
    page.on_skipped(on_touch(screens, move || weigh(WeighAction::Skip)));
    page.on_tare_toggled(on_touch(screens, move || weigh(WeighAction::Tare)));
    page.on_undone(on_touch(screens, move || weigh(WeighAction::Undo)));
}

fn count(view: CountView) -> CountRow {
    CountRow {
        text: view.text.into(),
        value: view.value.into(),
        icon: view.icon.into(),
        piece: view.piece.into(),
    }
}

/// Shows the bag round.
pub fn show_bag_round(window: &AppWindow, app: &App, now: Moment) {
    let view = app.bag_round_view(now);
    let page = window.global::<BagRoundAdapter>();
    page.set_title(view.title.shown());
    page.set_back_label(view.back.into());
    page.set_progress(view.progress.into());
    #[allow(clippy::cast_possible_truncation)] // 0 to 1
    page.set_part(view.part as f32);
    page.set_mark(view.mark.shown());
    page.set_wood(view.wood.shown());
    page.set_place(view.place.shown());
    page.set_stands(view.stands.shown());
    page.set_late(view.late.into());
    page.set_question(view.question.into());
    page.set_answers(fill(
        page.get_answers(),
        view.answers.into_iter().map(answer).collect(),
    ));
    page.set_ticks(fill(
        page.get_ticks(),
        view.ticks.into_iter().map(tick).collect(),
    ));
    page.set_skip(view.skip.into());
    page.set_cant_find(view.cant_find.into());
    page.set_all_damp(view.all_damp.into());
    page.set_undo_said(view.undo_said.into());
    page.set_undo(view.undo.into());
    page.set_photo(view.photo.into());
    page.set_ended(view.ended);
    page.set_end_title(view.end_title.into());
    page.set_counts(fill(
        page.get_counts(),
        view.counts.into_iter().map(count).collect(),
    ));
    page.set_to_do_title(view.to_do_title.into());
    page.set_to_do(fill(
        page.get_to_do(),
        view.to_do.into_iter().map(count).collect(),
    ));
    page.set_again(view.again.into());
    page.set_done(view.done.into());
    page.set_turn(i32::try_from(app.bag_round_turn()).unwrap_or(0));
}

/// Shows the weigh round.
pub fn show_weigh_round(window: &AppWindow, app: &App, now: Moment) {
    let view = app.weigh_round_view(now);
    let page = window.global::<WeighRoundAdapter>();
    page.set_title(view.title.shown());
    page.set_back_label(view.back.into());
    page.set_progress(view.progress.into());
    let at = view.rows.iter().position(|r| r.state == "now");
    page.set_rows(fill(
        page.get_rows(),
        view.rows
            .into_iter()
            .map(|r| WeighRow {
                piece: r.piece.into(),
                label: r.label.into(),
                mark: r.mark.shown(),
                wood: r.wood.shown(),
                last: r.last.into(),
                weight: r.weight.into(),
                change: r.change.into(),
                state: r.state.into(),
            })
            .collect(),
    ));
    page.set_at(at.and_then(|i| i32::try_from(i).ok()).unwrap_or(-1));
    page.set_of(view.of.into());
    page.set_of_last(view.of_last.into());
    page.set_typed(view.typed.into());
    page.set_unit(view.unit.into());
    page.set_error(view.error.into());
    page.set_tare(view.tare.into());
    page.set_tare_on(view.tare_on);
    page.set_next(view.next.into());
    page.set_back_key(view.back_key.into());
    page.set_point(view.point.into());
    page.set_pounds(view.pounds.into());
    page.set_can_pounds(view.can_pounds);
    page.set_skip(view.skip.into());
    page.set_undo_said(view.undo_said.into());
    page.set_undo(view.undo.into());
    page.set_ended(view.ended.into());
    page.set_done(view.done.text.into());
}
