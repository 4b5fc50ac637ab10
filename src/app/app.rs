//! App: holds the state, carries out actions, and nothing else knows both the store and the pages.

use std::collections::BTreeMap;

use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::{LineId, PieceId, Scope};
use evenwall_piece::line::Line;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::shop::{Shop, ShopFact, fold_shop};

use crate::action::Action;
use crate::device::{DeviceSettings, WordsChoice};
use crate::question::Question;
use crate::route::{Page, Route, Tab};
use crate::store::{Store, StoreError};
use crate::undo::{Step, UndoStack};
use crate::words::{Language, Words};

/// Why an action was not carried out.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum AppError {
    /// It could not be kept; trying again may help.
    #[error("{0}")]
    NotSaved(String),
    /// It was refused; the text says what was found, what is allowed and what to do.
    #[error("{0}")]
    Refused(String),
}

impl From<StoreError> for AppError {
    fn from(error: StoreError) -> Self {
        Self::NotSaved(error.0)
    }
}

/// What pages remember between two touches, each page its own.
#[derive(Debug, Default)]
pub(crate) struct PageStates {
    pub today: crate::today::TodayState,
    pub pieces: crate::pieces::PiecesState,
    pub new_piece: crate::new_piece::NewPieceState,
    pub piece: crate::piece::PieceState,
    pub wall: crate::wall::WallState,
    pub flaws: crate::flaws::FlawsState,
    pub photos: crate::photos::PhotosState,
    pub drying: crate::drying::DryingState,
    pub truing: crate::truing::TruingState,
    pub plan: crate::plan::PlanState,
    pub diary: crate::diary::DiaryState,
    pub dried_well: crate::dried_well::DriedWellState,
    pub shop: crate::shop::ShopState,
    pub checklist: crate::checklist::ChecklistState,
    pub records: crate::records::RecordsState,
}

/// The app behind the screens.
pub struct App {
    pub(crate) store: Box<dyn Store>,
    /// The lines of pieces that were written to in this session; the others are read when their turn comes.
    pub(crate) lines: BTreeMap<PieceId, Vec<Line<PieceFact>>>,
    pub(crate) shop_lines: Vec<Line<ShopFact>>,
    pub(crate) pieces: BTreeMap<PieceId, Piece>,
    pub(crate) shop: Shop,
    device: DeviceSettings,
    words: Words,
    pub(crate) route: Route,
    pub(crate) states: PageStates,
    pub(crate) undo: UndoStack,
    pub(crate) written: Vec<(Scope, LineId)>,
    said: Option<String>,
    question: Option<Question>,
    save_error: Option<(String, Action)>,
    pub(crate) retry: Option<Action>,
    /// A line that stands on disk although its write was not confirmed.
    pub(crate) unconfirmed: Option<(PieceId, Line<PieceFact>)>,
    pub(crate) problems: Vec<String>,
    pub(crate) notice_hidden: bool,
    demo: bool,
    /// Files outside the shelf, where this device has any to offer.
    pub(crate) files: Option<Box<dyn crate::files::Files>>,
    pub(crate) work: crate::work::WorkState,
    pub(crate) forecasts: crate::forecasting::Forecasts,
}

fn words_of(device: &DeviceSettings) -> Words {
    Words::new(match device.words {
        WordsChoice::British => Language::EnGb,
        WordsChoice::American => Language::EnUs,
    })
}

impl App {
    /// Opens the app on a store; `demo` says on screen that the shelf is a copy of the demo.
    ///
    /// # Errors
    /// [`StoreError`] where the store cannot be read at all.
    pub fn open(mut store: Box<dyn Store>, demo: bool, now: Moment) -> Result<Self, StoreError> {
        let loaded = store.load()?;
        let device = store
            .device_settings()
            .map(|t| DeviceSettings::from_json(&t))
            .unwrap_or_default();
        let words = words_of(&device);
        let mut app = Self {
            store,
            lines: BTreeMap::new(),
            shop: fold_shop(loaded.shop.clone()),
            shop_lines: loaded.shop,
            pieces: BTreeMap::new(),
            device,
            words,
            route: Route::default(),
            states: PageStates::default(),
            undo: UndoStack::default(),
            written: Vec::new(),
            said: None,
            question: None,
            save_error: None,
            retry: None,
            unconfirmed: None,
            problems: loaded.problems,
            notice_hidden: false,
            demo,
            files: None,
            work: Default::default(),
            forecasts: Default::default(),
        };
        for piece in loaded.pieces {
            app.pieces.insert(piece.id.clone(), piece);
        }
        app.entered(now);
        app.keep_device_name(now);
        app.offer_import();
        Ok(app)
    }

