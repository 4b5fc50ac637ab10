//! Telling: a flaw in words: its letter, what and where it is, what was done, how it stands.

use evenwall_piece::fact::{FlawNote, Measure};
use evenwall_piece::glue::{face_to_treat, is_crack};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Flaw, FlawEvent, Moment, Piece};
use evenwall_piece::vocabulary::{FlawChange, Treatment};

use crate::app::App;
use crate::numbers::Quantity;
use crate::words::dates::Dates;

/// The letter of the n-th flaw: A to Z, then AA, AB...
pub(crate) fn letter(place: usize) -> String {
    let mut left = place + 1;
    let mut letters = Vec::new();
    while left > 0 {
        let digit = u8::try_from((left - 1) % 26).unwrap_or(0);
        letters.push(char::from(b'A' + digit));
        left = (left - 1) / 26;
    }
    letters.iter().rev().collect()
}

/// The letter of a flaw of a piece.
pub(crate) fn letter_of(piece: &Piece, flaw: &Flaw) -> String {
    let place = piece
        .flaws
        .iter()
        .position(|f| f.note.flaw == flaw.note.flaw);
    letter(place.unwrap_or(0))
}

/// Where a flaw stands in the list.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Stand {
    /// Nothing was decided yet.
    Open,
    /// Its day to look again has come.
    Due,
    /// Something was decided, or it is gone.
    Decided,
}

impl Stand {
    pub(crate) const ALL: [Self; 3] = [Self::Open, Self::Due, Self::Decided];

    pub(crate) fn of(flaw: &Flaw, now: Moment) -> Self {
        if flaw.gone() {
            return Self::Decided;
        }
        if !flaw.decided() {
            return Self::Open;
        }
        match flaw.look_again() {
            Some(day) if day <= now.date_naive() => Self::Due,
            _ => Self::Decided,
        }
    }

    pub(crate) const fn key(self) -> &'static str {
        match self {
            Self::Open => "open",
            Self::Due => "due",
            Self::Decided => "decided",
        }
    }
}

/// True where the day to look at it again has come.
pub(crate) fn looks_due(flaw: &Flaw, now: Moment) -> bool {
    Stand::of(flaw, now) == Stand::Due
}

/// The last length known of a flaw: of the last look that measured it, else as noted.
pub(crate) fn last_size(flaw: &Flaw) -> Option<&Measure> {
    flaw.events
        .iter()
        .rev()
        .find_map(|e| match e {
            FlawEvent::Looked { size_mm, .. } => size_mm.as_ref(),
            FlawEvent::Treated { .. } => None,
        })
        .or(flaw.note.size_mm.as_ref())
}

impl App {
    pub(super) fn length_text(&self, size: &Measure) -> String {
        self.numbers()
            .quantity(Quantity::FlawSize, size.value)
            .text()
    }

    /// "Knot, 14 mm".
    pub(crate) fn flaw_title(&self, flaw: &Flaw) -> String {
        let words = self.words();
        let kind = words.text(&format!("flaw-kind-{}", flaw.note.kind.key()));
        match last_size(flaw) {
            Some(size) => words.with(
                "flaws-kind-size",
                &[
                    ("kind", kind.into()),
                    ("size", self.length_text(size).into()),
                ],
            ),
            None => kind,
        }
    }

    /// "Station 3, 4 o'clock", its depth once the stations were laid out anew; a line that says so where neither was noted.
    pub(crate) fn flaw_where(&self, flaw: &Flaw) -> String {
        let words = self.words();
        let note = &flaw.note;
        let station = match flaw.depth_mm {
            Some(mm) => Some(self.flaw_depth(mm)),
            None => note.station.map(|s| self.flaw_station(s)),
        };
        let clock = note
            .clock
            .map(|c| words.with("flaws-clock", &[("n", c.hour().into())]));
        match (station, clock) {
            (Some(station), Some(clock)) => words.with(
                "flaws-place",
                &[("station", station.into()), ("clock", clock.into())],
            ),
            (Some(one), None) | (None, Some(one)) => one,
            (None, None) => words.text("flaws-no-place"),
        }
    }

    /// "66 mm below the rim": where a flaw lies that was noted at a station before the stations moved.
    pub(crate) fn flaw_depth(&self, mm: f64) -> String {
        let depth = self.numbers().diameter(mm).short().text();
        self.words().with("flaws-depth", &[("depth", depth.into())])
    }

    pub(super) fn flaw_station(&self, station: evenwall_piece::fact::StationRef) -> String {
        use evenwall_piece::fact::StationRef;
        match station {
            StationRef::Wall(n) => self.words().with("flaws-station", &[("n", n.into())]),
            StationRef::Floor => self.words().text("part-floor"),
        }
    }

    /// What was done last, with its day: "Glued Wed 11 Mar, still a crack". Empty while nothing was decided.
    pub(crate) fn flaw_told(&self, flaw: &Flaw, now: Moment) -> String {
        let words = self.words();
        let dates = Dates::new(words, now.date_naive());
        if flaw.gone() {
            let day = flaw.events.last().map_or(flaw.found_at, |e| match e {
                FlawEvent::Looked { at, .. } | FlawEvent::Treated { at, .. } => *at,
            });
            let day = dates.day_and_month(day.date_naive());
            return words.with("flaws-told-gone", &[("day", day.into())]);
        }
        let Some((at, treated)) = flaw.last_treatment() else {
            return String::new();
        };
        let day = dates.day_and_month(at.date_naive());
        let crack = is_crack(flaw.note.kind);
        match treated.treatment {
            Treatment::Left => match flaw.look_again() {
                Some(again) if again < now.date_naive() => {
                    words.with("flaws-told-left-due", &[("day", dates.near(again).into())])
                }
                Some(again) => words.with(
                    "flaws-told-left-again",
                    &[("day", dates.near(again).into())],
                ),
                None => words.text("flaws-told-left"),
            },
            Treatment::TurnAway => words.text("flaws-told-turn-away"),
            Treatment::Wax => words.with("flaws-told-waxed", &[("day", day.into())]),
            Treatment::Thin | Treatment::Medium | Treatment::Thick if crack => {
                words.with("flaws-told-glued-crack", &[("day", day.into())])
            }
            Treatment::Thin | Treatment::Medium | Treatment::Thick => {
                words.with("flaws-told-glued", &[("day", day.into())])
            }
        }
    }

