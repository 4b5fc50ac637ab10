//! World: one turner's shelf on a faulty disk, and what the turner was told is stored.
#![allow(dead_code)] // Each test binary uses a part of it.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use chrono::{DateTime, FixedOffset};
use evenwall_piece::ids::{PieceId, Scope};
use evenwall_shelf::disk::Disk;
use evenwall_shelf::error::ShelfError;
use evenwall_shelf::faulty::FaultyDisk;
use evenwall_shelf::line::RawLine;
use evenwall_shelf::shelf::Shelf;
use serde_json::json;

pub const SHELF: &str = "/home/turner/shelf";
pub const DATA: &str = "/home/turner/data";
pub const OTHER_DATA: &str = "/home/other/data";

pub fn open_as(disk: &FaultyDisk, shelf: &str, data: &str, seed: u8) -> Result<Shelf, ShelfError> {
    Shelf::open(
        Arc::new(disk.clone()),
        Path::new(shelf),
        Path::new(data),
        [seed; 16],
    )
}

pub fn open(disk: &FaultyDisk, seed: u8) -> Result<Shelf, ShelfError> {
    open_as(disk, SHELF, DATA, seed)
}

pub fn piece(id: &str) -> Scope {
    Scope::Piece(PieceId::new(id).unwrap())
}

pub fn at(text: &str) -> DateTime<FixedOffset> {
    DateTime::parse_from_rfc3339(text).unwrap()
}

/// Records one note.
pub fn note(shelf: &mut Shelf, scope: &Scope, text: &str) -> Result<(), ShelfError> {
    let when = at("2026-03-14T09:30:00+01:00");
    shelf
        .append(
            scope,
            when,
            when,
            &[json!({ "fact": "note", "text": text })],
        )
        .map(|_| ())
}

pub fn text_of(line: &RawLine) -> String {
    let fact: serde_json::Value = serde_json::from_str(line.facts[0].get()).unwrap();
    fact["text"].as_str().unwrap_or_default().to_owned()
}

/// The notes of one folder in the order of the fold.
pub fn notes(shelf: &mut Shelf, scope: &Scope) -> Vec<String> {
    shelf.load(scope).unwrap().iter().map(text_of).collect()
}

/// All notes of the shelf, folder by folder.
pub fn all_notes(shelf: &mut Shelf) -> Result<Vec<String>, ShelfError> {
    let all = shelf.load_all(|_, lines| lines.iter().map(text_of).collect::<Vec<_>>())?;
    Ok(all.into_iter().flat_map(|(_, notes)| notes).collect())
}

pub fn journal(scope: &str, device: &str) -> PathBuf {
    Path::new(SHELF).join(scope).join(format!("{device}.jsonl"))
}

pub fn content(disk: &FaultyDisk, path: &Path) -> Vec<u8> {
    disk.read(path).unwrap()
}
