//! What leaves the app: reports, tables and tags of the invented shelf say what the diary says, and nothing that they
//! should not.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::collections::BTreeMap;

use chrono::DateTime;
use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::demo;
use evenwall_app::device::{DeviceSettings, PaperChoice, WordsChoice};
use evenwall_app::records::RecordsAction;
use evenwall_app::records::report::{ReportImages, ReportOrder, Version};
use evenwall_app::shop::ShopAction;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{End, FlawNote, Measure, PieceFact};
use evenwall_piece::ids::{FlawId, PieceId};
use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::FlawKind;
use evenwall_records::report::ReportPhoto;
use evenwall_records::table::{self, Cell, Table};

fn now() -> Moment {
    DateTime::parse_from_rfc3339("2026-03-14T08:30:00+00:00").unwrap()
}

fn shelf() -> App {
    let mut store = MemoryStore::default();
    demo::fill(&mut store, now()).unwrap();
    App::open(Box::new(store), false, now()).unwrap()
}

fn of_mark(app: &App, mark: &str) -> PieceId {
    app.pieces().find(|p| p.mark() == mark).unwrap().id.clone()
}

fn text(field: DetailField, text: &str) -> PieceFact {
    PieceFact::Detail {
        field,
        value: Some(DetailValue::Text(text.into())),
    }
}

#[test]
fn a_report_tells_the_whole_road_of_a_finished_piece() {
    let app = shelf();
    let images = ReportImages {
        portrait: Some(ReportPhoto {
            jpeg: vec![0xff, 0xd8, 0xff, 0xe0],
            caption: "On the shelf".into(),
        }),
        ..ReportImages::default()
    };
    let page = app
        .report(&of_mark(&app, "J02"), Version::Shop, &images, now())
        .unwrap();
    for said in [
        "<h1>J02, European ash</h1>",
        "Vessel, finished 8 December 2025",
        "European ash (Fraxinus excelsior)",
        "5.5\u{a0}to\u{a0}7.0\u{a0}mm",
        "262\u{a0}g",
        "<h3>Bag</h3>",
        "12 October 2024 to 13 November 2024",
        "2 wet, 3 damp, 2 with nothing on it",
        "Grits: 120, 180, 240, 320",
        "<figcaption>On the shelf</figcaption>",
        "From 795\u{a0}g on 12 October 2024 to 605\u{a0}g on 25 October 2025.",
        "Spigot turned off on the plug",
        "How to care for it",
    ] {
        assert!(page.contains(said), "{said}");
    }
    assert_eq!(app.words().problems(), []);
}

#[test]
fn the_buyers_version_has_none_of_what_is_the_shops_own() {
    let mut store = MemoryStore::default();
    let id = PieceId::new("k07-x").unwrap();
    let flaw = FlawId::new("f1").unwrap();
    let found = FlawNote {
        flaw,
        kind: FlawKind::Knot,
        station: None,
        clock: None,
        size_mm: Some(Measure::plain(14.0)),
        through: false,
        note: "SECRET knot".into(),
    };
    let facts = vec![
        PieceFact::Created,
        text(DetailField::Mark, "K07"),
        text(DetailField::Notes, "SECRET notes"),
        text(DetailField::Source, "SECRET source"),
        text(DetailField::Place, "SECRET place"),
        text(DetailField::Log, "SECRET log"),
        PieceFact::Note("SECRET note".into()),
        PieceFact::FlawFound(found),
        PieceFact::TrueDecided {
            decision: evenwall_piece::vocabulary::TrueDecision::Go,
            reason: "SECRET reason".into(),
        },
        PieceFact::Ended(End::Finished),
    ];
    store.append_piece(&id, now(), now(), facts).unwrap();
    let app = App::open(Box::new(store), false, now()).unwrap();
    let none = ReportImages::default();
    let shop = app.report(&id, Version::Shop, &none, now()).unwrap();
    assert_eq!(shop.matches("SECRET").count(), 7, "the shop has all of it");
    let buyer = app.report(&id, Version::Buyer, &none, now()).unwrap();
    assert_eq!(buyer.matches("SECRET").count(), 0);
    assert!(
        buyer.contains("Knot, 14"),
        "the knot itself is there to be seen"
    );
}

