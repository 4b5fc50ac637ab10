//! Promises of the turner's own checklist: changes are for pieces to come, and what was ticked stays as it was ticked.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support;

use evenwall_piece::checklist::{
    ChecklistLine, EditorLine, LineText, lines_for, lines_of_stage, moved, own_line_id, stage_of,
};
use evenwall_piece::fact::PieceFact as F;
use evenwall_piece::line::Line;
use evenwall_piece::piece::Piece;
use evenwall_piece::shop::{ChecklistChange as C, Shop, ShopFact, fold_shop};
use evenwall_piece::stage::Stage;
use proptest::prelude::*;

use support::{fold, line, minutes};

/// The workshop after changes, each with the minute in which it was made.
fn shop(changes: Vec<(u64, C)>) -> Shop {
    let lines = (1..).zip(changes).map(|(n, (minute, change))| Line {
        at: minutes(i64::try_from(minute).unwrap()),
        ..line("bench", n, n, vec![ShopFact::Checklist(change)])
    });
    fold_shop(lines.collect())
}

fn worded(line: &str, text: &str) -> C {
    C::Worded {
        line: line.into(),
        stage: Stage::Bag,
        text: text.into(),
        why: "own why".into(),
    }
}

fn hidden(line: &str, hidden: bool) -> C {
    C::Hidden {
        line: line.into(),
        hidden,
    }
}

fn ticked(line: &str, text: &str) -> F {
    F::Ticked {
        line: line.into(),
        text: text.into(),
        on: true,
    }
}

/// A piece that went into its bag in minute 10.
fn bagged(more: Vec<F>) -> Piece {
    fold(&[
        line("bench", 1, 1, vec![F::Created]),
        line("bench", 2, 10, vec![F::StageMoved(Stage::Bag)]),
        line("bench", 3, 11, more),
    ])
}

fn find<'a>(lines: &'a [ChecklistLine], id: &str) -> Option<&'a ChecklistLine> {
    lines.iter().find(|l| l.id == id)
}

fn own(text: &str) -> LineText {
    LineText::Own(text.into())
}

fn catalogue(id: &str) -> LineText {
    LineText::Catalogue(id.into())
}

#[test]
fn a_change_made_before_a_piece_came_into_the_stage_holds_for_it() {
    let id = own_line_id(Stage::Bag, "1");
    let shop = shop(vec![
        (5, worded(&id, "Photo of the spigot end")),
        (6, worded("bag-tag", "Brass tag on a wire")),
        (7, hidden("bag-clear", true)),
    ]);
    let lines = lines_for(&bagged(Vec::new()), Stage::Bag, &shop);
    let last = lines.last().unwrap();
    assert_eq!(
        (last.id.as_str(), &last.text),
        ("own-bag-1", &own("Photo of the spigot end"))
    );
    assert_eq!(last.why, Some(own("own why")));
    assert!(!last.builtin);
    let tag = find(&lines, "bag-tag").unwrap();
    assert_eq!(
        (&tag.text, tag.builtin),
        (&own("Brass tag on a wire"), true)
    );
    assert!(find(&lines, "bag-clear").is_none());
}

#[test]
fn a_change_made_later_leaves_the_piece_in_the_stage_alone() {
    let shop = shop(vec![
        (15, worded("own-bag-1", "Photo of the spigot end")),
        (15, worded("bag-tag", "Brass tag on a wire")),
        (15, hidden("bag-clear", true)),
    ]);
    let lines = lines_for(&bagged(Vec::new()), Stage::Bag, &shop);
    assert!(find(&lines, "own-bag-1").is_none());
    assert_eq!(
        find(&lines, "bag-tag").unwrap().text,
        catalogue("line-bag-tag")
    );
    assert!(find(&lines, "bag-clear").is_some());
}

