//! View: the page on which the wall is measured.

use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::WallFeel;
use evenwall_piece::wanted;

use super::asking::AskView;
use super::measure::{Measuring, quick_keys, wanted_at};
use super::section_view::{BarView, MarkView};
use super::sheet::SheetView;
use super::standing::{Judged, standing, standings};
use crate::app::App;
use crate::drawing::{SectionDrawing, section};

/// A word and a number beside it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FactRow {
    /// What it is.
    pub label: String,
    /// The number.
    pub value: String,
}

/// One of the three keys of the finger.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FeelKey {
    /// `heavy`, `even` or `thin`.
    pub key: &'static str,
    /// Its word.
    pub text: String,
}

/// What was recorded last, in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StatusView {
    /// `heavy`, `even`, `thin` or empty.
    pub kind: &'static str,
    /// "Station 4: 11.5, heavy by 1.5".
    pub text: String,
}

/// The page.
#[derive(Debug, Clone, PartialEq)]
pub struct WallView {
    /// The mark of the piece.
    pub mark: String,
    /// The title.
    pub title: String,
    /// "Wall wanted 10 mm".
    pub subtitle: String,
    /// The word that ends it.
    pub finish: String,
    /// The cut half, true to scale.
    pub drawing: SectionDrawing,
    /// Its stations.
    pub marks: Vec<MarkView>,
    /// The drawing in words.
    pub drawing_label: String,
    /// Where the next reading goes, as a key.
    pub spot: String,
    /// "Station 4 of 7".
    pub station: String,
    /// "lower middle, 104 mm down".
    pub station_note: String,
    /// "Whole round, 3 of 8", or the place round; empty for neither.
    pub progress: String,
    /// What is typed, else the last reading here, else a dash.
    pub number: String,
    /// True while something is typed.
    pub typing: bool,
    /// True where a number was read here.
    pub known: bool,
    /// What the typed number means, where that is not itself: "floor 12 mm".
    pub meaning: String,
    /// `heavy`, `even`, `thin` or empty.
    pub kind: &'static str,
    /// The verdict of the last reading here.
    pub verdict: String,
    /// Its bar.
    pub bar: BarView,
    /// When and how it was taken; empty for none.
    pub when: String,
    /// Wanted, came off.
    pub facts: Vec<FactRow>,
    /// The section being worked.
    pub section: String,
    /// The same as a screen reader says it.
    pub section_label: String,
    /// How it is measured.
    pub taken: String,
    /// True where the way of measuring can be chosen.
    pub can_choose_taken: bool,
    /// How many places round.
    pub places: String,
    /// True where more places are suggested.
    pub places_hint: bool,
    /// A line that suggests a whole round, or more places; empty for none.
    pub hint: String,
    /// The button for the whole round, where it is suggested.
    pub round: String,
    /// The two ways to enter the floor; empty where there is no choice.
    pub floor_ways: Vec<FactRow>,
    /// `depth` or `floor`.
    pub floor_way: &'static str,
    /// The keys of the finger.
    pub feels: Vec<FeelKey>,
    /// The eight keys.
    pub quick: Vec<String>,
    /// The key of the last reading here.
    pub quick_now: String,
    /// What the keys mean: "mm", or "depth of the rod, mm".
    pub quick_note: String,
    /// The word for the keypad, and for going back to the eight keys.
    pub other: String,
    /// See `other`.
    pub fewer: String,
    /// The word for going on without a reading.
    pub skip: String,
    /// The words for what cannot be reached.
    pub cant_reach: String,
    /// The word for undo.
    pub undo: String,
    /// True where there is something of this page to take back.
    pub can_undo: bool,
    /// The word for redo; empty where there is nothing to do again.
    pub redo: String,
    /// What was recorded last.
    pub status: StatusView,
    /// True while the keypad stands in place of the eight keys.
    pub keypad: bool,
    /// True where the keypad has keys for inch fractions.
    pub fractions: bool,
    /// The word on its large key.
    pub next: String,
    /// The word on the key after whole inches.
    pub whole: String,
    /// What the page asks.
    pub ask: Option<AskView>,
    /// The sheet over the page.
    pub sheet: Option<SheetView>,
    /// The word that closes a sheet.
    pub close: String,
    /// The word for back.
    pub back: String,
}

