//! Hands the pages of photos to Slint and their touches to the app.

use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::photos::{
    CompareView, MarkTool, PhotoSection, PhotoTile, PhotosAction, ToolsView, ViewerView,
};
use evenwall_app::route::Page;
use evenwall_piece::ids::PhotoId;
use evenwall_piece::photo::PhotoOn;
use evenwall_piece::piece::Moment;
use evenwall_ui::{
    AppWindow, Choice, CompareAdapter, CompareItem, PhotoAdapter, PhotoDot, PhotoDrawn, PhotoItem,
    PhotosAdapter,
};
use slint::{ComponentHandle, ModelRc, SharedString};

use super::flaws::ways;
use super::models::{fill, list};
use super::piece::on_page;
use super::thumbs::Thumbs;
use super::visible::Shown as _;
use super::{Screens, on, on_touch, photo_files, photos_newest, pictures};

fn does(screens: &Rc<Screens>, action: PhotosAction) -> impl FnMut() + 'static {
    on_touch(screens, move || Action::Photos(action.clone()))
}

/// A callback that needs what the page shows photos of.
fn here(
    screens: &Rc<Screens>,
    make: impl Fn(evenwall_piece::ids::PieceId, PhotoOn) -> Option<Action> + 'static,
) -> impl FnMut() + 'static {
    let act = on_page(screens, move |app, _, ()| {
        let (piece, on) = app.photos_here()?;
        make(piece, on)
    });
    move || act(())
}

/// A callback about the photo on the page.
fn shown(
    screens: &Rc<Screens>,
    make: fn(evenwall_piece::ids::PieceId, PhotoId) -> PhotosAction,
) -> impl FnMut() + 'static {
    let act = on_page(screens, move |app, piece, ()| match app.route().page()? {
        Page::Photo(_, photo) => Some(Action::Photos(make(piece, photo.clone()))),
        _ => None,
    });
    move || act(())
}

fn compare(piece: evenwall_piece::ids::PieceId, on: PhotoOn) -> Option<Action> {
    match on {
        PhotoOn::Flaw(flaw) => Some(Action::Open(Page::Compare(piece, flaw))),
        _ => None,
    }
}

/// Connects the callbacks of the adapters.
pub fn connect(screens: &Rc<Screens>) {
    photos_newest::connect(screens);
    let page = screens.window.global::<PhotosAdapter>();
    page.on_back(on_touch(screens, || Action::Back));
    page.on_open(on_page(screens, |_, piece, id: SharedString| {
        let photo = PhotoId::new(&id).ok()?;
        Some(Action::Open(Page::Photo(piece, photo)))
    }));
    page.on_newest(here(screens, |piece, on| {
        Some(Action::Photos(PhotosAction::Newest(piece, on)))
    }));
    page.on_compare(here(screens, compare));
    page.on_all(here(screens, |piece, on| {
        Some(Action::Open(Page::Photos(piece, on)))
    }));
    let weak = Rc::downgrade(screens);
    page.on_file(move || {
        if let Some(screens) = weak.upgrade() {
            photo_files::choose(&screens);
        }
    });
    connect_viewer(screens);
    let page = screens.window.global::<CompareAdapter>();
    page.on_back(on_touch(screens, || Action::Back));
    let mut step = on(screens, |(side, by): (i32, i32)| {
        let by = if by < 0 { -1 } else { 1 };
        Some(Action::Photos(PhotosAction::CompareStep(side > 0, by)))
    });
    page.on_step(move |side, by| step((side, by)));
}

