//! Banners: what stands above the page of a piece because something about it is out of the ordinary.

use evenwall_piece::agenda::is_paused;
use evenwall_piece::piece::{Moment, Piece};

use crate::app::App;
use crate::piece::view::BannerView;
use crate::words::dates::Dates;

impl App {
    /// The banners of a piece, the most pressing first.
    pub(crate) fn banners(&self, piece: &Piece, now: Moment) -> Vec<BannerView> {
        let words = self.words();
        let dates = Dates::new(words, now.date_naive());
        let banner = |key, kind, text: String, action: &str| BannerView {
            key,
            kind,
            text,
            action: if action.is_empty() {
                String::new()
            } else {
                words.text(action)
            },
        };
        let mut all = Vec::new();
        if piece.deleted.is_some() {
            let text = words.text("piece-banner-deleted");
            all.push(banner("undelete", "error", text, "piece-undelete"));
        }
        if piece.came_back {
            let text = words.text("piece-banner-came-back");
            all.push(banner("keep", "info", text, "piece-keep"));
        }
        if piece.mark().is_empty() && piece.deleted.is_none() {
            // The line that made it is there, the one with its mark is still on its way, or it was cleared.
            let text = words.text("piece-banner-no-mark");
            all.push(banner("details", "info", text, "piece-open-details"));
        }
        if piece.unknown_facts > 0 {
            let text = words.with("piece-banner-unknown", &[("n", piece.unknown_facts.into())]);
            all.push(banner("", "info", text, ""));
        }
        if !piece.living() {
            return all;
        }
        if let Some(since) = piece.not_found {
            let day = dates.near(since.date_naive());
            let text = words.with("piece-banner-not-found", &[("day", day.into())]);
            all.push(banner("found", "error", text, "piece-found"));
        }
        if let Some(since) = piece.half_turned {
            let day = dates.near(since.date_naive());
            let text = words.with("piece-banner-half-turned", &[("day", day.into())]);
            all.push(banner("resume", "info", text, "piece-resume"));
        }
        if is_paused(piece, now.date_naive()) {
            let until = piece.paused.and_then(|(_, until)| until);
            let text = match until {
                Some(day) => words.with(
                    "piece-banner-paused-until",
                    &[("day", dates.day_and_month(day).into())],
                ),
                None => words.text("piece-banner-paused"),
            };
            all.push(banner("unpause", "info", text, "piece-unpause"));
        }
        all
    }
}