    /// Carries out an action at a given moment. What goes wrong is shown, nothing is lost: an action that could not
    /// be kept can be tried again.
    pub fn apply(&mut self, action: Action, now: Moment) {
        self.written.clear();
        self.said = None;
        self.retry = None;
        let outcome = self.carry_out(action.clone(), now);
        // Lines that reached the disk stand, also where a later part of the action failed: they can be undone.
        if !self.written.is_empty() {
            let said = self
                .said
                .take()
                .unwrap_or_else(|| self.words.text("recorded"));
            self.undo.push(Step {
                lines: std::mem::take(&mut self.written),
                said,
            });
        }
        match outcome {
            Ok(()) => {}
            Err(AppError::NotSaved(text)) => {
                let again = self.retry.take().unwrap_or(action);
                let text = self.words.with("not-saved", &[("why", text.into())]);
                self.save_error = Some((text, again));
            }
            Err(AppError::Refused(text)) => self.inform(self.words.text("refused-title"), text),
        }
    }

    fn carry_out(&mut self, action: Action, now: Moment) -> Result<(), AppError> {
        match action {
            Action::GoTab(tab) => {
                self.undo.hide();
                self.route.go_tab(tab);
                self.entered(now);
            }
            Action::Open(page) => self.open_page(page, now),
            Action::Back => self.back(now),
            Action::Undo => return self.undo_last(now),
            Action::Redo => return self.redo_last(now),
            Action::HideUndo => self.undo.hide(),
            Action::Choose(place) => {
                let chosen = self
                    .question
                    .take()
                    .and_then(|q| q.choices.into_iter().nth(place));
                if let Some(action) = chosen.and_then(|c| c.action) {
                    // The question is used up: what is tried again is what was chosen.
                    self.retry = Some(action.clone());
                    return self.carry_out(action, now);
                }
            }
            Action::CloseQuestion => self.question = None,
            Action::TryAgain => {
                if let Some((_, action)) = self.save_error.take() {
                    self.retry = Some(action.clone());
                    return self.carry_out(action, now);
                }
            }
            Action::HideSaveError => self.save_error = None,
            Action::HideNotice => self.hide_notice(now),
            Action::Today(a) => return self.apply_today(a, now),
            Action::Pieces(a) => return self.apply_pieces(a, now),
            Action::NewPiece(a) => return self.apply_new_piece(a, now),
            Action::Piece(a) => return self.apply_piece(a, now),
            Action::Wall(a) => return self.apply_wall(a, now),
            Action::Flaws(a) => return self.apply_flaws(a, now),
            Action::Photos(a) => return self.apply_photos(a, now),
            Action::Drying(a) => return self.apply_drying(a, now),
            Action::Truing(a) => return self.apply_truing(a, now),
            Action::Plan(a) => return self.apply_plan(a, now),
            Action::Diary(a) => return self.apply_diary(a, now),
            Action::DriedWell(a) => self.apply_dried_well(a, now),
            Action::Shop(a) => return self.apply_shop(a, now),
            Action::Checklist(a) => return self.apply_checklist(a, now),
            Action::Records(a) => return self.apply_records(a, now),
        }
        Ok(())
    }

    /// Opens a page and lets it take up its state.
    pub(crate) fn open_page(&mut self, page: Page, now: Moment) {
        self.undo.hide();
        self.route.open(page);
        self.entered(now);
    }

    /// Goes back one page.
    pub(crate) fn back(&mut self, now: Moment) {
        self.route.back();
        self.entered(now);
    }

    pub(crate) fn entered(&mut self, now: Moment) {
        let page = self.route.page().cloned();
        self.enter_today(page.as_ref(), now);
        self.enter_pieces(page.as_ref(), now);
        self.enter_new_piece(page.as_ref(), now);
        self.enter_piece(page.as_ref(), now);
        self.enter_wall(page.as_ref(), now);
        self.enter_flaws(page.as_ref(), now);
        self.enter_photos(page.as_ref());
        self.enter_drying(page.as_ref(), now);
        self.enter_truing(page.as_ref(), now);
        self.enter_plan(page.as_ref(), now);
        self.enter_diary(page.as_ref(), now);
        self.enter_dried_well(page.as_ref());
        self.enter_shop(page.as_ref(), now);
        self.enter_checklist(page.as_ref(), now);
    }

