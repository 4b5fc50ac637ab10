//! Sheet: one thing of True or Finish is entered at a time, over the page.

use evenwall_piece::fact::Measure;
use evenwall_piece::truing::do_not_spin;
use evenwall_piece::vocabulary::TrueDecision;

use super::{TruingSheet, TruingState};
use crate::app::App;
use crate::flaws::{OptionView, TypedView};
use crate::measured::Field;
use crate::numbers::{Parsed, Quantity};
use crate::piece::DayChoice;

/// Grits that are offered. Common practice, no source.
pub(super) const GRITS: [&str; 8] = ["80", "120", "150", "180", "240", "320", "400", "600"];

/// A choice beside others.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ChipView {
    /// Stable key.
    pub key: String,
    /// Its words.
    pub text: String,
    /// Chosen.
    pub selected: bool,
}

/// A sheet over the page; lists and fields that it does not have are empty.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SheetView {
    /// Its title.
    pub title: String,
    /// A line below it.
    pub note: String,
    /// Choices one below the other.
    pub rows: Vec<OptionView>,
    /// The first field.
    pub first: Option<TypedView>,
    /// It takes a number.
    pub numeric: bool,
    /// Several lines are written into the first field.
    pub words: bool,
    /// Heads the chips.
    pub chips_title: String,
    /// Choices side by side.
    pub chips: Vec<ChipView>,
    /// The second field.
    pub second: Option<TypedView>,
    /// A caution; empty for none.
    pub caution: String,
    /// Its button.
    pub save: String,
    /// The button can be pressed.
    pub active: bool,
    /// The word for closing.
    pub close: String,
}

impl App {
    pub(super) fn open_truing_sheet(&mut self, sheet: TruingSheet) {
        match sheet {
            TruingSheet::Oval => return self.open_oval_sheet(None),
            TruingSheet::Where | TruingSheet::Round => return self.trueup_open_where(),
            _ => {}
        }
        let Some(piece) = self.truing_piece() else {
            return;
        };
        let finish = &piece.finish;
        let mut state = TruingState {
            of: self.states.truing.of.clone(),
            shown: self.states.truing.shown,
            sheet: Some(sheet),
            ..TruingState::default()
        };
        match sheet {
            TruingSheet::Spigot => {
                if let Some(size) = &finish.spigot_mm {
                    state.first = Field::of(self.as_typed(Quantity::SpigotDiameter, size));
                }
            }
            TruingSheet::Decision => {
                if let Some((_, decision, reason)) = &finish.decision {
                    state.decision = Some(*decision);
                    state.first = Field::of(reason.clone());
                }
            }
            TruingSheet::Signed => {
                state.first = Field::of(match &finish.signed {
                    Some((_, text)) => text.clone(),
                    None => self.usual_signature(piece),
                });
            }
            _ => {}
        }
        self.states.truing = state;
        // The bar would only take room from the sheet.
        self.undo.hide();
    }

    /// A diameter as it was typed where that still reads the same, else its figure: typed in millimetres it would be
    /// another size once inches are chosen.
    pub(super) fn as_typed(&self, quantity: Quantity, measure: &Measure) -> String {
        let numbers = self.numbers();
        match numbers.parse(quantity, &measure.typed) {
            Ok(Parsed::Value(entry)) if (entry.value - measure.value).abs() < 1e-9 => {
                measure.typed.clone()
            }
            _ => numbers.diameter_fine(measure.value).number,
        }
    }

    pub(super) fn choose_in_sheet(&mut self, key: &str) {
        let state = &mut self.states.truing;
        match state.sheet {
            Some(TruingSheet::Where) => self.trueup_choose_where(key),
            Some(TruingSheet::Round) => self.trueup_jump_to_reading(key),
            Some(TruingSheet::Decision) => state.decision = TrueDecision::from_key(key),
            Some(TruingSheet::Coat) => {
                let day = DayChoice::ALL.into_iter().find(|d| d.key() == key);
                state.day = day.unwrap_or_default();
                state.second.error.clear();
            }
            Some(TruingSheet::Grits) => {
                if let Some(grit) = GRITS.into_iter().find(|g| *g == key) {
                    let had = state.grits.contains(&grit);
                    state.grits.retain(|g| *g != grit);
                    if !had {
                        state.grits.push(grit);
                    }
                }
            }
            _ => {}
        }
    }

