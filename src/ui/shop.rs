//! Hands the pages of Shop to Slint and their touches to the app.

use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::drying::view::TickView;
use evenwall_app::shop::view::{FieldView, FormView, RowView, SectionView, ShopView};
use evenwall_app::shop::{AirChartView, ShopAction};
use evenwall_piece::piece::Moment;
use evenwall_ui::{
    AppWindow, ChartDot, ChartTick, Choice, ShopAdapter, ShopChartItem, ShopFieldItem, ShopRowItem,
    ShopSectionItem, ShopSubAdapter,
};
use slint::{ComponentHandle, Model, ModelRc, SharedString};

use super::models::{fill, list};
use super::visible::Shown;
use super::{Screens, on, on_touch};

/// A touch of a row does what the row of the view says.
fn on_row(
    screens: &Rc<Screens>,
    view: fn(&App, Moment) -> ShopView,
) -> impl FnMut(SharedString) + 'static {
    let screens = Rc::downgrade(screens);
    move |id| {
        let Some(screens) = screens.upgrade() else {
            return;
        };
        let now = (screens.clock)();
        if let Some(action) = screens.read(|app| view(app, now).touch(&id)) {
            screens.act(action);
        }
    }
}

/// A touch of what the small charts show.
fn on_curve(screens: &Rc<Screens>) -> impl FnMut(SharedString) + 'static {
    let screens = Rc::downgrade(screens);
    move |key| {
        let Some(screens) = screens.upgrade() else {
            return;
        };
        let now = (screens.clock)();
        if let Some(action) = screens.read(|app| app.shop_page_view(now).touch_curve(&key)) {
            screens.act(action);
        }
    }
}

/// Connects the callbacks of the adapters.
pub fn connect(screens: &Rc<Screens>) {
    let hub = screens.window.global::<ShopAdapter>();
    hub.on_touched(on_row(screens, App::shop_view));
    let page = screens.window.global::<ShopSubAdapter>();
    page.on_touched(on_row(screens, App::shop_page_view));
    page.on_curve_chosen(on_curve(screens));
    page.on_back(on_touch(screens, || Action::Back));
    let mut edited = on(screens, |(key, text): (SharedString, SharedString)| {
        Some(ShopAction::Typed(key.into(), text.into()).into())
    });
    page.on_edited(move |key, text| edited((key, text)));
    page.on_save(on_touch(screens, || ShopAction::Save.into()));
    page.on_remove(on_touch(screens, || ShopAction::Remove.into()));
    page.on_close(on_touch(screens, || ShopAction::Close.into()));
}

fn row(view: RowView) -> ShopRowItem {
    ShopRowItem {
        id: view.id.into(),
        kind: view.kind.key().into(),
        title: view.title.shown(),
        note: view.note.shown(),
        value: view.value.shown(),
        icon: view.icon.into(),
        selected: view.selected,
        button: view.button.shown(),
    }
}

/// A small chart; its lists are kept, so that charts compare equal.
fn chart(view: Option<AirChartView>, old: Option<ShopChartItem>) -> ShopChartItem {
    let Some(view) = view else {
        return ShopChartItem::default();
    };
    let old = old.unwrap_or_default();
    #[allow(clippy::cast_possible_truncation)] // fractions of the drawing
    let dots = view.dots.into_iter().map(|(x, y)| ChartDot {
        x: x as f32,
        y: y as f32,
        kind: SharedString::default(),
    });
    ShopChartItem {
        line: view.line.into(),
        dots: fill(old.dots, dots.collect()),
        y_ticks: fill(old.y_ticks, ticks(view.y_ticks)),
        x_ticks: fill(old.x_ticks, ticks(view.x_ticks)),
        label: view.label.into(),
    }
}

/// Marks along a chart.
pub(super) fn ticks(views: Vec<TickView>) -> Vec<ChartTick> {
    #[allow(clippy::cast_possible_truncation)] // fractions of the drawing
    let tick = |view: TickView| ChartTick {
        at: view.at as f32,
        text: view.text.into(),
    };
    views.into_iter().map(tick).collect()
}

