//! Promises of filling in the form for a new piece: what cannot be is refused at once, and nothing typed is lost.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_new_piece;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::new_piece::{FieldBox, NewPieceAction};
use evenwall_app::route::{Page, Tab};
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::detail::DetailField;
use support_new_piece::{Bench, now};

#[test]
fn a_mark_in_use_is_refused_while_typing_and_one_upside_down_only_warned_of() {
    let mut b = Bench::new();
    b.write(DetailField::Mark, "K07");
    b.write(DetailField::Wood, "white ash");
    b.save();
    b.open();
    assert_eq!(b.app.new_piece_view(now()).mark.text, "K08");
    b.write(DetailField::Mark, "k07 ");
    let view = b.app.new_piece_view(now());
    assert_eq!(
        view.mark.error,
        "k07 is in use: White ash, Shape. Choose another mark."
    );
    b.save();
    assert_eq!(b.refusal(), view.mark.error);
    assert_eq!(b.app.pieces().count(), 1);
    b.app.apply(Action::CloseQuestion, now());
    b.write(DetailField::Mark, "");
    assert!(b.app.new_piece_view(now()).mark.error.contains("needed"));
    b.write(DetailField::Mark, "06");
    let view = b.app.new_piece_view(now());
    assert_eq!(view.mark.error, "");
    assert!(view.mark_warning.contains("90"), "{}", view.mark_warning);
    b.save();
    assert_eq!(b.marks(), ["06", "K07"]);
}

#[test]
fn bad_input_is_refused_with_a_sentence_and_nothing_is_recorded() {
    for (field, typed) in [
        (DetailField::Diameter, "wide"),
        (DetailField::Height, "-20"),
        (DetailField::WallWanted, "118"),
        (DetailField::Felled, "next spring"),
        (DetailField::Mouth, "1e9"),
    ] {
        let mut b = Bench::new();
        b.write(field, typed);
        let view = b.app.new_piece_view(now());
        let boxes: Vec<&FieldBox> = view
            .log_fields
            .iter()
            .chain(&view.size_fields)
            .chain(&view.wall_fields)
            .collect();
        let shown = boxes.iter().find(|f| f.key == field.key()).unwrap();
        assert!(!shown.error.is_empty(), "{typed}");
        assert_eq!(shown.text, typed);
        assert_eq!(shown.ways.is_empty(), typed != "118");
        b.save();
        assert!(b.refusal().contains(&shown.error), "{}", b.refusal());
        assert_eq!(b.app.pieces().count(), 0);
        assert!(b.app.new_piece_view(now()).more_open);
    }
    let mut b = Bench::new();
    b.act(NewPieceAction::Since("tomorrow week".into()));
    b.save();
    assert!(b.refusal().contains("cannot be read as a day"));
    assert_eq!(b.app.pieces().count(), 0);
}

#[test]
fn leaving_asks_only_where_something_was_typed() {
    let mut b = Bench::new();
    b.act(NewPieceAction::Leave);
    assert!(b.app.question().is_none());
    assert_eq!(b.app.route().pages, []);
    b.open();
    b.write(DetailField::Notes, "half a thought");
    b.act(NewPieceAction::Leave);
    assert_eq!(b.app.question().unwrap().choices[0].label, "Keep editing");
    b.app.apply(Action::Choose(0), now());
    assert_eq!(b.app.route().page(), Some(&Page::NewPiece));
    // Gone off to another page by the rail: still there on coming back.
    b.app.apply(Action::GoTab(Tab::Today), now());
    b.open();
    assert_eq!(b.app.new_piece_view(now()).notes.text, "half a thought");
    b.act(NewPieceAction::Leave);
    b.app.apply(Action::Choose(1), now());
    assert_eq!(b.app.route().pages, []);
    b.open();
    assert_eq!(b.app.new_piece_view(now()).notes.text, "");
    assert_eq!(b.app.pieces().count(), 0);
}

#[test]
fn woods_are_offered_as_typed_and_the_last_used_first() {
    let mut b = Bench::new();
    let texts = |b: &Bench| -> Vec<String> {
        let view = b.app.new_piece_view(now());
        view.woods.into_iter().map(|w| w.text).collect()
    };
    assert_eq!(texts(&b), ["Don't know"]);
    b.write(DetailField::Wood, "frax");
    assert!(texts(&b).contains(&"White ash".to_owned()));
    b.act(NewPieceAction::Wood("white-ash".into()));
    let view = b.app.new_piece_view(now());
    assert_eq!(view.wood.text, "White ash");
    assert_eq!(view.wood.note, "Fraxinus americana");
    b.save();
    b.open();
    b.write(DetailField::Wood, "neighbour's plum");
    assert!(
        b.app
            .new_piece_view(now())
            .wood
            .note
            .contains("as you typed it")
    );
    b.save();
    b.open();
    let offered = texts(&b);
    assert!(offered.contains(&"White ash".to_owned()), "{offered:?}");
    assert!(offered.contains(&"Neighbour's plum".to_owned()));
    b.act(NewPieceAction::Wood("neighbour's plum".into()));
    b.act(NewPieceAction::Wood(String::new()));
    assert_eq!(b.app.new_piece_view(now()).wood.text, "");
}

#[test]
fn a_usual_size_fills_diameter_and_height_in_the_units_of_the_device() {
    for (settings, diameter) in [("{}", "130"), (r#"{"length":"inch-fraction"}"#, "5")] {
        let mut store = MemoryStore::default();
        store.save_device_settings(settings).unwrap();
        let mut app = App::open(Box::new(store), false, now()).unwrap();
        app.apply(Action::NewPiece(NewPieceAction::Size(1)), now());
        let view = app.new_piece_view(now());
        assert_eq!(view.size_fields[0].text, diameter);
        assert!(view.sizes.choices[1].chosen && !view.sizes.choices[0].chosen);
        assert_eq!(view.size_fields[0].error, "");
        app.apply(Action::NewPiece(NewPieceAction::Size(99)), now());
        assert_eq!(app.new_piece_view(now()).size_fields[0].text, diameter);
    }
}

#[test]
fn the_outlines_are_drawn_in_the_sizes_typed() {
    let mut b = Bench::new();
    let round = b.app.new_piece_view(now()).outlines;
    assert_eq!(round.len(), 5);
    assert!(round.iter().any(|o| o.usual) && round.iter().all(|o| !o.chosen));
    b.write(DetailField::Diameter, "120");
    b.write(DetailField::Height, "300");
    b.act(NewPieceAction::Chose(DetailField::Outline, "tall".into()));
    let tall = b.app.new_piece_view(now()).outlines;
    assert!(tall[4].chosen && tall.iter().all(|o| !o.usual));
    assert!(tall[0].drawing.height > round[0].drawing.height);
}
