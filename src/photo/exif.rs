//! Exif: the two things that are read of a picture's tags, how it is turned and when it was taken. All else is let go.
//!
//! Total: any bytes give an answer. Tags and their numbers: Exif 2.32 (CIPA DC-008), TIFF 6.0 section 2.

use crate::taken::Taken;

/// How a picture is stored against how it is to be seen; the tag's numbers 1 to 8.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Turn {
    /// 1: as stored.
    #[default]
    Upright,
    /// 2: mirrored left to right.
    Mirrored,
    /// 3: upside down.
    Half,
    /// 4: mirrored top to bottom.
    Flipped,
    /// 5: mirrored along the falling diagonal.
    Transposed,
    /// 6: to be turned a quarter clockwise.
    Clockwise,
    /// 7: mirrored along the rising diagonal.
    Transversed,
    /// 8: to be turned a quarter anticlockwise.
    Anticlockwise,
}

impl Turn {
    /// All, in the order of the tag's numbers.
    pub const ALL: [Self; 8] = [
        Self::Upright,
        Self::Mirrored,
        Self::Half,
        Self::Flipped,
        Self::Transposed,
        Self::Clockwise,
        Self::Transversed,
        Self::Anticlockwise,
    ];

    /// Of the tag's number; any other than 1 to 8 means upright.
    #[must_use]
    pub fn from_tag(number: u32) -> Self {
        let place = usize::try_from(number).ok().and_then(|n| n.checked_sub(1));
        place
            .and_then(|p| Self::ALL.get(p))
            .copied()
            .unwrap_or_default()
    }

    /// True where width and height change places.
    #[must_use]
    pub const fn swaps_sides(self) -> bool {
        matches!(
            self,
            Self::Transposed | Self::Clockwise | Self::Transversed | Self::Anticlockwise
        )
    }
}

/// What is read of the tags.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Tags {
    /// How it is turned.
    pub turn: Turn,
    /// When it was taken.
    pub taken: Option<Taken>,
}

const ORIENTATION: u16 = 0x0112;
const DATE_TIME: u16 = 0x0132;
const EXIF_IFD: u16 = 0x8769;
const DATE_TIME_ORIGINAL: u16 = 0x9003;
const DATE_TIME_DIGITIZED: u16 = 0x9004;
const OFFSET_TIME: u16 = 0x9010;
const OFFSET_TIME_ORIGINAL: u16 = 0x9011;
const OFFSET_TIME_DIGITIZED: u16 = 0x9012;

/// Most entries of a directory that are looked at.
const MOST_ENTRIES: u16 = 512;

struct Tiff<'a> {
    bytes: &'a [u8],
    little: bool,
}

impl<'a> Tiff<'a> {
    fn short(&self, at: usize) -> Option<u16> {
        let b: [u8; 2] = self.bytes.get(at..at.checked_add(2)?)?.try_into().ok()?;
        Some(if self.little {
            u16::from_le_bytes(b)
        } else {
            u16::from_be_bytes(b)
        })
    }

    fn long(&self, at: usize) -> Option<u32> {
        let b: [u8; 4] = self.bytes.get(at..at.checked_add(4)?)?.try_into().ok()?;
        Some(if self.little {
            u32::from_le_bytes(b)
        } else {
            u32::from_be_bytes(b)
        })
    }

    fn offset(&self, at: usize) -> Option<usize> {
        usize::try_from(self.long(at)?).ok()
    }

    /// The places of a directory's entries, twelve bytes each.
    fn entries(&self, directory: usize) -> impl Iterator<Item = usize> {
        let count = self.short(directory).unwrap_or(0).min(MOST_ENTRIES);
        (0..usize::from(count)).filter_map(move |i| directory.checked_add(2 + 12 * i))
    }

    fn entry(&self, directory: usize, tag: u16) -> Option<usize> {
        self.entries(directory)
            .find(|at| self.short(*at) == Some(tag))
    }

    /// A number of one value: a short or a long.
    fn number(&self, directory: usize, tag: u16) -> Option<u32> {
        let at = self.entry(directory, tag)?;
        match self.short(at.checked_add(2)?)? {
            3 => self.short(at.checked_add(8)?).map(u32::from),
            4 => self.long(at.checked_add(8)?),
            _ => None,
        }
    }

    /// A text of up to 64 bytes, up to its first NUL.
    fn text(&self, directory: usize, tag: u16) -> Option<&'a str> {
        let at = self.entry(directory, tag)?;
        let len = self.offset(at.checked_add(4)?)?;
        if self.short(at.checked_add(2)?)? != 2 || len > 64 {
            return None;
        }
        let value = at.checked_add(8)?;
        let start = if len <= 4 { value } else { self.offset(value)? };
        let text = self.bytes.get(start..start.checked_add(len)?)?;
        let text = text.split(|b| *b == 0).next()?;
        std::str::from_utf8(text).ok()
    }
}

/// Reads the tags of a block that begins at its TIFF header; what cannot be read is as if it were not there.
#[must_use]
pub fn read(bytes: &[u8]) -> Tags {
    tags(bytes).unwrap_or_default()
}

fn tags(bytes: &[u8]) -> Option<Tags> {
    // Some writers keep the marker's name in front of the header.
    let bytes = bytes.strip_prefix(b"Exif\0\0").unwrap_or(bytes);
    let little = match bytes.get(..2)? {
        b"II" => true,
        b"MM" => false,
        _ => return None,
    };
    let tiff = Tiff { bytes, little };
    if tiff.short(2)? != 42 {
        return None;
    }
    let first = tiff.offset(4)?;
    let turn = Turn::from_tag(tiff.number(first, ORIENTATION).unwrap_or(1));
    let inner = tiff
        .number(first, EXIF_IFD)
        .and_then(|at| usize::try_from(at).ok());
    let timed = |directory: usize, time: u16, offset: u16| {
        let offset = inner.and_then(|d| tiff.text(d, offset));
        Taken::from_tags(tiff.text(directory, time)?, offset)
    };
    let taken = inner
        .and_then(|d| {
            timed(d, DATE_TIME_ORIGINAL, OFFSET_TIME_ORIGINAL)
                .or_else(|| timed(d, DATE_TIME_DIGITIZED, OFFSET_TIME_DIGITIZED))
        })
        .or_else(|| timed(first, DATE_TIME, OFFSET_TIME));
    Some(Tags { turn, taken })
}
