//! Grid: the photos of one thing, in a section of its page and on a page of their own.

use evenwall_piece::ids::PieceId;
use evenwall_piece::photo::PhotoOn;
use evenwall_piece::piece::{Moment, Piece};

use super::tiles::PhotoTile;
use crate::app::App;
use crate::piece::view::HeadView;
use crate::route::Page;

/// So many photos stand on a page about something else; the rest has a page of its own.
const ON_A_PAGE: usize = 6;

/// The photos of one thing and the ways to add some.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PhotoSection {
    /// Heads it.
    pub title: String,
    /// How many; empty for none.
    pub count: String,
    /// The newest first.
    pub tiles: Vec<PhotoTile>,
    /// Said while there is none; empty where there are some.
    pub empty: String,
    /// The button for the newest pictures; empty where none can be added.
    pub newest: String,
    /// The button for a file.
    pub file: String,
    /// The button that shows two side by side; empty where there are not two.
    pub compare: String,
    /// The button for all of them; empty where all are shown.
    pub all: String,
    /// Said of drawn pictures, in the demo; empty elsewhere.
    pub drawn: String,
}

/// The page of the photos of one thing.
#[derive(Debug, Clone, PartialEq)]
pub struct PhotosView {
    /// The head.
    pub head: HeadView,
    /// The photos.
    pub section: PhotoSection,
}

impl App {
    /// The photos of one thing and the ways to add some, with at most `most` of them.
    fn photos_section_of(
        &self,
        piece: &Piece,
        on: &PhotoOn,
        most: usize,
        now: Moment,
    ) -> PhotoSection {
        let words = self.words();
        let mut tiles = self.photos_tiles(&piece.id, on, now);
        tiles.reverse();
        let n = tiles.len();
        tiles.truncate(most);
        let open = piece.deleted.is_none();
        let button = |shown: bool, id: &str| {
            if shown { words.text(id) } else { String::new() }
        };
        let is_flaw = matches!(on, PhotoOn::Flaw(_));
        PhotoSection {
            title: words.text("photos-title"),
            count: if n == 0 { String::new() } else { n.to_string() },
            empty: button(
                n == 0,
                if is_flaw {
                    "photos-empty-flaw"
                } else {
                    "photos-empty"
                },
            ),
            newest: button(open, "photos-newest"),
            file: button(open, "photos-choose-file"),
            compare: button(is_flaw && n > 1, "photos-compare"),
            all: if n > most {
                words.with("photos-all", &[("n", n.into())])
            } else {
                String::new()
            },
            drawn: button(self.is_demo() && n > 0, "photos-drawn"),
            tiles,
        }
    }

    /// The section of photos on a page about something else.
    #[must_use]
    pub fn photos_section(&self, piece: &PieceId, on: &PhotoOn, now: Moment) -> PhotoSection {
        self.piece(piece).map_or_else(PhotoSection::default, |p| {
            self.photos_section_of(p, on, ON_A_PAGE, now)
        })
    }

    /// The page of the photos of one thing; `None` where the piece is gone.
    #[must_use]
    pub fn photos_view(&self, now: Moment) -> Option<PhotosView> {
        let Some(Page::Photos(piece, on)) = self.route().page() else {
            return None;
        };
        let piece = self.piece(piece)?;
        let mut head = self.inner_head(piece, "photos-title");
        head.subtitle = self.photo_on_title(piece, on);
        Some(PhotosView {
            head,
            section: self.photos_section_of(piece, on, usize::MAX, now),
        })
    }

    /// What photos are of, as a heading: "Check, 14 mm", "Portrait", "Weighed 828 g".
    pub(crate) fn photo_on_title(&self, piece: &Piece, on: &PhotoOn) -> String {
        let words = self.words();
        match on {
            PhotoOn::Flaw(flaw) => piece
                .flaw(flaw)
                .map_or_else(|| words.text("diary-some-flaw"), |f| self.flaw_title(f)),
            PhotoOn::Portrait => words.text("photos-on-portrait"),
            PhotoOn::BagCheck(_) => words.text("photos-on-bag-check"),
            PhotoOn::Finished => words.text("photos-on-finished"),
            PhotoOn::Entry(entry) => {
                let found = piece.diary.iter().find(|e| e.entry == *entry);
                found.map_or_else(
                    || words.text("photos-on-entry"),
                    |e| self.describe(piece, &e.fact).title,
                )
            }
        }
    }

    /// How many photos of one thing there are, in words: "3 photos", "No photo yet".
    pub(crate) fn photos_count(&self, piece: &Piece, on: &PhotoOn) -> String {
        match piece.photos_on(on).len() {
            0 => self.words().text("photos-none"),
            n => self.words().with("photos-count", &[("n", n.into())]),
        }
    }
}
