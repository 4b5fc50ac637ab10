//! Hands Today, the rounds, Away and Catch-up to Slint, and their touches to the app.

use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::numbers::keypad::Key;
use evenwall_app::route::Page;
use evenwall_app::today::view::{AnswerView, ButtonView, CardView, ListView, RowView, TickView};
use evenwall_app::today::{
    AwayAction, BackChoice, BackDay, BagAction, CountView, Seen, TodayAction, WeighAction,
};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::BagFeel;
use evenwall_ui::{
    AppWindow, AwayAdapter, BagRoundAdapter, CatchUpAdapter, Choice, CountRow, LeavingRow,
    TaskButton, TaskCard, TaskRow, TodayAdapter, WeighRoundAdapter, WeighRow,
};
use slint::{ComponentHandle, ModelRc, SharedString};

use super::drawing::paths;
use super::models::fill;
use super::{Screens, on, on_touch};

/// Makes a callback of a row and a key.
fn on_row(
    screens: &Rc<Screens>,
    make: impl Fn(String, &str) -> Option<TodayAction> + 'static,
) -> impl FnMut(SharedString, SharedString) + 'static {
    let screens = Rc::downgrade(screens);
    move |row, key| {
        if let (Some(screens), Some(action)) = (screens.upgrade(), make(row.into(), &key)) {
            screens.act(Action::Today(action));
        }
    }
}

/// The callbacks of a list, alike on three pages.
macro_rules! connect_list {
    ($page:expr, $screens:expr) => {
        $page.on_touched(on($screens, |row: SharedString| {
            Some(Action::Today(TodayAction::Row(row.into())))
        }));
        $page.on_answered(on_row($screens, |row, answer| {
            Some(TodayAction::Answer {
                row,
                answer: answer.to_owned(),
            })
        }));
        $page.on_ticked(on_row($screens, |row, key| {
            Seen::from_key(key).map(|seen| TodayAction::Tick { row, seen })
        }));
        $page.on_day_chosen(on_row($screens, |row, key| {
            BackDay::from_key(key).map(|day| TodayAction::Day { row, day })
        }));
        $page.on_more(on_touch($screens, || Action::Today(TodayAction::More)));
        $page.on_pressed_button(on_row($screens, |row, key| {
            Some(TodayAction::Button {
                row,
                key: key.to_owned(),
            })
        }));
    };
}

/// Connects the callbacks of the adapters.
pub fn connect(screens: &Rc<Screens>) {
    let today = screens.window.global::<TodayAdapter>();
    connect_list!(today, screens);
    today.on_go(on(screens, |key: SharedString| {
        Some(Action::Today(TodayAction::Go(key.into())))
    }));
    let catch_up = screens.window.global::<CatchUpAdapter>();
    connect_list!(catch_up, screens);
    catch_up.on_back(on_touch(screens, || Action::Back));
    connect_away(screens);
    connect_bag_round(screens);
    connect_weigh_round(screens);
}

fn connect_away(screens: &Rc<Screens>) {
    let page = screens.window.global::<AwayAdapter>();
    connect_list!(page, screens);
    let away = |action| Action::Today(TodayAction::Away(action));
    page.on_back(on_touch(screens, || Action::Back));
    page.on_chosen(on(screens, move |key: SharedString| {
        BackChoice::from_key(&key).map(|c| away(AwayAction::Choose(c)))
    }));
    page.on_typed_day(on(screens, move |text: SharedString| {
        Some(away(AwayAction::Typed(text.into())))
    }));
    page.on_acted(on(screens, move |id: SharedString| {
        PieceId::new(&id).ok().map(|id| away(AwayAction::Tick(id)))
    }));
    page.on_opened(on(screens, move |id: SharedString| {
        PieceId::new(&id).ok().map(|id| away(AwayAction::Open(id)))
    }));
    page.on_left(on_touch(screens, move || away(AwayAction::Leave)));
    page.on_came_back(on_touch(screens, move || away(AwayAction::Back)));
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
    page.on_skipped(on_touch(screens, move || weigh(WeighAction::Skip)));
    page.on_tare_toggled(on_touch(screens, move || weigh(WeighAction::Tare)));
    page.on_undone(on_touch(screens, move || weigh(WeighAction::Undo)));
}

fn button(view: ButtonView) -> TaskButton {
    TaskButton {
        key: view.key.into(),
        text: view.text.into(),
        label: view.label.into(),
        icon: view.icon.into(),
    }
}

fn row(view: RowView) -> TaskRow {
    TaskRow {
        id: view.id.into(),
        shape: view.shape.key().into(),
        label: view.label.into(),
        mark: view.mark.into(),
        wood: view.wood.into(),
        note: view.note.into(),
        remark: view.remark.into(),
        tag: view.tag.into(),
        late: view.late,
        weekday: view.weekday.into(),
        day: view.day.into(),
        icon: view.icon.into(),
        drawing: view.drawing.map(paths).unwrap_or_default(),
        button: button(view.button),
        second: button(view.second),
        wide_buttons: view.wide_buttons,
        first: view.first,
        last: view.last,
    }
}

fn answer(view: AnswerView) -> Choice {
    Choice {
        id: view.key.into(),
        text: view.text.into(),
        note: view.note.into(),
        icon: view.icon.into(),
        selected: false,
    }
}

fn tick(view: TickView) -> Choice {
    Choice {
        id: view.key.into(),
        text: view.text.into(),
        selected: view.on,
        ..Choice::default()
    }
}

fn other(view: ButtonView) -> Choice {
    Choice {
        id: view.key.into(),
        text: view.text.into(),
        icon: view.icon.into(),
        ..Choice::default()
    }
}

