//! JPEG: its markers read without decoding, then decoded with as much shrinking as its transform allows.
//!
//! Markers as in ITU-T T.81, annex B.

use jpeg_decoder::{Decoder, Error, PixelFormat};

use crate::error::PhotoError;
use crate::exif::{self, Tags};
use crate::heads::{Head, be16};
use crate::limits::{Limits, fitted};
use crate::pixels::{Channels, Pixels};
use crate::watch::{Watch, Watched};

/// What the markers say.
struct Markers {
    width: u32,
    height: u32,
    components: u32,
    /// Most samples of a component to a pixel in each direction, and the sum over components, for what is kept of a
    /// picture that comes in several passes.
    samples: (u32, u32),
    in_passes: bool,
    scans: usize,
    ends: bool,
    tags: Option<Tags>,
}

/// The markers that begin a picture: all of 0xC0 to 0xCF but tables and arithmetic conditioning.
const fn begins_frame(marker: u8) -> bool {
    matches!(marker, 0xc0..=0xcf) && !matches!(marker, 0xc4 | 0xc8 | 0xcc)
}

fn markers(bytes: &[u8]) -> Result<Markers, PhotoError> {
    let mut found = Markers {
        width: 0,
        height: 0,
        components: 0,
        samples: (1, 1),
        in_passes: false,
        scans: 0,
        ends: false,
        tags: None,
    };
    let mut at = 2;
    while at < bytes.len() {
        // The next marker, past entropy-coded data, stuffed bytes, restarts and fill bytes.
        let Some(ff) = bytes[at..].iter().position(|b| *b == 0xff) else {
            break;
        };
        at += ff + 1;
        let Some(&marker) = bytes.get(at) else { break };
        match marker {
            0xff => continue,
            0x00 | 0x01 | 0xd0..=0xd8 => {
                at += 1;
                continue;
            }
            0xd9 => {
                found.ends = true;
                break;
            }
            _ => {}
        }
        let Some(len) = be16(bytes, at + 1).map(usize::from) else {
            break;
        };
        let segment = bytes.get(at + 3..at + 1 + len.max(2)).unwrap_or_default();
        if begins_frame(marker) && found.width == 0 {
            read_frame(&mut found, marker, segment)?;
        }
        match marker {
            0xda => found.scans += 1,
            0xe1 if found.tags.is_none() && segment.starts_with(b"Exif\0\0") => {
                found.tags = Some(exif::read(segment));
            }
            _ => {}
        }
        at += 1 + len.max(2);
    }
    Ok(found)
}

fn read_frame(found: &mut Markers, marker: u8, segment: &[u8]) -> Result<(), PhotoError> {
    if !matches!(marker, 0xc0..=0xc2) {
        return Err(PhotoError::broken("a kind of JPEG that no camera makes"));
    }
    let (Some(height), Some(width), Some(n)) = (be16(segment, 1), be16(segment, 3), segment.get(5))
    else {
        return Err(PhotoError::Truncated);
    };
    found.width = u32::from(width);
    found.height = u32::from(height);
    found.components = u32::from(*n);
    found.in_passes = marker == 0xc2;
    let factors = segment
        .get(6..)
        .unwrap_or_default()
        .chunks_exact(3)
        .take(usize::from(*n));
    let factors: Vec<(u32, u32)> = factors
        .map(|c| (u32::from(c[1] >> 4), u32::from(c[1] & 15)))
        .collect();
    let most = factors.iter().map(|(h, v)| h * v).max().unwrap_or(1).max(1);
    found.samples = (factors.iter().map(|(h, v)| h * v).sum::<u32>().max(1), most);
    Ok(())
}

/// How much smaller than stored it is decoded: 1, 2, 4 or 8, as long as it stays at least `longest` along its longer
/// side, or whole.
fn shrink(width: u32, height: u32, longest: u16) -> u32 {
    let (side, longest) = (width.max(height), u32::from(longest));
    [8, 4, 2]
        .into_iter()
        .find(|by| side / by >= longest)
        .unwrap_or(1)
}

/// What its markers say.
pub(crate) fn head(bytes: &[u8], limits: &Limits) -> Result<Head, PhotoError> {
    let m = markers(bytes)?;
    if m.scans > limits.scans {
        return Err(PhotoError::TooManyScans {
            found: m.scans,
            allowed: limits.scans,
        });
    }
    if m.scans == 0 || !m.ends {
        return Err(PhotoError::Truncated);
    }
    let pixels = u64::from(m.width) * u64::from(m.height);
    // Scans by component are kept as coefficients too, like those in passes.
    let kept_whole = m.in_passes || m.scans > 1;
    let coefficients = if kept_whole {
        pixels * 2 * u64::from(m.samples.0) / u64::from(m.samples.1)
    } else {
        0
    };
    let by = u64::from(shrink(m.width, m.height, limits.longest_px)).pow(2);
    // The planes of the components and the picture made of them.
    let pictures = pixels / by * 2 * u64::from(m.components.max(1));
    Ok(Head {
        width: m.width,
        height: m.height,
        memory: coefficients + pictures,
        tags: m.tags.unwrap_or_default(),
    })
}

/// Decodes it, shrunk while decoding to no less than `longest` along its longer side.
pub(crate) fn decode<'a>(
    bytes: &'a [u8],
    head: &Head,
    longest: u16,
    memory: u64,
    watch: &mut Watch<'a>,
) -> Result<Pixels, PhotoError> {
    let outcome = decode_watched(bytes, head, longest, memory, watch);
    watch.go_on()?;
    outcome.map_err(|error| match error {
        Error::Io(e) if e.kind() == std::io::ErrorKind::UnexpectedEof => PhotoError::Truncated,
        other => PhotoError::broken(other),
    })
}

fn decode_watched<'a>(
    bytes: &'a [u8],
    head: &Head,
    longest: u16,
    memory: u64,
    watch: &mut Watch<'a>,
) -> Result<Pixels, Error> {
    let mut decoder = Decoder::new(Watched::new(bytes, watch, 0.0, 0.7));
    decoder.set_max_decoding_buffer_size(usize::try_from(memory).unwrap_or(usize::MAX));
    let (w, h) = fitted(head.width, head.height, longest);
    let px = |n: u32| u16::try_from(n).unwrap_or(u16::MAX);
    decoder.scale(px(w), px(h))?;
    let pixels = decoder.decode()?;
    let info = decoder
        .info()
        .ok_or_else(|| Error::Format("no frame".to_owned()))?;
    let (channels, pixels) = match info.pixel_format {
        PixelFormat::L8 => (Channels::Grey, pixels),
        PixelFormat::RGB24 => (Channels::Rgb, pixels),
        // Two bytes a pixel in the machine's order; the high one is the picture.
        PixelFormat::L16 => (
            Channels::Grey,
            pixels
                .chunks_exact(2)
                .map(|b| (u16::from_ne_bytes([b[0], b[1]]) >> 8) as u8)
                .collect(),
        ),
        PixelFormat::CMYK32 => (Channels::Rgb, without_black(&pixels)),
    };
    Ok(Pixels {
        width: u32::from(info.width),
        height: u32::from(info.height),
        channels,
        bytes: pixels,
    })
}

/// Four inks to three lights, without any profile: a picture that went through a printer's program.
fn without_black(inks: &[u8]) -> Vec<u8> {
    let light = |ink: u8, black: u8| {
        ((255 - u16::from(ink)) * (255 - u16::from(black)) / 255).min(255) as u8
    };
    inks.chunks_exact(4)
        .flat_map(|c| [light(c[0], c[3]), light(c[1], c[3]), light(c[2], c[3])])
        .collect()
}
