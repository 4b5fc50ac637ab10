//! Keeping: the calendar file follows what is recorded, without a touch and without a word unless it fails.

use evenwall_piece::piece::Moment;

use crate::app::App;

/// A calendar without what is another each time it is made: the moments of making, and the names of its alarms.
fn lasting(text: &str) -> Vec<&str> {
    text.lines()
        .filter(|l| !l.starts_with("DTSTAMP"))
        .filter(|l| !l.starts_with("UID:") || l.ends_with("@evenwall"))
        .collect()
}

impl App {
    /// Brings the calendar file up to date where there is one and something of it changed. What goes wrong is said on the
    /// page about reminders; the next call tries again. Call it a little after something was recorded, at the start, and
    /// once a day.
    pub fn keep_calendar(&mut self, now: Moment) {
        if self.device().calendar_file.is_empty() || self.is_demo() {
            return;
        }
        let kept = self
            .calendar_file_text(now)
            .and_then(|(path, earlier, text)| {
                let changed = earlier.is_none_or(|e| lasting(&e) != lasting(&text));
                if changed {
                    self.store.save_outside(&path, text.as_bytes())?;
                }
                Ok(())
            });
        self.states.records.calendar_fault = kept.err().map(|e| e.to_string());
    }

    /// Why the calendar could not be kept up to date, in a sentence.
    #[must_use]
    pub fn calendar_fault(&self) -> Option<&str> {
        self.states.records.calendar_fault.as_deref()
    }
}
