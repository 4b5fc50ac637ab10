//! Moving in from a spreadsheet: matched, looked at, brought in, taken back.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use chrono::DateTime;
use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::demo;
use evenwall_app::diary::DiaryAction;
use evenwall_app::records::RecordsAction;
use evenwall_app::records::import::{ImportAction, ImportView};
use evenwall_app::route::Page;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::detail::DetailField;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Stage;
use evenwall_records::table;

fn now() -> Moment {
    DateTime::parse_from_rfc3339("2026-03-14T08:30:00+00:00").unwrap()
}

fn act(app: &mut App, action: ImportAction) {
    app.apply(Action::Records(RecordsAction::Import(action)), now());
}

/// The app with a file beside it, opened on the import page.
fn opened(csv: &str) -> App {
    let mut store = MemoryStore::default();
    store.save_outside("/old.csv", csv.as_bytes()).unwrap();
    let mut app = App::open(Box::new(store), false, now()).unwrap();
    act(&mut app, ImportAction::Open("/old.csv".into()));
    app
}

fn view(app: &App) -> ImportView {
    app.import_view(now())
}

fn piece<'a>(app: &'a App, mark: &str) -> &'a Piece {
    app.pieces().find(|p| p.mark() == mark).unwrap()
}

fn keys(app: &App) -> Vec<String> {
    view(app).columns.into_iter().map(|c| c.key).collect()
}

const NOTEBOOK: &str = "No;Species;Dia (cm);Wall mm;Stage;Roughed;Weight g;Date;Remarks\n\
K07;elm;16,5;12;Bag;3 Jan 2026;820;5 Jan 2026;fell in the river\n\
K08;white ash;14;10;settle;2025-11-02;640,5;2026-03-01;\n\
K07;;;;;;801;20 Jan 2026;\n";

#[test]
fn columns_are_guessed_by_their_names_and_units_and_rows_of_one_mark_are_one_piece() {
    let mut app = opened(NOTEBOOK);
    assert_eq!(
        keys(&app),
        [
            "mark",
            "wood",
            "diameter_mm",
            "wall_wanted_mm",
            "stage",
            "begun",
            "weight",
            "weighed",
            "notes"
        ]
    );
    let before = view(&app);
    assert_eq!(before.summary, "2 new pieces, 3 weights.");
    assert_eq!(before.pieces[0].note, "Elm · Bag · 2 weights");
    assert_eq!(before.faults, [] as [String; 0]);
    assert!(
        before.can_run && app.pieces().count() == 0,
        "nothing is recorded yet"
    );
    act(&mut app, ImportAction::Run);
    let k07 = piece(&app, "K07");
    assert_eq!(k07.details.mm(DetailField::Diameter), Some(165.0));
    assert_eq!(
        k07.details.text(DetailField::Notes),
        Some("fell in the river")
    );
    assert_eq!(k07.stage(), Stage::Bag);
    assert_eq!(k07.created.unwrap().date_naive().to_string(), "2026-01-03");
    let weights: Vec<(String, f64)> = k07
        .weighings
        .iter()
        .map(|w| (w.at.date_naive().to_string(), w.net_g()))
        .collect();
    assert_eq!(
        weights,
        [
            ("2026-01-05".to_owned(), 820.0),
            ("2026-01-20".to_owned(), 801.0)
        ]
    );
    assert_eq!(piece(&app, "K08").weighings[0].net_g(), 640.5);
    assert_eq!(
        piece(&app, "K08").details.text(DetailField::Wood),
        Some("white-ash")
    );
    assert_eq!(view(&app).outcome, "2 pieces brought in");
    assert_eq!(app.words().problems(), []);
}

#[test]
fn undo_takes_the_whole_import_back_and_redo_brings_it_again() {
    let mut app = opened(NOTEBOOK);
    act(&mut app, ImportAction::Run);
    assert_eq!(app.undo().depth(), 1);
    app.apply(Action::Undo, now());
    assert_eq!(app.pieces().count(), 0);
    assert!(!app.import_can_be_taken_back());
    app.apply(Action::Redo, now());
    assert_eq!(app.pieces().count(), 2);
    assert_eq!(piece(&app, "K07").weighings.len(), 2);
}

