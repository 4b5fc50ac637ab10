//! Marking: the spot that matters and a length drawn on a photo: two taps on a known length set the scale, two more measure
//! the crack, and the measure goes into the crack's history.

use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::ids::{PhotoId, PieceId};
use evenwall_piece::photo::{Measured, PhotoMarks, PhotoOn, Scale, Span, Spot, length_by_scale};
use evenwall_piece::piece::{Flaw, FlawEvent, Moment};
use evenwall_piece::vocabulary::FlawChange;

use super::tiles::place;
use crate::app::{App, AppError};
use crate::flaws::looks_due;
use crate::measured::Field;
use crate::numbers::Quantity;

/// A crack counts as longer from this on, mm and as a share of what it was: less is the error of four taps with a finger.
/// Common practice, no source.
const LONGER_MM: f64 = 1.0;
const LONGER_SHARE: f64 = 0.05;

/// What a tap means.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum MarkTool {
    /// The spot that matters.
    #[default]
    Spot,
    /// An end of the known length.
    Scale,
    /// An end of the crack.
    Crack,
}

impl MarkTool {
    /// All tools in the order in which they are offered.
    pub const ALL: [Self; 3] = [Self::Spot, Self::Scale, Self::Crack];

    /// Stable key.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Spot => "spot",
            Self::Scale => "scale",
            Self::Crack => "crack",
        }
    }

    /// The tool with this key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|t| t.key() == key)
    }
}

/// What is being drawn on a photo.
#[derive(Debug, Clone, PartialEq)]
pub struct Marking {
    pub(crate) piece: PieceId,
    pub(crate) photo: PhotoId,
    pub(crate) tool: MarkTool,
    pub(crate) spot: Option<Spot>,
    pub(crate) scale: Vec<Spot>,
    pub(crate) known: Field,
    pub(crate) crack: Vec<Spot>,
}

impl Marking {
    /// Takes a tap for the tool in hand; a third tap on a length begins it anew.
    pub(super) fn tap(&mut self, x: f64, y: f64) {
        let spot = Spot { x, y };
        if !spot.is_on() {
            return;
        }
        let ends = match self.tool {
            MarkTool::Spot => {
                self.spot = Some(spot);
                return;
            }
            MarkTool::Scale => &mut self.scale,
            MarkTool::Crack => &mut self.crack,
        };
        if ends.len() >= 2 {
            ends.clear();
        }
        ends.push(spot);
    }

    /// Clears what the tool in hand drew.
    pub(super) fn clear(&mut self) {
        match self.tool {
            MarkTool::Spot => self.spot = None,
            MarkTool::Scale => {
                self.scale.clear();
                self.known = Field::default();
            }
            MarkTool::Crack => self.crack.clear(),
        }
    }
}

fn span(ends: &[Spot]) -> Option<Span> {
    match ends {
        [from, to] => Some(Span {
            from: *from,
            to: *to,
        }),
        _ => None,
    }
}

/// What is shown while drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct MarkingView {
    /// The tool in hand.
    pub tool: MarkTool,
    /// What to do next, one sentence.
    pub hint: String,
    /// The spot, fractions from the top left.
    pub spot: Option<(f32, f32)>,
    /// The ends of the known length, none to two.
    pub scale: Vec<(f32, f32)>,
    /// The known length.
    pub known: Field,
    /// The ends of the crack, none to two.
    pub crack: Vec<(f32, f32)>,
    /// "22 mm"; empty until the scale and both ends are there.
    pub length: String,
}

impl App {
    pub(super) fn marks_with(&mut self, change: impl FnOnce(&mut Marking)) {
        if let Some(marking) = &mut self.states.photos.marking {
            change(marking);
        }
    }

    pub(super) fn marks_begin(&mut self, piece: &PieceId, photo: &PhotoId) {
        let Some(found) = self.piece(piece).and_then(|p| p.photo(photo)) else {
            return;
        };
        let marks = found.marks.as_ref();
        let ends = |span: Span| vec![span.from, span.to];
        let scale = marks.and_then(|m| m.scale.as_ref());
        let known = scale.map_or_else(Field::default, |s| {
            let typed = &s.known_mm.typed;
            let shown = || {
                self.numbers()
                    .quantity(Quantity::FlawSize, s.known_mm.value)
                    .text()
            };
            Field::of(if typed.is_empty() {
                shown()
            } else {
                typed.clone()
            })
        });
        self.states.photos.marking = Some(Marking {
            piece: piece.clone(),
            photo: photo.clone(),
            tool: MarkTool::default(),
            spot: marks.and_then(|m| m.spot),
            scale: scale.map(|s| ends(s.span)).unwrap_or_default(),
            known,
            crack: marks
                .and_then(|m| m.crack)
                .map(|c| ends(c.span))
                .unwrap_or_default(),
        });
    }

