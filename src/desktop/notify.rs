//! Notify: hands a reminder to the desktop, on Linux and its kin; elsewhere Today and the calendar remind.

use evenwall_app::records::reminding::Reminder;

/// Shows a reminder; `touched` is called where the turner touches it. A desktop that shows none is no fault: what is due
/// stands on Today.
#[cfg(target_os = "linux")]
pub fn say(reminder: Reminder, touched: Box<dyn FnOnce() + Send>) {
    let beside = std::thread::Builder::new().name("reminder".into());
    // Waits for the touch, so it cannot be on the thread of the screens.
    let started = beside.spawn(move || {
        let shown = notify_rust::Notification::new()
            .appname("Evenwall")
            .summary(&reminder.title)
            .body(&reminder.text)
            .action("default", "Evenwall")
            .show();
        if let Ok(shown) = shown {
            let mut touch = Some(touched);
            shown.wait_for_action(|action| {
                if action == "default"
                    && let Some(touched) = touch.take()
                {
                    touched();
                }
            });
        }
    });
    drop(started);
}

/// There is no way to say it here: what is due stands on Today.
#[cfg(not(target_os = "linux"))]
pub fn say(_reminder: Reminder, _touched: Box<dyn FnOnce() + Send>) {}