#[test]
fn a_line_that_cannot_be_read_is_left_out_and_said_and_the_others_come_in() {
    let csv = "Mark,Wall,Stage,Felled,Height in\nK07,lots,Bag,,\nK08,12,Cellar,,\n,12,,,\nK10,12,bag,30 Feb 2026,7\nK11,12,bag,2026,7\nKAAAAAAAAAAAA1,12,bag,,\nK12,999999,,,\n";
    let mut app = opened(csv);
    let faults = view(&app).faults;
    let starts = [
        "Line 2, Wall: ",
        "Line 3, Stage: \"Cellar\" is none of these: Shape, Hollow",
        "Line 4: there is no mark",
        "Line 5, Felled: ",
        "Line 7, Mark: ",
        "Line 8, Wall: ",
    ];
    assert_eq!(faults.len(), starts.len(), "{faults:#?}");
    for (fault, start) in faults.iter().zip(starts) {
        assert!(fault.starts_with(start), "{fault}");
    }
    assert_eq!(
        view(&app).summary,
        "One new piece, 0 weights; 6 lines are left out."
    );
    act(&mut app, ImportAction::Run);
    let marks: Vec<&str> = app.pieces().map(Piece::mark).collect();
    assert_eq!(marks, ["K11"]);
    assert!(
        (piece(&app, "K11").details.mm(DetailField::Height).unwrap() - 177.8).abs() < 1e-9,
        "7 inches by the column's name"
    );
}

#[test]
fn the_turner_matches_what_was_guessed_wrong_and_one_thing_is_in_one_column() {
    let mut app = opened("a,b,12 Jan 2026\nK07,elm,820\nK07,ash,810\n");
    assert_eq!(keys(&app), ["-", "-", "weight-2026-01-12"]);
    assert_eq!(view(&app).summary, "Say which column holds the mark.");
    assert!(!view(&app).can_run);
    act(&mut app, ImportAction::Run);
    assert!(
        app.question().unwrap().text.contains("nothing to bring in"),
        "{:?}",
        app.question()
    );
    app.apply(Action::CloseQuestion, now());
    act(&mut app, ImportAction::Match(1, "mark".into()));
    act(&mut app, ImportAction::Match(0, "mark".into()));
    assert_eq!(keys(&app)[..2], ["mark", "-"]);
    act(&mut app, ImportAction::Match(1, "wood".into()));
    assert_eq!(
        view(&app).faults,
        ["Line 3: K07 stands on line 2 already and says something else. Make the two agree."]
    );
    act(&mut app, ImportAction::Match(1, "-".into()));
    act(&mut app, ImportAction::Match(99, "wood".into()));
    act(&mut app, ImportAction::Run);
    assert_eq!(piece(&app, "K07").weighings.len(), 2);
}

#[test]
fn a_piece_of_the_shelf_gets_only_the_weights_it_has_not_got() {
    // The same file again with one more weight, and another wood, which is not asked for.
    let more = format!("{NOTEBOOK}K07;beech;;;;;790;1 Feb 2026;\n");
    let path = "/more.csv";
    let mut store = MemoryStore::default();
    store.save_outside(path, more.as_bytes()).unwrap();
    store.save_outside("/old.csv", NOTEBOOK.as_bytes()).unwrap();
    let mut app = App::open(Box::new(store), false, now()).unwrap();
    act(&mut app, ImportAction::Open("/old.csv".into()));
    act(&mut app, ImportAction::Run);
    act(&mut app, ImportAction::Open(path.into()));
    let seen = view(&app);
    assert_eq!(
        seen.summary, "0 new pieces, one weight.",
        "{:?}",
        seen.faults
    );
    assert_eq!(view(&app).pieces.len(), 1);
    assert_eq!(
        view(&app).pieces[0].note,
        "On the shelf already: only one weight"
    );
    act(&mut app, ImportAction::Run);
    assert_eq!(piece(&app, "K07").weighings.len(), 3);
    assert_eq!(app.wood_of(piece(&app, "K07")), "Elm");
}

