//! Hands the view of the diary to Slint and its touches to the app.

use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::diary::{DiaryAction, EntryView, Filter};
use evenwall_app::route::Page;
use evenwall_piece::piece::Moment;
use evenwall_ui::{AppWindow, Choice, DiaryAdapter, DiaryEntryItem};
use slint::{ComponentHandle, SharedString};

use super::models::fill;
use super::piece::on_page;
use super::visible::Shown as _;
use super::{Screens, on, on_touch};

fn text(make: fn(String) -> DiaryAction) -> impl Fn(SharedString) -> Option<Action> {
    move |text| Some(Action::Diary(make(text.into())))
}

/// Connects the callbacks of the adapter.
pub fn connect(screens: &Rc<Screens>) {
    let adapter = screens.window().global::<DiaryAdapter>();
    adapter.on_filter_chosen(on(screens, |key: SharedString| {
        Filter::from_key(&key).map(|f| Action::Diary(DiaryAction::SetFilter(f)))
    }));
    adapter.on_toggled(on(screens, text(DiaryAction::Toggle)));
    adapter.on_value_edited(on(screens, text(DiaryAction::EditValue)));
    adapter.on_picked(on(screens, text(DiaryAction::Pick)));
    adapter.on_day_edited(on(screens, text(DiaryAction::EditDay)));
    adapter.on_saved(on_touch(screens, || Action::Diary(DiaryAction::Save)));
    adapter.on_photos(on_page(screens, |app, _, id: SharedString| {
        app.diary_photos_action(&id)
    }));
    adapter.on_taken_back(on(screens, text(DiaryAction::TakeBack)));
    adapter.on_brought_back(on(screens, text(DiaryAction::BringBack)));
    adapter.on_note_started(on_touch(screens, || {
        Action::Diary(DiaryAction::WriteNote(true))
    }));
    adapter.on_note_left(on_touch(screens, || {
        Action::Diary(DiaryAction::WriteNote(false))
    }));
    adapter.on_note_edited(on(screens, text(DiaryAction::EditNote)));
    adapter.on_note_added(on_touch(screens, || Action::Diary(DiaryAction::AddNote)));
}

fn item(entry: EntryView) -> DiaryEntryItem {
    DiaryEntryItem {
        id: entry.id.into(),
        day: entry.day.into(),
        time: entry.time.into(),
        icon: entry.icon.into(),
        title: entry.title.shown(),
        note: entry.note.shown(),
        earlier: entry.earlier.join("\n").shown(),
        noted: entry.noted.into(),
        device: entry.device.shown(),
        taken_back: entry.taken_back,
        open: entry.open,
    }
}

/// Shows the page.
pub fn show(window: &AppWindow, app: &App, now: Moment) {
    let Some(Page::Diary(id)) = app.route().page() else {
        return;
    };
    let Some(view) = app.diary_view(id, now) else {
        return;
    };
    let adapter = window.global::<DiaryAdapter>();
    let choice = |id: &str, text: String, note: String, selected| Choice {
        id: id.into(),
        text: text.into(),
        note: note.into(),
        icon: SharedString::new(),
        selected,
    };
    let chosen = view
        .filters
        .iter()
        .find(|f| f.chosen)
        .map_or("all", |f| f.key);
    adapter.set_filter(chosen.into());
    adapter.set_filters(fill(
        adapter.get_filters(),
        view.filters
            .into_iter()
            .map(|f| choice(f.key, f.text, f.count.to_string(), f.chosen))
            .collect(),
    ));
    adapter.set_mark(view.mark.shown());
    adapter.set_title(view.title.shown());
    adapter.set_subtitle(view.subtitle.shown());
    adapter.set_empty(view.empty.into());
    adapter.set_edit_typed(view.editor.typed);
    adapter.set_edit_long(view.editor.long);
    adapter.set_edit_value(view.editor.value.into());
    adapter.set_edit_unit(view.editor.unit.into());
    adapter.set_edit_picks(fill(
        adapter.get_edit_picks(),
        view.editor
            .picks
            .into_iter()
            .map(|p| choice(&p.key, p.text, String::new(), p.picked))
            .collect(),
    ));
    adapter.set_edit_day(view.editor.day.into());
    adapter.set_edit_problem(view.editor.problem.into());
    adapter.set_edit_can_take_back(view.editor.can_take_back);
    adapter.set_edit_photos(view.editor.photos.into());
    adapter.set_edit_photos_note(view.editor.photos_note.into());
    adapter.set_writing(view.writing);
    adapter.set_note(view.note.into());
    adapter.set_note_problem(view.note_problem.into());
    let labels = view.labels;
    adapter.set_back_label(labels.back.into());
    adapter.set_add_note_label(labels.add_note.into());
    adapter.set_note_label(labels.note.into());
    adapter.set_cancel_label(labels.cancel.into());
    adapter.set_value_label(labels.value.into());
    adapter.set_day_label(labels.day.into());
    adapter.set_save_label(labels.save.into());
    adapter.set_take_back_label(labels.take_back.into());
    adapter.set_bring_back_label(labels.bring_back.into());
    adapter.set_entries(fill(
        adapter.get_entries(),
        view.entries.into_iter().map(item).collect(),
    ));
}
