//! Facts in a few words, and a piece to put them on.

use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{
    Clock, FlawNote, FlawTreated, Measure, PieceFact as F, Reading, StationRef,
};
use evenwall_piece::ids::FlawId;
use evenwall_piece::line::Line;
use evenwall_piece::piece::Piece;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, FlawKind, Taken, Treatment};

use super::line;

/// The piece gets this mark.
pub fn mark(text: &str) -> F {
    F::Detail {
        field: DetailField::Mark,
        value: Some(DetailValue::Text(text.to_owned())),
    }
}

/// The bag was felt.
pub fn look(feel: BagFeel) -> F {
    F::Look {
        feel: Some(feel),
        mould: false,
        crack: false,
    }
}

/// A wall by callipers at the pencil line, mm.
pub fn reading(station: u8, mm: f64) -> F {
    F::Reading(Reading {
        station: StationRef::Wall(station),
        position: Clock::TWELVE,
        wall_mm: Some(Measure::plain(mm)),
        feel: None,
        taken: Taken::Callipers,
    })
}

/// A flaw of which no more is said.
pub fn flaw(id: &str, kind: FlawKind) -> F {
    F::FlawFound(FlawNote {
        flaw: FlawId::new(id).unwrap(),
        kind,
        station: None,
        clock: None,
        size_mm: None,
        through: false,
        note: String::new(),
    })
}

/// A treatment of which no more is said.
pub fn treated(id: &str, treatment: Treatment) -> F {
    F::FlawTreated(FlawTreated {
        flaw: FlawId::new(id).unwrap(),
        treatment,
        face: None,
        goes: None,
        look_again: None,
    })
}

/// What the bag felt like, look by look.
pub fn feels(piece: &Piece) -> Vec<BagFeel> {
    piece.looks.iter().filter_map(|l| l.feel).collect()
}

/// A piece in its bag, entered at the bench.
pub fn in_the_bag() -> Vec<Line<F>> {
    vec![
        line("bench", 1, 1, vec![F::Created, mark("K07")]),
        line("bench", 2, 2, vec![F::StageMoved(Stage::Bag)]),
    ]
}

/// The piece in its bag, and more lines.
pub fn with(more: Vec<Line<F>>) -> Vec<Line<F>> {
    in_the_bag().into_iter().chain(more).collect()
}

/// A piece in a stage, with more facts recorded there.
pub fn in_stage(stage: Stage, facts: Vec<F>) -> Piece {
    super::fold(&[
        line("bench", 1, 1, vec![F::Created, F::StageMoved(stage)]),
        line("bench", 2, 10, facts),
    ])
}

/// A detail in words.
pub fn text(field: DetailField, key: &str) -> F {
    F::Detail {
        field,
        value: Some(DetailValue::Text(key.to_owned())),
    }
}
