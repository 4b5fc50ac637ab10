//! Shop: the workshop's own facts and the state they give.

use std::collections::BTreeMap;

use chrono::NaiveDate;

use crate::fold::lines_that_count;
use crate::ids::LineId;
use crate::line::{Line, in_fold_order};
use crate::piece::Moment;
use crate::settings::Settings;
use crate::stage::Stage;
use crate::vocabulary::Room;

/// Jaws of the chuck: the range of round spigots they close on.
#[derive(Debug, Clone, PartialEq)]
pub struct Jaws {
    /// Stable id.
    pub id: String,
    /// The turner's name for them.
    pub name: String,
    /// Smallest circle they grip, mm.
    pub smallest_mm: f64,
    /// Largest circle, mm.
    pub largest_mm: f64,
}

/// A hollowing bar.
#[derive(Debug, Clone, PartialEq)]
pub struct Bar {
    /// Stable id.
    pub id: String,
    /// The turner's name for it.
    pub name: String,
    /// Diameter, mm.
    pub diameter_mm: f64,
}

/// A wood of the turner's own, or own figures for a wood of the table.
#[derive(Debug, Clone, PartialEq)]
pub struct OwnWood {
    /// Stable id.
    pub id: String,
    /// Its name.
    pub name: String,
    /// Radial shrinkage green to oven-dry, per cent.
    pub radial_pct: Option<f64>,
    /// Tangential shrinkage green to oven-dry, per cent.
    pub tangential_pct: Option<f64>,
    /// Basic density, kg/m3.
    pub density_kg_m3: Option<f64>,
    /// Green moisture, per cent of dry mass.
    pub green_mc_pct: Option<f64>,
    /// True where it is known to mould easily.
    pub moulds_easily: bool,
}

/// A change to a checklist, for pieces from now on.
#[derive(Debug, Clone, PartialEq)]
pub enum ChecklistChange {
    /// An own line, or a new wording of a built-in one.
    Worded {
        /// Stable id of the line.
        line: String,
        /// The stage it stands in.
        stage: Stage,
        /// Its text.
        text: String,
        /// Its why; may be empty.
        why: String,
    },
    /// Hidden or shown again.
    Hidden {
        /// Stable id of the line.
        line: String,
        /// Hidden or not.
        hidden: bool,
    },
    /// Moved to a place in its stage.
    Placed {
        /// Stable id of the line.
        line: String,
        /// Sort key: lines are shown by rising key; built-in lines have 100, 200, 300...
        order: i64,
    },
    /// Back to the built-in wording, place and visibility; an own line goes away.
    Reset {
        /// Stable id of the line.
        line: String,
    },
}

/// A reading of a room's air.
#[derive(Debug, Clone, PartialEq)]
pub struct Climate {
    /// Which room.
    pub room: Room,
    /// Temperature, degrees Celsius.
    pub temp_c: f64,
    /// Relative humidity, per cent.
    pub rh_pct: f64,
}

/// The readings of a logger, thinned to means and recorded together.
#[derive(Debug, Clone, PartialEq)]
pub struct LoggedAir {
    /// Which room the logger stood in.
    pub room: Room,
    /// Its readings by time.
    pub readings: Vec<LoggedReading>,
}

/// One mean of a logger.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LoggedReading {
    /// The middle of the hour or day.
    pub at: Moment,
    /// Temperature, degrees Celsius.
    pub temp_c: f64,
    /// Relative humidity, per cent.
    pub rh_pct: f64,
}

/// One fact about the workshop.
#[derive(Debug, Clone, PartialEq)]
pub enum ShopFact {
    /// A setting was changed; an empty value goes back to the default.
    Setting {
        /// Its key, see [`Settings`].
        key: String,
        /// Its new value.
        value: String,
    },
    /// A room's air was read.
    Climate(Climate),
    /// A logger's file was read.
    ClimateLog(LoggedAir),
    /// Jaws were added or changed (same id).
    Jaws(Jaws),
    /// Jaws were taken off the list.
    JawsRemoved(String),
    /// A bar was added or changed.
    Bar(Bar),
    /// A bar was taken off the list.
    BarRemoved(String),
    /// An own wood was added or changed.
    Wood(OwnWood),
    /// An own wood was taken off the list.
    WoodRemoved(String),
    /// A checklist was changed.
    Checklist(ChecklistChange),
    /// A new scale: weights before and after are not compared.
    NewScale {
        /// Its step, g.
        step_g: f64,
    },
    /// The turner goes away.
    Away {
        /// Back on this day.
        back_on: NaiveDate,
    },
    /// The turner is back.
    Back,
    /// A whole line is taken back.
    Retracts(LineId),
    /// Recorded by a newer version; kept.
    Unknown {
        /// Its kind as found.
        kind: String,
        /// The whole fact as found, JSON text.
        raw: String,
    },
}

/// A fact of the shop with its line, for the history.
#[derive(Debug, Clone, PartialEq)]
pub struct ShopEntry {
    /// The line.
    pub line: LineId,
    /// When it happened.
    pub at: Moment,
    /// What happened.
    pub fact: ShopFact,
}

