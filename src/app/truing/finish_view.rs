//! Finish view: final walls, grits, coats, size, weight, signature; and the button that ends it.

use evenwall_piece::detail::DetailField;
use evenwall_piece::photo::PhotoOn;
use evenwall_piece::piece::Moment;

use super::SheetView;
use super::finishing::{final_readings, final_weight};
use crate::app::App;
use crate::piece::view::HeadView;
use crate::words::dates::Dates;

/// A line of what was recorded, or a way to record it.
#[derive(Debug, Clone, PartialEq)]
pub struct FinishRow {
    /// Stable key; empty for a line that only reads.
    pub key: &'static str,
    /// Its name.
    pub title: String,
    /// How it stands.
    pub note: String,
    /// Its icon.
    pub icon: &'static str,
}

/// The page Finish.
#[derive(Debug, Clone, PartialEq)]
pub struct FinishView {
    /// The head.
    pub head: HeadView,
    /// Said below the head.
    pub intro: String,
    /// Walls, size, weight, signature.
    pub rows: Vec<FinishRow>,
    /// Heads the grits.
    pub grits_title: String,
    /// Grits: what and when.
    pub grits: Vec<FinishRow>,
    /// The button for more.
    pub grits_add: String,
    /// Heads the coats.
    pub coats_title: String,
    /// Coats: what and when.
    pub coats: Vec<FinishRow>,
    /// The button for more.
    pub coats_add: String,
    /// The stage's standing caution.
    pub caution: String,
    /// The sheet over the page.
    pub sheet: Option<SheetView>,
    /// The button below; empty once the piece has ended.
    pub finished: String,
}

impl App {
    /// The page Finish; `None` where the piece is gone.
    #[must_use]
    pub fn finish_view(&self, now: Moment) -> Option<FinishView> {
        let piece = self.truing_piece()?;
        let (words, numbers) = (self.words(), self.numbers());
        let dates = Dates::new(words, now.date_naive());
        let finish = &piece.finish;
        let row = |key, id: &str, note: String, icon| FinishRow {
            key,
            title: words.text(id),
            note,
            icon,
        };
        let not_yet = || words.text("finish-not-recorded");
        let walls = match final_readings(piece) {
            (0, _) => not_yet(),
            (read, all) => words.with("finish-read", &[("n", read.into()), ("all", all.into())]),
        };
        let size = piece
            .details
            .text(DetailField::FinishedSize)
            .map_or_else(not_yet, str::to_owned);
        let weight = final_weight(piece).map_or_else(not_yet, |w| {
            let step = self.shop().scale_step_at(w.at);
            let weight = numbers.mass_by_scale(w.net_g(), step).text();
            let day = dates.near(w.at.date_naive());
            words.with(
                "piece-way-weighed",
                &[("weight", weight.into()), ("day", day.into())],
            )
        });
        let signed = finish
            .signed
            .as_ref()
            .map_or_else(not_yet, |(_, text)| text.clone());
        let listed = |all: &[(Moment, String)]| -> Vec<FinishRow> {
            all.iter()
                .map(|(at, text)| FinishRow {
                    key: "",
                    title: text.clone(),
                    note: dates.day_and_month(at.date_naive()),
                    icon: "",
                })
                .collect()
        };
        Some(FinishView {
            head: self.inner_head(piece, "finish-title"),
            intro: words.text("finish-intro"),
            rows: vec![
                row("walls", "finish-walls", walls, "callipers"),
                row("size", "detail-finished-size", size, "pencil"),
                row("weight", "finish-weight", weight, "scale"),
                row("signed", "finish-signed", signed, "pencil"),
                row(
                    "photos",
                    "finish-photos",
                    self.photos_count(piece, &PhotoOn::Finished),
                    "camera",
                ),
            ],
            grits_title: words.text("finish-grits"),
            grits: listed(&finish.grits),
            grits_add: words.text("finish-grits-add"),
            coats_title: words.text("finish-coats"),
            coats: listed(&finish.coats),
            coats_add: words.text("finish-coats-add"),
            caution: words.text("caution-finish"),
            sheet: self.truing_sheet_view(),
            finished: if piece.living() {
                words.text("finish-finished")
            } else {
                String::new()
            },
        })
    }
}
