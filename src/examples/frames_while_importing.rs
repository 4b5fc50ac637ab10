//! Prints the longest gap between two frames while the pictures named are taken in, into a shelf in a temporary folder:
//! `cargo run --release --example frames_while_importing -- IMG_1.jpg IMG_2.jpg`. Needs a display. A figure, never a verdict.
#![allow(clippy::print_stdout)] // a figure to read

use std::cell::{Cell, RefCell};
use std::error::Error;
use std::rc::Rc;
use std::sync::Arc;
use std::time::{Duration, Instant};

use evenwall::desktop::pictures::DesktopPictures;
use evenwall::desktop::{self, random};
use evenwall::ui::Screens;
use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::photos::PhotosAction;
use evenwall_app::shelf_store::ShelfStore;
use evenwall_app::store::Store;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::PieceId;
use evenwall_piece::photo::PhotoOn;
use slint::{ComponentHandle, Timer, TimerMode};

/// A frame is asked for this often; what a screen of 60 Hz shows.
const FRAME: Duration = Duration::from_millis(16);

/// The longest gap and how many frames there were.
fn gaps(frames: &[Instant]) -> (Duration, usize) {
    let gap = |pair: &[Instant]| pair[1] - pair[0];
    let longest = frames.windows(2).map(gap).max();
    (longest.unwrap_or_default(), frames.len())
}

fn main() -> Result<(), Box<dyn Error>> {
    let files: Vec<String> = std::env::args().skip(1).collect();
    if files.is_empty() {
        return Err("Name some picture files.".into());
    }
    let folder = tempfile::tempdir()?;
    let (shelf, device) = (folder.path().join("shelf"), folder.path().join("device"));
    let seed = random::seed().map_err(|e| e.to_string())?;
    let mut store = ShelfStore::open(&shelf, &device, seed, Box::new(random::bits))
        .map_err(|e| e.to_string())?;
    let piece = PieceId::new("k07")?;
    let now = desktop::now();
    store
        .append_piece(&piece, now, now, vec![PieceFact::Created])
        .map_err(|e| e.to_string())?;
    let mut app = App::open(Box::new(store), false, now).map_err(|e| e.to_string())?;
    app.photos_use(Arc::new(DesktopPictures));
    let screens = Screens::new(app, Box::new(desktop::now))?;

    let frames = Rc::new(RefCell::new(Vec::new()));
    let begun: Rc<Cell<Option<Instant>>> = Rc::default();
    let opened = Instant::now();
    let (weak, kept, start) = (Rc::downgrade(&screens), frames.clone(), begun.clone());
    let timer = Timer::default();
    // Every turn of the window's thread draws a frame; whatever holds it up shows as a gap.
    timer.start(TimerMode::Repeated, FRAME, move || {
        let Some(screens) = weak.upgrade() else {
            return;
        };
        screens.window().window().request_redraw();
        kept.borrow_mut().push(Instant::now());
        let running = screens.read(|app| app.photos_importing_view().is_some());
        match start.get() {
            // The window has settled.
            None if opened.elapsed() > Duration::from_secs(2) => {
                let (longest, count) = gaps(&kept.borrow());
                println!("before: {count} frames, longest gap {longest:?}");
                kept.borrow_mut().clear();
                start.set(Some(Instant::now()));
                let import = PhotosAction::Import(piece.clone(), PhotoOn::Portrait, files.clone());
                screens.act(Action::Photos(import));
            }
            Some(_) if !running => {
                slint::quit_event_loop().unwrap_or_default();
            }
            _ => {}
        }
    });
    screens.run()?;
    let (longest, count) = gaps(&frames.borrow());
    let took = begun.get().map(|b| b.elapsed()).unwrap_or_default();
    let photos = screens.read(|app| {
        let pieces = app.pieces().map(|p| p.photos.len());
        pieces.sum::<usize>()
    });
    println!("importing {photos} photos: {took:?}, {count} frames, longest gap {longest:?}");
    Ok(())
}
