//! Pictures: files made for the tests, with tags of a camera and a place, turned every way.
#![allow(dead_code, clippy::unwrap_used, clippy::expect_used)] // Each test binary uses a part of it.

use std::sync::atomic::AtomicBool;

use evenwall_photo::error::PhotoError;
use evenwall_photo::limits::Limits;
use evenwall_photo::prepare::{Prepared, prepare};
use evenwall_photo::watch::Watch;

/// Three lights.
pub type Light = [u8; 3];
pub const RED: Light = [200, 30, 30];
pub const GREEN: Light = [30, 180, 40];
pub const BLUE: Light = [30, 40, 200];
pub const PALE: Light = [240, 240, 230];

/// A picture in memory.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Picture {
    pub width: usize,
    pub height: usize,
    pub rgb: Vec<u8>,
}

impl Picture {
    pub fn of(width: usize, height: usize, light: impl Fn(usize, usize) -> Light) -> Self {
        let rgb = (0..height)
            .flat_map(|y| (0..width).map(move |x| (x, y)))
            .flat_map(|(x, y)| light(x, y))
            .collect();
        Self { width, height, rgb }
    }

    /// Red, green, blue and pale quarters, from the top left as one reads.
    pub fn quarters(width: usize, height: usize) -> Self {
        Self::of(width, height, |x, y| {
            match (x < width / 2, y < height / 2) {
                (true, true) => RED,
                (false, true) => GREEN,
                (true, false) => BLUE,
                (false, false) => PALE,
            }
        })
    }

    pub fn at(&self, x: usize, y: usize) -> Light {
        let at = (y * self.width + x) * 3;
        [self.rgb[at], self.rgb[at + 1], self.rgb[at + 2]]
    }

    /// Turned a quarter clockwise.
    pub fn clockwise(&self) -> Self {
        Self::of(self.height, self.width, |x, y| {
            self.at(y, self.height - 1 - x)
        })
    }

    /// Mirrored left to right.
    pub fn mirrored(&self) -> Self {
        Self::of(self.width, self.height, |x, y| {
            self.at(self.width - 1 - x, y)
        })
    }

    /// As a camera stores it that writes this orientation: Exif says what a viewer does to it, this is undone here.
    /// 2 mirror; 3 turn by a half; 4 mirror and turn by a half; 5 mirror, turn three quarters clockwise; 6 turn a quarter
    /// clockwise; 7 mirror, turn a quarter clockwise; 8 turn three quarters clockwise.
    pub fn stored(&self, orientation: u8) -> Self {
        let quarters = |n: usize| (0..n).fold(self.clone(), |p, _| p.clockwise());
        match orientation {
            2 => self.mirrored(),
            3 => quarters(2),
            4 => quarters(2).mirrored(),
            5 => quarters(1).mirrored(),
            6 => quarters(3),
            7 => quarters(3).mirrored(),
            8 => quarters(1),
            _ => self.clone(),
        }
    }

    pub fn jpeg(&self, exif: Option<&[u8]>) -> Vec<u8> {
        let mut bytes = Vec::new();
        let mut encoder = jpeg_encoder::Encoder::new(&mut bytes, 92);
        if let Some(exif) = exif {
            encoder
                .add_app_segment(1, [b"Exif\0\0", exif].concat())
                .unwrap();
        }
        encoder
            .add_app_segment(
                1,
                b"http://ns.adobe.com/xap/1.0/\0<x>SECRET-XMP</x>".to_vec(),
            )
            .unwrap();
        let (w, h) = (self.width as u16, self.height as u16);
        encoder
            .encode(&self.rgb, w, h, jpeg_encoder::ColorType::Rgb)
            .unwrap();
        bytes
    }

    pub fn png(&self, exif: Option<&[u8]>) -> Vec<u8> {
        let mut bytes = Vec::new();
        let mut info = png::Info::with_size(self.width as u32, self.height as u32);
        info.color_type = png::ColorType::Rgb;
        info.bit_depth = png::BitDepth::Eight;
        info.exif_metadata = exif.map(|e| e.to_vec().into());
        let encoder = png::Encoder::with_info(&mut bytes, info).unwrap();
        let mut writer = encoder.write_header().unwrap();
        writer.write_image_data(&self.rgb).unwrap();
        drop(writer);
        bytes
    }

