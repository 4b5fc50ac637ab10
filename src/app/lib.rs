//! What the app does and says: words, numbers, actions and views, without screens, threads or files.

pub mod action;
pub mod app;
pub mod checklist;
pub mod chrome;
pub mod details;
pub mod device;
pub mod diary;
pub mod drawing;
pub mod drying;
pub mod flaws;
pub mod new_piece;
pub mod numbers;
pub mod piece;
pub mod pieces;
pub mod question;
mod record;
pub mod route;
pub mod shop;
pub mod store;
pub mod today;
pub mod truing;
pub mod undo;
pub mod wall;
pub mod whereabouts;
pub mod woods;
pub mod words;
