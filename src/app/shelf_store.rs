//! Shelf store: the shelf on disk as the app's store, and this device's own settings beside it.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use evenwall_piece::fact::PieceFact;
use evenwall_piece::fold::fold_piece;
use evenwall_piece::ids::{DeviceId, PieceId, Scope};
use evenwall_piece::line::Line;
use evenwall_piece::photo::PhotoHash;
use evenwall_piece::piece::Moment;
use evenwall_piece::shop::ShopFact;
use evenwall_shelf::backup::{self, Checked, Restored, Written};
use evenwall_shelf::disk::{Disk, RealDisk};
use evenwall_shelf::outside;
use evenwall_shelf::photos::PhotoFile;
use evenwall_shelf::shelf::Shelf;

use crate::photo_store::PhotoStore;
use crate::store::{Arrived, Loaded, Store, StoreError};

/// Gives fresh random bits.
pub type Random = Box<dyn FnMut() -> u64>;

/// A shelf on disk.
pub struct ShelfStore {
    shelf: Shelf,
    disk: Arc<dyn Disk>,
    settings_file: PathBuf,
    /// Outside of the shelf, can be deleted at any time.
    thumbnails: PathBuf,
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
        Ok(Self::around(opened, disk, device, random))
    }

    /// Opens a shelf for reading only: no lock is taken and nothing written, so that it may be open elsewhere.
    ///
    /// # Errors
    /// [`StoreError`] with a sentence: no shelf there, or refused by the file system.
    pub fn open_reader_on(
        disk: Arc<dyn Disk>,
        shelf: &Path,
        device: &Path,
    ) -> Result<Self, StoreError> {
        let opened = Shelf::open_reader(Arc::clone(&disk), shelf).map_err(sentence)?;
        Ok(Self::around(opened, disk, device, Box::new(|| 0)))
    }

    /// An opened shelf with this device's own settings and thumbnails.
    fn around(shelf: Shelf, disk: Arc<dyn Disk>, device: &Path, random: Random) -> Self {
        let settings_file = device.join("settings.json");
        let settings = disk
            .read(&settings_file)
            .ok()
            .and_then(|bytes| String::from_utf8(bytes).ok());
        Self {
            shelf,
            disk,
            settings_file,
            thumbnails: device.join("thumbnails"),
            settings,
            random,
        }
    }

    fn problems(&self) -> Vec<String> {
        self.shelf.notices().map(ToString::to_string).collect()
    }
}

