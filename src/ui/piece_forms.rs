//! Hands the stages, details and ending of a piece to Slint and their touches to the app.

use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::piece::details_view::DetailsView;
use evenwall_app::piece::ending::{EndKind, EndingAction};
use evenwall_app::piece::ending_view::EndingView;
use evenwall_app::piece::stages_view::{OptionView, StagesView};
use evenwall_app::piece::{DayChoice, DetailsAction, PauseChoice, PieceAction, StagesAction};
use evenwall_piece::detail::DetailField;
use evenwall_piece::piece::Moment;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{LostHow, LostWhere, LostWhy, Method};
use evenwall_ui::{
    AppWindow, Choice, DetailGroupItem, DetailItem, DetailsAdapter, EndingAdapter, StageGroupItem,
    StageRowItem, StagesAdapter,
};
use slint::{ComponentHandle, SharedString};

use super::models::{fill, list};
use super::piece::{ended, on_page};
use super::visible::Shown as _;
use super::{Screens, on, on_touch};

fn stages(action: StagesAction) -> Action {
    Action::Piece(PieceAction::Stages(action))
}

fn details(action: DetailsAction) -> Action {
    Action::Piece(PieceAction::Details(action))
}

fn ending(action: EndingAction) -> Action {
    Action::Piece(PieceAction::Ending(action))
}

/// Connects the callbacks of the adapters.
pub(super) fn connect(screens: &Rc<Screens>) {
    let page = screens.window.global::<StagesAdapter>();
    page.on_back(on_touch(screens, || Action::Back));
    page.on_open(on(screens, |key: SharedString| {
        Stage::from_key(&key).map(|s| stages(StagesAction::Open(s)))
    }));
    page.on_half_turn(on_page(screens, |_, piece, on: bool| {
        Some(Action::Piece(PieceAction::HalfTurned { piece, on }))
    }));
    page.on_method(on_page(screens, |_, piece, key: SharedString| {
        let method = Method::from_key(&key)?;
        Some(Action::Piece(PieceAction::Method { piece, method }))
    }));
    let pause = on_page(screens, |app, piece, (): ()| {
        Some(if app.piece(&piece)?.paused.is_some() {
            Action::Piece(PieceAction::Unpause(piece))
        } else {
            stages(StagesAction::OpenPause)
        })
    });
    page.on_pause(move || pause(()));
    page.on_close_sheet(on_touch(screens, || stages(StagesAction::Close)));
    page.on_chose(on_page(screens, |app, _, key: SharedString| {
        if app.stages_sheet_is_pause() {
            let choice = PauseChoice::ALL
                .into_iter()
                .find(|c| c.key() == key.as_str())?;
            Some(stages(StagesAction::Until(choice)))
        } else {
            let choice = DayChoice::ALL
                .into_iter()
                .find(|c| c.key() == key.as_str())?;
            Some(stages(StagesAction::Day(choice)))
        }
    }));
    page.on_edited(on(screens, |text: SharedString| {
        Some(stages(StagesAction::Typed(text.into())))
    }));
    let confirm = on_page(screens, |_, piece, (): ()| {
        Some(stages(StagesAction::Confirm(piece)))
    });
    page.on_confirmed(move || confirm(()));

    let page = screens.window.global::<DetailsAdapter>();
    page.on_back(on_touch(screens, || Action::Back));
    page.on_open(on(screens, |key: SharedString| {
        DetailField::from_key(&key).map(|f| details(DetailsAction::Open(f)))
    }));
    page.on_close_sheet(on_touch(screens, || details(DetailsAction::Close)));
    page.on_edited(on(screens, |text: SharedString| {
        Some(details(DetailsAction::Typed(text.into())))
    }));
    page.on_chose(on(screens, |text: SharedString| {
        Some(details(DetailsAction::Chose(text.into())))
    }));
    let save = on_page(screens, |_, piece, (): ()| {
        Some(details(DetailsAction::Save(piece)))
    });
    page.on_save(move || save(()));
    let clear = on_page(screens, |_, piece, (): ()| {
        Some(details(DetailsAction::Clear(piece)))
    });
    page.on_clear(move || clear(()));

    let page = screens.window.global::<EndingAdapter>();
    page.on_back(on_touch(screens, || Action::Back));
    page.on_kind(on(screens, |key: SharedString| {
        EndKind::from_key(&key).map(|k| ending(EndingAction::Kind(k)))
    }));
    page.on_where(on(screens, |key: SharedString| {
        LostWhere::from_key(&key).map(|w| ending(EndingAction::Where(w)))
    }));
    page.on_how(on(screens, |key: SharedString| {
        LostHow::from_key(&key).map(|h| ending(EndingAction::How(h)))
    }));
    page.on_why(on(screens, |key: SharedString| {
        LostWhy::from_key(&key).map(|w| ending(EndingAction::Why(w)))
    }));
    page.on_edited(on(screens, |text: SharedString| {
        Some(ending(EndingAction::Note(text.into())))
    }));
    let record = on_page(screens, |app, _, (): ()| app.ending_action());
    page.on_recorded(move || record(()));
    page.on_way(on_page(screens, |app, _, key: SharedString| {
        app.way_action(&key)
    }));
}