    /// The scale as drawn and typed; what is wrong with the length is put into the field.
    fn marks_scale(
        &self,
        marking: &mut Marking,
    ) -> Result<Option<Scale>, crate::measured::Refused> {
        let known = self.read_field(Quantity::FlawSize, &mut marking.known)?;
        Ok(span(&marking.scale)
            .zip(known)
            .map(|(span, known_mm)| Scale { span, known_mm }))
    }

    /// The length of the crack by the scale.
    fn marks_length(&self, marking: &Marking, scale: Option<&Scale>) -> Option<Measured> {
        let photo = self.piece(&marking.piece)?.photo(&marking.photo)?;
        let span = span(&marking.crack)?;
        let (w, h) = (photo.note.width_px, photo.note.height_px);
        let length_mm = length_by_scale(scale?, span, w, h)?;
        Some(Measured { span, length_mm })
    }

    /// What is shown while drawing on a photo; `None` while nothing is.
    #[must_use]
    pub fn photos_marking_view(&self) -> Option<MarkingView> {
        let mut marking = self.states.photos.marking.clone()?;
        let untouched = marking.known.clone();
        let scale = self.marks_scale(&mut marking).ok().flatten();
        let measured = self.marks_length(&marking, scale.as_ref());
        let hint = match (
            marking.tool,
            marking.scale.len(),
            &scale,
            marking.crack.len(),
        ) {
            (MarkTool::Spot, ..) => "photos-hint-spot",
            (MarkTool::Scale, 0 | 1, ..) => "photos-hint-scale",
            (MarkTool::Scale, _, None, _) => "photos-hint-known",
            (MarkTool::Crack, _, None, _) => "photos-hint-scale-first",
            (MarkTool::Crack, _, Some(_), 0 | 1) => "photos-hint-crack",
            (MarkTool::Crack, _, Some(_), _) if measured.is_none() => "photos-hint-too-short",
            _ => "photos-hint-done",
        };
        Some(MarkingView {
            tool: marking.tool,
            hint: self.words().text(hint),
            spot: marking.spot.map(place),
            scale: marking.scale.iter().copied().map(place).collect(),
            known: untouched,
            crack: marking.crack.iter().copied().map(place).collect(),
            length: measured.map_or_else(String::new, |m| {
                self.numbers()
                    .quantity(Quantity::FlawSize, m.length_mm)
                    .text()
            }),
        })
    }

    pub(super) fn marks_save(&mut self, now: Moment) -> Result<(), AppError> {
        let Some(mut marking) = self.states.photos.marking.clone() else {
            return Ok(());
        };
        let Ok(scale) = self.marks_scale(&mut marking) else {
            self.states.photos.marking = Some(marking);
            return Ok(());
        };
        let crack = self.marks_length(&marking, scale.as_ref());
        let marks = PhotoMarks {
            photo: marking.photo.clone(),
            spot: marking.spot,
            scale,
            crack,
        };
        let piece = self.piece(&marking.piece);
        let photo = piece.and_then(|p| p.photo(&marking.photo));
        let before = photo.and_then(|p| p.marks.clone());
        if before.as_ref() == Some(&marks) {
            self.states.photos.marking = None;
            return Ok(());
        }
        let is_new = crack.is_some() && before.and_then(|b| b.crack) != crack;
        let flaw = photo.and_then(|p| match &p.note.on {
            PhotoOn::Flaw(id) if is_new => piece?.flaw(id),
            _ => None,
        });
        let looked = flaw.zip(crack).map(|(flaw, crack)| PieceFact::FlawLooked {
            flaw: flaw.note.flaw.clone(),
            change: change(flaw, crack.length_mm),
            // A tenth of a millimetre is more than four taps can tell.
            size_mm: Some(Measure::plain((crack.length_mm * 10.0).round() / 10.0)),
            look_again: None,
        });
        let due = flaw
            .filter(|f| looks_due(f, now))
            .map(|f| f.note.flaw.clone());
        let facts = std::iter::once(PieceFact::PhotoMarked(marks))
            .chain(looked)
            .collect();
        self.record(&marking.piece, now, facts, now)?;
        self.states.photos.marking = None;
        self.say(self.words().text("photos-marked"));
        // The look was due: when is the next?
        if let Some(flaw) = due {
            self.flaw_ask_again(&marking.piece, &flaw, now);
        }
        Ok(())
    }
}

/// Longer, or the same, against the last length that was measured.
fn change(flaw: &Flaw, now_mm: f64) -> FlawChange {
    let looked = flaw.events.iter().rev().find_map(|e| match e {
        FlawEvent::Looked { size_mm, .. } => size_mm.as_ref(),
        FlawEvent::Treated { .. } => None,
    });
    let before = looked.or(flaw.note.size_mm.as_ref()).map(|m| m.value);
    let grew = |b: f64| now_mm - b >= LONGER_MM && now_mm - b >= b * LONGER_SHARE;
    if before.is_some_and(grew) {
        FlawChange::Longer
    } else {
        FlawChange::Same
    }
}