/// The card's own lists are kept, so that what has the focus keeps it.
fn card(old: TaskCard, view: CardView) -> TaskCard {
    TaskCard {
        question: view.question.into(),
        answers: fill(old.answers, view.answers.into_iter().map(answer).collect()),
        ticks: fill(old.ticks, view.ticks.into_iter().map(tick).collect()),
        more: view.more.into(),
        more_open: view.more_open,
        when: view.when.into(),
        days: fill(old.days, view.days.into_iter().map(tick).collect()),
        others: fill(old.others, view.others.into_iter().map(other).collect()),
    }
}

fn rows(old: ModelRc<TaskRow>, list: Vec<RowView>) -> ModelRc<TaskRow> {
    fill(old, list.into_iter().map(row).collect())
}

/// Shows the page with this key.
pub fn show(window: &AppWindow, app: &App, page: &str, now: Moment) {
    match page {
        "today" => show_today(window, app, now),
        "bag-round" => show_bag_round(window, app, now),
        "weigh-round" => show_weigh_round(window, app, now),
        "away" => show_away(window, app, now),
        "catch-up" => show_catch_up(window, app, now),
        _ => {}
    }
}

fn show_today(window: &AppWindow, app: &App, now: Moment) {
    let view = app.today_view(now);
    let page = window.global::<TodayAdapter>();
    page.set_title(view.title.into());
    page.set_date(view.date.into());
    page.set_has_climate(view.climate.is_some());
    if let Some(climate) = view.climate {
        page.set_climate_reading(climate.reading.into());
        page.set_climate_settles(climate.settles.into());
        page.set_climate_old(climate.old);
        page.set_climate_label(climate.label.into());
    }
    let notice = view.notice.unwrap_or_default();
    page.set_notice_text(notice.text.into());
    page.set_notice_note(notice.note.into());
    page.set_notice_action(notice.action.into());
    page.set_notice_key(notice.key.into());
    page.set_rounds(fill(
        page.get_rounds(),
        view.rounds.into_iter().map(button).collect(),
    ));
    let ListView {
        rows: list,
        card: open,
    } = view.list;
    page.set_card(card(page.get_card(), open));
    page.set_rows(rows(page.get_rows(), list));
    let first = view.first_time.unwrap_or_default();
    page.set_first_title(first.title.into());
    page.set_first_text(first.text.into());
    page.set_first_action(first.action.into());
    page.set_nothing_due(view.nothing_due.into());
    page.set_away(view.away.into());
}

fn show_catch_up(window: &AppWindow, app: &App, now: Moment) {
    let view = app.catch_up_view(now);
    let page = window.global::<CatchUpAdapter>();
    page.set_title(view.title.into());
    page.set_intro(view.intro.into());
    page.set_back_label(view.back.into());
    page.set_card(card(page.get_card(), view.list.card));
    page.set_rows(rows(page.get_rows(), view.list.rows));
    page.set_all_done(view.all_done.into());
}

fn show_away(window: &AppWindow, app: &App, now: Moment) {
    let view = app.away_view(now);
    let page = window.global::<AwayAdapter>();
    page.set_title(view.title.into());
    page.set_intro(view.intro.into());
    page.set_back_label(view.back.into());
    page.set_away_until(view.away_until.into());
    page.set_am_back(view.am_back.into());
    page.set_when(view.when.into());
    page.set_choices(fill(
        page.get_choices(),
        view.choices.into_iter().map(tick).collect(),
    ));
    page.set_typing(view.typing);
    page.set_day_label(view.day_label.into());
    page.set_day_hint(view.day_hint.into());
    page.set_typed(view.typed.into());
    page.set_error(view.error.into());
    page.set_clear(view.clear.into());
    page.set_act_title(view.act_title.into());
    page.set_act(fill(
        page.get_act(),
        view.act
            .into_iter()
            .map(|a| LeavingRow {
                piece: a.piece.as_str().into(),
                text: a.text.into(),
                note: a.note.into(),
                done: a.done,
                ticks: a.ticks,
            })
            .collect(),
    ));
    page.set_nothing(view.nothing.into());
    page.set_wait_title(view.wait_title.into());
    page.set_wait(view.wait.into());
    page.set_fine_title(view.fine_title.into());
    page.set_fine(view.fine.into());
    page.set_leave(view.leave.into());
    page.set_return_title(view.return_title.into());
    page.set_card(card(page.get_card(), view.list.card));
    page.set_rows(rows(page.get_rows(), view.list.rows));
    page.set_all_done(view.all_done.into());
}

fn count(view: CountView) -> CountRow {
    CountRow {
        text: view.text.into(),
        value: view.value.into(),
        icon: view.icon.into(),
        piece: view.piece.into(),
    }
}

fn show_bag_round(window: &AppWindow, app: &App, now: Moment) {
    let view = app.bag_round_view(now);
    let page = window.global::<BagRoundAdapter>();
    page.set_title(view.title.into());
    page.set_back_label(view.back.into());
    page.set_progress(view.progress.into());
    #[allow(clippy::cast_possible_truncation)] // 0 to 1
    page.set_part(view.part as f32);
    page.set_mark(view.mark.into());
    page.set_wood(view.wood.into());
    page.set_place(view.place.into());
    page.set_stands(view.stands.into());
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

fn show_weigh_round(window: &AppWindow, app: &App, now: Moment) {
    let view = app.weigh_round_view(now);
    let page = window.global::<WeighRoundAdapter>();
    page.set_title(view.title.into());
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
                mark: r.mark.into(),
                wood: r.wood.into(),
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
    page.set_skip(view.skip.into());
    page.set_undo_said(view.undo_said.into());
    page.set_undo(view.undo.into());
    page.set_ended(view.ended.into());
    page.set_done(view.done.text.into());
}
