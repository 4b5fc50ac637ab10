//! Form: which form is open over a page of Shop, and what has been typed into it.

use std::collections::BTreeMap;

use evenwall_piece::rhythm::{Rhythm, RhythmOf, Step};

use crate::app::App;
use crate::numbers::Quantity;

use super::device_fields::DeviceField;
use super::number_settings::number_setting;

/// One of the two lists of a rhythm.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StepList {
    /// When it is looked at.
    Looks,
    /// When it is weighed.
    Weighings,
}

impl StepList {
    /// Stable key.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Looks => "look",
            Self::Weighings => "weighing",
        }
    }

    /// The list in a rhythm.
    #[must_use]
    pub fn of(self, rhythm: &Rhythm) -> &[Step] {
        match self {
            Self::Looks => &rhythm.looks,
            Self::Weighings => &rhythm.weighings,
        }
    }

    /// The list in a rhythm, to change it.
    #[must_use]
    pub fn of_mut(self, rhythm: &mut Rhythm) -> &mut Vec<Step> {
        match self {
            Self::Looks => &mut rhythm.looks,
            Self::Weighings => &mut rhythm.weighings,
        }
    }
}

/// What a form is about.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum FormOf {
    /// A reading of the air.
    Climate,
    /// A rule that is one number, by the key of its setting.
    Number(&'static str),
    /// Jaws by their id; `None`: new ones.
    Jaws(Option<String>),
    /// A bar by its id; `None`: a new one.
    Bar(Option<String>),
    /// An own wood by its id; `None`: a new one.
    Wood(Option<String>),
    /// The step of the scale that is in use.
    ScaleStep,
    /// A new scale.
    NewScale,
    /// A step of a rhythm by its place; `None`: a new one.
    Step {
        /// Whose rhythm.
        of: RhythmOf,
        /// Which list of it.
        list: StepList,
        /// Its place in the list.
        place: Option<usize>,
    },
    /// After how many days the next stage is offered.
    Offer(RhythmOf),
    /// Where a logger's file is.
    LogPath,
    /// The folder of the newest pictures.
    PictureFolder,
    /// Something about this device, or a file it reads.
    Device(DeviceField),
}

/// A form as filled in so far.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Draft {
    /// What it is about.
    pub of: FormOf,
    /// What stands in its fields, by key.
    pub texts: BTreeMap<String, String>,
    /// What is wrong with them.
    pub errors: BTreeMap<String, String>,
}

impl Draft {
    fn new(of: FormOf, texts: &[(&str, String)]) -> Self {
        let texts = texts
            .iter()
            .map(|(key, text)| ((*key).to_owned(), text.clone()));
        Self {
            of,
            texts: texts.collect(),
            errors: BTreeMap::new(),
        }
    }

    /// What stands in a field.
    pub fn typed(&self, key: &str) -> &str {
        self.texts.get(key).map_or("", String::as_str)
    }

    /// Puts a text into a field; what was wrong with it is forgotten.
    pub fn put(&mut self, key: &str, text: String) {
        self.errors.remove(key);
        // What follows from the way of reading the air belongs to that way.
        if key == "way" {
            self.errors.clear();
        }
        self.texts.insert(key.to_owned(), text);
    }
}

impl App {
    /// A form as it opens: with what is recorded already.
    pub(super) fn draft_of(&self, of: FormOf) -> Draft {
        let shop = self.shop();
        let numbers = self.numbers();
        let shown = |quantity: Quantity, value: f64| numbers.quantity(quantity, value).number;
        let texts: Vec<(&str, String)> = match &of {
            FormOf::Climate => vec![
                ("room", "shop".into()),
                ("way", "humidity".into()),
                ("when", "now".into()),
            ],
            FormOf::Number(key) => {
                let setting = number_setting(key);
                let text = setting.map(|s| shown(s.quantity, (s.value)(&shop.settings)));
                vec![("value", text.unwrap_or_default())]
            }
            FormOf::Jaws(id) => {
                let jaws = shop.jaws.iter().find(|j| Some(&j.id) == id.as_ref());
                jaws.map_or_else(Vec::new, |j| {
                    vec![
                        ("name", j.name.clone()),
                        ("smallest", shown(Quantity::JawCircle, j.smallest_mm)),
                        ("largest", shown(Quantity::JawCircle, j.largest_mm)),
                    ]
                })
            }
            FormOf::Bar(id) => {
                let bar = shop.bars.iter().find(|b| Some(&b.id) == id.as_ref());
                bar.map_or_else(Vec::new, |b| {
                    vec![
                        ("name", b.name.clone()),
                        ("diameter", shown(Quantity::BarDiameter, b.diameter_mm)),
                    ]
                })
            }
            FormOf::Wood(id) => {
                let wood = shop.woods.iter().find(|w| Some(&w.id) == id.as_ref());
                wood.map_or_else(Vec::new, |w| {
                    let figure = |quantity, value: Option<f64>| {
                        value.map_or_else(String::new, |v| shown(quantity, v))
                    };
                    vec![
                        ("name", w.name.clone()),
                        ("radial", figure(Quantity::Shrinkage, w.radial_pct)),
                        ("tangential", figure(Quantity::Shrinkage, w.tangential_pct)),
                        ("density", figure(Quantity::BasicDensity, w.density_kg_m3)),
                        ("green", figure(Quantity::GreenMoisture, w.green_mc_pct)),
                        ("moulds", w.moulds_easily.to_string()),
                    ]
                })
            }
            FormOf::ScaleStep => vec![("step", shown(Quantity::ScaleStep, self.scale_step()))],
            FormOf::NewScale => vec![("when", "now".into())],
            FormOf::LogPath => Vec::new(),
            FormOf::Device(field) => vec![("value", self.device_text(*field))],
            FormOf::Step { of, list, place } => {
                let rhythm = shop.settings.rhythm(*of);
                let step = place.and_then(|p| list.of(&rhythm).get(p).copied());
                step.map_or_else(Vec::new, |s| {
                    let until = s.until_day.map_or_else(String::new, |d| d.to_string());
                    vec![("every", s.every.to_string()), ("until", until)]
                })
            }
            FormOf::PictureFolder => vec![("folder", self.device().picture_folder.clone())],
            FormOf::Offer(of) => {
                let day = shop.settings.rhythm(*of).offer_after;
                vec![("day", day.map_or_else(String::new, |d| d.to_string()))]
            }
        };
        Draft::new(of, &texts)
    }

    /// The step of the scale in use, g: of the last new scale, else of the setting.
    pub(super) fn scale_step(&self) -> f64 {
        self.shop()
            .scales
            .last()
            .map_or(self.shop().settings.scale_step_g, |(_, step)| *step)
    }
}
