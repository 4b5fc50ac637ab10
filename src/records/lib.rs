//! Records that leave the app, written from plain data with final words: a calendar, tables, a report, tags.
//!
//! Pure: structs in, text or bytes out. No files, no clock, no words of its own, nothing of the diary: whoever calls says
//! everything. What comes back in (an earlier calendar, a table to move in from) is read here too, and never believed.

pub mod calendar;
pub mod html;
pub mod paper;
pub mod qr;
pub mod report;
pub mod report_style;
pub mod separated;
pub mod table;
pub mod tag;
