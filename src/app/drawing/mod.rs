//! Drawing: the half section of a piece as path strings in millimetres, the true shape at one scale.
//!
//! The left half shows the outside, the right half is cut. The outside goes through the diameters measured, from three on as
//! the sums take it; before that the outline picked is scaled to the size and bent to them. The bore keeps the walls read,
//! square to the surface, as the science layer draws it; where none was read the wall wanted is drawn. The wall and the floor
//! wanted are dashed.

mod outside_view;
mod oval;
mod path;
mod plan_ring;
mod plan_section;
mod section;
mod spots;

pub use outside_view::{
    OutsideDrawing, OutsidePlace, flaw_on_outside, outside_view, place_on_outside,
};
pub use oval::{OvalDrawing, OvalShapes, oval};
pub use plan_ring::plan_ring;
pub use plan_section::{PlannedShape, plan_section};
pub(crate) use section::drawn_outside;
pub use section::{SectionDrawing, section, section_of};
pub use spots::StationSpot;
pub(crate) use spots::{compared, measured_diameters, station_places, thinnest};
