//! Hands the views of True and Finish to Slint and their touches to the app.

use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::flaws::TypedView;
use evenwall_app::piece::{DetailsAction, PieceAction};
use evenwall_app::route::Page;
use evenwall_app::truing::{
    ChipView, FinishRow, FinishView, OvalPart, SheetView, TrueView, TruingAction, TruingSheet,
};
use evenwall_piece::detail::DetailField;
use evenwall_piece::ids::FlawId;
use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::CrackAnswer;
use evenwall_ui::{
    AppWindow, Choice, CrackItem, FinishItem, FinishingAdapter, LackItem, LegendItem, PlaceItem,
    TruingAdapter,
};
use slint::{ComponentHandle, SharedString};

use super::drawing::oval_paths;
use super::flaws::{options, ways};
use super::models::fill;
use super::piece::on_page;
use super::visible::Shown;
use super::{Screens, on, on_touch};

fn does(action: TruingAction) -> Action {
    Action::Truing(action)
}

/// Connects the callbacks of the adapters.
pub fn connect(screens: &Rc<Screens>) {
    let page = screens.window.global::<TruingAdapter>();
    page.on_back(on_touch(screens, || Action::Back));
    page.on_crack_opened(on_page(screens, |_, piece, id: SharedString| {
        let flaw = FlawId::new(&id).ok()?;
        Some(Action::Open(Page::Flaw(piece, Some(flaw))))
    }));
    page.on_answer(on_page(screens, |_, piece, key: SharedString| {
        let answer = CrackAnswer::from_key(&key)?;
        Some(does(TruingAction::Cracks { piece, answer }))
    }));
    let note = on_page(screens, |_, piece, (): ()| {
        Some(Action::Open(Page::Flaw(piece, None)))
    });
    page.on_note_a_crack(move || note(()));
    page.on_measure(opens(screens, TruingSheet::Oval));
    page.on_measure_more(opens(screens, TruingSheet::Where));
    page.on_show(on(screens, |number: i32| {
        Some(does(TruingAction::Show(u8::try_from(number).ok()?)))
    }));
    page.on_lack_opened(on_page(screens, |_, piece, key: SharedString| {
        Some(match key.as_str() {
            "wall" => Action::Open(Page::Wall(piece)),
            "size" => Action::Piece(PieceAction::Details(DetailsAction::OpenAt {
                piece,
                field: DetailField::Diameter,
            })),
            _ => return None,
        })
    }));
    page.on_measure_spigot(opens(screens, TruingSheet::Spigot));
    page.on_decide(opens(screens, TruingSheet::Decision));
    page.on_next(on_touch(screens, || does(TruingAction::Next)));
    page.on_first_edited(on(screens, |text: SharedString| {
        Some(does(TruingAction::First(text.into())))
    }));
    page.on_second_edited(on(screens, |text: SharedString| {
        Some(does(TruingAction::Second(text.into())))
    }));
    page.on_chose(on(screens, |key: SharedString| {
        Some(does(TruingAction::Choose(key.into())))
    }));
    page.on_save(on_touch(screens, || does(TruingAction::Save)));
    page.on_close(on_touch(screens, || does(TruingAction::Close)));

    let page = screens.window.global::<FinishingAdapter>();
    page.on_back(on_touch(screens, || Action::Back));
    page.on_open(on_page(screens, |_, piece, key: SharedString| {
        Some(match key.as_str() {
            "walls" => Action::Open(Page::Wall(piece)),
            "weight" => Action::Open(Page::Weigh(piece)),
            "photos" => Action::Open(Page::Photos(
                piece,
                evenwall_piece::photo::PhotoOn::Finished,
            )),
            "signed" => does(TruingAction::Open(TruingSheet::Signed)),
            "size" => Action::Piece(PieceAction::Details(DetailsAction::OpenAt {
                piece,
                field: DetailField::FinishedSize,
            })),
            _ => return None,
        })
    }));
    page.on_add_grits(opens(screens, TruingSheet::Grits));
    page.on_add_coat(opens(screens, TruingSheet::Coat));
    page.on_finish(on_touch(screens, || does(TruingAction::Finished)));
}

