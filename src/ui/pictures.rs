//! Pictures: files become images for the screen, the last ones used are kept, within a fixed room.
//!
//! A thumbnail takes about 230 kB as pixels, a photo as large as it is stored about 15 MB: of thousands, only those on
//! screen and those seen just before are held.

use std::cell::RefCell;
use std::collections::VecDeque;
use std::sync::atomic::AtomicBool;

use evenwall_photo::limits::Limits;
use evenwall_photo::prepare::shown;
use evenwall_photo::watch::Watch;
use slint::{Image, Rgb8Pixel, SharedPixelBuffer};

/// Room for pixels, bytes.
const ROOM: usize = 48_000_000;
/// Longest side of a thumbnail, pixels.
pub const SMALL: u16 = 320;
/// Longest side of a photo that fits the screen, pixels: twice a phone's width, so that hairlines are not jumped over.
pub const FITTING: u16 = 1280;
/// Longest side of a photo as it is stored, pixels.
pub const WHOLE: u16 = 2560;

struct Kept {
    name: String,
    longest: u16,
    /// Length of what it was made from: a file that arrives later is looked at anew.
    from: usize,
    /// Nothing where it is no picture.
    image: Option<Image>,
    bytes: usize,
}

#[derive(Default)]
struct Pictures {
    kept: VecDeque<Kept>,
    bytes: usize,
}

impl Pictures {
    fn find(&mut self, name: &str, longest: u16, from: usize) -> Option<Option<Image>> {
        let same = |k: &Kept| k.longest == longest && k.from == from && k.name == name;
        let place = self.kept.iter().position(same)?;
        let kept = self.kept.remove(place)?;
        let image = kept.image.clone();
        self.kept.push_back(kept);
        Some(image)
    }

    fn keep(&mut self, kept: Kept) {
        self.bytes += kept.bytes;
        self.kept.push_back(kept);
        // The last one stays, however large.
        while self.bytes > ROOM && self.kept.len() > 1 {
            if let Some(oldest) = self.kept.pop_front() {
                self.bytes -= oldest.bytes;
            }
        }
    }
}

thread_local! {
    static PICTURES: RefCell<Pictures> = RefCell::default();
}

fn decoded(bytes: &[u8], longest: u16) -> Option<(Image, usize)> {
    let never = AtomicBool::new(false);
    let mut nobody = |_| {};
    let watch = &mut Watch::new(&never, &mut nobody);
    let pixels = shown(bytes, longest, &Limits::default(), watch).ok()?;
    let buffer =
        SharedPixelBuffer::<Rgb8Pixel>::clone_from_slice(&pixels.rgb, pixels.width, pixels.height);
    Some((Image::from_rgb8(buffer), pixels.rgb.len()))
}

fn kept_or(
    name: &str,
    longest: u16,
    from: usize,
    bytes: impl FnOnce() -> Option<Vec<u8>>,
) -> Option<Image> {
    if let Some(found) = PICTURES.with_borrow_mut(|p| p.find(name, longest, from)) {
        return found;
    }
    let made = bytes().and_then(|bytes| decoded(&bytes, longest));
    let (image, size) = made.map_or((None, 0), |(image, size)| (Some(image), size));
    PICTURES.with_borrow_mut(|p| {
        p.keep(Kept {
            name: name.to_owned(),
            longest,
            from,
            image: image.clone(),
            bytes: size,
        });
    });
    image
}

/// The picture in a file, at most `longest` a side; `None` where there is none or it is damaged.
#[must_use]
pub fn of_file(path: &str, longest: u16) -> Option<Image> {
    if path.is_empty() {
        return None;
    }
    let len = usize::try_from(std::fs::metadata(path).ok()?.len()).ok()?;
    kept_or(path, longest, len, || std::fs::read(path).ok())
}

/// The small picture made of a file, from its JPEG.
#[must_use]
pub fn of_bytes(name: &str, jpeg: &[u8]) -> Option<Image> {
    kept_or(name, SMALL, jpeg.len(), || Some(jpeg.to_vec()))
}
