//! Heads: what the header of each kind says before anything is decoded: size, cost, tags.

use crate::error::PhotoError;
use crate::exif::Tags;
use crate::limits::Limits;

/// What a header says.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Head {
    /// Width as stored, pixels.
    pub width: u32,
    /// Height as stored, pixels.
    pub height: u32,
    /// Memory that decoding takes beside the file, bytes, reckoned high.
    pub memory: u64,
    /// How it is turned, and when it was taken.
    pub tags: Tags,
}

impl Head {
    /// Refuses what would cost too much.
    pub fn allowed(&self, limits: &Limits) -> Result<(), PhotoError> {
        if self.width == 0 || self.height == 0 {
            return Err(PhotoError::broken("it has no pixels"));
        }
        let pixels = u64::from(self.width) * u64::from(self.height);
        if pixels > limits.pixels || self.memory > limits.memory_bytes {
            // So many of its pixels would just have fitted.
            let each = (self.memory / pixels).max(1);
            return Err(PhotoError::TooManyPixels {
                width: self.width,
                height: self.height,
                allowed: limits.pixels.min(limits.memory_bytes / each),
            });
        }
        Ok(())
    }
}

/// A big-endian number of the bytes at a place.
pub(crate) fn be16(bytes: &[u8], at: usize) -> Option<u16> {
    Some(u16::from_be_bytes(
        bytes.get(at..at.checked_add(2)?)?.try_into().ok()?,
    ))
}

/// A big-endian number of the bytes at a place.
pub(crate) fn be32(bytes: &[u8], at: usize) -> Option<u32> {
    Some(u32::from_be_bytes(
        bytes.get(at..at.checked_add(4)?)?.try_into().ok()?,
    ))
}
