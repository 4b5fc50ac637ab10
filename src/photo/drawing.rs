//! Drawing: pictures of turned pieces that this program draws itself, for a demonstration without a camera. They are
//! drawings and must be called so wherever they are shown.
//!
//! The same drawing gives the same bytes every time. A rule of 100 mm lies beside each flaw, so that a length
//! can be measured on it.

use jpeg_encoder::{ColorType, Encoder, SamplingFactor};

use crate::error::PhotoError;

/// What the picture shows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Subject {
    /// The whole piece.
    Portrait,
    /// A knot: rings and a dark heart, so many mm across.
    Knot(f64),
    /// A check: a jagged dark line, so many mm long.
    Check(f64),
    /// Bark in the wood: a ragged dark patch with gaps, so many mm long.
    Bark(f64),
}

/// A picture to be drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Drawing {
    /// What it shows.
    pub subject: Subject,
    /// Grain and lie of the wood; the same number draws the same wood.
    pub wood: u32,
}

/// Width of a drawing, pixels.
pub const WIDTH: u32 = 640;
/// Height of a drawing, pixels.
pub const HEIGHT: u32 = 480;
/// Pixels to a millimetre: the rule of 100 mm is 400 pixels long.
pub const PX_PER_MM: f64 = 4.0;
/// Where the rule lies: its ends across and its place down, pixels.
pub const RULE: (u32, u32, u32) = (120, 520, 440);

type Light = [f64; 3];

/// A number of 0 to 1 that looks random and is the same for the same places (an integer hash by multiplication and shift).
fn grain(x: i64, y: i64, wood: u32) -> f64 {
    let mut n =
        (x.wrapping_mul(0x9E37_79B1) ^ y.wrapping_mul(0x85EB_CA77)) as u64 ^ u64::from(wood);
    n = n.wrapping_mul(0xC2B2_AE3D_27D4_EB4F);
    n ^= n >> 29;
    n = n.wrapping_mul(0x1656_67B1_9E37_79F9);
    ((n >> 40) & 0xffff) as f64 / 65_535.0
}

/// Between neighbours, so that it runs on without steps.
fn smooth(at: f64, wood: u32) -> f64 {
    let (whole, part) = (at.floor(), at - at.floor());
    let ease = part * part * (3.0 - 2.0 * part);
    let near = |n: f64| grain(n as i64, 7, wood);
    near(whole) * (1.0 - ease) + near(whole + 1.0) * ease
}

/// Half the width of the vessel at a height of 0 (rim) to 1 (foot), as a share of its height.
fn half_width(down: f64) -> f64 {
    let belly = (down * std::f64::consts::PI).sin().max(0.0).powf(0.7);
    0.13 + 0.33 * belly * (1.0 - 0.35 * down)
}

fn lit(wood: Light, light: f64) -> Light {
    wood.map(|c| c * light)
}

/// Wood with its lines along the axis.
fn wood_at(across: f64, down: f64, wood: u32) -> Light {
    let line = smooth(across * 34.0 + smooth(down * 3.0, wood ^ 5) * 2.5, wood);
    let fine = grain((across * 900.0) as i64, (down * 60.0) as i64, wood);
    let shade = 0.78 + 0.16 * line + 0.06 * fine;
    let tone = f64::from(wood % 5) * 6.0;
    lit([214.0 - tone, 176.0 - tone, 124.0 - 2.0 * tone], shade)
}

/// What a flaw does to the wood there; `mm` from its middle. `None` leaves it as it is.
fn flaw_at(subject: Subject, across_mm: f64, down_mm: f64, wood: u32) -> Option<Light> {
    let dark = [46.0, 30.0, 20.0];
    match subject {
        Subject::Portrait => None,
        Subject::Knot(size) => {
            let from = across_mm.hypot(down_mm * 0.8) / (size / 2.0);
            let ring = 0.5 + 0.5 * (from * 26.0).cos();
            match from {
                f if f < 0.25 => Some(dark),
                f if f < 1.0 => Some([96.0 + 40.0 * ring, 62.0 + 30.0 * ring, 34.0 + 20.0 * ring]),
                f if f < 1.15 => Some([70.0, 46.0, 26.0]),
                _ => None,
            }
        }
        Subject::Check(size) => {
            let along = down_mm / size + 0.5;
            let jag = (smooth(down_mm * 0.18, wood ^ 9) - 0.5) * 4.0
                + (smooth(down_mm * 1.3, wood ^ 10) - 0.5) * 0.7;
            let wide = 0.25 + 0.9 * (along * std::f64::consts::PI).sin().max(0.0);
            let inside = (0.0..=1.0).contains(&along) && (across_mm - jag).abs() < wide;
            inside.then_some([30.0, 20.0, 14.0])
        }
        Subject::Bark(size) => {
            let along = down_mm / size + 0.5;
            let full = (along * std::f64::consts::PI).sin().max(0.0).sqrt();
            let side = if across_mm < 0.0 { 3 } else { 4 };
            let ragged = (smooth(down_mm * 0.4, wood ^ side) * 3.5 + 1.5) * full;
            let inside = (0.0..=1.0).contains(&along) && across_mm.abs() < ragged;
            let gap = grain((across_mm * 2.0) as i64, (down_mm * 2.0) as i64, wood) > 0.86;
            inside.then_some(if gap {
                [20.0, 14.0, 10.0]
            } else {
                [78.0, 58.0, 44.0]
            })
        }
    }
}

