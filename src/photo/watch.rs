//! Watch: tells how far the work is, and whether it was stopped; bytes handed to a decoder pass by it.

use std::io::{self, Read};
use std::sync::atomic::{AtomicBool, Ordering};

use crate::error::PhotoError;

/// Decoders look at the watch every so many bytes.
const EVERY: usize = 64 * 1024;

/// Progress out, stop in.
pub struct Watch<'a> {
    cancel: &'a AtomicBool,
    progress: &'a mut dyn FnMut(f32),
}

impl<'a> Watch<'a> {
    /// `cancel` stops the work within milliseconds while decoding; `progress` is told 0 to 1, never less than before.
    pub fn new(cancel: &'a AtomicBool, progress: &'a mut dyn FnMut(f32)) -> Self {
        Self { cancel, progress }
    }

    /// Tells how far the work is.
    ///
    /// # Errors
    /// [`PhotoError::Cancelled`] where it was stopped.
    pub fn at(&mut self, part: f32) -> Result<(), PhotoError> {
        self.go_on()?;
        (self.progress)(part);
        Ok(())
    }

    /// Goes on unless it was stopped.
    ///
    /// # Errors
    /// [`PhotoError::Cancelled`] where it was stopped.
    pub fn go_on(&self) -> Result<(), PhotoError> {
        if self.cancel.load(Ordering::Relaxed) {
            Err(PhotoError::Cancelled)
        } else {
            Ok(())
        }
    }
}

/// Reads bytes from memory and looks at the watch on the way. `from` and `to` are the parts of the whole work between
/// which the reading lies.
pub(crate) struct Watched<'a, 'w> {
    rest: &'a [u8],
    whole: usize,
    until_look: usize,
    watch: &'w mut Watch<'a>,
    from: f32,
    to: f32,
}

impl<'a, 'w> Watched<'a, 'w> {
    pub fn new(bytes: &'a [u8], watch: &'w mut Watch<'a>, from: f32, to: f32) -> Self {
        Self {
            rest: bytes,
            whole: bytes.len(),
            until_look: EVERY,
            watch,
            from,
            to,
        }
    }
}

impl Read for Watched<'_, '_> {
    #[inline]
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        let n = self.rest.read(into)?;
        if n < self.until_look {
            self.until_look -= n;
            return Ok(n);
        }
        self.until_look = EVERY;
        #[allow(clippy::cast_precision_loss)] // a share of a bar needs no better
        let share = 1.0 - self.rest.len() as f32 / self.whole.max(1) as f32;
        match self.watch.at(self.from + (self.to - self.from) * share) {
            Ok(()) => Ok(n),
            Err(stopped) => Err(io::Error::other(stopped)),
        }
    }
}
