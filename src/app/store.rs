//! Store: what the app asks of the place where lines are kept. The shelf is one; tests may bring another.

use std::collections::BTreeMap;

use evenwall_piece::fact::PieceFact;
use evenwall_piece::fold::fold_piece;
use evenwall_piece::ids::{DeviceId, PieceId};
use evenwall_piece::line::Line;
use evenwall_piece::photo::PhotoHash;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::shop::ShopFact;
use evenwall_shelf::backup::{Checked, Restored, Written};

use crate::photo_store::PhotoStore;

/// Why something could not be kept or read; its text tells the turner what to do.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{0}")]
pub struct StoreError(pub String);

/// Everything read from a store.
#[derive(Debug, Default)]
pub struct Loaded {
    /// The pieces as their diaries tell them; folded where they are read, so that no more is held than is shown.
    pub pieces: Vec<Piece>,
    /// The lines of the workshop, in any order.
    pub shop: Vec<Line<ShopFact>>,
    /// What could not be read, one sentence each.
    pub problems: Vec<String>,
}

/// What other devices wrote since it was last read.
#[derive(Debug, Default)]
pub struct Arrived {
    /// All lines of the workshop, where some of them are new.
    pub shop: Option<Vec<Line<ShopFact>>>,
    /// All lines of each piece that has new ones, or none any more.
    pub pieces: Vec<(PieceId, Vec<Line<PieceFact>>)>,
    /// What cannot be read now, of the whole shelf, one sentence each; `None` where nothing arrived.
    pub problems: Option<Vec<String>>,
}

/// What a store says to something it cannot do.
fn not_here<T>() -> Result<T, StoreError> {
    Err(StoreError("this shelf is not kept in files".into()))
}

/// A place where lines are kept. A line is on disk, synced, before `append_*` returns.
pub trait Store {
    /// Reads everything.
    ///
    /// # Errors
    /// [`StoreError`] where nothing can be read at all; single bad lines are problems, not errors.
    fn load(&mut self) -> Result<Loaded, StoreError>;

    /// Reads the lines of one piece again, in any order; none where the piece is not known yet.
    ///
    /// # Errors
    /// [`StoreError`] where they cannot be read.
    fn load_piece(&mut self, piece: &PieceId) -> Result<Vec<Line<PieceFact>>, StoreError>;

    /// Appends one action to the diary of a piece; the piece's folder is made when it is the first.
    ///
    /// # Errors
    /// [`StoreError`] where it is not certain that the line was kept.
    fn append_piece(
        &mut self,
        piece: &PieceId,
        at: Moment,
        noted_at: Moment,
        facts: Vec<PieceFact>,
    ) -> Result<Line<PieceFact>, StoreError>;

    /// Appends one action to the workshop's facts.
    ///
    /// # Errors
    /// [`StoreError`] where it is not certain that the line was kept.
    fn append_shop(
        &mut self,
        at: Moment,
        noted_at: Moment,
        facts: Vec<ShopFact>,
    ) -> Result<Line<ShopFact>, StoreError>;

    /// Keeps this device's own settings (theme, units...), outside the shelf.
    ///
    /// # Errors
    /// [`StoreError`] where they were not kept.
    fn save_device_settings(&mut self, json: &str) -> Result<(), StoreError>;

    /// This device's own settings as last kept, if any.
    fn device_settings(&self) -> Option<String>;

    /// Keeps a file of this device's own beside its settings, whole or not at all.
    ///
    /// # Errors
    /// [`StoreError`] where it was not kept; an older one stands then.
    fn save_private(&mut self, _name: &str, _bytes: &[u8]) -> Result<(), StoreError> {
        not_here()
    }

    /// A file of this device's own as last kept, if any.
    fn read_private(&self, _name: &str) -> Option<Vec<u8>> {
        None
    }

    /// Random bits for a new id.
    fn random(&mut self) -> u64;

    /// A sentence saying why nothing can be written here, or `None`.
    fn read_only(&self) -> Option<String> {
        None
    }

    /// Where the shelf is, as text for Shop.
    fn place(&self) -> String;

    /// Where photos are kept; `None` for a store that keeps none.
    fn photos(&self) -> Option<&dyn PhotoStore> {
        None
    }

    /// The same, to keep more.
    fn photos_mut(&mut self) -> Option<&mut dyn PhotoStore> {
        None
    }

    /// Looks what other devices wrote since.
    ///
    /// # Errors
    /// [`StoreError`] where it cannot be looked; nothing is lost, the next look finds it.
    fn refresh(&mut self) -> Result<Arrived, StoreError> {
        Ok(Arrived::default())
    }

    /// The id under which this device writes; `None` where nothing can be written.
    fn device(&self) -> Option<DeviceId> {
        None
    }

    /// The bytes of a file outside the shelf; `None` where there is none.
    ///
    /// # Errors
    /// [`StoreError`] where it cannot be read.
    fn read_outside(&self, _path: &str) -> Result<Option<Vec<u8>>, StoreError> {
        not_here()
    }

    /// Puts bytes into a file outside the shelf, whole or not at all.
    ///
    /// # Errors
    /// [`StoreError`] where they were not kept; an older file stands then.
    fn save_outside(&mut self, _path: &str, _bytes: &[u8]) -> Result<(), StoreError> {
        not_here()
    }

    /// True where backups can be made.
    fn makes_backups(&self) -> bool {
        false
    }