#[test]
fn every_piece_of_the_shelf_has_a_report_and_a_tag_in_both_languages_and_units() {
    for words in [WordsChoice::British, WordsChoice::American] {
        let mut app = shelf();
        let settings = DeviceSettings {
            words,
            paper: PaperChoice::Letter,
            length: evenwall_app::device::LengthChoice::InchFraction,
            mass: evenwall_app::device::MassChoice::PoundOunce,
            ..app.device().clone()
        };
        app.apply(ShopAction::Device(settings).into(), now());
        let all: Vec<PieceId> = app.pieces().map(|p| p.id.clone()).collect();
        for id in &all {
            for version in [Version::Shop, Version::Buyer] {
                let page = app
                    .report(id, version, &ReportImages::default(), now())
                    .unwrap();
                assert!(page.contains("@page{size:letter"));
                assert!(!page.contains("NaN") && !page.contains(">[") && !page.contains("{$"));
            }
        }
        let tags = app.tags(&all, now()).unwrap();
        assert!(tags.contains("viewBox=\"0 0 215.9 279.4\""));
        assert_eq!(app.words().problems(), []);
    }
}

#[test]
fn flaws_have_their_own_photos_and_what_was_done_with_days() {
    let app = shelf();
    let piece = app
        .pieces()
        .find(|p| p.flaws.iter().any(|f| f.decided()))
        .unwrap();
    let flaw = piece.flaws.iter().find(|f| f.decided()).unwrap();
    let photo = ReportPhoto {
        jpeg: vec![0xff, 0xd8, 0xff, 0xe0],
        caption: "before the glue".into(),
    };
    let images = ReportImages {
        flaws: BTreeMap::from([(flaw.note.flaw.clone(), vec![photo])]),
        ..ReportImages::default()
    };
    let page = app
        .report(&piece.id, Version::Shop, &images, now())
        .unwrap();
    assert!(page.contains("before the glue"));
    let (at, _) = flaw.last_treatment().unwrap();
    let day = app.dates(now()).full(at.date_naive());
    assert!(page.contains(&format!("<li>{day}: ")), "{day}");
}

#[test]
fn care_words_are_the_turners_and_can_be_none_or_the_usual_again() {
    let mut app = shelf();
    let usual = app.care_words();
    assert!(usual.len() >= 2);
    app.apply(
        RecordsAction::CareWords(Some("Oil it\n\nonce a year".into())).into(),
        now(),
    );
    assert_eq!(app.care_words(), ["Oil it", "once a year"]);
    app.apply(RecordsAction::CareWords(Some("  ".into())).into(), now());
    assert_eq!(app.care_words(), [] as [String; 0]);
    app.apply(Action::Undo, now());
    assert_eq!(app.care_words(), ["Oil it", "once a year"]);
    app.apply(RecordsAction::CareWords(None).into(), now());
    assert_eq!(app.care_words(), usual);
    app.apply(
        RecordsAction::CareWords(Some("x".repeat(4001))).into(),
        now(),
    );
    assert!(app.question().unwrap().text.contains("Shorten them"));
}

fn rows(table: &Table) -> Vec<BTreeMap<String, String>> {
    let bytes = table::write(table).unwrap();
    let mut reader = csv_of(&bytes);
    let names = reader.remove(0);
    reader
        .into_iter()
        .map(|row| names.iter().cloned().zip(row).collect())
        .collect()
}

/// The cells of a table as its own reader gives them.
fn csv_of(bytes: &[u8]) -> Vec<Vec<String>> {
    let read = evenwall_records::separated::read(bytes).unwrap();
    std::iter::once(read.columns)
        .chain(read.rows.into_iter().map(|r| r.cells))
        .collect()
}

#[test]
fn tables_hold_every_reading_weighing_look_flaw_and_piece_with_units_in_their_names() {
    let app = shelf();
    let tables = app.tables();
    let named = |name: &str| tables.iter().find(|t| t.name == name).unwrap();
    let count =
        |of: &dyn Fn(&evenwall_piece::piece::Piece) -> usize| app.pieces().map(of).sum::<usize>();
    assert_eq!(named("pieces").rows.len(), app.pieces().count());
    assert_eq!(named("readings").rows.len(), count(&|p| p.readings.len()));
    assert_eq!(named("weighings").rows.len(), count(&|p| p.weighings.len()));
    assert_eq!(named("bag-checks").rows.len(), count(&|p| p.looks.len()));
    assert_eq!(
        named("flaws").rows.len(),
        count(&|p| p.flaws.iter().map(|f| 1 + f.events.len()).sum())
    );
    assert_eq!(named("climate").rows.len(), app.shop().climate.len());
    for table in &tables {
        for row in &table.rows {
            assert_eq!(row.len(), table.columns.len(), "{}", table.name);
            for (name, cell) in table.columns.iter().zip(row) {
                let has_unit = ["_mm", "_g", "_c", "_pct", "_h"]
                    .iter()
                    .any(|u| name.ends_with(u));
                assert!(
                    !matches!(cell, Cell::Number(_)) || has_unit,
                    "{name} is a number without a unit"
                );
            }
        }
    }
    let weighings = rows(named("weighings"));
    let first = weighings.iter().find(|r| r["mark"] == "J02").unwrap();
    assert_eq!(
        (first["net_g"].as_str(), first["stage"].as_str()),
        ("795", "bag")
    );
    assert!(first["at"].starts_with("2024-10-12T") && first["at"].ends_with("+00:00"));
}

