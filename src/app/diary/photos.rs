//! Photos: those of an entry of the diary, and the photo that an entry is about.

use evenwall_piece::diary::DiaryEntry;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::photo::PhotoOn;
use evenwall_piece::piece::Piece;

use super::entry_of;
use crate::action::Action;
use crate::app::App;
use crate::route::Page;

/// What photos of an entry are of; none where the entry is about a photo itself.
fn photos_of(entry: &DiaryEntry) -> Option<PhotoOn> {
    match &entry.fact {
        PieceFact::PhotoAdded(_)
        | PieceFact::PhotoRemoved(_)
        | PieceFact::PhotoBack(_)
        | PieceFact::PhotoMarked(_) => None,
        PieceFact::Look { feel: Some(_), .. } => Some(PhotoOn::BagCheck(entry.entry.clone())),
        _ => Some(PhotoOn::Entry(entry.entry.clone())),
    }
}

impl App {
    /// The word for the photos of an entry, or for the photo that it is about.
    pub(super) fn entry_photos_words(&self, entry: &DiaryEntry) -> String {
        self.words().text(if photos_of(entry).is_some() {
            "photos-of-entry"
        } else {
            "photos-open"
        })
    }

    /// How many there are, in words; empty for an entry about a photo.
    pub(super) fn entry_photos_count(&self, piece: &Piece, entry: &DiaryEntry) -> String {
        photos_of(entry).map_or_else(String::new, |on| self.photos_count(piece, &on))
    }

    /// Opens the photos of the entry with this text id, or the photo that it is about.
    #[must_use]
    pub fn diary_photos_action(&self, id: &str) -> Option<Action> {
        let piece = self.piece(self.route().page()?.piece()?)?;
        let entry = entry_of(id)?;
        let entry = piece.diary.iter().find(|e| e.entry == entry)?;
        let page = match (&entry.fact, photos_of(entry)) {
            (_, Some(on)) => Page::Photos(piece.id.clone(), on),
            (PieceFact::PhotoAdded(note), None) => {
                Page::Photo(piece.id.clone(), note.photo.clone())
            }
            (PieceFact::PhotoRemoved(photo) | PieceFact::PhotoBack(photo), None) => {
                Page::Photo(piece.id.clone(), photo.clone())
            }
            (PieceFact::PhotoMarked(marks), None) => {
                Page::Photo(piece.id.clone(), marks.photo.clone())
            }
            _ => return None,
        };
        Some(Action::Open(page))
    }
}
