//! Form view: what is asked about a flaw: what it is, where, what was done; the rest folded away.

use evenwall_piece::fact::{FlawNote, StationRef};
use evenwall_piece::ids::FlawId;
use evenwall_piece::piece::Piece;
use evenwall_piece::vocabulary::{Face, FlawKind, Treatment};

use super::form_parts::{ClockView, FormView, OptionView, SpotView, TypedView};
use super::list::{ClockSpot, out_of};
use super::suggestion::Advice;
use super::telling::letter;
use super::{AgainChoice, FlawForm, Mode};
use crate::app::App;
use crate::drawing::{outside_view, section};
use crate::numbers::Quantity;

impl App {
    /// The station that stands at a place beside the drawing of the form.
    #[must_use]
    pub fn flaw_station_at(&self, place: usize) -> Option<StationRef> {
        let drawing = section(self.flaws_piece()?, true);
        drawing.stations.get(place).map(|s| station_of(s.number))
    }

    pub(super) fn flaw_form_view(
        &self,
        piece: &Piece,
        noted: Option<&FlawNote>,
        mode: Mode,
    ) -> FormView {
        let words = self.words();
        let form = &self.states.flaws.form;
        let mut view = FormView {
            on_off: (words.text("answer-yes"), words.text("answer-no")),
            ..FormView::default()
        };
        let asks_what = mode != Mode::Treat;
        let asks_done = mode != Mode::Correct;
        if asks_what {
            self.ask_what(&mut view, piece, form, noted);
        }
        if asks_done {
            let note = match (noted, form.kind) {
                (Some(note), _) => Some(note.clone()),
                // An id that is never kept: this flaw is only looked at for the suggestion.
                (None, Some(kind)) => FlawId::new("new").ok().map(|flaw| FlawNote {
                    flaw,
                    kind,
                    station: form.station,
                    clock: form.clock,
                    size_mm: None,
                    through: form.through,
                    note: String::new(),
                }),
                (None, None) => None,
            };
            let advice = note
                .as_ref()
                .map(|note| self.glue_advice(piece, note, form.face));
            self.ask_done(&mut view, form, advice, note.is_some_and(|n| n.through));
        }
        self.ask_more(&mut view, form, mode);
        let (save, active) = match mode {
            Mode::See => (
                words.text(if form.kind.is_some() {
                    "flaws-save"
                } else {
                    "flaws-save-kind"
                }),
                form.kind.is_some(),
            ),
            Mode::Treat => (
                words.text(if form.treatment.is_some() {
                    "flaws-save-treated"
                } else {
                    "flaws-save-treatment"
                }),
                form.treatment.is_some(),
            ),
            Mode::Correct => (words.text("flaws-save-corrected"), true),
        };
        view.save = save;
        view.save_active = active;
        view
    }

    fn ask_what(
        &self,
        view: &mut FormView,
        piece: &Piece,
        form: &FlawForm,
        noted: Option<&FlawNote>,
    ) {
        let words = self.words();
        view.kind_title = words.text("flaws-what");
        view.kinds = FlawKind::ALL
            .iter()
            .map(|k| OptionView {
                key: k.key(),
                text: words.text(&format!("flaw-kind-{}", k.key())),
                note: words.text(&format!("flaws-about-{}", k.key())),
                selected: form.kind == Some(*k),
            })
            .collect();
        view.place_title = words.text("flaws-where");
        view.place_note = words.text("flaws-where-note");
        let drawing = section(piece, true);
        let count = drawing.stations.len().max(1) as f64; // a handful
        view.spots = drawing
            .stations
            .iter()
            .enumerate()
            .map(|(place, spot)| {
                let station = station_of(spot.number);
                SpotView {
                    number: match spot.number {
                        0 => words.text("piece-floor-letter"),
                        n => n.to_string(),
                    },
                    label: self.flaw_station(station),
                    inner: spot.inner,
                    outer: spot.outer,
                    slot: (place as f64 + 0.5) / count,
                    picked: form.station == Some(station),
                }
            })
            .collect();
        view.section = drawing;
        view.section_label = words.text("flaws-section-label");
        view.station = form.station.map_or_else(
            || words.text("flaws-touch-station"),
            |s| self.flaw_station(s),
        );
        let spots = form.clock.and_then(|clock| {
            Some(ClockSpot {
                text: letter(
                    noted
                        .and_then(|n| piece.flaws.iter().position(|f| f.note.flaw == n.flaw))
                        .unwrap_or(piece.flaws.len()),
                ),
                hour: f64::from(clock.hour()),
                out: out_of(piece, form.station, form.clock)?,
                open: true,
            })
        });
        view.clock = Some(ClockView {
            spots: spots.into_iter().collect(),
            mouth: outside_view(piece).mouth,
            value: form.clock.map_or_else(
                || words.text("flaws-touch-clock"),
                |c| words.with("flaws-clock", &[("n", c.hour().into())]),
            ),
            what: words.text("flaws-clock-what"),
            label: words.text("flaws-clock-label"),
            less: words.text("flaws-clock-less"),
            more: words.text("flaws-clock-more"),
            clear: if form.clock.is_some() {
                words.text("flaws-clock-clear")
            } else {
                String::new()
            },
        });
    }

