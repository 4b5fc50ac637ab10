//! What dried well and the climate over time, touched as a turner would.

use evenwall::desktop::files::Downloads;
use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::files::{FileError, Files};
use evenwall_app::route::{Page, Tab};
use evenwall_app::store::MemoryStore;

use crate::bench::Bench;
use crate::targets::demo;

/// A tall phone shows whole pages.
fn tall(bench: &Bench) {
    bench.resize(390.0, 4000.0, 1.0);
}

fn climate(bench: &Bench) -> usize {
    bench.screens.read(|app: &App| app.shop().climate.len())
}

#[test]
fn what_dried_well_is_reached_from_shop_and_from_pieces_and_told_by_kind() {
    let bench = demo();
    bench.touch("Shop");
    tall(&bench);
    bench.touch("What dried well");
    assert!(bench.reads("Still whole, by days of drying"));
    bench.touch("Method");
    assert!(bench.reads("Bag, turned: "), "{:#?}", bench.labels());
    bench.touch("Wall");
    assert!(bench.reads("mm: "), "{:#?}", bench.labels());
    assert!(bench.reads("Curve of the pieces still whole"));
    bench.touch("Back");
    bench.resize(390.0, 844.0, 1.0);
    bench.touch("Pieces");
    bench.touch("What dried well");
    assert!(bench.reads("Your own pieces, counted."));
    tall(&bench);
    let twin = bench.labels().into_iter().find(|l| l.starts_with("J04: "));
    bench.touch(&twin.expect("the twins of a log"));
    assert!(
        bench
            .screens
            .read(|app| app.route().page().unwrap().key() == "piece")
    );
    bench.touch("Back");
    bench.pictures_of("dried-well");
    tall(&bench);
    bench.picture("dried-well-whole");
    assert_eq!(bench.screens.read(|app| app.words().problems()), []);
}

#[test]
fn an_empty_shelf_says_that_nothing_has_dried_yet() {
    let bench = Bench::on(Box::new(MemoryStore::default()));
    bench.screens.act(Action::GoTab(Tab::Pieces));
    assert!(!bench.sees("What dried well"), "no piece, no button");
    bench.screens.act(Action::Open(Page::DriedWell));
    assert!(bench.reads("Nothing has dried yet"));
    assert!(!bench.sees("Wood"));
    bench.picture("dried-well-empty");
}

/// A file of a logger in a folder of its own, read as the program reads it.
struct OneFile(tempfile::TempDir);

impl OneFile {
    fn new(text: &str) -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        std::fs::write(folder.path().join("shed.csv"), text).expect("a file");
        Self(folder)
    }

    fn path(&self) -> String {
        self.0.path().join("shed.csv").display().to_string()
    }
}

#[test]
fn a_loggers_file_is_read_by_its_path_kept_and_undone() {
    let mut text = String::from("Date;Temperature;Humidity\n");
    for day in 1..=9 {
        text.push_str(&format!("0{day}/02/2026 10:00;{day};6{day}\n"));
    }
    text.push_str("10/02/2026 10:00;warm;60\n");
    let file = OneFile::new(&text);
    let bench = Bench::empty();
    bench.screens.bring_files(Box::new(Downloads));
    bench.touch("Shop");
    tall(&bench);
    bench.touch("Climate");
    bench.touch("Read a logger's file");
    bench.touch("Somewhere else");
    bench.write("Where the file is", "/no/such/file.csv");
    bench.touch("Read it");
    let told = bench
        .find("Where the file is")
        .iter()
        .filter_map(|e| e.accessible_description())
        .any(|d| d.contains("There is no file"));
    assert!(told, "{:#?}", bench.labels());
    bench.write("Where the file is", &file.path());
    bench.touch("Read it");
    // Both orders rise: it is asked which is meant.
    assert!(bench.reads("may have the day first or the month first"));
    bench.picture("climate-log-asked");
    bench.touch("The day: 31/1");
    bench.resize(390.0, 844.0, 1.0);
    bench.pictures_of("climate-log");
    tall(&bench);
    bench.picture("climate-log-whole");
    assert!(
        bench.reads("Line 11: found “warm”"),
        "{:#?}",
        bench.labels()
    );
    bench.touch("House");
    bench.touch("Keep 9 readings");
    assert_eq!(climate(&bench), 9);
    assert!(bench.reads("House, Settles: from"), "{:#?}", bench.labels());
    bench.touch("Temperature");
    assert!(bench.reads("House, Temperature: from"));
    bench.touch("Undo: House: 9 readings of a logger");
    assert_eq!(climate(&bench), 0);
}

#[test]
fn the_program_reads_files_and_says_why_not() {
    let file = OneFile::new("time,temperature,humidity\n");
    assert_eq!(Downloads.read(&file.path()).map(|b| b.len()), Ok(26));
    assert_eq!(Downloads.read("/no/such.csv"), Err(FileError::NotThere));
    assert_eq!(Downloads.read("/"), Err(FileError::Folder));
    assert!(Downloads.listed().len() <= 20);
}
