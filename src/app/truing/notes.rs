//! Notes: what the sums of True rest on, how the piece moved, what is left out; what is lacking; and what all of it speaks for.

use std::f64::consts::TAU;

use evenwall_piece::detail::DetailField;
use evenwall_piece::piece::Piece;
use evenwall_piece::truing::do_not_spin;
use evenwall_piece::vocabulary::{CrackAnswer, Pith};
use evenwall_piece::wanted;
use evenwall_wood::own_shrinkage::Moved;
use evenwall_wood::rough_wall::Grain;
use evenwall_wood::section::Xy;
use evenwall_wood::shrinkage::total_from_partial;
use evenwall_wood::side_grain::rim_rise_mm;

use super::reckoned::{Against, Foreseen, Reckoned};
use super::round::clock_place;
use super::true_view::LackRow;
use crate::app::App;
use crate::numbers::Quantity;
use crate::sums::grain_of;

/// An axis nearer to the centre mark than this is the centre mark, mm.
const ON_THE_MARK_MM: f64 = 0.3;

impl App {
    fn trueup_moisture_text(&self, sums: &Reckoned) -> String {
        self.numbers().percent(100.0 * sums.moisture).text()
    }

    /// How the piece moved, and its own shrinkage, a line each.
    pub(super) fn trueup_moved(&self, piece: &Piece, sums: &Reckoned) -> Vec<String> {
        let Some(against) = &sums.against else {
            return Vec::new();
        };
        let mut told = vec![self.trueup_moved_words(sums, against)];
        told.extend(self.trueup_own_words_of(piece, sums, against));
        told
    }

    /// What the sums rest on and leave out, a line each.
    pub(super) fn truing_notes(&self, piece: &Piece, sums: &Reckoned) -> Vec<String> {
        let words = self.words();
        let mut notes = Vec::new();
        if sums.places.iter().any(|p| p.foreseen.is_some()) {
            notes.push(words.with(
                "trueup-expected-basis",
                &[
                    ("whose", sums.whose.as_str().into()),
                    ("moisture", self.trueup_moisture_text(sums).into()),
                ],
            ));
            notes.push(self.trueup_pith_words(piece));
        }
        let doubt = sums
            .places
            .iter()
            .filter(|p| p.left_mm.is_some())
            .filter_map(|p| Some(p.shape.as_ref()?.doubt_mm))
            .fold(0.0, f64::max);
        if doubt >= 0.05 {
            let by = self.numbers().length_fine(doubt).text();
            notes.push(words.with("trueup-doubt", &[("by", by.into())]));
        }
        if let Some(axis) = sums.axis {
            notes.push(self.trueup_axis_words(sums, axis));
        }
        if sums.tightest.is_some() {
            notes.push(words.text("trueup-not-counted"));
        }
        notes
    }

    /// How oval it went against the figures of the wood.
    fn trueup_moved_words(&self, sums: &Reckoned, against: &Against) -> String {
        let (words, numbers) = (self.words(), self.numbers());
        let place = sums
            .places
            .iter()
            .find(|p| p.place.number == against.number);
        let span = place.and_then(|p| p.place.measured.as_ref()?.span_mm());
        let green = place.and_then(|p| p.place.green);
        let (Some((longest, shortest)), Some(green)) = (span, green) else {
            return String::new();
        };
        let expected = green.mm * sums.strains.difference().abs();
        let id = match against.moved {
            Moved::AsTheTable => "trueup-moved-as",
            Moved::FarMore => "trueup-moved-more",
            Moved::FarLess => "trueup-moved-less",
        };
        words.with(
            id,
            &[
                ("n", i64::from(against.number).into()),
                (
                    "off",
                    numbers.diameter_fine(longest - shortest).text().into(),
                ),
                ("expected", numbers.diameter_fine(expected).text().into()),
            ],
        )
    }

    /// Its own shrinkage against the table, both to bone dry.
    fn trueup_own_words_of(
        &self,
        piece: &Piece,
        sums: &Reckoned,
        against: &Against,
    ) -> Option<String> {
        let own = against.own?.strains();
        let to_dry = |shrunk: f64| total_from_partial(shrunk, sums.moisture);
        let table = self
            .wood_figures(piece.details.text(DetailField::Wood))
            .figures
            .shrinkages;
        let percent = |fraction: f64| {
            self.numbers()
                .quantity(Quantity::Shrinkage, 100.0 * fraction)
        };
        Some(self.words().with(
            "trueup-own",
            &[
                ("radial", percent(to_dry(own.radial)?).number.into()),
                ("tangential", percent(to_dry(own.tangential)?).text().into()),
                ("tableradial", percent(table.radial).number.into()),
                ("tabletangential", percent(table.tangential).text().into()),
                ("moisture", self.trueup_moisture_text(sums).into()),
            ],
        ))
    }

