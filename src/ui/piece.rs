//! Hands the views of these pages to Slint and their touches to the app.

use std::rc::Rc;

use evenwall_app::app::App;
use evenwall_piece::piece::Moment;
use evenwall_ui::AppWindow;

use super::Screens;

/// Connects the callbacks of the adapters.
pub fn connect(_screens: &Rc<Screens>) {}

/// Shows the page with this key.
pub fn show(_window: &AppWindow, _app: &App, _page: &str, _now: Moment) {}
