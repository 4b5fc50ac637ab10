//! What becomes of a picture that is taken: upright, small, without metadata, its time kept, the original as it was.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod pictures;

use std::cell::Cell;
use std::sync::atomic::{AtomicBool, Ordering};

use evenwall_photo::error::PhotoError;
use evenwall_photo::limits::Limits;
use evenwall_photo::prepare::{prepare, sha256, thumbnail};
use evenwall_photo::watch::Watch;
use pictures::{BLUE, GREEN, PALE, Picture, RED, markers, near, seen, tags, taken};

const TIME: Option<(&str, Option<&str>)> = Some(("2026:03:11 09:12:05", Some("+01:00")));

fn is_upright(picture: &Picture) {
    let (w, h) = (picture.width, picture.height);
    for (x, y, light) in [
        (w / 8, h / 8, RED),
        (w - 1 - w / 8, h / 8, GREEN),
        (w / 8, h - 1 - h / 8, BLUE),
        (w - 1 - w / 8, h - 1 - h / 8, PALE),
    ] {
        assert!(
            near(picture.at(x, y), light),
            "at {x}, {y}: {:?}, not {light:?}",
            picture.at(x, y)
        );
    }
}

/// Nothing but the picture: no application's segments save the plain JFIF one, no words of the source.
fn carries_nothing(jpeg: &[u8]) {
    for marker in markers(jpeg) {
        assert!(
            matches!(marker, 0xe0 | 0xdb | 0xc0 | 0xc4 | 0xda),
            "segment {marker:#x}"
        );
    }
    for word in [&b"Exif"[..], b"SECRET", b"GPS", b"http", b"2026", b"ICC"] {
        assert!(
            jpeg.windows(word.len()).all(|w| w != word),
            "{}",
            String::from_utf8_lossy(word)
        );
    }
}

#[test]
fn all_eight_orientations_come_out_upright_and_carry_no_metadata() {
    let wanted = Picture::quarters(96, 64);
    for orientation in 1..=8 {
        for big in [false, true] {
            let exif = tags(orientation, TIME, big);
            let stored = wanted.stored(orientation);
            for source in [
                stored.jpeg(Some(&exif)),
                stored.png(Some(&exif)),
                stored.webp(Some(&exif)),
            ] {
                let before = source.clone();
                let photo = taken(&source);
                assert_eq!(source, before, "the original is as it was");
                assert_eq!(
                    (photo.width, photo.height),
                    (96, 64),
                    "orientation {orientation}"
                );
                let result = seen(&photo.jpeg);
                assert_eq!((result.width, result.height), (96, 64));
                is_upright(&result);
                carries_nothing(&photo.jpeg);
                carries_nothing(&photo.thumbnail);
                let when = photo.taken.unwrap();
                assert_eq!(when.local.to_string(), "2026-03-11 09:12:05");
                assert_eq!(when.offset.unwrap().local_minus_utc(), 3600);
            }
        }
    }
}

#[test]
fn the_test_pictures_differ_by_orientation() {
    let wanted = Picture::quarters(96, 64);
    let all: std::collections::HashSet<Vec<u8>> = (1..=8).map(|o| wanted.stored(o).rgb).collect();
    assert_eq!(all.len(), 8);
}

#[test]
fn a_large_picture_is_reduced_to_its_longest_side_and_a_small_one_stays() {
    let photo = taken(&Picture::quarters(5200, 1300).jpeg(None));
    assert_eq!((photo.width, photo.height), (2560, 640));
    is_upright(&seen(&photo.jpeg));
    let thumb = seen(&photo.thumbnail);
    assert_eq!((thumb.width, thumb.height), (320, 80));
    is_upright(&thumb);
    let turned = taken(
        &Picture::quarters(1300, 2600)
            .stored(6)
            .jpeg(Some(&tags(6, None, false))),
    );
    assert_eq!(
        (turned.width, turned.height, turned.taken),
        (1280, 2560, None)
    );
    is_upright(&seen(&turned.jpeg));
    let small = taken(&Picture::quarters(40, 30).png(None));
    assert_eq!((small.width, small.height), (40, 30));
    let dot = taken(&Picture::quarters(1, 1).png(None));
    assert_eq!((dot.width, dot.height), (1, 1));
}

