//! Shop: climate, units, rules, jaws, bars, scale, woods, cautions, the data and about.
//!
//! Every page is cards of rows; a touch of a row does one thing at once or opens a form of a few fields. What is about
//! the workshop is recorded and can be taken back; what is about this device is kept beside the shelf.

pub mod air_curve;
mod backup_page;
mod care_page;
pub mod climate;
mod climate_log;
mod climate_log_faults;
mod climate_log_page;
mod device_fields;
mod device_pages;
mod devices_page;
mod faults;
mod form;
mod form_fields;
mod form_reading;
mod history;
mod hub;
mod import_page;
mod list_saving;
mod lists;
mod number_settings;
mod out;
mod out_pages;
pub mod pages;
mod photo_page;
mod reminders_page;
mod rhythms;
mod rules;
mod saving;
mod texts;
pub mod view;

use evenwall_piece::piece::Moment;
use evenwall_piece::shop::ShopFact;

use crate::action::Action;
use crate::app::{App, AppError};
use crate::device::DeviceSettings;
use crate::route::Page;

pub use air_curve::{AirChartView, AirCurve};
use climate_log::LogDraft;
pub use climate_log::LogTold;
pub use device_fields::DeviceField;
use form::Draft;
pub use form::{FormOf, StepList};
pub use out::WriteOut;
use view::ShopView;

/// What can be done there.
#[derive(Debug, Clone, PartialEq)]
#[allow(clippy::large_enum_variant)] // one at a time, and never in a list
pub enum ShopAction {
    /// Went to a page of Shop from the list of pages.
    Go(&'static str),
    /// Changed how this device shows things.
    Device(DeviceSettings),
    /// Records facts about the workshop, all in one line.
    Record {
        /// When it happened; `None`: now.
        at: Option<Moment>,
        /// What happened.
        facts: Vec<ShopFact>,
    },
    /// Opened a form.
    Form(FormOf),
    /// Typed or chose in a field of the form, by its key.
    Typed(String, String),
    /// Closed the form; nothing changes.
    Close,
    /// Saved the form.
    Save,
    /// Took the thing in the form off its list.
    Remove,
    /// Asked for older entries of the history or of the readings.
    Older,
    /// Chose what the small charts show.
    Curve(AirCurve),
    /// Chose a logger's file, by its path.
    LogFile(String),
    /// Said something about the file.
    LogTold(LogTold),
    /// Keeps what is new in the file.
    LogKeep,
    /// Went back to choosing a file.
    LogForget,
    /// Wrote a document into the folder of the device's settings.
    Write(WriteOut),
    /// Let the system show a file, by its whole path.
    ShowFile(String),
    /// Went to what a column of a spreadsheet holds, by its place.
    Column(usize),
    /// Said what a column holds, by its place and the key of what it is matched with.
    ColumnHolds(usize, String),
}

impl From<ShopAction> for Action {
    fn from(action: ShopAction) -> Self {
        Self::Shop(action)
    }
}

/// So many entries are listed at first, and so many more each time older ones are asked for.
const ENTRIES: usize = 30;

/// The key of the page on which a logger's file is read.
pub(super) const LOG_PAGE: &str = "climate-log";

/// What the pages remember between two touches.
#[derive(Debug)]
pub struct ShopState {
    draft: Option<Draft>,
    shown: usize,
    curve: AirCurve,
    log: Option<LogDraft>,
    column: usize,
}

impl Default for ShopState {
    fn default() -> Self {
        Self {
            draft: None,
            shown: ENTRIES,
            curve: AirCurve::default(),
            log: None,
            column: 0,
        }
    }
}

impl App {
    pub(crate) fn enter_shop(&mut self, _page: Option<&Page>, _now: Moment) {
        self.states.shop = ShopState::default();
        // What came of something was said on the page before.
        self.states.records.outcome = None;
        self.states.records.file = None;
    }

