//! Promises of the checklist: which lines a piece sees, and in which order.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support;

use std::collections::HashSet;

use evenwall_piece::checklist::{BUILT_IN, ChecklistLine, LineText, lines_for, stage_of};
use evenwall_piece::detail::DetailField;
use evenwall_piece::shop::{Shop, ShopFact, fold_shop};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{Form, Grain};

use support::line;
use support::words::{in_stage, text};

/// Ids stand in ticks for good: one may be added here, none may go or change.
const SHIPPED: &str = "
    shape-cut-back shape-place-pith shape-mount shape-speed shape-outside shape-spigot shape-centre-mark shape-depth
    shape-drill
    hollow-rest hollow-roll hollow-mouth hollow-shoulder hollow-sections-end hollow-sections-side hollow-stop
    hollow-callipers hollow-reach hollow-floor hollow-wrap
    stabilise-look stabilise-decide stabilise-place stabilise-dry-spot stabilise-grade stabilise-both-faces
    stabilise-keep-off stabilise-gone-off stabilise-write-down
    bag-pencil bag-tag bag-clear bag-weigh bag-stand bag-feel bag-turn bag-open bag-look-over
    air-stand air-off-heat air-mouth-clear air-look air-slow-down air-damp-again air-weigh air-month
    settle-shelf settle-weigh settle-check-scale settle-weather settle-look settle-mass-change settle-steady
    settle-small
    indoors-when indoors-room indoors-off-heat indoors-step indoors-weigh indoors-look indoors-two-weeks
    indoors-no-heat
    true-look true-stop true-oval true-copy-mark true-drive true-share-wobble true-spigot true-reverse true-outside
    finish-outside finish-sections finish-measure finish-floor finish-sand finish-sand-inside finish-reverse
    finish-coats finish-sign";

fn ids(lines: &[ChecklistLine]) -> HashSet<&str> {
    lines.iter().map(|l| l.id.as_str()).collect()
}

#[test]
fn ids_once_shipped_stay_and_begin_with_their_stage() {
    let shipped: Vec<&str> = SHIPPED.split_whitespace().collect();
    let now: Vec<&str> = BUILT_IN.iter().map(|b| b.id).collect();
    for id in &shipped {
        assert!(now.contains(id), "{id} is gone");
    }
    assert_eq!(
        now.len(),
        shipped.len(),
        "a new line belongs in the list above"
    );
    let unique: HashSet<&str> = now.iter().copied().collect();
    assert_eq!(unique.len(), now.len());
    for line in BUILT_IN {
        assert!(
            line.id.starts_with(&format!("{}-", line.stage.key())),
            "{}",
            line.id
        );
        assert_eq!(stage_of(line.id, &Shop::default()), Some(line.stage));
    }
}

#[test]
fn every_stage_has_its_lines_in_order_with_room_between_them() {
    for stage in Stage::ALL {
        let orders: Vec<i64> = BUILT_IN
            .iter()
            .filter(|b| b.stage == *stage)
            .map(|b| b.order)
            .collect();
        assert!(orders.len() >= 8, "{stage:?}");
        assert!(
            orders.windows(2).all(|w| w[1] - w[0] >= 2),
            "{stage:?} {orders:?}"
        );
    }
}

#[test]
fn a_line_is_shown_for_the_grain_and_form_it_is_for() {
    let hollow = |form: Form, grain: Option<Grain>| {
        let mut facts = vec![text(DetailField::Form, form.key())];
        facts.extend(grain.map(|g| text(DetailField::Grain, g.key())));
        let lines = lines_for(
            &in_stage(Stage::Hollow, facts),
            Stage::Hollow,
            &Shop::default(),
        );
        [
            "hollow-roll",
            "hollow-shoulder",
            "hollow-sections-end",
            "hollow-sections-side",
        ]
        .map(|id| ids(&lines).contains(id))
    };
    assert_eq!(hollow(Form::Vessel, None), [true, true, true, false]);
    assert_eq!(
        hollow(Form::HollowForm, Some(Grain::Side)),
        [true, true, false, true]
    );
    assert_eq!(
        hollow(Form::Bowl, None),
        [false, false, false, true],
        "a bowl is side grain where not said"
    );
    assert_eq!(
        hollow(Form::Bowl, Some(Grain::End)),
        [false, false, true, false]
    );
    let bowl = in_stage(Stage::Finish, vec![text(DetailField::Form, "bowl")]);
    assert!(
        !ids(&lines_for(&bowl, Stage::Finish, &Shop::default())).contains("finish-sand-inside")
    );
}

#[test]
fn who_does_not_weigh_sees_no_line_about_weighing() {
    let weighing = |value: &str| {
        let fact = ShopFact::Setting {
            key: "weighs".into(),
            value: value.into(),
        };
        let shop = fold_shop(vec![line("bench", 1, 1, vec![fact])]);
        [
            (Stage::Bag, "bag-weigh"),
            (Stage::Air, "air-weigh"),
            (Stage::Indoors, "indoors-weigh"),
        ]
        .map(|(stage, id)| ids(&lines_for(&in_stage(stage, Vec::new()), stage, &shop)).contains(id))
    };
    assert_eq!(weighing("false"), [false; 3]);
    assert_eq!(weighing("true"), [true; 3]);
    assert_eq!(weighing(""), [true; 3], "shown where not said");
}

#[test]
fn a_built_in_line_takes_its_words_and_its_why_from_the_catalogue() {
    let lines = lines_for(
        &in_stage(Stage::Bag, Vec::new()),
        Stage::Bag,
        &Shop::default(),
    );
    let tag = lines.iter().find(|l| l.id == "bag-tag").unwrap();
    assert_eq!(tag.text, LineText::Catalogue("line-bag-tag".into()));
    assert_eq!(
        tag.why,
        Some(LineText::Catalogue("line-bag-tag-why".into()))
    );
    assert!(tag.builtin && !tag.hidden && !tag.done());
}

#[test]
fn standing_rules_have_no_box() {
    let lines = lines_for(
        &in_stage(Stage::Bag, Vec::new()),
        Stage::Bag,
        &Shop::default(),
    );
    let standing: Vec<&str> = lines
        .iter()
        .filter(|l| l.standing)
        .map(|l| l.id.as_str())
        .collect();
    assert_eq!(standing, ["bag-feel", "bag-turn", "bag-look-over"]);
}
