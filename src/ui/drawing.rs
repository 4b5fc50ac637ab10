//! Hands drawings to Slint: the paths of a half section as the components take them.

use evenwall_app::drawing::{OvalDrawing, SectionDrawing};
use evenwall_ui::{OvalPaths, SectionPaths};

/// The paths of a ring from above.
#[must_use]
#[allow(clippy::cast_possible_truncation)] // millimetres of a piece
pub fn oval_paths(drawing: OvalDrawing) -> OvalPaths {
    OvalPaths {
        size: drawing.size as f32,
        turned: drawing.turned.into(),
        reckoned: drawing.reckoned.into(),
        dried: drawing.dried.into(),
        finish: drawing.finish.into(),
        outline: drawing.outline.into(),
    }
}

/// The paths of a drawing.
#[must_use]
#[allow(clippy::cast_possible_truncation)] // millimetres of a vessel
pub fn paths(drawing: SectionDrawing) -> SectionPaths {
    SectionPaths {
        x: 0.0,
        y: 0.0,
        w: drawing.width as f32,
        h: drawing.height as f32,
        outside: drawing.skin.into(),
        void: drawing.void.into(),
        wall: drawing.wall.into(),
        grain: drawing.grain.into(),
        hatch: drawing.hatch.into(),
        outline: drawing.outline.into(),
        inner: drawing.bore.into(),
        wanted: drawing.wanted.into(),
        axis: drawing.axis.into(),
        ..SectionPaths::default()
    }
}
