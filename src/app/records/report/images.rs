//! Images: the photos of a piece for its report.

use evenwall_piece::photo::{Photo, PhotoOn};
use evenwall_piece::piece::{Moment, Piece};
use evenwall_records::report::ReportPhoto;

use super::ReportImages;
use crate::app::App;

/// The most photos of one flaw, and the most of all the rest: a report is sent by mail.
const MOST_OF_A_FLAW: usize = 4;
const MOST_OTHERS: usize = 12;

impl App {
    /// The photos that are here; one that is still on its way from another device, or cannot be read, is left out.
    pub(crate) fn report_images(&self, piece: &Piece, now: Moment) -> ReportImages {
        let Some(store) = self.store.photos() else {
            return ReportImages::default();
        };
        let dates = self.dates(now);
        let image = |photo: &&Photo| {
            let jpeg = store.photo_bytes(&piece.id, &photo.note.stored).ok()??;
            Some(ReportPhoto {
                jpeg,
                caption: dates.full(photo.when().date()),
            })
        };
        let flaws = piece.flaws.iter().filter_map(|flaw| {
            let id = flaw.note.flaw.clone();
            let photos = piece.photos_on(&PhotoOn::Flaw(id.clone()));
            let shown: Vec<ReportPhoto> = photos
                .iter()
                .filter_map(image)
                .take(MOST_OF_A_FLAW)
                .collect();
            (!shown.is_empty()).then_some((id, shown))
        });
        let portrait = piece.portrait();
        let is_other = |photo: &&Photo| {
            photo.removed.is_none()
                && !matches!(photo.note.on, PhotoOn::Flaw(_))
                && portrait.is_none_or(|p| p.note.stored != photo.note.stored)
        };
        let mut others: Vec<&Photo> = piece.photos.iter().filter(is_other).collect();
        others.sort_by_key(|p| p.when());
        ReportImages {
            portrait: portrait.as_ref().and_then(image),
            flaws: flaws.collect(),
            others: others.iter().filter_map(image).take(MOST_OTHERS).collect(),
        }
    }
}
