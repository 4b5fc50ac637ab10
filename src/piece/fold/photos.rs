//! Photos: what is recorded about photos, put on the state of a piece.

use crate::fact::PieceFact;
use crate::ids::{EntryId, PhotoId};
use crate::photo::{Photo, PhotoMarks};
use crate::piece::{Moment, Piece};

enum Event {
    Removed(Moment),
    Back,
    Marked(PhotoMarks),
}

/// What happened to photos, kept until all notes are read: an event may stand before its photo's note.
#[derive(Default)]
pub(super) struct Photos(Vec<(PhotoId, Event)>);

impl Photos {
    /// Takes a fact about a photo; any other changes nothing.
    pub(super) fn apply(
        &mut self,
        piece: &mut Piece,
        entry: &EntryId,
        at: Moment,
        fact: &PieceFact,
    ) {
        match fact {
            PieceFact::PhotoAdded(note) if piece.photo(&note.photo).is_none() => {
                piece.photos.push(Photo {
                    entry: entry.clone(),
                    at,
                    stage: piece.stage(),
                    note: note.clone(),
                    marks: None,
                    removed: None,
                });
            }
            PieceFact::PhotoRemoved(id) => self.0.push((id.clone(), Event::Removed(at))),
            PieceFact::PhotoBack(id) => self.0.push((id.clone(), Event::Back)),
            PieceFact::PhotoMarked(marks) => {
                self.0
                    .push((marks.photo.clone(), Event::Marked(marks.clone())));
            }
            _ => {}
        }
    }

    /// Puts the events on their photos, in fold order.
    pub(super) fn finish(self, piece: &mut Piece) {
        for (id, event) in self.0 {
            let Some(photo) = piece.photos.iter_mut().find(|p| p.note.photo == id) else {
                continue;
            };
            match event {
                Event::Removed(at) => photo.removed = Some(at),
                Event::Back => photo.removed = None,
                Event::Marked(marks) => photo.marks = Some(marks),
            }
        }
    }
}
