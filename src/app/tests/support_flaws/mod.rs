//! A piece in Stabilise whose flaws are noted, and what the flaw pages show of it.
#![allow(dead_code)] // each test file uses a part of it

use evenwall_app::action::Action;
use evenwall_app::flaws::{FlawView, FlawsAction as F, FlawsView, FormView, SeenView};
use evenwall_app::route::Page;
use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::{PieceFact, StationRef};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{FlawKind, Treatment};

use crate::support_piece::{Hands, detail, id, mm};

pub fn hands() -> Hands {
    let diameter = PieceFact::Detail {
        field: DetailField::Diameter,
        value: Some(mm(140.0)),
    };
    let mut h = Hands::with(vec![
        detail(DetailField::Mark, "K07"),
        detail(DetailField::Wood, "white-ash"),
        diameter,
        PieceFact::StageMoved(Stage::Stabilise),
    ]);
    h.open();
    h
}

pub fn act(h: &mut Hands, action: F) {
    h.act(Action::Flaws(action));
}

pub fn list(h: &Hands) -> FlawsView {
    h.app.flaws_view(h.now()).unwrap()
}

pub fn one(h: &Hands) -> FlawView {
    h.app.flaw_view(h.now()).unwrap()
}

pub fn form(h: &Hands) -> FormView {
    one(h).form.expect("a form")
}

pub fn seen(h: &Hands) -> SeenView {
    one(h).seen.expect("a flaw that was noted")
}

pub fn begin(h: &mut Hands) {
    h.act(Action::Open(Page::Flaw(id(), None)));
}

pub fn note(h: &mut Hands, kind: FlawKind, done: Option<Treatment>) {
    begin(h);
    act(h, F::Kind(kind));
    act(h, F::Station(StationRef::Wall(3)));
    act(h, F::ClockAt(4.2));
    if let Some(done) = done {
        act(h, F::Treatment(done));
    }
    act(h, F::Save);
}

pub fn open_first(h: &mut Hands) {
    let flaw = h.piece().flaws[0].note.flaw.clone();
    h.act(Action::Open(Page::Flaw(id(), Some(flaw))));
}

pub fn cards(h: &Hands) -> Vec<(String, Vec<String>)> {
    list(h)
        .groups
        .into_iter()
        .map(|g| (g.title, g.cards.into_iter().map(|c| c.title).collect()))
        .collect()
}
