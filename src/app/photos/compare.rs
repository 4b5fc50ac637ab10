//! Compare: two photos of one flaw side by side, with their days and lengths.

use evenwall_piece::ids::PhotoId;
use evenwall_piece::photo::{Photo, PhotoOn};
use evenwall_piece::piece::Moment;

use super::tiles::PhotoTile;
use crate::app::App;
use crate::numbers::Quantity;
use crate::piece::view::HeadView;
use crate::route::Page;
use crate::words::dates::Dates;

/// One of the two.
#[derive(Debug, Clone, PartialEq)]
pub struct Side {
    /// The photo.
    pub photo: PhotoTile,
    /// What a screen reader says of it.
    pub spoken: String,
    /// There is an older one.
    pub has_older: bool,
    /// There is a newer one.
    pub has_newer: bool,
    /// The word for the older one, with which side.
    pub older: String,
    /// The word for the newer one.
    pub newer: String,
}

/// The page.
#[derive(Debug, Clone, PartialEq)]
pub struct CompareView {
    /// The head.
    pub head: HeadView,
    /// The left or upper one, and the right or lower one.
    pub sides: Vec<Side>,
    /// "13 days apart. 14 mm, then 22 mm: 8 mm longer."
    pub verdict: String,
    /// Said where there are not two photos.
    pub empty: String,
}

impl App {
    /// The photos of the flaw on the page, the oldest first, and the places of the two that are shown.
    fn compared_photos(&self) -> Option<(Vec<&Photo>, [usize; 2])> {
        let Some(Page::Compare(piece, flaw)) = self.route().page() else {
            return None;
        };
        let photos = self.piece(piece)?.photos_on(&PhotoOn::Flaw(flaw.clone()));
        let last = photos.len().saturating_sub(1);
        let place = |id: &Option<PhotoId>| {
            let id = id.as_ref()?;
            photos.iter().position(|p| p.note.photo == *id)
        };
        let [left, right] = &self.states.photos.compared;
        let places = [place(left).unwrap_or(0), place(right).unwrap_or(last)];
        Some((photos, places))
    }

    /// Shows an older (-1) or newer (1) photo on one side.
    pub(super) fn compare_step(&mut self, right: bool, by: i8) {
        let side = usize::from(right);
        let next = self.compared_photos().and_then(|(photos, places)| {
            let place = places[side].checked_add_signed(isize::from(by))?;
            Some(photos.get(place)?.note.photo.clone())
        });
        if next.is_some() {
            self.states.photos.compared[side] = next;
        }
    }

    /// The page of two photos; `None` where the piece is gone.
    #[must_use]
    pub fn compare_view(&self, now: Moment) -> Option<CompareView> {
        let Some(Page::Compare(id, flaw)) = self.route().page() else {
            return None;
        };
        let piece = self.piece(id)?;
        let words = self.words();
        let mut head = self.inner_head(piece, "photos-compare-title");
        head.subtitle = self.photo_on_title(piece, &PhotoOn::Flaw(flaw.clone()));
        let (photos, places) = self.compared_photos()?;
        if photos.len() < 2 {
            return Some(CompareView {
                head,
                sides: Vec::new(),
                verdict: String::new(),
                empty: words.text("photos-compare-none"),
            });
        }
        let side = |place: usize, which: &str| {
            let photo = self.photos_tile(id, &photos[place].note.photo, now)?;
            let word = |id: &str| words.with(id, &[("which", words.text(which).into())]);
            let spoken = [
                photo.when.as_str(),
                photo.length.as_str(),
                photo.note.as_str(),
            ];
            Some(Side {
                spoken: spoken
                    .into_iter()
                    .filter(|t| !t.is_empty())
                    .collect::<Vec<_>>()
                    .join(", "),
                has_older: place > 0,
                has_newer: place + 1 < photos.len(),
                older: word("photos-older"),
                newer: word("photos-newer"),
                photo,
            })
        };
        let sides = [
            side(places[0], "photos-first"),
            side(places[1], "photos-second"),
        ];
        Some(CompareView {
            head,
            sides: sides.into_iter().flatten().collect(),
            verdict: self.compared_in_words(photos[places[0]], photos[places[1]], now),
            empty: String::new(),
        })
    }

    fn compared_in_words(&self, one: &Photo, other: &Photo, now: Moment) -> String {
        let words = self.words();
        let (one, other) = if one.when() <= other.when() {
            (one, other)
        } else {
            (other, one)
        };
        let days = (other.when().date() - one.when().date()).num_days();
        let apart = if days == 0 {
            words.text("photos-same-day")
        } else {
            let days = Dates::new(words, now.date_naive()).length(days);
            words.with("photos-apart", &[("days", days.into())])
        };
        let length = match (one.crack_mm(), other.crack_mm()) {
            (Some(before), Some(after)) => {
                let shown = |mm: f64| {
                    let numbers = self.numbers();
                    numbers.quantity(Quantity::FlawSize, mm).text()
                };
                let (then, now) = (shown(before), shown(after));
                let args = [
                    ("before", then.as_str().into()),
                    ("after", now.as_str().into()),
                    ("by", shown((after - before).abs()).into()),
                ];
                // What reads the same is the same.
                if then == now {
                    words.with("photos-no-longer", &args[..1])
                } else if after > before {
                    words.with("photos-longer", &args)
                } else {
                    words.with("photos-shorter", &args)
                }
            }
            _ => words.text("photos-measure-both"),
        };
        format!("{apart} {length}")
    }
}