impl App {
    /// The wall page of the piece on top; `None` where there is none.
    #[must_use]
    pub fn wall_view(&self, now: Moment) -> Option<WallView> {
        let piece = self.wall_piece()?;
        let words = self.words();
        let numbers = self.numbers();
        let state = &self.states.wall;
        let settings = &self.shop().settings;
        let cursor = self.wall_cursor();
        let spot = cursor.at;
        let all = standings(piece, settings);
        let drawing = section(piece, true);
        let here = standing(piece, settings, spot.station);
        let measuring = Measuring::at(piece, spot.station, state.by_depth);
        let keypad = state.keypad.as_ref().filter(|k| !k.is_empty());
        let keys = quick_keys(piece, spot.station, measuring, &numbers);
        let last_here = piece
            .last_reading(spot.station, Some(spot.position))
            .filter(|_| state.places > 1)
            .or(here.shown);
        // While a number is typed the verdict is on that number.
        let judged = match keypad {
            Some(keypad) => self.typed_judged(piece, spot.station, measuring, &keypad.text()),
            None => here.judged,
        };
        let known = here.judged.mm().is_some();
        let number = match (keypad, here.judged) {
            (Some(keypad), _) => keypad.text(),
            (None, Judged::Read { mm, .. }) => numbers.wall(mm).number,
            (None, _) => numbers.unknown().number,
        };
        let quick_now = here
            .judged
            .mm()
            .and_then(|mm| keys.iter().find(|k| (k.thickness_mm - mm).abs() < 1e-6))
            .map_or_else(String::new, |k| k.text.clone());
        let wanted = numbers.wall(wanted_at(piece, spot.station));
        let redo = self.undo().shown() && self.undo().last_taken_back().is_some();
        Some(WallView {
            mark: piece.mark().to_owned(),
            title: words.text("wall-title"),
            subtitle: words.with(
                "wall-wanted-is",
                &[(
                    "wall",
                    numbers
                        .wall(wanted::wall_now(piece).mm)
                        .short()
                        .text()
                        .into(),
                )],
            ),
            finish: words.text("wall-finish"),
            marks: self.mark_views(&drawing, &all, Some(spot.station)),
            drawing,
            drawing_label: words.text("wall-drawing"),
            spot: spot.key(),
            station: self.station_of(piece, spot.station),
            station_note: self.station_note(piece, spot.station),
            progress: self.progress_text(),
            number,
            typing: keypad.is_some(),
            known,
            meaning: self.meaning(measuring),
            kind: Self::verdict_kind(judged),
            verdict: self.verdict_text(judged),
            bar: self.bar_of(piece, judged, spot.station),
            when: last_here
                .filter(|_| keypad.is_none())
                .map_or_else(String::new, |r| self.when_and_how(r, now)),
            facts: self.fact_rows(piece, spot.station, wanted.number),
            section: self.section_text(),
            section_label: words.with(
                "wall-section-label",
                &[("which", self.section_text().into())],
            ),
            taken: self.taken_text(measuring),
            can_choose_taken: !matches!(measuring, Measuring::Rod { .. }),
            places: words.text(match state.places {
                2 => "wall-places-2",
                4 => "wall-places-4",
                _ => "wall-places-1",
            }),
            places_hint: state.places == 1 && self.places_hint(piece).is_some(),
            hint: self.hint(piece),
            round: if self.round_is_due(piece) {
                words.text("wall-whole-round")
            } else {
                String::new()
            },
            floor_ways: self.floor_ways(piece, spot.station),
            floor_way: match measuring {
                Measuring::Rod { .. } => "depth",
                _ => "floor",
            },
            feels: [WallFeel::Heavy, WallFeel::Even, WallFeel::Thin]
                .into_iter()
                .map(|f| FeelKey {
                    key: f.key(),
                    text: words.text(&format!("feel-{}", f.key())),
                })
                .collect(),
            quick: keys.into_iter().map(|k| k.text).collect(),
            quick_now,
            quick_note: words.text(match measuring {
                Measuring::Rod { .. } => "wall-keys-rod",
                Measuring::Floor => "wall-keys-floor",
                Measuring::Wall => "wall-keys-wall",
            }),
            other: words.text("action-other"),
            fewer: words.text("wall-fewer"),
            skip: words.text("action-skip"),
            cant_reach: words.text("wall-cant-reach"),
            undo: words.text("action-undo"),
            can_undo: self.can_undo_here(),
            redo: if redo {
                words.text("action-redo")
            } else {
                String::new()
            },
            status: self.status_view(piece),
            keypad: state.keypad_open,
            fractions: crate::numbers::keypad::Keypad::new(measuring.quantity(), &numbers)
                .has_fraction_keys(),
            next: words.text("action-next"),
            whole: words.text("wall-whole"),
            ask: self.ask_view(),
            sheet: self.sheet_view(piece),
            close: words.text("action-close"),
            back: words.text("action-back"),
        })
    }
}