#[test]
fn a_stage_not_entered_yet_or_entered_again_follows_the_latest_changes() {
    let later = shop(vec![(15, worded("bag-tag", "Brass tag on a wire"))]);
    let tag = |piece: &Piece| {
        find(&lines_for(piece, Stage::Bag, &later), "bag-tag")
            .unwrap()
            .text
            .clone()
    };
    let not_yet = fold(&[line("bench", 1, 1, vec![F::Created])]);
    assert_eq!(tag(&not_yet), own("Brass tag on a wire"));
    let again = fold(&[
        line("bench", 1, 1, vec![F::Created]),
        line("bench", 2, 10, vec![F::StageMoved(Stage::Bag)]),
        line("bench", 3, 12, vec![F::StageMoved(Stage::Air)]),
        line("bench", 4, 20, vec![F::StageMoved(Stage::Bag)]),
    ]);
    assert_eq!(tag(&again), own("Brass tag on a wire"));
}

#[test]
fn a_ticked_line_shows_what_was_ticked_whatever_happens_to_the_line() {
    let piece = bagged(vec![
        ticked("bag-tag", "Same mark on a tag"),
        ticked("own-bag-1", "Photo taken"),
    ]);
    let own_line = (1, worded("own-bag-1", "Photo taken"));
    for changes in [
        vec![own_line.clone()],
        vec![
            own_line.clone(),
            (2, worded("bag-tag", "Brass tag")),
            (2, worded("own-bag-1", "Two photos")),
        ],
        vec![
            own_line.clone(),
            (2, hidden("bag-tag", true)),
            (2, hidden("own-bag-1", true)),
        ],
        vec![
            own_line,
            (
                2,
                C::Reset {
                    line: "own-bag-1".into(),
                },
            ),
        ],
        vec![],
    ] {
        let lines = lines_for(&piece, Stage::Bag, &shop(changes.clone()));
        let tag = find(&lines, "bag-tag").unwrap();
        assert_eq!(
            (&tag.text, tag.done()),
            (&own("Same mark on a tag"), true),
            "{changes:?}"
        );
        let photo = find(&lines, "own-bag-1").unwrap();
        assert_eq!(
            (&photo.text, photo.done()),
            (&own("Photo taken"), true),
            "{changes:?}"
        );
    }
}

#[test]
fn a_tick_shows_in_the_stage_of_its_line_and_in_no_other() {
    let piece = bagged(vec![
        ticked("bag-of-a-newer-version", "New line"),
        ticked("nowhere", "?"),
    ]);
    let shop = Shop::default();
    for stage in Stage::ALL {
        let lines = lines_for(&piece, *stage, &shop);
        assert_eq!(
            find(&lines, "bag-of-a-newer-version").is_some(),
            *stage == Stage::Bag
        );
        assert!(find(&lines, "nowhere").is_none());
    }
    assert_eq!(stage_of("nowhere", &shop), None);
}

#[test]
fn a_ticked_line_that_is_no_longer_for_such_a_piece_is_still_shown() {
    let id = "hollow-sections-side";
    let piece = fold(&[line(
        "bench",
        1,
        1,
        vec![F::Created, ticked(id, "From the wall inward")],
    )]);
    let lines = lines_for(&piece, Stage::Hollow, &Shop::default());
    let shown = find(&lines, id).unwrap();
    assert!(shown.hidden && shown.done());
}

#[test]
fn reset_brings_back_the_built_in_line_and_takes_an_own_line_away() {
    let reset = |line: &str| C::Reset { line: line.into() };
    let shop = shop(vec![
        (1, worded("bag-tag", "Brass tag")),
        (2, hidden("bag-tag", true)),
        (
            3,
            C::Placed {
                line: "bag-tag".into(),
                order: 5,
            },
        ),
        (4, worded("own-bag-1", "Photo")),
        (5, reset("bag-tag")),
        (6, reset("own-bag-1")),
    ]);
    assert_eq!(
        lines_of_stage(Stage::Bag, &shop, true),
        lines_of_stage(Stage::Bag, &Shop::default(), true)
    );
}

