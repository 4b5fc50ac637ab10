//! Hands the list of pieces to Slint and its touches to the app.

use std::cell::RefCell;
use std::collections::HashMap;
use std::rc::{Rc, Weak};

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::pieces::{CardView, ChipView, Filter, PiecesAction, Sort};
use evenwall_app::route::Page;
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_ui::{AppWindow, Choice, PieceCard, PiecesAdapter, SectionPaths};
use slint::{ComponentHandle, Model, ModelNotify, ModelRc, ModelTracker, SharedString};

use super::drawing::paths;
use super::models::fill;
use super::visible::Shown as _;
use super::{Screens, on, on_touch};

/// The cards. The drawing of one is made when it comes on screen: a thousand pieces would take a thousand drawings for
/// the ten that can be seen.
struct Cards {
    rows: RefCell<Vec<PieceCard>>,
    drawn: RefCell<HashMap<SharedString, SectionPaths>>,
    screens: Weak<Screens>,
    notify: ModelNotify,
}

impl Cards {
    fn new(screens: &Rc<Screens>) -> Self {
        Self {
            rows: RefCell::default(),
            drawn: RefCell::default(),
            screens: Rc::downgrade(screens),
            notify: ModelNotify::default(),
        }
    }

    /// Takes these rows. Cards that stay keep the focus; their drawings are made anew, as walls may have been read.
    fn fill(&self, rows: Vec<PieceCard>) {
        self.drawn.borrow_mut().clear();
        let (before, after) = (self.rows.borrow().len(), rows.len());
        *self.rows.borrow_mut() = rows;
        if after > before {
            self.notify.row_added(before, after - before);
        } else if after < before {
            self.notify.row_removed(after, before - after);
        }
        for row in 0..before.min(after) {
            self.notify.row_changed(row);
        }
    }

    fn drawing(&self, id: &SharedString) -> SectionPaths {
        if let Some(drawn) = self.drawn.borrow().get(id) {
            return drawn.clone();
        }
        let drawing = self
            .screens
            .upgrade()
            .zip(PieceId::new(id).ok())
            .map(|(screens, id)| paths(screens.read(|app| app.card_drawing(&id))))
            .unwrap_or_default();
        self.drawn.borrow_mut().insert(id.clone(), drawing.clone());
        drawing
    }
}

impl Model for Cards {
    type Data = PieceCard;

    fn row_count(&self) -> usize {
        self.rows.borrow().len()
    }

    fn row_data(&self, row: usize) -> Option<PieceCard> {
        let mut card = self.rows.borrow().get(row).cloned()?;
        card.drawing = self.drawing(&card.id);
        Some(card)
    }

    fn model_tracker(&self) -> &dyn ModelTracker {
        &self.notify
    }

    fn as_any(&self) -> &dyn std::any::Any {
        self
    }
}

/// Connects the callbacks of the adapter.
pub fn connect(screens: &Rc<Screens>) {
    let page = screens.window.global::<PiecesAdapter>();
    page.set_cards(ModelRc::new(Cards::new(screens)));
    page.on_typed(on(screens, |text: SharedString| {
        Some(Action::Pieces(PiecesAction::Search(text.into())))
    }));
    page.on_filter(on(screens, |key: SharedString| {
        Filter::from_key(&key).map(|f| Action::Pieces(PiecesAction::Filter(f)))
    }));
    page.on_order(on(screens, |key: SharedString| {
        Sort::from_key(&key).map(|s| Action::Pieces(PiecesAction::Sort(s)))
    }));
    page.on_cleared(on_touch(screens, || Action::Pieces(PiecesAction::Clear)));
    page.on_opened(on(screens, |id: SharedString| {
        PieceId::new(&id)
            .ok()
            .map(|id| Action::Open(Page::Piece(id)))
    }));
    page.on_dried_well(on_touch(screens, || Action::Open(Page::DriedWell)));
    page.on_new(on_touch(screens, || Action::Open(Page::NewPiece)));
}

fn chip(view: ChipView) -> Choice {
    Choice {
        id: view.key.into(),
        text: view.text.into(),
        note: view.count.into(),
        icon: SharedString::default(),
        selected: view.chosen,
    }
}

fn card(view: CardView) -> PieceCard {
    PieceCard {
        id: view.id.as_str().into(),
        heading: view.heading.into(),
        label: view.label.into(),
        mark: view.mark.shown(),
        wood: view.wood.shown(),
        stage: view.stage.into(),
        note: view.note.into(),
        due: view.due.into(),
        late: view.late,
        drawing: SectionPaths::default(),
        stages_done: i32::try_from(view.stages_done).unwrap_or(0),
        #[allow(clippy::cast_possible_truncation)] // -1 to 1
        now_part: view.now_part as f32,
        open: view.open,
    }
}

/// Shows the page.
pub fn show(window: &AppWindow, app: &App, now: Moment) {
    let view = app.pieces_view(now);
    let page = window.global::<PiecesAdapter>();
    page.set_title(view.title.shown());
    page.set_counts(view.counts.into());
    page.set_search(view.search.into());
    page.set_search_hint(view.search_hint.into());
    page.set_clear(view.clear.into());
    page.set_filters(fill(
        page.get_filters(),
        view.filters.into_iter().map(chip).collect(),
    ));
    page.set_sort(view.sort.into());
    page.set_sort_title(view.sort_title.into());
    page.set_close(view.close.into());
    page.set_sorts(fill(
        page.get_sorts(),
        view.sorts.into_iter().map(chip).collect(),
    ));
    if let Some(cards) = page.get_cards().as_any().downcast_ref::<Cards>() {
        cards.fill(view.cards.into_iter().map(card).collect());
    }
    let (title, text, clear) = view
        .empty
        .map(|e| (e.title, e.text, e.clear))
        .unwrap_or_default();
    page.set_empty_title(title.into());
    page.set_empty_text(text.into());
    page.set_empty_clear(clear.into());
    page.set_new_piece(view.new_piece.into());
    page.set_dried_well_text(view.dried_well.into());
}
