//! The whole job, by touch: one piece from an empty app to Finished with a restart half way, on a real shelf; its diary
//! is compared with what was entered. No back doors: every step is a touch, a key or a day that passes.

use std::path::Path;

use evenwall_app::shelf_store::ShelfStore;
use evenwall_piece::fact::{End, PieceFact};
use evenwall_piece::piece::Piece;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, CrackAnswer, Treatment};
use evenwall_piece::wanted;

use crate::bench::{Bench, moment};

fn store(folder: &Path, seed: u8) -> Box<ShelfStore> {
    let mut bits = u64::from(seed);
    let random = Box::new(move || {
        bits = bits
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(99);
        bits
    });
    Box::new(
        ShelfStore::open(
            &folder.join("shelf"),
            &folder.join("device"),
            [seed; 16],
            random,
        )
        .unwrap(),
    )
}

fn open(folder: &Path, seed: u8, at: &str) -> Bench {
    let bench = Bench::at(store(folder, seed), moment(at), false);
    // Room for whole pages, in place of scrolling.
    bench.resize(390.0, 3200.0, 1.0);
    bench
}

fn with_piece<T>(bench: &Bench, ask: impl FnOnce(&Piece) -> T) -> T {
    bench
        .screens
        .read(|app| ask(app.pieces().next().expect("the piece is there")))
}

fn settle(bench: &Bench) {
    // Some pages follow the size by handlers.
    slint::platform::update_timers_and_animations();
    bench.screens.refresh();
}

fn back_to_piece(bench: &Bench) {
    for _ in 0..6 {
        if bench.sees("More about it") || bench.sees("Diary") && bench.sees("Details") {
            return;
        }
        bench.touch("Back");
    }
}

/// Goes back until the tabs are there.
fn home(bench: &Bench) {
    for _ in 0..8 {
        if bench.sees("Pieces") && bench.sees("Shop") {
            return;
        }
        bench.touch("Back");
        settle(bench);
    }
}

/// Feels the bag on Today.
fn feel(bench: &Bench, word: &str) {
    home(bench);
    bench.touch("Today");
    settle(bench);
    bench.touch(word);
}

/// Opens the piece from the list.
fn open_piece(bench: &Bench) {
    home(bench);
    bench.touch("Pieces");
    settle(bench);
    let card = bench
        .labels()
        .into_iter()
        .find(|l| l.starts_with("A01, "))
        .unwrap_or_else(|| panic!("no card; there is {:#?}", bench.labels()));
    bench.touch(&card);
    settle(bench);
}

/// A look that is due is answered before the piece moves on.
fn look_first(bench: &Bench) {
    for word in ["Nothing", "Looked over"] {
        if bench.sees(word) {
            bench.touch(word);
            settle(bench);
        }
    }
}

fn weigh(bench: &Bench, grams: &str) {
    bench.keys(grams);
    bench.enter();
}