    pub(crate) fn apply_shop(&mut self, action: ShopAction, now: Moment) -> Result<(), AppError> {
        match action {
            ShopAction::Go(key) => {
                // Beside the list in a wide window the pages follow each other and do not pile up.
                self.route.pages.clear();
                self.open_page(Page::ShopPage(key), now);
            }
            ShopAction::Device(device) => return self.set_device(device),
            ShopAction::Record { at, facts } => return self.keep_shop(at, facts, now),
            ShopAction::Form(of) => {
                let draft = self.draft_of(of);
                self.states.shop.draft = Some(draft);
            }
            ShopAction::Typed(key, text) => {
                if let Some(draft) = &mut self.states.shop.draft {
                    draft.put(&key, text);
                }
            }
            ShopAction::Close => self.states.shop.draft = None,
            ShopAction::Save => return self.save_form(now),
            ShopAction::Remove => return self.remove_in_form(now),
            ShopAction::Curve(curve) => self.states.shop.curve = curve,
            ShopAction::LogFile(path) => return self.log_open(&path),
            ShopAction::LogTold(said) => self.log_told(said),
            ShopAction::LogKeep => return self.log_keep(now),
            ShopAction::LogForget => self.states.shop.log = None,
            ShopAction::Write(what) => return self.write_out(&what, now),
            ShopAction::ShowFile(path) => return self.show_file(&path),
            ShopAction::Column(place) => {
                self.open_page(Page::ShopPage(import_page::COLUMN_PAGE), now);
                self.states.shop.column = place;
            }
            ShopAction::ColumnHolds(place, key) => {
                let said = crate::records::import::ImportAction::Match(place, key);
                self.apply_import(said, now)?;
                self.back(now);
            }
            ShopAction::Older => self.states.shop.shown += ENTRIES,
        }
        Ok(())
    }

    /// Records facts of the shop and says what was done.
    fn keep_shop(
        &mut self,
        at: Option<Moment>,
        facts: Vec<ShopFact>,
        now: Moment,
    ) -> Result<(), AppError> {
        let facts = self.without_what_is_so(facts);
        if facts.is_empty() {
            self.states.shop.draft = None;
            return Ok(());
        }
        // The form may be closed before it is tried again.
        self.retry_with(
            ShopAction::Record {
                at,
                facts: facts.clone(),
            }
            .into(),
        );
        // Said before it is done: what is taken off a list still has its name.
        let said = self.facts_in_words(&facts);
        self.record_shop(at.unwrap_or(now), facts, now)?;
        self.states.shop.draft = None;
        self.say(said);
        Ok(())
    }

    /// Facts that change something: what is so already is not recorded again.
    fn without_what_is_so(&self, mut facts: Vec<ShopFact>) -> Vec<ShopFact> {
        let shop = self.shop();
        facts.retain(|fact| match fact {
            ShopFact::Setting { key, value } => {
                shop.stored.get(key).map_or("", String::as_str) != value
            }
            ShopFact::Jaws(jaws) => !shop.jaws.contains(jaws),
            ShopFact::Bar(bar) => !shop.bars.contains(bar),
            ShopFact::Wood(wood) => !shop.woods.contains(wood),
            _ => true,
        });
        facts
    }

    /// The list of the pages of Shop.
    #[must_use]
    pub fn shop_view(&self, now: Moment) -> ShopView {
        let words = self.words();
        ShopView {
            title: words.text("shop-title"),
            sections: self.hub_sections(now),
            ..ShopView::default()
        }
    }

    /// The page of Shop that is open, or an empty one.
    #[must_use]
    pub fn shop_page_view(&self, now: Moment) -> ShopView {
        let words = self.words();
        let (key, page) = match self.route().page() {
            Some(Page::ShopPage(key)) => (*key, self.page_of_shop(key, now)),
            Some(Page::Out(piece)) => ("out", self.out_page(piece)),
            _ => return ShopView::default(),
        };
        ShopView {
            key,
            form: self.form_view(),
            back: words.text("action-back"),
            close: words.text("action-close"),
            clear: words.text("action-clear"),
            ..page
        }
    }

    fn page_of_shop(&self, key: &str, now: Moment) -> ShopView {
        match key {
            "climate" => self.climate_page(now),
            LOG_PAGE => self.log_page(now),
            "jaws" => self.jaws_page(),
            "bars" => self.bars_page(),
            "woods" => self.woods_page(),
            "scale" => self.scale_page(now),
            "walls" => self.walls_page(),
            "bag" => self.bag_page(),
            "days" => self.days_page(),
            "rhythms" => self.rhythms_page(),
            "units" => self.units_page(),
            "words" => self.words_page(),
            "look" => self.look_page(),
            "photos" => self.photo_page(),
            "cautions" => self.cautions_page(),
            "history" => self.history_page(now),
            "data" => self.data_page(),
            "about" => self.about_page(),
            "backup" => self.backup_page(now),
            "reminders" => self.reminders_page(),
            "devices" => self.devices_page(now),
            "tables" => self.tables_page(),
            "tags" => self.tags_page(),
            "care" => self.care_page(),
            "import" => self.import_page(now),
            import_page::COLUMN_PAGE => self.column_page(now),
            other => match pages::rhythm_of(other) {
                Some(of) => self.rhythm_page(of),
                None => ShopView::default(),
            },
        }
    }
}
