//! Hands the view of this page to Slint and its touches to the app.

use std::rc::Rc;

use evenwall_app::app::App;
use evenwall_piece::piece::Moment;
use evenwall_ui::AppWindow;

use super::Screens;

/// Connects the callbacks of the adapter.
pub fn connect(_screens: &Rc<Screens>) {}

/// Shows the page.
pub fn show(_window: &AppWindow, _app: &App, _now: Moment) {}