    pub fn webp(&self, exif: Option<&[u8]>) -> Vec<u8> {
        let mut bytes = Vec::new();
        let mut encoder = image_webp::WebPEncoder::new(&mut bytes);
        if let Some(exif) = exif {
            encoder.set_exif_metadata(exif.to_vec());
        }
        let (w, h) = (self.width as u32, self.height as u32);
        encoder
            .encode(&self.rgb, w, h, image_webp::ColorType::Rgb8)
            .unwrap();
        bytes
    }
}

/// What the result looks like.
pub fn seen(jpeg: &[u8]) -> Picture {
    let mut decoder = jpeg_decoder::Decoder::new(jpeg);
    let mut rgb = decoder.decode().unwrap();
    let info = decoder.info().unwrap();
    if info.pixel_format == jpeg_decoder::PixelFormat::L8 {
        rgb = rgb.iter().flat_map(|l| [*l; 3]).collect();
    }
    Picture {
        width: info.width.into(),
        height: info.height.into(),
        rgb,
    }
}

pub fn near(a: Light, b: Light) -> bool {
    a.iter().zip(b).all(|(a, b)| a.abs_diff(b) <= 12)
}

/// A block of tags with a maker, a place and a time; `big` in big-endian order.
pub fn tags(orientation: u8, time: Option<(&str, Option<&str>)>, big: bool) -> Vec<u8> {
    Block {
        bytes: Vec::new(),
        big,
    }
    .whole(orientation, time)
}

struct Block {
    bytes: Vec<u8>,
    big: bool,
}

impl Block {
    fn u16(&mut self, n: u16) {
        self.bytes.extend(if self.big {
            n.to_be_bytes()
        } else {
            n.to_le_bytes()
        });
    }

    fn u32(&mut self, n: u32) {
        self.bytes.extend(if self.big {
            n.to_be_bytes()
        } else {
            n.to_le_bytes()
        });
    }

    fn entry(&mut self, tag: u16, kind: u16, count: u32, value: u32) {
        self.u16(tag);
        self.u16(kind);
        self.u32(count);
        if kind == 3 {
            self.u16(value as u16);
            self.u16(0);
        } else {
            self.u32(value);
        }
    }

    fn whole(mut self, orientation: u8, time: Option<(&str, Option<&str>)>) -> Vec<u8> {
        const MAKER: &[u8] = b"SECRET-CAMERA\0";
        self.bytes.extend(if self.big { b"MM" } else { b"II" });
        self.u16(42);
        self.u32(8);
        // First directory: 4 entries, at 8; the Exif one at 62, the place's at 92; texts from 110 on.
        self.u16(4);
        self.entry(0x010f, 2, MAKER.len() as u32, 110);
        self.entry(0x0112, 3, 1, orientation.into());
        self.entry(0x8769, 4, 1, 62);
        self.entry(0x8825, 4, 1, 92);
        self.u32(0);
        assert_eq!(self.bytes.len(), 62);
        let (time, offset) = time.unwrap_or(("", None));
        self.u16(2);
        self.entry(if time.is_empty() { 0x9999 } else { 0x9003 }, 2, 20, 124);
        let has_offset = if offset.is_some() { 0x9011 } else { 0x9998 };
        self.entry(has_offset, 2, 7, 144);
        self.u32(0);
        assert_eq!(self.bytes.len(), 92);
        self.u16(1);
        self.entry(0x001d, 2, 11, 151);
        self.u32(0);
        assert_eq!(self.bytes.len(), 110);
        self.bytes.extend(MAKER);
        self.bytes.extend(format!("{time:19}\0").bytes());
        self.bytes
            .extend(format!("{:6}\0", offset.unwrap_or("")).bytes());
        self.bytes.extend(b"SECRET-GPS\0");
        self.bytes
    }
}

/// Prepares with nobody watching.
pub fn take(bytes: &[u8], limits: &Limits) -> Result<Prepared, PhotoError> {
    prepare(
        bytes,
        limits,
        &mut Watch::new(&AtomicBool::new(false), &mut |_| {}),
    )
}

/// Prepares within the usual limits.
pub fn taken(bytes: &[u8]) -> Prepared {
    take(bytes, &Limits::default()).unwrap()
}

/// The markers of a JPEG up to its picture.
pub fn markers(jpeg: &[u8]) -> Vec<u8> {
    let mut found = Vec::new();
    let mut at = 2;
    while jpeg[at] == 0xff {
        let marker = jpeg[at + 1];
        found.push(marker);
        if marker == 0xda {
            break;
        }
        at += 2 + usize::from(u16::from_be_bytes([jpeg[at + 2], jpeg[at + 3]]));
    }
    found
}