    /// Writes a backup of the whole shelf into a folder and reads it back.
    ///
    /// # Errors
    /// [`StoreError`] where there is no new backup; older ones stand.
    fn back_up(&mut self, _folder: &str, _now: Moment) -> Result<Written, StoreError> {
        not_here()
    }

    /// The backups in a folder by name, the newest first.
    ///
    /// # Errors
    /// [`StoreError`] where the folder cannot be listed.
    fn backups_in(&self, _folder: &str) -> Result<Vec<String>, StoreError> {
        not_here()
    }

    /// Looks a backup through and changes nothing.
    ///
    /// # Errors
    /// [`StoreError`] with what is wrong with it.
    fn check_backup(&self, _path: &str) -> Result<Checked, StoreError> {
        not_here()
    }

    /// Merges a backup into the shelf; [`Store::refresh`] gives what came.
    ///
    /// # Errors
    /// [`StoreError`] with what is wrong with it.
    fn restore(&mut self, _path: &str, _now: Moment) -> Result<Restored, StoreError> {
        not_here()
    }
}

/// A store in memory, for tests and previews. It can be told to fail the next writes.
#[derive(Debug, Clone, Default)]
pub struct MemoryStore {
    pieces: Vec<(PieceId, Vec<Line<PieceFact>>)>,
    shop: Vec<Line<ShopFact>>,
    settings: Option<String>,
    counter: u64,
    pub(crate) photos: BTreeMap<(PieceId, PhotoHash), Vec<u8>>,
    /// Files outside the shelf by their path.
    pub outside: std::collections::BTreeMap<String, Vec<u8>>,
    /// While true every write fails, as with a full disk.
    pub failing: bool,
}

impl MemoryStore {
    fn line<F: Clone>(
        lines: &[Line<F>],
        at: Moment,
        noted_at: Moment,
        facts: Vec<F>,
    ) -> Result<Line<F>, StoreError> {
        let device =
            evenwall_piece::ids::DeviceId::new("memory").map_err(|e| StoreError(e.to_string()))?;
        let n = lines.len() as u64 + 1;
        let seq = lines.iter().map(|l| l.seq).max().unwrap_or(0) + 1;
        Ok(Line {
            id: evenwall_piece::ids::LineId { device, n },
            seq,
            at,
            noted_at,
            facts,
        })
    }
}

impl Store for MemoryStore {
    fn load(&mut self) -> Result<Loaded, StoreError> {
        Ok(Loaded {
            pieces: self
                .pieces
                .iter()
                .map(|(id, lines)| fold_piece(id.clone(), lines.clone()))
                .collect(),
            shop: self.shop.clone(),
            problems: Vec::new(),
        })
    }

    fn load_piece(&mut self, piece: &PieceId) -> Result<Vec<Line<PieceFact>>, StoreError> {
        let found = self.pieces.iter().find(|(id, _)| id == piece);
        Ok(found.map(|(_, lines)| lines.clone()).unwrap_or_default())
    }

    fn append_piece(
        &mut self,
        piece: &PieceId,
        at: Moment,
        noted_at: Moment,
        facts: Vec<PieceFact>,
    ) -> Result<Line<PieceFact>, StoreError> {
        if self.failing {
            return Err(StoreError("The disk is full.".into()));
        }
        let place = match self.pieces.iter().position(|(id, _)| id == piece) {
            Some(place) => place,
            None => {
                self.pieces.push((piece.clone(), Vec::new()));
                self.pieces.len() - 1
            }
        };
        let line = Self::line(&self.pieces[place].1, at, noted_at, facts)?;
        self.pieces[place].1.push(line.clone());
        Ok(line)
    }

    fn append_shop(
        &mut self,
        at: Moment,
        noted_at: Moment,
        facts: Vec<ShopFact>,
    ) -> Result<Line<ShopFact>, StoreError> {
        if self.failing {
            return Err(StoreError("The disk is full.".into()));
        }
        let line = Self::line(&self.shop, at, noted_at, facts)?;
        self.shop.push(line.clone());
        Ok(line)
    }

    fn save_device_settings(&mut self, json: &str) -> Result<(), StoreError> {
        if self.failing {
            return Err(StoreError("The disk is full.".into()));
        }
        self.settings = Some(json.to_owned());
        Ok(())
    }

    fn device_settings(&self) -> Option<String> {
        self.settings.clone()
    }

    fn random(&mut self) -> u64 {
        self.counter += 1;
        self.counter.wrapping_mul(0x9E37_79B9_7F4A_7C15)
    }

    fn place(&self) -> String {
        "memory".into()
    }

    fn photos(&self) -> Option<&dyn PhotoStore> {
        Some(self)
    }

    fn photos_mut(&mut self) -> Option<&mut dyn PhotoStore> {
        Some(self)
    }

    fn device(&self) -> Option<DeviceId> {
        DeviceId::new("memory").ok()
    }

    fn save_private(&mut self, name: &str, bytes: &[u8]) -> Result<(), StoreError> {
        self.save_outside(name, bytes)
    }

    fn read_private(&self, name: &str) -> Option<Vec<u8>> {
        self.outside.get(name).cloned()
    }

    fn read_outside(&self, path: &str) -> Result<Option<Vec<u8>>, StoreError> {
        Ok(self.outside.get(path).cloned())
    }

    fn save_outside(&mut self, path: &str, bytes: &[u8]) -> Result<(), StoreError> {
        if self.failing {
            return Err(StoreError("The disk is full.".into()));
        }
        self.outside.insert(path.to_owned(), bytes.to_owned());
        Ok(())
    }
}
