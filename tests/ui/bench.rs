//! Bench: the app with its real screens, a clock that the test moves, and hands that touch by accessible label.

use std::cell::Cell;
use std::path::PathBuf;
use std::rc::Rc;
use std::sync::Arc;

use chrono::{DateTime, FixedOffset};
use evenwall::desktop::pictures::DesktopPictures;
use evenwall::ui::Screens;
use evenwall_app::app::App;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::piece::Moment;
use i_slint_backend_testing::{
    AccessibleRole, ElementHandle, ElementQuery, TestingBackend, TestingBackendOptions,
};
use slint::platform::{Key, PointerEventButton, WindowEvent};
use slint::{ComponentHandle, LogicalSize, PhysicalSize, SharedString};

/// The day on which most tests begin: a Thursday.
pub const START: &str = "2026-03-12T08:42:00+00:00";

/// A moment from RFC 3339 text.
pub fn moment(text: &str) -> Moment {
    DateTime::parse_from_rfc3339(text).expect("a test writes its moments right")
}

/// Sizes at which pictures are taken: name, width, height.
pub const SIZES: [(&str, f32, f32); 4] = [
    ("phone", 390.0, 844.0),
    ("small", 360.0, 640.0),
    ("landscape", 844.0, 390.0),
    ("tablet", 1180.0, 820.0),
];

/// The app with its screens.
pub struct Bench {
    /// The screens.
    pub screens: Rc<Screens>,
    time: Rc<Cell<DateTime<FixedOffset>>>,
}

fn platform() {
    let backend = TestingBackend::new(TestingBackendOptions {
        mock_time: true,
        threading: false,
        renderer_name: Some("software".into()),
    });
    // A second bench in one test finds the platform in place.
    drop(slint::platform::set_platform(Box::new(backend)));
}

impl Bench {
    /// An empty shelf in memory on a phone.
    pub fn empty() -> Self {
        Self::on(Box::new(MemoryStore::default()))
    }

    /// A given store on a phone.
    pub fn on(store: Box<dyn Store>) -> Self {
        Self::at(store, moment(START), false)
    }

    /// A given store at a given moment.
    pub fn at(store: Box<dyn Store>, start: Moment, demo: bool) -> Self {
        platform();
        let mut app = App::open(store, demo, start).expect("the store opens");
        app.photos_use(Arc::new(DesktopPictures));
        let time = Rc::new(Cell::new(start));
        let clock = time.clone();
        let screens =
            Screens::new(app, Box::new(move || clock.get())).expect("a window can be made");
        screens.window().show().expect("the window shows");
        let bench = Self { screens, time };
        bench.resize(390.0, 844.0, 1.0);
        bench
    }

    /// The present moment.
    pub fn now(&self) -> Moment {
        self.time.get()
    }

    /// Moves the clock on by minutes, hours or days.
    pub fn wait(&self, span: chrono::Duration) {
        self.time.set(self.time.get() + span);
        self.screens.refresh();
    }

    /// Lets the sheet of the newest pictures look again, as its timer does.
    pub fn look_for_new_pictures(&self) {
        let sheet = self.screens.window().global::<evenwall_ui::NewestAdapter>();
        sheet.invoke_look_again();
        self.settle();
    }

    /// All elements with this role.
    pub fn find_all(&self, role: AccessibleRole) -> Vec<ElementHandle> {
        ElementQuery::from_root(self.screens.window())
            .match_accessible_role(role)
            .find_all()
    }

    /// Runs the works beside the screens on the spot, until none is left.
    pub fn settle(&self) {
        self.screens.settle();
    }

    /// Moves the clock on by whole days.
    pub fn days(&self, days: i64) {
        self.wait(chrono::Duration::days(days));
    }

    /// Sets the clock.
    pub fn set_time(&self, text: &str) {
        self.time.set(moment(text));
        self.screens.refresh();
    }

    /// Sets the window's size in logical pixels and its scale.
    pub fn resize(&self, width: f32, height: f32, scale: f32) {
        let window = self.screens.window().window();
        window.dispatch_event(WindowEvent::ScaleFactorChanged {
            scale_factor: scale,
        });
        window.set_size(PhysicalSize::new(
            (width * scale) as u32,
            (height * scale) as u32,
        ));
        window.dispatch_event(WindowEvent::Resized {
            size: LogicalSize::new(width, height),
        });
        // What follows the size by a handler follows at once, as it would before the next frame.
        slint::platform::update_timers_and_animations();
    }

    /// All elements with this accessible label.
    pub fn find(&self, label: &str) -> Vec<ElementHandle> {
        ElementHandle::find_by_accessible_label(self.screens.window(), label).collect()
    }

    /// True where something on screen has this label.
    pub fn sees(&self, label: &str) -> bool {
        !self.find(label).is_empty()
    }