    /// Says what was done, for the undo bar.
    pub(crate) fn say(&mut self, said: String) {
        self.said = Some(said);
    }

    /// What is tried again, should this action fail to be kept: the exact thing, where a touch alone does not say it.
    pub(crate) fn retry_with(&mut self, action: Action) {
        self.retry = Some(action);
    }

    /// Asks a question over the page.
    pub(crate) fn ask(&mut self, question: Question) {
        self.question = Some(question);
    }

    /// Shows a sentence with one button that closes it.
    pub(crate) fn inform(&mut self, title: String, text: String) {
        let ok = crate::question::Choice {
            label: self.words.text("action-close"),
            style: crate::question::ChoiceStyle::Primary,
            action: None,
        };
        self.question = Some(Question {
            title,
            text,
            choices: vec![ok],
            caution: false,
        });
    }

    /// A piece by its id, deleted ones too; `None` where its making was taken back.
    #[must_use]
    pub fn piece(&self, id: &PieceId) -> Option<&Piece> {
        self.pieces.get(id).filter(|p| p.created.is_some())
    }

    /// All pieces that were made and are not deleted.
    pub fn pieces(&self) -> impl Iterator<Item = &Piece> {
        self.pieces
            .values()
            .filter(|p| p.created.is_some() && p.deleted.is_none())
    }

    /// Pieces that were deleted and can be brought back.
    pub fn deleted_pieces(&self) -> impl Iterator<Item = &Piece> {
        self.pieces
            .values()
            .filter(|p| p.created.is_some() && p.deleted.is_some())
    }

    /// The workshop.
    #[must_use]
    pub const fn shop(&self) -> &Shop {
        &self.shop
    }

    /// The words of the language chosen.
    #[must_use]
    pub const fn words(&self) -> &Words {
        &self.words
    }

    /// This device's settings.
    #[must_use]
    pub const fn device(&self) -> &DeviceSettings {
        &self.device
    }

    /// Changes this device's settings and keeps them.
    ///
    /// # Errors
    /// [`AppError::NotSaved`]; the old settings stay then.
    pub(crate) fn set_device(&mut self, device: DeviceSettings) -> Result<(), AppError> {
        self.store.save_device_settings(&device.to_json())?;
        if device.words != self.device.words {
            self.words = words_of(&device);
        }
        self.device = device;
        Ok(())
    }

    /// Where the turner is.
    #[must_use]
    pub const fn route(&self) -> &Route {
        &self.route
    }

    /// The tab below the pages.
    #[must_use]
    pub const fn tab(&self) -> Tab {
        self.route.tab
    }

    /// The question on screen.
    #[must_use]
    pub const fn question(&self) -> Option<&Question> {
        self.question.as_ref()
    }

    /// What could not be saved last, in a sentence.
    #[must_use]
    pub fn save_error(&self) -> Option<&str> {
        self.save_error.as_ref().map(|(text, _)| text.as_str())
    }

    /// The steps that can be undone and done again.
    #[must_use]
    pub const fn undo(&self) -> &UndoStack {
        &self.undo
    }

    /// What could not be read when the shelf was opened, one sentence each.
    #[must_use]
    pub fn problems(&self) -> &[String] {
        &self.problems
    }

    /// True where the shelf is a copy of the demo.
    #[must_use]
    pub const fn is_demo(&self) -> bool {
        self.demo
    }

    /// The place where lines are kept.
    #[must_use]
    pub fn store(&self) -> &dyn Store {
        self.store.as_ref()
    }

    /// A new id with a readable start, unlike any other.
    pub(crate) fn new_slug(&mut self, start: &str) -> String {
        let readable: String = start
            .chars()
            .map(|c| c.to_ascii_lowercase())
            .filter(|c| c.is_ascii_alphanumeric())
            .take(12)
            .collect();
        format!(
            "{}-{:010x}",
            if readable.is_empty() { "x" } else { &readable },
            self.store.random() >> 24
        )
    }
}
