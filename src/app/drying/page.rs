//! Page: the drying page of a piece put together.

use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::MassChange;
use evenwall_piece::weights::{Began, last_weighing, runs};

use super::view::{ChangeView, DryingView, DryingWords, HeadView, MoreView};
use crate::app::App;
use crate::route::Page;

impl App {
    /// The drying page on top; `None` where the piece is gone.
    #[must_use]
    pub fn drying_view(&self, now: Moment) -> Option<DryingView> {
        let Some(Page::Drying(id)) = self.route().page() else {
            return None;
        };
        let piece = self.piece(id)?;
        let words = self.words();
        let chart = self.chart(piece, now);
        Some(DryingView {
            head: HeadView {
                subtitle: self.whereabouts(piece, now),
                ..self.head_of(piece)
            },
            last: self.last_figure(piece, now),
            empty: self.never_weighed(piece, now),
            chart: chart.map(|c| c.view),
            measures: self.measures(piece),
            ahead: self.ahead_view(piece, now),
            warnings: self.warnings(piece, now),
            verdict: self.verdict_view(piece, now),
            uneven: self.uneven_view(piece),
            spans: self.spans(piece, now),
            picked: self.picked_view(piece, now),
            breaks: self.break_texts(piece, now),
            figures: self.loss_figures(piece, now),
            staying: self.staying_view(piece, now),
            coarse: self.coarse_text(piece, now),
            bag: self.bag_view(piece, now),
            coming: self.coming(piece, now),
            air: self.air_texts(now),
            more: self.states.drying.more.then(|| self.drying_more()),
            words: DryingWords {
                weigh: words.text("drying-weigh-now"),
                correct: words.text("drying-correct"),
                before: words.text("drying-before"),
                after: words.text("drying-after"),
                close: words.text("action-close"),
                stages: words.text("drying-stages"),
                stages_note: words.text("drying-stages-note"),
                diary: words.text("drying-diary"),
            },
        })
    }

    /// What is said where no weight counts yet.
    fn never_weighed(&self, piece: &Piece, now: Moment) -> Option<(String, String)> {
        if last_weighing(piece, now).is_some() {
            return None;
        }
        let words = self.words();
        if !piece.weighings.is_empty() {
            return Some((
                words.text("drying-ahead-title"),
                words.text("drying-ahead-text"),
            ));
        }
        let early = piece.stage().index() <= Stage::Bag.index();
        let text = words.text(if early {
            "drying-empty-early"
        } else {
            "drying-empty-late"
        });
        Some((words.text("drying-empty-title"), text))
    }

    /// Where weights are not compared, one sentence each, the latest first.
    fn break_texts(&self, piece: &Piece, now: Moment) -> Vec<String> {
        let words = self.words();
        let dates = self.dates(now);
        runs(piece, self.shop())
            .iter()
            .rev()
            .filter_map(|r| {
                let day = dates.near(r.since?.date_naive());
                let what = match r.began {
                    Began::First => return None,
                    Began::NewScale => words.text("drying-new-scale"),
                    Began::MassChanged(change) => {
                        words.text(&format!("mass-change-{}", change.key()))
                    }
                };
                Some(words.with(
                    "drying-break-note",
                    &[("day", day.into()), ("what", what.into())],
                ))
            })
            .collect()
    }

    fn drying_more(&self) -> MoreView {
        let words = self.words();
        MoreView {
            title: words.text("drying-changed-title"),
            text: words.text("drying-changed-text"),
            changes: self.mass_changes(),
        }
    }

    /// What can change the weight besides drying.
    pub(super) fn mass_changes(&self) -> Vec<ChangeView> {
        MassChange::ALL
            .iter()
            .map(|c| ChangeView {
                key: c.key(),
                text: self.words().text(&format!("mass-change-{}", c.key())),
            })
            .collect()
    }
}
