//! Wall: measuring by station, the result, the outline.

mod asking;
mod cursor;
mod drying_sense;
mod entry;
mod measure;
mod measures;
mod outline;
mod outline_view;
mod panel;
mod record;
mod section_view;
mod sheet;
mod spot;
mod standing;
mod status;
mod sum;
mod summary;
mod summary_view;
mod take_off;
mod thin;
mod view;

use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::{Measure, StationRef};
use evenwall_piece::ids::{LineId, PieceId};
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Group;
use evenwall_piece::vocabulary::{Outline, Taken, WallFeel};

pub use asking::{AnswerView, AskView};
pub use entry::typed;
pub use measures::{MeasureRow, MeasuresView};
pub use outline_view::{DiameterRow, OutlineChoice, OutlineView};
pub use record::ReadingEntry;
pub use section_view::{BarView, MarkView};
pub use sheet::{SheetRow, SheetView};
pub use spot::{Spot, station_from_key, station_key};
pub use sum::{SumView, WallSum};
pub use summary_view::{SummaryRow, SummaryView, TakeOffRow};
pub use view::{FactRow, FeelKey, StatusView, WallView};

use crate::app::{App, AppError};
use crate::numbers::keypad::Keypad;
use crate::route::Page;
use asking::Asking;
use cursor::Cursor;

/// What can be done there.
#[derive(Debug, Clone, PartialEq)]
pub enum WallAction {
    /// Went to a station.
    Jump(StationRef),
    /// Went to the station above (-1) or below (1) on the keyboard.
    Step(i8),
    /// Opened a sheet.
    OpenSheet(WallSheet),
    /// Closed the sheet.
    CloseSheet,
    /// Took a station into the section being worked, or out of it.
    ToggleSection(StationRef),
    /// Began a whole round, from whatever page of the piece.
    WholeRound,
    /// Chose how many places round a station is read: 1, 2 or 4.
    Places(u8),
    /// Chose how it is measured.
    HowTaken(Taken),
    /// Chose how the floor is entered: by the depth of the rod, or its thickness.
    FloorByDepth(bool),
    /// Touched one of the eight keys, at a spot.
    Quick(Spot, String),
    /// Judged by finger, at a spot.
    Feel(Spot, WallFeel),
    /// Could not reach a spot.
    CantReach(Spot),
    /// Went on without a reading.
    Skip,
    /// Opened or closed the keypad.
    Other(bool),
    /// Touched a key of the keypad.
    Key(String),
    /// Typed a character on a keyboard, or callipers did.
    Typed(char),
    /// Answered what the page asks, by the answer's id.
    Answer(String),
    /// Recorded exactly this, without asking again.
    Record(Box<ReadingEntry>),
    /// Finished measuring.
    Finish,
    /// Went from the result to a station.
    Measure(StationRef),
    /// Took the best even wall as the wall wanted.
    TakeBestWall,
    /// Left thin stations as they are, for now.
    LeaveThin,
    /// Opened the sum of a figure.
    OpenSum(WallSum),
    /// Closed it.
    CloseSum,
    /// Went to where what is lacking for volume and weight is entered.
    Supply,
    /// Went on to the next stage.
    GoOn,
    /// Picked an outline.
    PickOutline(Outline),
    /// Began to enter the diameter at a station.
    EditDiameter(u8),
    /// Went back to the diameter that the shape gives.
    ShapeDiameter(u8),
    /// Recorded exactly this diameter of a piece at a station; `None` goes back to the shape.
    Diameter(PieceId, u8, Option<Measure>),
    /// Closed the entry of a diameter.
    CloseDiameter,
    /// Laid the stations out again.
    LayOut,
}

/// A sheet over the wall page.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WallSheet {
    /// The stations being worked.
    Section,
    /// How it is measured.
    Taken,
    /// How many places round.
    Places,
}

impl WallSheet {
    /// All sheets.
    pub const ALL: [Self; 3] = [Self::Section, Self::Taken, Self::Places];

    /// Stable key, used by the screens.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Section => "section",
            Self::Taken => "taken",
            Self::Places => "places",
        }
    }
}

/// What the pages remember between two touches.
#[derive(Debug)]
pub struct WallState {
    piece: Option<PieceId>,
    cursor: Cursor,
    /// Lines recorded here, each with where the turner was before it: undo leads back there.
    history: Vec<(LineId, Cursor)>,
    /// How many steps were done before the page was entered: undo on the page stops there.
    done_before: usize,
    taken: Taken,
    places: u8,
    by_depth: bool,
    keypad: Option<Keypad>,
    keypad_open: bool,
    sheet: Option<WallSheet>,
    asking: Option<Asking>,
    thin_left: bool,
    diameter: Option<u8>,
    sum: Option<WallSum>,
}

