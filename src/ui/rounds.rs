//! Rounds: what the open window does of its own accord: looks for what other devices wrote, keeps the calendar, reminds.

use std::rc::Rc;
use std::time::Duration;

use evenwall_app::action::Action;
use evenwall_app::records::reminding::Reminder;
use evenwall_app::route::{Page, Tab};
use slint::{Timer, TimerMode};

use super::{Screens, worker};

/// How often the shelf is looked through, and how long the calendar waits for what follows at once.
const A_LOOK: Duration = Duration::from_secs(3);
const A_MINUTE: Duration = Duration::from_secs(60);

/// Says a reminder; the second argument is for a touch of it, from whatever thread.
pub type Notifier = Box<dyn Fn(Reminder, Box<dyn FnOnce() + Send>)>;

/// The timers of the rounds; they end when this is dropped.
pub(super) struct Rounds {
    _look: Timer,
    _minute: Timer,
}

/// Starts the rounds.
pub(super) fn start(screens: &Rc<Screens>) -> Rounds {
    let look = Timer::default();
    let weak = Rc::downgrade(screens);
    look.start(TimerMode::Repeated, A_LOOK, move || {
        if let Some(screens) = weak.upgrade() {
            screens.look_for_others();
            screens.keep_calendar();
        }
    });
    // Left open overnight, Today is a new day's: looked at once a minute, shown anew only where the day changed.
    let day = std::cell::Cell::new((screens.clock)().date_naive());
    let weak = Rc::downgrade(screens);
    let minute = Timer::default();
    minute.start(TimerMode::Repeated, A_MINUTE, move || {
        if let Some(screens) = weak.upgrade() {
            let now = (screens.clock)().date_naive();
            if day.replace(now) != now {
                screens.calendar_behind.set(true);
                screens.refresh();
            }
            screens.remind();
        }
    });
    screens.remind();
    Rounds {
        _look: look,
        _minute: minute,
    }
}

impl Screens {
    /// Brings the one who says reminders.
    pub fn bring_notifier(&self, notifier: Notifier) {
        *self.notifier.borrow_mut() = Some(notifier);
    }

    /// Takes in what other devices wrote, and shows it where something changed. What is being typed stays.
    pub fn look_for_others(&self) {
        let now = (self.clock)();
        // What cannot be looked through now is found by the next look.
        let changed = self.app.borrow_mut().refresh(now).unwrap_or(false);
        if changed {
            self.calendar_behind.set(true);
            self.refresh();
        }
    }

    /// Brings the calendar file up to date where something was done since.
    pub fn keep_calendar(&self) {
        if !self.calendar_behind.replace(false) {
            return;
        }
        let now = (self.clock)();
        let fault = |s: &Self| s.read(|app| app.calendar_fault().map(str::to_owned));
        let before = fault(self);
        self.app.borrow_mut().keep_calendar(now);
        if fault(self) != before {
            self.refresh();
        }
    }

    /// Says what is due, where there is somebody to say it and something new.
    pub fn remind(&self) {
        let notifier = self.notifier.borrow();
        let Some(say) = notifier.as_ref() else {
            return;
        };
        let reminder = self.app.borrow_mut().take_reminder((self.clock)());
        if let Some(reminder) = reminder {
            let leads_to = match &reminder.piece {
                Some(piece) => Action::Open(Page::Piece(piece.clone())),
                None => Action::GoTab(Tab::Today),
            };
            say(
                reminder,
                Box::new(move || worker::act_from_anywhere(leads_to)),
            );
        }
    }
}
