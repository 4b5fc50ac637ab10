//! Hands the views of the drying and weighing pages to Slint and their touches to the app.

mod foreseen;

use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::drying::view::{
    ChartView, DotView, DryingView, FigureView, OptionView, PickedView, StayingView, TickView,
    WeighView,
};
use evenwall_app::drying::{DryingAction, Measured, Span, When, typed};
use evenwall_app::route::Page;
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::MassChange;
use evenwall_ui::{
    AppWindow, ChartDot, ChartPhase, ChartTick, Choice, DryingAdapter, DryingComing, DryingFigure,
    DryingWarning, WeighAdapter,
};
use slint::{ComponentHandle, SharedString};

use super::models::fill;
use super::visible::Shown as _;
use super::{Screens, on, on_touch};

/// The piece whose page is on top.
fn piece(screens: &Rc<Screens>) -> Option<PieceId> {
    screens.read(|app| app.route().page().and_then(Page::piece).cloned())
}

/// Makes a callback that acts on the piece whose page is on top.
fn on_piece<A>(
    screens: &Rc<Screens>,
    make: impl Fn(PieceId, A) -> Option<Action> + 'static,
) -> impl FnMut(A) + 'static {
    let screens = Rc::downgrade(screens);
    move |argument| {
        if let Some(screens) = screens.upgrade()
            && let Some(action) = piece(&screens).and_then(|id| make(id, argument))
        {
            screens.act(action);
        }
    }
}

/// Makes a callback that opens another page about the same piece.
fn to_page(screens: &Rc<Screens>, page: fn(PieceId) -> Page) -> impl FnMut() + 'static {
    let mut open = on_piece(screens, move |id, ()| Some(Action::Open(page(id))));
    move || open(())
}

fn text(make: fn(String) -> DryingAction) -> impl Fn(SharedString) -> Option<Action> {
    move |text| Some(Action::Drying(make(text.into())))
}

/// Connects the callbacks of the adapters.
pub fn connect(screens: &Rc<Screens>) {
    connect_drying(screens);
    connect_weigh(screens);
}

fn connect_drying(screens: &Rc<Screens>) {
    let adapter = screens.window().global::<DryingAdapter>();
    let touch = |action: fn() -> DryingAction| on_touch(screens, move || Action::Drying(action()));
    adapter.on_back(on_touch(screens, || Action::Back));
    adapter.on_more(touch(|| DryingAction::More(true)));
    adapter.on_close_more(touch(|| DryingAction::More(false)));
    adapter.on_weigh_now(to_page(screens, Page::Weigh));
    adapter.on_open_stages(to_page(screens, Page::Stages));
    adapter.on_open_diary(to_page(screens, Page::Diary));
    adapter.on_show_span(on(screens, |key: SharedString| {
        Span::from_key(&key).map(|s| Action::Drying(DryingAction::Show(s)))
    }));
    adapter.on_measure_by(on(screens, |key: SharedString| {
        Measured::from_key(&key).map(|m| Action::Drying(DryingAction::Measure(m)))
    }));
    let mut zoom = on(screens, |(by, x): (f32, f32)| {
        Some(Action::Drying(DryingAction::Zoom(by.into(), x.into())))
    });
    adapter.on_zoom(move |by, x| zoom((by, x)));
    adapter.on_show_uneven(on(screens, |open: bool| {
        Some(Action::Drying(DryingAction::Uneven(open)))
    }));
    let mut pick = on(screens, |(x, y): (f32, f32)| {
        Some(Action::Drying(DryingAction::Pick(x.into(), y.into())))
    });
    adapter.on_pick(move |x, y| pick((x, y)));
    adapter.on_step(on(screens, |by: i32| {
        Some(Action::Drying(DryingAction::Step(by)))
    }));
    adapter.on_unpick(touch(|| DryingAction::Unpick));
    adapter.on_correct_it(touch(|| DryingAction::Correct));
    adapter.on_changed_mass(on_piece(screens, |id, key: SharedString| {
        let change = MassChange::from_key(&key)?;
        Some(Action::Drying(DryingAction::MassChanged(id, change)))
    }));
}

fn connect_weigh(screens: &Rc<Screens>) {
    let adapter = screens.window().global::<WeighAdapter>();
    adapter.on_back(on_touch(screens, || Action::Back));
    adapter.on_key(on(screens, text(DryingAction::Key)));
    let weak = Rc::downgrade(screens);
    adapter.on_typed(move |key, typing| {
        let (Some(screens), Some(action)) = (weak.upgrade(), typed(&key, typing)) else {
            return false;
        };
        screens.act(Action::Drying(action));
        true
    });
    adapter.on_show_tare(on_touch(screens, || Action::Drying(DryingAction::ShowTare)));
    adapter.on_choose_tare(on(screens, text(DryingAction::Tare)));
    adapter.on_choose_when(on(screens, |key: SharedString| {
        When::from_key(&key).map(|w| Action::Drying(DryingAction::When(w)))
    }));
    adapter.on_edit_day(on(screens, text(DryingAction::Day)));
    adapter.on_answer(on(screens, text(DryingAction::Answer)));
}

