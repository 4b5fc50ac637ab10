//! Hands the sheet of the newest pictures and the import that runs to Slint, and their touches to the app.

use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::photos::{PhotosAction, PickView};
use evenwall_piece::piece::Moment;
use evenwall_ui::{AppWindow, NewestAdapter, PhotoItem, PickGroupItem};
use slint::{ComponentHandle, Model, SharedString};

use super::models::{fill, list};
use super::visible::Shown as _;
use super::{Screens, on, on_touch, photo_files, pictures};

fn does(screens: &Rc<Screens>, action: PhotosAction) -> impl FnMut() + 'static {
    on_touch(screens, move || Action::Photos(action.clone()))
}

/// Connects the callbacks of the adapter.
pub fn connect(screens: &Rc<Screens>) {
    let sheet = screens.window.global::<NewestAdapter>();
    sheet.on_picked(on(screens, |path: SharedString| {
        Some(Action::Photos(PhotosAction::Pick(path.into())))
    }));
    sheet.on_several_toggled(does(screens, PhotosAction::Several));
    sheet.on_add(does(screens, PhotosAction::AddPicked));
    sheet.on_close(does(screens, PhotosAction::CloseNewest));
    sheet.on_stop(does(screens, PhotosAction::Cancel));
    let weak = Rc::downgrade(screens);
    sheet.on_file(move || {
        if let Some(screens) = weak.upgrade() {
            photo_files::choose(&screens);
        }
    });
    let weak = Rc::downgrade(screens);
    sheet.on_look_again(move || {
        if let Some(screens) = weak.upgrade() {
            let open = screens.app.borrow_mut().photos_look_again();
            if open {
                screens.send_work();
            }
        }
    });
    let weak = Rc::downgrade(screens);
    sheet.on_how_far(move || {
        if let Some(screens) = weak.upgrade() {
            screens.app.borrow_mut().photos_look_how_far();
            show_import(&screens.window, &screens.app.borrow());
        }
    });
}

fn picture(app: &App, pick: PickView) -> PhotoItem {
    let image = app
        .photos_preview(&pick.path)
        .filter(|_| pick.shown)
        .and_then(|jpeg| pictures::of_bytes(&pick.path, jpeg));
    PhotoItem {
        id: pick.path.into(),
        label: pick.label.shown(),
        has_picture: image.is_some(),
        picture: image.unwrap_or_default(),
        note: pick.note.shown(),
        when: pick.when.into(),
        length: SharedString::new(),
        picked: pick.picked,
    }
}

fn show_import(window: &AppWindow, app: &App) {
    let sheet = window.global::<NewestAdapter>();
    let import = app.photos_importing_view();
    sheet.set_importing(import.is_some());
    if let Some(import) = import {
        sheet.set_importing_text(import.text.into());
        sheet.set_importing_part(import.part);
        sheet.set_stop_text(import.stop.into());
    }
}

/// Shows the sheet, where it is open, and the import, where one runs.
pub fn show(window: &AppWindow, app: &App, now: Moment) {
    show_import(window, app);
    let sheet = window.global::<NewestAdapter>();
    let Some(view) = app.photos_sheet_view(now) else {
        sheet.set_shown(false);
        return;
    };
    sheet.set_title(view.title.into());
    sheet.set_hint(view.hint.shown());
    sheet.set_empty(view.empty.shown());
    sheet.set_several_text(view.several.into());
    sheet.set_several(view.several_on);
    sheet.set_on_word(view.on_off.0.into());
    sheet.set_off_word(view.on_off.1.into());
    sheet.set_add_text(view.add.into());
    sheet.set_add_active(view.add_active);
    sheet.set_file_text(view.file.into());
    sheet.set_close_label(view.close.into());
    // A group keeps its list, so that what has the focus keeps it.
    let old = sheet.get_groups();
    let groups = view.groups.into_iter().enumerate().map(|(place, group)| {
        let photos = group
            .pictures
            .into_iter()
            .map(|p| picture(app, p))
            .collect();
        PickGroupItem {
            title: group.title.into(),
            photos: match old.row_data(place) {
                Some(kept) => fill(kept.photos, photos),
                None => list(photos),
            },
        }
    });
    let groups = groups.collect();
    sheet.set_groups(fill(old, groups));
    // Last: it opens with its contents in place.
    sheet.set_shown(true);
}