    /// The grits chosen from coarse to fine, then own words.
    pub(super) fn grits_in_sheet(&self) -> String {
        let state = &self.states.truing;
        let own = super::recorded::own_words(&state.first.text);
        let chosen = GRITS.into_iter().filter(|g| state.grits.contains(g));
        let mut all: Vec<String> = chosen.map(str::to_owned).collect();
        if !own.is_empty() {
            all.push(own);
        }
        all.join(", ")
    }

    pub(super) fn truing_sheet_view(&self) -> Option<SheetView> {
        let state = &self.states.truing;
        let sheet = state.sheet?;
        let piece = self.truing_piece()?;
        let words = self.words();
        let unit = |q: Quantity| self.numbers().quantity(q, q.range().example).unit;
        let field = |field: &Field, id: &str| TypedView::of(field, words.text(id));
        let mut view = SheetView {
            close: words.text("action-close"),
            save: words.text("trueup-record"),
            active: true,
            ..SheetView::default()
        };
        match sheet {
            TruingSheet::Oval => {
                view.title = match state.station {
                    None => words.text("trueup-oval-sheet"),
                    Some(n) => words.with("trueup-oval-sheet-at", &[("n", i64::from(n).into())]),
                };
                view.note = words.text("trueup-oval-how");
                view.numeric = true;
                let mm = unit(Quantity::OutsideDiameter);
                view.first = Some(field(&state.first, "trueup-longest").in_unit(mm.clone()));
                view.second = Some(field(&state.second, "trueup-shortest").in_unit(mm));
            }
            TruingSheet::Where => return Some(self.trueup_where_view(view)),
            TruingSheet::Round => return Some(self.trueup_round_view(view)),
            TruingSheet::Spigot => {
                view.title = words.text("trueup-spigot-sheet");
                view.note = words.text("trueup-spigot-how");
                view.numeric = true;
                let mm = unit(Quantity::SpigotDiameter);
                view.first = Some(field(&state.first, "trueup-spigot-label").in_unit(mm));
            }
            TruingSheet::Decision => {
                view.title = words.text("trueup-decision-sheet");
                let (kind, advice) = self.truing_advice(piece, &self.truing_sums(piece));
                // What speaks against spinning it stands in its own box below.
                if kind != "caution" {
                    view.note = advice;
                }
                view.rows = TrueDecision::ALL
                    .iter()
                    .map(|d| OptionView {
                        key: d.key(),
                        text: words.text(&format!("true-decision-{}", d.key())),
                        note: words.text(&format!("trueup-about-{}", d.key())),
                        selected: state.decision == Some(*d),
                    })
                    .collect();
                view.words = true;
                view.first = Some(field(&state.first, "trueup-reason"));
                view.active = state.decision.is_some();
                view.caution =
                    do_not_spin(piece).map_or_else(String::new, |why| self.spin_caution(&why));
            }
            TruingSheet::Grits => {
                view.title = words.text("finish-grits-sheet");
                view.chips = GRITS
                    .into_iter()
                    .map(|g| ChipView {
                        key: g.to_owned(),
                        text: g.to_owned(),
                        selected: state.grits.contains(&g),
                    })
                    .collect();
                view.second = None;
                view.first = Some(field(&state.first, "finish-grits-own"));
                view.active = !self.grits_in_sheet().is_empty();
            }
            TruingSheet::Coat => {
                view.title = words.text("finish-coat-sheet");
                let mut first =
                    field(&state.first, "finish-coat-label").hinted(words.text("finish-coat-hint"));
                // What went on before can be put in with one touch.
                if state.first.text.is_empty() {
                    first.ways = self.coats_before(piece);
                }
                view.first = Some(first);
                view.chips_title = words.text("finish-coat-when");
                view.chips = DayChoice::ALL
                    .into_iter()
                    .map(|d| ChipView {
                        key: d.key().to_owned(),
                        text: words.text(&format!("stages-day-{}", d.key())),
                        selected: state.day == d,
                    })
                    .collect();
                if state.day == DayChoice::Typed {
                    let day = field(&state.second, "stages-day-label");
                    view.second = Some(day.hinted(words.text("stages-day-hint")));
                }
            }
            TruingSheet::Signed => {
                view.title = words.text("finish-signed-sheet");
                view.note = words.text("finish-signed-how");
                view.first = Some(field(&state.first, "finish-signed-label"));
            }
        }
        Some(view)
    }
}