fn opens(screens: &Rc<Screens>, sheet: TruingSheet) -> impl FnMut() + 'static {
    on_touch(screens, move || does(TruingAction::Open(sheet)))
}

/// Shows the page with this key.
pub fn show(window: &AppWindow, app: &App, page: &str, now: Moment) {
    let sheets = window.global::<TruingAdapter>();
    if page == "truing" {
        if let Some(view) = app.true_view(now) {
            show_true(&sheets, view);
        }
    } else if let Some(view) = app.finish_view(now) {
        show_finish(&sheets, &window.global::<FinishingAdapter>(), view);
    }
}

fn show_true(page: &TruingAdapter<'_>, view: TrueView) {
    page.set_mark(view.head.mark.shown());
    page.set_title(view.head.title.shown());
    page.set_subtitle(view.head.subtitle.shown());
    page.set_back_label(view.head.back.into());
    page.set_crack_title(view.crack_title.into());
    page.set_crack_note(view.crack_note.into());
    let cracks = view.cracks.into_iter().map(|c| CrackItem {
        id: c.id.into(),
        title: c.title.shown(),
        note: c.note.into(),
    });
    page.set_cracks(fill(page.get_cracks(), cracks.collect()));
    page.set_answers(fill(page.get_answers(), options(view.answers)));
    page.set_answered(view.answered.into());
    page.set_note_crack(view.note_crack.into());
    page.set_caution(view.caution.into());
    page.set_caution_note(view.caution_note.into());
    page.set_oval_title(view.oval_title.into());
    let (label, value, unit) = view.longest;
    page.set_longest_label(label.into());
    page.set_longest(value.into());
    page.set_longest_unit(unit.into());
    let (label, value, unit) = view.shortest;
    page.set_shortest_label(label.into());
    page.set_shortest(value.into());
    page.set_shortest_unit(unit.into());
    page.set_oval_shown(view.oval.is_some());
    if let Some(oval) = view.oval {
        show_oval(page, oval);
    }
    page.set_more(view.more.into());
    page.set_places_title(view.places_title.into());
    let places = view.places.into_iter().map(|p| PlaceItem {
        number: i32::from(p.number),
        title: p.title.into(),
        note: p.note.into(),
        tag_kind: p.tag_kind.into(),
        tag: p.tag.into(),
        selected: p.selected,
    });
    page.set_places(fill(page.get_places(), places.collect()));
    page.set_moved(fill(page.get_moved(), lines(view.moved)));
    page.set_notes(fill(page.get_notes(), lines(view.notes)));
    let lacks = view.lacks.into_iter().map(|l| LackItem {
        id: l.key.into(),
        title: l.title.into(),
        note: l.note.into(),
    });
    page.set_lacks(fill(page.get_lacks(), lacks.collect()));
    page.set_advice_kind(view.advice.0.into());
    page.set_advice(view.advice.1.into());
    page.set_spigot_expected(view.spigot_expected.into());
    page.set_spigot_title(view.spigot_title.into());
    let (label, value, unit) = view.spigot;
    page.set_spigot_label(label.into());
    page.set_spigot(value.into());
    page.set_spigot_unit(unit.into());
    let (kind, fits, note) = view.fits.unwrap_or_default();
    page.set_fits_kind(kind.into());
    page.set_fits(fits.into());
    page.set_fits_note(note.shown());
    page.set_decision_title(view.decision_title.into());
    page.set_decision_label(view.decision.0.into());
    page.set_decision(view.decision.1.into());
    page.set_decision_note(view.decision_note.shown());
    page.set_stage_caution(view.stage_caution.into());
    page.set_next_text(view.next.0.into());
    page.set_next_icon(view.next.1.into());
    show_sheet(page, view.sheet);
}

