//! Hands Plan to Slint and its touches to the app: the tab, and the plan of one piece.

use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::plan::{
    ChoiceView, EntryView, InputsView, PlanAction, PlanField, PlanView, ResultView, StepperView,
    SumView, WoodSheetView,
};
use evenwall_piece::piece::Moment;
use evenwall_ui::{AppWindow, Choice, PlanAdapter, PlanResult, PlanRow, PlanSize};
use slint::{ComponentHandle, ModelRc, SharedString};

use super::drawing::{oval_paths, paths};
use super::flaws::ways;
use super::models::fill;
use super::visible::Shown as _;
use super::{Screens, on, on_touch};

fn does(action: PlanAction) -> Option<Action> {
    Some(Action::Plan(action))
}

/// Connects the callbacks of the adapter.
pub fn connect(screens: &Rc<Screens>) {
    let page = screens.window.global::<PlanAdapter>();
    page.on_back(on_touch(screens, || Action::Back));
    let mut choose = on(screens, does);
    page.on_chose(move |what, id| choose(PlanAction::Chose(what.into(), id.into())));
    page.on_preset(on(screens, |place: SharedString| {
        does(PlanAction::Size(place.parse().ok()?))
    }));
    let mut step = on(screens, |action: Option<PlanAction>| {
        action.map(Action::Plan)
    });
    page.on_step(move |id, direction, repeats| {
        step(PlanField::from_key(&id).map(|f| PlanAction::Step(f, direction, repeats)));
    });
    page.on_enter(on(screens, |id: SharedString| {
        does(PlanAction::Enter(PlanField::from_key(&id)?))
    }));
    page.on_enter_wood(touch(screens, PlanAction::EnterWood));
    page.on_sum(on(screens, |id: SharedString| {
        does(PlanAction::Sum(id.into()))
    }));
    page.on_typed(on(screens, |text: SharedString| {
        does(PlanAction::Typed(text.into()))
    }));
    page.on_key(on(screens, |text: SharedString| {
        does(PlanAction::Key(text.into()))
    }));
    page.on_set(touch(screens, PlanAction::Set));
    page.on_usual(touch(screens, PlanAction::Usual));
    page.on_wood_picked(on(screens, |name: SharedString| {
        does(PlanAction::Wood(name.into()))
    }));
    page.on_close(touch(screens, PlanAction::Close));
    page.on_start_afresh(touch(screens, PlanAction::Afresh));
    page.on_bring_back(touch(screens, PlanAction::BringBack));
    page.on_cautions(touch(screens, PlanAction::Cautions));
    page.on_go(touch(screens, PlanAction::Go));
}

fn touch(screens: &Rc<Screens>, action: PlanAction) -> impl FnMut() + 'static {
    on_touch(screens, move || Action::Plan(action.clone()))
}

fn result(view: ResultView) -> PlanResult {
    PlanResult {
        id: view.key.into(),
        label: view.label.into(),
        value: view.value.into(),
        unit: view.unit.into(),
        note: view.note.shown(),
    }
}

fn results(old: ModelRc<PlanResult>, views: Vec<ResultView>) -> ModelRc<PlanResult> {
    fill(old, views.into_iter().map(result).collect())
}

fn size(view: StepperView) -> PlanSize {
    PlanSize {
        id: view.key.into(),
        label: view.label.into(),
        value: view.value.into(),
        unit: view.unit.into(),
        note: view.note.into(),
        error: view.error.into(),
        can_less: view.can_less,
        can_more: view.can_more,
    }
}

fn sizes(
    old: ModelRc<PlanSize>,
    views: impl IntoIterator<Item = StepperView>,
) -> ModelRc<PlanSize> {
    fill(old, views.into_iter().map(size).collect())
}

fn choices(old: ModelRc<Choice>, views: Vec<ChoiceView>) -> ModelRc<Choice> {
    let choice = |view: ChoiceView| Choice {
        id: view.key.into(),
        text: view.text.shown(),
        selected: view.chosen,
        ..Choice::default()
    };
    fill(old, views.into_iter().map(choice).collect())
}

/// The places of the pith are drawn as well.
fn piths(old: ModelRc<Choice>, views: Vec<ChoiceView>) -> ModelRc<Choice> {
    let choice = |view: ChoiceView| Choice {
        icon: match view.key.as_str() {
            "bore" => "pith-bore",
            "wall" => "pith-wall",
            "outside" => "pith-outside",
            _ => "question",
        }
        .into(),
        id: view.key.into(),
        text: view.text.into(),
        selected: view.chosen,
        ..Choice::default()
    };
    fill(old, views.into_iter().map(choice).collect())
}

fn chosen(views: &[ChoiceView]) -> SharedString {
    let chosen = views.iter().find(|c| c.chosen);
    chosen.map_or_else(SharedString::new, |c| c.key.as_str().into())
}

fn rows(
    old: ModelRc<PlanRow>,
    views: impl IntoIterator<Item = (String, String)>,
) -> ModelRc<PlanRow> {
    let row = |(label, value): (String, String)| PlanRow {
        label: label.shown(),
        value: value.shown(),
    };
    fill(old, views.into_iter().map(row).collect())
}

