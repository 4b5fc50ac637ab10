//! Deletion: whether a deleted piece stays out of sight.

use crate::fact::PieceFact;
use crate::ids::{DeviceId, LineId};

/// The last deletion, and how far each device has recorded.
#[derive(Default)]
pub(super) struct Deletion {
    last: Option<(u64, LineId)>,
    /// By device: the greatest `seq` and the greatest `n` of its lines that count and record something.
    recorded: Vec<(DeviceId, u64, u64)>,
}

impl Deletion {
    /// The piece was deleted by this line.
    pub(super) fn deleted(&mut self, seq: u64, line: &LineId) {
        self.last = Some((seq, line.clone()));
    }

    /// The piece was brought back on purpose.
    pub(super) fn undeleted(&mut self) {
        self.last = None;
    }

    /// A line that counts records something.
    pub(super) fn recorded(&mut self, seq: u64, line: &LineId) {
        match self.recorded.iter_mut().find(|(d, ..)| *d == line.device) {
            Some((_, s, n)) => {
                *s = seq.max(*s);
                *n = line.n.max(*n);
            }
            None => self.recorded.push((line.device.clone(), seq, line.n)),
        }
    }

    /// True where something was recorded after the deletion. Another device that had read the deletion writes a higher
    /// `seq` than its own, so an equal one was written without knowing of it.
    pub(super) fn overtaken(&self) -> bool {
        self.last.as_ref().is_some_and(|(seq, line)| {
            self.recorded.iter().any(|(device, s, n)| {
                if *device == line.device {
                    *n > line.n
                } else {
                    s >= seq
                }
            })
        })
    }
}

/// True for what is work on the piece: neither deleting, nor bringing back, nor taking back. Undo and redo of a deletion
/// are retractions and must not look like work done since; nor is a forecast that the program wrote by itself.
pub(super) fn is_work(fact: &PieceFact) -> bool {
    !matches!(
        fact,
        PieceFact::Deleted
            | PieceFact::Undeleted
            | PieceFact::Retracts(_)
            | PieceFact::ForecastMade(_)
    )
}