/// The rule: pale, with a line every 10 mm and a longer one at 0, 50 and 100.
fn rule_at(x: u32, y: u32) -> Option<Light> {
    let (from, to, top) = RULE;
    if !(from..=to).contains(&x) || !(top..top + 26).contains(&y) {
        return None;
    }
    let mm = f64::from(x - from) / PX_PER_MM;
    let line = (mm % 10.0) < 0.3;
    let long = if (mm % 50.0) < 0.3 { 20 } else { 12 };
    let edge = y == top || x == from || x == to;
    Some(if edge || (line && y < top + long) {
        [40.0; 3]
    } else {
        [226.0, 224.0, 214.0]
    })
}

fn light_at(drawing: &Drawing, x: u32, y: u32) -> Light {
    let (fx, fy) = (f64::from(x), f64::from(y));
    if drawing.subject == Subject::Portrait {
        let (top, tall) = (40.0, 390.0);
        let down = (fy - top) / tall;
        let across = (fx - f64::from(WIDTH) / 2.0) / tall;
        let half = half_width(down);
        if (0.0..=1.0).contains(&down) && across.abs() < half {
            let round = across / half;
            let light = 0.45 + 0.6 * (1.0 - (round + 0.35).powi(2)).max(0.0).sqrt();
            // The mouth: a dark lens under the rim.
            let mouth = (round / 0.9).powi(2) + ((down - 0.02) / 0.025).powi(2) < 1.0;
            let wood = wood_at(round.asin() * 0.5, down, drawing.wood);
            return if mouth {
                [38.0, 28.0, 22.0]
            } else {
                lit(wood, light)
            };
        }
        let bench = if fy > 420.0 { 0.62 } else { 0.82 };
        return lit(
            [182.0, 180.0, 176.0],
            bench + 0.03 * grain(i64::from(x), i64::from(y), 1),
        );
    }
    if let Some(rule) = rule_at(x, y) {
        return rule;
    }
    // Near by: the wall fills the picture, lit from the left.
    let (mid_x, mid_y) = (320.0, 215.0);
    let flaw = flaw_at(
        drawing.subject,
        (fx - mid_x) / PX_PER_MM,
        (fy - mid_y) / PX_PER_MM,
        drawing.wood,
    );
    let wood = flaw.unwrap_or_else(|| wood_at(fx / 640.0, fy / 480.0, drawing.wood));
    lit(wood, 1.05 - 0.35 * (fx / 640.0))
}

impl Drawing {
    /// The picture as a JPEG of [`WIDTH`] by [`HEIGHT`] without metadata, ready to be stored.
    ///
    /// # Errors
    /// [`PhotoError::Broken`] where it cannot be written, which no drawing brings about.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // clamped to a byte
    pub fn jpeg(&self) -> Result<Vec<u8>, PhotoError> {
        let rgb: Vec<u8> = (0..HEIGHT)
            .flat_map(|y| (0..WIDTH).map(move |x| (x, y)))
            .flat_map(|(x, y)| light_at(self, x, y).map(|c| c.clamp(0.0, 255.0) as u8))
            .collect();
        let mut jpeg = Vec::new();
        let mut encoder = Encoder::new(&mut jpeg, 80);
        encoder.set_sampling_factor(SamplingFactor::F_2_2);
        let (w, h) = (WIDTH as u16, HEIGHT as u16);
        encoder
            .encode(&rgb, w, h, ColorType::Rgb)
            .map_err(PhotoError::broken)?;
        Ok(jpeg)
    }
}
