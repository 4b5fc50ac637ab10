//! Promises of the details of a piece: a sensible reading or a clear sentence, and what is shown can be typed again.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use evenwall_app::app::App;
use evenwall_app::details::{self, FORM_ORDER};
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::detail::{DetailField, DetailValue, FieldKind};
use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::shop::{OwnWood, ShopFact};

fn now() -> Moment {
    chrono::DateTime::parse_from_rfc3339("2026-03-12T08:42:00+00:00").unwrap()
}

fn text(text: &str) -> Option<DetailValue> {
    Some(DetailValue::Text(text.to_owned()))
}

/// A piece of white ash with these details, in a shop with an own wood that moulds easily.
fn app(facts: &[(DetailField, DetailValue)], settings: &str) -> App {
    let mut store = MemoryStore::default();
    let mut all = vec![PieceFact::Created];
    all.extend(facts.iter().map(|(field, value)| PieceFact::Detail {
        field: *field,
        value: Some(value.clone()),
    }));
    let id = PieceId::new("k07").unwrap();
    store.append_piece(&id, now(), now(), all).unwrap();
    let own = OwnWood {
        id: "own-1".into(),
        name: "churchyard lime".into(),
        radial_pct: None,
        tangential_pct: None,
        density_kg_m3: None,
        green_mc_pct: None,
        moulds_easily: true,
    };
    store
        .append_shop(now(), now(), vec![ShopFact::Wood(own)])
        .unwrap();
    store.save_device_settings(settings).unwrap();
    App::open(Box::new(store), false, now()).unwrap()
}

fn piece(app: &App) -> &Piece {
    app.pieces().next().unwrap()
}

#[test]
fn every_detail_has_a_place_in_the_form_and_a_label() {
    let app = app(&[], "{}");
    assert_eq!(FORM_ORDER.len(), DetailField::ALL.len());
    for field in DetailField::ALL {
        assert!(FORM_ORDER.contains(field), "{field:?}");
        let view = details::field_view(&app, piece(&app), *field);
        assert!(!view.label.is_empty() && !view.label.starts_with('['));
        assert_eq!(view.value_text, "");
        assert_eq!(
            view.unit.is_empty(),
            field.kind() != FieldKind::Length,
            "{field:?}"
        );
        assert_eq!(
            details::choices(&app, *field).is_empty(),
            field.kind() != FieldKind::Choice
        );
    }
    assert_eq!(app.words().problems(), []);
}

#[test]
fn what_is_shown_is_read_back_to_the_same_value() {
    let values = [
        (DetailField::Wood, DetailValue::Text("white-ash".into())),
        (DetailField::Wood, DetailValue::Text("own-1".into())),
        (DetailField::Felled, DetailValue::Text("2026-03-02".into())),
        (DetailField::Felled, DetailValue::Text("2025-11".into())),
        (DetailField::Pith, DetailValue::Text("outside".into())),
        (
            DetailField::Outline,
            DetailValue::Text("high-shoulder".into()),
        ),
        (
            DetailField::Diameter,
            DetailValue::Length(Measure::plain(180.0)),
        ),
        (
            DetailField::WallWanted,
            DetailValue::Length(Measure::plain(9.5)),
        ),
    ];
    for settings in ["{}", r#"{"words":"en-US"}"#] {
        for (field, value) in &values {
            let app = app(&[(*field, value.clone())], settings);
            let shown = details::field_view(&app, piece(&app), *field).value_text;
            let read = details::understand(&app, *field, &shown, now())
                .unwrap()
                .unwrap();
            match (value, read) {
                (DetailValue::Length(a), DetailValue::Length(b)) => {
                    assert!((a.value - b.value).abs() < 1e-9);
                    assert_eq!(b.typed, shown);
                }
                (a, b) => assert_eq!(*a, b, "{shown}"),
            }
        }
    }
}

