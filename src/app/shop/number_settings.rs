//! Number settings: the rules of the workshop that are one number each, with their keys, ranges and defaults.

use evenwall_piece::settings::Settings;

use crate::app::App;
use crate::numbers::Quantity;

/// A rule that is one number.
#[derive(Debug)]
pub(super) struct NumberSetting {
    /// Its key among the settings.
    pub key: &'static str,
    /// The catalogue's id of its label.
    pub label: &'static str,
    /// What is read and shown.
    pub quantity: Quantity,
    /// Its value in force.
    pub value: fn(&Settings) -> f64,
}

macro_rules! setting {
    ($key:literal, $label:literal, $quantity:ident, $value:expr) => {
        NumberSetting {
            key: $key,
            label: $label,
            quantity: Quantity::$quantity,
            value: $value,
        }
    };
}

/// All of them.
pub(super) const NUMBERS: [NumberSetting; 11] = [
    setting!(
        "rough_tolerance_mm",
        "shop-rough-tolerance",
        Tolerance,
        |s| s.rough_tolerance_mm
    ),
    setting!(
        "finish_tolerance_mm",
        "shop-finish-tolerance",
        Tolerance,
        |s| s.finish_tolerance_mm
    ),
    setting!("margin_mm", "shop-margin", Allowance, |s| s.margin_mm),
    setting!("remount_mm", "shop-remount", Allowance, |s| s.remount_mm),
    setting!("bag_first_days", "shop-bag-first", BagDays, |s| f64::from(
        s.bag_after.first
    )),
    setting!("bag_wet_days", "shop-bag-wet", BagDays, |s| f64::from(
        s.bag_after.wet
    )),
    setting!("bag_wet_short_days", "shop-bag-wet-short", BagDays, |s| {
        f64::from(s.bag_after.wet_short)
    }),
    setting!("bag_damp_days", "shop-bag-damp", BagDays, |s| f64::from(
        s.bag_after.damp
    )),
    setting!("bag_nothing_days", "shop-bag-nothing", BagDays, |s| {
        f64::from(s.bag_after.nothing)
    }),
    setting!("bag_mould_days", "shop-bag-mould", BagDays, |s| f64::from(
        s.bag_after.mould
    )),
    setting!("steady_days", "shop-steady", SteadyDays, |s| f64::from(
        s.steady_days
    )),
];

/// The rule with this key.
pub(super) fn number_setting(key: &str) -> Option<&'static NumberSetting> {
    NUMBERS.iter().find(|n| n.key == key)
}

impl NumberSetting {
    /// A value of it in words: "1.5 mm", "3 days".
    pub fn in_words(&self, app: &App, value: f64) -> String {
        match self.quantity {
            #[allow(clippy::cast_possible_truncation)] // a whole number of days, up to 365
            Quantity::BagDays | Quantity::SteadyDays => app.days_in_words(value as u32),
            quantity => app.numbers().quantity(quantity, value).text(),
        }
    }

    /// The value in force, in words.
    pub fn now_in_words(&self, app: &App) -> String {
        self.in_words(app, (self.value)(&app.shop().settings))
    }

    /// The default of common practice.
    pub fn usual(&self) -> f64 {
        (self.value)(&Settings::default())
    }
}

impl App {
    /// "1 day", "3 days".
    pub(super) fn days_in_words(&self, days: u32) -> String {
        self.words().with("date-days", &[("n", days.into())])
    }
}
