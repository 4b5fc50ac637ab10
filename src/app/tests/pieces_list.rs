//! Promises of the list of pieces: what is on the go is found, in the order asked for, and nothing is hidden for good.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::pieces::{Filter, PiecesAction, Sort};
use evenwall_app::route::Page;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{End, PieceFact};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, LostHow, LostWhere};

fn at(day: &str) -> Moment {
    chrono::DateTime::parse_from_rfc3339(&format!("{day}T10:00:00+00:00")).unwrap()
}

/// A Thursday.
fn now() -> Moment {
    at("2026-03-12")
}

fn set(field: DetailField, text: &str) -> PieceFact {
    PieceFact::Detail {
        field,
        value: Some(DetailValue::Text(text.to_owned())),
    }
}

fn put(store: &mut MemoryStore, mark: &str, day: &str, more: Vec<PieceFact>) {
    let id = PieceId::new(&mark.to_lowercase()).unwrap();
    let mut facts = vec![PieceFact::Created, set(DetailField::Mark, mark)];
    facts.extend(more);
    store.append_piece(&id, at(day), at(day), facts).unwrap();
}

/// Invented: a bag that is late, one that is fresh, one at rest in the shop, two on the lathe, and what ended.
fn shelf() -> App {
    let mut store = MemoryStore::default();
    let s = &mut store;
    let wood = |w: &str| set(DetailField::Wood, w);
    let bag = PieceFact::StageMoved(Stage::Bag);
    let log = set(DetailField::Log, "Ash, the big limb");
    put(s, "K11", "2026-03-01", vec![wood("sycamore"), bag.clone()]);
    put(
        s,
        "K9",
        "2026-03-11",
        vec![wood("white-ash"), log.clone(), bag],
    );
    put(
        s,
        "M02",
        "2025-12-01",
        vec![wood("black-cherry"), PieceFact::StageMoved(Stage::Settle)],
    );
    put(
        s,
        "K07",
        "2026-03-10",
        vec![wood("white-ash"), log, set(DetailField::Place, "Étagère 2")],
    );
    put(
        s,
        "B04",
        "2026-03-05",
        vec![PieceFact::Note("split at Anna's".into())],
    );
    put(
        s,
        "A01",
        "2025-02-01",
        vec![wood("yew"), PieceFact::Ended(End::Finished)],
    );
    let lost = End::Lost {
        place: LostWhere::Rim,
        how: LostHow::Dropped,
        why: vec![],
        note: String::new(),
    };
    put(s, "A02", "2025-03-01", vec![PieceFact::Ended(lost)]);
    put(
        s,
        "A03",
        "2025-04-01",
        vec![PieceFact::Ended(End::GivenAway)],
    );
    put(s, "A04", "2025-05-01", vec![PieceFact::Deleted]);
    App::open(Box::new(store), false, now()).unwrap()
}

fn act(app: &mut App, action: PiecesAction) {
    app.apply(Action::Pieces(action), now());
}

fn marks(app: &App) -> Vec<String> {
    app.pieces_view(now())
        .cards
        .into_iter()
        .map(|c| c.mark)
        .collect()
}

#[test]
fn what_is_due_first_comes_first_and_says_so() {
    let app = shelf();
    let view = app.pieces_view(now());
    assert_eq!(marks(&app)[0], "K11");
    let first = &view.cards[0];
    assert!(first.late && first.due.ends_with("late"), "{}", first.due);
    assert_eq!(first.wood, "Sycamore");
    assert_eq!(first.stage, "In the bag, day 11");
    assert_eq!(first.stages_done, 3);
    assert!(!app.card_drawing(&first.id).wall.is_empty());
    assert_eq!(
        first.label,
        format!("K11, Sycamore, {}, In the bag, day 11", first.due)
    );
    let fresh = view.cards.iter().find(|c| c.mark == "K9").unwrap();
    assert_eq!(fresh.due, "Check today");
    assert!(!fresh.late);
    assert_eq!(view.counts, "5 on the go, 1 done");
    assert_eq!(app.words().problems(), []);
}

#[test]
fn a_bag_that_was_felt_goes_down_the_list() {
    let mut store = MemoryStore::default();
    let bag = || vec![PieceFact::StageMoved(Stage::Bag)];
    put(&mut store, "K01", "2026-03-08", bag());
    put(&mut store, "K02", "2026-03-11", bag());
    let look = PieceFact::Look {
        feel: Some(BagFeel::Damp),
        mould: false,
        crack: false,
    };
    let id = PieceId::new("k01").unwrap();
    store
        .append_piece(&id, at("2026-03-12"), at("2026-03-12"), vec![look])
        .unwrap();
    let app = App::open(Box::new(store), false, now()).unwrap();
    assert_eq!(marks(&app), ["K02", "K01"]);
    assert_eq!(app.pieces_view(now()).cards[1].due, "Check Sun 15");
}

