//! Drawing: the half section of a piece as path strings in millimetres, the true shape at one scale.
//!
//! The left half shows the outside, the right half is cut. Where no diameters were measured the outline picked is
//! scaled to the size; where no walls were read the wall wanted is drawn dashed.

mod outside_view;
mod oval;
mod path;
mod plan_ring;
mod plan_section;
mod section;
mod spots;

pub use outside_view::{OutsideDrawing, OutsidePlace, outside_view, place_on_outside};
pub use oval::{OvalDrawing, oval};
pub use plan_ring::plan_ring;
pub use plan_section::{PlannedShape, plan_section};
pub(crate) use section::outside_of;
pub use section::{SectionDrawing, section, section_of};
pub use spots::StationSpot;
pub(crate) use spots::{compared, station_places, thinnest};
