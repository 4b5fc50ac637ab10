//! Wanted: the wall and floor a piece should have now, and the sizes to draw it by where none were measured.
//!
//! Common practice, no source. Every figure gives way to the turner's own.

use crate::detail::DetailField;
use crate::piece::Piece;
use crate::settings::Settings;
use crate::stage::{Group, Stage};
use crate::vocabulary::{Form, Grain, Outline};

/// A figure with where it comes from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Figure {
    /// The figure, mm.
    pub mm: f64,
    /// True where the turner said it; false where it is the usual figure.
    pub said: bool,
}

fn figure(piece: &Piece, field: DetailField, usual: f64) -> Figure {
    match piece.details.mm(field) {
        Some(mm) => Figure { mm, said: true },
        None => Figure {
            mm: usual,
            said: false,
        },
    }
}

/// Largest outside diameter, mm; 150 where not said.
#[must_use]
pub fn diameter(piece: &Piece) -> Figure {
    figure(piece, DetailField::Diameter, 150.0)
}

/// Rim to foot line, mm. Where not said, from the diameter and the form.
#[must_use]
pub fn height(piece: &Piece) -> Figure {
    let share = match piece.details.form() {
        Form::Vessel => 1.1,
        Form::HollowForm => 0.75,
        Form::Bowl => 0.45,
    };
    figure(
        piece,
        DetailField::Height,
        (diameter(piece).mm * share).round(),
    )
}

/// The outline picked, or the one that suits the form.
#[must_use]
pub fn outline(piece: &Piece) -> Outline {
    piece
        .details
        .outline()
        .unwrap_or(match piece.details.form() {
            Form::Vessel => Outline::Egg,
            Form::HollowForm | Form::Bowl => Outline::Ball,
        })
}

/// The rough wall: 10 mm to a diameter of 160, 12 to 220, 15 to 300, a twentieth above; side grain a tenth of the
/// diameter and at least 12.
#[must_use]
pub fn rough_wall(piece: &Piece) -> Figure {
    let d = diameter(piece).mm;
    let usual = match piece.details.grain() {
        Grain::End if d <= 160.0 => 10.0,
        Grain::End if d <= 220.0 => 12.0,
        Grain::End if d <= 300.0 => 15.0,
        Grain::End => (d / 20.0).ceil(),
        Grain::Side => (d / 10.0).ceil().max(12.0),
    };
    figure(piece, DetailField::WallWanted, usual)
}

/// The finish wall: end grain 5 mm to a diameter of 150, 6 to 220, 8 above; side grain 8.
#[must_use]
pub fn finish_wall(piece: &Piece) -> Figure {
    let d = diameter(piece).mm;
    let usual = match piece.details.grain() {
        Grain::End if d <= 150.0 => 5.0,
        Grain::End if d <= 220.0 => 6.0,
        _ => 8.0,
    };
    figure(piece, DetailField::WallFinish, usual)
}

/// The wall wanted in the present stage: the finish wall in True and Finish, else the rough wall.
#[must_use]
pub fn wall_now(piece: &Piece) -> Figure {
    match piece.stage().group() {
        Group::Finishing => finish_wall(piece),
        _ => rough_wall(piece),
    }
}

/// The floor wanted above the foot line: the wall plus 2.
#[must_use]
pub fn floor(piece: &Piece) -> Figure {
    figure(piece, DetailField::FloorWanted, wall_now(piece).mm + 2.0)
}

/// How far the wall may be off either way in the present stage, mm.
#[must_use]
pub fn tolerance(piece: &Piece, settings: &Settings) -> f64 {
    match piece.stage() {
        Stage::Finish => settings.finish_tolerance_mm,
        _ => settings.rough_tolerance_mm,
    }
}

/// The thinnest wall from which the finish wall can still be made, mm: finish wall, margin and remounting.
#[must_use]
pub fn least_rough(piece: &Piece, settings: &Settings) -> f64 {
    finish_wall(piece).mm + settings.margin_mm + settings.remount_mm
}