#[test]
fn each_order_does_what_it_says() {
    let mut app = shelf();
    for (order, wanted) in [
        (Sort::Mark, ["B04", "K07", "K9", "K11", "M02"]),
        (Sort::Newest, ["K9", "K07", "B04", "K11", "M02"]),
        (Sort::Untouched, ["M02", "K11", "B04", "K07", "K9"]),
        (Sort::Log, ["K07", "K9", "B04", "K11", "M02"]),
    ] {
        act(&mut app, PiecesAction::Sort(order));
        assert_eq!(marks(&app), wanted, "{order:?}");
        assert_eq!(Sort::from_key(order.key()), Some(order));
    }
    act(&mut app, PiecesAction::Sort(Sort::Untouched));
    let first = &app.pieces_view(now()).cards[0];
    assert_eq!(first.note, "Last noted 3 months ago");
    act(&mut app, PiecesAction::Sort(Sort::Log));
    let headings: Vec<String> = app
        .pieces_view(now())
        .cards
        .into_iter()
        .map(|c| c.heading)
        .collect();
    assert_eq!(headings, ["Ash, the big limb", "", "Log not said", "", ""]);
}

#[test]
fn twins_name_each_other_and_nobody_else() {
    let app = shelf();
    let view = app.pieces_view(now());
    for card in view.cards {
        let note = match card.mark.as_str() {
            "K9" => "twins K07",
            "K07" => "Étagère 2 · twins K9",
            _ => "",
        };
        assert_eq!(card.note, note, "{}", card.mark);
    }
}

#[test]
fn every_piece_is_under_exactly_one_end_or_stage() {
    let mut app = shelf();
    let view = app.pieces_view(now());
    let chips: Vec<(String, String)> = view
        .filters
        .iter()
        .map(|c| (c.text.clone(), c.count.clone()))
        .collect();
    let wanted = [
        ("All", "5"),
        ("Shape", "2"),
        ("Bag", "2"),
        ("Settle", "1"),
        ("Finished", "1"),
        ("Lost", "1"),
        ("Other ends", "1"),
        ("Deleted", "1"),
    ];
    assert_eq!(chips, wanted.map(|(t, c)| (t.to_owned(), c.to_owned())));
    let mut seen = Vec::new();
    for filter in Filter::all().filter(|f| *f != Filter::All) {
        assert_eq!(Filter::from_key(filter.key()), Some(filter));
        act(&mut app, PiecesAction::Filter(filter));
        seen.extend(marks(&app));
    }
    seen.sort();
    assert_eq!(
        seen,
        ["A01", "A02", "A03", "A04", "B04", "K07", "K11", "K9", "M02"]
    );
}

#[test]
fn the_search_forgives_case_accents_and_order() {
    let mut app = shelf();
    for (typed, found) in [
        ("k0", vec!["K07"]),
        ("K 07", vec!["K07"]),
        ("ETAGERE", vec!["K07"]),
        ("ash big", vec!["K9", "K07"]),
        ("fraxinus", vec!["K9", "K07"]),
        ("anna’s", vec!["B04"]),
        ("yew", vec!["A01"]),
        ("  ", vec!["K11", "K9", "K07", "B04", "M02"]),
    ] {
        act(&mut app, PiecesAction::Search(typed.into()));
        let mut wanted: Vec<&str> = found;
        let mut got = marks(&app);
        wanted.sort_unstable();
        got.sort();
        assert_eq!(got, wanted, "{typed}");
    }
}

#[test]
fn nothing_found_says_so_and_clear_brings_all_back() {
    let mut app = shelf();
    act(&mut app, PiecesAction::Search("zebrano".into()));
    let empty = app.pieces_view(now()).empty.unwrap();
    assert!(empty.title.contains("zebrano"));
    assert!(!empty.clear.is_empty());
    act(&mut app, PiecesAction::Filter(Filter::Stage(Stage::True)));
    act(&mut app, PiecesAction::Clear);
    assert_eq!(marks(&app).len(), 5);
    assert_eq!(app.pieces_view(now()).search, "");
    let long = "k".repeat(10_000);
    act(&mut app, PiecesAction::Search(long));
    assert!(app.pieces_view(now()).search.len() <= 100);
}

#[test]
fn an_empty_shelf_says_how_to_begin() {
    let app = App::open(Box::new(MemoryStore::default()), false, now()).unwrap();
    let view = app.pieces_view(now());
    assert_eq!(view.empty.unwrap().text, "New piece starts with its mark.");
    assert!(view.filters.is_empty() && view.counts.is_empty());
}

#[test]
fn the_card_of_the_open_piece_is_marked() {
    let mut app = shelf();
    let id = PieceId::new("k07").unwrap();
    app.apply(Action::Open(Page::Piece(id.clone())), now());
    let view = app.pieces_view(now());
    let open: Vec<_> = view.cards.iter().filter(|c| c.open).collect();
    assert_eq!(open.len(), 1);
    assert_eq!(open[0].id, id);
}
