//! Describe flaw look: a look at a flaw in words.

use evenwall_piece::fact::PieceFact;
use evenwall_piece::piece::Piece;

use super::describe::Described;
use super::filter::Filter;
use crate::app::App;
use crate::words::dates::Dates;

impl App {
    /// What was found, its length then, and when to look again; any other fact has no words here.
    pub(super) fn describe_flaw_look(&self, piece: &Piece, fact: &PieceFact) -> Described {
        let words = self.words();
        let (title, note) = match fact {
            PieceFact::FlawLooked {
                flaw,
                change,
                size_mm,
                look_again,
            } => {
                let change = words.text(&format!("flaw-change-{}", change.key()));
                let title = words.with(
                    "diary-flaw-looked",
                    &[
                        ("flaw", self.flaw_words(piece, flaw).into()),
                        ("change", change.into()),
                    ],
                );
                let size = size_mm.as_ref();
                let length = size.map(|m| self.numbers().length_fine(m.value).text());
                let again = look_again.map(|day| {
                    let day = Dates::new(words, day).full(day);
                    words.with("diary-look-again", &[("day", day.into())])
                });
                let note: Vec<String> = length.into_iter().chain(again).collect();
                (title, note.join(" · "))
            }
            _ => (String::new(), String::new()),
        };
        Described {
            icon: "eye",
            title,
            note,
            filter: Filter::Flaws,
        }
    }
}
