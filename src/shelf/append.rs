//! Append: one action becomes one line, written and synced before it counts.

use std::time::SystemTime;

use chrono::{DateTime, FixedOffset};
use evenwall_piece::ids::{LineId, Scope};
use serde_json::value::RawValue;
use serde_json::{Map, Value};

use crate::error::{Doing, ShelfError};
use crate::folder::{Seen, folder_of, journal_of, under};
use crate::format::LINE_VERSION;
use crate::line::{LARGEST_NUMBER, LONGEST_LINE, RawLine};
use crate::notice::Notice;
use crate::shelf::Shelf;

/// Where a line that was appended stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Appended {
    /// Its id.
    pub id: LineId,
    /// Its place in the order of the fold.
    pub seq: u64,
}

impl Shelf {
    /// Records one action as one line, durable when this returns. The first line of a piece makes its folder.
    ///
    /// `at` is when it happened, `noted_at` is now.
    ///
    /// # Errors
    /// [`ShelfError`]: nothing is recorded then, save for [`ShelfError::Unconfirmed`], where it may have been. Load the
    /// folder again to see what it holds.
    pub fn append(
        &mut self,
        scope: &Scope,
        at: DateTime<FixedOffset>,
        noted_at: DateTime<FixedOffset>,
        facts: &[Value],
    ) -> Result<Appended, ShelfError> {
        let raw: Result<Vec<_>, _> = facts.iter().map(serde_json::value::to_raw_value).collect();
        let raw = raw
            .map_err(std::io::Error::from)
            .doing("write to", &self.path)?;
        self.append_raw(scope, at, noted_at, raw)
    }

    pub(crate) fn append_raw(
        &mut self,
        scope: &Scope,
        at: DateTime<FixedOffset>,
        noted_at: DateTime<FixedOffset>,
        facts: Vec<Box<RawValue>>,
    ) -> Result<Appended, ShelfError> {
        if let Some(why) = self.read_only() {
            return Err(ShelfError::ReadOnly { why });
        }
        if facts.is_empty() {
            return Err(ShelfError::Nothing);
        }
        let (device, journal) = self.ready(scope)?;
        let known = &self.known[scope];
        let line = RawLine {
            id: LineId {
                device,
                n: (known.own.n + 1).min(LARGEST_NUMBER),
            },
            seq: (known.highest_seq + 1).min(LARGEST_NUMBER),
            at,
            noted_at,
            v: LINE_VERSION,
            facts,
            extra: Map::new(),
        };
        let path = under(&self.path, &journal);
        let text = line
            .to_bytes()
            .map_err(std::io::Error::from)
            .doing("write to", &path)?;
        if text.len() > LONGEST_LINE {
            return Err(ShelfError::TooLong {
                found: text.len(),
                allowed: LONGEST_LINE,
            });
        }
        let mut bytes = Vec::with_capacity(text.len() + 1);
        if !known.own.clean {
            bytes.push(b'\n');
        }
        bytes.extend_from_slice(&text);

        self.make_folders(scope)?;
        if let Err(error) = self.disk.append(&path, &bytes) {
            // A part may stand there: look again before the next append.
            self.known.remove(scope);
            return Err(error).doing("write to", &path);
        }
        if let Err(error) = self.make_durable(scope, &journal) {
            self.known.remove(scope);
            return Err(match error {
                ShelfError::Io { path, source, .. } => ShelfError::Unconfirmed { path, source },
                other => other,
            });
        }
        if let Some(known) = self.known.get_mut(scope) {
            known.own.grow(&bytes, line.id.n);
            known.highest_seq = line.seq;
            let name = format!("{}.jsonl", line.id.device);
            known.files.insert(
                name.into(),
                Seen {
                    len: known.own.len,
                    modified: None::<SystemTime>,
                },
            );
        }
        if let Scope::Piece(id) = scope {
            self.pieces.insert(id.clone());
        }
        self.note(scope, &journal);
        Ok(Appended {
            id: line.id,
            seq: line.seq,
        })
    }

    /// Makes sure that the folder is known and that the own journal is still as this device left it.
    fn ready(
        &mut self,
        scope: &Scope,
    ) -> Result<(evenwall_piece::ids::DeviceId, String), ShelfError> {
        for _ in 0..2 {
            if !self.known.contains_key(scope) {
                self.load(scope)?;
            }
            let Some(device) = self.device().cloned() else {
                break;
            };
            let journal = journal_of(scope, &device);
            let path = under(&self.path, &journal);
            let len = match self.disk.len(&path) {
                Err(e) if e.kind() == std::io::ErrorKind::NotFound => 0,
                other => other.doing("look at", &path)?,
            };
            if self.known[scope].own.len == len {
                return Ok((device, journal));
            }
            self.known.remove(scope);
        }
        let source = std::io::Error::other("another program keeps changing it");
        Err(source).doing("write to", &under(&self.path, &folder_of(scope)))
    }

    pub(crate) fn make_folders(&self, scope: &Scope) -> Result<(), ShelfError> {
        let relative = folder_of(scope);
        if self.durable.contains(&relative) {
            return Ok(());
        }
        for (end, _) in relative.match_indices('/').chain([(relative.len(), "")]) {
            let folder = under(&self.path, &relative[..end]);
            self.disk
                .create_folder(&folder)
                .doing("make the folder", &folder)?;
        }
        Ok(())
    }

    /// Syncs a journal, and the folders that hold its name and theirs where that was not done before.
    fn make_durable(&mut self, scope: &Scope, journal: &str) -> Result<(), ShelfError> {
        let path = under(&self.path, journal);
        self.disk.sync_file(&path).doing("store", &path)?;
        if self.durable.contains(journal) {
            return Ok(());
        }
        let mut name = journal;
        while !self.durable.contains(name) {
            let above = name.rsplit_once('/').map(|(above, _)| above);
            let folder = above.map_or_else(|| self.path.clone(), |a| under(&self.path, a));
            self.disk.sync_folder(&folder).doing("store", &folder)?;
            let Some(above) = above else { break };
            name = above;
        }
        let relative = folder_of(scope);
        for (end, _) in relative.match_indices('/').chain([(relative.len(), "")]) {
            self.durable.insert(relative[..end].to_owned());
        }
        self.durable.insert(journal.to_owned());
        Ok(())
    }

    /// Makes the own journal of a folder durable as it stands, and notes it.
    pub(crate) fn settle(&mut self, scope: &Scope) -> Result<(), ShelfError> {
        let Some(device) = self.device().cloned() else {
            return Ok(());
        };
        let journal = journal_of(scope, &device);
        self.make_durable(scope, &journal)?;
        if let Some(known) = self.known.get_mut(scope) {
            known.own.durable = true;
        }
        self.note(scope, &journal);
        Ok(())
    }

    /// Notes in the device's record how the journal stands. The line is stored already, so a failure is only reported.
    fn note(&mut self, scope: &Scope, journal: &str) {
        let (Ok(writer), Some(known)) = (&mut self.writer, self.known.get(scope)) else {
            return;
        };
        let written = writer.device.note(journal, known.own.mark());
        self.events
            .retain(|e| !matches!(e, Notice::RecordNotWritten { .. }));
        if let Err(error) = written {
            self.events.push(Notice::RecordNotWritten {
                why: error.to_string(),
            });
        }
    }
}
