//! Benchmarks: opening a shelf of 1,000 pieces with 200 lines each, and appending one line against a bare write and sync.
//!
//! Files are real ones in the system's temporary folder, or in the folder that `EVENWALL_BENCH` names. First prints the
//! figures that have aims, with the syncs counted in the same run; then divan's.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::print_stdout,
    clippy::disallowed_methods
)]

use std::fs::{File, OpenOptions};
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Arc, LazyLock};
use std::time::{Duration, Instant};

use chrono::{DateTime, FixedOffset};
use divan::{Bencher, black_box};
use evenwall_piece::fact::{Clock, Measure, PieceFact, Reading, StationRef};
use evenwall_piece::ids::PieceId;
use evenwall_piece::vocabulary::{BagFeel, Taken};
use evenwall_shelf::disk::{Disk, Entry, Lock, RealDisk};
use evenwall_shelf::shelf::Shelf;
use tempfile::TempDir;

const PIECES: usize = 1000;
const LINES: usize = 200;

/// The real disk, with its syncs counted.
#[derive(Default)]
struct Counting {
    disk: RealDisk,
    file_syncs: AtomicUsize,
    folder_syncs: AtomicUsize,
}

impl Counting {
    fn take(&self) -> (usize, usize) {
        (
            self.file_syncs.swap(0, Ordering::Relaxed),
            self.folder_syncs.swap(0, Ordering::Relaxed),
        )
    }
}

/// A disk that forwards all but the syncs.
macro_rules! forward_to {
    ($real:tt) => {
        fn read(&self, path: &Path) -> io::Result<Vec<u8>> {
            self.$real.read(path)
        }
        fn append(&self, path: &Path, bytes: &[u8]) -> io::Result<()> {
            self.$real.append(path, bytes)
        }
        fn write(&self, path: &Path, bytes: &[u8]) -> io::Result<()> {
            self.$real.write(path, bytes)
        }
        fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
            self.$real.rename(from, to)
        }
        fn remove(&self, path: &Path) -> io::Result<()> {
            self.$real.remove(path)
        }
        fn create_folder(&self, path: &Path) -> io::Result<()> {
            self.$real.create_folder(path)
        }
        fn list(&self, path: &Path) -> io::Result<Vec<Entry>> {
            self.$real.list(path)
        }
        fn len(&self, path: &Path) -> io::Result<u64> {
            self.$real.len(path)
        }
        fn exists(&self, path: &Path) -> io::Result<bool> {
            self.$real.exists(path)
        }
        fn canonical(&self, path: &Path) -> io::Result<PathBuf> {
            self.$real.canonical(path)
        }
        fn lock(&self, path: &Path) -> io::Result<Lock> {
            self.$real.lock(path)
        }
    };
}

impl Disk for Counting {
    forward_to!(disk);
    fn sync_file(&self, path: &Path) -> io::Result<()> {
        self.file_syncs.fetch_add(1, Ordering::Relaxed);
        self.disk.sync_file(path)
    }
    fn sync_folder(&self, path: &Path) -> io::Result<()> {
        self.folder_syncs.fetch_add(1, Ordering::Relaxed);
        self.disk.sync_folder(path)
    }
}

impl Disk for Hasty {
    forward_to!(0);
    fn sync_file(&self, _: &Path) -> io::Result<()> {
        Ok(())
    }
    fn sync_folder(&self, _: &Path) -> io::Result<()> {
        Ok(())
    }
}

fn when() -> DateTime<FixedOffset> {
    DateTime::parse_from_rfc3339("2026-03-14T09:30:00+01:00").unwrap()
}

fn fact(n: usize) -> PieceFact {
    match n % 4 {
        0 => PieceFact::Look {
            feel: Some(BagFeel::Damp),
            mould: false,
            crack: false,
        },
        1 => PieceFact::Weighed {
            mass_g: Measure {
                value: 1250.0 - n as f64,
                typed: "1250 g".into(),
            },
            tare_g: 0.0,
        },
        2 => PieceFact::Note("turned the bag, moved it to the lower board".into()),
        _ => PieceFact::Reading(Reading {
            station: StationRef::Wall((n % 7) as u8 + 1),
            position: Clock::TWELVE,
            wall_mm: Some(Measure {
                value: 11.5,
                typed: "11.5".into(),
            }),
            feel: None,
            taken: Taken::Callipers,
        }),
    }
}

fn id(piece: usize) -> PieceId {
    PieceId::new(&format!("piece-{piece:04}")).unwrap()
}

fn temp() -> TempDir {
    match std::env::var_os("EVENWALL_BENCH") {
        Some(folder) => tempfile::tempdir_in(folder).unwrap(),
        None => tempfile::tempdir().unwrap(),
    }
}

/// The real disk, with syncs left out, to fill a shelf in seconds.
struct Hasty(RealDisk);

