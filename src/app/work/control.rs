//! Control: calls a work off, and tells how far it is, from either side.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};

/// Shared by a work and whoever started it. Clones are the same one.
#[derive(Debug, Clone, Default)]
pub struct Control {
    shared: Arc<Shared>,
}

#[derive(Debug, Default)]
struct Shared {
    cancelled: AtomicBool,
    done: AtomicU32,
    of: AtomicU32,
}

impl Control {
    /// Calls the work off: it ends at its next look.
    pub fn cancel(&self) {
        self.shared.cancelled.store(true, Ordering::Relaxed);
    }

    /// True once it was called off; a long work looks now and then.
    #[must_use]
    pub fn cancelled(&self) -> bool {
        self.shared.cancelled.load(Ordering::Relaxed)
    }

    /// Says how far it is.
    pub fn progress(&self, done: u32, of: u32) {
        self.shared.done.store(done, Ordering::Relaxed);
        self.shared.of.store(of, Ordering::Relaxed);
    }

    /// How far it is: done, of; of 0 where it does not say.
    #[must_use]
    pub fn how_far(&self) -> (u32, u32) {
        (
            self.shared.done.load(Ordering::Relaxed),
            self.shared.of.load(Ordering::Relaxed),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_one_side_says_the_other_hears() {
        let (here, there) = {
            let c = Control::default();
            (c.clone(), c)
        };
        assert!(!there.cancelled());
        here.cancel();
        assert!(there.cancelled());
        there.progress(3, 7);
        assert_eq!(here.how_far(), (3, 7));
    }
}
