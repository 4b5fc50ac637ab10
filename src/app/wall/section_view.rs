//! Section view: the stations on the drawing, and signed bars against the tolerance band.

use evenwall_piece::fact::StationRef;
use evenwall_piece::piece::Piece;

use super::measure::wanted_at;
use super::spot::station_key;
use super::standing::{Judged, Standing};
use crate::app::App;
use crate::drawing::SectionDrawing;

/// A signed bar: all as fractions 0 to 1 of its width.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct BarView {
    /// Where the wall wanted lies.
    pub zero: f64,
    /// The band of the tolerance.
    pub band_from: f64,
    /// See `band_from`.
    pub band_to: f64,
    /// The bar.
    pub from: f64,
    /// See `from`.
    pub to: f64,
    /// True where there is a bar.
    pub shown: bool,
}

/// A station on the drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct MarkView {
    /// Its key.
    pub key: String,
    /// What stands in its circle.
    pub number: String,
    /// The whole of it in words.
    pub label: String,
    /// Where its tick meets the bore, mm of the view box.
    pub inner: (f64, f64),
    /// Where its tick meets the outside, mm of the view box.
    pub outer: (f64, f64),
    /// Height of circle and number, 0 to 1.
    pub slot: f64,
    /// `read`, `now` or `unread`.
    pub state: &'static str,
    /// The reading; empty for none.
    pub value: String,
    /// `heavy`, `even`, `thin` or empty.
    pub kind: &'static str,
    /// The verdict in a few words.
    pub verdict: String,
}

/// How wide bars are: the same for all of them, so that they can be compared.
#[derive(Debug, Clone, Copy)]
pub(super) struct BarScale {
    low_mm: f64,
    high_mm: f64,
    tolerance_mm: f64,
}

impl BarScale {
    /// Wide enough for every deviation given, and a little more than the tolerance either way.
    pub fn for_all(offs_mm: impl Iterator<Item = f64>, tolerance_mm: f64) -> Self {
        let room = 1.5 * tolerance_mm;
        let (low, high) = offs_mm.fold((-room, room), |(low, high), off| {
            (low.min(off), high.max(off))
        });
        Self {
            low_mm: low,
            high_mm: high,
            tolerance_mm,
        }
    }

    /// The bar of one station.
    pub fn bar(&self, judged: Judged) -> BarView {
        let place = |mm: f64| {
            let share = (mm - self.low_mm) / (self.high_mm - self.low_mm);
            if share.is_finite() {
                share.clamp(0.0, 1.0)
            } else {
                0.5
            }
        };
        let zero = place(0.0);
        let end = match judged {
            Judged::Read { off_mm, .. } => Some(place(off_mm)),
            _ => None,
        };
        BarView {
            zero,
            band_from: place(-self.tolerance_mm),
            band_to: place(self.tolerance_mm),
            from: end.map_or(zero, |e| e.min(zero)),
            to: end.map_or(zero, |e| e.max(zero)),
            shown: end.is_some(),
        }
    }
}

impl App {
    /// The stations of a drawing with what is known of each; `now` is the one that is being read.
    pub(super) fn mark_views(
        &self,
        drawing: &SectionDrawing,
        standings: &[Standing<'_>],
        now: Option<StationRef>,
    ) -> Vec<MarkView> {
        let count = standings.len().max(1) as f64;
        let spots = drawing.stations.iter().zip(standings).enumerate();
        spots
            .map(|(i, (spot, standing))| {
                let value = match standing.judged {
                    Judged::Read { mm, .. } => self.numbers().wall(mm).number,
                    _ => String::new(),
                };
                let verdict = self.verdict_text(standing.judged);
                let name = self.station_name(standing.station);
                let said: Vec<&str> = [name.as_str(), value.as_str(), verdict.as_str()]
                    .into_iter()
                    .filter(|t| !t.is_empty())
                    .collect();
                let state = if now == Some(standing.station) {
                    "now"
                } else if standing.judged.verdict().is_some() {
                    "read"
                } else {
                    "unread"
                };
                MarkView {
                    key: station_key(standing.station),
                    number: match standing.station {
                        StationRef::Wall(n) => n.to_string(),
                        StationRef::Floor => self.words().text("wall-floor-short"),
                    },
                    label: said.join(", "),
                    inner: spot.inner,
                    outer: spot.outer,
                    slot: (i as f64 + 0.5) / count,
                    state,
                    value,
                    kind: Self::verdict_kind(standing.judged),
                    verdict,
                }
            })
            .collect()
    }

    /// The bar of a station by itself.
    pub(super) fn bar_of(&self, piece: &Piece, judged: Judged, station: StationRef) -> BarView {
        let tolerance = evenwall_piece::wanted::tolerance(piece, &self.shop().settings);
        let off = match judged {
            Judged::Read { mm, .. } => mm - wanted_at(piece, station),
            _ => 0.0,
        };
        // One bar alone keeps the wall wanted in the middle.
        BarScale::for_all([off, -off].into_iter(), tolerance).bar(judged)
    }
}