/// Shows the page with this key.
pub(super) fn show(window: &AppWindow, app: &App, page: &str, now: Moment) {
    match page {
        "stages" => {
            if let Some(view) = app.stages_view(now) {
                show_stages(&window.global::<StagesAdapter>(), view);
            }
        }
        "details" => {
            if let Some(view) = app.details_view(now) {
                show_details(&window.global::<DetailsAdapter>(), view);
            }
        }
        "ending" => {
            if let Some(view) = app.ending_view(now) {
                show_ending(&window.global::<EndingAdapter>(), view);
            }
        }
        _ => {}
    }
}

pub(super) fn options(views: Vec<OptionView>) -> Vec<Choice> {
    views
        .into_iter()
        .map(|o| Choice {
            id: o.key.into(),
            text: o.text.into(),
            note: o.note.into(),
            icon: SharedString::new(),
            selected: o.selected,
        })
        .collect()
}

fn show_stages(adapter: &StagesAdapter<'_>, view: StagesView) {
    adapter.set_mark(view.head.mark.shown());
    adapter.set_title(view.head.title.shown());
    adapter.set_subtitle(view.head.subtitle.shown());
    adapter.set_back_label(view.head.back.into());
    adapter.set_close_label(view.close.into());
    adapter.set_intro(view.intro.into());
    let groups = view.groups.into_iter().map(|g| StageGroupItem {
        title: g.title.shown(),
        rows: list(
            g.rows
                .into_iter()
                .map(|r| StageRowItem {
                    id: r.key.into(),
                    name: r.name.shown(),
                    note: r.note.into(),
                    state: r.state.into(),
                    tag: r.tag.into(),
                })
                .collect(),
        ),
    });
    adapter.set_groups(list(groups.collect()));
    adapter.set_waiting_title(view.waiting_title.into());
    adapter.set_half_turned_shown(view.half_turned_shown);
    adapter.set_half_turned_text(view.half_turned_text.into());
    adapter.set_half_turned_note(view.half_turned_note.into());
    adapter.set_half_turned(view.half_turned);
    adapter.set_on_word(view.on_off.0.into());
    adapter.set_off_word(view.on_off.1.into());
    adapter.set_method_title(view.method_title.into());
    adapter.set_methods(fill(adapter.get_methods(), options(view.methods)));
    adapter.set_pause_title(view.pause_title.into());
    adapter.set_pause_note(view.pause_note.into());
    adapter.set_paused(view.paused);
    adapter.set_pause_button(view.pause_button.into());
    let Some(sheet) = view.sheet else {
        adapter.set_sheet_shown(false);
        return;
    };
    adapter.set_sheet_title(sheet.title.into());
    let lines = sheet.lines.into_iter().map(SharedString::from).collect();
    adapter.set_sheet_lines(fill(adapter.get_sheet_lines(), lines));
    adapter.set_choice_label(sheet.choice_label.into());
    adapter.set_choices(fill(adapter.get_choices(), options(sheet.choices)));
    adapter.set_typing(sheet.typing);
    adapter.set_field_label(sheet.field_label.into());
    adapter.set_field_hint(sheet.field_hint.into());
    adapter.set_typed(sheet.typed.into());
    adapter.set_error(sheet.error.into());
    adapter.set_confirm(sheet.confirm.into());
    adapter.set_sheet_shown(true);
}

