//! Moving in from a spreadsheet, cut off at any step: it goes on or goes away, and nothing comes in twice.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use std::path::Path;
use std::sync::Arc;

use chrono::{DateTime, Duration};
use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::records::RecordsAction;
use evenwall_app::records::import::ImportAction;
use evenwall_app::shelf_store::ShelfStore;
use evenwall_piece::piece::Moment;
use evenwall_shelf::disk::Disk;
use evenwall_shelf::faulty::{FaultyDisk, Left};

fn now() -> Moment {
    DateTime::parse_from_rfc3339("2026-03-14T08:30:00+00:00").unwrap()
}

fn act(app: &mut App, action: ImportAction) {
    app.apply(Action::Records(RecordsAction::Import(action)), now());
}

const NOTEBOOK: &str = "No;Species;Dia (cm);Wall mm;Stage;Roughed;Weight g;Date;Remarks\n\
K07;elm;16,5;12;Bag;3 Jan 2026;820;5 Jan 2026;fell in the river\n\
K08;white ash;14;10;settle;2025-11-02;640,5;2026-03-01;\n\
K07;;;;;;801;20 Jan 2026;\n";

const SHELF: &str = "/home/turner/shelf";
const DATA: &str = "/home/turner/data";

fn on(disk: &FaultyDisk, seed: u8) -> Option<App> {
    let mut counter = u64::from(seed) << 40;
    let random = Box::new(move || {
        counter += 1;
        counter.wrapping_mul(0x9E37_79B9_7F4A_7C15)
    });
    let store = ShelfStore::open_on(
        Arc::new(disk.clone()),
        Path::new(SHELF),
        Path::new(DATA),
        [seed; 16],
        random,
    )
    .ok()?;
    App::open(Box::new(store), false, now()).ok()
}

fn ready() -> FaultyDisk {
    let disk = FaultyDisk::new();
    drop(on(&disk, 1).unwrap());
    disk.write(Path::new("/home/old.csv"), NOTEBOOK.as_bytes())
        .unwrap();
    disk.sync_file(Path::new("/home/old.csv")).unwrap();
    disk.sync_folder(Path::new("/home")).unwrap();
    disk.restart(Left::Names);
    disk.write(Path::new("/home/old.csv"), NOTEBOOK.as_bytes())
        .unwrap();
    disk.sync_file(Path::new("/home/old.csv")).unwrap();
    disk
}

fn import(app: &mut App) {
    act(app, ImportAction::Open("/home/old.csv".into()));
    act(app, ImportAction::Run);
}

/// Marks with their number of weights.
fn there(app: &App) -> Vec<(String, usize)> {
    let mut all: Vec<_> = app
        .pieces()
        .map(|p| (p.mark().to_owned(), p.weighings.len()))
        .collect();
    all.sort();
    all
}

#[test]
fn cut_off_at_any_step_an_import_goes_on_or_is_taken_back_and_nothing_comes_in_twice() {
    let ready = ready();
    let begun = ready.steps();
    let whole = ready.fork();
    import(&mut on(&whole, 2).unwrap());
    let wanted = [("K07".to_owned(), 2), ("K08".to_owned(), 1)];
    assert!(whole.steps() - begun > 20);
    let mut asked = 0;
    for step in begun..=whole.steps() {
        for left in [Left::OnlySynced, Left::Names, Left::Torn(9), Left::Killed] {
            let disk = ready.fork();
            disk.crash_at(step);
            if let Some(mut app) = on(&disk, 2) {
                import(&mut app);
            }
            disk.restart(left);
            for go_on in [true, false] {
                let disk = disk.fork();
                let mut app = on(&disk, 3).unwrap();
                if app.question().is_some() {
                    asked += 1;
                    assert_eq!(app.question().unwrap().title, "An import was cut off");
                    app.apply(Action::Choose(usize::from(!go_on)), now());
                    assert_eq!(app.save_error(), None, "step {step}, {left:?}");
                    let mut all: Vec<_> = if go_on { wanted.to_vec() } else { Vec::new() };
                    all.sort();
                    assert_eq!(there(&app), all, "step {step}, {left:?}, go on: {go_on}");
                    drop(app);
                    let app = on(&disk, 4).unwrap();
                    assert!(app.question().is_none(), "asked once");
                    assert_eq!(there(&app), all);
                } else {
                    // Not begun, or done.
                    assert!(
                        there(&app).is_empty() || there(&app) == wanted,
                        "step {step}, {left:?}: {:?}",
                        there(&app)
                    );
                }
            }
        }
    }
    assert!(asked > 20, "{asked}");
}

#[test]
fn a_disk_that_fills_up_in_the_middle_goes_on_where_it_stopped() {
    let disk = ready();
    let mut app = on(&disk, 2).unwrap();
    act(&mut app, ImportAction::Open("/home/old.csv".into()));
    disk.trouble(Some(evenwall_shelf::faulty::Trouble::Full(2600)));
    act(&mut app, ImportAction::Run);
    assert!(
        app.save_error().unwrap().contains("the disk is full"),
        "{:?}",
        app.save_error()
    );
    disk.trouble(None);
    app.apply(Action::TryAgain, now() + Duration::minutes(3));
    assert_eq!(app.save_error(), None);
    assert_eq!(there(&app), [("K07".to_owned(), 2), ("K08".to_owned(), 1)]);
}