/// Shows the page.
pub fn show(window: &AppWindow, app: &App, now: Moment) {
    let page = window.global::<PlanAdapter>();
    let view = app.plan_view(now);
    show_results(&page, &view);
    show_inputs(&page, view.inputs);
    page.set_caution(view.caution.into());
    page.set_cautions_text(view.cautions.into());
    page.set_writes_title(view.writes_title.into());
    let writes = view.writes.into_iter().map(|w| (w.label, w.value));
    page.set_writes(rows(page.get_writes(), writes));
    page.set_go_text(view.go.into());
    page.set_go_active(view.go_active);
    page.set_afresh(view.afresh.into());
    page.set_afresh_said(view.afresh_said.into());
    page.set_undo_text(view.undo.into());
    page.set_back_label(view.back.into());
    page.set_title(view.title.into());
    page.set_subtitle(view.subtitle.shown());
    page.set_mark(view.mark.shown());
    let sheet = if let Some(entry) = view.entry {
        show_entry(&page, entry);
        "entry"
    } else if let Some(wood) = view.wood {
        show_wood(&page, wood);
        "wood"
    } else if let Some(sum) = view.sum {
        show_sum(&page, sum);
        "sum"
    } else {
        ""
    };
    // Last: a sheet appears with its content in place.
    page.set_sheet(sheet.into());
}

fn show_results(page: &PlanAdapter<'_>, view: &PlanView) {
    page.set_answer(result(view.answer.clone()));
    let beside = view.beside.iter().map(|(label, shown)| PlanResult {
        label: label.into(),
        value: shown.number.as_str().into(),
        unit: shown.unit.as_str().into(),
        ..PlanResult::default()
    });
    page.set_beside(fill(page.get_beside(), beside.collect()));
    page.set_basis(view.basis.as_str().shown());
    page.set_section(paths(view.section.clone()));
    page.set_section_label(view.section_label.as_str().into());
    page.set_ring(oval_paths(view.ring.clone()));
    page.set_ring_label(view.ring_label.as_str().into());
    page.set_ring_title(view.ring_title.as_str().into());
    page.set_legend_rough(view.legend.0.as_str().into());
    page.set_legend_dried(view.legend.1.as_str().into());
    page.set_cells(results(page.get_cells(), view.cells.clone()));
    page.set_lines_title(view.lines_title.as_str().into());
    page.set_lines(results(page.get_lines(), view.lines.clone()));
    page.set_others_title(view.others_title.as_str().into());
    let others = view.others.iter().map(SharedString::from);
    page.set_others(fill(page.get_others(), others.collect()));
    page.set_warning(view.warning.as_str().into());
}

fn show_inputs(page: &PlanAdapter<'_>, view: InputsView) {
    page.set_what_title(view.what_title.into());
    page.set_form(chosen(&view.form.1));
    page.set_form_label(view.form.0.into());
    page.set_forms(choices(page.get_forms(), view.form.1));
    page.set_grain(chosen(&view.grain.1));
    page.set_grain_label(view.grain.0.into());
    page.set_grains(choices(page.get_grains(), view.grain.1));
    page.set_pith_label(view.pith.0.into());
    page.set_piths(piths(page.get_piths(), view.pith.1));
    page.set_pith_sizes(sizes(page.get_pith_sizes(), view.pith_distance));
    page.set_wood_label(view.wood.0.into());
    page.set_wood(view.wood.1.shown());
    page.set_size_title(view.size_title.into());
    page.set_presets_label(view.sizes.0.into());
    page.set_presets(choices(page.get_presets(), view.sizes.1));
    page.set_sizes(sizes(page.get_sizes(), view.size_fields));
    page.set_lathe_title(view.lathe_title.into());
    page.set_jaws_label(view.jaws.0.into());
    page.set_jaws(choices(page.get_jaws(), view.jaws.1));
    page.set_jaws_sizes(sizes(page.get_jaws_sizes(), [view.jaws_field]));
    page.set_bars_label(view.bars.0.into());
    page.set_bars(choices(page.get_bars(), view.bars.1));
    page.set_bar_sizes(sizes(page.get_bar_sizes(), [view.bar_field]));
    page.set_places_label(view.places.0.into());
    page.set_places(choices(page.get_places(), view.places.1));
    page.set_moisture(sizes(page.get_moisture(), [view.moisture]));
}

fn show_entry(page: &PlanAdapter<'_>, view: EntryView) {
    page.set_sheet_title(view.title.into());
    page.set_entry_text(view.text.into());
    page.set_entry_hint(view.hint.into());
    page.set_entry_unit(view.unit.into());
    page.set_entry_error(view.error.into());
    page.set_entry_ways(fill(page.get_entry_ways(), ways(view.ways)));
    page.set_entry_fractions(view.fractions);
    page.set_entry_point(view.point.into());
    page.set_entry_set(view.set.into());
    page.set_entry_usual(view.usual.into());
    page.set_entry_back(view.back.into());
    page.set_entry_whole(view.whole.into());
    page.set_close_label(view.close.into());
}

fn show_wood(page: &PlanAdapter<'_>, view: WoodSheetView) {
    page.set_sheet_title(view.title.into());
    page.set_wood_text(view.text.into());
    page.set_wood_hint(view.hint.into());
    let mut offers = view.offers;
    offers.push(ChoiceView {
        key: String::new(),
        text: view.unknown,
        chosen: false,
    });
    page.set_wood_offers(choices(page.get_wood_offers(), offers));
    page.set_close_label(view.close.into());
}

fn show_sum(page: &PlanAdapter<'_>, view: SumView) {
    page.set_sheet_title(view.title.into());
    page.set_sum_line(view.line.shown());
    page.set_sum_rows(rows(page.get_sum_rows(), view.rows));
    let text = view.text.iter().map(|t| t.shown());
    page.set_sum_text(fill(page.get_sum_text(), text.collect()));
    page.set_sum_source(view.source.into());
    page.set_close_label(view.close.into());
}
