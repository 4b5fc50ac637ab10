//! Hands the pages of one piece to Slint and their touches to the app.

use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::piece::PieceAction;
use evenwall_app::piece::view::{HeadView, LineView, PieceView, StationView, WayView};
use evenwall_app::route::Page;
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::BagFeel;
use evenwall_ui::{
    AppWindow, Choice, EarlierItem, EndedItem, LineItem, PhotoItem, PieceAdapter, PieceBanner,
    StageItem, StationMark, WayItem,
};
use slint::{ComponentHandle, SharedString};

use super::drawing::paths;
use super::models::{fill, list};
use super::visible::Shown as _;
use super::{Screens, on_touch, piece_forms};

/// Connects the callbacks of the adapters.
pub fn connect(screens: &Rc<Screens>) {
    let adapter = screens.window.global::<PieceAdapter>();
    adapter.on_back(on_touch(screens, || Action::Back));
    adapter.on_more(on_touch(screens, || Action::Piece(PieceAction::More)));
    adapter.on_close_sheet(on_touch(screens, || Action::Piece(PieceAction::CloseSheet)));
    adapter.on_earlier_toggled(on_touch(screens, || Action::Piece(PieceAction::Earlier)));
    let of_page = on_page(screens, |_, piece, (line, on): (SharedString, bool)| {
        Some(Action::Piece(PieceAction::Tick {
            piece,
            line: line.into(),
            on,
        }))
    });
    adapter.on_toggled(move |line, on| of_page((line, on)));
    adapter.on_why(super::on(screens, |line: SharedString| {
        Some(Action::Piece(PieceAction::Why(line.into())))
    }));
    adapter.on_answered(on_page(screens, |_, piece, key: SharedString| {
        Some(Action::Piece(PieceAction::Looked {
            piece,
            feel: BagFeel::from_key(&key),
            mould: key == "mould",
            crack: key == "crack",
        }))
    }));
    adapter.on_step(on_page(screens, |app, _, key: SharedString| {
        app.step_action(&key)
    }));
    adapter.on_way(on_page(screens, |app, _, key: SharedString| {
        app.way_action(&key)
    }));
    adapter.on_picked(on_page(screens, |_, piece, _: i32| {
        Some(Action::Open(Page::Wall(piece)))
    }));
    piece_forms::connect(screens);
}

/// Makes a callback that needs the piece on the page: the action names it, so that it can be tried again later.
pub(super) fn on_page<A>(
    screens: &Rc<Screens>,
    make: impl Fn(&App, PieceId, A) -> Option<Action> + 'static,
) -> impl Fn(A) + 'static {
    let screens = Rc::downgrade(screens);
    move |argument| {
        let Some(screens) = screens.upgrade() else {
            return;
        };
        let action = screens.read(|app| {
            let piece = app.route().page()?.piece()?.clone();
            make(app, piece, argument)
        });
        if let Some(action) = action {
            screens.act(action);
        }
    }
}

/// Shows the page with this key.
pub fn show(window: &AppWindow, app: &App, page: &str, now: Moment) {
    match page {
        "piece" => {
            if let Some(view) = app.piece_view(now) {
                show_piece(&window.global::<PieceAdapter>(), view);
            }
        }
        _ => piece_forms::show(window, app, page, now),
    }
}

