//! Work beside the screens: what takes longer than a touch may wait, as a closure that any thread can run, and its outcome.
//!
//! [`App::next_work`] hands out the most wanted piece of work, one of a key at a time; whoever runs it gives what comes out to
//! [`App::work_done`]. Between the two nothing waits: pages show what was known last. The app knows no threads; the glue
//! brings one (`src/ui/worker.rs`), tests run it on the spot.

mod control;

use std::collections::BTreeMap;

use evenwall_piece::piece::Moment;

use crate::app::App;
use crate::forecasting::Foreseen;
use crate::photos::{KEYS as PHOTOS, PhotosOutcome};

pub use control::Control;

/// What a piece of work came to.
#[derive(Debug)]
pub enum Outcome {
    /// The forecast of a piece.
    Forecast(Box<Foreseen>),
    /// Something about photos.
    Photos(Box<PhotosOutcome>),
    /// It was given up because it is no longer wanted.
    GivenUp,
    /// It failed; a sentence why, or nothing where only a fault of the program can be why.
    Failed(String),
}

type Run = Box<dyn FnOnce(&Control) -> Outcome + Send>;

/// Something to be done beside the screens.
pub struct Work {
    /// What it is for: one at a time of each key.
    pub key: String,
    /// Which of the works for this key; an outcome of an older one is dropped.
    pub generation: u64,
    control: Control,
    run: Run,
}

/// A work that was run.
#[derive(Debug)]
pub struct Done {
    /// Its key.
    pub key: String,
    /// Its generation.
    pub generation: u64,
    /// What it came to.
    pub outcome: Outcome,
}

impl Work {
    /// What ends it early and tells how far it is; a clone stays with whoever started it.
    #[must_use]
    pub fn control(&self) -> Control {
        self.control.clone()
    }

    /// Runs it, wherever that is.
    #[must_use]
    pub fn run(self) -> Done {
        let outcome = (self.run)(&self.control);
        Done {
            key: self.key,
            generation: self.generation,
            outcome,
        }
    }
}

/// What the app remembers of works under way.
#[derive(Debug, Default)]
pub struct WorkState {
    generation: u64,
    running: BTreeMap<String, (u64, Control)>,
}

impl WorkState {
    /// A new work for a key; what runs for the same key is called off.
    pub(crate) fn begin(&mut self, key: String, run: Run) -> Work {
        self.call_off(&key);
        self.generation += 1;
        let control = Control::default();
        self.running
            .insert(key.clone(), (self.generation, control.clone()));
        Work {
            key,
            generation: self.generation,
            control,
            run,
        }
    }

    /// True while a work for this key is under way.
    pub(crate) fn is_running(&self, key: &str) -> bool {
        self.running.contains_key(key)
    }

    /// Calls off what runs for a key: its outcome will be dropped.
    pub(crate) fn call_off(&mut self, key: &str) {
        if let Some((_, control)) = self.running.remove(key) {
            control.cancel();
        }
    }

    /// True where an outcome is that of the last work for its key, which ends with it.
    fn ends(&mut self, key: &str, generation: u64) -> bool {
        let current = self
            .running
            .get(key)
            .is_some_and(|(last, _)| *last == generation);
        if current {
            self.running.remove(key);
        }
        current
    }
}

impl App {
    /// The most wanted work that nobody runs yet; `None` where all is done. Works whose inputs changed are called off first.
    #[must_use]
    pub fn next_work(&mut self, now: Moment) -> Option<Work> {
        // Whoever touched a picture waits for it.
        self.photos_work().or_else(|| self.forecast_work(now))
    }

    /// Takes in what a work came to. True where something on screen may have changed; what is out of date is dropped.
    pub fn work_done(&mut self, done: Done, now: Moment) -> bool {
        if !self.work.ends(&done.key, done.generation) {
            return false;
        }
        match done.outcome {
            Outcome::Photos(outcome) => self.photos_came(*outcome, now),
            _ if done.key.starts_with(PHOTOS) => self.photos_failed(&done.key),
            outcome => self.forecast_done(&done.key, outcome, now),
        }
    }

    /// How far the work of a key is: done, of; `None` where none runs.
    #[must_use]
    pub fn work_progress(&self, key: &str) -> Option<(u32, u32)> {
        self.work.running.get(key).map(|(_, c)| c.how_far())
    }
}