impl Store for ShelfStore {
    fn load(&mut self) -> Result<Loaded, StoreError> {
        let fold = |id: &PieceId, lines| fold_piece(id.clone(), lines);
        let (shop, pieces) = self.shelf.load_and_fold(fold).map_err(sentence)?;
        Ok(Loaded {
            pieces: pieces.into_iter().map(|(_, piece)| piece).collect(),
            shop,
            problems: self.problems(),
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

    fn save_private(&mut self, name: &str, bytes: &[u8]) -> Result<(), StoreError> {
        let path = self.settings_file.with_file_name(name);
        self.disk.replace(&path, bytes).map_err(sentence)
    }

    fn read_private(&self, name: &str) -> Option<Vec<u8>> {
        self.disk
            .read(&self.settings_file.with_file_name(name))
            .ok()
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

    fn refresh(&mut self) -> Result<Arrived, StoreError> {
        let mut arrived = Arrived::default();
        let changed = self.shelf.refresh().map_err(sentence)?;
        if changed.is_empty() {
            return Ok(arrived);
        }
        for scope in changed {
            match scope {
                Scope::Shop => arrived.shop = Some(self.shelf.load_shop().map_err(sentence)?),
                Scope::Piece(id) => {
                    let lines = self.shelf.load_piece(&id).map_err(sentence)?;
                    arrived.pieces.push((id, lines));
                }
            }
        }
        arrived.problems = Some(self.problems());
        Ok(arrived)
    }

    fn device(&self) -> Option<DeviceId> {
        self.shelf.device().cloned()
    }

    fn read_outside(&self, path: &str) -> Result<Option<Vec<u8>>, StoreError> {
        outside::read(&*self.disk, Path::new(path)).map_err(sentence)
    }

    fn save_outside(&mut self, path: &str, bytes: &[u8]) -> Result<(), StoreError> {
        outside::save(&*self.disk, self.shelf.path(), Path::new(path), bytes).map_err(sentence)
    }

    fn makes_backups(&self) -> bool {
        self.read_only().is_none()
    }

    fn back_up(&mut self, folder: &str, now: Moment) -> Result<Written, StoreError> {
        let shelf = self.shelf.path();
        backup::write(&*self.disk, shelf, Path::new(folder), now, &mut |_, _| true)
            .map_err(sentence)
    }

    fn backups_in(&self, folder: &str) -> Result<Vec<String>, StoreError> {
        outside::backups_in(&*self.disk, Path::new(folder)).map_err(sentence)
    }

    fn check_backup(&self, path: &str) -> Result<Checked, StoreError> {
        backup::check(&*self.disk, Path::new(path)).map_err(sentence)
    }

    fn restore(&mut self, path: &str, now: Moment) -> Result<Restored, StoreError> {
        backup::restore(&*self.disk, self.shelf.path(), Path::new(path), now).map_err(sentence)
    }

    fn photos(&self) -> Option<&dyn PhotoStore> {
        Some(self)
    }

    fn photos_mut(&mut self) -> Option<&mut dyn PhotoStore> {
        Some(self)
    }
}

impl PhotoStore for ShelfStore {
    fn append_with_photos(
        &mut self,
        piece: &PieceId,
        at: Moment,
        noted_at: Moment,
        facts: Vec<PieceFact>,
        photos: &[Vec<u8>],
    ) -> Result<Line<PieceFact>, StoreError> {
        self.shelf
            .append_with_photos(piece, at, noted_at, facts, photos)
            .map_err(sentence)
    }

    fn photo_is_here(&self, piece: &PieceId, photo: &PhotoHash) -> bool {
        self.shelf.photo_is_here(piece, photo)
    }

    fn photo_path(&self, piece: &PieceId, photo: &PhotoHash) -> Option<PathBuf> {
        Some(self.shelf.photo_path(piece, photo))
    }

    fn photo_bytes(
        &self,
        piece: &PieceId,
        photo: &PhotoHash,
    ) -> Result<Option<Vec<u8>>, StoreError> {
        match self.shelf.photo(piece, photo).map_err(sentence)? {
            PhotoFile::Here(bytes) => Ok(Some(bytes)),
            PhotoFile::NotHere | PhotoFile::NotWhole => Ok(None),
        }
    }

    fn thumbnail_path(&self, photo: &PhotoHash) -> Option<PathBuf> {
        let path = self.thumbnails.join(format!("{photo}.jpg"));
        let is_there = matches!(self.disk.len(&path), Ok(len) if len > 0);
        is_there.then_some(path)
    }

    fn save_thumbnail(&mut self, photo: &PhotoHash, jpeg: &[u8]) -> Result<(), StoreError> {
        // A cache: whole or not there, but not synced.
        let beside = self.thumbnails.join(".new");
        self.disk
            .create_folder(&self.thumbnails)
            .map_err(sentence)?;
        self.disk.write(&beside, jpeg).map_err(sentence)?;
        let path = self.thumbnails.join(format!("{photo}.jpg"));
        self.disk.rename(&beside, &path).map_err(sentence)
    }

    fn photos_len(&self, piece: &PieceId, photos: &[PhotoHash]) -> Result<u64, StoreError> {
        let there = self.shelf.photos(piece).map_err(sentence)?;
        Ok(there
            .iter()
            .filter(|(hash, _)| photos.contains(hash))
            .map(|(_, len)| len)
            .sum())
    }

    fn tidy_photos(&mut self, piece: &PieceId, photos: &[PhotoHash]) -> Result<u64, StoreError> {
        self.shelf.tidy_photos(piece, photos).map_err(sentence)
    }
}
