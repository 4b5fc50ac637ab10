//! List: the flaws of a piece on two views of its outside, and a card for each, what is to decide first.

use evenwall_piece::fact::{Clock, StationRef};
use evenwall_piece::photo::PhotoOn;
use evenwall_piece::piece::{Flaw, Moment, Piece};

use super::telling::{Stand, letter_of};
use crate::app::App;
use crate::drawing::{OutsideDrawing, flaw_on_outside, outside_view, place_on_outside};
use crate::piece::view::HeadView;
use crate::words::dates::Dates;

/// A letter on a view of the piece.
#[derive(Debug, Clone, PartialEq)]
pub struct FlawLetter {
    /// The letter.
    pub text: String,
    /// On the view from the side, as fractions of its width and height.
    pub x: f64,
    /// See `x`.
    pub y: f64,
    /// It is still to decide, and drawn filled.
    pub open: bool,
}

/// A place on the view from the mouth.
#[derive(Debug, Clone, PartialEq)]
pub struct ClockSpot {
    /// The letter; empty on the small face of a card.
    pub text: String,
    /// 0 to 12.
    pub hour: f64,
    /// 0 the axis to 1 the edge.
    pub out: f64,
    /// Still to decide, and drawn filled.
    pub open: bool,
}

/// A flaw in the list.
#[derive(Debug, Clone, PartialEq)]
pub struct FlawCard {
    /// Its id.
    pub id: String,
    /// Its letter.
    pub letter: String,
    /// Still to decide.
    pub open: bool,
    /// "Knot, 14 mm".
    pub title: String,
    /// "Station 3, 4 o'clock".
    pub place: String,
    /// What was done, or what is suggested, one line each.
    pub lines: Vec<String>,
    /// Short, in a tag: "treat both faces", "2 days late"; empty for none.
    pub tag: String,
    /// `late`, `act` or `neutral`.
    pub tag_kind: &'static str,
    /// Where round the piece, for the small face; empty where it is not known.
    pub clock: Vec<ClockSpot>,
    /// The file of the thumbnail of its last photo; empty while there is none.
    pub thumb: String,
    /// It has a photo.
    pub has_photo: bool,
    /// The whole of it, for a screen reader.
    pub spoken: String,
}

/// Flaws that stand alike.
#[derive(Debug, Clone, PartialEq)]
pub struct FlawGroup {
    /// "To decide".
    pub title: String,
    /// How many.
    pub count: String,
    /// The cards.
    pub cards: Vec<FlawCard>,
}

/// The page of the flaws.
#[derive(Debug, Clone, PartialEq)]
pub struct FlawsView {
    /// The head.
    pub head: HeadView,
    /// The outside from the side.
    pub outside: OutsideDrawing,
    /// What a screen reader says of it.
    pub outside_label: String,
    /// The letters on it.
    pub letters: Vec<FlawLetter>,
    /// The letters on the view from the mouth.
    pub clock: Vec<ClockSpot>,
    /// What a screen reader says of it.
    pub clock_label: String,
    /// What the letters mean, and which have no place.
    pub legend: String,
    /// The groups that are not empty.
    pub groups: Vec<FlawGroup>,
    /// Said instead while nothing was noted: title and text.
    pub empty: Option<(String, String)>,
    /// The button below; empty where nothing can be noted any more.
    pub add: String,
    /// Said of drawn pictures, in the demo; empty elsewhere.
    pub drawn: String,
}

/// Letters that would lie on each other stand side by side: this far apart, as a part of the drawing's width.
const APART: f64 = 0.17;
/// The same on the view from the mouth, as a part of its radius.
const CLOCK_APART: f64 = 0.44;

