//! Promises of the sentence on what an uneven wall means for drying here: by the way it dries, with its figures a touch away.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_wall;

use evenwall_app::route::Page;
use evenwall_app::wall::{WallAction, WallSum};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::Method;
use support_wall::Wall;

#[test]
fn the_same_unevenness_is_said_to_matter_on_a_shelf_and_not_in_a_bag() {
    let with = |method: Option<Method>, walls: &[&str]| {
        let facts: Vec<PieceFact> = method.map(PieceFact::MethodChosen).into_iter().collect();
        let mut w = Wall::with(&facts, "{}");
        w.read_down(walls);
        w.open(Page::WallSummary);
        w
    };
    let two_either_way = ["8", "10", "12"];
    let mut bag = with(None, &two_either_way);
    assert!(bag.summary().drying.contains("makes no great difference"));
    let shelf = with(Some(Method::OnceThin), &two_either_way)
        .summary()
        .drying;
    assert!(
        shelf.contains("counts") && shelf.contains("4\u{a0}mm"),
        "{shelf}"
    );
    let paper = with(Some(Method::Paper), &two_either_way).summary().drying;
    assert!(paper.starts_with("Paper lets"), "{paper}");
    let much = with(None, &["6", "14"]).summary().drying;
    assert!(much.starts_with("Even in the bag"), "{much}");
    assert!(
        with(Some(Method::OnceThin), &["10", "10.5"])
            .summary()
            .drying
            .contains("adds little")
    );
    // One reading is no spread.
    assert!(with(None, &["10"]).summary().drying.is_empty());
    bag.wall(WallAction::OpenSum(WallSum::Drying));
    let sum = bag.summary().sum.unwrap();
    // The rows for 8 and 12 mm of the drying model's table, reproduced by a second implementation.
    for figure in [
        "3.0 points",
        "0.8\u{a0}%",
        "5.6 points",
        "1.4\u{a0}%",
        "2.5\u{a0}%",
        "0.6\u{a0}%",
    ] {
        assert!(sum.why.contains(figure), "{figure}: {}", sum.why);
    }
    assert!(sum.source.contains("not from this piece") && sum.source.contains("Nobody can tell"));
    bag.move_to(Stage::Air);
    bag.open(Page::WallSummary);
    assert!(bag.summary().drying.contains("go by the weight"));
    bag.move_to(Stage::True);
    bag.open(Page::WallSummary);
    assert!(bag.summary().drying.is_empty(), "it has dried");
}

#[test]
fn walls_beyond_the_drying_model_are_given_no_figures() {
    let mut w = Wall::new();
    w.read_down(&["5", "15"]);
    w.open(Page::WallSummary);
    w.wall(WallAction::OpenSum(WallSum::Drying));
    let sum = w.summary().sum.unwrap();
    assert!(
        sum.why.starts_with("Walls as far apart as these"),
        "{}",
        sum.why
    );
    assert!(!sum.why.contains("points"));
}