impl Default for WallState {
    fn default() -> Self {
        Self {
            piece: None,
            cursor: Cursor::default(),
            history: Vec::new(),
            done_before: 0,
            taken: Taken::Callipers,
            places: 1,
            by_depth: true,
            keypad: None,
            keypad_open: false,
            sheet: None,
            asking: None,
            thin_left: false,
            diameter: None,
            sum: None,
        }
    }
}

/// The detail that holds the wall wanted now: the finish wall once it is being finished.
pub(super) fn wanted_field(piece: &Piece) -> DetailField {
    match piece.stage().group() {
        Group::Finishing => DetailField::WallFinish,
        _ => DetailField::WallWanted,
    }
}

impl App {
    pub(crate) fn enter_wall(&mut self, page: Option<&Page>, _now: Moment) {
        let id = match page {
            Some(Page::Wall(id) | Page::WallSummary(id) | Page::Outline(id)) => id.clone(),
            _ => return,
        };
        self.take_up_wall(&id);
        let done_before = self.undo().depth();
        let state = &mut self.states.wall;
        state.done_before = done_before;
        state.keypad = None;
        state.keypad_open = false;
        state.sheet = None;
        state.asking = None;
        state.diameter = None;
        state.sum = None;
        state.thin_left = false;
    }

    /// Takes up a piece where its last reading left it; what was chosen for another piece is forgotten.
    fn take_up_wall(&mut self, id: &PieceId) {
        let Some(piece) = self.piece(id) else { return };
        if self.states.wall.piece.as_ref() == Some(id) {
            let cursor = self.wall_cursor();
            if cursor.fits(piece) {
                return;
            }
        }
        let cursor = Cursor::of(piece);
        self.states.wall = WallState {
            piece: Some(id.clone()),
            cursor,
            ..WallState::default()
        };
    }

    /// The piece of the page on top.
    fn wall_piece(&self) -> Option<&Piece> {
        self.route
            .page()
            .and_then(Page::piece)
            .and_then(|id| self.piece(id))
    }

    pub(crate) fn apply_wall(&mut self, action: WallAction, now: Moment) -> Result<(), AppError> {
        self.settle_wall();
        // What could not be kept may be tried again from any page.
        let action = match action {
            WallAction::Record(entry) => return self.record_reading(*entry, now),
            WallAction::Diameter(id, station, measure) => {
                return self.set_diameter(&id, station, measure, now);
            }
            action => action,
        };
        let Some(id) = self.wall_piece().map(|p| p.id.clone()) else {
            return Ok(());
        };
        let state = &mut self.states.wall;
        match action {
            WallAction::Jump(station) => self.jump_to(station),
            WallAction::Step(by) => self.step_by(by),
            WallAction::OpenSheet(sheet) => state.sheet = Some(sheet),
            WallAction::CloseSheet => state.sheet = None,
            WallAction::ToggleSection(station) => self.toggle_section(station),
            WallAction::WholeRound => self.whole_round(&id, now),
            WallAction::Places(places) => self.choose_places(places),
            WallAction::HowTaken(taken) => {
                state.taken = taken;
                state.sheet = None;
            }
            WallAction::FloorByDepth(by_depth) => {
                state.by_depth = by_depth;
                state.keypad = None;
                state.asking = None;
            }
            WallAction::Quick(spot, text) => return self.quick(&id, spot, &text, now),
            WallAction::Feel(spot, feel) => return self.feel(&id, spot, feel, now),
            WallAction::CantReach(spot) => return self.cant_reach(&id, spot, now),
            WallAction::Skip => self.skip(now),
            WallAction::Other(open) => {
                state.keypad_open = open;
                state.keypad = None;
                state.asking = None;
            }
            WallAction::Key(key) => return self.keypad_key(&id, &key, now),
            WallAction::Typed(c) => return self.typed_char(&id, c, now),
            WallAction::Answer(answer) => return self.answer(&id, &answer, now),
            WallAction::Record(_) | WallAction::Diameter(..) => {}
            WallAction::Finish => self.open_page(Page::WallSummary(id), now),
            WallAction::Measure(station) => {
                self.jump_to(station);
                self.open_page(Page::Wall(id), now);
            }
            WallAction::TakeBestWall => return self.take_best_wall(&id, now),
            WallAction::LeaveThin => state.thin_left = true,
            WallAction::OpenSum(sum) => state.sum = Some(sum),
            WallAction::CloseSum => state.sum = None,
            WallAction::Supply => self.supply(&id, now),
            WallAction::GoOn => return self.go_on(&id, now),
            WallAction::PickOutline(outline) => return self.pick_outline(&id, outline, now),
            WallAction::EditDiameter(station) => self.edit_diameter(station),
            WallAction::ShapeDiameter(station) => return self.shape_diameter(&id, station, now),
            WallAction::CloseDiameter => {
                state.diameter = None;
                state.keypad = None;
                state.asking = None;
            }
            WallAction::LayOut => return self.lay_out(&id, now),
        }
        Ok(())
    }
}