impl App {
    /// The page of the flaws; `None` where the piece is gone.
    #[must_use]
    pub fn flaws_view(&self, now: Moment) -> Option<FlawsView> {
        let piece = self.flaws_piece()?;
        let words = self.words();
        let mut head = self.inner_head(piece, "flaws-title");
        let open = piece
            .flaws
            .iter()
            .filter(|f| Stand::of(f, now) == Stand::Open)
            .count();
        let found = piece.flaws.len();
        head.subtitle = match (found, open) {
            (0, _) => head.subtitle,
            (_, 0) => words.with("flaws-found-decided", &[("n", found.into())]),
            _ => words.with(
                "flaws-found-open",
                &[("n", found.into()), ("open", open.into())],
            ),
        };
        let outside = outside_view(piece);
        let letters = letters_on(piece, &outside);
        let unplaced: Vec<String> = piece
            .flaws
            .iter()
            .filter(|f| flaw_on_outside(piece, f).is_none())
            .filter(|f| f.note.clock.is_none())
            .map(|f| letter_of(piece, f))
            .collect();
        let mut legend = if found == 0 {
            String::new()
        } else {
            words.text("flaws-legend")
        };
        if !unplaced.is_empty() {
            let more = words.with(
                "flaws-legend-unplaced",
                &[("letters", unplaced.join(", ").into())],
            );
            legend = format!("{legend} {more}");
        }
        Some(FlawsView {
            outside_label: words.text("flaws-outside-label"),
            clock_label: words.text("flaws-clock-label"),
            clock: clock_spots(piece),
            letters,
            outside,
            legend,
            groups: self.flaw_groups(piece, now),
            empty: piece.flaws.is_empty().then(|| {
                (
                    words.text("flaws-empty-title"),
                    words.text("flaws-empty-text"),
                )
            }),
            drawn: if self.is_demo() && piece.photos.iter().any(|p| p.removed.is_none()) {
                words.text("photos-drawn")
            } else {
                String::new()
            },
            add: if piece.deleted.is_none() {
                words.text("flaws-add")
            } else {
                String::new()
            },
            head,
        })
    }

    fn flaw_groups(&self, piece: &Piece, now: Moment) -> Vec<FlawGroup> {
        Stand::ALL
            .into_iter()
            .filter_map(|stand| {
                let cards: Vec<FlawCard> = piece
                    .flaws
                    .iter()
                    .filter(|f| Stand::of(f, now) == stand)
                    .map(|f| self.flaw_card(piece, f, stand, now))
                    .collect();
                (!cards.is_empty()).then(|| FlawGroup {
                    title: self.words().text(&format!("flaws-group-{}", stand.key())),
                    count: cards.len().to_string(),
                    cards,
                })
            })
            .collect()
    }

    fn flaw_card(&self, piece: &Piece, flaw: &Flaw, stand: Stand, now: Moment) -> FlawCard {
        let words = self.words();
        let letter = letter_of(piece, flaw);
        let title = self.flaw_title(flaw);
        let place = self.flaw_where(flaw);
        let mut lines = Vec::new();
        if stand == Stand::Open {
            let advice = self.glue_advice(piece, &piece.note_now(flaw), None);
            let grade = words.text(&format!("treatment-{}", advice.grade.key()));
            lines.push(words.with(
                "flaws-suggested",
                &[("grade", grade.into()), ("why", advice.why.into())],
            ));
        } else {
            lines.extend([
                self.flaw_told(flaw, now),
                self.flaw_with_what(flaw),
                self.flaw_last_look(flaw, now),
            ]);
        }
        lines.retain(|l| !l.is_empty());
        let faces = self.flaw_faces(flaw);
        let today = now.date_naive();
        let (tag, tag_kind) = match (stand, flaw.look_again()) {
            (Stand::Due, Some(day)) => {
                let due = Dates::new(words, today).due(day);
                let kind = if day < today { "late" } else { "act" };
                (due, kind)
            }
            _ => (faces, "neutral"),
        };
        let spoken = [vec![place.clone()], lines.clone(), vec![tag.clone()]]
            .concat()
            .into_iter()
            .filter(|t| !t.is_empty())
            .collect::<Vec<_>>()
            .join(". ");
        let on = PhotoOn::Flaw(flaw.note.flaw.clone());
        let photo = self.photos_tiles(&piece.id, &on, now).pop();
        FlawCard {
            has_photo: photo.is_some(),
            thumb: photo.map(|p| p.thumb).unwrap_or_default(),
            id: flaw.note.flaw.to_string(),
            open: stand == Stand::Open,
            clock: small_face(piece, flaw),
            letter,
            title,
            place,
            lines,
            tag,
            tag_kind,
            spoken,
        }
    }
}

