//! Loading: reads folders, and judges on the way whether this device's journals are as it left them.

use std::sync::atomic::{AtomicUsize, Ordering};

use evenwall_piece::ids::{DeviceId, Scope};

use crate::device::Own;
use crate::error::ShelfError;
use crate::folder::{Folder, journal_of, read_folder};
use crate::line::RawLine;
use crate::notice::Notice;
use crate::shelf::{Known, Shelf};

impl Shelf {
    /// All lines of one folder in the order of the fold. A folder that is not there has none.
    ///
    /// # Errors
    /// [`ShelfError`] where the file system refuses.
    pub fn load(&mut self, scope: &Scope) -> Result<Vec<RawLine>, ShelfError> {
        let (own, folder) = self.read(scope)?;
        let (lines, folder) = split(folder);
        self.accept(scope, own, &lines, folder)?;
        Ok(lines)
    }

    /// Reads every folder, several at a time, and hands each one's lines to `make`, which may run on another thread.
    /// Pieces without any journal (the folder of a crash) are left out.
    ///
    /// # Errors
    /// [`ShelfError`] where the file system refuses.
    pub fn load_all<T: Send>(
        &mut self,
        make: impl Fn(&Scope, Vec<RawLine>) -> T + Sync,
    ) -> Result<Vec<(Scope, T)>, ShelfError> {
        let scopes: Vec<Scope> = std::iter::once(Scope::Shop)
            .chain(self.pieces.iter().cloned().map(Scope::Piece))
            .collect();
        let next = AtomicUsize::new(0);
        let this = &*self;
        let work = || {
            let mut done = Vec::new();
            while let Some(scope) = scopes.get(next.fetch_add(1, Ordering::Relaxed)) {
                done.push((
                    scope,
                    this.read(scope).map(|(own, folder)| {
                        let (lines, folder) = split(folder);
                        let highest = highest(&lines, this.device());
                        (own, highest, make(scope, lines), folder)
                    }),
                ));
            }
            done
        };
        let threads = std::thread::available_parallelism()
            .map_or(1, usize::from)
            .clamp(1, 8);
        let mut all = std::thread::scope(|s| {
            let others: Vec<_> = (1..threads).map(|_| s.spawn(work)).collect();
            let mut all = work();
            for other in others {
                match other.join() {
                    Ok(done) => all.extend(done),
                    Err(panic) => std::panic::resume_unwind(panic),
                }
            }
            all
        });
        all.sort_by(|a, b| a.0.cmp(b.0));
        let mut made = Vec::with_capacity(all.len());
        for (scope, read) in all {
            let (own, highest, value, folder) = read?;
            let is_empty = folder.files.is_empty() && *scope != Scope::Shop;
            self.accept_counted(scope, own, highest, folder)?;
            if !is_empty {
                made.push((scope.clone(), value));
            }
        }
        Ok(made)
    }

    /// Reads a folder and compares this device's journal with its record.
    fn read(&self, scope: &Scope) -> Result<(Judged, Folder), ShelfError> {
        let id = self.device();
        let mut folder = read_folder(&*self.disk, &self.path, scope, id)?;
        let bytes = folder.own.take();
        let judged = match &self.writer {
            Err(_) => Judged {
                by: None,
                own: Some(Own::fresh()),
            },
            Ok(writer) => {
                let id = writer.device.id();
                let mark = writer.device.mark(&journal_of(scope, id));
                let clashes = folder
                    .notices
                    .iter()
                    .any(|n| matches!(n, Notice::Clash { device, .. } if device == id));
                let own = Own::check(mark, bytes.as_deref(), id).filter(|_| !clashes);
                Judged {
                    by: Some(id.clone()),
                    own,
                }
            }
        };
        Ok((judged, folder))
    }

    fn accept(
        &mut self,
        scope: &Scope,
        own: Judged,
        lines: &[RawLine],
        folder: Folder,
    ) -> Result<(), ShelfError> {
        let highest = highest(lines, self.device());
        self.accept_counted(scope, own, highest, folder)
    }

    /// Takes a folder that was read into what is known, and a new id where the own journal differs from its record.
    fn accept_counted(
        &mut self,
        scope: &Scope,
        judged: Judged,
        (highest_seq, own_n): (u64, u64),
        folder: Folder,
    ) -> Result<(), ShelfError> {
        let same_id = judged.by.as_ref() == self.device();
        let own = match judged.own {
            // Judged before a new id was taken on account of another folder: nothing is written under that one yet.
            _ if !same_id => Own::fresh(),
            Some(mut own) => {
                own.n = own.n.max(own_n);
                own
            }
            None => {
                self.take_new_id(scope)?;
                Own::fresh()
            }
        };
        let lags = own.len > 0 && !own.durable;
        let known = Known {
            files: folder.files,
            highest_seq,
            own,
            notices: folder.notices,
        };
        self.known.insert(scope.clone(), known);
        if let Scope::Piece(id) = scope
            && !self.known[scope].files.is_empty()
        {
            self.pieces.insert(id.clone());
        }
        if lags && self.writer.is_ok() {
            // Lines that are shown must be durable, also those of a start that was killed before its sync.
            self.settle(scope)?;
        }
        Ok(())
    }

    /// From now on this device writes under another id.
    pub(crate) fn take_new_id(&mut self, because_of: &Scope) -> Result<(), ShelfError> {
        let Ok(writer) = &mut self.writer else {
            return Ok(());
        };
        let old = writer.device.id().clone();
        writer.device.take_new_id()?;
        let new = writer.device.id().clone();
        self.events.push(Notice::NewDeviceId {
            file: journal_of(because_of, &old),
            old,
            new,
        });
        for known in self.known.values_mut() {
            known.own = Own::fresh();
        }
        Ok(())
    }
}

/// This device's journal as judged under an id; `own: None` where it is not as the device left it.
struct Judged {
    by: Option<DeviceId>,
    own: Option<Own>,
}

fn split(mut folder: Folder) -> (Vec<RawLine>, Folder) {
    (std::mem::take(&mut folder.lines), folder)
}

/// The highest `seq` of all and the highest `n` of this device.
fn highest(lines: &[RawLine], own: Option<&DeviceId>) -> (u64, u64) {
    let seq = lines.last().map_or(0, |l| l.seq);
    let n = lines
        .iter()
        .filter(|l| Some(&l.id.device) == own)
        .map(|l| l.id.n)
        .max()
        .unwrap_or(0);
    (seq, n)
}
