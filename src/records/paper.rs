//! Paper: the two sizes that printers hold.

/// A sheet of paper, upright.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Paper {
    /// ISO A4.
    A4,
    /// US Letter.
    Letter,
}

impl Paper {
    /// Width and height, mm. ISO 216; ANSI/ASME Y14.1: 8.5 by 11 in.
    #[must_use]
    pub const fn size_mm(self) -> (f64, f64) {
        match self {
            Self::A4 => (210.0, 297.0),
            Self::Letter => (215.9, 279.4),
        }
    }

    /// Its name in a style sheet.
    #[must_use]
    pub const fn css(self) -> &'static str {
        match self {
            Self::A4 => "A4",
            Self::Letter => "letter",
        }
    }
}
