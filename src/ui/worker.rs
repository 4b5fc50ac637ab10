//! Worker: runs the app's works beside the screens, one at a time: on a thread of its own in the program, on the spot in tests.
//!
//! The thread sends what came out through the event loop, so that the app is only ever touched by the thread of the screens.

use std::cell::RefCell;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::rc::Rc;
use std::sync::mpsc::{Sender, channel};

use evenwall_app::work::{Done, Outcome, Work};

use super::Screens;

thread_local! {
    /// The screens that wait for outcomes; only the thread of the screens has them.
    static WAITING: RefCell<std::rc::Weak<Screens>> = const { RefCell::new(std::rc::Weak::new()) };
}

/// Where works are run.
pub enum Worker {
    /// Nowhere: they wait until [`Screens::settle`] runs them on the spot.
    Inline,
    /// On one thread beside the screens.
    Thread(Thread),
}

/// The thread beside the screens; it ends when this is dropped.
pub struct Thread {
    send: Sender<Work>,
    busy: std::cell::Cell<bool>,
}

/// Runs a work; a fault in it is an outcome too, and never the end of the program.
pub(super) fn run(work: Work) -> Done {
    let (key, generation) = (work.key.clone(), work.generation);
    catch_unwind(AssertUnwindSafe(|| work.run())).unwrap_or(Done {
        key,
        generation,
        outcome: Outcome::Failed(String::new()),
    })
}

impl Worker {
    /// A thread beside the screens; works wait for [`Screens::settle`] where the system gives no thread.
    pub(super) fn beside(screens: &Rc<Screens>) -> Self {
        WAITING.with(|w| *w.borrow_mut() = Rc::downgrade(screens));
        let (send, receive) = channel::<Work>();
        let started = std::thread::Builder::new()
            .name("works".into())
            .spawn(move || {
                while let Ok(work) = receive.recv() {
                    let done = run(work);
                    // After the last window closed there is nobody to tell.
                    if slint::invoke_from_event_loop(move || deliver(done)).is_err() {
                        break;
                    }
                }
            });
        match started {
            Ok(_) => Self::Thread(Thread {
                send,
                busy: std::cell::Cell::new(false),
            }),
            Err(_) => Self::Inline,
        }
    }

    /// Sends a work off where the thread is free. Gives it back where it cannot be run beside the screens.
    pub(super) fn is_free(&self) -> bool {
        matches!(self, Self::Thread(t) if !t.busy.get())
    }

    pub(super) fn send(&self, work: Work) {
        if let Self::Thread(thread) = self {
            thread.busy.set(thread.send.send(work).is_ok());
        }
    }

    pub(super) fn became_free(&self) {
        if let Self::Thread(thread) = self {
            thread.busy.set(false);
        }
    }
}

/// The screens that wait for what other threads bring; only on the thread of the screens.
pub(super) fn waiting() -> Option<Rc<Screens>> {
    WAITING.with(|w| w.borrow().upgrade())
}

/// From any thread: lets the app carry out an action on the thread of the screens, where the window is still there.
pub(super) fn act_from_anywhere(action: evenwall_app::action::Action) {
    let told = slint::invoke_from_event_loop(move || {
        let screens = WAITING.with(|w| w.borrow().upgrade());
        if let Some(screens) = screens {
            screens.act(action);
        }
    });
    // After the last window closed there is nobody to tell.
    drop(told);
}

fn deliver(done: Done) {
    if let Some(screens) = waiting() {
        screens.work_came(done);
    }
}