#[test]
fn a_time_without_an_offset_is_kept_as_the_camera_s_own() {
    let exif = tags(1, Some(("2026:03:11 09:12:05", None)), false);
    let when = taken(&Picture::quarters(16, 16).jpeg(Some(&exif)))
        .taken
        .unwrap();
    assert_eq!(when.offset, None);
}

#[test]
fn the_same_file_gives_the_same_bytes_and_the_hashes_are_of_what_they_say() {
    let source = Picture::quarters(300, 200).jpeg(Some(&tags(3, TIME, false)));
    let (one, two) = (taken(&source), taken(&source));
    assert_eq!(one, two);
    assert_eq!(one.source_sha256, sha256(&source));
    assert_eq!(one.stored_sha256, sha256(&one.jpeg));
    // FIPS 180-4, of the three bytes "abc", as in its published examples.
    assert_eq!(
        sha256(b"abc"),
        "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
    );
}

#[test]
fn what_is_seen_through_in_a_picture_lies_on_white() {
    let mut bytes = Vec::new();
    let mut encoder = png::Encoder::new(&mut bytes, 16, 16);
    encoder.set_color(png::ColorType::Rgba);
    let mut writer = encoder.write_header().unwrap();
    let half: Vec<u8> = (0..256)
        .flat_map(|i| [0, 0, 0, if i % 16 < 8 { 0 } else { 255 }])
        .collect();
    writer.write_image_data(&half).unwrap();
    drop(writer);
    let result = seen(&taken(&bytes).jpeg);
    assert!(near(result.at(2, 8), [255; 3]) && near(result.at(14, 8), [0; 3]));
}

#[test]
fn grey_pictures_and_those_of_sixteen_bits_are_taken() {
    for depth in [png::BitDepth::Eight, png::BitDepth::Sixteen] {
        let mut bytes = Vec::new();
        let mut encoder = png::Encoder::new(&mut bytes, 8, 8);
        encoder.set_color(png::ColorType::Grayscale);
        encoder.set_depth(depth);
        let mut writer = encoder.write_header().unwrap();
        let n = if depth == png::BitDepth::Eight {
            64
        } else {
            128
        };
        writer.write_image_data(&vec![0x80; n]).unwrap();
        drop(writer);
        assert!(near(seen(&taken(&bytes).jpeg).at(4, 4), [0x80; 3]));
    }
}

#[test]
fn a_thumbnail_can_be_rebuilt_from_what_is_stored() {
    let photo = taken(&Picture::quarters(2600, 1300).jpeg(None));
    let cancel = AtomicBool::new(false);
    let mut none = |_| {};
    let rebuilt = thumbnail(
        &photo.jpeg,
        &Limits::default(),
        &mut Watch::new(&cancel, &mut none),
    )
    .unwrap();
    let rebuilt = seen(&rebuilt);
    assert_eq!((rebuilt.width, rebuilt.height), (320, 160));
    is_upright(&rebuilt);
}

#[test]
fn progress_only_grows_and_stopping_stops_wherever_it_is() {
    // Enough bytes that the decoder passes by the watch on the way.
    let noisy = Picture::of(900, 700, |x, y| {
        let n = (x * 7919 + y * 104_729) ^ (x * y);
        [n as u8, (n >> 3) as u8, (n >> 7) as u8]
    });
    for source in [noisy.jpeg(None), noisy.png(None), noisy.webp(None)] {
        let cancel = AtomicBool::new(false);
        let mut told = Vec::new();
        prepare(
            &source,
            &Limits::default(),
            &mut Watch::new(&cancel, &mut |p| told.push(p)),
        )
        .unwrap();
        assert!(
            told.is_sorted() && told.first() == Some(&0.0) && told.last() == Some(&1.0),
            "{told:?}"
        );
        assert!(told.len() > 5, "{told:?}");
        for stop_after in 0..told.len() - 1 {
            let n = Cell::new(0);
            let mut progress = |_| {
                if n.get() == stop_after {
                    cancel.store(true, Ordering::Relaxed);
                }
                n.set(n.get() + 1);
            };
            cancel.store(false, Ordering::Relaxed);
            let outcome = prepare(
                &source,
                &Limits::default(),
                &mut Watch::new(&cancel, &mut progress),
            );
            assert_eq!(
                outcome,
                Err(PhotoError::Cancelled),
                "stopped after {stop_after}"
            );
        }
    }
}
