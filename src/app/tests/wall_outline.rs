//! Promises of the outline page: five shapes, diameters that stay "from the shape" until measured, stations re-laid.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_wall;

use evenwall_app::action::Action;
use evenwall_app::route::Page;
use evenwall_app::wall::{OutlineView, WallAction};
use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::vocabulary::Outline;
use support_wall::{Wall, length};

fn opened(facts: &[PieceFact]) -> Wall {
    let mut w = Wall::with(facts, "{}");
    w.open(Page::Outline);
    w
}

fn outline(w: &Wall) -> OutlineView {
    let view = w.app.outline_view(w.now).unwrap();
    assert_eq!(w.app.words().problems(), []);
    view
}

#[test]
fn five_outlines_are_drawn_in_the_size_of_the_piece() {
    let w = opened(&[]);
    let v = outline(&w);
    assert_eq!(v.outlines.len(), 5);
    let mut shapes: Vec<&str> = v
        .outlines
        .iter()
        .map(|o| o.drawing.outline.as_str())
        .collect();
    assert!(shapes.iter().all(|s| s.len() > 100));
    shapes.sort_unstable();
    shapes.dedup();
    assert_eq!(shapes.len(), 5, "no two alike");
    assert_eq!(v.outlines.iter().filter(|o| o.selected).count(), 1);
    assert_eq!(v.subtitle, "150 across, 200\u{a0}mm from rim to foot line");
}

#[test]
fn picking_an_outline_is_recorded_and_can_be_undone() {
    let mut w = opened(&[]);
    let before = outline(&w);
    w.wall(WallAction::PickOutline(Outline::Pear));
    assert_eq!(w.piece().details.outline(), Some(Outline::Pear));
    assert_ne!(outline(&w).diameters, before.diameters);
    w.act(Action::Undo);
    assert!(outline(&w) == before, "the views differ");
}

#[test]
fn a_diameter_comes_from_the_shape_until_it_is_measured() {
    let mut w = opened(&[]);
    let before = outline(&w);
    assert!(
        before
            .diameters
            .iter()
            .all(|d| d.source == "from the shape")
    );
    w.wall(WallAction::EditDiameter(3));
    assert_eq!(outline(&w).editing, 3);
    for key in ["1", "4", "1", "next"] {
        w.wall(WallAction::Key(key.into()));
    }
    let v = outline(&w);
    assert_eq!(
        (v.editing, v.diameters[2].value.as_str()),
        (0, "141\u{a0}mm")
    );
    assert_eq!(v.diameters[2].source, "measured");
    assert_eq!(w.piece().diameters[&3].typed, "141");
    w.wall(WallAction::EditDiameter(3));
    assert_eq!(outline(&w).from_shape, "Back to the shape");
    w.wall(WallAction::ShapeDiameter(3));
    assert_eq!(outline(&w).diameters[2].source, "from the shape");
    w.act(Action::Undo);
    w.act(Action::Undo);
    assert!(outline(&w) == before, "the views differ");
}

#[test]
fn an_absurd_diameter_gets_a_sentence_and_a_failed_save_loses_nothing() {
    let mut w = opened(&[]);
    w.wall(WallAction::EditDiameter(2));
    w.types("9999\n");
    assert!(outline(&w).ask.is_some());
    assert!(w.piece().diameters.is_empty());
    w.answer("again");
    w.fail(true);
    w.types("140\n");
    assert!(w.app.save_error().is_some());
    w.fail(false);
    w.act(Action::TryAgain);
    assert_eq!(w.piece().diameters[&2].value, 140.0);
}

#[test]
fn another_height_offers_to_lay_the_stations_out_again_and_keeps_the_readings() {
    let mut w = Wall::new();
    w.jump("7");
    w.tap("10");
    w.open(Page::Outline);
    assert!(outline(&w).lay_out_text.is_empty());
    let id = w.id();
    let mut facts: Vec<PieceFact> = Vec::new();
    facts.push(length(DetailField::Height, 110.0));
    // Another page changes the height; here the facts come with the shelf.
    let mut w = Wall::with(
        &[
            PieceFact::Stations {
                count: 7,
                depths_mm: vec![10.0, 39.0, 69.0, 98.0, 128.0, 157.0, 178.0],
            },
            facts.remove(0),
        ],
        "{}",
    );
    assert_eq!(w.id(), id);
    assert_eq!(w.view().marks.len(), 8, "as many as were laid out");
    w.jump("7");
    w.types("10\n");
    w.open(Page::Outline);
    let v = outline(&w);
    assert!(v.lay_out_text.contains("110") && v.lay_out_text.contains("5 stations"));
    w.wall(WallAction::LayOut);
    assert_eq!(w.piece().stations.count, 5);
    assert!(outline(&w).lay_out_text.is_empty());
    assert_eq!(w.read("7"), [10.0]);
    w.open(Page::Wall);
    assert_eq!(w.view().marks.len(), 6);
    assert_eq!(w.view().station, "Station 1 of 5");
}

#[test]
fn stations_laid_out_again_begin_without_the_readings_of_the_old_places() {
    let mut w = Wall::with(
        &[
            PieceFact::Stations {
                count: 7,
                depths_mm: vec![10.0, 39.0, 69.0, 98.0, 128.0, 157.0, 178.0],
            },
            length(DetailField::Height, 110.0),
        ],
        "{}",
    );
    w.read_down(&["10", "10", "13"]);
    w.open(Page::WallSummary);
    assert_eq!(w.summary().read, "3 of 7 read");
    w.open(Page::Outline);
    w.wall(WallAction::LayOut);
    w.open(Page::WallSummary);
    let s = w.summary();
    assert_eq!((s.spread.as_str(), s.read.as_str()), ("–", "0 of 5 read"));
    assert!(s.rows.iter().all(|r| r.how.is_empty()) && s.take_off.is_empty());
    assert_eq!(w.read("3"), [13.0], "kept");
    w.open(Page::Wall);
    assert!(!w.view().known, "{}", w.view().station);
    w.act(Action::Undo);
    w.open(Page::WallSummary);
    assert_eq!(w.summary().read, "3 of 7 read");
}
