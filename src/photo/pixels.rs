//! Pixels: a decoded picture, made smaller, laid on white and turned upright, in that order: the least work each.

use fast_image_resize::images::{Image, ImageRef};
use fast_image_resize::{PixelType, Resizer};

use crate::error::PhotoError;
use crate::exif::Turn;

/// What a pixel holds, a byte each.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Channels {
    Grey,
    GreyAlpha,
    Rgb,
    Rgba,
}

impl Channels {
    pub const fn count(self) -> usize {
        match self {
            Self::Grey => 1,
            Self::GreyAlpha => 2,
            Self::Rgb => 3,
            Self::Rgba => 4,
        }
    }

    const fn pixel_type(self) -> PixelType {
        match self {
            Self::Grey => PixelType::U8,
            Self::GreyAlpha => PixelType::U8x2,
            Self::Rgb => PixelType::U8x3,
            Self::Rgba => PixelType::U8x4,
        }
    }
}

/// A decoded picture, row by row from the top.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Pixels {
    pub width: u32,
    pub height: u32,
    pub channels: Channels,
    pub bytes: Vec<u8>,
}

impl Pixels {
    /// Made smaller to exactly this size (Lanczos, 3 lobes); as it is where it has that size.
    pub fn resized(self, width: u32, height: u32) -> Result<Self, PhotoError> {
        if (self.width, self.height) == (width, height) {
            return Ok(self);
        }
        let kind = self.channels.pixel_type();
        let from = ImageRef::new(self.width, self.height, &self.bytes, kind);
        let from = from.map_err(PhotoError::broken)?;
        let mut into = Image::new(width, height, kind);
        Resizer::new()
            .resize(&from, &mut into, None)
            .map_err(PhotoError::broken)?;
        Ok(Self {
            width,
            height,
            channels: self.channels,
            bytes: into.into_vec(),
        })
    }

    /// Laid on white where it has gaps; grey or three lights.
    pub fn on_white(self) -> Self {
        let over = |light: u8, alpha: u8| {
            let (light, alpha) = (u32::from(light), u32::from(alpha));
            u8::try_from((light * alpha + 255 * (255 - alpha) + 127) / 255).unwrap_or(u8::MAX)
        };
        let n = self.channels.count();
        let (channels, bytes) = match self.channels {
            Channels::Grey | Channels::Rgb => return self,
            Channels::GreyAlpha => (
                Channels::Grey,
                self.bytes
                    .chunks_exact(n)
                    .map(|p| over(p[0], p[1]))
                    .collect(),
            ),
            Channels::Rgba => (
                Channels::Rgb,
                self.bytes
                    .chunks_exact(n)
                    .flat_map(|p| [over(p[0], p[3]), over(p[1], p[3]), over(p[2], p[3])])
                    .collect(),
            ),
        };
        Self {
            channels,
            bytes,
            ..self
        }
    }

    /// Turned so that it is seen upright.
    pub fn upright(self, turn: Turn) -> Self {
        if turn == Turn::Upright {
            return self;
        }
        let n = self.channels.count();
        let (w, h) = (self.width as usize, self.height as usize);
        let (new_w, new_h) = if turn.swaps_sides() { (h, w) } else { (w, h) };
        let mut bytes = Vec::with_capacity(self.bytes.len());
        for y in 0..new_h {
            for x in 0..new_w {
                let (from_x, from_y) = match turn {
                    Turn::Upright => (x, y),
                    Turn::Mirrored => (w - 1 - x, y),
                    Turn::Half => (w - 1 - x, h - 1 - y),
                    Turn::Flipped => (x, h - 1 - y),
                    Turn::Transposed => (y, x),
                    Turn::Clockwise => (y, h - 1 - x),
                    Turn::Transversed => (w - 1 - y, h - 1 - x),
                    Turn::Anticlockwise => (w - 1 - y, x),
                };
                let at = (from_y * w + from_x) * n;
                bytes.extend_from_slice(&self.bytes[at..at + n]);
            }
        }
        let (width, height) = if turn.swaps_sides() {
            (self.height, self.width)
        } else {
            (self.width, self.height)
        };
        Self {
            width,
            height,
            channels: self.channels,
            bytes,
        }
    }
}
