//! Today, the rounds, Away and Catch-up, touched as a turner touches them.

use chrono::Duration;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Piece;
use evenwall_piece::shop::{Climate, ShopFact};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, Room};

use crate::bench::{Bench, START, moment};

struct Shelf(MemoryStore);

impl Shelf {
    fn line(&mut self, mark: &str, days: i64, facts: Vec<PieceFact>) -> &mut Self {
        let at = moment(START) - Duration::days(days);
        self.0.append_piece(&id(mark), at, at, facts).unwrap();
        self
    }

    fn piece(&mut self, mark: &str, wood: &str, stage: Stage, days: i64) -> &mut Self {
        let text = |field, text: &str| PieceFact::Detail {
            field,
            value: Some(DetailValue::Text(text.into())),
        };
        let facts = vec![
            PieceFact::Created,
            text(DetailField::Mark, mark),
            text(DetailField::Wood, wood),
            text(DetailField::Place, "top shelf"),
            PieceFact::StageMoved(stage),
        ];
        self.line(mark, days, facts)
    }

    fn weighed(&mut self, mark: &str, days: i64, g: f64) -> &mut Self {
        let fact = PieceFact::Weighed {
            mass_g: Measure::plain(g),
            tare_g: 0.0,
        };
        self.line(mark, days, vec![fact])
    }

    fn felt(&mut self, mark: &str, days: i64, feel: BagFeel) -> &mut Self {
        let fact = PieceFact::Look {
            feel: Some(feel),
            mould: false,
            crack: false,
        };
        self.line(mark, days, vec![fact])
    }

    fn air(&mut self, days: i64) -> &mut Self {
        let at = moment(START) - Duration::days(days);
        let air = Climate {
            room: Room::Shop,
            temp_c: 18.0,
            rh_pct: 62.0,
        };
        self.0
            .append_shop(at, at, vec![ShopFact::Climate(air)])
            .unwrap();
        self
    }

    fn bench(self) -> Bench {
        Bench::on(Box::new(self.0))
    }
}

/// Makes room for all of a long page, instead of scrolling.
fn tall(bench: &Bench) {
    bench.resize(390.0, 3000.0, 1.0);
}

/// Lets what follows from a change take place: the page takes the focus back.
fn settle() {
    i_slint_backend_testing::mock_elapsed_time(std::time::Duration::from_millis(10));
}

fn id(mark: &str) -> PieceId {
    PieceId::new(&mark.to_lowercase()).unwrap()
}

fn of<T>(bench: &Bench, mark: &str, ask: impl FnOnce(&Piece) -> T) -> T {
    bench.screens.read(|app| ask(app.piece(&id(mark)).unwrap()))
}

/// A shop with something of everything.
fn busy() -> Shelf {
    let mut shelf = Shelf(MemoryStore::default());
    shelf
        .air(2)
        .piece("K11", "sycamore", Stage::Bag, 9)
        .felt("K11", 4, BagFeel::Wet)
        .piece("K12", "sycamore", Stage::Bag, 8)
        .felt("K12", 3, BagFeel::Wet)
        .piece("K09", "beech", Stage::Bag, 12)
        .felt("K09", 3, BagFeel::Damp)
        .piece("N04", "ash", Stage::Bag, 12)
        .felt("N04", 6, BagFeel::Nothing)
        .felt("N04", 2, BagFeel::Nothing)
        .piece("M02", "cherry", Stage::Settle, 60)
        .weighed("M02", 14, 828.0)
        .piece("S01", "yew", Stage::Settle, 70)
        .weighed("S01", 16, 640.0)
        .piece("A03", "beech", Stage::Air, 12)
        .piece("B04", "beech", Stage::Settle, 80)
        .weighed("B04", 10, 701.0);
    shelf
}

