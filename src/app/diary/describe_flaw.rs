//! Describe a flaw: what was found and what was done about it, in words of the diary.

use evenwall_piece::fact::{FlawNote, FlawTreated};
use evenwall_piece::piece::Piece;

use super::describe::Described;
use super::filter::Filter;
use crate::app::App;

impl App {
    /// "Knot at station 3, 4 o'clock".
    pub(crate) fn flaw_place_words(&self, note: &FlawNote) -> String {
        let words = self.words();
        let kind = words.text(&format!("flaw-kind-{}", note.kind.key()));
        let station = note.station.map(|s| self.station_ref_words(s));
        let hour = note.clock.map(|c| i64::from(c.hour()));
        match (station, hour) {
            (Some(s), Some(h)) => words.with(
                "diary-flaw-at-both",
                &[
                    ("kind", kind.into()),
                    ("station", s.to_lowercase().into()),
                    ("hour", h.into()),
                ],
            ),
            (Some(s), None) => words.with(
                "diary-flaw-at",
                &[("kind", kind.into()), ("station", s.to_lowercase().into())],
            ),
            (None, Some(h)) => words.with(
                "diary-flaw-hour",
                &[("kind", kind.into()), ("hour", h.into())],
            ),
            (None, None) => kind,
        }
    }

    pub(super) fn flaw_words(&self, piece: &Piece, flaw: &evenwall_piece::ids::FlawId) -> String {
        piece.flaw(flaw).map_or_else(
            || self.words().text("diary-some-flaw"),
            |f| self.flaw_place_words(&f.note),
        )
    }

    pub(super) fn describe_flaw(&self, note: &FlawNote) -> Described {
        let mut parts = Vec::new();
        if let Some(size) = &note.size_mm {
            parts.push(self.numbers().length_fine(size.value).text());
        }
        if note.through {
            parts.push(self.words().text("diary-through"));
        }
        if !note.note.is_empty() {
            parts.push(note.note.clone());
        }
        self.line(
            "flag",
            Filter::Flaws,
            self.flaw_place_words(note),
            parts.join(" · "),
        )
    }

    pub(super) fn describe_treated(&self, piece: &Piece, treated: &FlawTreated) -> Described {
        let words = self.words();
        let what = words.text(&format!("treatment-{}", treated.treatment.key()));
        let title = words.with(
            "diary-treated",
            &[
                ("flaw", self.flaw_words(piece, &treated.flaw).into()),
                ("what", what.into()),
            ],
        );
        let mut parts = Vec::new();
        if let Some(face) = treated.face {
            parts.push(words.text(&format!("face-{}", face.key())));
        }
        if let Some(goes) = treated.goes {
            parts.push(words.with("diary-goes", &[("n", i64::from(goes).into())]));
        }
        if let Some(day) = treated.look_again {
            let day = crate::words::dates::Dates::new(words, day).full(day);
            parts.push(words.with("diary-look-again", &[("day", day.into())]));
        }
        self.line("glue", Filter::Flaws, title, parts.join(" · "))
    }
}