    /// All labels and texts on screen, for messages and for looking for a part.
    pub fn labels(&self) -> Vec<String> {
        ElementQuery::from_root(self.screens.window())
            .find_all()
            .iter()
            .filter_map(|e| e.accessible_label())
            .map(|l| l.to_string())
            .filter(|l| !l.is_empty())
            .collect()
    }

    /// True where some label holds this text.
    pub fn reads(&self, part: &str) -> bool {
        self.labels().iter().any(|l| l.contains(part))
    }

    /// Touches the one element with this label, by its accessible action.
    pub fn touch(&self, label: &str) {
        let found = self.touchable(label);
        assert!(
            !found.is_empty(),
            "nothing to touch is called '{label}'; there is: {:#?}",
            self.labels()
        );
        found[0].invoke_accessible_default_action();
    }

    /// Touches the last element with this label: what lies over the page comes last.
    pub fn touch_last(&self, label: &str) {
        let found = self.touchable(label);
        let last = found
            .last()
            .unwrap_or_else(|| panic!("no '{label}'; there is: {:#?}", self.labels()));
        last.invoke_accessible_default_action();
    }

    fn touchable(&self, label: &str) -> Vec<ElementHandle> {
        let found = self.find(label);
        let touch = |e: &ElementHandle| {
            matches!(
                e.accessible_role(),
                Some(
                    AccessibleRole::Button
                        | AccessibleRole::Checkbox
                        | AccessibleRole::Switch
                        | AccessibleRole::RadioButton
                        | AccessibleRole::Tab
                        | AccessibleRole::ListItem
                )
            )
        };
        found.into_iter().filter(touch).collect()
    }

    /// Presses the one element with this label with a finger, in the middle of it.
    pub fn press(&self, label: &str) {
        let found = self.touchable(label);
        assert!(
            !found.is_empty(),
            "nothing to press is called '{label}'; there is: {:#?}",
            self.labels()
        );
        found[0].mock_single_click(PointerEventButton::Left);
    }

    /// Types into the field with this label.
    pub fn write(&self, label: &str, text: &str) {
        let field = self
            .find(label)
            .into_iter()
            .find(|e| e.accessible_role() == Some(AccessibleRole::TextInput))
            .unwrap_or_else(|| {
                panic!(
                    "no field is called '{label}'; there is: {:#?}",
                    self.labels()
                )
            });
        field.set_accessible_value(text);
    }

    /// Types on the hardware keyboard.
    pub fn keys(&self, text: &str) {
        for c in text.chars() {
            self.key(c.to_string().into());
        }
    }

    /// Presses Enter.
    pub fn enter(&self) {
        self.key(Key::Return.into());
    }

    /// Presses Tab.
    pub fn tab(&self) {
        self.key(Key::Tab.into());
    }

    /// Presses a key.
    pub fn key(&self, text: SharedString) {
        let window = self.screens.window().window();
        window.dispatch_event(WindowEvent::KeyPressed { text: text.clone() });
        window.dispatch_event(WindowEvent::KeyReleased { text });
    }

    /// Where pictures go.
    pub fn pictures() -> PathBuf {
        let target = std::env::var_os("CARGO_TARGET_DIR").map_or_else(
            || PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("target"),
            PathBuf::from,
        );
        target.join("pictures")
    }

    /// Saves what is on screen as a PNG.
    pub fn picture(&self, name: &str) {
        let pixels = self
            .screens
            .window()
            .window()
            .take_snapshot()
            .expect("the software renderer draws");
        let folder = Self::pictures();
        std::fs::create_dir_all(&folder).expect("the picture folder can be made");
        image::save_buffer(
            folder.join(format!("{name}.png")),
            pixels.as_bytes(),
            pixels.width(),
            pixels.height(),
            image::ColorType::Rgba8,
        )
        .expect("the picture can be saved");
    }

    /// Saves what is on screen at every size, light and dark, and with large text on phones.
    pub fn pictures_of(&self, name: &str) {
        use evenwall_app::device::ThemeChoice;
        for (size, width, height) in SIZES {
            self.resize(width, height, 2.0);
            let looks: &[(&str, ThemeChoice, f64)] = match size {
                "phone" => &[
                    ("light", ThemeChoice::Light, 1.0),
                    ("dark", ThemeChoice::Dark, 1.0),
                    ("large", ThemeChoice::Light, 1.3),
                ],
                "small" => &[("huge", ThemeChoice::Light, 1.6)],
                "tablet" => &[
                    ("light", ThemeChoice::Light, 1.0),
                    ("dark", ThemeChoice::Dark, 1.0),
                ],
                _ => &[("light", ThemeChoice::Light, 1.0)],
            };
            for (look, theme, scale) in looks {
                self.screens.look(*theme, *scale);
                self.picture(&format!("{name}-{size}-{look}"));
            }
        }
        self.screens.refresh();
        self.resize(390.0, 844.0, 1.0);
    }
}
