//! Photo files: pictures chosen in the system's dialog or dropped on the window, and photos saved out as files of their own.

use std::cell::RefCell;
use std::path::PathBuf;
use std::rc::Rc;
use std::time::Duration;

use evenwall_app::action::Action;
use evenwall_app::photos::PhotosAction;
use evenwall_app::route::Page;
use slint::ComponentHandle;
use slint::winit_030::winit::event::WindowEvent;
use slint::winit_030::{EventResult, WinitWindowAccessor};

use super::{Screens, worker};
use crate::desktop::pictures::{copy_out, out_folder};

/// Ends of names that the dialog shows; what a file really is, its bytes tell.
const ENDS: [&str; 6] = ["jpg", "jpeg", "png", "webp", "heic", "heif"];
/// Files dropped together come one by one: so long is waited for the next.
const TOGETHER: Duration = Duration::from_millis(80);

fn dialog() -> Vec<PathBuf> {
    rfd::FileDialog::new()
        .add_filter("JPEG, PNG, WebP, HEIC", &ENDS)
        .pick_files()
        .unwrap_or_default()
}

fn take(screens: &Screens, files: Vec<PathBuf>) {
    if files.is_empty() {
        return;
    }
    let files = files
        .into_iter()
        .map(|f| f.to_string_lossy().into_owned())
        .collect();
    let action = screens.read(|app| app.photos_for(files));
    screens.act(Action::Photos(action));
}

/// Asks the system for pictures. The window goes on drawing meanwhile; on macOS, where only the thread of the window may ask,
/// the system sees to that.
pub fn choose(screens: &Rc<Screens>) {
    if cfg!(target_os = "macos") {
        take(screens, dialog());
        return;
    }
    let asked = std::thread::Builder::new().name("files".into()).spawn(|| {
        let files = dialog();
        // After the last window closed there is nobody to tell.
        slint::invoke_from_event_loop(move || {
            if let Some(screens) = worker::waiting() {
                take(&screens, files);
            }
        })
        .unwrap_or_default();
    });
    // A system that gives no thread: better a window that waits than a button that does nothing.
    if asked.is_err() {
        take(screens, dialog());
    }
}

/// Takes pictures that are dropped on the window, where the window system sends them: X11, Windows and macOS; on Wayland
/// the window toolkit does not pass them on.
pub fn accept_drops(screens: &Rc<Screens>) {
    let dropped: Rc<RefCell<Vec<PathBuf>>> = Rc::default();
    let timer = Rc::new(slint::Timer::default());
    let weak = Rc::downgrade(screens);
    screens
        .window
        .window()
        .on_winit_window_event(move |_, event| {
            if let WindowEvent::DroppedFile(file) = event {
                dropped.borrow_mut().push(file.clone());
                let (dropped, weak) = (Rc::clone(&dropped), weak.clone());
                timer.start(slint::TimerMode::SingleShot, TOGETHER, move || {
                    if let Some(screens) = weak.upgrade() {
                        let files = dropped.take();
                        take(&screens, files);
                    }
                });
            }
            EventResult::Propagate
        });
}

/// Copies the photo on the page into the picture folder as a file of its own, and says where it went.
pub fn save_out(screens: &Rc<Screens>) {
    let out = screens.read(|app| match app.route().page()? {
        Page::Photo(piece, photo) => app.photos_out(piece, photo),
        _ => None,
    });
    let Some(out) = out else { return };
    let folder = screens
        .out_folder
        .borrow()
        .clone()
        .unwrap_or_else(out_folder);
    let went = copy_out(&out.from, &folder, &out.name).map(|file| file.display().to_string());
    screens.act(Action::Photos(PhotosAction::Out(went)));
}