    /// With what, on which face, how often: "Superglue thin, outside, 2 goes". Empty where nothing went on.
    pub(crate) fn flaw_with_what(&self, flaw: &Flaw) -> String {
        let words = self.words();
        match flaw.last_treatment() {
            Some((_, t)) if super::form::goes_on(t.treatment) && !flaw.gone() => {
                let mut parts = vec![words.text(&format!("treatment-{}", t.treatment.key()))];
                if let Some(face) = t.face {
                    parts.push(words.text(&format!("flaws-on-{}", face.key())));
                }
                if let Some(goes) = t.goes.filter(|g| *g > 1) {
                    parts.push(words.with("flaws-goes", &[("n", goes.into())]));
                }
                parts.join(", ")
            }
            _ => String::new(),
        }
    }

    /// What the last look found, where it came after the last treatment: "Longer Thu 12 Mar".
    pub(crate) fn flaw_last_look(&self, flaw: &Flaw, now: Moment) -> String {
        let dates = Dates::new(self.words(), now.date_naive());
        match flaw.events.last() {
            Some(FlawEvent::Looked {
                at,
                change,
                look_again,
                ..
            }) if *change != FlawChange::Gone => {
                let looked = self.words().with(
                    "flaws-told-looked",
                    &[
                        ("found", self.found_word(*change).into()),
                        ("day", dates.day_and_month(at.date_naive()).into()),
                    ],
                );
                look_again.map_or(looked.clone(), |day| {
                    let day = dates.day_and_month(day).into();
                    let again = self.words().with("flaws-history-again", &[("day", day)]);
                    format!("{looked}, {again}")
                })
            }
            _ => String::new(),
        }
    }

    pub(super) fn change_word(&self, change: FlawChange) -> String {
        self.words().text(&format!("flaws-look-{}", change.key()))
    }

    /// The same inside a sentence.
    pub(super) fn found_word(&self, change: FlawChange) -> String {
        self.words().text(&format!("flaws-found-{}", change.key()))
    }

    /// "Treat both faces", or the face that is left; empty where there is nothing of the kind to say.
    pub(crate) fn flaw_faces(&self, flaw: &Flaw) -> String {
        face_to_treat(flaw).map_or_else(String::new, |face| {
            self.words().text(&format!("flaws-treat-{}", face.key()))
        })
    }

    fn kind_of(&self, note: &FlawNote) -> String {
        self.words().text(&format!("flaw-kind-{}", note.kind.key()))
    }

    pub(super) fn said_noted(
        &self,
        piece: &PieceId,
        note: &FlawNote,
        treatment: Option<Treatment>,
    ) -> String {
        let (mark, kind) = (self.mark_of(piece), self.kind_of(note));
        let words = self.words();
        match treatment {
            None => words.with(
                "flaws-said-noted",
                &[("mark", mark.into()), ("kind", kind.into())],
            ),
            Some(_) => self.said_treatment(mark, kind, treatment),
        }
    }

    pub(super) fn said_treated(
        &self,
        piece: &PieceId,
        note: &FlawNote,
        treatment: Treatment,
    ) -> String {
        self.said_treatment(self.mark_of(piece), self.kind_of(note), Some(treatment))
    }

    fn said_treatment(&self, mark: String, kind: String, treatment: Option<Treatment>) -> String {
        let words = self.words();
        let done = treatment.map_or_else(String::new, |t| {
            words.text(&format!("treatment-{}", t.key()))
        });
        words.with(
            "flaws-said-treated",
            &[
                ("mark", mark.into()),
                ("kind", kind.into()),
                ("done", done.into()),
            ],
        )
    }

    pub(super) fn said_corrected(&self, piece: &PieceId, note: &FlawNote) -> String {
        self.words().with(
            "flaws-said-corrected",
            &[
                ("mark", self.mark_of(piece).into()),
                ("kind", self.kind_of(note).into()),
            ],
        )
    }

    pub(super) fn said_looked(
        &self,
        piece: &PieceId,
        note: &FlawNote,
        change: FlawChange,
        size: Option<&Measure>,
    ) -> String {
        let found = match size {
            Some(size) => self.words().with(
                "flaws-longer-now",
                &[("size", self.length_text(size).into())],
            ),
            None => self.found_word(change),
        };
        self.words().with(
            "flaws-said-looked",
            &[
                ("mark", self.mark_of(piece).into()),
                ("kind", self.kind_of(note).into()),
                ("found", found.into()),
            ],
        )
    }
}

#[cfg(test)]
mod tests {
    use super::letter;

    #[test]
    fn letters_go_on_after_z() {
        let all: Vec<String> = [0, 1, 25, 26, 27, 51, 52].map(letter).to_vec();
        assert_eq!(all, ["A", "B", "Z", "AA", "AB", "AZ", "BA"]);
    }
}
