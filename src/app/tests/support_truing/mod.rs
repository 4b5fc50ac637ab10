//! An ash vessel in True, its walls read, and what is done on the page.
#![allow(dead_code)] // each test file uses a part of it

use evenwall_app::action::Action;
use evenwall_app::route::Page;
use evenwall_app::truing::{TrueView, TruingAction as T};
use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::{Clock, Measure, PieceFact, Reading, StationRef};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::Taken;

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

pub fn act(h: &mut Hands, action: T) {
    h.act(Action::Truing(action));
}

pub fn page(h: &Hands) -> TrueView {
    h.app.true_view(h.now()).unwrap()
}
