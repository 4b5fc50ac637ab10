//! PNG: header and pixels.
//!
//! Chunks as in the PNG specification, third edition (W3C), sections 5 and 11.

use std::io::Cursor;

use png::{BitDepth, ColorType, Decoder, DecodingError, Transformations};

use crate::error::PhotoError;
use crate::exif;
use crate::heads::{Head, be32};
use crate::limits::Limits;
use crate::pixels::{Channels, Pixels};
use crate::watch::Watch;

/// What its header says.
pub(crate) fn head(bytes: &[u8], limits: &Limits) -> Result<Head, PhotoError> {
    let (Some(width), Some(height)) = (be32(bytes, 16), be32(bytes, 20)) else {
        return Err(PhotoError::Truncated);
    };
    if bytes.get(12..16) != Some(b"IHDR") {
        return Err(PhotoError::broken("it has no header"));
    }
    let (tags, ends) = chunks(bytes);
    let pixels = u64::from(width) * u64::from(height);
    let head = Head {
        width,
        height,
        // As many as four bytes a pixel, and as many again for sixteen bits.
        memory: pixels.saturating_mul(if bytes.get(24) == Some(&16) { 8 } else { 4 }),
        tags: tags.map(exif::read).unwrap_or_default(),
    };
    // A file that promises far too much is told so, also where it holds no more than its header.
    if ends || head.allowed(limits).is_err() {
        Ok(head)
    } else {
        Err(PhotoError::Truncated)
    }
}

/// The bytes of the eXIf chunk, and whether the file comes to its end.
fn chunks(bytes: &[u8]) -> (Option<&[u8]>, bool) {
    let mut tags = None;
    let mut at = 8;
    // Each chunk is at least twelve bytes long, so this ends.
    while let (Some(len), Some(name)) = (be32(bytes, at), bytes.get(at + 4..at + 8)) {
        let data = at + 8;
        let end = data.saturating_add(usize::try_from(len).unwrap_or(usize::MAX));
        match name {
            b"IEND" => return (tags, true),
            b"eXIf" if tags.is_none() => tags = bytes.get(data..end),
            _ => {}
        }
        at = end.saturating_add(4).min(bytes.len());
    }
    (tags, false)
}

/// Decodes it.
pub(crate) fn decode(
    bytes: &[u8],
    memory: u64,
    watch: &mut Watch<'_>,
) -> Result<Pixels, PhotoError> {
    let faulty = |error: DecodingError| match error {
        DecodingError::IoError(e) if e.kind() == std::io::ErrorKind::UnexpectedEof => {
            PhotoError::Truncated
        }
        other => PhotoError::broken(other),
    };
    let memory = usize::try_from(memory).unwrap_or(usize::MAX);
    let limits = png::Limits { bytes: memory };
    let mut decoder = Decoder::new_with_limits(Cursor::new(bytes), limits);
    decoder.set_transformations(Transformations::EXPAND | Transformations::STRIP_16);
    let mut reader = decoder.read_info().map_err(faulty)?;
    let size = reader.output_buffer_size().filter(|size| *size <= memory);
    let size = size.ok_or_else(|| PhotoError::broken("its size cannot be"))?;
    watch.at(0.05)?;
    let mut pixels = vec![0; size];
    let info = reader.info();
    let (width, height, in_passes) = (info.width, info.height, info.interlaced);
    let (colour, depth) = reader.output_color_type();
    if depth != BitDepth::Eight {
        return Err(PhotoError::broken("its depth cannot be"));
    }
    if in_passes {
        reader.next_frame(&mut pixels).map_err(faulty)?;
    } else {
        let row = size / height.max(1) as usize;
        for (n, into) in pixels.chunks_exact_mut(row.max(1)).enumerate() {
            reader.read_row(into).map_err(faulty)?;
            if n % 64 == 0 {
                #[allow(clippy::cast_precision_loss)] // a share of a bar needs no better
                watch.at(0.05 + 0.65 * n as f32 / height.max(1) as f32)?;
            }
        }
    }
    let channels = match colour {
        ColorType::Grayscale => Channels::Grey,
        ColorType::GrayscaleAlpha => Channels::GreyAlpha,
        ColorType::Rgb => Channels::Rgb,
        ColorType::Rgba => Channels::Rgba,
        ColorType::Indexed => return Err(PhotoError::broken("its palette is missing")),
    };
    Ok(Pixels {
        width,
        height,
        channels,
        bytes: pixels,
    })
}
