//! Every page of the demo at every size: all that can be touched is large enough for a wet thumb, nothing that can be
//! touched lies across something else, everything has a name, and no word is missing.

use evenwall_app::action::Action;
use evenwall_app::demo;
use evenwall_app::device::ThemeChoice;
use evenwall_app::route::{Page, Tab};
use evenwall_app::shop::pages::PAGES as SHOP_PAGES;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::ids::{FlawId, PhotoId, PieceId};
use evenwall_piece::photo::PhotoOn;
use evenwall_piece::shop::ShopFact;
use i_slint_backend_testing::{AccessibleRole, ElementHandle, ElementQuery};

use crate::bench::{Bench, START, moment};

/// The demo in memory, its cautions read.
pub fn demo_store() -> MemoryStore {
    let mut store = MemoryStore::default();
    let now = moment(START);
    demo::fill(&mut store, now).unwrap();
    let read = ShopFact::Setting {
        key: "cautions_read".into(),
        value: "true".into(),
    };
    store.append_shop(now, now, vec![read]).unwrap();
    store
}

/// The app on the demo.
pub fn demo() -> Bench {
    Bench::at(Box::new(demo_store()), moment(START), true)
}

/// A piece of the demo.
pub fn id(name: &str) -> PieceId {
    PieceId::new(&format!("{name}-demo")).unwrap()
}

/// A flaw of j24 with two drawn photos.
fn flaw() -> FlawId {
    FlawId::new("ring-shake-1").unwrap()
}

/// Every page with a name for its pictures.
pub fn pages() -> Vec<(String, Action)> {
    let open = |name: &str, page: Page| (name.to_owned(), Action::Open(page));
    let mut pages = vec![
        ("today".to_owned(), Action::GoTab(Tab::Today)),
        ("pieces".to_owned(), Action::GoTab(Tab::Pieces)),
        ("plan".to_owned(), Action::GoTab(Tab::Plan)),
        ("shop".to_owned(), Action::GoTab(Tab::Shop)),
        open("new-piece", Page::NewPiece),
        open("bag-round", Page::BagRound),
        open("weigh-round", Page::WeighRound),
        open("away", Page::Away),
        open("catch-up", Page::CatchUp),
        open("piece-shape", Page::Piece(id("k16"))),
        open("piece-hollow", Page::Piece(id("k14"))),
        open("piece-stabilise", Page::Piece(id("k12"))),
        open("piece-bag", Page::Piece(id("k07"))),
        open("piece-settle", Page::Piece(id("j23"))),
        open("piece-true", Page::Piece(id("j18"))),
        open("piece-lost", Page::Piece(id("j04"))),
        open("details", Page::Details(id("k07"))),
        open("stages", Page::Stages(id("k07"))),
        open("ending", Page::Ending(id("k07"))),
        open("wall", Page::Wall(id("k14"))),
        open("wall-summary", Page::WallSummary(id("k12"))),
        open("outline", Page::Outline(id("k12"))),
        open("flaws", Page::Flaws(id("k12"))),
        open("flaw-new", Page::Flaw(id("k12"), None)),
        open("flaw-photos", Page::Flaw(id("j24"), Some(flaw()))),
        open("photos", Page::Photos(id("j24"), PhotoOn::Flaw(flaw()))),
        open(
            "photo",
            Page::Photo(id("j24"), PhotoId::new("drawn-8").unwrap()),
        ),
        open("compare", Page::Compare(id("j24"), flaw())),
        open("drying", Page::Drying(id("j23"))),
        open("drying-never", Page::Drying(id("k15"))),
        open("weigh", Page::Weigh(id("j23"))),
        open("truing", Page::Truing(id("j18"))),
        open("finishing", Page::Finishing(id("j17"))),
        open("plan-of", Page::PlanOf(id("k16"))),
        open("diary", Page::Diary(id("j18"))),
        open("dried-well", Page::DriedWell),
    ];
    pages.extend(
        SHOP_PAGES
            .iter()
            .map(|key| open(&format!("shop-{key}"), Page::ShopPage(key))),
    );
    pages
}

struct Target {
    label: String,
    x: f32,
    y: f32,
    width: f32,
    height: f32,
}

