//! Hands the views of the flaws to Slint and their touches to the app.

use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::drawing::OutsideDrawing;
use evenwall_app::flaws::{
    AgainChoice, ClockSpot, FlawCard, FlawView, FlawsAction, FlawsView, FormView, OptionView,
    SeenView, SpotView, TypedView,
};
use evenwall_app::route::Page;
use evenwall_piece::ids::FlawId;
use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::{Face, FlawChange, FlawKind, Treatment};
use evenwall_ui::{
    AppWindow, Choice, ClockMark, FlawAdapter, FlawCardItem, FlawGroupItem, FlawHistoryItem,
    FlawsAdapter, OutsideLetter, PhotoItem, PhotosAdapter, SectionPaths, StationMark,
};
use slint::{ComponentHandle, SharedString};

use super::models::{fill, list};
use super::piece::on_page;
use super::visible::Shown;
use super::{Screens, drawing, on, on_touch, photos, pictures};

/// Connects the callbacks of the adapters.
pub fn connect(screens: &Rc<Screens>) {
    let page = screens.window.global::<FlawsAdapter>();
    page.on_back(on_touch(screens, || Action::Back));
    page.on_open(on_page(screens, |_, piece, id: SharedString| {
        FlawId::new(&id)
            .ok()
            .map(|flaw| Action::Open(Page::Flaw(piece, Some(flaw))))
    }));
    let add = on_page(screens, |_, piece, ()| {
        Some(Action::Open(Page::Flaw(piece, None)))
    });
    page.on_add(move || add(()));
    connect_form(screens);
    connect_seen(screens);
}

/// A callback with an argument that becomes something done to a flaw.
fn does<A: 'static>(
    screens: &Rc<Screens>,
    make: impl Fn(A) -> Option<FlawsAction> + 'static,
) -> impl FnMut(A) + 'static {
    on(screens, move |argument| make(argument).map(Action::Flaws))
}

fn step(direction: i32) -> i8 {
    if direction < 0 { -1 } else { 1 }
}

fn connect_form(screens: &Rc<Screens>) {
    let page = screens.window.global::<FlawAdapter>();
    page.on_back(on_touch(screens, || Action::Flaws(FlawsAction::Leave)));
    page.on_kind(does(screens, |key: SharedString| {
        FlawKind::from_key(&key).map(FlawsAction::Kind)
    }));
    page.on_station_picked(on_page(screens, |app, _, place: i32| {
        let station = app.flaw_station_at(usize::try_from(place).ok()?)?;
        Some(Action::Flaws(FlawsAction::Station(station)))
    }));
    page.on_clock_picked(does(screens, |hour: f32| {
        Some(FlawsAction::ClockAt(f64::from(hour)))
    }));
    page.on_clock_stepped(does(screens, |by: i32| {
        Some(FlawsAction::ClockStep(step(by)))
    }));
    page.on_clock_cleared(on_touch(screens, || Action::Flaws(FlawsAction::ClearClock)));
    page.on_treatment(does(screens, |key: SharedString| {
        Treatment::from_key(&key).map(FlawsAction::Treatment)
    }));
    page.on_unfold(on_touch(screens, || Action::Flaws(FlawsAction::More)));
    page.on_size_edited(does(screens, |text: SharedString| {
        Some(FlawsAction::Size(text.into()))
    }));
    page.on_through_toggled(does(screens, |on| Some(FlawsAction::Through(on))));
    page.on_face(does(screens, |key: SharedString| {
        Face::from_key(&key).map(FlawsAction::Face)
    }));
    page.on_goes_stepped(does(screens, |by: i32| Some(FlawsAction::Goes(step(by)))));
    page.on_again(does(screens, |key: SharedString| {
        AgainChoice::from_key(&key).map(FlawsAction::Again)
    }));
    page.on_again_day_edited(does(screens, |text: SharedString| {
        Some(FlawsAction::AgainDay(text.into()))
    }));
    page.on_note_edited(does(screens, |text: SharedString| {
        Some(FlawsAction::Note(text.into()))
    }));
    page.on_save(on_touch(screens, || Action::Flaws(FlawsAction::Save)));
}

fn connect_seen(screens: &Rc<Screens>) {
    let page = screens.window.global::<FlawAdapter>();
    page.on_looked(does(screens, |key: SharedString| {
        FlawChange::from_key(&key).map(FlawsAction::Looked)
    }));
    page.on_longer_edited(does(screens, |text: SharedString| {
        Some(FlawsAction::Length(text.into()))
    }));
    page.on_longer_saved(on_touch(screens, || Action::Flaws(FlawsAction::SaveLonger)));
    page.on_sheet_closed(on_touch(screens, || Action::Flaws(FlawsAction::CloseSheet)));
    page.on_treat(on_touch(screens, || Action::Flaws(FlawsAction::TreatAgain)));
    page.on_correct(on_touch(screens, || Action::Flaws(FlawsAction::Correct)));
    page.on_take_back(on_touch(screens, || {
        Action::Flaws(FlawsAction::AskTakeBack)
    }));
}