#[test]
fn what_leaves_as_tables_comes_in_again() {
    let mut store = MemoryStore::default();
    demo::fill(&mut store, now()).unwrap();
    let old = App::open(Box::new(store), false, now()).unwrap();
    let mut store = MemoryStore::default();
    for table in old.tables() {
        store
            .save_outside(
                &format!("/{}.csv", table.name),
                &table::write(&table).unwrap(),
            )
            .unwrap();
    }
    let mut app = App::open(Box::new(store), false, now()).unwrap();
    for name in ["pieces", "weighings"] {
        act(&mut app, ImportAction::Open(format!("/{name}.csv")));
        assert!(app.question().is_none(), "{:?}", app.question());
        if name == "weighings" {
            // The net weight and the scale's are both there; the scale's goes with the tare.
            let place = view(&app)
                .columns
                .iter()
                .position(|c| c.name == "scale_g")
                .unwrap();
            assert_eq!(view(&app).columns[place].key, "weight");
        }
        assert_eq!(view(&app).faults, [] as [String; 0]);
        act(&mut app, ImportAction::Run);
        assert!(app.question().is_none(), "{:?}", app.question());
    }
    assert_eq!(app.pieces().count(), old.pieces().count());
    for piece in old.pieces() {
        let new = app.pieces().find(|p| p.mark() == piece.mark()).unwrap();
        assert_eq!(new.stage(), piece.stage(), "{}", piece.mark());
        assert_eq!(new.living(), piece.living(), "{}", piece.mark());
        assert_eq!(app.wood_of(new), old.wood_of(piece));
        let net = |p: &Piece| {
            p.weighings
                .iter()
                .map(|w| (w.at, w.net_g()))
                .collect::<Vec<_>>()
        };
        assert_eq!(net(new), net(piece), "{}", piece.mark());
    }
}

#[test]
fn a_file_that_is_none_is_refused_with_a_sentence() {
    for (csv, said) in [
        ("", "the file is empty"),
        ("Mark\n", "only one line"),
        ("PK\u{3}\u{4}", "save the sheet as CSV"),
    ] {
        let app = opened(csv);
        assert!(app.question().unwrap().text.contains(said), "{csv}");
        assert!(view(&app).columns.is_empty());
    }
    let mut app = opened(NOTEBOOK);
    act(&mut app, ImportAction::Close);
    act(&mut app, ImportAction::Open("/none.csv".into()));
    assert!(app.question().unwrap().text.contains("There is no file"));
    act(&mut app, ImportAction::GoOn);
    assert!(
        app.question()
            .unwrap()
            .text
            .contains("No import was cut off")
    );
    act(&mut app, ImportAction::TakeBack);
    assert!(app.question().unwrap().text.contains("could be taken back"));
}

#[test]
fn taken_back_later_what_was_worked_on_since_stays() {
    let mut app = opened(NOTEBOOK);
    act(&mut app, ImportAction::Run);
    let id = piece(&app, "K08").id.clone();
    app.apply(Action::Open(Page::Diary(id)), now());
    app.apply(Action::Diary(DiaryAction::WriteNote(true)), now());
    app.apply(Action::Diary(DiaryAction::EditNote("dry".into())), now());
    app.apply(Action::Diary(DiaryAction::AddNote), now());
    act(&mut app, ImportAction::TakeBack);
    assert_eq!(app.pieces().map(Piece::mark).collect::<Vec<_>>(), ["K08"]);
    assert_eq!(piece(&app, "K08").weighings.len(), 1);
    assert!(view(&app).outcome.ends_with("worked on since: K08"));
    assert!(!app.import_can_be_taken_back());
    app.apply(Action::Undo, now());
    assert_eq!(app.pieces().count(), 2);
}