/// A full shelf, nine lines in ten by this device, so that its record is compared with every journal.
static FULL: LazyLock<TempDir> = LazyLock::new(|| {
    let temp = temp();
    let fill = |data: &str, seed, lines: &mut dyn FnMut(usize) -> bool| {
        let disk: Arc<dyn Disk> = Arc::new(Hasty(RealDisk::new()));
        let mut shelf = Shelf::open(
            disk,
            &temp.path().join("shelf"),
            &temp.path().join(data),
            [seed; 16],
        )
        .unwrap();
        for piece in 0..PIECES {
            for line in (0..LINES).filter(|l| lines(*l)) {
                shelf
                    .append_piece(&id(piece), when(), when(), vec![fact(line)])
                    .unwrap();
            }
        }
    };
    fill("data", 1, &mut |line| line % 10 != 9);
    fill("other data", 2, &mut |line| line % 10 == 9);
    temp
});

fn read_all() -> usize {
    let temp = &*FULL;
    let disk: Arc<dyn Disk> = Arc::new(RealDisk::new());
    let mut shelf = Shelf::open(
        disk,
        &temp.path().join("shelf"),
        &temp.path().join("data"),
        [1; 16],
    )
    .unwrap();
    let all = shelf.load_everything().unwrap();
    assert_eq!(shelf.notices().count(), 0);
    all.pieces.iter().map(|(_, lines)| lines.len()).sum()
}

#[divan::bench(sample_count = 20, sample_size = 1)]
fn open_and_read_1000_pieces_of_200_lines() {
    assert_eq!(black_box(read_all()), PIECES * LINES);
}

#[divan::bench(sample_count = 300, sample_size = 1)]
fn append_one_line(bencher: Bencher) {
    let temp = temp();
    let disk: Arc<dyn Disk> = Arc::new(RealDisk::new());
    let mut shelf = Shelf::open(
        disk,
        &temp.path().join("s"),
        &temp.path().join("d"),
        [1; 16],
    )
    .unwrap();
    let mut n = 0;
    bencher.bench_local(|| {
        n += 1;
        shelf
            .append_piece(&id(0), when(), when(), vec![fact(n)])
            .unwrap()
    });
}

#[divan::bench(sample_count = 300, sample_size = 1)]
fn bare_write_and_sync(bencher: Bencher) {
    let temp = temp();
    let path = temp.path().join("f");
    bencher.bench_local(|| bare(&path));
}

/// What any program must do to store 180 bytes: open, write, sync.
fn bare(path: &Path) {
    let mut file = OpenOptions::new()
        .append(true)
        .create(true)
        .open(path)
        .unwrap();
    file.write_all(&[b'x'; 180]).unwrap();
    file.sync_data().unwrap();
}

fn median(mut times: Vec<Duration>) -> Duration {
    times.sort();
    times[times.len() / 2]
}

fn mean(times: &[Duration]) -> Duration {
    times.iter().sum::<Duration>() / times.len() as u32
}

fn figures() {
    let temp = temp();
    let disk = Arc::new(Counting::default());
    let mut shelf = Shelf::open(
        Arc::clone(&disk) as Arc<dyn Disk>,
        &temp.path().join("s"),
        &temp.path().join("d"),
        [1; 16],
    )
    .unwrap();
    shelf
        .append_piece(&id(0), when(), when(), vec![PieceFact::Created])
        .unwrap();
    let bare_path = temp.path().join("bare");
    bare(&bare_path);
    File::open(temp.path()).unwrap().sync_all().unwrap();
    disk.take();
    let (mut ours, mut bares) = (Vec::new(), Vec::new());
    let rounds = 320;
    for n in 0..rounds {
        let start = Instant::now();
        shelf
            .append_piece(&id(0), when(), when(), vec![fact(n)])
            .unwrap();
        ours.push(start.elapsed());
        let start = Instant::now();
        bare(&bare_path);
        bares.push(start.elapsed());
    }
    let (files, folders) = disk.take();
    let ratio = |a: Duration, b: Duration| a.as_secs_f64() / b.as_secs_f64();
    println!(
        "append, {rounds} lines: {files} file syncs, {folders} folder syncs (bare: {rounds} file syncs)"
    );
    println!(
        "  mean   {:?}, bare {:?}: {:.2} times (aim: at most 1.5)",
        mean(&ours),
        mean(&bares),
        ratio(mean(&ours), mean(&bares))
    );
    let (ours, bares) = (median(ours), median(bares));
    println!(
        "  median {ours:?}, bare {bares:?}: {:.2} times",
        ratio(ours, bares)
    );

    shelf
        .append_piece(&id(1), when(), when(), vec![PieceFact::Created])
        .unwrap();
    let (files, folders) = disk.take();
    println!("first line of a new piece: {files} file syncs, {folders} folder syncs");

    read_all();
    let times = (0..9).map(|_| {
        let start = Instant::now();
        black_box(read_all());
        start.elapsed()
    });
    println!(
        "open and read {PIECES} pieces x {LINES} lines: median {:?} (aim: under 500 ms)",
        median(times.collect())
    );
}

fn main() {
    if !std::env::args().any(|a| a == "--test" || a == "--list") {
        figures();
    }
    divan::main();
}