/// The state of the workshop, derived from its lines.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Shop {
    /// The settings in force.
    pub settings: Settings,
    /// Settings as stored, for the form.
    pub stored: BTreeMap<String, String>,
    /// Readings of the air by time.
    pub climate: Vec<(Moment, Climate)>,
    /// Jaws in the order added.
    pub jaws: Vec<Jaws>,
    /// Bars in the order added.
    pub bars: Vec<Bar>,
    /// Own woods.
    pub woods: Vec<OwnWood>,
    /// Changes to checklists in fold order, each with its time: pieces recorded before keep their text.
    pub checklist: Vec<(Moment, ChecklistChange)>,
    /// New scales: from when, step in g.
    pub scales: Vec<(Moment, f64)>,
    /// Away since, and back on.
    pub away: Option<(Moment, NaiveDate)>,
    /// Everything that counts, by time.
    pub history: Vec<ShopEntry>,
    /// Facts that a newer version recorded.
    pub unknown_facts: usize,
}

impl Shop {
    /// True unless the turner said that no scale is used: then nothing asks for a weight.
    #[must_use]
    pub fn weighs(&self) -> bool {
        let said = self.stored.get(crate::checklist::WEIGHS);
        said.is_none_or(|v| v != "false")
    }

    /// The last reading of a room.
    #[must_use]
    pub fn last_climate(&self, room: Room) -> Option<&(Moment, Climate)> {
        self.climate.iter().rev().find(|(_, c)| c.room == room)
    }

    /// The scale step in force at a moment, g.
    #[must_use]
    pub fn scale_step_at(&self, at: Moment) -> f64 {
        self.scales
            .iter()
            .rev()
            .find(|(since, _)| *since <= at)
            .map_or(self.settings.scale_step_g, |(_, step)| *step)
    }
}

/// The state of the workshop from its lines, in whatever order they were read.
///
/// | case | rule |
/// |---|---|
/// | a setting changed on two devices | the later in fold order counts, both stay in the history |
/// | jaws, a bar or a wood changed on one device and removed on another | the later in fold order counts |
/// | a line taken back, a retraction taken back | as in the diary of a piece, see [`crate::fold`] |
/// | a checklist changed on two devices | both changes count, in fold order |
/// | a new scale or the air noted late | kept by the time at which it happened |
/// | a logger's file | each of its readings by its own time, whenever it was read in; taken back all at once |
#[must_use]
pub fn fold_shop(lines: Vec<Line<ShopFact>>) -> Shop {
    let ordered = in_fold_order(lines);
    let counting = lines_that_count(&ordered, |f| match f {
        ShopFact::Retracts(line) => Some(line),
        _ => None,
    });
    let mut shop = Shop::default();
    for line in ordered.into_iter().filter(|l| counting.contains(&l.id)) {
        for fact in line.facts {
            shop.apply(line.at, &fact);
            if !matches!(fact, ShopFact::Retracts(_)) {
                shop.history.push(ShopEntry {
                    line: line.id.clone(),
                    at: line.at,
                    fact,
                });
            }
        }
    }
    shop.settings = Settings::from_stored(&shop.stored);
    shop.climate.sort_by_key(|c| c.0);
    shop.scales.sort_by_key(|s| s.0);
    shop.history.sort_by_key(|e| e.at);
    shop
}

fn put<T>(list: &mut Vec<T>, item: T, same: impl Fn(&T) -> bool) {
    match list.iter_mut().find(|i| same(i)) {
        Some(place) => *place = item,
        None => list.push(item),
    }
}

impl Shop {
    fn apply(&mut self, at: Moment, fact: &ShopFact) {
        match fact {
            ShopFact::Setting { key, value } if value.is_empty() => {
                self.stored.remove(key);
            }
            ShopFact::Setting { key, value } => {
                self.stored.insert(key.clone(), value.clone());
            }
            ShopFact::Climate(c) => self.climate.push((at, c.clone())),
            ShopFact::ClimateLog(log) => self.climate.extend(log.readings.iter().map(|r| {
                let climate = Climate {
                    room: log.room,
                    temp_c: r.temp_c,
                    rh_pct: r.rh_pct,
                };
                (r.at, climate)
            })),
            ShopFact::Jaws(j) => put(&mut self.jaws, j.clone(), |o| o.id == j.id),
            ShopFact::JawsRemoved(id) => self.jaws.retain(|j| j.id != *id),
            ShopFact::Bar(b) => put(&mut self.bars, b.clone(), |o| o.id == b.id),
            ShopFact::BarRemoved(id) => self.bars.retain(|b| b.id != *id),
            ShopFact::Wood(w) => put(&mut self.woods, w.clone(), |o| o.id == w.id),
            ShopFact::WoodRemoved(id) => self.woods.retain(|w| w.id != *id),
            ShopFact::Checklist(change) => self.checklist.push((at, change.clone())),
            ShopFact::NewScale { step_g } => self.scales.push((at, *step_g)),
            ShopFact::Away { back_on } => self.away = Some((at, *back_on)),
            ShopFact::Back => self.away = None,
            ShopFact::Unknown { .. } => self.unknown_facts += 1,
            ShopFact::Retracts(_) => {}
        }
    }
}