    /// Where the pith lies and what that does to the oval.
    fn trueup_pith_words(&self, piece: &Piece) -> String {
        let words = self.words();
        let distance = piece.details.mm(DetailField::PithDistance);
        if grain_of(piece) == Grain::Side {
            let rise = distance.and_then(|h| {
                let strains = self
                    .wood_figures(piece.details.text(DetailField::Wood))
                    .usual_strains(self.settles_at_home());
                rim_rise_mm(0.5 * wanted::diameter(piece).mm, h, strains).ok()
            });
            let side = words.text("trueup-side-grain");
            return match rise {
                Some(rise) => {
                    let by = self.numbers().wall(rise.abs()).text();
                    let rim = words.with("trueup-rim", &[("by", by.into())]);
                    format!("{side} {rim}")
                }
                None => side,
            };
        }
        words.text(match (piece.details.pith(), distance) {
            (Pith::Unknown, _) => "trueup-pith-unknown",
            (Pith::Outside, None) => "trueup-pith-outside",
            (Pith::Outside, Some(_)) => "trueup-pith-outside-said",
            (Pith::Bore, None) => "trueup-pith-bore",
            (Pith::Bore, Some(_)) => "trueup-pith-bore-said",
            (Pith::Wall, _) => "trueup-pith-in-wall",
        })
    }

    fn trueup_axis_words(&self, sums: &Reckoned, axis: Xy) -> String {
        let words = self.words();
        let off = axis.x.hypot(axis.y);
        if !sums.from_the_mark || off < ON_THE_MARK_MM {
            return words.text("trueup-axis");
        }
        let towards = axis.y.atan2(axis.x).rem_euclid(TAU).to_degrees();
        words.with(
            "trueup-axis-off",
            &[
                ("off", self.numbers().length_fine(off).text().into()),
                (
                    "towards",
                    clock_place(30.0 * (towards / 30.0).round()).into(),
                ),
            ],
        )
    }

    /// What is not known and would tell more, with where to get it.
    pub(super) fn truing_lacks(&self, sums: &Reckoned) -> Vec<LackRow> {
        let row = |key, title: &str, note: &str| LackRow {
            key,
            title: self.words().text(title),
            note: self.words().text(note),
        };
        let mut lacks = Vec::new();
        if sums.places.iter().all(|p| p.place.walls.is_empty()) {
            lacks.push(row("wall", "trueup-lacks-wall", "trueup-lacks-wall-note"));
        }
        let known = |p: &super::reckoned::PlaceSum| p.place.green.is_some_and(|g| !g.drawn);
        if !sums.places.iter().any(known) {
            lacks.push(row("size", "trueup-lacks-size", "trueup-lacks-size-note"));
        }
        lacks
    }

    /// What cracks and sums speak for: kind and words. Advice, never a lock, and never that it can be spun.
    pub(super) fn truing_advice(&self, piece: &Piece, sums: &Reckoned) -> (&'static str, String) {
        let words = self.words();
        if let Some(why) = do_not_spin(piece) {
            return ("caution", self.spin_caution(&why));
        }
        let mut told = Vec::new();
        if matches!(piece.finish.cracks, Some((_, CrackAnswer::Hairline))) {
            told.push(words.text("trueup-hairline"));
        }
        if !sums.measured {
            return ("neutral", told.join(" "));
        }
        let pith_in_wall = |p: &super::reckoned::PlaceSum| p.foreseen == Some(Foreseen::PithInWall);
        if sums.places.iter().any(pith_in_wall) {
            told.push(words.text("trueup-advice-pith"));
        }
        let tightest = sums.tightest.and_then(|i| sums.places.get(i));
        let (Some(tightest), Some(spare)) = (tightest, sums.spare_mm()) else {
            told.push(words.text("trueup-advice-unknown"));
            return ("neutral", told.join(" "));
        };
        let left = tightest.left_mm.unwrap_or(0.0);
        let (kind, stands) = self.trueup_stands(left, sums.finish_mm);
        let id = if left <= 0.0 {
            "trueup-advice-none"
        } else if spare < 0.0 {
            "trueup-advice-short"
        } else if spare < 1.0 - 1e-6 {
            "trueup-advice-tight"
        } else {
            "trueup-advice-spare"
        };
        let wall = self.numbers().wall(self.trueup_down(left.max(0.0))).text();
        told.push(words.with(
            id,
            &[
                ("n", i64::from(tightest.place.number).into()),
                ("stands", stands.into()),
                ("wall", wall.into()),
            ],
        ));
        (kind, told.join(" "))
    }
}
