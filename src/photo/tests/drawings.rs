//! The drawings: the same every time, small, taken like any photo, with a rule of the length that it says.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod pictures;

use evenwall_photo::drawing::{Drawing, HEIGHT, PX_PER_MM, RULE, Subject, WIDTH};
use pictures::{markers, seen, taken};

const SUBJECTS: [Subject; 4] = [
    Subject::Portrait,
    Subject::Knot(16.0),
    Subject::Check(35.0),
    Subject::Bark(20.0),
];

#[test]
fn a_drawing_is_the_same_every_time_small_and_carries_nothing() {
    for subject in SUBJECTS {
        let drawing = Drawing { subject, wood: 3 };
        let jpeg = drawing.jpeg().unwrap();
        assert_eq!(jpeg, drawing.jpeg().unwrap());
        assert!(jpeg.len() < 80_000, "{subject:?}: {}", jpeg.len());
        assert!(
            markers(&jpeg)
                .iter()
                .all(|m| matches!(m, 0xe0 | 0xdb | 0xc0 | 0xc4 | 0xda))
        );
        assert_ne!(
            jpeg,
            Drawing { subject, wood: 4 }.jpeg().unwrap(),
            "another wood"
        );
        let photo = taken(&jpeg);
        assert_eq!((photo.width, photo.height), (WIDTH, HEIGHT));
    }
}

#[test]
fn the_flaw_is_drawn_as_long_as_it_says_by_the_rule_beside_it() {
    let (from, to, top) = RULE;
    assert!((f64::from(to - from) / PX_PER_MM - 100.0).abs() < 1e-9);
    for mm in [20.0, 42.0] {
        let picture = seen(
            &Drawing {
                subject: Subject::Check(mm),
                wood: 3,
            }
            .jpeg()
            .unwrap(),
        );
        let dark = |y: usize| (300..340).any(|x| picture.at(x, y).iter().all(|c| *c < 60));
        let rows = (0..top as usize).filter(|y| dark(*y)).count() as f64;
        let drawn = rows / PX_PER_MM;
        assert!((drawn - mm).abs() < 3.0, "{drawn} for {mm}");
    }
}