/// The cards. A card keeps its list of rows, so that what has the focus keeps it.
pub(super) fn sections(
    old: ModelRc<ShopSectionItem>,
    views: Vec<SectionView>,
) -> ModelRc<ShopSectionItem> {
    let cards = views.into_iter().enumerate().map(|(place, view)| {
        let kept = old.row_data(place).filter(|o| o.key == view.key);
        let chart = chart(view.chart, kept.as_ref().map(|o| o.chart.clone()));
        let rows: Vec<ShopRowItem> = view.rows.into_iter().map(row).collect();
        ShopSectionItem {
            key: view.key.into(),
            title: view.title.shown(),
            note: view.note.shown(),
            chart,
            rows: match kept {
                Some(kept) => fill(kept.rows, rows),
                None => list(rows),
            },
        }
    });
    let cards = cards.collect();
    fill(old, cards)
}

fn choices(views: impl Iterator<Item = (String, String)>) -> Vec<Choice> {
    views
        .map(|(id, text)| Choice {
            id: id.into(),
            text: text.into(),
            ..Choice::default()
        })
        .collect()
}

/// A field; its lists are kept, so that fields compare equal.
fn field(view: FieldView, old: Option<ShopFieldItem>) -> ShopFieldItem {
    let ways = choices(view.ways.into_iter().map(|way| (way.clone(), way)));
    let options = choices(view.choices.into_iter().map(|c| (c.key, c.text)));
    let (ways, options) = match old {
        Some(old) => (fill(old.ways, ways), fill(old.choices, options)),
        None => (list(ways), list(options)),
    };
    ShopFieldItem {
        key: view.key.into(),
        kind: view.kind.key().into(),
        label: view.label.into(),
        text: view.text.into(),
        placeholder: view.placeholder.into(),
        error: view.error.into(),
        note: view.note.shown(),
        unit: view.unit.into(),
        choices: options,
        ways,
    }
}

fn show_form(page: &ShopSubAdapter, form: Option<FormView>) {
    let Some(form) = form else {
        page.set_form_shown(false);
        return;
    };
    let old = page.get_fields();
    let fields = form
        .fields
        .into_iter()
        .enumerate()
        .map(|(place, view)| {
            let kept = old.row_data(place).filter(|o| o.key == view.key);
            field(view, kept)
        })
        .collect();
    page.set_fields(fill(old, fields));
    page.set_form_title(form.title.shown());
    page.set_form_note(form.note.into());
    page.set_form_follows(form.follows.into());
    page.set_form_save(form.save.into());
    page.set_form_remove(form.remove.into());
    // Last: it opens with its contents in place.
    page.set_form_shown(true);
}

/// Shows the page with this key.
pub fn show(window: &AppWindow, app: &App, page: &str, now: Moment) {
    if page == "shop" {
        let view = app.shop_view(now);
        let hub = window.global::<ShopAdapter>();
        hub.set_title(view.title.shown());
        hub.set_sections(sections(hub.get_sections(), view.sections));
        return;
    }
    let view = app.shop_page_view(now);
    let page = window.global::<ShopSubAdapter>();
    page.set_title(view.title.shown());
    page.set_subtitle(view.subtitle.shown());
    page.set_intro(view.intro.into());
    page.set_back_label(view.back.into());
    page.set_close_label(view.close.into());
    page.set_clear_label(view.clear.into());
    let chosen = view.curves.iter().find(|c| c.chosen);
    page.set_curve(chosen.map_or_else(SharedString::default, |c| c.key.as_str().into()));
    let curves = choices(view.curves.into_iter().map(|c| (c.key, c.text)));
    page.set_curves(fill(page.get_curves(), curves));
    let (id, text) = view
        .primary
        .map_or_else(Default::default, |p| (p.id, p.title));
    page.set_primary_id(id.into());
    page.set_primary_text(text.into());
    // A page of its own does not take over the rows of the one before.
    let old = if page.get_key() == view.key {
        page.get_sections()
    } else {
        list(Vec::new())
    };
    page.set_sections(sections(old, view.sections));
    page.set_key(view.key.into());
    show_form(&page, view.form);
}
