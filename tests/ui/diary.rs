//! The diary through its screen.

use evenwall_app::action::Action;
use evenwall_app::route::Page;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Clock, Measure, PieceFact, Reading, StationRef};
use evenwall_piece::ids::PieceId;
use evenwall_piece::vocabulary::{BagFeel, Taken};

use crate::bench::{Bench, moment};

fn bench() -> Bench {
    let mut store = MemoryStore::default();
    let id = PieceId::new("k07").unwrap();
    let mut line = |at: &str, facts| {
        let at = moment(at);
        store.append_piece(&id, at, at, facts).map(drop).unwrap();
    };
    let text = |field, text: &str| PieceFact::Detail {
        field,
        value: Some(DetailValue::Text(text.into())),
    };
    line(
        "2026-03-01T10:00:00+00:00",
        vec![
            PieceFact::Created,
            text(DetailField::Mark, "K07"),
            text(DetailField::Wood, "white-ash"),
        ],
    );
    for (n, wall) in [(1, 10.5), (2, 10.0), (3, 12.5)] {
        let reading = Reading {
            station: StationRef::Wall(n),
            position: Clock::TWELVE,
            wall_mm: Some(Measure::plain(wall)),
            feel: None,
            taken: Taken::Callipers,
        };
        line(
            "2026-03-02T10:00:00+00:00",
            vec![PieceFact::Reading(reading)],
        );
    }
    let look = PieceFact::Look {
        feel: Some(BagFeel::Wet),
        mould: true,
        crack: false,
    };
    line("2026-03-05T10:00:00+00:00", vec![look]);
    let mass_g = Measure {
        value: 882.0,
        typed: "882".into(),
    };
    line(
        "2026-03-06T10:00:00+00:00",
        vec![PieceFact::Weighed {
            mass_g,
            tare_g: 0.0,
        }],
    );
    let bench = Bench::on(Box::new(store));
    bench.screens.act(Action::Open(Page::Diary(id)));
    bench
}

#[test]
fn an_entry_is_corrected_undone_and_a_note_added_by_touch() {
    let bench = bench();
    bench.touch("Weighed 882\u{a0}g");
    bench.write("What it should say", "828");
    bench.pictures_of("diary-editing");
    bench.touch("Save correction");
    assert!(bench.sees("Weighed 828\u{a0}g"));
    assert!(bench.reads("was: Weighed 882"));
    bench.touch("Undo: Entry corrected");
    assert!(bench.sees("Weighed 882\u{a0}g"));
    bench.touch("Add note");
    bench.write("New note", "Łódź ğüşiö 😀 rim sound");
    bench.touch("Add note");
    assert!(
        bench.reads("Łódź ğüşiö □ rim sound"),
        "Polish and Turkish letters are drawn, and a sign that the face lacks is a box"
    );
    bench.pictures_of("diary");
}
