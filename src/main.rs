//! Evenwall in a window: opens a shelf (or a copy of the demo) and shows its screens. `evenwall reckon` needs no window.

use std::path::PathBuf;
use std::process::ExitCode;
use std::sync::Arc;

use clap::{Parser, Subcommand};
use evenwall::desktop::pictures::DesktopPictures;
use evenwall::desktop::{self, files, folders, libraries, questions, verify};
use evenwall::ui::Screens;
use evenwall_app::app::App;
use evenwall_app::demo;
use evenwall_app::records::due;
use evenwall_app::shelf_store::ShelfStore;
use evenwall_shelf::disk::{Disk, RealDisk};
use evenwall_shelf::throwaway::ThrowawayDisk;

/// A bench companion for turners of green hollow vessels.
#[derive(Parser)]
#[command(version, about, args_conflicts_with_subcommands = true)]
struct Asked {
    /// Opens the shelf in this folder instead of the usual one; an empty folder becomes a new shelf.
    #[arg(long, value_name = "DIR", global = true)]
    shelf: Option<PathBuf>,
    /// Opens a copy of an invented shelf in a temporary folder; nothing of it is kept.
    #[arg(long, conflicts_with = "shelf")]
    demo: bool,
    #[command(subcommand)]
    command: Option<Command>,
}

/// What it does without a window.
#[derive(Subcommand)]
enum Command {
    /// Answers questions in JSON by the sums of the screens; src/reckon/QUESTIONS.md lists them all.
    Reckon {
        /// The questions; left out, or "-", they are read from standard input.
        #[arg(value_name = "FILE")]
        file: Option<PathBuf>,
    },
    /// Reads a whole shelf and reports every problem with its file and line; repairs nothing. Ends with 0 where it is
    /// clean, 1 where there are problems, 2 where it cannot be read.
    Verify,
    /// Says what is due, without a window and while the shelf may be open elsewhere. Ends with 0 where nothing is due, 3 where
    /// something is due today, 4 where something is overdue, 1 where the shelf cannot be read.
    Due {
        /// As JSON.
        #[arg(long)]
        json: bool,
        /// Lists what comes up within so many days as well.
        #[arg(long, value_name = "DAYS", default_value_t = 7)]
        within: u32,
    },
}

#[allow(clippy::print_stderr)] // a program says on standard error why it did not start
fn main() -> ExitCode {
    let asked = Asked::parse();
    let outcome = match asked.command {
        Some(Command::Reckon { file }) => questions::answer(file.as_deref()),
        Some(Command::Verify) => return verify::run(asked.shelf),
        Some(Command::Due { json, within }) => return due(asked.shelf, json, within),
        None => run(asked),
    };
    match outcome {
        Ok(()) => ExitCode::SUCCESS,
        Err(sentence) => {
            eprintln!("{sentence}");
            ExitCode::FAILURE
        }
    }
}

#[allow(clippy::print_stdout, clippy::print_stderr)] // it answers on standard output
fn due(shelf: Option<PathBuf>, json: bool, within: u32) -> ExitCode {
    let usual = folders::usual();
    let device = usual.as_ref().map(|f| f.device.clone()).unwrap_or_default();
    let Some(shelf) = shelf.or_else(|| usual.map(|f| f.shelf)) else {
        eprintln!(
            "The system names no home folder. Say where the shelf is: evenwall --shelf DIR due"
        );
        return ExitCode::from(due::FAILED);
    };
    let disk = Arc::new(RealDisk::new());
    let (text, status) = due::run(disk, &shelf, &device, desktop::now(), within, json);
    if status == due::FAILED {
        eprint!("{text}");
    } else {
        print!("{text}");
    }
    ExitCode::from(status)
}

fn run(asked: Asked) -> Result<(), String> {
    let now = desktop::now();
    let seed =
        desktop::random::seed().map_err(|e| format!("The system gives no random numbers: {e}"))?;
    // Lives until the window closes: the demo's copy goes with it.
    let mut temporary = None;
    let folders = if asked.demo {
        let folder = tempfile::Builder::new()
            .prefix("evenwall-demo-")
            .tempdir()
            .map_err(|e| format!("No temporary folder can be made for the demo: {e}"))?;
        let folders = folders::Folders {
            shelf: folder.path().join("shelf"),
            device: folder.path().join("device"),
        };
        temporary = Some(folder);
        folders
    } else {
        let usual = folders::usual();
        match (asked.shelf, usual) {
            (Some(shelf), Some(usual)) => folders::Folders {
                shelf,
                device: usual.device,
            },
            // The device's own data must not lie in a shelf that a sync service carries to other devices.
            (Some(_), None) => {
                return Err(
                    "The system names no home folder, so this device has no place for its own data. Set HOME and start again."
                        .into(),
                );
            }
            (None, Some(usual)) => usual,
            (None, None) => {
                return Err(
                    "The system names no home folder. Say where the shelf is: evenwall --shelf DIR"
                        .into(),
                );
            }
        }
    };
    // The demo's copy goes with the window: nothing of it need survive a crash.
    let disk: Arc<dyn Disk> = if asked.demo {
        Arc::new(ThrowawayDisk::default())
    } else {
        Arc::new(RealDisk::new())
    };
    let random = Box::new(desktop::random::bits);
    let mut store = ShelfStore::open_on(disk, &folders.shelf, &folders.device, seed, random)
        .map_err(|e| e.to_string())?;
    if asked.demo {
        demo::fill(&mut store, now).map_err(|e| e.to_string())?;
    }
    let mut app = App::open(Box::new(store), asked.demo, now).map_err(|e| e.to_string())?;
    app.bring_files(Box::new(files::Downloads));
    app.photos_use(Arc::new(DesktopPictures));
    if let Some(sentence) = libraries::what_is_missing() {
        return Err(sentence);
    }
    let screens = Screens::new(app, Box::new(desktop::now))
        .map_err(|e| format!("No window can be opened: {e}"))?;
    screens.bring_notifier(Box::new(desktop::notify::say));
    let outcome = screens
        .run()
        .map_err(|e| format!("The window stopped: {e}"));
    drop(screens);
    drop(temporary);
    outcome
}
