//! Describe: a fact of the diary in words, with the icon and the filter it belongs to.

use evenwall_piece::detail::DetailValue;
use evenwall_piece::fact::{End, PieceFact, Reading, StationRef};
use evenwall_piece::piece::Piece;

use super::filter::Filter;
use crate::app::App;
use crate::details;

/// A fact in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Described {
    /// Name of its icon.
    pub icon: &'static str,
    /// What happened: "Station 4: 10.5 mm".
    pub title: String,
    /// A second line; may be empty.
    pub note: String,
    /// Which filter shows it.
    pub filter: Filter,
}

impl App {
    pub(super) fn line(
        &self,
        icon: &'static str,
        filter: Filter,
        title: String,
        note: String,
    ) -> Described {
        Described {
            icon,
            title,
            note,
            filter,
        }
    }

    /// A fact of a piece in words.
    #[must_use]
    pub fn describe(&self, piece: &Piece, fact: &PieceFact) -> Described {
        let words = self.words();
        let said = |id: &str| words.text(id);
        let none = String::new();
        let stages = |id: &str| self.line("list", Filter::Stages, said(id), String::new());
        match fact {
            PieceFact::Created => stages("diary-created"),
            PieceFact::Detail { field, value } => {
                let value = value.as_ref().map_or_else(
                    || said("diary-cleared"),
                    |v| {
                        let text = details::value_text(self, *field, v);
                        match v {
                            DetailValue::Length(_) => join(&text, &details::unit(self, *field)),
                            DetailValue::Text(_) => text,
                        }
                    },
                );
                let title = words.with(
                    "diary-detail",
                    &[
                        ("what", details::label(self, *field).into()),
                        ("value", value.into()),
                    ],
                );
                self.line("pencil", Filter::Details, title, none)
            }
            PieceFact::StageMoved(to) => {
                let stage = said(&format!("stage-{}", to.key()));
                self.line(
                    "arrow-right",
                    Filter::Stages,
                    words.with("diary-stage", &[("stage", stage.into())]),
                    none,
                )
            }
            PieceFact::MethodChosen(method) => {
                let method = said(&format!("method-{}", method.key()));
                let title = words.with("diary-method", &[("method", method.into())]);
                self.line("bag-closed", Filter::Stages, title, none)
            }
            PieceFact::HalfTurned => stages("diary-half-turned"),
            PieceFact::Resumed => stages("diary-resumed"),
            PieceFact::Paused { until: None } => stages("diary-paused"),
            PieceFact::Paused { until: Some(day) } => {
                let day = crate::words::dates::Dates::new(words, *day).full(*day);
                let title = words.with("diary-paused-until", &[("day", day.into())]);
                self.line("pause", Filter::Stages, title, none)
            }
            PieceFact::Unpaused => stages("diary-unpaused"),
            PieceFact::Ticked { text, on, .. } => {
                let note = if *on { none } else { said("diary-unticked") };
                self.line("tick", Filter::Ticks, text.clone(), note)
            }
            PieceFact::Stations { count, .. } => {
                let title = words.with("diary-stations", &[("n", i64::from(*count).into())]);
                self.line("callipers", Filter::Wall, title, none)
            }
            PieceFact::Reading(reading) => self.describe_reading(reading),
            PieceFact::OutsideDiameter {
                station,
                diameter_mm,
            } => {
                let value = diameter_mm.as_ref().map_or_else(
                    || said("diary-from-shape"),
                    |m| self.numbers().diameter_fine(m.value).text(),
                );
                let title = words.with(
                    "diary-outside",
                    &[("n", i64::from(*station).into()), ("value", value.into())],
                );
                self.line("callipers", Filter::Wall, title, none)
            }
            PieceFact::FlawFound(note) => self.describe_flaw(note),
            PieceFact::FlawTreated(treated) => self.describe_treated(piece, treated),
            PieceFact::FlawLooked { .. } => self.describe_flaw_look(piece, fact),
            PieceFact::Look { feel, mould, crack } => {
                let title = feel.map_or_else(
                    || said("diary-looked-over"),
                    |f| {
                        words.with(
                            "diary-bag",
                            &[("feel", said(&format!("feel-{}", f.key())).into())],
                        )
                    },
                );
                let mut notes = Vec::new();
                if *mould {
                    notes.push(said("diary-mould"));
                }
                if *crack {
                    notes.push(said("diary-crack"));
                }
                let icon = match feel.map(evenwall_piece::vocabulary::BagFeel::key) {
                    Some("wet") => "drop-full",
                    Some("damp") => "drop-half",
                    Some(_) => "drop-empty",
                    None => "eye",
                };
                self.line(icon, Filter::Looks, title, notes.join(" · "))
            }
            PieceFact::NotFound => {
                self.line("question", Filter::Looks, said("diary-not-found"), none)
            }
            PieceFact::Weighed { mass_g, tare_g } => {
                let net = self.numbers().mass(mass_g.value - tare_g).text();
                let note = if *tare_g > 0.0 {
                    words.with(
                        "diary-tare",
                        &[("tare", self.numbers().mass(*tare_g).text().into())],
                    )
                } else {
                    none
                };
                self.line(
                    "scale",
                    Filter::Weights,
                    words.with("diary-weighed", &[("mass", net.into())]),
                    note,
                )
            }
            PieceFact::MassChanged(change) => {
                let title = said(&format!("mass-change-{}", change.key()));
                self.line("scale", Filter::Weights, title, said("diary-mass-changed"))
            }
            PieceFact::ForecastMade(made) => self.describe_forecast(made),
            PieceFact::Cracks(answer) => {
                let answer = said(&format!("crack-answer-{}", answer.key()));
                self.line(
                    "crack",
                    Filter::Finish,
                    words.with("diary-cracks", &[("answer", answer.into())]),
                    none,
                )
            }
            PieceFact::Oval { .. } | PieceFact::OvalAt { .. } | PieceFact::OvalRound { .. } => {
                self.describe_oval(fact)
            }
            PieceFact::SpigotTrued(size) => {
                let size = self.numbers().diameter_fine(size.value).text();
                self.line(
                    "oval",
                    Filter::Finish,
                    words.with("diary-spigot", &[("size", size.into())]),
                    none,
                )
            }
            PieceFact::TrueDecided { decision, reason } => {
                let title = said(&format!("true-decision-{}", decision.key()));
                self.line("question", Filter::Finish, title, reason.clone())
            }
            PieceFact::Grits(text) => self.own("diary-grits", text),
            PieceFact::Coat(text) => self.own("diary-coat", text),
            PieceFact::Signed(text) => self.own("diary-signed", text),
            PieceFact::Note(text) => self.line("pencil", Filter::Notes, text.clone(), none),
            PieceFact::PhotoAdded(_)
            | PieceFact::PhotoRemoved(_)
            | PieceFact::PhotoBack(_)
            | PieceFact::PhotoMarked(_) => self.describe_photo(piece, fact),
            PieceFact::Ended(end) => self.describe_end(end),
            PieceFact::PutBack => stages("diary-put-back"),
            PieceFact::Deleted => self.line("bin", Filter::Stages, said("diary-deleted"), none),
            PieceFact::Undeleted => stages("diary-undeleted"),
            PieceFact::Unknown { kind, .. } => {
                self.line("info", Filter::Notes, said("diary-newer"), kind.clone())
            }
            PieceFact::Amends { .. } | PieceFact::Retracts(_) => stages("diary-corrected"),
        }
    }

