//! Tidy: removes the files of photos that were deleted 90 days ago or more, when the turner asks and knows what it frees.

use evenwall_piece::ids::PieceId;
use evenwall_piece::photo::PhotoHash;
use evenwall_piece::piece::Moment;
use evenwall_piece::tidying::{TIDY_AFTER_DAYS, photos_to_tidy};

use super::PhotosAction;
use crate::action::Action;
use crate::app::{App, AppError};
use crate::question::{Choice, ChoiceStyle, Question};

impl App {
    /// What may go, piece by piece. Reads the diaries of pieces that ever had a photo and no others.
    fn photos_old(&mut self, now: Moment) -> Result<Vec<(PieceId, Vec<PhotoHash>)>, AppError> {
        let added = |p: &&evenwall_piece::piece::Piece| {
            p.diary
                .iter()
                .any(|e| matches!(e.fact, evenwall_piece::fact::PieceFact::PhotoAdded(_)))
        };
        let ids: Vec<PieceId> = self
            .pieces
            .values()
            .filter(added)
            .map(|p| p.id.clone())
            .collect();
        let mut old = Vec::new();
        for id in ids {
            let lines = self.lines_of(&id)?.clone();
            let Some(piece) = self.pieces.get(&id) else {
                continue;
            };
            let photos = photos_to_tidy(piece, &lines, now);
            if !photos.is_empty() {
                old.push((id, photos));
            }
        }
        Ok(old)
    }

    /// What tidying would free: photos whose files are there, and their bytes.
    ///
    /// # Errors
    /// [`AppError`] where the diaries or files cannot be read.
    pub fn photos_tidy_frees(&mut self, now: Moment) -> Result<(usize, u64), AppError> {
        let old = self.photos_old(now)?;
        let Some(store) = self.store.photos() else {
            return Err(self.photos_nowhere());
        };
        let (mut n, mut bytes) = (0, 0);
        for (piece, photos) in &old {
            n += photos
                .iter()
                .filter(|p| store.photo_is_here(piece, p))
                .count();
            bytes += store.photos_len(piece, photos)?;
        }
        Ok((n, bytes))
    }

    pub(super) fn photos_ask_tidy(&mut self, now: Moment) -> Result<(), AppError> {
        let (n, bytes) = self.photos_tidy_frees(now)?;
        let words = self.words();
        let days = TIDY_AFTER_DAYS;
        if n == 0 {
            let text = words.with("photos-tidy-nothing", &[("days", days.into())]);
            self.inform(words.text("photos-tidy-title"), text);
            return Ok(());
        }
        let choice = |label: &str, style, action| Choice {
            label: words.text(label),
            style,
            action,
        };
        let question = Question {
            title: words.text("photos-tidy-title"),
            text: words.with(
                "photos-tidy-text",
                &[
                    ("n", i64::try_from(n).unwrap_or(i64::MAX).into()),
                    ("days", days.into()),
                    ("size", megabytes(bytes).into()),
                ],
            ),
            choices: vec![
                choice(
                    "photos-tidy-do",
                    ChoiceStyle::Danger,
                    Some(Action::Photos(PhotosAction::Tidy)),
                ),
                choice("action-close", ChoiceStyle::Plain, None),
            ],
            caution: false,
        };
        self.ask(question);
        Ok(())
    }

    pub(super) fn photos_tidy(&mut self, now: Moment) -> Result<(), AppError> {
        let old = self.photos_old(now)?;
        let mut freed = 0;
        for (piece, photos) in &old {
            let Some(store) = self.store.photos_mut() else {
                return Err(self.photos_nowhere());
            };
            freed += store.tidy_photos(piece, photos)?;
        }
        let words = self.words();
        let text = words.with("photos-tidied", &[("size", megabytes(freed).into())]);
        self.inform(words.text("photos-tidy-title"), text);
        Ok(())
    }
}

/// "12.3": megabytes with one decimal, at least 0.1.
fn megabytes(bytes: u64) -> String {
    let tenths = (bytes / 100_000).max(1);
    format!("{}.{}", tenths / 10, tenths % 10)
}