#[test]
fn hidden_lines_are_listed_on_request_and_can_be_shown_again() {
    let hide = (1, hidden("bag-tag", true));
    let listed = |changes, all| {
        let lines = lines_of_stage(Stage::Bag, &shop(changes), all);
        lines
            .into_iter()
            .find(|l| l.id == "bag-tag")
            .map(|l| (l.hidden, l.changed))
    };
    assert_eq!(listed(vec![hide.clone()], false), None);
    assert_eq!(listed(vec![hide.clone()], true), Some((true, true)));
    assert_eq!(
        listed(vec![hide, (2, hidden("bag-tag", false))], false),
        Some((false, false))
    );
}

#[test]
fn a_line_reworded_without_a_why_has_none_and_without_words_stays_as_it_was() {
    let bare = |text: &str| C::Worded {
        line: "bag-tag".into(),
        stage: Stage::Air,
        text: text.into(),
        why: " ".into(),
    };
    let tag = |change| {
        let lines = lines_of_stage(Stage::Bag, &shop(vec![(1, change)]), false);
        lines
            .into_iter()
            .find(|l| l.id == "bag-tag")
            .expect("a built-in line keeps its stage")
    };
    assert_eq!(
        (tag(bare("Brass tag")).text, tag(bare("Brass tag")).why),
        (own("Brass tag"), None)
    );
    assert_eq!(tag(bare(" \n")).text, catalogue("line-bag-tag"));
}

#[test]
fn an_own_line_moved_to_another_stage_stands_only_there() {
    let to_air = C::Worded {
        line: "own-bag-1".into(),
        stage: Stage::Air,
        text: "Photo".into(),
        why: String::new(),
    };
    let shop = shop(vec![(1, worded("own-bag-1", "Photo")), (2, to_air)]);
    let stands = |stage| {
        lines_of_stage(stage, &shop, true)
            .iter()
            .any(|l| l.id == "own-bag-1")
    };
    assert_eq!((stands(Stage::Bag), stands(Stage::Air)), (false, true));
}

/// Moves a line as the editor does and returns the lines thereafter.
fn carry_out(
    changes: &mut Vec<(u64, C)>,
    id: &str,
    to: usize,
) -> (Vec<EditorLine>, Vec<EditorLine>) {
    let before = lines_of_stage(Stage::Bag, &shop(changes.clone()), true);
    let moves = moved(&before, id, to).into_iter().map(|c| (1, c));
    changes.extend(moves);
    (
        before,
        lines_of_stage(Stage::Bag, &shop(changes.clone()), true),
    )
}

proptest! {
    #[test]
    fn a_moved_line_stands_where_it_was_put_and_the_others_keep_their_order(
        moves in proptest::collection::vec((0..11_usize, 0..11_usize), 1..40)
    ) {
        let mut changes = vec![(1, worded("own-bag-1", "Photo")), (1, worded("own-bag-2", "Tag"))];
        for (from, to) in moves {
            let lines = lines_of_stage(Stage::Bag, &shop(changes.clone()), true);
            let id = lines[from].id.clone();
            let (before, after) = carry_out(&mut changes, &id, to);
            prop_assert_eq!(&after[to].id, &id);
            let others = |lines: &[EditorLine]| -> Vec<String> {
                lines.iter().map(|l| l.id.clone()).filter(|i| *i != id).collect()
            };
            prop_assert_eq!(others(&before), others(&after));
        }
    }
}

#[test]
fn moving_a_line_that_is_not_there_or_to_where_it_stands_changes_nothing() {
    let lines = lines_of_stage(Stage::Bag, &Shop::default(), true);
    assert!(moved(&lines, "air-stand", 0).is_empty());
    assert!(moved(&lines, "bag-tag", 1).is_empty());
    assert_eq!(
        moved(&lines, "bag-tag", 99).len(),
        1,
        "past the end is the end"
    );
}