fn lines(all: Vec<String>) -> Vec<SharedString> {
    all.into_iter().map(|line| line.shown()).collect()
}

fn chips(all: Vec<ChipView>) -> Vec<Choice> {
    all.into_iter()
        .map(|c| Choice {
            id: c.key.into(),
            text: c.text.into(),
            selected: c.selected,
            ..Choice::default()
        })
        .collect()
}

fn show_oval(page: &TruingAdapter<'_>, part: OvalPart) {
    page.set_oval(oval_paths(part.drawing));
    page.set_oval_label(part.label.into());
    page.set_oval_caption(part.caption.into());
    page.set_oval_value(part.value.into());
    page.set_oval_unit(part.unit.into());
    let legend = part.legend.into_iter().map(|(key, text)| LegendItem {
        id: key.into(),
        text: text.into(),
    });
    page.set_legend(fill(page.get_legend(), legend.collect()));
    page.set_difference(part.difference.into());
    page.set_sum(part.sum.into());
    page.set_wanted(part.wanted.into());
    page.set_tag(part.tag.into());
    page.set_tag_kind(part.tag_kind.into());
}

fn show_finish(sheets: &TruingAdapter<'_>, page: &FinishingAdapter<'_>, view: FinishView) {
    page.set_mark(view.head.mark.shown());
    page.set_title(view.head.title.shown());
    page.set_subtitle(view.head.subtitle.shown());
    page.set_back_label(view.head.back.into());
    page.set_intro(view.intro.into());
    page.set_rows(fill(page.get_rows(), rows(view.rows)));
    page.set_grits_title(view.grits_title.into());
    page.set_grits(fill(page.get_grits(), rows(view.grits)));
    page.set_grits_add(view.grits_add.into());
    page.set_coats_title(view.coats_title.into());
    page.set_coats(fill(page.get_coats(), rows(view.coats)));
    page.set_coats_add(view.coats_add.into());
    page.set_caution(view.caution.into());
    page.set_finished(view.finished.into());
    show_sheet(sheets, view.sheet);
}

fn rows(views: Vec<FinishRow>) -> Vec<FinishItem> {
    views
        .into_iter()
        .map(|r| FinishItem {
            id: r.key.into(),
            title: r.title.shown(),
            note: r.note.shown(),
            icon: r.icon.into(),
        })
        .collect()
}

fn show_sheet(page: &TruingAdapter<'_>, view: Option<SheetView>) {
    let Some(view) = view else {
        page.set_sheet_shown(false);
        return;
    };
    page.set_sheet_title(view.title.into());
    page.set_sheet_note(view.note.into());
    page.set_sheet_caution(view.caution.into());
    page.set_sheet_rows(fill(page.get_sheet_rows(), options(view.rows)));
    page.set_sheet_numeric(view.numeric);
    page.set_sheet_words(view.words);
    let TypedView {
        label,
        text,
        hint,
        unit,
        error,
        ways: ways_out,
    } = view.first.unwrap_or_default();
    page.set_first_label(label.into());
    page.set_first_text(text.into());
    page.set_first_hint(hint.into());
    page.set_first_unit(unit.into());
    page.set_first_error(error.into());
    page.set_first_ways(fill(page.get_first_ways(), ways(ways_out)));
    page.set_chips_title(view.chips_title.into());
    page.set_chips(fill(page.get_chips(), chips(view.chips)));
    let TypedView {
        label,
        text,
        hint,
        unit,
        error,
        ways: ways_out,
    } = view.second.unwrap_or_default();
    page.set_second_label(label.into());
    page.set_second_text(text.into());
    page.set_second_hint(hint.into());
    page.set_second_unit(unit.into());
    page.set_second_error(error.into());
    page.set_second_ways(fill(page.get_second_ways(), ways(ways_out)));
    page.set_sheet_save(view.save.into());
    page.set_sheet_active(view.active);
    page.set_close_label(view.close.into());
    page.set_sheet_shown(true);
}
