//! Hands the form of a new piece to Slint and what is typed there to the app.

use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::new_piece::{ChoiceGroup, ChoiceView, FieldBox, NewPieceAction, OutlineView};
use evenwall_piece::detail::DetailField;
use evenwall_piece::piece::Moment;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::Method;
use evenwall_ui::{AppWindow, Choice, FormField, NewPieceAdapter, OutlineChoice};
use slint::{ComponentHandle, ModelRc, SharedString};

use super::drawing::paths;
use super::models::{fill, list};
use super::visible::Shown as _;
use super::{Screens, on, on_touch};

fn typed(key: &str, text: String) -> Option<NewPieceAction> {
    if key == "since" {
        return Some(NewPieceAction::Since(text));
    }
    DetailField::from_key(key).map(|field| NewPieceAction::Typed(field, text))
}

/// Connects the callbacks of the adapter.
pub fn connect(screens: &Rc<Screens>) {
    let page = screens.window.global::<NewPieceAdapter>();
    let act = |action: Option<NewPieceAction>| action.map(Action::NewPiece);
    let mut type_into = on(screens, act);
    page.on_typed(move |key, text| type_into(typed(&key, text.into())));
    let mut choose = on(screens, act);
    page.on_chose(move |key, choice| {
        let field = DetailField::from_key(&key);
        choose(field.map(|f| NewPieceAction::Chose(f, choice.into())));
    });
    page.on_wood_picked(on(screens, |key: SharedString| {
        Some(Action::NewPiece(NewPieceAction::Wood(key.into())))
    }));
    page.on_size(on(screens, |place: SharedString| {
        let place = place.parse().ok()?;
        Some(Action::NewPiece(NewPieceAction::Size(place)))
    }));
    page.on_counted(on(screens, |step: i32| {
        Some(Action::NewPiece(NewPieceAction::Count(step)))
    }));
    page.on_stage(on(screens, |key: SharedString| {
        Stage::from_key(&key).map(|s| Action::NewPiece(NewPieceAction::Stage(s)))
    }));
    page.on_method(on(screens, |key: SharedString| {
        Method::from_key(&key).map(|m| Action::NewPiece(NewPieceAction::Method(m)))
    }));
    page.on_unfold(on(screens, |open: bool| {
        Some(Action::NewPiece(NewPieceAction::More(open)))
    }));
    page.on_saved(on_touch(screens, || Action::NewPiece(NewPieceAction::Save)));
    page.on_leave(on_touch(screens, || {
        Action::NewPiece(NewPieceAction::Leave)
    }));
}

fn choice(view: ChoiceView) -> Choice {
    Choice {
        id: view.key.into(),
        text: view.text.into(),
        selected: view.chosen,
        ..Choice::default()
    }
}

fn choices(old: ModelRc<Choice>, views: Vec<ChoiceView>) -> ModelRc<Choice> {
    fill(old, views.into_iter().map(choice).collect())
}

/// A field; its ways to read are a list of their own only where there are some, so that rows compare equal.
fn field(view: FieldBox, old: Option<FormField>) -> FormField {
    let ways: Vec<Choice> = view
        .ways
        .into_iter()
        .map(|way| Choice {
            id: way.as_str().into(),
            text: way.into(),
            ..Choice::default()
        })
        .collect();
    FormField {
        key: view.key.into(),
        label: view.label.into(),
        text: view.text.into(),
        placeholder: view.placeholder.into(),
        error: view.error.into(),
        note: view.note.into(),
        unit: view.unit.into(),
        numeric: view.numeric,
        ways: match old {
            Some(old) => fill(old.ways, ways),
            None => list(ways),
        },
    }
}

fn fields(old: ModelRc<FormField>, views: Vec<FieldBox>) -> ModelRc<FormField> {
    use slint::Model;
    let rows = views
        .into_iter()
        .enumerate()
        .map(|(place, view)| field(view, old.row_data(place)))
        .collect();
    fill(old, rows)
}

fn outline(view: OutlineView) -> OutlineChoice {
    OutlineChoice {
        key: view.key.into(),
        text: view.text.into(),
        chosen: view.chosen,
        usual: view.usual,
        drawing: paths(view.drawing),
    }
}

/// The key of the form chosen; the first where none is.
fn chosen(group: &ChoiceGroup) -> String {
    let chosen = group.choices.iter().find(|c| c.chosen);
    chosen
        .or(group.choices.first())
        .map(|c| c.key.clone())
        .unwrap_or_default()
}

/// Shows the page.
pub fn show(window: &AppWindow, app: &App, now: Moment) {
    let view = app.new_piece_view(now);
    let page = window.global::<NewPieceAdapter>();
    page.set_title(view.title.shown());
    page.set_subtitle(view.subtitle.shown());
    page.set_back(view.back.into());
    page.set_clear(view.clear.into());
    page.set_mark(field(view.mark, Some(page.get_mark())));
    page.set_mark_warning(view.mark_warning.into());
    page.set_wood(field(view.wood, Some(page.get_wood())));
    page.set_woods(choices(page.get_woods(), view.woods));
    page.set_form(chosen(&view.form).into());
    page.set_form_label(view.form.label.into());
    page.set_forms(choices(page.get_forms(), view.form.choices));
    page.set_count_label(view.count_label.into());
    page.set_count(view.count.into());
    page.set_count_note(view.count_note.into());
    page.set_can_less(view.can_less);
    page.set_can_more(view.can_more);
    page.set_more(view.more.into());
    page.set_more_note(view.more_note.into());
    page.set_now_title(view.now_title.into());
    page.set_stage_label(view.stages.label.into());
    page.set_stages(choices(page.get_stages(), view.stages.choices));
    page.set_method_label(view.methods.label.into());
    page.set_methods(choices(page.get_methods(), view.methods.choices));
    page.set_since(field(view.since, Some(page.get_since())));
    page.set_log_title(view.log_title.into());
    page.set_grain_label(view.grain.label.into());
    page.set_grains(choices(page.get_grains(), view.grain.choices));
    page.set_pith_label(view.pith.label.into());
    page.set_piths(choices(page.get_piths(), view.pith.choices));
    page.set_log_fields(fields(page.get_log_fields(), view.log_fields));
    page.set_size_title(view.size_title.into());
    page.set_sizes_label(view.sizes.label.into());
    page.set_sizes(choices(page.get_sizes(), view.sizes.choices));
    page.set_size_fields(fields(page.get_size_fields(), view.size_fields));
    page.set_outline_label(view.outline_label.into());
    page.set_outlines(fill(
        page.get_outlines(),
        view.outlines.into_iter().map(outline).collect(),
    ));
    page.set_wall_title(view.wall_title.into());
    page.set_wall_fields(fields(page.get_wall_fields(), view.wall_fields));
    page.set_place_title(view.place_title.into());
    page.set_place(field(view.place, Some(page.get_place())));
    page.set_notes(field(view.notes, Some(page.get_notes())));
    page.set_save(view.save.into());
    page.set_more_open(view.more_open);
}