/// Shows the page with this key.
pub fn show(window: &AppWindow, app: &App, page: &str, now: Moment) {
    match page {
        "weigh" => {
            if let Some(view) = app.weigh_view(now) {
                show_weigh(&window.global::<WeighAdapter>(), view);
            }
        }
        _ => {
            if let Some(view) = app.drying_view(now) {
                show_drying(&window.global::<DryingAdapter>(), view);
            }
        }
    }
}

fn choices(options: Vec<OptionView>) -> Vec<Choice> {
    let choice = |o: OptionView| Choice {
        id: o.key.into(),
        text: o.text.into(),
        note: SharedString::new(),
        icon: SharedString::new(),
        selected: o.chosen,
    };
    options.into_iter().map(choice).collect()
}

fn chosen(options: &[OptionView]) -> SharedString {
    let key = options.iter().find(|o| o.chosen).map(|o| o.key.as_str());
    key.unwrap_or_default().into()
}

fn figure(view: FigureView) -> DryingFigure {
    DryingFigure {
        label: view.label.into(),
        value: view.value.into(),
        unit: view.unit.into(),
        note: view.note.into(),
    }
}

#[allow(clippy::cast_possible_truncation)] // fractions of a picture
fn ticks(ticks: Vec<TickView>) -> Vec<ChartTick> {
    let tick = |t: TickView| ChartTick {
        at: t.at as f32,
        text: t.text.into(),
    };
    ticks.into_iter().map(tick).collect()
}

fn texts(texts: Vec<String>) -> Vec<SharedString> {
    texts.into_iter().map(SharedString::from).collect()
}

fn show_drying(adapter: &DryingAdapter<'_>, view: DryingView) {
    adapter.set_mark(view.head.mark.shown());
    adapter.set_title(view.head.title.shown());
    adapter.set_subtitle(view.head.subtitle.shown());
    adapter.set_back_label(view.head.back.into());
    adapter.set_more_label(view.head.more.into());
    foreseen::show_ahead(adapter, view.ahead, view.last, view.figures);
    let warnings = view.warnings.into_iter().map(|w| DryingWarning {
        text: w.text.into(),
        note: w.note.into(),
    });
    adapter.set_warnings(fill(adapter.get_warnings(), warnings.collect()));
    foreseen::show_verdict(adapter, view.verdict);
    foreseen::show_uneven(adapter, view.uneven);
    adapter.set_measure(chosen(&view.measures));
    adapter.set_measures(fill(adapter.get_measures(), choices(view.measures)));
    let (title, text) = view.empty.unwrap_or_default();
    adapter.set_empty_title(title.into());
    adapter.set_empty_text(text.into());
    adapter.set_span(chosen(&view.spans));
    adapter.set_spans(fill(adapter.get_spans(), choices(view.spans)));
    show_picked(adapter, view.picked);
    adapter.set_break_notes(fill(adapter.get_break_notes(), texts(view.breaks)));
    show_staying(adapter, view.staying);
    adapter.set_coarse(view.coarse.into());
    adapter.set_bag_title(SharedString::new());
    if let Some(bag) = view.bag {
        adapter.set_bag_title(bag.title.into());
        adapter.set_bag_trailing(bag.trailing.into());
        let drops = bag.drops.into_iter().map(SharedString::from).collect();
        adapter.set_drops(fill(adapter.get_drops(), drops));
        adapter.set_bag_label(bag.label.into());
        adapter.set_bag_note(bag.note.into());
    }
    let coming = view.coming.into_iter().map(|c| DryingComing {
        title: c.title.shown(),
        day: c.day.into(),
        why: c.why.into(),
        late: c.late,
    });
    adapter.set_coming(fill(adapter.get_coming(), coming.collect()));
    adapter.set_air(fill(adapter.get_air(), texts(view.air)));
    adapter.set_more_open(view.more.is_some());
    if let Some(more) = view.more {
        adapter.set_more_title(more.title.into());
        adapter.set_more_text(more.text.into());
        let changes = more.changes.into_iter().map(|c| OptionView {
            key: c.key.into(),
            text: c.text,
            chosen: false,
        });
        adapter.set_changes(fill(adapter.get_changes(), choices(changes.collect())));
    }
    adapter.set_weigh(view.words.weigh.into());
    adapter.set_correct(view.words.correct.into());
    adapter.set_before_text(view.words.before.into());
    adapter.set_after_text(view.words.after.into());
    adapter.set_close(view.words.close.into());
    adapter.set_stages(view.words.stages.into());
    adapter.set_stages_note(view.words.stages_note.into());
    adapter.set_diary(view.words.diary.into());
    adapter.set_has_chart(view.chart.is_some());
    if let Some(chart) = view.chart {
        show_chart(adapter, chart);
    }
}

