//! Hands what surrounds the pages to Slint and its touches to the app.

use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::device::ThemeChoice;
use evenwall_app::route::Tab;
use evenwall_piece::piece::Moment;
use evenwall_ui::{AppWindow, ChoiceItem, Chrome, TabItem, Theme};
use slint::{ComponentHandle, SharedString};

use super::models::fill;
use super::visible::Shown as _;
use super::{Screens, on, on_touch};

/// Connects the callbacks of the frame.
pub fn connect(screens: &Rc<Screens>) {
    let chrome = screens.window.global::<Chrome>();
    chrome.on_go_tab(on(screens, |key: SharedString| {
        Tab::ALL
            .into_iter()
            .find(|t| key == t.key())
            .map(Action::GoTab)
    }));
    chrome.on_back(on_touch(screens, || Action::Back));
    chrome.on_undo(on_touch(screens, || Action::Undo));
    chrome.on_redo(on_touch(screens, || Action::Redo));
    chrome.on_hide_undo(on_touch(screens, || Action::HideUndo));
    chrome.on_choose(on(screens, |place: i32| {
        usize::try_from(place).ok().map(Action::Choose)
    }));
    chrome.on_close_question(on_touch(screens, || Action::CloseQuestion));
    chrome.on_try_again(on_touch(screens, || Action::TryAgain));
    let weak = Rc::downgrade(screens);
    chrome.on_see_notice(move || {
        let Some(screens) = weak.upgrade() else {
            return;
        };
        let now = (screens.clock)();
        if let Some(action) = screens.read(|app| app.chrome_view(now).notice_opens) {
            screens.act(action);
        }
    });
    chrome.on_hide_notice(on_touch(screens, || Action::HideNotice));
    chrome.on_hide_save_error(on_touch(screens, || Action::HideSaveError));
}

/// Shows what surrounds the pages.
pub fn show(window: &AppWindow, app: &App, now: Moment) {
    let view = app.chrome_view(now);
    let chrome = window.global::<Chrome>();
    chrome.set_tabs(fill(
        chrome.get_tabs(),
        view.tabs
            .into_iter()
            .map(|t| TabItem {
                id: t.key.into(),
                text: t.label.into(),
                icon: t.icon.into(),
                badge: t.badge.into(),
            })
            .collect(),
    ));
    let undo = view.undo.unwrap_or(evenwall_app::chrome::UndoView {
        said: String::new(),
        button: String::new(),
        redo: false,
        further: String::new(),
    });
    chrome.set_undo_shown(!undo.said.is_empty());
    chrome.set_undo_said(undo.said.shown());
    chrome.set_undo_button(undo.button.into());
    chrome.set_undo_is_redo(undo.redo);
    chrome.set_undo_further(undo.further.into());
    chrome.set_undo_in_page(view.undo_in_page);
    chrome.set_question_shown(view.question.is_some());
    if let Some(question) = view.question {
        chrome.set_question_title(question.title.shown());
        chrome.set_question_text(question.text.shown());
        chrome.set_question_caution(question.caution);
        chrome.set_question_choices(fill(
            chrome.get_question_choices(),
            question
                .choices
                .into_iter()
                .map(|c| ChoiceItem {
                    label: c.label.into(),
                    style: c.style.into(),
                })
                .collect(),
        ));
    }
    chrome.set_save_error(view.save_error.unwrap_or_default().into());
    chrome.set_try_again_text(view.try_again.into());
    chrome.set_nothing_open_title(view.nothing_open_title.into());
    chrome.set_nothing_open_text(view.nothing_open_text.into());
    chrome.set_close_text(view.close.into());
    chrome.set_notice(view.notice.unwrap_or_default().shown());
    chrome.set_notice_button(view.notice_button.into());
    chrome.set_demo(view.demo.unwrap_or_default().into());
    chrome.set_left_handed(view.left_handed);
    window.global::<Theme>().set_left_handed(view.left_handed);
    look(window, view.theme, view.text_scale);
    window
        .global::<Theme>()
        .set_reduced_motion(view.reduced_motion);
    // Last: a page appears with its content in place.
    chrome.set_tab(view.tab.into());
    chrome.set_page(view.page.into());
}

/// Sets theme and text size.
pub fn look(window: &AppWindow, theme: ThemeChoice, text_scale: f64) {
    let chrome = window.global::<Chrome>();
    let colours = window.global::<Theme>();
    chrome.set_follow_system(theme == ThemeChoice::System);
    colours.set_dark(match theme {
        ThemeChoice::System => chrome.get_system_dark(),
        ThemeChoice::Light => false,
        ThemeChoice::Dark => true,
    });
    #[allow(clippy::cast_possible_truncation)] // 1.0 to 1.6
    colours.set_text_scale(text_scale as f32);
}
