//! Losses: where and how pieces were lost, and the turner's own guesses why, counted; drying apart from the rest.

use evenwall_piece::dried::Fate;
use evenwall_piece::fact::End;

use super::Fared;
use crate::app::App;
use crate::shop::view::{RowView, SectionView};

/// Counts by key, in the order first seen.
#[derive(Default)]
struct Tally(Vec<(&'static str, usize)>);

impl Tally {
    fn add(&mut self, key: &'static str) {
        match self.0.iter_mut().find(|(k, _)| *k == key) {
            Some((_, n)) => *n += 1,
            None => self.0.push((key, 1)),
        }
    }

    /// The most first; what is not known last.
    fn sorted(mut self) -> Vec<(&'static str, usize)> {
        self.0
            .sort_by_key(|(key, n)| (*key == "unknown", usize::MAX - n));
        self.0
    }
}

impl App {
    fn tally_section(
        &self,
        key: &'static str,
        title: &str,
        words_of: &str,
        tally: Tally,
    ) -> Option<SectionView> {
        let words = self.words();
        let rows: Vec<RowView> = tally
            .sorted()
            .into_iter()
            .map(|(value, n)| {
                let label = words.text(&format!("{words_of}{value}"));
                let count = words.with("count-pieces", &[("n", n.into())]);
                RowView::plain(format!("{key}-{value}"), label, count)
            })
            .collect();
        (!rows.is_empty()).then(|| SectionView {
            key,
            title: words.text(title),
            rows,
            ..SectionView::default()
        })
    }

    /// The cards of the losses: where, how and why of those of drying, how of the others.
    pub(super) fn loss_sections(&self, fared: &[Fared<'_>]) -> Vec<SectionView> {
        let (mut places, mut hows, mut whys) =
            (Tally::default(), Tally::default(), Tally::default());
        let mut others = Tally::default();
        for f in fared {
            let Some((
                _,
                End::Lost {
                    place, how, why, ..
                },
            )) = &f.piece.end
            else {
                continue;
            };
            if f.dried.fate == Fate::LostOtherwise {
                others.add(how.key());
                continue;
            }
            places.add(place.key());
            hows.add(how.key());
            for guess in why {
                whys.add(guess.key());
            }
        }
        let why = self
            .tally_section("why", "dried-well-why", "lost-why-", whys)
            .map(|section| SectionView {
                note: self.words().text("dried-well-why-note"),
                ..section
            });
        let others = self
            .tally_section("others", "dried-well-others", "lost-how-", others)
            .map(|section| SectionView {
                note: self.words().text("dried-well-others-note"),
                ..section
            });
        [
            self.tally_section("where", "dried-well-where", "lost-where-", places),
            self.tally_section("how", "dried-well-how", "lost-how-", hows),
            why,
            others,
        ]
        .into_iter()
        .flatten()
        .collect()
    }
}