#[allow(clippy::cast_possible_truncation)] // fractions of a picture
fn dots(dots: Vec<DotView>) -> Vec<ChartDot> {
    let dot = |d: DotView| ChartDot {
        x: d.x as f32,
        y: d.y as f32,
        kind: d.kind.into(),
    };
    dots.into_iter().map(dot).collect()
}

#[allow(clippy::cast_possible_truncation)] // fractions of a picture
fn show_chart(adapter: &DryingAdapter<'_>, chart: ChartView) {
    adapter.set_line(chart.line.into());
    adapter.set_tick_characters(i32::try_from(chart.tick_characters).unwrap_or(4));
    adapter.set_y_ticks(fill(adapter.get_y_ticks(), ticks(chart.y_ticks)));
    adapter.set_x_ticks(fill(adapter.get_x_ticks(), ticks(chart.x_ticks)));
    adapter.set_breaks(fill(adapter.get_breaks(), ticks(chart.breaks)));
    let phases = chart.phases.into_iter().map(|p| ChartPhase {
        from: p.from as f32,
        to: p.to as f32,
        text: p.text.into(),
        tone: p.tone.into(),
    });
    adapter.set_phases(fill(adapter.get_phases(), phases.collect()));
    adapter.set_dots(fill(adapter.get_dots(), dots(chart.dots)));
    adapter.set_looks(fill(adapter.get_looks(), dots(chart.looks)));
    foreseen::show_foresight(adapter, chart.ahead);
    adapter.set_unit(chart.unit.into());
    adapter.set_today(chart.today as f32);
    adapter.set_today_text(chart.today_text.into());
    adapter.set_chart_label(chart.label.into());
    adapter.set_chart_note(chart.note.into());
}

fn show_picked(adapter: &DryingAdapter<'_>, picked: Option<PickedView>) {
    adapter.set_has_picked(picked.is_some());
    if let Some(picked) = picked {
        adapter.set_picked_weight(picked.weight.into());
        adapter.set_picked_day(picked.day.into());
        adapter.set_picked_note(picked.note.into());
        adapter.set_picked_question(picked.question);
        adapter.set_has_before(picked.has_before);
        adapter.set_has_after(picked.has_after);
    }
}

fn show_staying(adapter: &DryingAdapter<'_>, staying: Option<StayingView>) {
    adapter.set_staying(SharedString::new());
    if let Some(staying) = staying {
        adapter.set_staying(staying.title.into());
        adapter.set_staying_since(staying.since.into());
        adapter.set_staying_done(i32::try_from(staying.done).unwrap_or(0));
        adapter.set_staying_count(i32::try_from(staying.count).unwrap_or(0));
        adapter.set_staying_reason(staying.reason.into());
        adapter.set_steady(staying.steady);
    }
}

fn show_weigh(adapter: &WeighAdapter<'_>, view: WeighView) {
    adapter.set_mark(view.head.mark.shown());
    adapter.set_title(view.head.title.shown());
    adapter.set_subtitle(view.head.subtitle.shown());
    adapter.set_back_label(view.head.back.into());
    adapter.set_what(view.what.into());
    adapter.set_number(view.number.into());
    adapter.set_unit(view.unit.into());
    adapter.set_typing(view.typing);
    adapter.set_known(view.can_next);
    adapter.set_entering_tare(view.entering_tare);
    adapter.set_last(view.last.into());
    adapter.set_difference(view.difference.into());
    adapter.set_doubtful(view.doubtful);
    adapter.set_net(view.net.into());
    adapter.set_tare_label(view.words.tare.into());
    adapter.set_tare(view.tare.into());
    adapter.set_tare_way(chosen(&view.tares));
    adapter.set_tares(fill(adapter.get_tares(), choices(view.tares)));
    adapter.set_when(chosen(&view.whens));
    adapter.set_whens(fill(adapter.get_whens(), choices(view.whens)));
    adapter.set_typing_day(view.typing_day);
    adapter.set_day(view.day.into());
    adapter.set_day_label(view.words.day.into());
    adapter.set_day_hint(view.words.day_hint.into());
    adapter.set_day_note(view.day_note.into());
    adapter.set_day_wrong(view.day_wrong.into());
    adapter.set_clear_label(view.words.clear.into());
    let (title, text, answers) = view
        .ask
        .map_or_else(Default::default, |a| (a.title, a.text, a.answers));
    adapter.set_ask_text(text.into());
    adapter.set_answers(fill(adapter.get_answers(), choices(answers)));
    adapter.set_ask_title(title.into());
    adapter.set_next(view.next.into());
    adapter.set_can_next(view.can_next);
    adapter.set_pounds(view.pounds.into());
    adapter.set_can_pounds(view.can_pounds);
    adapter.set_delete_label(view.words.delete.into());
    adapter.set_point_label(view.words.point.into());
}
