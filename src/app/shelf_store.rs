//! Shelf store: the shelf on disk as the app's store, and this device's own settings beside it.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use evenwall_piece::fact::PieceFact;
use evenwall_piece::fold::fold_piece;
use evenwall_piece::ids::PieceId;
use evenwall_piece::line::Line;
use evenwall_piece::piece::Moment;
use evenwall_piece::shop::ShopFact;
use evenwall_shelf::disk::{Disk, RealDisk};
use evenwall_shelf::shelf::Shelf;

use crate::store::{Loaded, Store, StoreError};

/// Gives fresh random bits.
pub type Random = Box<dyn FnMut() -> u64>;

/// A shelf on disk.
pub struct ShelfStore {
    shelf: Shelf,
    disk: Arc<dyn Disk>,
    settings_file: PathBuf,
    settings: Option<String>,
    random: Random,
}

fn sentence(error: impl std::fmt::Display) -> StoreError {
    StoreError(error.to_string())
}

impl ShelfStore {
    /// Opens the shelf in a folder of the real disk, or makes one where the folder is missing or empty.
    ///
    /// # Errors
    /// [`StoreError`] with a sentence: not a shelf, in use, or refused by the file system.
    pub fn open(
        shelf: &Path,
        device: &Path,
        seed: [u8; 16],
        random: Random,
    ) -> Result<Self, StoreError> {
        Self::open_on(Arc::new(RealDisk::new()), shelf, device, seed, random)
    }

    /// The same on any disk, for tests that pull the plug.
    ///
    /// # Errors
    /// As [`ShelfStore::open`].
    pub fn open_on(
        disk: Arc<dyn Disk>,
        shelf: &Path,
        device: &Path,
        seed: [u8; 16],
        random: Random,
    ) -> Result<Self, StoreError> {
        let opened = Shelf::open(Arc::clone(&disk), shelf, device, seed).map_err(sentence)?;
        let settings_file = device.join("settings.json");
        let settings = disk
            .read(&settings_file)
            .ok()
            .and_then(|bytes| String::from_utf8(bytes).ok());
        Ok(Self {
            shelf: opened,
            disk,
            settings_file,
            settings,
            random,
        })
    }
}

impl Store for ShelfStore {
    fn load(&mut self) -> Result<Loaded, StoreError> {
        let fold = |id: &PieceId, lines| fold_piece(id.clone(), lines);
        let (shop, pieces) = self.shelf.load_and_fold(fold).map_err(sentence)?;
        Ok(Loaded {
            pieces: pieces.into_iter().map(|(_, piece)| piece).collect(),
            shop,
            problems: self.shelf.notices().map(ToString::to_string).collect(),
        })
    }

    fn load_piece(&mut self, piece: &PieceId) -> Result<Vec<Line<PieceFact>>, StoreError> {
        self.shelf.load_piece(piece).map_err(sentence)
    }

    fn append_piece(
        &mut self,
        piece: &PieceId,
        at: Moment,
        noted_at: Moment,
        facts: Vec<PieceFact>,
    ) -> Result<Line<PieceFact>, StoreError> {
        self.shelf
            .append_piece(piece, at, noted_at, facts)
            .map_err(sentence)
    }

    fn append_shop(
        &mut self,
        at: Moment,
        noted_at: Moment,
        facts: Vec<ShopFact>,
    ) -> Result<Line<ShopFact>, StoreError> {
        self.shelf
            .append_shop(at, noted_at, facts)
            .map_err(sentence)
    }

    fn save_device_settings(&mut self, json: &str) -> Result<(), StoreError> {
        self.disk
            .replace(&self.settings_file, json.as_bytes())
            .map_err(sentence)?;
        self.settings = Some(json.to_owned());
        Ok(())
    }

    fn device_settings(&self) -> Option<String> {
        self.settings.clone()
    }

    fn random(&mut self) -> u64 {
        (self.random)()
    }

    fn read_only(&self) -> Option<String> {
        self.shelf.read_only().map(|why| why.to_string())
    }

    fn place(&self) -> String {
        self.shelf.path().display().to_string()
    }
}