#[test]
fn a_bag_is_answered_in_place_and_undone() {
    let bench = busy().bench();
    bench.pictures_of("today");
    assert!(bench.sees("Thursday 12 March"));
    assert!(bench.reads("settles at 11"));
    tall(&bench);
    let before = bench.labels();
    bench.touch("Damp");
    of(&bench, "K11", |p| {
        assert_eq!(p.looks.last().unwrap().feel, Some(BagFeel::Damp));
    });
    assert!(bench.sees("Turned inside out · next Sun 15"));
    assert!(bench.reads("K11: Damp. Turned inside out · next Sun 15"));
    bench.resize(390.0, 844.0, 2.0);
    bench.picture("today-answered");
    tall(&bench);
    bench.touch("Undo: K11: Damp. Turned inside out · next Sun 15");
    of(&bench, "K11", |p| assert_eq!(p.looks.len(), 1));
    bench.wait(Duration::zero());
    let after: Vec<String> = bench
        .labels()
        .into_iter()
        .filter(|l| before.contains(l))
        .collect();
    assert_eq!(after, before);
    assert!(!bench.sees("Turned inside out · next Sun 15"));
}

#[test]
fn a_folded_bag_is_opened_ticked_and_noted_for_yesterday() {
    let bench = busy().bench();
    tall(&bench);
    bench.touch("K09 Beech");
    bench.touch("Mould");
    bench.touch("More");
    bench.resize(390.0, 1700.0, 2.0);
    bench.picture("today-whole");
    bench.touch("Yesterday");
    bench.touch("Wet");
    of(&bench, "K09", |p| {
        let look = p.looks.last().unwrap();
        assert!(look.mould);
        assert_eq!(look.at.to_rfc3339(), "2026-03-11T12:00:00+00:00");
    });
    bench.touch("Looked over: A03");
    of(&bench, "A03", |p| assert_eq!(p.looks.len(), 1));
    bench.touch("Open the neck for good: N04");
    of(&bench, "N04", |p| assert_eq!(p.stage(), Stage::Air));
}

#[test]
fn an_empty_shelf_says_how_to_begin_and_an_old_reading_that_it_is_old() {
    let bench = Bench::empty();
    bench.pictures_of("today-empty");
    assert!(bench.sees("Nothing on the lathe yet"));
    assert!(!bench.reads("settles at"));
    let mut shelf = busy();
    shelf.air(2);
    let bench = shelf.bench();
    bench.days(13);
    assert!(bench.reads("Climate 15 d old"));
    bench.touch(
        &bench
            .labels()
            .into_iter()
            .find(|l| l.starts_with("Shop climate"))
            .unwrap(),
    );
    bench.screens.read(|app| {
        assert_eq!(app.route().page().map(|p| p.key()), Some("shop-page"));
    });
}

fn ten_bags() -> Bench {
    let mut shelf = Shelf(MemoryStore::default());
    for n in 1..=10 {
        shelf.piece(&format!("K{n:02}"), "ash", Stage::Bag, 3);
    }
    shelf.bench()
}

#[test]
fn a_bag_round_of_ten() {
    let bench = ten_bags();
    bench.touch("Bag round (10)");
    assert!(bench.sees("1 of 10") && bench.sees("K01"));
    bench.pictures_of("bag-round");
    bench.touch("Wet");
    bench.wait(Duration::milliseconds(300));
    bench.touch("Wet");
    bench.touch("Wet");
    assert!(bench.sees("2 of 10") && bench.sees("K02"));
    of(&bench, "K02", |p| assert!(p.looks.is_empty()));
    bench.wait(Duration::milliseconds(500));
    bench.touch("Nothing");
    assert!(bench.sees("3 of 10"));
    bench.picture("bag-round-resting");
    bench.wait(Duration::milliseconds(800));
    let undo = "Undo: K02: Nothing. Neck left open · next Sun 15";
    bench.touch(undo);
    assert!(bench.sees("2 of 10") && bench.sees("K02"));
    of(&bench, "K02", |p| assert!(p.looks.is_empty()));
    bench.wait(Duration::milliseconds(800));
    bench.touch("Damp");
    bench.wait(Duration::milliseconds(800));
    bench.touch("Not looked at");
    bench.wait(Duration::milliseconds(800));
    bench.touch("Can't find it");
    bench.wait(Duration::milliseconds(800));
    bench.touch("Crack");
    bench.touch("Nothing");
    bench.wait(Duration::milliseconds(800));
    bench.touch("All damp (5)");
    bench.picture("bag-round-all-damp");
    bench.touch("All damp");
    assert!(bench.sees("Round done"));
    bench.pictures_of("bag-round-end");
    assert!(bench.sees("Damp: 6") && bench.sees("Open these necks: K05"));
    assert!(bench.sees("Look for these: K04"));
    bench.wait(Duration::milliseconds(800));
    bench.touch("Undo: 5 bags: damp");
    assert!(bench.sees("6 of 10") && bench.sees("K06"));
    for n in 6..=10 {
        of(&bench, &format!("K{n:02}"), |p| assert!(p.looks.is_empty()));
    }
    of(&bench, "K04", |p| assert!(p.not_found.is_some()));
}

