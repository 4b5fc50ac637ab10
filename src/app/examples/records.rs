//! Writes every kind of document of the invented shelf into a folder, for looking at and for checks by other programs:
//! `cargo run -p evenwall-app --example records -- <folder>`. The shelf is as of 14 March 2026.
#![allow(clippy::disallowed_methods, clippy::print_stdout)] // a tool for developers, run by hand

use std::collections::BTreeMap;
use std::error::Error;
use std::path::PathBuf;

use chrono::{DateTime, Duration};
use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::demo;
use evenwall_app::piece::PieceAction;
use evenwall_app::records::report::{ReportImages, Version};
use evenwall_app::store::MemoryStore;
use evenwall_piece::fact::End;
use evenwall_piece::ids::PieceId;
use evenwall_piece::stage::Group;
use evenwall_records::report::ReportPhoto;
use evenwall_records::table;

fn main() -> Result<(), Box<dyn Error>> {
    let folder = PathBuf::from(std::env::args().nth(1).ok_or("say which folder")?);
    std::fs::create_dir_all(&folder)?;
    let write = |name: &str, bytes: &[u8]| -> Result<(), Box<dyn Error>> {
        std::fs::write(folder.join(name), bytes)?;
        println!("{}", folder.join(name).display());
        Ok(())
    };
    let now = DateTime::parse_from_rfc3339("2026-03-14T08:30:00+00:00")?;
    let mut store = MemoryStore::default();
    demo::fill(&mut store, now)?;
    let mut app = App::open(Box::new(store), true, now)?;

    // The calendar as it is written first, and once more after a few things happened.
    let first = app.calendar(None, now);
    write("calendar.ics", first.as_bytes())?;
    let drying: Vec<PieceId> = app
        .pieces()
        .filter(|p| p.living() && p.stage().group() == Group::Drying)
        .map(|p| p.id.clone())
        .collect();
    let later = now + Duration::days(1);
    if let [one, two, ..] = drying.as_slice() {
        let end = PieceAction::End {
            piece: one.clone(),
            end: End::GivenAway,
        };
        app.apply(Action::Piece(end), later);
        let look = PieceAction::Looked {
            piece: two.clone(),
            feel: None,
            mould: false,
            crack: false,
        };
        app.apply(Action::Piece(look), later);
    }
    let again = app.calendar(Some(&first), later);
    write("calendar-later.ics", again.as_bytes())?;

    // A picture to stand for photos, where one is given.
    let photo = match std::env::args().nth(2) {
        Some(path) => Some(ReportPhoto {
            jpeg: std::fs::read(path)?,
            caption: String::new(),
        }),
        None => None,
    };
    for mark in ["J02", "J05", "J09", "K07", "K14"] {
        let Some(piece) = app.pieces().find(|p| p.mark() == mark) else {
            continue;
        };
        let flaws: BTreeMap<_, _> = piece
            .flaws
            .iter()
            .map(|f| (f.note.flaw.clone(), photo.iter().cloned().collect()))
            .collect();
        let images = ReportImages {
            portrait: photo.clone(),
            flaws,
            others: photo.iter().cloned().collect(),
        };
        for (version, name) in [(Version::Shop, "shop"), (Version::Buyer, "buyer")] {
            let page = app
                .report(&piece.id, version, &images, now)
                .ok_or("no such piece")?;
            write(&format!("report-{mark}-{name}.html"), page.as_bytes())?;
        }
    }
    for table in app.tables() {
        write(
            &format!("evenwall-{}.csv", table.name),
            &table::write(&table)?,
        )?;
    }
    let all: Vec<PieceId> = app
        .pieces()
        .filter(|p| p.living())
        .map(|p| p.id.clone())
        .collect();
    write("tags.html", app.tags(&all, now)?.as_bytes())?;
    let due = app.due(now, 7);
    write("due.txt", due.text().as_bytes())?;
    write("due.json", due.json().as_bytes())?;
    Ok(())
}
