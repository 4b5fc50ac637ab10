//! Records in and out, touched as a turner would: backup and restore, reminders, devices, tables, tags, a report, and
//! moving in; and what another device writes while something is typed.

use std::cell::Cell;
use std::path::{Path, PathBuf};
use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::records::RecordsAction;
use evenwall_app::route::Page;
use evenwall_app::shelf_store::ShelfStore;
use evenwall_app::shop::ShopAction;
use evenwall_app::store::Store;
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::PieceId;
use evenwall_piece::shop::ShopFact;
use evenwall_piece::stage::Stage;
use i_slint_backend_testing::ElementQuery;

use crate::bench::{Bench, START, moment};

/// A folder with two shelves in it, as a sync service would keep them, and a place for documents.
struct Place {
    folder: tempfile::TempDir,
}

impl Place {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        std::fs::create_dir(folder.path().join("out")).unwrap();
        Self { folder }
    }

    fn out(&self) -> PathBuf {
        self.folder.path().join("out")
    }

    fn out_text(&self) -> String {
        self.out().to_string_lossy().into_owned()
    }

    fn store(&self, device: &str, seed: u8) -> ShelfStore {
        let next = Cell::new(u64::from(seed) << 32);
        let random = Box::new(move || {
            next.set(next.get() + 0x0123_4567_89ab);
            next.get().wrapping_mul(0x9e37_79b9_7f4a_7c15)
        });
        let shelf = self.folder.path().join(format!("shelf-{device}"));
        let own = self.folder.path().join(format!("device-{device}"));
        ShelfStore::open(&shelf, &own, [seed; 16], random).unwrap()
    }

    fn files(&self) -> Vec<String> {
        let mut names: Vec<String> = std::fs::read_dir(self.out())
            .unwrap()
            .map(|e| e.unwrap().file_name().to_string_lossy().into_owned())
            .collect();
        names.sort();
        names
    }
}

fn fill(store: &mut ShelfStore, mark: &str, days_ago: i64) {
    let at = moment(START) - chrono::Duration::days(days_ago);
    let read = ShopFact::Setting {
        key: "cautions_read".into(),
        value: "true".into(),
    };
    store.append_shop(at, at, vec![read]).unwrap();
    let text = |field, text: &str| PieceFact::Detail {
        field,
        value: Some(DetailValue::Text(text.into())),
    };
    let facts = vec![
        PieceFact::Created,
        text(DetailField::Mark, mark),
        text(DetailField::Wood, "ash"),
        PieceFact::StageMoved(Stage::Bag),
    ];
    let id = PieceId::new(&mark.to_lowercase()).unwrap();
    store.append_piece(&id, at, at, facts).unwrap();
}

fn bench(place: &Place) -> Bench {
    let mut store = place.store("a", 1);
    fill(&mut store, "K07", 40);
    let bench = Bench::on(Box::new(store));
    // A page that is scrolled away is not found by its label: a tall phone shows it whole.
    bench.resize(390.0, 2600.0, 1.0);
    bench
}

/// True where a label or a description on screen holds this text.
fn says(bench: &Bench, part: &str) -> bool {
    ElementQuery::from_root(bench.screens.window())
        .find_all()
        .iter()
        .flat_map(|e| [e.accessible_label(), e.accessible_description()])
        .flatten()
        .any(|text| text.contains(part))
}

fn open(bench: &Bench, page: &'static str) {
    bench.screens.act(Action::Open(Page::ShopPage(page)));
}

fn with_folder(place: &Place) -> Bench {
    let bench = bench(place);
    let mut device = bench.screens.read(|app| app.device().clone());
    device.backup_folder = place.out_text();
    bench.screens.act(ShopAction::Device(device).into());
    bench
}

fn copy_all(from: &Path, to: &Path) {
    std::fs::create_dir_all(to).unwrap();
    for entry in std::fs::read_dir(from).unwrap() {
        let entry = entry.unwrap();
        let target = to.join(entry.file_name());
        if entry.file_type().unwrap().is_dir() {
            copy_all(&entry.path(), &target);
        } else {
            std::fs::copy(entry.path(), target).unwrap();
        }
    }
}