#[test]
fn a_weigh_round_with_a_scale_that_types() {
    let bench = busy().bench();
    bench.touch("Weigh round (2)");
    bench.pictures_of("weigh-round");
    assert!(bench.sees("M02 Black cherry") || bench.sees("M02 Cherry"));
    bench.keys("820 g");
    assert!(bench.reads("820 g"));
    bench.enter();
    of(&bench, "M02", |p| {
        let w = p.weighings.last().unwrap();
        assert_eq!((w.mass_g.value, w.mass_g.typed.as_str()), (820.0, "820 g"));
    });
    // A key on the screen in between, then the scale again; too heavy is asked about.
    bench.touch("7");
    bench.keys("690");
    bench.tab();
    assert!(bench.sees("S01 is heavier than last time"));
    bench.picture("weigh-round-asks");
    bench.touch("Type it again");
    of(&bench, "S01", |p| assert_eq!(p.weighings.len(), 1));
    settle();
    bench.keys("638");
    bench.enter();
    of(&bench, "S01", |p| assert_eq!(p.weighings.len(), 2));
    assert!(bench.sees("2 pieces weighed"));
    bench.pictures_of("weigh-round-end");
    bench.touch("Undo");
    of(&bench, "S01", |p| assert_eq!(p.weighings.len(), 1));
    bench.touch("Back");
    assert!(bench.sees("Thursday 12 March"));
}

#[test]
fn going_away_and_coming_back() {
    let bench = busy().bench();
    tall(&bench);
    bench.touch("Going away");
    bench.pictures_of("away");
    tall(&bench);
    bench.touch("2 weeks");
    bench.touch("K11: put it in paper");
    of(&bench, "K11", |p| assert_eq!(p.method.key(), "paper"));
    bench.touch("A day");
    bench.write("Back on", "soon");
    bench.touch("Away until then");
    assert!(bench.reads("cannot be read as a day"));
    bench.write("Back on", "20 Mar");
    bench.touch("Away until Fri 20");
    bench.screens.read(|app| assert!(app.shop().away.is_some()));
    bench.touch("Back");
    assert!(bench.reads("Away until Fri 20"));
    bench.set_time("2026-03-20T09:00:00+00:00");
    assert!(bench.reads("You are back"));
    bench.touch("See the list");
    bench.pictures_of("away-return");
    tall(&bench);
    bench.touch("I am back");
    bench.screens.read(|app| assert!(app.shop().away.is_none()));
}

#[test]
fn after_a_silence_one_list() {
    let bench = busy().bench();
    bench.days(60);
    assert!(bench.reads("Pick up where you left off"));
    bench.touch("See the list");
    bench.pictures_of("catch-up");
    tall(&bench);
    assert!(!bench.reads("late"));
    bench.touch("Nothing");
    assert!(bench.reads("Neck left open"));
    bench.touch("Back");
    assert!(bench.sees("Tuesday 12 May") || bench.reads("Monday 11 May"));
}
