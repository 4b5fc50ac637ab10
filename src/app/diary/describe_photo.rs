//! Describe photo: facts about photos in words.

use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::PhotoId;
use evenwall_piece::photo::{PhotoMarks, PhotoNote, PhotoOn};
use evenwall_piece::piece::Piece;

use super::describe::Described;
use super::filter::Filter;
use crate::app::App;
use crate::words::dates::Dates;

impl App {
    /// A fact about a photo; any other is said to be about some photo.
    pub(super) fn describe_photo(&self, piece: &Piece, fact: &PieceFact) -> Described {
        let words = self.words();
        let (id, photo, note) = match fact {
            PieceFact::PhotoAdded(note) => (
                "diary-photo-added",
                Some(&note.photo),
                self.photo_taken_words(note),
            ),
            PieceFact::PhotoRemoved(id) => ("diary-photo-removed", Some(id), String::new()),
            PieceFact::PhotoBack(id) => ("diary-photo-back", Some(id), String::new()),
            PieceFact::PhotoMarked(marks) => (
                "diary-photo-marked",
                Some(&marks.photo),
                self.photo_marks_words(marks),
            ),
            _ => ("diary-photo-added", None, String::new()),
        };
        let on = match fact {
            PieceFact::PhotoAdded(note) => Some(&note.on),
            _ => photo.and_then(|id| self.photo_on(piece, id)),
        };
        let of = on.map_or_else(
            || words.text("diary-photo-of-some"),
            |on| self.photo_on_words(piece, on),
        );
        Described {
            icon: "camera",
            title: words.with(id, &[("of", of.into())]),
            note,
            filter: match on {
                Some(PhotoOn::Flaw(_)) => Filter::Flaws,
                Some(PhotoOn::BagCheck(_)) => Filter::Looks,
                Some(PhotoOn::Finished) => Filter::Finish,
                _ => Filter::Notes,
            },
        }
    }

    fn photo_on<'p>(&self, piece: &'p Piece, id: &PhotoId) -> Option<&'p PhotoOn> {
        piece.photo(id).map(|p| &p.note.on)
    }

    fn photo_on_words(&self, piece: &Piece, on: &PhotoOn) -> String {
        let words = self.words();
        match on {
            PhotoOn::Flaw(flaw) => self.flaw_words(piece, flaw),
            PhotoOn::Entry(entry) => {
                let found = piece.diary.iter().find(|e| e.entry == *entry);
                found.map_or_else(
                    || words.text("diary-photo-of-some"),
                    |e| match &e.fact {
                        // A photo of a photo's entry would go round and round.
                        PieceFact::PhotoAdded(_) | PieceFact::PhotoMarked(_) => {
                            words.text("diary-photo-of-some")
                        }
                        fact => self.describe(piece, fact).title,
                    },
                )
            }
            PhotoOn::Portrait => words.text("diary-photo-of-piece"),
            PhotoOn::BagCheck(_) => words.text("diary-photo-of-look"),
            PhotoOn::Finished => words.text("diary-photo-of-finished"),
        }
    }

    fn photo_taken_words(&self, note: &PhotoNote) -> String {
        note.taken.map_or_else(String::new, |taken| {
            let date = taken.local.date();
            let day = Dates::new(self.words(), date).full(date);
            let time = taken.local.format("%H:%M").to_string();
            self.words().with(
                "diary-photo-taken",
                &[("day", day.into()), ("time", time.into())],
            )
        })
    }

    fn photo_marks_words(&self, marks: &PhotoMarks) -> String {
        marks.crack.map_or_else(String::new, |crack| {
            let length = self.numbers().length_fine(crack.length_mm).text();
            self.words()
                .with("diary-photo-length", &[("length", length.into())])
        })
    }
}