#[test]
fn an_old_backup_is_asked_for_on_today_made_and_restored() {
    let place = Place::new();
    let bench = bench(&place);
    assert!(says(&bench, "There is no backup of this shelf yet."));
    bench.resize(390.0, 844.0, 2.0);
    bench.picture("records-reminder");
    bench.resize(390.0, 2600.0, 1.0);
    bench.touch("See");
    assert!(says(&bench, "Choose a folder for backups first"));
    bench.pictures_of("records-backup-empty");
    bench.resize(390.0, 2600.0, 1.0);
    // Nothing can be written without a folder: it is asked for first.
    bench.touch("Back up now");
    bench.write("Folder for documents and backups", "backups");
    bench.touch("Save");
    let label = "Folder for documents and backups";
    let told = |b: &Bench| {
        let found = b.find(label);
        let said: Vec<String> = found
            .iter()
            .filter_map(|e| e.accessible_description())
            .map(|d| d.to_string())
            .collect();
        said.join(" ")
    };
    assert!(told(&bench).contains("whole path"), "{}", told(&bench));
    bench.write(label, &place.out_text());
    bench.touch("Save");
    bench.touch("Back up now");
    assert!(says(&bench, "is written and was read back"));
    assert!(says(&bench, "Last backup today"));
    assert_eq!(place.files().len(), 1);
    bench.pictures_of("records-backup");
    bench.resize(390.0, 2600.0, 1.0);
    let made = bench.labels().into_iter().find(|l| l.ends_with(", 08:42"));
    bench.touch(&made.expect("the backup is listed by its time"));
    assert!(says(&bench, "Restore this backup?"));
    bench.picture("records-restore");
    bench.touch("Restore");
    assert!(says(&bench, "Everything in this backup is here already."));
    // A file that is no backup is refused where its path is typed.
    std::fs::write(place.out().join("other.zip"), b"not a zip").unwrap();
    bench.touch("A backup somewhere else");
    let other = place.out().join("other.zip");
    bench.write("Where the backup is", &other.to_string_lossy());
    bench.touch("Read it");
    assert!(bench.sees("Where the backup is"), "{:#?}", bench.labels());
}

#[test]
fn the_calendar_is_kept_up_to_date_and_a_foreign_file_is_left_alone() {
    let place = Place::new();
    let bench = bench(&place);
    open(&bench, "reminders");
    assert!(says(&bench, "None kept yet"));
    let foreign = place.out().join("mine.ics");
    std::fs::write(&foreign, "BEGIN:VCALENDAR\nEND:VCALENDAR\n").unwrap();
    bench.touch("Calendar file");
    bench.write("Calendar file", &foreign.to_string_lossy());
    bench.touch("Save");
    assert!(bench.sees("Close"), "the form stays: {:#?}", bench.labels());
    let own = place.out().join("evenwall.ics");
    bench.write("Calendar file", &own.to_string_lossy());
    bench.touch("Save");
    assert!(says(&bench, "Written: "), "{:#?}", bench.labels());
    let text = || std::fs::read_to_string(&own).unwrap();
    assert!(text().contains("K07"));
    bench.touch("Rings at");
    bench.write("Rings at", "half past");
    bench.touch("Save");
    bench.write("Rings at", "7");
    bench.touch("Save");
    assert!(says(&bench, "07:00"), "{:#?}", bench.labels());
    bench.screens.keep_calendar();
    assert!(text().contains("T070000"), "{}", text());
    bench.pictures_of("records-reminders");
    bench.resize(390.0, 2600.0, 1.0);
    // Where it cannot be kept, the page says so.
    std::fs::remove_dir_all(place.out()).unwrap();
    bench.screens.act(Action::HideUndo);
    bench.screens.keep_calendar();
    assert!(
        says(&bench, "The calendar is not up to date."),
        "{:#?}",
        bench.labels()
    );
}

#[test]
fn tables_tags_and_both_reports_are_written() {
    let place = Place::new();
    let bench = with_folder(&place);
    open(&bench, "tables");
    bench.touch("Write the tables");
    assert!(says(&bench, "6 tables are written to"));
    bench.pictures_of("records-tables");
    bench.resize(390.0, 2600.0, 1.0);
    open(&bench, "tags");
    bench.touch("Width of a label");
    bench.write("Width of a label", "5000");
    bench.touch("Save");
    bench.write("Width of a label", "70");
    bench.touch("Save");
    assert!(says(&bench, "70\u{a0}mm"), "{:#?}", bench.labels());
    bench.touch("Write the tag of one piece");
    bench.pictures_of("records-tags");
    bench.resize(390.0, 2600.0, 1.0);
    let id = PieceId::new("k07").unwrap();
    bench.screens.act(Action::Open(Page::Piece(id)));
    bench.touch("More");
    bench.touch("Report, tag, calendar");
    bench.touch("For whoever gets it");
    bench.touch("For the shop");
    bench.touch("Its label, to print");
    bench.touch("Its coming checks, once");
    assert!(says(&bench, "K07-looks.ics"));
    bench.pictures_of("records-of-a-piece");
    let files = place.files();
    for name in [
        "K07-looks.ics",
        "K07-report.html",
        "K07-shop-report.html",
        "K07-tag.html",
        "evenwall-pieces.csv",
        "evenwall-tags.html",
    ] {
        assert!(files.iter().any(|f| f == name), "{name} in {files:?}");
    }
    assert_eq!(bench.screens.read(|app| app.words().problems()), []);
}

#[test]
fn a_document_that_cannot_be_written_is_said_and_can_be_tried_again() {
    let place = Place::new();
    let bench = with_folder(&place);
    std::fs::remove_dir_all(place.out()).unwrap();
    open(&bench, "tables");
    bench.touch("Write the tables");
    assert!(says(&bench, "Not saved."), "{:#?}", bench.labels());
    std::fs::create_dir(place.out()).unwrap();
    bench.touch("Try again");
    assert!(says(&bench, "6 tables are written to"));
}

