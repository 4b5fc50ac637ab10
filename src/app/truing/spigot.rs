//! The spigot: what it is to be expected to be now, and whether its round size goes into the jaws. Never whether it holds.

use evenwall_piece::detail::DetailField;
use evenwall_piece::piece::Piece;
use evenwall_piece::truing::{Fit, spigot_fit};
use evenwall_piece::vocabulary::Pith;
use evenwall_wood::section::Strains;
use evenwall_wood::spigot::{USUAL_CLEAN_UP_MM, dried_spigot};

use super::reckoned::Reckoned;
use crate::app::App;

impl App {
    /// What the spigot is to be expected to be now; empty once it is round again and measured.
    pub(super) fn trueup_spigot_expected(&self, piece: &Piece, sums: &Reckoned) -> String {
        let words = self.words();
        if piece.finish.spigot_mm.is_some() {
            return String::new();
        }
        let cut = piece.details.mm(DetailField::SpigotDiameter);
        // As this piece shrank where it was measured, else as its wood usually does.
        let strains = match sums.against.and_then(|a| a.own) {
            Some(own) => own.strains(),
            None => sums.strains,
        };
        let Strains { radial, tangential } = strains;
        let off_centre = 0.5 * self.shop().settings.remount_mm;
        let dried = cut.and_then(|cut| {
            dried_spigot(cut, radial, tangential, off_centre, USUAL_CLEAN_UP_MM).ok()
        });
        let (Some(cut), Some(dried)) = (cut, dried) else {
            return words.text("trueup-spigot-unknown");
        };
        let numbers = self.numbers();
        let (_, fits, _) = self.trueup_fits(piece, dried.trued_mm);
        let mut told = words.with(
            "trueup-spigot-expected",
            &[
                ("cut", numbers.diameter_fine(cut).text().into()),
                (
                    "longest",
                    numbers.diameter_fine(dried.longest_mm).number.into(),
                ),
                (
                    "shortest",
                    numbers.diameter_fine(dried.shortest_mm).text().into(),
                ),
                ("round", numbers.diameter_fine(dried.trued_mm).text().into()),
                ("fits", fits.to_lowercase().into()),
            ],
        );
        if self.trueup_pith_in_spigot(piece, cut) {
            told = format!("{told} {}", words.text("trueup-spigot-pith"));
        }
        told
    }

    /// True where the pith was said to run through the spigot.
    fn trueup_pith_in_spigot(&self, piece: &Piece, cut_mm: f64) -> bool {
        let details = &piece.details;
        let within = |d: f64| d < 0.5 * cut_mm;
        details.pith() == Pith::Bore && details.mm(DetailField::PithDistance).is_none_or(within)
    }

    /// How a round spigot goes into the jaws: `even` or `thin`, the words, and which jaws.
    pub(super) fn trueup_fits(
        &self,
        piece: &Piece,
        spigot_mm: f64,
    ) -> (&'static str, String, String) {
        let (words, numbers) = (self.words(), self.numbers());
        let fit = spigot_fit(piece, self.shop(), spigot_mm);
        let smallest = numbers.diameter_fine(fit.smallest_mm).short();
        let range = match &fit.jaws {
            Some(jaws) => {
                let largest = numbers.diameter_fine(jaws.largest_mm).short();
                words.with(
                    "trueup-jaws-range",
                    &[
                        ("name", jaws.name.as_str().into()),
                        ("range", numbers.range(&smallest, &largest).text().into()),
                    ],
                )
            }
            None => match piece.details.text(DetailField::Jaws) {
                Some(name) => words.with(
                    "trueup-jaws-unlisted",
                    &[
                        ("name", name.chars().take(60).collect::<String>().into()),
                        ("smallest", smallest.text().into()),
                    ],
                ),
                None => words.with(
                    "trueup-jaws-assumed",
                    &[("smallest", smallest.text().into())],
                ),
            },
        };
        let (kind, id) = match fit.fit {
            Fit::Fits => ("even", "trueup-fits"),
            Fit::TooSmall => ("thin", "trueup-too-small"),
            Fit::TooLarge => ("thin", "trueup-too-large"),
        };
        (kind, words.text(id), range)
    }
}