/// All letters on the view from the mouth; one that would lie on another moves inwards, then on round.
fn clock_spots(piece: &Piece) -> Vec<ClockSpot> {
    let at = |hour: f64, out: f64| {
        let turn = hour * std::f64::consts::PI / 6.0;
        (out * turn.sin(), out * turn.cos())
    };
    let mut placed: Vec<ClockSpot> = Vec::new();
    for flaw in &piece.flaws {
        let Some(mut spot) = clock_spot(piece, flaw, letter_of(piece, flaw)) else {
            continue;
        };
        let (hour, out) = (spot.hour, spot.out);
        for tries in 0..8 {
            spot.out = if tries % 2 == 0 {
                out
            } else {
                out - CLOCK_APART
            };
            spot.hour = hour + f64::from(tries / 2) * CLOCK_APART * 2.0;
            let (x, y) = at(spot.hour, spot.out);
            let free = placed.iter().all(|p| {
                let (px, py) = at(p.hour, p.out);
                (px - x).abs() >= 0.95 * CLOCK_APART || (py - y).abs() >= 0.95 * CLOCK_APART
            });
            if free {
                break;
            }
        }
        placed.push(spot);
    }
    placed
}

/// Where a flaw lies on the view from the mouth; half way out where its station is not known.
fn clock_spot(piece: &Piece, flaw: &Flaw, text: String) -> Option<ClockSpot> {
    let hour = flaw.note.clock?.hour();
    let out = flaw_on_outside(piece, flaw).map_or(HALF_OUT, |p| p.out);
    Some(ClockSpot {
        text,
        hour: f64::from(hour),
        out: inside_the_face(out),
        open: !flaw.decided() && !flaw.gone(),
    })
}

/// The one dot on the small face of a flaw.
pub(super) fn small_face(piece: &Piece, flaw: &Flaw) -> Vec<ClockSpot> {
    let spot = clock_spot(piece, flaw, String::new());
    spot.map(|s| ClockSpot { open: true, ..s })
        .into_iter()
        .collect()
}

/// How far out on the view from the mouth: inside the edge, and never over the mouth's middle.
pub(super) fn out_of(
    piece: &Piece,
    station: Option<StationRef>,
    clock: Option<Clock>,
) -> Option<f64> {
    clock?;
    let out = place_on_outside(piece, station, clock).map_or(HALF_OUT, |p| p.out);
    Some(inside_the_face(out))
}

/// How far out a place lies of which only the hour is known.
const HALF_OUT: f64 = 0.7;

/// Inside the edge of the face, and never over the mouth's middle.
fn inside_the_face(out: f64) -> f64 {
    out.clamp(0.3, 0.72)
}

fn letters_on(piece: &Piece, outside: &OutsideDrawing) -> Vec<FlawLetter> {
    if outside.width <= 0.0 || outside.height <= 0.0 {
        return Vec::new();
    }
    let mut placed: Vec<FlawLetter> = Vec::new();
    for flaw in &piece.flaws {
        let Some(place) = flaw_on_outside(piece, flaw) else {
            continue;
        };
        let (mut x, y) = (place.x / outside.width, place.y / outside.height);
        let taken = |x: f64, placed: &[FlawLetter]| {
            placed
                .iter()
                .any(|p| (p.x - x).abs() < 0.9 * APART && (p.y - y).abs() < 0.9 * APART)
        };
        // The next free place to the side, towards the wider half first.
        let step = if x > 0.5 { -APART } else { APART };
        for tries in 1..=8 {
            if !taken(x, &placed) {
                break;
            }
            let away = f64::from(tries) * step * if tries % 2 == 0 { -1.0 } else { 1.0 };
            x = (x + away).clamp(0.05, 0.95);
        }
        placed.push(FlawLetter {
            text: letter_of(piece, flaw),
            x,
            y,
            open: !flaw.decided() && !flaw.gone(),
        });
    }
    placed
}