fn show_details(adapter: &DetailsAdapter<'_>, view: DetailsView) {
    adapter.set_mark(view.head.mark.shown());
    adapter.set_title(view.head.title.shown());
    adapter.set_subtitle(view.head.subtitle.shown());
    adapter.set_back_label(view.head.back.into());
    adapter.set_close_label(view.close.into());
    adapter.set_intro(view.intro.into());
    let groups = view.groups.into_iter().map(|g| DetailGroupItem {
        title: g.title.shown(),
        fields: list(
            g.fields
                .into_iter()
                .map(|f| DetailItem {
                    id: f.field.key().into(),
                    label: f.label.into(),
                    unit: if f.value_text.is_empty() {
                        SharedString::new()
                    } else {
                        f.unit.into()
                    },
                    value: f.value_text.into(),
                    note: f.note.into(),
                })
                .collect(),
        ),
    });
    adapter.set_groups(list(groups.collect()));
    let Some(sheet) = view.sheet else {
        adapter.set_sheet_shown(false);
        return;
    };
    adapter.set_sheet_kind(sheet.kind.into());
    adapter.set_sheet_title(sheet.title.into());
    adapter.set_sheet_about(sheet.about.into());
    adapter.set_typed(sheet.typed.into());
    adapter.set_unit(sheet.unit.into());
    adapter.set_hint(sheet.hint.into());
    adapter.set_error(sheet.error.into());
    let offers = sheet.offers.into_iter().map(|o| Choice {
        id: o.value.into(),
        text: o.text.into(),
        note: o.note.into(),
        icon: SharedString::new(),
        selected: o.selected,
    });
    adapter.set_offers(fill(adapter.get_offers(), offers.collect()));
    adapter.set_save_text(sheet.save.into());
    adapter.set_clear_text(sheet.clear.into());
    adapter.set_sheet_shown(true);
}

fn show_ending(adapter: &EndingAdapter<'_>, view: EndingView) {
    adapter.set_mark(view.head.mark.shown());
    adapter.set_title(view.head.title.shown());
    adapter.set_subtitle(view.head.subtitle.shown());
    adapter.set_back_label(view.head.back.into());
    adapter.set_ended_shown(view.ended.is_some());
    if let Some(end) = view.ended {
        adapter.set_ended(ended(end));
    }
    adapter.set_kind_title(view.kind_title.into());
    adapter.set_kinds(fill(adapter.get_kinds(), options(view.kinds)));
    adapter.set_lost(view.lost);
    adapter.set_lost_note(view.lost_note.into());
    adapter.set_where_title(view.where_title.into());
    adapter.set_places(fill(adapter.get_places(), options(view.places)));
    adapter.set_how_title(view.how_title.into());
    adapter.set_hows(fill(adapter.get_hows(), options(view.hows)));
    adapter.set_why_title(view.why_title.into());
    adapter.set_why_note(view.why_note.into());
    adapter.set_whys(fill(adapter.get_whys(), options(view.whys)));
    adapter.set_note_label(view.note_label.into());
    adapter.set_note(view.note.into());
    adapter.set_record(view.record.into());
    adapter.set_another(view.another.into());
    adapter.set_delete(view.delete.into());
    adapter.set_delete_note(view.delete_note.into());
    adapter.set_deleted(view.deleted);
}
