//! Devices: who wrote what, and what the turner calls them.
//!
//! A name is a fact of the workshop (`device_name_<id>`), so that every device knows all of them. It is kept among this
//! device's own settings too: where the device takes a new id (a restored phone, a copied disk), the new id gets the name
//! as well, and the journals of the old id keep theirs.

use std::collections::{BTreeMap, BTreeSet};

use evenwall_piece::ids::DeviceId;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::shop::ShopFact;

use crate::app::{App, AppError};

/// The most characters of a device's name.
pub const LONGEST_NAME: usize = 40;

/// The key of the setting that holds the name of a device.
fn key_of(device: &DeviceId) -> String {
    format!("device_name_{device}")
}

/// The id without what parts two copies of one device.
fn plain(device: &DeviceId) -> (&str, bool) {
    match device.as_str().split_once("-clash-") {
        Some((id, _)) => (id, true),
        None => (device.as_str(), false),
    }
}

/// One device as shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DeviceView {
    /// Its id.
    pub id: String,
    /// What it is called.
    pub name: String,
    /// "this device", or when it last wrote: "last wrote 3 days ago".
    pub note: String,
    /// True for this device.
    pub this: bool,
}

/// The devices that wrote to the shelf.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DevicesView {
    /// What stands above the field of the name.
    pub label: String,
    /// The name of this device, empty where it has none.
    pub name: String,
    /// All of them, this one first, then by when they last wrote.
    pub devices: Vec<DeviceView>,
    /// What is said where no other device ever wrote; empty where one did.
    pub alone: String,
}

impl App {
    /// What a device is called: its name, "this device", or "another device (ab2c)".
    #[must_use]
    pub fn device_words(&self, device: &DeviceId) -> String {
        let words = self.words();
        let (id, copied) = plain(device);
        let named = self
            .shop()
            .stored
            .get(&format!("device_name_{id}"))
            .cloned();
        let is_this = self.store.device().is_some_and(|own| own.as_str() == id);
        let name = match named {
            Some(name) => name,
            None if is_this => words.text("records-this-device"),
            None => {
                let short: String = id.chars().take(4).collect();
                words.with("records-other-device", &[("id", short.into())])
            }
        };
        if copied {
            words.with("records-copied-device", &[("name", name.into())])
        } else {
            name
        }
    }

    /// True where nobody but this device wrote in the diary of a piece.
    pub(crate) fn written_here_only(&self, piece: &Piece) -> bool {
        let own = self.store.device();
        let mut seen = BTreeSet::new();
        for entry in &piece.diary {
            seen.insert(&entry.entry.line.device);
        }
        // A reader cannot tell its own lines: one writer alone needs no name.
        match own {
            Some(own) => seen.iter().all(|d| **d == own),
            None => seen.len() < 2,
        }
    }

    /// Gives this device a name, on the shelf and here.
    pub(crate) fn name_device(&mut self, name: &str, now: Moment) -> Result<(), AppError> {
        let name = name.trim().to_owned();
        let count = name.chars().count();
        if count > LONGEST_NAME {
            return Err(AppError::Refused(self.words().with(
                "records-name-long",
                &[("n", count.into()), ("most", LONGEST_NAME.into())],
            )));
        }
        let Some(own) = self.store.device() else {
            return Err(AppError::Refused(self.words().text("records-no-device")));
        };
        let mut device = self.device().clone();
        device.name.clone_from(&name);
        self.set_device(device)?;
        let key = key_of(&own);
        if self.shop().stored.get(&key).map_or("", String::as_str) != name {
            let said = self
                .words()
                .with("records-named", &[("name", name.as_str().into())]);
            self.record_shop(now, vec![ShopFact::Setting { key, value: name }], now)?;
            self.say(said);
        }
        Ok(())
    }

    /// Where this device has a name but a new id, the id gets the name. What fails is done at the next look.
    pub(crate) fn keep_device_name(&mut self, now: Moment) {
        let name = self.device().name.clone();
        let Some(own) = self.store.device().filter(|_| !name.is_empty()) else {
            return;
        };
        let key = key_of(&own);
        if self.shop().stored.contains_key(&key) || self.store.read_only().is_some() {
            return;
        }
        // Not something the turner did: nothing to undo, and no error on screen for it.
        let written = self.written.len();
        let kept = self.record_shop(now, vec![ShopFact::Setting { key, value: name }], now);
        if kept.is_ok() {
            self.written.truncate(written);
        }
    }

    /// A setting about devices or records in words for the history; `None` for other settings.
    pub(crate) fn devices_setting_in_words(&self, key: &str, value: &str) -> Option<String> {
        let words = self.words();
        if key.starts_with("device_name_") {
            return Some(words.with("records-named", &[("name", value.into())]));
        }
        match key {
            super::backups::LAST_BACKUP => Some(words.text("records-backed-up")),
            super::report::CARE_WORDS => Some(words.text("records-care-changed")),
            _ if key.starts_with("import_") => Some(words.text(match value {
                "open" => "records-import-said-open",
                "done" => "records-import-said-done",
                _ => "records-import-said-back",
            })),
            _ => None,
        }
    }

    /// The devices that wrote to the shelf, for the page about the data.
    #[must_use]
    pub fn devices_view(&self, now: Moment) -> DevicesView {
        let words = self.words();
        let mut last: BTreeMap<&str, Moment> = BTreeMap::new();
        let entries = self.pieces.values().flat_map(|p| &p.diary);
        let noted = entries.map(|e| (&e.entry.line.device, e.noted_at));
        let shop = self.shop_lines.iter().map(|l| (&l.id.device, l.noted_at));
        for (device, at) in noted.chain(shop) {
            let latest = last.entry(plain(device).0).or_insert(at);
            *latest = at.max(*latest);
        }
        let own = self.store.device();
        if let Some(own) = &own {
            last.entry(own.as_str()).or_insert(now);
        }
        let mut devices: Vec<(DeviceView, Moment)> = last
            .into_iter()
            .filter_map(|(id, at)| {
                let device = DeviceId::new(id).ok()?;
                let this = own.as_ref() == Some(&device);
                let ago = self.dates(now).ago(at.date_naive());
                let view = DeviceView {
                    id: id.to_owned(),
                    name: self.device_words(&device),
                    note: if this {
                        words.text("records-this-device")
                    } else {
                        words.with("records-last-wrote", &[("ago", ago.into())])
                    },
                    this,
                };
                Some((view, at))
            })
            .collect();
        devices.sort_by(|(a, x), (b, y)| b.this.cmp(&a.this).then(y.cmp(x)).then(a.id.cmp(&b.id)));
        let devices: Vec<DeviceView> = devices.into_iter().map(|(d, _)| d).collect();
        DevicesView {
            label: words.text("records-name-label"),
            name: self.device().name.clone(),
            alone: if devices.iter().all(|d| d.this) {
                words.text("records-alone")
            } else {
                String::new()
            },
            devices,
        }
    }
}
