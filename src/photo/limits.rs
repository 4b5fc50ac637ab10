//! Limits: what a picture may cost, known from its header before anything is decoded.

/// What is taken, and what becomes of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Limits {
    /// Longest side of what is stored, pixels, 1 or more. A smaller picture keeps its size.
    pub longest_px: u16,
    /// Longest side of a thumbnail, pixels, 1 or more.
    pub thumb_px: u16,
    /// Quality of the stored JPEG, 1 to 100.
    pub quality: u8,
    /// Largest file, bytes.
    pub file_bytes: u64,
    /// Most pixels; the sharpest phones reach 200 million.
    pub pixels: u64,
    /// Most memory that decoding may take beside the file itself, bytes, as reckoned from the header.
    pub memory_bytes: u64,
    /// Most passes over the picture that one JPEG may ask for; cameras and programs ask for a dozen.
    pub scans: usize,
}

impl Default for Limits {
    fn default() -> Self {
        Self {
            longest_px: 2560,
            thumb_px: 320,
            quality: 85,
            file_bytes: 100_000_000,
            pixels: 210_000_000,
            memory_bytes: 360_000_000,
            scans: 64,
        }
    }
}

/// The size in which a picture is kept: at most `longest` a side, in the same proportions, never larger than it is.
#[must_use]
pub fn fitted(width: u32, height: u32, longest: u16) -> (u32, u32) {
    let longest = u32::from(longest.max(1));
    let side = width.max(height);
    if side <= longest {
        return (width.max(1), height.max(1));
    }
    let shrink = |px: u32| {
        let scaled = (u64::from(px) * u64::from(longest) + u64::from(side) / 2) / u64::from(side);
        u32::try_from(scaled).unwrap_or(longest).max(1)
    };
    (shrink(width), shrink(height))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_picture_is_shrunk_in_its_proportions_and_never_made_larger() {
        assert_eq!(fitted(4000, 3000, 2560), (2560, 1920));
        assert_eq!(fitted(3000, 4000, 2560), (1920, 2560));
        assert_eq!(fitted(640, 480, 2560), (640, 480));
        assert_eq!(fitted(60_000, 1, 2560), (2560, 1));
        assert_eq!(fitted(2561, 2561, 2560), (2560, 2560));
    }
}
