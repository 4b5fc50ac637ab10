//! Kind: what a file is, told by its first bytes and never by its name.

use crate::error::PhotoError;

/// The kinds that are taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// JPEG.
    Jpeg,
    /// PNG.
    Png,
    /// WebP.
    Webp,
}

/// Names of the high-efficiency format in its first box (ISO 14496-12 `ftyp`, ISO 23008-12 brands).
const HEIC: [&[u8]; 10] = [
    b"heic", b"heix", b"heim", b"heis", b"hevc", b"hevx", b"hevm", b"mif1", b"msf1", b"heif",
];

/// What the file is.
///
/// # Errors
/// [`PhotoError`] with a sentence for what cannot be taken.
pub fn of(bytes: &[u8]) -> Result<Kind, PhotoError> {
    let starts = |with: &[u8]| bytes.starts_with(with);
    if bytes.is_empty() {
        return Err(PhotoError::Empty);
    }
    if starts(&[0xff, 0xd8, 0xff]) {
        return Ok(Kind::Jpeg);
    }
    if starts(b"\x89PNG\r\n\x1a\n") {
        return Ok(Kind::Png);
    }
    if starts(b"RIFF") && bytes.get(8..12) == Some(b"WEBP") {
        return Ok(Kind::Webp);
    }
    if bytes.get(4..8) == Some(b"ftyp") {
        let brands = bytes.get(8..bytes.len().min(64)).unwrap_or_default();
        let has = |list: &[&[u8]]| brands.chunks(4).any(|b| list.contains(&b));
        return Err(if has(&[b"avif", b"avis"]) {
            PhotoError::OtherKind { found: "an AVIF" }
        } else if has(&HEIC) {
            PhotoError::Heic
        } else {
            PhotoError::OtherKind { found: "a film" }
        });
    }
    let others: [(&[u8], &str); 8] = [
        (b"GIF8", "a GIF"),
        (b"BM", "a BMP"),
        (b"II*\0", "a TIFF or a camera's raw file"),
        (b"MM\0*", "a TIFF or a camera's raw file"),
        (b"\xff\x0a", "a JPEG XL"),
        (b"\0\0\0\x0cJXL ", "a JPEG XL"),
        (b"%PDF", "a PDF"),
        (b"\x1aE\xdf\xa3", "a film"),
    ];
    match others.iter().find(|(magic, _)| starts(magic)) {
        Some((_, found)) => Err(PhotoError::OtherKind { found }),
        // The start of a JPEG or PNG that never came further.
        None if b"\xff\xd8\xff".starts_with(bytes) || b"\x89PNG\r\n\x1a\n".starts_with(bytes) => {
            Err(PhotoError::Truncated)
        }
        None => Err(PhotoError::NotAPicture),
    }
}