#[test]
fn a_spreadsheet_is_matched_seen_brought_in_and_taken_back() {
    let place = Place::new();
    let bench = bench(&place);
    let sheet = place.out().join("old.csv");
    let lines = "Mark,Species,Weight g,Weighed on,Shelf\nA1,ash,820,2026-03-01,top\nA2,elm,heavy,2026-03-01,low\n";
    std::fs::write(&sheet, lines).unwrap();
    open(&bench, "import");
    bench.pictures_of("records-import");
    bench.resize(390.0, 2600.0, 1.0);
    bench.touch("Somewhere else");
    bench.write("Where the spreadsheet is", "/nowhere/old.csv");
    bench.touch("Read it");
    assert!(bench.sees("Where the spreadsheet is"));
    bench.write("Where the spreadsheet is", &sheet.to_string_lossy());
    bench.touch("Read it");
    assert!(says(&bench, "Line 3"), "{:#?}", bench.labels());
    bench.pictures_of("records-import-matched");
    bench.resize(390.0, 2600.0, 1.0);
    bench.touch("Shelf");
    bench.pictures_of("records-import-column");
    bench.resize(390.0, 2600.0, 1.0);
    bench.touch("Note for the diary");
    assert!(says(&bench, "Note for the diary"));
    let pieces = |b: &Bench| b.screens.read(|app| app.pieces().count());
    bench.touch(
        &bench
            .labels()
            .into_iter()
            .find(|l| l.starts_with("Bring in"))
            .unwrap(),
    );
    assert!(pieces(&bench) > 1);
    bench.pictures_of("records-import-done");
    bench.resize(390.0, 2600.0, 1.0);
    bench.touch("Take it all back");
    assert_eq!(pieces(&bench), 1);
}

#[test]
fn care_words_are_changed_and_the_usual_ones_come_back() {
    let place = Place::new();
    let bench = bench(&place);
    open(&bench, "care");
    assert!(says(&bench, "direct sun"));
    bench.touch("Change them");
    bench.picture("records-care-form");
    bench.write("How to care for it", "Wax it once a year.");
    bench.touch("Save");
    assert!(says(&bench, "Wax it once a year.") && !says(&bench, "direct sun"));
    bench.touch("Back to the usual words");
    assert!(says(&bench, "direct sun"));
}

#[test]
fn what_another_device_writes_is_shown_and_nothing_typed_is_lost() {
    let place = Place::new();
    let bench = bench(&place);
    let shelf = |d: &str| place.folder.path().join(format!("shelf-{d}"));
    copy_all(&shelf("a"), &shelf("b"));
    let mut other = place.store("b", 2);
    let note = vec![PieceFact::Note("moved to the loft".into())];
    let id = PieceId::new("k07").unwrap();
    let at = moment(START);
    other.append_piece(&id, at, at, note).unwrap();
    open(&bench, "devices");
    assert!(says(&bench, "Only this device has written"));
    bench.touch("What this device is called");
    bench.write("What this device is called", "bench ph");
    copy_all(&shelf("b"), &shelf("a"));
    bench.screens.look_for_others();
    assert!(says(&bench, "From another device: K07 changed"));
    let field = bench.find("What this device is called");
    let typed: Vec<_> = field.iter().filter_map(|e| e.accessible_value()).collect();
    assert!(typed.iter().any(|t| t == "bench ph"), "{typed:?}");
    bench.touch("Save");
    bench.pictures_of("records-devices");
    bench.resize(390.0, 2600.0, 1.0);
    bench.screens.act(Action::HideNotice);
    assert!(!says(&bench, "From another device"));
    bench.screens.act(Action::Open(Page::Diary(id)));
    assert!(says(&bench, "another device ("), "{:#?}", bench.labels());
    bench.pictures_of("records-diary-devices");
    bench.screens.act(RecordsAction::HideArrived.into());
}

#[test]
fn the_computer_says_once_what_is_due_and_a_touch_leads_there() {
    let place = Place::new();
    let bench = bench(&place);
    let said = Rc::new(std::cell::RefCell::new(Vec::new()));
    let heard = said.clone();
    bench.screens.bring_notifier(Box::new(move |reminder, _| {
        heard.borrow_mut().push(reminder);
    }));
    bench.screens.remind();
    bench.screens.remind();
    assert_eq!(said.borrow().len(), 1, "{:?}", said.borrow());
    assert!(said.borrow()[0].title.contains("K07"));
    assert_eq!(said.borrow()[0].piece, PieceId::new("k07").ok());
    bench.days(1);
    bench.set_time("2026-03-13T22:30:00+00:00");
    bench.screens.remind();
    assert_eq!(said.borrow().len(), 1, "quiet at night");
    bench.set_time("2026-03-14T08:30:00+00:00");
    bench.screens.remind();
    assert_eq!(said.borrow().len(), 2);
}
