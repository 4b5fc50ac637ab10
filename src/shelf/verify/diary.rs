//! Diary: the lines of one folder, each with where it stands, and what they say together.

use std::collections::BTreeMap;

use chrono::{DateTime, Datelike, FixedOffset};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::LineId;
use evenwall_piece::shop::ShopFact;
use sha2::{Digest, Sha256};

use super::{What, YEARS};
use crate::folder::is_parted;
use crate::format::{Recorded, read};
use crate::journal::Journal;
use crate::line::{RawLine, written};

/// A fact that may point at an earlier line.
pub(super) trait Points: Recorded {
    /// The line that it corrects or takes back.
    fn points_at(&self) -> Option<&LineId>;
    /// The kind of one that is not understood.
    fn unknown_kind(&self) -> Option<&str>;
}

impl Points for PieceFact {
    fn points_at(&self) -> Option<&LineId> {
        match self {
            Self::Amends { entry, .. } => Some(&entry.line),
            Self::Retracts(line) => Some(line),
            _ => None,
        }
    }

    fn unknown_kind(&self) -> Option<&str> {
        match self {
            Self::Unknown { kind, .. } => Some(kind),
            _ => None,
        }
    }
}

impl Points for ShopFact {
    fn points_at(&self) -> Option<&LineId> {
        match self {
            Self::Retracts(line) => Some(line),
            _ => None,
        }
    }

    fn unknown_kind(&self) -> Option<&str> {
        match self {
            Self::Unknown { kind, .. } => Some(kind),
            _ => None,
        }
    }
}

/// A line of the folder.
#[derive(Clone, Copy)]
struct Place {
    file: usize,
    line: usize,
    seq: u64,
    digest: [u8; 16],
}

/// What is known of a folder's lines.
#[derive(Default)]
pub(super) struct Diary {
    files: Vec<String>,
    lines: BTreeMap<LineId, Vec<Place>>,
    pointers: Vec<(usize, usize, LineId)>,
}

impl Diary {
    /// Takes the bytes of one journal, and says what is wrong with single lines. Answers how many could be read.
    pub fn take<F: Points>(
        &mut self,
        path: &str,
        bytes: &[u8],
        say: &mut dyn FnMut(Option<usize>, What),
    ) -> usize {
        let file = self.files.len();
        self.files.push(path.to_owned());
        let journal = Journal::read(bytes);
        for bad in journal.bad {
            let what = if bad.is_tail {
                What::Tail(bad.why)
            } else {
                What::Line(bad.why)
            };
            say(Some(bad.line), what);
        }
        if journal.more_bad > 0 {
            say(None, What::MoreLines(journal.more_bad));
        }
        let read = journal.lines.len();
        for (line, raw) in journal.numbers.into_iter().zip(journal.lines) {
            self.facts::<F>(file, line, &raw, say);
            times(&raw, &mut |what| say(Some(line), what));
            let place = Place {
                file,
                line,
                seq: raw.seq,
                digest: digest(&raw),
            };
            self.lines.entry(raw.id).or_default().push(place);
        }
        read
    }

    fn facts<F: Points>(
        &mut self,
        file: usize,
        line: usize,
        raw: &RawLine,
        say: &mut dyn FnMut(Option<usize>, What),
    ) {
        for (place, text) in raw.facts.iter().enumerate() {
            let mut rest = Vec::new();
            let fact = read::<F>(text.get(), &mut rest);
            if let Some(id) = fact.points_at() {
                self.pointers.push((file, line, id.clone()));
            }
            for unknown in std::iter::once(&fact).chain(&rest) {
                if let Some(kind) = unknown.unknown_kind() {
                    say(
                        Some(line),
                        What::NotUnderstood {
                            place: place + 1,
                            kind: kind.to_owned(),
                        },
                    );
                }
            }
        }
    }

    /// What only all journals of the folder together show: clashes, gaps, order, corrections of nothing.
    pub fn together(&self, say: &mut dyn FnMut(&str, usize, What)) {
        let mut last: Option<(&LineId, u64)> = None;
        for (id, places) in &self.lines {
            let Some(first) = places.first() else {
                continue;
            };
            let mut different = vec![first];
            for place in &places[1..] {
                if different.iter().all(|d| d.digest != place.digest) {
                    let other = format!("{}:{}", self.files[first.file], first.line);
                    let id = id.clone();
                    say(
                        &self.files[place.file],
                        place.line,
                        What::Clash { id, other },
                    );
                    different.push(place);
                }
            }
            let file = &self.files[first.file];
            let before = last.filter(|(l, _)| l.device == id.device);
            let n = before.map_or(0, |(l, _)| l.n);
            if id.n > n + 1 && !is_parted(&id.device) {
                let what = What::Missing {
                    device: id.device.clone(),
                    from: n + 1,
                    to: id.n - 1,
                };
                say(file, first.line, what);
            }
            if let Some((_, before)) = before.filter(|(_, seq)| first.seq <= *seq) {
                let what = What::Backwards {
                    device: id.device.clone(),
                    seq: first.seq,
                    before,
                };
                say(file, first.line, what);
            }
            last = Some((id, first.seq));
        }
        for (file, line, id) in &self.pointers {
            // A line that shares its number goes by a name made while reading.
            if !self.lines.contains_key(id) && !is_parted(&id.device) {
                say(&self.files[*file], *line, What::PointsNowhere(id.clone()));
            }
        }
    }
}

fn times(raw: &RawLine, say: &mut dyn FnMut(What)) {
    let mut look = |field: &'static str, at: DateTime<FixedOffset>| {
        if !YEARS.contains(&at.year()) {
            say(What::Time {
                field,
                found: written(at),
            });
        }
    };
    look("at", raw.at);
    look("noted_at", raw.noted_at);
}

fn digest(raw: &RawLine) -> [u8; 16] {
    // A line that was read can always be written.
    let text = raw.to_bytes().unwrap_or_default();
    let mut digest = [0; 16];
    digest.copy_from_slice(&Sha256::digest(text)[..16]);
    digest
}