fn connect_viewer(screens: &Rc<Screens>) {
    let page = screens.window.global::<PhotoAdapter>();
    page.on_back(does(screens, PhotosAction::Leave));
    page.on_step(on(screens, |by: i32| {
        let by = if by < 0 { -1 } else { 1 };
        Some(Action::Photos(PhotosAction::Step(by)))
    }));
    let mut tap = on(screens, |(x, y): (f32, f32)| {
        Some(Action::Photos(PhotosAction::Tap(
            f64::from(x),
            f64::from(y),
        )))
    });
    page.on_tapped(move |x, y| tap((x, y)));
    let weak = Rc::downgrade(screens);
    page.on_close_changed(move || {
        if let Some(screens) = weak.upgrade() {
            screens.refresh();
        }
    });
    page.on_mark_it(shown(screens, PhotosAction::Mark));
    page.on_remove(shown(screens, PhotosAction::Remove));
    page.on_bring_back(shown(screens, PhotosAction::BringBack));
    page.on_compare(here(screens, compare));
    let weak = Rc::downgrade(screens);
    page.on_save_out(move || {
        if let Some(screens) = weak.upgrade() {
            photo_files::save_out(&screens);
        }
    });
    page.on_tool_chosen(on(screens, |key: SharedString| {
        let tool = MarkTool::from_key(&key)?;
        Some(Action::Photos(PhotosAction::Tool(tool)))
    }));
    page.on_known_edited(on(screens, |text: SharedString| {
        Some(Action::Photos(PhotosAction::Known(text.into())))
    }));
    page.on_clear(does(screens, PhotosAction::Clear));
    page.on_save(does(screens, PhotosAction::SaveMarks));
}

/// Shows the page with this key.
pub fn show(window: &AppWindow, app: &App, page: &str, now: Moment) {
    match page {
        "photos" => {
            if let Some(view) = app.photos_view(now) {
                let page = window.global::<PhotosAdapter>();
                page.set_mark(view.head.mark.shown());
                page.set_title(view.head.title.shown());
                page.set_subtitle(view.head.subtitle.shown());
                page.set_back_label(view.head.back.into());
                show_section(&page, view.section);
            }
        }
        "photo" => {
            if let Some(view) = app.viewer_view(now) {
                show_viewer(&window.global::<PhotoAdapter>(), view);
            }
        }
        _ => {
            if let Some(view) = app.compare_view(now) {
                show_compare(&window.global::<CompareAdapter>(), view);
            }
        }
    }
}

/// A photo in a grid; its picture is loaded here.
pub(super) fn item(tile: &PhotoTile, small: bool) -> PhotoItem {
    let longest = if small {
        pictures::SMALL
    } else {
        pictures::FITTING
    };
    let path = if small { &tile.thumb } else { &tile.path };
    let picture = pictures::of_file(path, longest);
    let label = [&tile.when, &tile.length]
        .into_iter()
        .filter(|t| !t.is_empty())
        .map(String::as_str)
        .collect::<Vec<_>>()
        .join(", ");
    PhotoItem {
        id: tile.id.as_str().into(),
        label: label.into(),
        has_picture: picture.is_some() && tile.note.is_empty(),
        picture: picture.unwrap_or_default(),
        note: tile.note.as_str().into(),
        when: tile.when.as_str().into(),
        length: tile.length.as_str().into(),
        picked: false,
    }
}

/// Shows the photos of one thing, on their own page or in a section.
pub(super) fn show_section(page: &PhotosAdapter<'_>, section: PhotoSection) {
    page.set_section_title(section.title.into());
    page.set_count(section.count.into());
    page.set_lengths(section.tiles.iter().any(|t| !t.length.is_empty()));
    page.set_photos(Thumbs::in_place_of(page.get_photos(), section.tiles));
    page.set_empty(section.empty.into());
    page.set_drawn(section.drawn.into());
    page.set_newest_text(section.newest.into());
    page.set_file_text(section.file.into());
    page.set_compare_text(section.compare.into());
    page.set_all_text(section.all.into());
}

fn dot((x, y): (f32, f32)) -> PhotoDot {
    PhotoDot { x, y }
}

/// A line between two ends as a path on a field of 1000 x 1000.
fn line(ends: &[(f32, f32)]) -> SharedString {
    match ends {
        [(x, y), (u, v)] => {
            let [x, y, u, v] = [x, y, u, v].map(|n| n * 1000.0);
            slint::format!("M{x} {y}L{u} {v}")
        }
        _ => SharedString::new(),
    }
}

fn dots(ends: &[(f32, f32)]) -> ModelRc<PhotoDot> {
    list(ends.iter().copied().map(dot).collect())
}

fn drawn(
    spot: Option<(f32, f32)>,
    scale: &[(f32, f32)],
    crack: &[(f32, f32)],
    length: &str,
) -> PhotoDrawn {
    PhotoDrawn {
        spots: list(spot.into_iter().map(dot).collect()),
        scale_line: line(scale),
        scale_ends: dots(scale),
        crack_line: line(crack),
        crack_ends: dots(crack),
        length: length.into(),
    }
}

