//! Hands what dried well to Slint and its touches to the app.

use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::dried_well::{DriedWellAction, Kind, OptionView, ShareView};
use evenwall_piece::piece::Moment;
use evenwall_ui::{AppWindow, Choice, DriedWellAdapter, ShareItem};
use slint::{ComponentHandle, SharedString};

use super::models::fill;
use super::shop::{sections, ticks};
use super::visible::Shown;
use super::{Screens, on, on_touch};

/// Connects the callbacks of the adapter.
pub fn connect(screens: &Rc<Screens>) {
    let page = screens.window.global::<DriedWellAdapter>();
    page.on_back(on_touch(screens, || Action::Back));
    page.on_by(on(screens, |key: SharedString| {
        Kind::from_key(&key).map(|kind| DriedWellAction::By(kind).into())
    }));
    page.on_year(on(screens, |key: SharedString| {
        Some(DriedWellAction::Year(key.parse().ok()).into())
    }));
    let weak = Rc::downgrade(screens);
    page.on_touched(move |id| {
        let Some(screens) = weak.upgrade() else {
            return;
        };
        let now = (screens.clock)();
        if let Some(action) = screens.read(|app| app.dried_well_view(now).touch(&id)) {
            screens.act(action);
        }
    });
}

fn chip(view: OptionView) -> Choice {
    Choice {
        id: view.key.into(),
        text: view.text.into(),
        selected: view.chosen,
        ..Choice::default()
    }
}

#[allow(clippy::cast_possible_truncation)] // shares, 0 to 1
fn share(view: ShareView) -> ShareItem {
    ShareItem {
        label: view.label.shown(),
        count: view.count.into(),
        note: view.note.into(),
        drawn: view.drawn,
        share: view.share as f32,
        low: view.low as f32,
        high: view.high as f32,
    }
}

/// Shows the page.
pub fn show(window: &AppWindow, app: &App, now: Moment) {
    let view = app.dried_well_view(now);
    let page = window.global::<DriedWellAdapter>();
    page.set_title(view.title.into());
    page.set_subtitle(view.subtitle.into());
    page.set_back_label(view.back.into());
    page.set_intro(view.intro.into());
    let (title, text) = view.empty.unwrap_or_default();
    page.set_empty_title(title.into());
    page.set_empty_text(text.into());
    page.set_years(fill(
        page.get_years(),
        view.years.into_iter().map(chip).collect(),
    ));
    page.set_summary(sections(page.get_summary(), view.summary));
    page.set_by_title(view.by_title.into());
    page.set_kinds(fill(
        page.get_kinds(),
        view.kinds.into_iter().map(chip).collect(),
    ));
    page.set_shares(fill(
        page.get_shares(),
        view.shares.into_iter().map(share).collect(),
    ));
    page.set_verdict(view.verdict.shown());
    page.set_curve_title(view.curve_title.into());
    page.set_curve_note(view.curve_note.into());
    page.set_curve_drawn(view.curve.is_some());
    let curve = view.curve.unwrap_or_default();
    page.set_line(curve.line.into());
    page.set_band(curve.band.into());
    page.set_y_ticks(fill(page.get_y_ticks(), ticks(curve.y_ticks)));
    page.set_x_ticks(fill(page.get_x_ticks(), ticks(curve.x_ticks)));
    page.set_curve_label(curve.label.into());
    page.set_sections(sections(page.get_sections(), view.sections));
}