/// Shows the page with this key.
pub fn show(window: &AppWindow, app: &App, page: &str, now: Moment) {
    if page == "flaws" {
        if let Some(view) = app.flaws_view(now) {
            show_list(&window.global::<FlawsAdapter>(), view);
        }
    } else if let Some(mut view) = app.flaw_view(now) {
        if let Some(seen) = &mut view.seen {
            let section = std::mem::take(&mut seen.photos);
            photos::show_section(&window.global::<PhotosAdapter>(), section);
        }
        show_flaw(&window.global::<FlawAdapter>(), view);
    }
}

fn show_list(page: &FlawsAdapter<'_>, view: FlawsView) {
    page.set_mark(view.head.mark.shown());
    page.set_title(view.head.title.shown());
    page.set_subtitle(view.head.subtitle.shown());
    page.set_back_label(view.head.back.into());
    page.set_mouth(fraction(view.outside.mouth));
    page.set_outside(outside(view.outside));
    page.set_outside_label(view.outside_label.into());
    let letters = view.letters.into_iter().map(|l| OutsideLetter {
        text: l.text.into(),
        x: fraction(l.x),
        y: fraction(l.y),
        open: l.open,
    });
    page.set_letters(fill(page.get_letters(), letters.collect()));
    page.set_clock(fill(page.get_clock(), marks(view.clock)));
    page.set_clock_label(view.clock_label.into());
    page.set_legend(view.legend.into());
    let groups = view.groups.into_iter().map(|g| FlawGroupItem {
        title: g.title.shown(),
        count: g.count.into(),
        cards: list(g.cards.into_iter().map(card).collect()),
    });
    page.set_groups(list(groups.collect()));
    let (title, text) = view.empty.unwrap_or_default();
    page.set_empty_title(title.into());
    page.set_empty_text(text.into());
    page.set_drawn(view.drawn.into());
    page.set_add_text(view.add.into());
}

fn card(view: FlawCard) -> FlawCardItem {
    let picture = pictures::of_file(&view.thumb, pictures::SMALL);
    FlawCardItem {
        has_photo: view.has_photo,
        photo: PhotoItem {
            has_picture: picture.is_some(),
            picture: picture.unwrap_or_default(),
            ..PhotoItem::default()
        },
        id: view.id.into(),
        letter: view.letter.into(),
        open: view.open,
        title: view.title.shown(),
        place: view.place.shown(),
        lines: texts(view.lines),
        tag: view.tag.into(),
        tag_kind: view.tag_kind.into(),
        clock: list(marks(view.clock)),
        spoken: view.spoken.into(),
    }
}

fn show_flaw(page: &FlawAdapter<'_>, view: FlawView) {
    page.set_mark(view.head.mark.shown());
    page.set_title(view.head.title.shown());
    page.set_subtitle(view.head.subtitle.shown());
    page.set_back_label(view.head.back.into());
    page.set_part(
        match (&view.form, &view.seen) {
            (Some(_), _) => "form",
            (None, Some(_)) => "seen",
            (None, None) => "gone",
        }
        .into(),
    );
    if let Some((title, text)) = view.gone {
        page.set_gone_title(title.into());
        page.set_gone_text(text.into());
    }
    if let Some(form) = view.form {
        show_form(page, form);
    }
    if let Some(seen) = view.seen {
        show_seen(page, seen);
    }
    page.set_longer_shown(view.longer.is_some());
    if let Some(longer) = view.longer {
        page.set_longer_title(longer.title.into());
        page.set_longer_label(longer.size.label.into());
        page.set_longer_text(longer.size.text.into());
        page.set_longer_unit(longer.size.unit.into());
        page.set_longer_error(longer.size.error.into());
        page.set_longer_ways(fill(page.get_longer_ways(), ways(longer.size.ways)));
        page.set_longer_save(longer.save.into());
        page.set_close_label(longer.close.into());
    }
}

