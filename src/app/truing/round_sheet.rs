//! Round sheet: the choice of a station and a way, and one reading of many, as they are shown.

use evenwall_piece::fact::Measure;

use super::place::places_of;
use super::round::{Way, clock_place, quantity, turn_deg};
use super::sheet::{ChipView, SheetView};
use crate::app::App;
use crate::flaws::{OptionView, TypedView};

impl App {
    /// The sheet in which station and way are chosen.
    pub(super) fn trueup_where_view(&self, mut view: SheetView) -> SheetView {
        let words = self.words();
        let state = &self.states.truing;
        let places = self.truing_piece().map(places_of).unwrap_or_default();
        view.title = words.text("trueup-where-sheet");
        view.save = words.text("trueup-where-go");
        view.rows = Way::ALL
            .into_iter()
            .map(|w| OptionView {
                key: w.key(),
                text: words.text(&format!("trueup-way-{}", w.key())),
                note: words.text(&format!("trueup-way-{}-note", w.key())),
                selected: state.way == w,
            })
            .collect();
        view.chips_title = words.text("trueup-where-station");
        view.chips = places
            .iter()
            .map(|p| ChipView {
                key: p.number.to_string(),
                text: self.trueup_place_name(p.number, p.widest),
                selected: state.station == Some(p.number),
            })
            .collect();
        view
    }

    /// The sheet of one reading of many.
    pub(super) fn trueup_round_view(&self, mut view: SheetView) -> SheetView {
        let (words, numbers) = (self.words(), self.numbers());
        let state = &self.states.truing;
        let Some((how, count)) = state.way.round() else {
            return view;
        };
        let place = |i: usize| clock_place(turn_deg(how, i, count));
        let number = |n: usize| i64::try_from(n).unwrap_or(0);
        let station = i64::from(state.station.unwrap_or(0));
        view.title = words.with(
            "trueup-round-sheet",
            &[("n", station.into()), ("how", how.key().into())],
        );
        view.note = words.with("trueup-round-how", &[("how", how.key().into())]);
        let label = words.with(
            "trueup-round-label",
            &[
                ("place", place(state.at).into()),
                ("i", number(state.at + 1).into()),
                ("count", number(count).into()),
            ],
        );
        let unit = self
            .numbers()
            .quantity(quantity(how), quantity(how).range().example)
            .unit;
        view.first = Some(TypedView::of(&state.first, label).in_unit(unit));
        view.numeric = true;
        view.chips_title = words.text("trueup-round-so-far");
        view.chips = state
            .readings
            .iter()
            .enumerate()
            .map(|(i, read)| {
                let text = read.as_ref().map_or_else(
                    || place(i),
                    |m| {
                        let value = numbers.diameter_fine(m.value).number;
                        words.with(
                            "trueup-round-chip",
                            &[("place", place(i).into()), ("value", value.into())],
                        )
                    },
                );
                ChipView {
                    key: i.to_string(),
                    text,
                    selected: i == state.at,
                }
            })
            .collect();
        let open = |(i, r): (usize, &Option<Measure>)| i != state.at && r.is_none();
        view.save = if state.readings.iter().enumerate().any(open) {
            words.text("trueup-round-next")
        } else {
            words.text("trueup-record")
        };
        view
    }
}