#[test]
fn lengths_are_read_in_the_units_of_the_device() {
    let inches = app(&[], r#"{"length":"inch-fraction"}"#);
    let read = details::understand(&inches, DetailField::Diameter, "7 1/4", now());
    let Ok(Some(DetailValue::Length(measure))) = read else {
        panic!("{read:?}");
    };
    assert!((measure.value - 184.15).abs() < 1e-9);
    assert_eq!(measure.typed, "7 1/4");
    assert_eq!(details::unit(&inches, DetailField::Diameter), "in");
}

#[test]
fn nonsense_gets_a_sentence_that_says_what_to_do() {
    let app = app(&[], "{}");
    for (field, typed, part) in [
        (DetailField::Diameter, "wide", "cannot be read"),
        (DetailField::Diameter, "-180", "below nought"),
        (DetailField::Diameter, "18000", "is allowed"),
        (DetailField::WallWanted, "118", "11.8"),
        (DetailField::Felled, "soon", "14 Mar 2026"),
        (DetailField::Felled, "30 Feb 2026", "no day"),
        (DetailField::Felled, "13 Mar 2026", "lies ahead"),
        (DetailField::Felled, "1206", "before 1900"),
        (
            DetailField::Mark,
            "a mark as long as a sentence",
            "at most 12",
        ),
        (DetailField::Pith, "sideways", "Choose one of"),
    ] {
        let error = details::understand(&app, field, typed, now()).unwrap_err();
        assert!(error.contains(part), "{typed}: {error}");
    }
    let long = "x".repeat(20_001);
    assert!(details::understand(&app, DetailField::Notes, &long, now()).is_err());
    let note = "x".repeat(10_000);
    assert_eq!(
        details::understand(&app, DetailField::Notes, &note, now()),
        Ok(text(&note))
    );
    assert_eq!(app.words().problems(), []);
}

#[test]
fn a_number_that_can_be_meant_in_two_ways_offers_what_it_can_mean() {
    let app = app(&[], "{}");
    let ways = details::ways_to_read(&app, DetailField::WallWanted, "118");
    assert!(!ways.is_empty());
    for way in ways {
        let read = details::understand(&app, DetailField::WallWanted, &way, now());
        assert!(matches!(read, Ok(Some(DetailValue::Length(_)))), "{way}");
    }
    assert!(details::ways_to_read(&app, DetailField::WallWanted, "11").is_empty());
}

#[test]
fn texts_are_kept_in_one_line_and_notes_in_several() {
    let app = app(&[], "{}");
    let place = details::understand(
        &app,
        DetailField::Place,
        " top\tshelf\r\n left\u{0} ",
        now(),
    );
    assert_eq!(place, Ok(text("top shelf left")));
    let notes = details::understand(&app, DetailField::Notes, "one\r\ntwo\n", now());
    assert_eq!(notes, Ok(text("one\ntwo")));
    assert_eq!(
        details::understand(&app, DetailField::Notes, " \n ", now()),
        Ok(None)
    );
}

#[test]
fn a_wood_is_known_by_its_name_and_any_other_name_is_kept_as_typed() {
    let app = app(
        &[(DetailField::Wood, DetailValue::Text("own-1".into()))],
        "{}",
    );
    let read = |typed: &str| details::understand(&app, DetailField::Wood, typed, now());
    assert_eq!(read("White Ash"), Ok(text("white-ash")));
    assert_eq!(read("Churchyard lime"), Ok(text("own-1")));
    assert_eq!(read("neighbour's plum"), Ok(text("neighbour's plum")));
    assert_eq!(app.wood_name("white-ash"), "White ash");
    assert_eq!(app.wood_name("neighbour's plum"), "Neighbour's plum");
    assert_eq!(app.wood_of(piece(&app)), "Churchyard lime");
    assert!(app.moulds_easily(piece(&app)));
    let note = details::field_view(&app, piece(&app), DetailField::Diameter).note;
    assert!(note.contains("150"), "{note}");
}
