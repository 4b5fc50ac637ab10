//! Drawn: the pictures of the demo shelf. The program draws them itself when the demo opens; nothing of them is anybody's.

use std::sync::OnceLock;
use std::sync::atomic::AtomicBool;

use evenwall_photo::drawing::{Drawing, HEIGHT, PX_PER_MM, RULE, Subject, WIDTH};
use evenwall_photo::error::PhotoError;
use evenwall_photo::limits::Limits;
use evenwall_photo::prepare::thumbnail;
use evenwall_photo::watch::Watch;
use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::ids::{FlawId, PhotoId, PieceId};
use evenwall_piece::photo::{
    Measured, PhotoMarks, PhotoNote, PhotoOn, PhotoTaken, Scale, Span, Spot,
};
use evenwall_piece::piece::Moment;

use super::moment;
use crate::store::{Store, StoreError};

/// A drawing in the demo.
struct Drawn {
    piece: &'static str,
    /// The flaw; none for the portrait.
    flaw: Option<&'static str>,
    day: i64,
    time: &'static str,
    subject: Subject,
    wood: u32,
}

const fn of(
    piece: &'static str,
    flaw: Option<&'static str>,
    day: i64,
    time: &'static str,
    subject: Subject,
    wood: u32,
) -> Drawn {
    Drawn {
        piece,
        flaw,
        day,
        time,
        subject,
        wood,
    }
}

/// All of them: portraits, flaws as they were found, and one crack as it grew.
const DRAWN: [Drawn; 9] = [
    of("k01", None, -20, "10:20", Subject::Portrait, 11),
    of("k07", None, -8, "15:05", Subject::Portrait, 7),
    of("k12", None, -2, "09:25", Subject::Portrait, 12),
    of("k05", Some("check-1"), -2, "18:22", Subject::Check(14.0), 5),
    of("k12", Some("knot-1"), -2, "09:32", Subject::Knot(12.0), 12),
    of("k12", Some("bark-1"), -2, "09:46", Subject::Bark(20.0), 12),
    of(
        "j24",
        Some("knot-1"),
        -201,
        "10:12",
        Subject::Knot(16.0),
        24,
    ),
    of(
        "j24",
        Some("ring-shake-1"),
        -201,
        "10:02",
        Subject::Check(35.0),
        24,
    ),
    of(
        "j24",
        Some("ring-shake-1"),
        -150,
        "18:02",
        Subject::Check(42.0),
        24,
    ),
];

fn spot(x: f64, y: f64) -> Spot {
    Spot {
        x: x / f64::from(WIDTH),
        y: y / f64::from(HEIGHT),
    }
}

/// What is drawn on a drawing of a crack: the rule as the known length, and the crack.
fn marks(photo: &PhotoId, length_mm: f64) -> PieceFact {
    let (from, to, top) = (f64::from(RULE.0), f64::from(RULE.1), f64::from(RULE.2));
    let half = length_mm * PX_PER_MM / 2.0;
    PieceFact::PhotoMarked(PhotoMarks {
        photo: photo.clone(),
        spot: None,
        scale: Some(Scale {
            span: Span {
                from: spot(from, top),
                to: spot(to, top),
            },
            known_mm: Measure {
                value: 100.0,
                typed: "100".into(),
            },
        }),
        crack: Some(Measured {
            span: Span {
                from: spot(320.0, 215.0 - half),
                to: spot(320.0, 215.0 + half),
            },
            length_mm,
        }),
    })
}

/// A drawing as it is stored, and its thumbnail.
type Made = (Vec<u8>, Vec<u8>);

/// All of them in their order; drawn once, however often a demo opens.
fn made() -> &'static Result<Vec<Made>, PhotoError> {
    static MADE: OnceLock<Result<Vec<Made>, PhotoError>> = OnceLock::new();
    MADE.get_or_init(|| {
        let never = AtomicBool::new(false);
        let one = |drawn: &Drawn| {
            let (subject, wood) = (drawn.subject, drawn.wood);
            let jpeg = Drawing { subject, wood }.jpeg()?;
            let mut nobody = |_| {};
            let thumb = thumbnail(
                &jpeg,
                &Limits::default(),
                &mut Watch::new(&never, &mut nobody),
            )?;
            Ok((jpeg, thumb))
        };
        DRAWN.iter().map(one).collect()
    })
}

/// Adds the drawings to a store that holds the demo's pieces; one that keeps no photos stays without.
pub(super) fn fill(store: &mut dyn Store, now: Moment) -> Result<(), StoreError> {
    let Some(photos) = store.photos_mut() else {
        return Ok(());
    };
    let made = made().as_ref().map_err(|e| StoreError(e.to_string()))?;
    for (n, (drawn, (jpeg, thumb))) in DRAWN.iter().zip(made).enumerate() {
        let wrong = |why: &dyn std::fmt::Display| StoreError(format!("demo drawing {n}: {why}"));
        let piece = PieceId::new(&format!("{}-demo", drawn.piece)).map_err(|e| wrong(&e))?;
        let photo = PhotoId::new(&format!("drawn-{n}")).map_err(|e| wrong(&e))?;
        let at = moment(now, drawn.day, drawn.time)
            .ok_or_else(|| wrong(&"no such moment"))?
            .min(now);
        let hash = evenwall_shelf::photos::hash_of(jpeg).ok_or_else(|| wrong(&"no hash"))?;
        let on = match drawn.flaw {
            Some(flaw) => PhotoOn::Flaw(FlawId::new(flaw).map_err(|e| wrong(&e))?),
            None => PhotoOn::Portrait,
        };
        let mut facts = vec![PieceFact::PhotoAdded(PhotoNote {
            photo: photo.clone(),
            stored: hash.clone(),
            source: hash.clone(),
            taken: Some(PhotoTaken {
                local: at.naive_local(),
                offset: Some(*at.offset()),
            }),
            width_px: WIDTH,
            height_px: HEIGHT,
            on,
        })];
        if let Subject::Check(length_mm) = drawn.subject {
            facts.push(marks(&photo, length_mm));
        }
        photos.append_with_photos(&piece, at, at, facts, std::slice::from_ref(jpeg))?;
        // A cache: one that is not kept is rebuilt when it is shown.
        photos.save_thumbnail(&hash, thumb).unwrap_or_default();
    }
    Ok(())
}
