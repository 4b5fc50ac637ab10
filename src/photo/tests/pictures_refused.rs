//! What is refused, each with a sentence of its own.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod pictures;

use evenwall_photo::error::PhotoError;
use evenwall_photo::limits::Limits;
use pictures::{Picture, take, taken};

fn refused(bytes: &[u8]) -> PhotoError {
    take(bytes, &Limits::default()).unwrap_err()
}

fn heic(brand: &[u8; 4]) -> Vec<u8> {
    [
        &24_u32.to_be_bytes()[..],
        b"ftyp",
        brand,
        &[0; 4],
        brand,
        b"mif1",
        &[7; 300],
    ]
    .concat()
}

/// A PNG's header that promises so many pixels, and no more.
fn png_bomb(width: u32, height: u32) -> Vec<u8> {
    let mut bytes = Picture::quarters(8, 8).png(None);
    bytes[16..20].copy_from_slice(&width.to_be_bytes());
    bytes[20..24].copy_from_slice(&height.to_be_bytes());
    bytes
}

/// A JPEG whose frame promises so many pixels.
fn jpeg_bomb(width: u16, height: u16, frame: u8) -> Vec<u8> {
    let mut bytes = Picture::quarters(64, 64).jpeg(None);
    let at = bytes.windows(2).position(|w| w == [0xff, 0xc0]).unwrap();
    bytes[at + 1] = frame;
    bytes[at + 5..at + 7].copy_from_slice(&height.to_be_bytes());
    bytes[at + 7..at + 9].copy_from_slice(&width.to_be_bytes());
    bytes
}

#[test]
fn each_file_that_is_no_photo_gets_its_sentence() {
    let gif = b"GIF89a\x01\0\x01\0".to_vec();
    let film = [&20_u32.to_be_bytes()[..], b"ftypisom", &[0; 200]].concat();
    let avif = heic(b"avif");
    for (bytes, says) in [
        (Vec::new(), "empty"),
        (
            b"just some words in a file called IMG_1.jpg".to_vec(),
            "no picture",
        ),
        (vec![0; 5000], "no picture"),
        (heic(b"heic"), "set the camera to JPEG"),
        (heic(b"mif1"), "HEIC"),
        (avif, "an AVIF"),
        (gif, "a GIF"),
        (film, "a film"),
        (b"II*\0\x08\0\0\0".to_vec(), "raw file"),
        (vec![0xff, 0xd8], "end of the file is missing"),
        (b"\x89PNG".to_vec(), "end of the file is missing"),
    ] {
        let sentence = refused(&bytes).to_string();
        assert!(sentence.contains(says), "{sentence}");
    }
}

#[test]
fn a_file_is_taken_by_its_content_and_never_by_its_name() {
    // Names never reach this crate: a PNG that is called .jpg is a PNG.
    assert_eq!(taken(&Picture::quarters(20, 10).png(None)).width, 20);
    assert_eq!(taken(&Picture::quarters(20, 10).webp(None)).width, 20);
}

#[test]
fn a_file_cut_short_anywhere_is_refused() {
    let picture = Picture::quarters(64, 48);
    for whole in [picture.jpeg(None), picture.png(None), picture.webp(None)] {
        taken(&whole);
        for cut in 0..whole.len() {
            let error = take(&whole[..cut], &Limits::default());
            // The last four bytes of a PNG are the check of a chunk that holds nothing.
            let only_the_end = whole.starts_with(b"\x89PNG") && cut + 4 >= whole.len();
            assert!(
                error.is_err() || only_the_end,
                "cut at {cut} of {}",
                whole.len()
            );
        }
        let half = refused(&whole[..whole.len() / 2]);
        assert_eq!(half, PhotoError::Truncated, "{half}");
    }
}

#[test]
fn bombs_are_known_by_their_header() {
    for bomb in [
        png_bomb(60_000, 60_000),
        png_bomb(u32::MAX, u32::MAX),
        png_bomb(1_000_000, 200),
        jpeg_bomb(65_500, 65_500, 0xc0),
        jpeg_bomb(20_000, 10_000, 0xc2),
    ] {
        let error = refused(&bomb);
        assert!(matches!(error, PhotoError::TooManyPixels { .. }), "{error}");
    }
    assert_eq!(
        refused(&png_bomb(60_000, 60_000)).to_string(),
        "the picture is 60000 by 60000 pixels, more than this program opens (90 million): save it smaller and take that one"
    );
    for nothing in [
        png_bomb(0, 10),
        jpeg_bomb(0, 10, 0xc0),
        jpeg_bomb(10, 0, 0xc0),
    ] {
        assert!(matches!(refused(&nothing), PhotoError::Broken { .. }));
    }
}

#[test]
fn a_jpeg_of_endless_passes_is_refused() {
    let whole = Picture::quarters(16, 16).jpeg(None);
    let scan = whole.windows(2).position(|w| w == [0xff, 0xda]).unwrap();
    let mut many = whole[..scan].to_vec();
    for _ in 0..3000 {
        many.extend_from_slice(&whole[scan..whole.len() - 2]);
    }
    many.extend([0xff, 0xd9]);
    assert_eq!(
        refused(&many),
        PhotoError::TooManyScans {
            found: 3000,
            allowed: 64
        }
    );
}

#[test]
fn a_file_larger_than_allowed_is_refused_unread() {
    let limits = Limits {
        file_bytes: 500,
        ..Limits::default()
    };
    let bytes = Picture::quarters(200, 200).jpeg(None);
    let error = take(&bytes, &limits).unwrap_err();
    assert_eq!(
        error,
        PhotoError::FileTooLarge {
            found: bytes.len() as u64,
            allowed: 500
        }
    );
    assert!(error.to_string().contains("1 MB"), "{error}");
}

#[test]
fn damage_in_the_middle_is_said() {
    let mut bytes = Picture::quarters(64, 48).png(None);
    let at = bytes.windows(4).position(|w| w == b"IDAT").unwrap() + 8;
    bytes[at] ^= 0xff;
    assert!(matches!(refused(&bytes), PhotoError::Broken { .. }));
}