fn touchable(element: &ElementHandle) -> bool {
    matches!(
        element.accessible_role(),
        Some(
            AccessibleRole::Button
                | AccessibleRole::Checkbox
                | AccessibleRole::Switch
                | AccessibleRole::RadioButton
                | AccessibleRole::Tab
        )
    )
}

fn targets(bench: &Bench) -> Vec<Target> {
    ElementQuery::from_root(bench.screens.window())
        .find_all()
        .iter()
        .filter(|e| touchable(e))
        .map(|e| {
            let (at, size) = (e.absolute_position(), e.size());
            Target {
                label: e.accessible_label().unwrap_or_default().to_string(),
                x: at.x,
                y: at.y,
                width: size.width,
                height: size.height,
            }
        })
        .collect()
}

/// How far two targets overlap without one lying inside the other, in the smaller direction.
fn across(a: &Target, b: &Target) -> f32 {
    let w = (a.x + a.width).min(b.x + b.width) - a.x.max(b.x);
    let h = (a.y + a.height).min(b.y + b.height) - a.y.max(b.y);
    let inside = |i: &Target, o: &Target| {
        i.x >= o.x - 1.0
            && i.y >= o.y - 1.0
            && i.x + i.width <= o.x + o.width + 1.0
            && i.y + i.height <= o.y + o.height + 1.0
    };
    if inside(a, b) || inside(b, a) {
        0.0
    } else {
        w.min(h)
    }
}

#[test]
fn every_target_is_large_enough_named_and_clear_of_the_others_on_every_page() {
    let bench = demo();
    let mut wrong = Vec::new();
    // Tall, so that nothing lies scrolled away below what is docked.
    for (width, height, scale) in [
        (390.0, 4000.0, 1.0),
        (360.0, 6000.0, 1.6),
        (844.0, 4000.0, 1.0),
        (1180.0, 4000.0, 1.0),
    ] {
        bench.resize(width, height, 1.0);
        for (name, action) in pages() {
            bench.screens.act(Action::GoTab(Tab::Today));
            bench.screens.act(action);
            bench.screens.look(ThemeChoice::Light, scale);
            let found = targets(&bench);
            assert!(
                !found.is_empty(),
                "nothing can be touched on {name} at {width}x{height}"
            );
            for (i, t) in found.iter().enumerate() {
                let place = format!("{name} at {width}x{height}, text {scale}: '{}'", t.label);
                if t.label.trim().is_empty() {
                    wrong.push(format!("{place} has no name"));
                }
                // The drawing of a section is one target, and the nearest station wins.
                let on_the_drawing =
                    t.label.starts_with("Station ") || t.label.starts_with("Floor");
                if (t.width < 55.5 || t.height < 55.5) && !on_the_drawing {
                    wrong.push(format!("{place} is {:.0} x {:.0}", t.width, t.height));
                }
                for o in &found[i + 1..] {
                    // A list draws its last row behind what is docked, and clips it there.
                    let list = matches!(name.as_str(), "diary" | "pieces" | "photos");
                    if across(t, o) > 1.5 && !list {
                        wrong.push(format!("{place} lies across '{}'", o.label));
                    }
                }
            }
        }
    }
    wrong.sort();
    wrong.dedup();
    assert!(
        wrong.is_empty(),
        "{} wrong:\n{}",
        wrong.len(),
        wrong.join("\n")
    );
}

#[test]
fn no_page_lacks_a_word_in_either_language() {
    use evenwall_app::device::{DeviceSettings, WordsChoice};
    for words in [WordsChoice::British, WordsChoice::American] {
        let mut store = demo_store();
        let device = DeviceSettings {
            words,
            ..DeviceSettings::default()
        };
        store.save_device_settings(&device.to_json()).unwrap();
        let bench = Bench::at(Box::new(store), moment(START), true);
        for (_, action) in pages() {
            bench.screens.act(Action::GoTab(Tab::Today));
            bench.screens.act(action);
        }
        bench
            .screens
            .read(|app| assert_eq!(app.words().problems(), Vec::new()));
    }
}

#[test]
fn pictures_of_every_page_of_the_demo() {
    let bench = demo();
    for (name, action) in pages() {
        bench.screens.act(Action::GoTab(Tab::Pieces));
        bench.screens.act(action);
        bench.pictures_of(&format!("demo-{name}"));
    }
}