#[test]
fn documents_go_where_the_turner_says_and_what_fails_can_be_tried_again() {
    let mut app = shelf();
    let id = of_mark(&app, "K07");
    app.apply(RecordsAction::SaveTables(String::new()).into(), now());
    assert!(app.question().unwrap().text.contains("Say where"));
    app.apply(Action::CloseQuestion, now());
    app.apply(RecordsAction::SaveTables("/out/".into()).into(), now());
    assert_eq!(
        app.records_outcome().unwrap(),
        "6 tables are written to /out/."
    );
    let read = |app: &App, path: &str| app.store().read_outside(path).unwrap().unwrap();
    assert!(read(&app, "/out/evenwall-bag-checks.csv").starts_with(b"\xef\xbb\xbfpiece,mark,at,"));
    app.apply(
        RecordsAction::SaveTags(vec![id.clone()], "/out/tags.html".into()).into(),
        now(),
    );
    assert!(
        String::from_utf8(read(&app, "/out/tags.html"))
            .unwrap()
            .contains(">K07</text>")
    );
    let order = ReportOrder {
        piece: id.clone(),
        version: Version::Buyer,
        path: format!("/out/{}", app.report_file_name(&id)),
        images: ReportImages::default(),
    };
    app.apply(
        RecordsAction::SaveReport(Box::new(order.clone())).into(),
        now(),
    );
    assert!(read(&app, "/out/K07-report.html").starts_with(b"<!DOCTYPE html>"));
    let gone = ReportOrder {
        piece: PieceId::new("nobody").unwrap(),
        ..order
    };
    app.apply(RecordsAction::SaveReport(Box::new(gone)).into(), now());
    assert!(
        app.question()
            .unwrap()
            .text
            .contains("not on the shelf any more")
    );
}

#[test]
fn a_disk_that_is_full_keeps_the_order_to_be_tried_again() {
    let mut store = MemoryStore::default();
    demo::fill(&mut store, now()).unwrap();
    store.failing = true;
    let mut app = App::open(Box::new(store), false, now()).unwrap();
    let id = of_mark(&app, "K07");
    app.apply(
        RecordsAction::SaveTags(vec![id], "/out/tags.html".into()).into(),
        now(),
    );
    assert_eq!(app.save_error(), Some("Not saved. The disk is full."));
    assert_eq!(app.records_outcome(), None);
}

#[test]
fn tags_say_mark_wood_dates_first_weight_and_next_look_and_their_code_leads_back() {
    let mut app = shelf();
    let id = of_mark(&app, "K07");
    let page = app.tags(std::slice::from_ref(&id), now()).unwrap();
    for said in [
        ">K07<",
        ">European ash<",
        ">Felled February 2026<",
        ">Begun 5 March 2026<",
        ">547\u{a0}g, 7 March 2026<",
        ">Next look 14 March 2026<",
    ] {
        assert!(page.contains(said), "{said} in {page}");
    }
    assert_eq!(app.tag_code(&id), format!("K07 {id}"));
    assert_eq!(
        app.piece_of_code(&format!("renamed since {id}")),
        Some(id.clone())
    );
    assert_eq!(app.piece_of_code("K07 nobody"), None);
    assert_eq!(app.piece_of_code(""), None);
    let huge = DeviceSettings {
        tag_width_mm: 500.0,
        ..app.device().clone()
    };
    app.apply(ShopAction::Device(huge).into(), now());
    assert!(
        app.tags(&[id], now())
            .unwrap_err()
            .to_string()
            .contains("40 to 190 mm wide")
    );
    assert!(app.tags(&[], now()).is_err());
}
