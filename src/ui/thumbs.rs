//! Thumbs: a list of photos for Slint that loads a picture when its row is asked for, so that of a long list only the rows
//! on screen are loaded.

use std::cell::RefCell;
use std::rc::Rc;

use evenwall_app::photos::PhotoTile;
use evenwall_ui::PhotoItem;
use slint::{Model, ModelNotify, ModelRc, ModelTracker};

use super::photos::item;

/// The list.
pub struct Thumbs {
    tiles: RefCell<Vec<PhotoTile>>,
    notify: ModelNotify,
}

impl Thumbs {
    /// A list of these tiles; the one that is there is kept, so that a page shown anew does not jump.
    pub fn in_place_of(old: ModelRc<PhotoItem>, tiles: Vec<PhotoTile>) -> ModelRc<PhotoItem> {
        let Some(kept) = old.as_any().downcast_ref::<Self>() else {
            return ModelRc::from(Rc::new(Self {
                tiles: RefCell::new(tiles),
                notify: ModelNotify::default(),
            }));
        };
        let before = kept.tiles.replace(tiles);
        let (changed, same_length) = {
            let now = kept.tiles.borrow();
            let changed: Vec<usize> = (0..now.len().min(before.len()))
                .filter(|i| now[*i] != before[*i])
                .collect();
            (changed, now.len() == before.len())
        };
        if same_length {
            for row in changed {
                kept.notify.row_changed(row);
            }
        } else {
            kept.notify.reset();
        }
        old
    }
}

impl Model for Thumbs {
    type Data = PhotoItem;

    fn row_count(&self) -> usize {
        self.tiles.borrow().len()
    }

    fn row_data(&self, row: usize) -> Option<PhotoItem> {
        self.tiles.borrow().get(row).map(|tile| item(tile, true))
    }

    fn model_tracker(&self) -> &dyn ModelTracker {
        &self.notify
    }

    fn as_any(&self) -> &dyn std::any::Any {
        self
    }
}
