//! Shares: kept of those that drying has decided, band by band, with how wide the truth may lie.

use std::collections::BTreeMap;

use evenwall_piece::dried::Fate;
use evenwall_wood::kept::{plainly_different, share_kept};

use super::bands::{Band, Kind};
use super::{Fared, LEVEL};
use crate::app::App;

/// With fewer, a bar would only say that nothing is known. Common practice, no source.
const ENOUGH: u32 = 5;

/// One band with its count.
#[derive(Debug, Clone, PartialEq)]
pub struct ShareView {
    /// The band: "Sycamore", "8 to 10 mm".
    pub label: String,
    /// "7 of 9 kept".
    pub count: String,
    /// How wide the truth may lie, or that there are too few.
    pub note: String,
    /// Whether a bar is drawn.
    pub drawn: bool,
    /// Kept over all, 0 to 1.
    pub share: f64,
    /// Low end of the interval.
    pub low: f64,
    /// High end.
    pub high: f64,
}

/// The count of a band.
#[derive(Debug, Clone, Copy, Default)]
struct Count {
    kept: u32,
    all: u32,
}

impl App {
    fn counts(&self, fared: &[Fared<'_>], by: Kind) -> BTreeMap<Band, Count> {
        let mut counts: BTreeMap<Band, Count> = BTreeMap::new();
        for f in fared.iter().filter(|f| f.dried.fate.decided()) {
            let count = counts.entry(self.band(f, by)).or_default();
            count.all += 1;
            count.kept += u32::from(f.dried.fate == Fate::Kept);
        }
        counts
    }

    fn share_of(&self, label: String, count: Count) -> ShareView {
        let words = self.words();
        let Count { kept, all } = count;
        let text = words.with(
            "dried-well-kept-of",
            &[("kept", kept.into()), ("all", all.into())],
        );
        let share = share_kept(kept, all, LEVEL).filter(|_| all >= ENOUGH);
        let note = match share {
            None => words.text("dried-well-too-few"),
            Some(s) if s.enough_for_per_cent => {
                let numbers = self.numbers();
                let shown = |part: f64| numbers.percent(part * 100.0);
                words.with(
                    "dried-well-per-cent",
                    &[
                        ("share", shown(s.share).text().into()),
                        (
                            "range",
                            numbers.range(&shown(s.low), &shown(s.high)).text().into(),
                        ),
                    ],
                )
            }
            Some(s) => {
                // Outwards, so that ten pieces never promise more than the interval does.
                #[allow(clippy::cast_possible_truncation)] // 0 to 10
                let (low, high) = ((s.low * 10.0).floor() as i64, (s.high * 10.0).ceil() as i64);
                words.with(
                    "dried-well-in-ten",
                    &[("low", low.into()), ("high", high.into())],
                )
            }
        };
        ShareView {
            label,
            count: text,
            note,
            drawn: share.is_some(),
            share: share.map_or(0.0, |s| s.share),
            low: share.map_or(0.0, |s| s.low),
            high: share.map_or(0.0, |s| s.high),
        }
    }

    /// The bands in their order, and whether any two of them differ by more than luck.
    pub(super) fn shares(&self, fared: &[Fared<'_>], by: Kind) -> (Vec<ShareView>, String) {
        let counts = self.counts(fared, by);
        let verdict = self.shares_verdict(&counts);
        let mut counts: Vec<(Band, Count)> = counts.into_iter().collect();
        // Woods have no order of their own: the one most is known of comes first.
        if by == Kind::Wood {
            counts.sort_by_key(|(band, c)| (!band.known, std::cmp::Reverse(c.all)));
        }
        let shares = counts.into_iter().map(|(b, c)| self.share_of(b.name, c));
        (shares.collect(), verdict)
    }

    fn shares_verdict(&self, counts: &BTreeMap<Band, Count>) -> String {
        let words = self.words();
        let known: Vec<(&Band, Count)> = counts
            .iter()
            .filter(|(band, count)| band.known && count.all >= ENOUGH)
            .map(|(band, count)| (band, *count))
            .collect();
        if known.len() < 2 {
            return words.text("dried-well-none-to-compare");
        }
        let of = |c: Count| (c.kept, c.all);
        for (i, (a, one)) in known.iter().enumerate() {
            for (b, other) in &known[i + 1..] {
                if plainly_different(of(*one), of(*other), LEVEL) == Some(true) {
                    let said = |band: &Band, c: Count| {
                        words.with(
                            "dried-well-band-kept",
                            &[
                                ("band", band.name.as_str().into()),
                                ("kept", c.kept.into()),
                                ("all", c.all.into()),
                            ],
                        )
                    };
                    return words.with(
                        "dried-well-differ",
                        &[
                            ("one", said(a, *one).into()),
                            ("other", said(b, *other).into()),
                        ],
                    );
                }
            }
        }
        words.text("dried-well-no-difference")
    }
}