fn show_piece(adapter: &PieceAdapter<'_>, view: PieceView) {
    let HeadView {
        mark,
        title,
        subtitle,
        back,
        more,
    } = view.head;
    adapter.set_mark(mark.shown());
    adapter.set_title(title.shown());
    adapter.set_subtitle(subtitle.shown());
    adapter.set_back_label(back.into());
    adapter.set_more_label(more.into());
    adapter.set_close_label(view.close.into());
    let banners = view.banners.into_iter().map(|b| PieceBanner {
        id: b.key.into(),
        kind: b.kind.into(),
        text: b.text.into(),
        action: b.action.into(),
    });
    adapter.set_banners(fill(adapter.get_banners(), banners.collect()));
    adapter.set_section(paths(view.section));
    adapter.set_section_label(view.section_label.into());
    adapter.set_legend(view.legend.into());
    adapter.set_stations(fill(
        adapter.get_stations(),
        view.stations.into_iter().map(station).collect(),
    ));
    let stages = view.stages.into_iter().map(|s| StageItem {
        name: s.name.shown(),
        state: s.state.into(),
    });
    adapter.set_stages(fill(adapter.get_stages(), stages.collect()));
    adapter.set_stages_label(view.stages_label.into());
    adapter.set_stage_in_words(view.stage_in_words.into());
    adapter.set_caution(view.caution.into());
    adapter.set_caution_note(view.caution_note.into());
    adapter.set_checklist_title(view.checklist_title.into());
    adapter.set_checklist_count(view.checklist_count.into());
    adapter.set_lines(fill(adapter.get_lines(), lines(view.lines)));
    adapter.set_why_label(view.why_label.into());
    adapter.set_earlier_text(view.earlier_text.into());
    let earlier = view.earlier.into_iter().map(|e| EarlierItem {
        title: e.title.shown(),
        count: e.count.into(),
        lines: list(lines(e.lines)),
    });
    adapter.set_earlier(list(earlier.collect()));
    adapter.set_look_shown(view.look.is_some());
    if let Some(look) = view.look {
        adapter.set_look_title(look.title.into());
        adapter.set_look_due(look.due.into());
        adapter.set_look_late(look.late);
        adapter.set_look_mould(look.mould.into());
        adapter.set_look_crack(look.crack.into());
        let answers = look.answers.into_iter().map(|a| Choice {
            id: a.key.into(),
            text: a.text.into(),
            note: a.note.into(),
            icon: a.icon.into(),
            selected: false,
        });
        adapter.set_look_answers(fill(adapter.get_look_answers(), answers.collect()));
    }
    adapter.set_portrait_shown(view.portrait.is_some());
    adapter.set_portrait_drawn(view.portrait_drawn.into());
    if let Some(portrait) = &view.portrait {
        // Its own file: it is shown larger than a thumbnail.
        let item = super::photos::item(portrait, false);
        let label = slint::format!("{}, {}", view.portrait_label, item.label);
        adapter.set_portrait(PhotoItem { label, ..item });
    }
    adapter.set_ways_title(view.ways_title.into());
    adapter.set_ways(fill(adapter.get_ways(), ways(view.ways)));
    let (id, text, icon) = view
        .next
        .map_or(("", String::new(), ""), |n| (n.key, n.text, n.icon));
    adapter.set_next_id(id.into());
    adapter.set_next_text(text.into());
    adapter.set_next_icon(icon.into());
    let (id, text, icon) = view
        .then
        .map_or(("", String::new(), ""), |n| (n.key, n.text, n.icon));
    adapter.set_then_id(id.into());
    adapter.set_then_text(text.into());
    adapter.set_then_icon(icon.into());
    adapter.set_ended_shown(view.ended.is_some());
    if let Some(end) = view.ended {
        adapter.set_ended(ended(end));
    }
    if let Some((title, all)) = view.more {
        adapter.set_more_title(title.into());
        adapter.set_more_ways(fill(adapter.get_more_ways(), ways(all)));
        adapter.set_more_shown(true);
    } else {
        adapter.set_more_shown(false);
    }
    if let Some(why) = view.why {
        adapter.set_why_title(why.title.into());
        adapter.set_why_line(why.line.into());
        adapter.set_why_text(why.why.into());
        adapter.set_why_source(why.source.into());
        adapter.set_why_shown(true);
    } else {
        adapter.set_why_shown(false);
    }
}

fn lines(views: Vec<LineView>) -> Vec<LineItem> {
    views
        .into_iter()
        .map(|l| LineItem {
            id: l.id.into(),
            text: l.text.into(),
            trailing: l.trailing.into(),
            checked: l.checked,
            boxless: l.boxless,
            faded: l.faded,
            has_why: l.has_why,
        })
        .collect()
}

fn ways(views: Vec<WayView>) -> Vec<WayItem> {
    views
        .into_iter()
        .map(|w| WayItem {
            id: w.key.into(),
            title: w.title.shown(),
            note: w.note.into(),
            icon: w.icon.into(),
        })
        .collect()
}

pub(super) fn ended(view: evenwall_app::piece::view::EndedView) -> EndedItem {
    EndedItem {
        title: view.title.shown(),
        day: view.day.into(),
        lines: list(view.lines.into_iter().map(SharedString::from).collect()),
        put_back: view.put_back.into(),
    }
}

#[allow(clippy::cast_possible_truncation)] // millimetres of a piece
fn station(view: StationView) -> StationMark {
    StationMark {
        number: view.label.into(),
        label: view.spoken.into(),
        inner_x: view.inner.0 as f32,
        inner_y: view.inner.1 as f32,
        outer_x: view.outer.0 as f32,
        outer_y: view.outer.1 as f32,
        slot: view.slot as f32,
        state: if view.read { "read" } else { "unread" }.into(),
        value: view.value.into(),
        kind: view.verdict.into(),
        verdict: view.verdict_text.into(),
    }
}
