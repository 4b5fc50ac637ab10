//! Photos of Evenwall: the bytes of a picture become a small upright JPEG that carries nothing but the picture.
//!
//! No files, no clock, no threads: bytes in, bytes out. [`prepare::prepare`] takes a JPEG, PNG or WebP, told by its
//! content and never by its name, and gives
//!
//! * a JPEG of at most [`limits::Limits::longest_px`] a side, upright by its orientation tag, without any metadata:
//!   no place, no camera, no profile, no thumbnail of the whole scene;
//! * a thumbnail of it;
//! * when it was taken, where the file says so;
//! * the SHA-256 of the file it came from and of what is to be stored.
//!
//! The same file gives the same bytes every time. What cannot be taken is refused with a sentence ([`error::PhotoError`]),
//! and before anything is decoded the header says what it would cost ([`limits::Limits`]). Colours are taken for sRGB:
//! a profile in the file is dropped with the rest, so that colours of a wider space come out a little duller.

pub mod drawing;
pub mod error;
pub mod exif;
mod heads;
mod jpeg;
pub mod kind;
pub mod limits;
mod pixels;
mod png_file;
pub mod prepare;
pub mod taken;
pub mod watch;
mod webp;
