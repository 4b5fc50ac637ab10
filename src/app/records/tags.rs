//! Tags: labels for necks and shelves, with the mark, the wood, the dates, the first weight, the next look and a code.

use evenwall_piece::agenda::next_look;
use evenwall_piece::detail::DetailField;
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_records::tag::{self, Sheet, Tag};

use super::report::paper;
use crate::app::{App, AppError};
use crate::details;

impl App {
    /// The tags of these pieces as the text of one HTML file, labels as large as the device's settings say.
    ///
    /// # Errors
    /// [`AppError::Refused`] with a sentence: no piece, a label that cannot be printed.
    pub fn tags(&self, pieces: &[PieceId], now: Moment) -> Result<String, AppError> {
        let device = self.device();
        let words = self.words();
        let sheet = Sheet {
            language: words.language().key().to_owned(),
            title: words.text("records-tags-title"),
            paper: paper(device.paper),
            width_mm: device.tag_width_mm,
            height_mm: device.tag_height_mm,
            tags: pieces
                .iter()
                .filter_map(|id| self.piece(id))
                .map(|p| self.tag_of(p, now))
                .collect(),
        };
        tag::write(&sheet).map_err(|e| AppError::Refused(e.to_string()))
    }

    /// What the code on a tag says: mark and id as plain text, `K07 k07-1d81f5ce7f`.
    #[must_use]
    pub fn tag_code(&self, piece: &PieceId) -> String {
        format!("{} {piece}", self.mark_of(piece))
    }

    /// The piece that a code means, whatever its mark says by now; `None` where it is none of this shelf.
    #[must_use]
    pub fn piece_of_code(&self, code: &str) -> Option<PieceId> {
        let id = PieceId::new(code.split_whitespace().next_back()?).ok()?;
        self.piece(&id).map(|p| p.id.clone())
    }

    fn tag_of(&self, piece: &Piece, now: Moment) -> Tag {
        let words = self.words();
        let day = |at: Moment| self.dates(now).full(at.date_naive());
        let mut lines = vec![self.wood_of(piece)];
        if let Some(felled) = piece.details.get(DetailField::Felled) {
            let felled = details::value_text(self, DetailField::Felled, felled);
            lines.push(words.with("records-tag-felled", &[("day", felled.into())]));
        }
        if let Some(created) = piece.created {
            lines.push(words.with("records-tag-turned", &[("day", day(created).into())]));
        }
        if let Some(first) = piece.weighings.first() {
            let step = self.shop().scale_step_at(first.at);
            let mass = self.numbers().mass_by_scale(first.net_g(), step).text();
            lines.push(words.with(
                "records-tag-weight",
                &[("mass", mass.into()), ("day", day(first.at).into())],
            ));
        }
        let next = self.with_bench(now, |bench| {
            let asks = piece.living() && !evenwall_piece::agenda::is_paused(piece, bench.today);
            asks.then(|| next_look(piece, bench)).flatten()
        });
        if let Some(next) = next {
            let next = self.dates(now).full(next);
            lines.push(words.with("records-tag-next", &[("day", next.into())]));
        }
        lines.retain(|l| !l.is_empty());
        Tag {
            mark: self.mark_of(&piece.id),
            lines,
            code: self.tag_code(&piece.id),
        }
    }

    pub(crate) fn save_tags(
        &mut self,
        pieces: &[PieceId],
        path: &str,
        now: Moment,
    ) -> Result<(), AppError> {
        let page = self.tags(pieces, now)?;
        self.save_record(path, page.as_bytes())
    }
}
