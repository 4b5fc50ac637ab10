//! The domain of Evenwall: pieces, stages, readings, flaws, bag checks, weighings, and what is due when.
//!
//! Everything recorded is a [`line::Line`] of facts; [`fold::fold_piece`] derives the state of a piece from its
//! lines and [`shop::fold_shop`] that of the workshop. No files, no clock, no screens: time is an argument.

pub mod agenda;
pub mod away;
pub mod bag;
pub mod checklist;
pub mod climate_log;
pub mod detail;
pub mod diary;
pub mod dried;
pub mod fact;
pub mod flaw;
pub mod fold;
pub mod glue;
pub mod ids;
pub mod line;
pub mod mark;
pub mod photo;
pub mod piece;
pub mod rhythm;
pub mod room_weights;
pub mod round;
pub mod settings;
pub mod shop;
pub mod stage;
pub mod tidying;
pub mod truing;
pub mod vocabulary;
pub mod wanted;
pub mod weights;