#[test]
fn one_piece_goes_from_an_empty_app_to_finished_with_a_restart_half_way() {
    let folder = tempfile::tempdir().unwrap();
    let bench = open(folder.path(), 1, "2026-01-05T09:00:00+00:00");

    // Entered with a mark and a wood.
    bench.touch("New piece");
    bench.write("Wood", "frax");
    bench.touch("White ash");
    bench.touch("Save A01");
    settle(&bench);
    if bench.sees("I have read them") {
        bench.touch("I have read them");
    }
    with_piece(&bench, |p| {
        assert_eq!((p.mark(), p.stage()), ("A01", Stage::Shape))
    });

    // Shaped, then hollowed to an even wall: one tap a station.
    bench.touch("Next stage: Hollow");
    settle(&bench);
    bench.touch("Measure the wall");
    settle(&bench);
    bench.touch("Section in work: Station 1");
    bench.touch("Whole round");
    for wall in ["10", "10.5", "9.5", "11.5", "10", "10"] {
        bench.touch(wall);
    }
    // Callipers that type.
    bench.keys("10.83");
    bench.enter();
    bench.touch("Finish");
    settle(&bench);
    let readings: Vec<f64> = with_piece(&bench, |p| {
        let walls = p.readings.iter();
        walls
            .filter_map(|r| r.reading.wall_mm.as_ref().map(|m| m.value))
            .collect()
    });
    assert_eq!(readings, [10.0, 10.5, 9.5, 11.5, 10.0, 10.0, 10.83]);
    back_to_piece(&bench);

    // A knot, soaked with thin.
    bench.touch("Next stage: Stabilise");
    settle(&bench);
    bench.touch("Note a flaw");
    settle(&bench);
    bench.touch("Knot");
    bench.touch("Superglue thin");
    bench.touch("Save");
    settle(&bench);
    with_piece(&bench, |p| {
        let (_, treated) = p.flaws[0].last_treatment().expect("it was treated");
        assert_eq!(treated.treatment, Treatment::Thin);
    });
    back_to_piece(&bench);

    // Into the bag, weighed at the start.
    bench.touch("Into the bag");
    settle(&bench);
    with_piece(&bench, |p| assert_eq!(p.stage(), Stage::Bag));
    bench.touch("Drying");
    settle(&bench);
    bench.touch("Weigh now");
    settle(&bench);
    weigh(&bench, "1180");
    with_piece(&bench, |p| {
        let weights: Vec<f64> = p.weighings.iter().map(|w| w.net_g()).collect();
        assert_eq!(weights, [1180.0]);
    });

    // Felt every few days; the program is closed in between.
    bench.days(1);
    feel(&bench, "Wet");
    bench.days(2);
    feel(&bench, "Damp");
    let before = with_piece(&bench, Clone::clone);
    drop(bench);

    let bench = open(folder.path(), 2, "2026-01-11T18:30:00+00:00");
    with_piece(&bench, |p| {
        assert_eq!(*p, before, "a restart changes nothing")
    });
    feel(&bench, "Nothing");
    bench.days(3);
    feel(&bench, "Nothing");
    with_piece(&bench, |p| {
        let felt: Vec<_> = p.looks.iter().filter_map(|l| l.feel).collect();
        use BagFeel::{Damp, Nothing, Wet};
        assert_eq!(felt, [Wet, Damp, Nothing, Nothing], "{felt:?}");
    });

    // Neck open, settling, the house.
    for (stage, days) in [("Air", 32), ("Settle", 75), ("Indoors", 15)] {
        open_piece(&bench);
        look_first(&bench);
        bench.touch(&format!("Next stage: {stage}"));
        settle(&bench);
        bench.days(days);
        settle(&bench);
    }
    open_piece(&bench);
    look_first(&bench);
    bench.touch("Next stage: True");
    settle(&bench);
    if bench.sees("Go on") {
        bench.touch("Go on");
    }
    with_piece(&bench, |p| assert_eq!(p.stage(), Stage::True));

    // Cracks first, then the oval, the spigot, the decision.
    bench.touch("Look for cracks first");
    settle(&bench);
    bench.touch("None found");
    bench.touch("Measure the oval");
    bench.write("Longest diameter", "147");
    bench.write("Shortest diameter", "143");
    bench.touch("Record");
    bench.touch("Round size once trued");
    bench.write("Round size once trued", "54");
    bench.touch("Record");
    bench.touch("Decide");
    bench.touch("Carry on");
    bench.touch("Record");
    bench.touch("Next stage: Finish");
    settle(&bench);
    with_piece(&bench, |p| {
        assert_eq!(p.finish.cracks.as_ref().unwrap().1, CrackAnswer::None);
        let oval = p.finish.oval.as_ref().unwrap();
        assert_eq!(
            (oval.longest_mm.value, oval.shortest_mm.value),
            (147.0, 143.0)
        );
        assert_eq!(p.finish.spigot_mm.as_ref().unwrap().value, 54.0);
        assert_eq!(p.stage(), Stage::Finish);
        assert!((wanted::wall_now(p).mm - 5.0).abs() < 1e-9);
    });

    // Finished.
    back_to_piece(&bench);
    bench.touch("Record the finish");
    settle(&bench);
    bench.touch("Finished");
    settle(&bench);
    if with_piece(&bench, |p| p.end.is_none()) {
        // The question lies over the page and has a button of the same name.
        assert!(bench.reads("Not recorded"));
        bench.touch_last("Finished");
    }
    with_piece(&bench, |p| {
        assert_eq!(p.end.as_ref().unwrap().1, End::Finished)
    });

    // The diary tells it all, also to a program that starts anew.
    let told = with_piece(&bench, |p| {
        p.diary.iter().map(|e| e.fact.clone()).collect::<Vec<_>>()
    });
    drop(bench);
    let bench = open(folder.path(), 3, "2026-06-01T09:00:00+00:00");
    with_piece(&bench, |p| {
        let again: Vec<_> = p.diary.iter().map(|e| e.fact.clone()).collect();
        assert_eq!(again, told);
        let moved: Vec<Stage> = again
            .iter()
            .filter_map(|f| match f {
                PieceFact::StageMoved(to) => Some(*to),
                _ => None,
            })
            .collect();
        assert_eq!(moved, Stage::ALL[1..]);
    });
    bench.screens.read(|app| {
        assert!(app.problems().is_empty(), "{:?}", app.problems());
        assert!(
            app.words().problems().is_empty(),
            "{:?}",
            app.words().problems()
        );
    });
}