fn drawn_on(tile: &PhotoTile) -> PhotoDrawn {
    let crack = tile.crack.as_ref().map_or(&[][..], |ends| &ends[..]);
    drawn(tile.spot, &[], crack, &tile.length)
}

fn show_viewer(page: &PhotoAdapter<'_>, view: ViewerView) {
    page.set_mark(view.head.mark.shown());
    page.set_title(view.head.title.shown());
    page.set_subtitle(view.head.subtitle.shown());
    page.set_back_label(view.head.back.into());
    page.set_more_label(view.head.more.into());
    if page.get_id() != view.photo.id.as_str() {
        page.set_id(view.photo.id.as_str().into());
        page.set_zoom(1.0);
    }
    // Near enough to be read, all of its pixels are wanted.
    let longest = if page.get_zoom() > 1.4 {
        pictures::WHOLE
    } else {
        pictures::FITTING
    };
    let picture = pictures::of_file(&view.photo.path, longest);
    page.set_has_picture(picture.is_some());
    let damaged = picture.is_none() && view.note.is_empty();
    page.set_picture(picture.unwrap_or_default());
    page.set_shape(view.photo.shape);
    page.set_spoken(view.spoken.shown());
    page.set_note(if damaged { view.damaged } else { view.note }.into());
    page.set_has_previous(view.has_previous);
    page.set_has_next(view.has_next);
    let labels = view.labels;
    page.set_previous_label(labels.previous.into());
    page.set_next_label(labels.next.into());
    page.set_larger_label(labels.larger.into());
    page.set_smaller_label(labels.smaller.into());
    page.set_mark_text(labels.mark.into());
    page.set_save_out_text(labels.save_out.into());
    page.set_compare_text(labels.compare.into());
    page.set_remove_text(labels.remove.into());
    page.set_bring_back_text(labels.bring_back.into());
    page.set_close_label(labels.close.into());
    page.set_marking(view.tools.is_some());
    match view.tools {
        None => page.set_drawn(drawn_on(&view.photo)),
        Some(tools) => show_tools(page, tools),
    }
}

fn show_tools(page: &PhotoAdapter<'_>, tools: ToolsView) {
    let marking = tools.marking;
    page.set_drawn(drawn(
        marking.spot,
        &marking.scale,
        &marking.crack,
        &marking.length,
    ));
    let choices = tools.tools.into_iter().map(|(key, text)| Choice {
        id: key.into(),
        text: text.into(),
        selected: key == marking.tool.key(),
        ..Choice::default()
    });
    page.set_tools(fill(page.get_tools(), choices.collect()));
    page.set_tool(marking.tool.key().into());
    page.set_hint(marking.hint.into());
    page.set_known_label(tools.known.label.into());
    page.set_known_text(tools.known.text.into());
    page.set_known_unit(tools.known.unit.into());
    page.set_known_error(tools.known.error.into());
    page.set_known_ways(fill(page.get_known_ways(), ways(tools.known.ways)));
    page.set_length_text(tools.length.into());
    page.set_clear_text(tools.clear.into());
    page.set_save_text(tools.save.into());
}

fn show_compare(page: &CompareAdapter<'_>, view: CompareView) {
    page.set_mark(view.head.mark.shown());
    page.set_title(view.head.title.shown());
    page.set_subtitle(view.head.subtitle.shown());
    page.set_back_label(view.head.back.into());
    page.set_verdict(view.verdict.into());
    page.set_empty(view.empty.into());
    let sides = view.sides.into_iter().map(|side| {
        let photo = item(&side.photo, false);
        CompareItem {
            drawn: drawn_on(&side.photo),
            has_picture: photo.has_picture,
            picture: photo.picture,
            shape: side.photo.shape,
            note: photo.note,
            spoken: side.spoken.into(),
            when: photo.when,
            length: photo.length,
            has_older: side.has_older,
            has_newer: side.has_newer,
            older: side.older.into(),
            newer: side.newer.into(),
        }
    });
    page.set_sides(fill(page.get_sides(), sides.collect()));
}