    fn own(&self, id: &str, text: &str) -> Described {
        let title = self.words().with(id, &[("text", text.into())]);
        self.line("tick", Filter::Finish, title, String::new())
    }

    /// "Station 4", "Floor".
    pub(crate) fn station_ref_words(&self, station: StationRef) -> String {
        match station {
            StationRef::Wall(n) => self
                .words()
                .with("diary-station", &[("n", i64::from(n).into())]),
            StationRef::Floor => self.words().text("part-floor"),
        }
    }

    fn describe_reading(&self, reading: &Reading) -> Described {
        let words = self.words();
        let value = match (&reading.wall_mm, reading.feel) {
            (Some(m), _) => self.numbers().wall(m.value).text(),
            (None, Some(feel)) => words.text(&format!("feel-{}", feel.key())).to_lowercase(),
            (None, None) => words.text("diary-no-number"),
        };
        let title = words.with(
            "diary-reading",
            &[
                ("station", self.station_ref_words(reading.station).into()),
                ("value", value.into()),
            ],
        );
        let taken = words.text(&format!("taken-{}", reading.taken.key()));
        let hour = i64::from(reading.position.hour());
        let note = if hour == 12 {
            taken
        } else {
            words.with(
                "diary-taken-at",
                &[("taken", taken.into()), ("hour", hour.into())],
            )
        };
        self.line("callipers", Filter::Wall, title, note)
    }

    fn describe_end(&self, end: &End) -> Described {
        let words = self.words();
        let key = match end {
            End::Finished => "finished",
            End::Lost { .. } => "lost",
            End::GivenAway => "given-away",
            End::LeftAsIs => "left-as-is",
            End::CantFind => "cant-find",
        };
        let mut parts = Vec::new();
        if let End::Lost {
            place,
            how,
            why,
            note,
        } = end
        {
            parts.push(words.text(&format!("lost-where-{}", place.key())));
            parts.push(words.text(&format!("lost-how-{}", how.key())));
            parts.extend(
                why.iter()
                    .map(|w| words.text(&format!("lost-why-{}", w.key()))),
            );
            if !note.is_empty() {
                parts.push(note.clone());
            }
        }
        let unknown = words.text("lost-how-unknown");
        parts.retain(|p| *p != unknown);
        self.line(
            "flag",
            Filter::Stages,
            words.text(&format!("end-{key}")),
            parts.join(" · "),
        )
    }
}

pub(super) fn join(number: &str, unit: &str) -> String {
    if unit.is_empty() {
        number.to_owned()
    } else {
        format!("{number}\u{a0}{unit}")
    }
}
