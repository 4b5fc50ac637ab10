//! Any fact about a photo.

use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::ids::{EntryId, FlawId, PhotoId};
use evenwall_piece::photo::{
    Measured, PhotoHash, PhotoMarks, PhotoNote, PhotoOn, PhotoTaken, Scale, Span, Spot,
};
use proptest::option;
use proptest::prelude::*;

use super::{line, moment, number, text};

fn photo() -> impl Strategy<Value = PhotoId> {
    "[a-z0-9-]{1,12}".prop_map(|t| PhotoId::new(&t).unwrap())
}

fn hash() -> impl Strategy<Value = PhotoHash> {
    "[0-9a-f]{64}".prop_map(|t| PhotoHash::new(&t).unwrap())
}

fn on() -> impl Strategy<Value = PhotoOn> {
    let entry = || (line(), any::<u16>()).prop_map(|(line, part)| EntryId { line, part });
    prop_oneof![
        "[a-z0-9-]{1,12}".prop_map(|t| PhotoOn::Flaw(FlawId::new(&t).unwrap())),
        entry().prop_map(PhotoOn::Entry),
        Just(PhotoOn::Portrait),
        entry().prop_map(PhotoOn::BagCheck),
        Just(PhotoOn::Finished),
    ]
}

fn taken() -> impl Strategy<Value = PhotoTaken> {
    (moment(), any::<bool>()).prop_map(|(m, with_offset)| PhotoTaken {
        local: m.naive_local(),
        offset: with_offset.then(|| *m.offset()),
    })
}

fn spot() -> BoxedStrategy<Spot> {
    (number(), number())
        .prop_map(|(x, y)| Spot { x, y })
        .boxed()
}

fn span() -> BoxedStrategy<Span> {
    (spot(), spot())
        .prop_map(|(from, to)| Span { from, to })
        .boxed()
}

/// Any of the four.
pub fn photo_facts() -> impl Strategy<Value = PieceFact> {
    let size = (any::<u32>(), any::<u32>());
    let note = (photo(), hash(), hash(), option::of(taken()), size, on()).prop_map(
        |(photo, stored, source, taken, (width_px, height_px), on)| {
            PieceFact::PhotoAdded(PhotoNote {
                photo,
                stored,
                source,
                taken,
                width_px,
                height_px,
                on,
            })
        },
    );
    let scale = (span(), number(), text()).prop_map(|(span, value, typed)| Scale {
        span,
        known_mm: Measure { value, typed },
    });
    let crack = (span(), number()).prop_map(|(span, length_mm)| Measured { span, length_mm });
    let marks = (
        photo(),
        option::of(spot()),
        option::of(scale),
        option::of(crack),
    )
        .prop_map(|(photo, spot, scale, crack)| {
            PieceFact::PhotoMarked(PhotoMarks {
                photo,
                spot,
                scale,
                crack,
            })
        });
    prop_oneof![
        note,
        marks,
        photo().prop_map(PieceFact::PhotoRemoved),
        photo().prop_map(PieceFact::PhotoBack),
    ]
}
