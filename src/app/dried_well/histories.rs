//! Histories: pieces out of one log side by side: what differed between them, and what became of each.

use std::collections::BTreeMap;

use evenwall_piece::agenda::by_mark;

use super::bands::Kind;
use super::{DriedWellAction, Fared};
use crate::app::App;
use crate::pieces::folded;
use crate::shop::view::{RowKind, RowView, SectionView};

/// Logs that are shown, the latest first; more would not be read.
const MOST_LOGS: usize = 12;

impl App {
    /// "Bag, turned · 11.5 mm, thickest less thinnest 2 mm · pith in the wall".
    fn twin_note(&self, fared: &Fared<'_>) -> String {
        let (words, numbers) = (self.words(), self.numbers());
        let mut parts = vec![self.band(fared, Kind::Method).name];
        if let Some(wall) = fared.wall {
            let mm = numbers.wall(wall.wall_mm).text();
            parts.push(match wall.spread_mm {
                Some(spread) => words.with(
                    "dried-well-twin-spread",
                    &[
                        ("wall", mm.into()),
                        ("spread", numbers.wall(spread).text().into()),
                    ],
                ),
                None => words.with("dried-well-twin-wall", &[("wall", mm.into())]),
            });
        }
        let pith = self.band(fared, Kind::Pith);
        if pith.known {
            let place = pith.name.as_str().into();
            parts.push(words.with("dried-well-twin-pith", &[("place", place)]));
        }
        parts.join(&words.text("dried-well-between"))
    }

    fn twin_row(&self, fared: &Fared<'_>) -> RowView {
        let words = self.words();
        let days = words.with("date-days", &[("n", fared.dried.days.into())]);
        let title = words.with(
            "dried-well-twin",
            &[
                ("mark", fared.piece.mark().into()),
                (
                    "fate",
                    words
                        .with(
                            &format!("dried-well-fate-{}", fared.dried.fate.key()),
                            &[("days", days.into())],
                        )
                        .into(),
                ),
            ],
        );
        RowView::touching(
            RowKind::Open,
            format!("twin-{}", fared.piece.id),
            title,
            DriedWellAction::Open(fared.piece.id.clone()),
        )
        .note(self.twin_note(fared))
    }

    /// One card a log of which at least two pieces dried and drying has decided at least one; the latest log first.
    pub(super) fn twin_sections(&self, fared: &[Fared<'_>]) -> Vec<SectionView> {
        let mut logs: BTreeMap<String, Vec<&Fared<'_>>> = BTreeMap::new();
        for f in fared {
            if let Some(log) = f.log() {
                logs.entry(folded(log)).or_default().push(f);
            }
        }
        let mut logs: Vec<Vec<&Fared<'_>>> = logs
            .into_values()
            .filter(|twins| twins.len() > 1 && twins.iter().any(|t| t.dried.fate.decided()))
            .collect();
        logs.sort_by_key(|twins| std::cmp::Reverse(twins.iter().map(|t| t.dried.since).max()));
        logs.truncate(MOST_LOGS);
        logs.into_iter()
            .map(|mut twins| {
                twins.sort_by(|a, b| by_mark(a.piece.mark(), b.piece.mark()));
                let log = twins.first().and_then(|t| t.log()).unwrap_or_default();
                SectionView {
                    key: "twins",
                    title: log.to_owned(),
                    rows: twins.iter().map(|t| self.twin_row(t)).collect(),
                    ..SectionView::default()
                }
            })
            .collect()
    }
}