fn show_form(page: &FlawAdapter<'_>, form: FormView) {
    page.set_kind_title(form.kind_title.into());
    page.set_kinds(fill(page.get_kinds(), options(form.kinds)));
    page.set_place_title(form.place_title.into());
    page.set_place_note(form.place_note.into());
    page.set_section(drawing::paths(form.section));
    page.set_section_label(form.section_label.into());
    let stations = form.spots.into_iter().map(station).collect();
    page.set_stations(fill(page.get_stations(), stations));
    page.set_station(form.station.into());
    if let Some(clock) = form.clock {
        page.set_clock_marks(fill(page.get_clock_marks(), marks(clock.spots)));
        page.set_mouth(fraction(clock.mouth));
        page.set_clock_label(clock.label.into());
        page.set_clock_what(clock.what.into());
        page.set_clock_value(clock.value.into());
        page.set_clock_less(clock.less.into());
        page.set_clock_more(clock.more.into());
        page.set_clock_clear(clock.clear.into());
    }
    page.set_treat_title(form.treat_title.into());
    page.set_treatments(fill(page.get_treatments(), options(form.treatments)));
    page.set_practice(form.practice.into());
    page.set_advice(texts(form.advice));
    page.set_caution(form.caution.0.into());
    page.set_caution_note(form.caution.1.into());
    page.set_more_text(form.more_text.into());
    page.set_more(form.more);
    page.set_size_shown(form.size.is_some());
    let size = form.size.unwrap_or_default();
    page.set_size_label(size.label.into());
    page.set_size_text(size.text.into());
    page.set_size_unit(size.unit.into());
    page.set_size_error(size.error.into());
    page.set_size_ways(fill(page.get_size_ways(), ways(size.ways)));
    page.set_through_shown(form.through.is_some());
    let (text, note, through) = form.through.unwrap_or_default();
    page.set_through_text(text.into());
    page.set_through_note(note.into());
    page.set_through(through);
    page.set_on_word(form.on_off.0.into());
    page.set_off_word(form.on_off.1.into());
    page.set_face_title(form.face_title.into());
    page.set_faces(fill(page.get_faces(), options(form.faces)));
    let (label, goes, less, more) = form.goes.unwrap_or_default();
    page.set_goes_label(label.into());
    page.set_goes(goes.into());
    page.set_goes_less(less);
    page.set_goes_more(more);
    page.set_again_title(form.again_title.into());
    page.set_agains(fill(page.get_agains(), options(form.agains)));
    page.set_again_day_shown(form.again_day.is_some());
    let TypedView {
        label,
        text,
        hint,
        error,
        ..
    } = form.again_day.unwrap_or_default();
    page.set_again_day_label(label.into());
    page.set_again_day_text(text.into());
    page.set_again_day_hint(hint.into());
    page.set_again_day_error(error.into());
    page.set_note_label(form.note_label.into());
    page.set_note_text(form.note.into());
    page.set_save_text(form.save.into());
    page.set_save_active(form.save_active);
}

fn show_seen(page: &FlawAdapter<'_>, seen: SeenView) {
    page.set_letter(seen.letter.into());
    page.set_open(seen.open);
    page.set_seen_place(page.get_subtitle());
    page.set_seen_clock(fill(page.get_seen_clock(), marks(seen.clock)));
    page.set_seen_lines(texts(seen.lines));
    page.set_seen_tag(seen.tag.into());
    page.set_seen_note(seen.note.shown());
    page.set_look_title(seen.look_title.into());
    page.set_looks(fill(page.get_looks(), options(seen.looks)));
    page.set_lengths(seen.lengths.into());
    page.set_history_title(seen.history_title.into());
    let history = seen.history.into_iter().map(|h| FlawHistoryItem {
        day: h.day.into(),
        text: h.text.into(),
        note: h.note.into(),
    });
    page.set_history(fill(page.get_history(), history.collect()));
    page.set_treat_text(seen.treat.into());
    page.set_correct_text(seen.correct.into());
    page.set_take_back_text(seen.take_back.into());
}

fn texts(lines: Vec<String>) -> slint::ModelRc<SharedString> {
    list(lines.into_iter().map(SharedString::from).collect())
}

/// Choices as the components take them.
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

/// Ways to read a number: each is put into the field as it stands.
pub(super) fn ways(ways: Vec<String>) -> Vec<Choice> {
    ways.into_iter()
        .map(|w| Choice {
            id: w.as_str().into(),
            text: w.into(),
            ..Choice::default()
        })
        .collect()
}

fn marks(spots: Vec<ClockSpot>) -> Vec<ClockMark> {
    spots
        .into_iter()
        .map(|s| ClockMark {
            hour: fraction(s.hour),
            out: fraction(s.out),
            text: s.text.into(),
            open: s.open,
        })
        .collect()
}

#[allow(clippy::cast_possible_truncation)] // fractions, hours and millimetres of a piece
fn fraction(value: f64) -> f32 {
    value as f32
}

fn station(spot: SpotView) -> StationMark {
    StationMark {
        number: spot.number.into(),
        label: spot.label.into(),
        inner_x: fraction(spot.inner.0),
        inner_y: fraction(spot.inner.1),
        outer_x: fraction(spot.outer.0),
        outer_y: fraction(spot.outer.1),
        slot: fraction(spot.slot),
        state: if spot.picked { "now" } else { "read" }.into(),
        ..StationMark::default()
    }
}

fn outside(drawing: OutsideDrawing) -> SectionPaths {
    SectionPaths {
        w: fraction(drawing.width),
        h: fraction(drawing.height),
        outside: drawing.skin.into(),
        grain: drawing.grain.into(),
        outline: drawing.outline.into(),
        ..SectionPaths::default()
    }
}
