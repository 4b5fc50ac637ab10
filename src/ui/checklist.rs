//! Hands the editor of the checklists to Slint and its touches to the app.

use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::checklist::ChecklistAction;
use evenwall_piece::stage::Stage;
use evenwall_ui::{AppWindow, ChecklistEditorAdapter, EditorLineItem};
use slint::{ComponentHandle, SharedString};

use super::models::fill;
use super::piece_forms::options;
use super::visible::Shown as _;
use super::{Screens, on, on_touch};

/// Connects the callbacks of the editor.
pub fn connect(screens: &Rc<Screens>) {
    let page = screens.window.global::<ChecklistEditorAdapter>();
    page.on_back(on_touch(screens, || Action::Back));
    page.on_stage(on(screens, |key: SharedString| {
        Stage::from_key(&key).map(|s| Action::Checklist(ChecklistAction::Stage(s)))
    }));
    page.on_open(with_text(screens, ChecklistAction::Open));
    page.on_move_up(with_text(screens, ChecklistAction::Up));
    page.on_move_down(with_text(screens, ChecklistAction::Down));
    page.on_edited(with_text(screens, ChecklistAction::Text));
    page.on_why_edited(with_text(screens, ChecklistAction::Why));
    page.on_reset(with_text(screens, ChecklistAction::Reset));
    page.on_add_line(on_touch(screens, || {
        Action::Checklist(ChecklistAction::New)
    }));
    page.on_close_sheet(on_touch(screens, || {
        Action::Checklist(ChecklistAction::Close)
    }));
    page.on_save(on_touch(screens, || {
        Action::Checklist(ChecklistAction::Save)
    }));
    let mut hide = on(screens, |(id, hidden): (SharedString, bool)| {
        Some(Action::Checklist(ChecklistAction::Hide(id.into(), hidden)))
    });
    page.on_hide(move |id, hidden| hide((id, hidden)));
}

fn with_text(
    screens: &Rc<Screens>,
    action: impl Fn(String) -> ChecklistAction + 'static,
) -> impl FnMut(SharedString) + 'static {
    on(screens, move |text: SharedString| {
        Some(Action::Checklist(action(text.into())))
    })
}

/// Shows the editor.
pub fn show(window: &AppWindow, app: &App) {
    let view = app.checklist_editor_view();
    let page = window.global::<ChecklistEditorAdapter>();
    page.set_title(view.title.shown());
    page.set_intro(view.intro.into());
    page.set_back_label(view.back.into());
    page.set_close_label(view.close.into());
    page.set_stages(fill(page.get_stages(), options(view.stages)));
    let lines = view.lines.into_iter().map(|l| EditorLineItem {
        id: l.id.into(),
        text: l.text.into(),
        note: l.note.into(),
        hidden: l.hidden,
        up: l.up,
        down: l.down,
    });
    page.set_lines(fill(page.get_lines(), lines.collect()));
    page.set_add(view.add.into());
    page.set_up(view.up.into());
    page.set_down(view.down.into());
    page.set_text_label(view.text_label.into());
    page.set_why_label(view.why_label.into());
    page.set_save_text(view.save.into());
    let Some(sheet) = view.sheet else {
        page.set_sheet_shown(false);
        return;
    };
    page.set_sheet_id(sheet.id.into());
    page.set_sheet_title(sheet.title.into());
    page.set_sheet_text(sheet.text.into());
    page.set_sheet_why(sheet.why.into());
    page.set_sheet_error(sheet.error.into());
    page.set_sheet_hidden(sheet.hidden);
    page.set_sheet_hide(sheet.hide.into());
    page.set_sheet_reset(sheet.reset.into());
    page.set_sheet_reset_removes(sheet.reset_removes);
    page.set_sheet_shown(true);
}
