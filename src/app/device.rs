//! Device settings: how this device shows things. Kept outside the shelf, so that two devices may differ.

use serde::{Deserialize, Serialize};

use crate::app::App;
use crate::numbers::{LengthUnit, MassUnit, Numbers, TempUnit, Units};

/// Light, dark, or as the system says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum ThemeChoice {
    /// As the system says.
    #[default]
    System,
    /// Paper.
    Light,
    /// Charcoal.
    Dark,
}

/// How lengths are shown and read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LengthChoice {
    /// Millimetres.
    #[default]
    Mm,
    /// Inches with decimals.
    InchDecimal,
    /// Inches with fractions to 1/64.
    InchFraction,
}

/// How weights are shown and read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum MassChoice {
    /// Grams.
    #[default]
    Gram,
    /// Pounds and ounces.
    PoundOunce,
}

/// How temperatures are shown and read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum TempChoice {
    /// Degrees Celsius.
    #[default]
    Celsius,
    /// Degrees Fahrenheit.
    Fahrenheit,
}

/// British or American words.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum WordsChoice {
    /// Spigot, callipers.
    #[default]
    #[serde(rename = "en-GB")]
    British,
    /// Tenon, calipers.
    #[serde(rename = "en-US")]
    American,
}

/// The paper in the printer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PaperChoice {
    /// A4, 210 x 297 mm.
    #[default]
    A4,
    /// US Letter, 8.5 x 11 in.
    Letter,
}

/// This device's settings. A field that is missing or cannot be read takes its default.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct DeviceSettings {
    /// Theme.
    pub theme: ThemeChoice,
    /// Text scale, 1.0 to 1.6.
    pub text_scale: f64,
    /// Lengths.
    pub length: LengthChoice,
    /// Weights.
    pub mass: MassChoice,
    /// Temperatures.
    pub temperature: TempChoice,
    /// Words.
    pub words: WordsChoice,
    /// The action side is on the left.
    pub left_handed: bool,
    /// Nothing moves on the screen.
    pub reduced_motion: bool,
    /// The last plan, so that it is there after a restart.
    pub plan: crate::plan::Draft,
    /// The folder of the newest pictures; empty means the platform's usual ones.
    pub picture_folder: String,
    /// What the turner calls this device: "bench phone"; empty where it has no name.
    pub name: String,
    /// The file that the calendar is kept in; empty where none is kept.
    pub calendar_file: String,
    /// The local time of day at which reminders in the calendar ring, `HH:MM`.
    pub reminder_time: String,
    /// The folder that backups, tables, tags and reports go to; empty where none was chosen.
    pub backup_folder: String,
    /// After how many days without a backup it is asked for; 0: never.
    pub backup_every_days: u32,
    /// Width of a tag, mm.
    pub tag_width_mm: f64,
    /// Height of a tag, mm.
    pub tag_height_mm: f64,
    /// The paper that tags and reports are printed on.
    pub paper: PaperChoice,
    /// The computer says what is due while the program runs.
    pub notify: bool,
    /// From this local time of day on it says nothing, `HH:MM`.
    pub quiet_from: String,
    /// Until this local time of day it says nothing, `HH:MM`.
    pub quiet_until: String,
}

impl Default for DeviceSettings {
    fn default() -> Self {
        Self {
            theme: ThemeChoice::default(),
            text_scale: 1.0,
            length: LengthChoice::default(),
            mass: MassChoice::default(),
            temperature: TempChoice::default(),
            words: WordsChoice::default(),
            left_handed: false,
            reduced_motion: false,
            plan: crate::plan::Draft::default(),
            picture_folder: String::new(),
            name: String::new(),
            calendar_file: String::new(),
            reminder_time: "09:00".into(),
            backup_folder: String::new(),
            backup_every_days: 30,
            tag_width_mm: 64.0,
            tag_height_mm: 40.0,
            paper: PaperChoice::default(),
            notify: true,
            quiet_from: "21:00".into(),
            quiet_until: "08:00".into(),
        }
    }
}

impl DeviceSettings {
    /// The settings from their kept text; each field that cannot be read takes its default.
    #[must_use]
    pub fn from_json(text: &str) -> Self {
        let kept: serde_json::Map<String, serde_json::Value> =
            serde_json::from_str(text).unwrap_or_default();
        let mut good = serde_json::Map::new();
        for (key, value) in kept {
            let mut trial = good.clone();
            trial.insert(key, value);
            if serde_json::from_value::<Self>(trial.clone().into()).is_ok() {
                good = trial;
            }
        }
        let mut settings: Self = serde_json::from_value(good.into()).unwrap_or_default();
        if !(1.0..=1.6).contains(&settings.text_scale) {
            settings.text_scale = 1.0;
        }
        settings
    }

    /// The text that [`DeviceSettings::from_json`] reads.
    #[must_use]
    pub fn to_json(&self) -> String {
        serde_json::to_string_pretty(self).unwrap_or_default()
    }
}

impl DeviceSettings {
    /// The units chosen.
    #[must_use]
    pub const fn units(&self) -> Units {
        Units {
            length: match self.length {
                LengthChoice::Mm => LengthUnit::Millimetre,
                LengthChoice::InchDecimal => LengthUnit::InchDecimal,
                LengthChoice::InchFraction => LengthUnit::InchFraction,
            },
            mass: match self.mass {
                MassChoice::Gram => MassUnit::Gram,
                MassChoice::PoundOunce => MassUnit::OunceAndPound,
            },
            temperature: match self.temperature {
                TempChoice::Celsius => TempUnit::Celsius,
                TempChoice::Fahrenheit => TempUnit::Fahrenheit,
            },
        }
    }
}

impl App {
    /// Reads and shows numbers in this device's units and words.
    #[must_use]
    pub fn numbers(&self) -> Numbers {
        Numbers::new(self.device().units(), self.words())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_bad_field_does_not_lose_the_others() {
        let s = DeviceSettings::from_json(r#"{"theme":"dark","length":"cubits","text_scale":1.3}"#);
        assert_eq!(s.theme, ThemeChoice::Dark);
        assert_eq!(s.length, LengthChoice::Mm);
        assert!((s.text_scale - 1.3).abs() < 1e-9);
        assert_eq!(
            DeviceSettings::from_json("rubbish"),
            DeviceSettings::default()
        );
        assert_eq!(DeviceSettings::from_json(&s.to_json()), s);
    }
}
