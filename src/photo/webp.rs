//! WebP: header, tags and pixels; of a moving one the first picture.

use std::io::Cursor;

use image_webp::{DecodingError, WebPDecoder};

use crate::error::PhotoError;
use crate::exif;
use crate::heads::Head;
use crate::pixels::{Channels, Pixels};
use crate::watch::Watch;

fn faulty(error: DecodingError) -> PhotoError {
    match error {
        DecodingError::IoError(e) if e.kind() == std::io::ErrorKind::UnexpectedEof => {
            PhotoError::Truncated
        }
        other => PhotoError::broken(other),
    }
}

/// A file that is shorter than its own header says has not arrived.
fn whole(bytes: &[u8]) -> bool {
    let len = bytes
        .get(4..8)
        .and_then(|b| b.try_into().ok())
        .map(u32::from_le_bytes);
    len.is_some_and(|len| bytes.len() as u64 >= u64::from(len) + 8)
}

/// What its header says.
pub(crate) fn head(bytes: &[u8]) -> Result<Head, PhotoError> {
    if !whole(bytes) {
        return Err(PhotoError::Truncated);
    }
    let mut decoder = WebPDecoder::new(Cursor::new(bytes)).map_err(faulty)?;
    // Tags of more than a few kilobytes hold a picture of their own.
    decoder.set_memory_limit(8_000_000);
    let (width, height) = decoder.dimensions();
    let tags = decoder.exif_metadata().ok().flatten();
    Ok(Head {
        width,
        height,
        // Four bytes a pixel for the picture, as many for what it is made from.
        memory: u64::from(width) * u64::from(height) * 8,
        tags: tags.map(|t| exif::read(&t)).unwrap_or_default(),
    })
}

/// Decodes it.
pub(crate) fn decode(
    bytes: &[u8],
    memory: u64,
    watch: &mut Watch<'_>,
) -> Result<Pixels, PhotoError> {
    let mut decoder = WebPDecoder::new(Cursor::new(bytes)).map_err(faulty)?;
    let memory = usize::try_from(memory).unwrap_or(usize::MAX);
    decoder.set_memory_limit(memory);
    let size = decoder.output_buffer_size().filter(|size| *size <= memory);
    let size = size.ok_or_else(|| PhotoError::broken("its size cannot be"))?;
    watch.at(0.05)?;
    let mut pixels = vec![0; size];
    decoder.read_image(&mut pixels).map_err(faulty)?;
    watch.at(0.7)?;
    let (width, height) = decoder.dimensions();
    let channels = if decoder.has_alpha() {
        Channels::Rgba
    } else {
        Channels::Rgb
    };
    Ok(Pixels {
        width,
        height,
        channels,
        bytes: pixels,
    })
}
