//! Screens: the window, the app behind it, and the way round: touch, action, state, view, properties.
//!
//! A touch calls a callback of a page's adapter; the page's `connect` turns it into an [`Action`]; [`Screens::act`]
//! lets the app carry it out; [`Screens::refresh`] hands the views of the pages on screen to Slint.

pub mod checklist;
pub mod chrome;
pub mod diary;
pub mod drawing;
pub mod dried_well;
pub mod drying;
pub mod flaws;
pub mod models;
pub mod new_piece;
mod photo_files;
pub mod photos;
mod photos_newest;
pub mod pictures;
pub mod piece;
mod piece_forms;
pub mod pieces;
pub mod plan;
mod rounds;
pub mod shop;
mod thumbs;
pub mod today;
pub mod today_rounds;
pub mod truing;
pub mod visible;
pub mod wall;
pub mod worker;

use std::cell::RefCell;
use std::rc::Rc;

use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::route::Page;
use evenwall_piece::piece::Moment;
use evenwall_ui::AppWindow;
use slint::{ComponentHandle, PlatformError};

/// Tells the time; tests bring their own.
pub type Clock = Box<dyn Fn() -> Moment>;

/// The window and the app behind it.
pub struct Screens {
    window: AppWindow,
    app: RefCell<App>,
    clock: Clock,
    worker: RefCell<worker::Worker>,
    /// Where photos go that are saved out; nothing stands for the usual folder.
    out_folder: RefCell<Option<std::path::PathBuf>>,
    notifier: RefCell<Option<rounds::Notifier>>,
    calendar_behind: std::cell::Cell<bool>,
}

impl Screens {
    /// Makes the window, connects its callbacks and shows the first view.
    ///
    /// # Errors
    /// [`PlatformError`] where no window can be made.
    pub fn new(app: App, clock: Clock) -> Result<Rc<Self>, PlatformError> {
        let window = AppWindow::new()?;
        let screens = Rc::new(Self {
            window,
            app: RefCell::new(app),
            clock,
            worker: RefCell::new(worker::Worker::Inline),
            out_folder: RefCell::default(),
            notifier: RefCell::new(None),
            calendar_behind: std::cell::Cell::new(true),
        });
        chrome::connect(&screens);
        today::connect(&screens);
        pieces::connect(&screens);
        new_piece::connect(&screens);
        piece::connect(&screens);
        wall::connect(&screens);
        flaws::connect(&screens);
        photos::connect(&screens);
        drying::connect(&screens);
        truing::connect(&screens);
        plan::connect(&screens);
        diary::connect(&screens);
        dried_well::connect(&screens);
        shop::connect(&screens);
        checklist::connect(&screens);
        screens.refresh();
        Ok(screens)
    }

    /// The window.
    #[must_use]
    pub fn window(&self) -> &AppWindow {
        &self.window
    }

    /// Reads the app, for tests.
    pub fn read<T>(&self, reader: impl FnOnce(&App) -> T) -> T {
        reader(&self.app.borrow())
    }

    /// Brings other files than those of this computer, for tests.
    pub fn bring_files(&self, files: Box<dyn evenwall_app::files::Files>) {
        self.app.borrow_mut().bring_files(files);
    }

    /// Lets the app carry out an action, then shows what became of it.
    pub fn act(&self, action: Action) {
        self.app.borrow_mut().apply(action, (self.clock)());
        self.calendar_behind.set(true);
        self.refresh();
    }

    /// Hands the next work to the thread beside the screens, where that is free.
    fn send_work(&self) {
        let worker = self.worker.borrow();
        if !worker.is_free() {
            return;
        }
        if let Some(work) = self.app.borrow_mut().next_work((self.clock)()) {
            worker.send(work);
        }
    }

    /// Takes in what a work came to, shows it, and goes on to the next.
    fn work_came(&self, done: evenwall_app::work::Done) {
        self.worker.borrow().became_free();
        let changed = self.app.borrow_mut().work_done(done, (self.clock)());
        if changed {
            self.refresh();
        } else {
            self.send_work();
        }
    }

    /// Runs all works on the spot, for tests and pictures.
    pub fn settle(&self) {
        loop {
            let next = self.app.borrow_mut().next_work((self.clock)());
            let Some(work) = next else { break };
            let done = worker::run(work);
            self.app.borrow_mut().work_done(done, (self.clock)());
        }
        self.refresh();
    }

    /// Shows the present state on the pages that are on screen.
    pub fn refresh(&self) {
        let now = (self.clock)();
        let app = self.app.borrow();
        let tab = app.tab().key();
        let page = app.route().page().map_or("", |p| p.key());
        let window = &self.window;
        // The pages first, so that a page that appears has its content at once.
        for key in [tab, page] {
            match key {
                "today" | "bag-round" | "weigh-round" | "away" | "catch-up" => {
                    today::show(window, &app, key, now)
                }
                "pieces" => pieces::show(window, &app, now),
                "new-piece" => new_piece::show(window, &app, now),
                "piece" | "details" | "stages" | "ending" => piece::show(window, &app, key, now),
                "wall" | "wall-summary" | "outline" => wall::show(window, &app, key, now),
                "flaws" | "flaw" => flaws::show(window, &app, key, now),
                "photos" | "photo" | "compare" => photos::show(window, &app, key, now),
                "drying" | "weigh" => drying::show(window, &app, key, now),
                "truing" | "finishing" => truing::show(window, &app, key, now),
                "plan" | "plan-of" => plan::show(window, &app, now),
                "diary" => diary::show(window, &app, now),
                "dried-well" => dried_well::show(window, &app, now),
                "shop" | "shop-page" => shop::show(window, &app, key, now),
                _ => {}
            }
        }
        if app.route().page() == Some(&Page::ShopPage("checklists")) {
            checklist::show(window, &app);
        }
        photos_newest::show(window, &app, now);
        chrome::show(window, &app, now);
        drop(app);
        self.send_work();
    }

    /// Says where photos go that are saved out, for tests.
    pub fn save_photos_to(&self, folder: std::path::PathBuf) {
        *self.out_folder.borrow_mut() = Some(folder);
    }

    /// Sets theme and text size for a picture; the next refresh goes back to the turner's own.
    pub fn look(&self, theme: evenwall_app::device::ThemeChoice, text_scale: f64) {
        chrome::look(&self.window, theme, text_scale);
    }

    /// Opens the window and runs until it is closed.
    ///
    /// # Errors
    /// [`PlatformError`] where the window cannot be shown.
    pub fn run(self: &Rc<Self>) -> Result<(), PlatformError> {
        *self.worker.borrow_mut() = worker::Worker::beside(self);
        photo_files::accept_drops(self);
        self.send_work();
        let rounds = rounds::start(self);
        let outcome = self.window.run();
        drop(rounds);
        self.keep_calendar();
        outcome
    }
}

/// Makes a callback that turns its argument into an action: `on(&screens, |key: SharedString| Action::...)`.
pub(crate) fn on<A>(
    screens: &Rc<Screens>,
    make: impl Fn(A) -> Option<Action> + 'static,
) -> impl FnMut(A) + 'static {
    let screens = Rc::downgrade(screens);
    move |argument| {
        if let (Some(screens), Some(action)) = (screens.upgrade(), make(argument)) {
            screens.act(action);
        }
    }
}

/// The same for a callback without arguments.
pub(crate) fn on_touch(
    screens: &Rc<Screens>,
    action: impl Fn() -> Action + 'static,
) -> impl FnMut() + 'static {
    let screens = Rc::downgrade(screens);
    move || {
        if let Some(screens) = screens.upgrade() {
            screens.act(action());
        }
    }
}
