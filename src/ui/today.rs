//! Hands Today, Away and Catch-up to Slint, and their touches to the app.

use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::today::view::{AnswerView, ButtonView, CardView, ListView, RowView, TickView};
use evenwall_app::today::{AwayAction, BackChoice, BackDay, Seen, TodayAction};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_ui::{
    AppWindow, AwayAdapter, CatchUpAdapter, Choice, LeavingRow, TaskButton, TaskCard, TaskRow,
    TodayAdapter,
};
use slint::{ComponentHandle, ModelRc, SharedString};

use super::drawing::paths;
use super::models::fill;
use super::visible::Shown as _;
use super::{Screens, on, on_touch, today_rounds};

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
        // The invented rows of the previews are one list for all pages: each page begins with its own.
        $page.set_rows(ModelRc::default());
        $page.set_card(TaskCard::default());
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
    today_rounds::connect(screens);
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
        mark: view.mark.shown(),
        wood: view.wood.shown(),
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

pub(super) fn answer(view: AnswerView) -> Choice {
    Choice {
        id: view.key.into(),
        text: view.text.into(),
        note: view.note.into(),
        icon: view.icon.into(),
        selected: false,
    }
}

pub(super) fn tick(view: TickView) -> Choice {
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
        "bag-round" => today_rounds::show_bag_round(window, app, now),
        "weigh-round" => today_rounds::show_weigh_round(window, app, now),
        "away" => show_away(window, app, now),
        "catch-up" => show_catch_up(window, app, now),
        _ => {}
    }
}

fn show_today(window: &AppWindow, app: &App, now: Moment) {
    let view = app.today_view(now);
    let page = window.global::<TodayAdapter>();
    page.set_title(view.title.shown());
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
    page.set_title(view.title.shown());
    page.set_intro(view.intro.into());
    page.set_back_label(view.back.into());
    page.set_card(card(page.get_card(), view.list.card));
    page.set_rows(rows(page.get_rows(), view.list.rows));
    page.set_all_done(view.all_done.into());
}

fn show_away(window: &AppWindow, app: &App, now: Moment) {
    let view = app.away_view(now);
    let page = window.global::<AwayAdapter>();
    page.set_title(view.title.shown());
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
