//! An ash vessel in True, its walls read, and what is done on the page.
#![allow(dead_code)] // each test file uses a part of it

use evenwall_app::action::Action;
use evenwall_app::route::Page;
use evenwall_app::truing::{TrueView, TruingAction as T, TruingSheet};
use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::{Clock, Measure, PieceFact, Reading, StationRef};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{CrackAnswer, Taken};

use crate::support_piece::{Hands, detail, id, mm};

pub fn length(field: DetailField, value: f64) -> PieceFact {
    PieceFact::Detail {
        field,
        value: Some(mm(value)),
    }
}

pub fn wall(station: u8, value: f64) -> PieceFact {
    PieceFact::Reading(Reading {
        station: StationRef::Wall(station),
        position: Clock::TWELVE,
        wall_mm: Some(Measure::plain(value)),
        feel: None,
        taken: Taken::Callipers,
    })
}

/// An ash vessel of 200 mm in True, its walls read, with what else happened.
pub fn hands(more: Vec<PieceFact>) -> Hands {
    let facts = vec![
        detail(DetailField::Mark, "K03"),
        detail(DetailField::Wood, "white-ash"),
        length(DetailField::Diameter, 200.0),
        wall(1, 11.0),
        wall(2, 10.0),
        wall(3, 12.0),
    ];
    let mut h = Hands::with([facts, more, vec![PieceFact::StageMoved(Stage::True)]].concat());
    h.open();
    h.act(Action::Open(Page::Truing(id())));
    h
}

/// The same with its stations laid out, the widest the third, and its height said.
pub fn laid(more: Vec<PieceFact>) -> Hands {
    let stations = vec![
        length(DetailField::Height, 220.0),
        PieceFact::Stations {
            count: 5,
            depths_mm: vec![20.0, 55.0, 90.0, 140.0, 190.0],
        },
    ];
    hands([stations, more].concat())
}

pub fn answer(h: &mut Hands, answer: CrackAnswer) {
    let piece = id();
    act(h, T::Cracks { piece, answer });
}

pub fn measure(h: &mut Hands, longest: &str, shortest: &str) {
    act(h, T::Open(TruingSheet::Oval));
    act(h, T::First(longest.into()));
    act(h, T::Second(shortest.into()));
    act(h, T::Save);
}

pub fn act(h: &mut Hands, action: T) {
    h.act(Action::Truing(action));
}

pub fn page(h: &Hands) -> TrueView {
    h.app.true_view(h.now()).unwrap()
}
