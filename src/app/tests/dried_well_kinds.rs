//! Promises of what dried well: bands, years and twins, and the ways in and out of the page.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_dried;

use evenwall_app::action::Action;
use evenwall_app::dried_well::DriedWellAction;
use evenwall_app::dried_well::DriedWellView;
use evenwall_app::dried_well::Kind;
use evenwall_app::route::Page;
use evenwall_piece::detail::DetailField;
use evenwall_piece::detail::DetailValue;
use evenwall_piece::fact::End;
use evenwall_piece::fact::Measure;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::vocabulary::LostHow;
use evenwall_piece::vocabulary::Method;
use support_dried::{Shelf, act, counts, lost, now, read, set, view};

#[test]
fn pieces_fall_into_bands_of_wall_evenness_pith_and_method() {
    let mut shelf = Shelf::default();
    let stations = PieceFact::Stations {
        count: 3,
        depths_mm: vec![],
    };
    let walls = |all: [f64; 3]| {
        let mut facts = vec![stations.clone()];
        facts.extend((1..).zip(all).map(|(n, mm)| read(n, mm)));
        facts
    };
    let wanted = PieceFact::Detail {
        field: DetailField::WallWanted,
        value: Some(DetailValue::Length(Measure::plain(15.0))),
    };
    let pith = |p| set(DetailField::Pith, p);
    let with = |a: Vec<PieceFact>, b: PieceFact| [a, vec![b]].concat();
    let done = || Some(End::Finished);
    shelf.dried(with(walls([9.0, 9.5, 10.0]), pith("bore")), 200, 90, done());
    shelf.dried(with(walls([8.0, 12.0, 9.0]), pith("wall")), 200, 50, {
        Some(lost(LostHow::CrackedDrying))
    });
    shelf.dried(vec![wanted], 200, 90, done());
    shelf.dried(vec![PieceFact::MethodChosen(Method::Wax)], 200, 90, done());
    let mut app = shelf.open();
    let text = |view: DriedWellView| {
        let of = |(band, count): (String, String)| format!("{band}: {count}");
        counts(&view).into_iter().map(of).collect::<Vec<_>>()
    };
    assert_eq!(text(view(&app)), ["Not said: 3 of 4 kept"]);
    assert_eq!(
        text(act(&mut app, DriedWellAction::By(Kind::Wall))),
        [
            "8.0 to 10.0 mm: 1 of 2 kept",
            "15.0 mm and over: 1 of 1 kept",
            "Not said: 1 of 1 kept"
        ]
    );
    assert_eq!(
        text(act(&mut app, DriedWellAction::By(Kind::Evenness))),
        [
            "under 1.5 mm: 1 of 1 kept",
            "3.0 to 5.0 mm: 0 of 1 kept",
            "Not read: 2 of 2 kept"
        ]
    );
    assert_eq!(
        text(act(&mut app, DriedWellAction::By(Kind::Pith))),
        [
            "In the bore: 1 of 1 kept",
            "In the wall: 0 of 1 kept",
            "Not said: 2 of 2 kept"
        ]
    );
    let by_method = act(&mut app, DriedWellAction::By(Kind::Method));
    assert!(
        by_method
            .kinds
            .iter()
            .any(|k| k.key == "method" && k.chosen)
    );
    assert_eq!(
        text(by_method),
        ["Bag, turned: 2 of 3 kept", "Wax, shelf: 1 of 1 kept"]
    );
    for kind in Kind::ALL {
        assert_eq!(Kind::from_key(kind.key()), Some(kind));
    }
}

#[test]
fn a_year_is_that_in_which_the_drying_began() {
    let mut shelf = Shelf::default();
    shelf.dried(vec![], 500, 90, Some(End::Finished));
    shelf.dried(vec![], 500, 90, Some(lost(LostHow::CrackedDrying)));
    shelf.dried(vec![], 100, 50, Some(End::Finished));
    let mut app = shelf.open();
    let years: Vec<String> = view(&app).years.iter().map(|y| y.text.clone()).collect();
    assert_eq!(years, ["All years", "2025", "2024"]);
    let old = act(&mut app, DriedWellAction::Year(Some(2024)));
    assert_eq!(old.subtitle, "1 kept, 1 lost in drying");
    assert!(old.years[2].chosen);
    let all = act(&mut app, DriedWellAction::Year(None));
    assert_eq!(all.subtitle, "2 kept, 1 lost in drying");
}

#[test]
fn twins_stand_side_by_side_and_lead_to_the_pieces() {
    let mut shelf = Shelf::default();
    let log = |text: &str| vec![set(DetailField::Log, text)];
    let kept = shelf.dried(log("Ash, big limb"), 200, 120, Some(End::Finished));
    shelf.dried(
        log("ash, BIG limb"),
        200,
        59,
        Some(lost(LostHow::CrackedDrying)),
    );
    shelf.dried(log("Plum"), 50, 0, None);
    shelf.dried(log("Plum"), 50, 0, None);
    shelf.dried(log("Alone"), 300, 90, Some(End::Finished));
    let mut app = shelf.open();
    let page = view(&app);
    let twins: Vec<_> = page.sections.iter().filter(|s| s.key == "twins").collect();
    assert_eq!(twins.len(), 1, "undecided logs and lone pieces stay out");
    assert_eq!(twins[0].title, "Ash, big limb");
    let rows: Vec<&str> = twins[0].rows.iter().map(|r| r.title.as_str()).collect();
    assert_eq!(
        rows,
        ["C01: kept, 120 days drying", "C02: lost after 59 days"]
    );
    assert_eq!(twins[0].rows[0].note, "Bag, turned");
    app.apply(page.touch("twin-c01").unwrap(), now());
    assert_eq!(app.route().page(), Some(&Page::Piece(kept)));
    // Back, and what was chosen is still chosen.
    app.apply(Action::Back, now());
    assert_eq!(app.route().page(), Some(&Page::DriedWell));
}

#[test]
fn a_deleted_piece_counts_no_more_and_again_once_that_is_undone() {
    let mut shelf = Shelf::default();
    let id = shelf.dried(vec![], 50, 0, None);
    let mut app = shelf.open();
    let before = view(&app);
    let ending = Action::Piece(evenwall_app::piece::PieceAction::Delete(id.clone()));
    app.apply(Action::Open(Page::Piece(id)), now());
    app.apply(ending, now());
    assert!(view(&app).empty.is_some(), "a deleted piece does not count");
    app.apply(Action::Undo, now());
    let after = app.dried_well_view(now());
    assert_eq!(after.subtitle, before.subtitle);
    assert_eq!(after.summary, before.summary);
}

#[test]
fn shop_leads_here_and_tells_the_counts() {
    let mut shelf = Shelf::default();
    shelf.wood("yew", 6, 1);
    let mut app = shelf.open();
    app.apply(Action::GoTab(evenwall_app::route::Tab::Shop), now());
    let hub = app.shop_view(now());
    let rows: Vec<_> = hub.sections.iter().flat_map(|s| &s.rows).collect();
    let row = rows.iter().find(|r| r.id == "dried-well").unwrap();
    assert_eq!(row.note, "5 kept, 1 lost in drying");
    app.apply(row.touch.clone().unwrap(), now());
    assert_eq!(app.route().page(), Some(&Page::DriedWell));
}