    fn ask_done(
        &self,
        view: &mut FormView,
        form: &FlawForm,
        advice: Option<Advice>,
        through: bool,
    ) {
        let words = self.words();
        view.treat_title = words.text("flaws-did");
        view.treatments = Treatment::ALL
            .iter()
            .map(|t| {
                let suggested = advice.as_ref().filter(|a| a.grade == *t);
                let note = match (suggested, *t) {
                    (Some(advice), _) => words.with(
                        "flaws-suggested-why",
                        &[("why", advice.why.as_str().into())],
                    ),
                    (None, Treatment::Left) => words.text("flaws-left-sound"),
                    _ => String::new(),
                };
                OptionView {
                    key: t.key(),
                    text: words.text(&format!("treatment-{}", t.key())),
                    note,
                    selected: form.treatment == Some(*t),
                }
            })
            .collect();
        view.practice = words.text("piece-common-practice");
        if form.treatment.is_some_and(Treatment::is_glue) {
            view.advice.push(words.text("flaws-wait"));
        }
        if through && form.goes_on() && form.face != Some(Face::Both) {
            view.advice.push(words.text("flaws-both-faces"));
        }
        view.caution = (
            words.text("flaws-caution"),
            words.text("flaws-caution-more"),
        );
    }

    fn ask_more(&self, view: &mut FormView, form: &FlawForm, mode: Mode) {
        let words = self.words();
        // Nothing is folded away where a flaw is corrected.
        view.more = form.more || mode == Mode::Correct;
        if mode != Mode::Correct {
            view.more_text = words.text(match (form.more, mode) {
                (true, _) => "flaws-fold",
                (false, Mode::Treat) => "flaws-unfold-treated",
                (false, _) => "flaws-unfold",
            });
        }
        if !view.more {
            return;
        }
        if mode != Mode::Treat {
            let unit = self
                .numbers()
                .quantity(Quantity::FlawSize, Quantity::FlawSize.range().example)
                .unit;
            view.size = Some(TypedView::of(&form.size, words.text("flaws-size")).in_unit(unit));
            view.through = Some((
                words.text("flaws-through"),
                words.text("flaws-through-note"),
                form.through,
            ));
            view.note_label = words.text("flaws-note");
            view.note = form.note.clone();
        }
        if mode == Mode::Correct || form.treatment.is_none() {
            return;
        }
        if form.goes_on() {
            view.face_title = words.text("flaws-face");
            view.faces = Face::ALL
                .iter()
                .map(|f| OptionView {
                    key: f.key(),
                    text: words.text(&format!("face-{}", f.key())),
                    note: String::new(),
                    selected: form.face == Some(*f),
                })
                .collect();
            view.goes = Some((
                words.text("flaws-goes-label"),
                form.goes.to_string(),
                form.can_less(),
                form.can_more(),
            ));
        }
        view.again_title = words.text("flaws-again");
        view.agains = AgainChoice::ALL
            .into_iter()
            .map(|a| OptionView {
                key: a.key(),
                text: words.text(&format!("flaws-again-{}", a.key())),
                note: String::new(),
                selected: form.again == a,
            })
            .collect();
        if form.again == AgainChoice::Typed {
            let day = TypedView::of(&form.again_day, words.text("flaws-again-day"));
            view.again_day = Some(day.hinted(words.text("stages-day-hint")));
        }
    }
}

/// The station of a number on the drawing, where 0 is the floor.
const fn station_of(number: u8) -> StationRef {
    match number {
        0 => StationRef::Floor,
        n => StationRef::Wall(n),
    }
}
