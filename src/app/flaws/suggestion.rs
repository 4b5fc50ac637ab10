//! Suggestion: thin or medium in a sentence with its reason, and the cautions of superglue.

use evenwall_piece::fact::FlawNote;
use evenwall_piece::glue::{GlueWhy, suggest};
use evenwall_piece::piece::Piece;
use evenwall_piece::vocabulary::{Face, Treatment};

use crate::app::App;

/// A grade that is suggested, in words.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Advice {
    /// The grade.
    pub grade: Treatment,
    /// The reason: "Only about 1 mm still comes off the outside, so a stain of thin would stay."
    pub why: String,
}

impl App {
    /// The suggestion for a flaw on a face; where no face is said, the outside.
    pub(super) fn glue_advice(&self, piece: &Piece, note: &FlawNote, face: Option<Face>) -> Advice {
        let words = self.words();
        let suggestion = suggest(piece, note);
        let off = |mm: f64| self.numbers().wall(mm).short().text();
        let face = words.text(&format!(
            "flaws-face-{}",
            face.unwrap_or(Face::Outside).key()
        ));
        let mut why = match suggestion.why {
            GlueWhy::RunsThrough => words.text("flaws-why-through"),
            GlueWhy::ThinWall { wall_mm } => {
                words.with("flaws-why-thin-wall", &[("wall", off(wall_mm).into())])
            }
            GlueWhy::Gap => words.text("flaws-why-gap"),
            GlueWhy::Hairline { .. } => words.text("flaws-why-hairline"),
            GlueWhy::Soaks { comes_off_mm } => words.with(
                "flaws-why-soaks",
                &[("off", off(comes_off_mm).into()), ("face", face.into())],
            ),
            GlueWhy::LittleComesOff { comes_off_mm } if comes_off_mm < 0.25 => {
                words.with("flaws-why-nothing", &[("face", face.into())])
            }
            GlueWhy::LittleComesOff { comes_off_mm } => words.with(
                "flaws-why-little",
                &[("off", off(comes_off_mm).into()), ("face", face.into())],
            ),
        };
        if suggestion.stain_stays() {
            why = format!("{why} {}", words.text("flaws-stain-stays"));
        }
        Advice {
            grade: suggestion.grade,
            why,
        }
    }
}
