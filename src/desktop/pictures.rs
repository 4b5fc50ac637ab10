//! Pictures: the newest pictures of this computer, read when they are taken in, and photos copied out of the shelf.

use std::fs::{self, File};
use std::io::Read as _;
use std::path::{Path, PathBuf};

use chrono::{DateTime, Local};
use directories::UserDirs;
use evenwall_app::photos::{FoundPicture, PictureSource};

/// How far below a folder pictures are looked for: cameras and sync programs put them into folders by year and month.
const DEEPEST: usize = 3;
/// Most names that are looked at, so that a folder of a lifetime cannot hold the window up.
const MOST_NAMES: usize = 50_000;
/// Ends of names that are offered. What the file really is, its bytes tell when it is taken in.
const ENDS: [&str; 6] = ["jpg", "jpeg", "png", "webp", "heic", "heif"];

/// The pictures of this computer.
#[derive(Debug, Default, Clone, Copy)]
pub struct DesktopPictures;

/// A folder's pictures and the folders in it; hidden ones are passed over.
fn look_into(
    folder: &Path,
    deep: usize,
    left: &mut usize,
    found: &mut Vec<FoundPicture>,
) -> std::io::Result<()> {
    for entry in fs::read_dir(folder)? {
        if *left == 0 {
            return Ok(());
        }
        *left -= 1;
        let Ok(entry) = entry else { continue };
        if entry.file_name().to_string_lossy().starts_with('.') {
            continue;
        }
        let (path, Ok(kind)) = (entry.path(), entry.file_type()) else {
            continue;
        };
        if kind.is_dir() {
            if deep > 0 {
                // One that may not be read is passed over like one that is not there.
                look_into(&path, deep - 1, left, found).unwrap_or_default();
            }
            continue;
        }
        let end = path.extension().map(|e| e.to_string_lossy().to_lowercase());
        if !end.is_some_and(|e| ENDS.contains(&e.as_str())) {
            continue;
        }
        let Ok(meta) = fs::metadata(&path) else {
            continue;
        };
        let Ok(changed) = meta.modified() else {
            continue;
        };
        found.push(FoundPicture {
            path,
            changed: DateTime::<Local>::from(changed).fixed_offset(),
            bytes: meta.len(),
        });
    }
    Ok(())
}

impl PictureSource for DesktopPictures {
    fn usual_folders(&self) -> Vec<PathBuf> {
        let home = UserDirs::new();
        let pictures = home
            .as_ref()
            .and_then(|h| h.picture_dir())
            .map(Path::to_owned);
        // A phone's camera roll, also where it is mounted under the home folder.
        let camera = home.as_ref().map(|h| h.home_dir().join("DCIM"));
        pictures
            .into_iter()
            .chain(camera)
            .filter(|f| f.is_dir())
            .collect()
    }

    fn newest(&self, folders: &[PathBuf], most: usize) -> Result<Vec<FoundPicture>, String> {
        let mut found = Vec::new();
        let mut left = MOST_NAMES;
        let mut refused = None;
        let mut listed = false;
        for folder in folders {
            match look_into(folder, DEEPEST, &mut left, &mut found) {
                Ok(()) => listed = true,
                Err(error) => {
                    refused = Some(format!(
                        "{} cannot be looked into ({error}): choose another folder",
                        folder.display()
                    ))
                }
            }
        }
        match refused {
            Some(sentence) if !listed => return Err(sentence),
            _ => {}
        }
        found.sort_by(|a, b| b.changed.cmp(&a.changed).then_with(|| a.path.cmp(&b.path)));
        found.dedup_by(|a, b| a.path == b.path);
        found.truncate(most);
        Ok(found)
    }

    fn read(&self, path: &Path, at_most: u64) -> Result<Vec<u8>, String> {
        let sentence = |error: std::io::Error| match error.kind() {
            std::io::ErrorKind::NotFound => {
                "the file is not there any more: choose it again".to_owned()
            }
            std::io::ErrorKind::PermissionDenied => {
                "the program may not read the file: copy it to another folder and choose that"
                    .to_owned()
            }
            _ => format!("the file cannot be read ({error}): copy it again"),
        };
        let file = File::open(path).map_err(sentence)?;
        let mut bytes = Vec::new();
        // One byte more than allowed tells a file that is too long without holding all of it.
        file.take(at_most.saturating_add(1))
            .read_to_end(&mut bytes)
            .map_err(sentence)?;
        Ok(bytes)
    }
}

/// Where photos that are saved out go: the picture folder, else that of downloads, else the home folder.
#[must_use]
pub fn out_folder() -> PathBuf {
    let user = UserDirs::new();
    let folder = user.as_ref().map(|u| {
        let usual = [u.picture_dir(), u.download_dir()];
        let there = usual.into_iter().flatten().find(|f| f.is_dir());
        there.unwrap_or_else(|| u.home_dir()).to_owned()
    });
    folder.unwrap_or_else(|| PathBuf::from("."))
}

/// Copies a photo into a folder under a name that is free there: "K07 2026-03-11 0912.jpg", then "... (2).jpg". Returns
/// where it went.
///
/// # Errors
/// A sentence where it cannot be written; a file that is there already is never touched.
pub fn copy_out(from: &Path, folder: &Path, name: &str) -> Result<PathBuf, String> {
    let refused = |error: std::io::Error| {
        format!(
            "the photo was not saved to {}: {error}; choose another folder",
            folder.display()
        )
    };
    let (stem, end) = name.rsplit_once('.').unwrap_or((name, "jpg"));
    let bytes = fs::read(from).map_err(refused)?;
    for n in 1..1000 {
        let free = if n == 1 {
            format!("{stem}.{end}")
        } else {
            format!("{stem} ({n}).{end}")
        };
        let path = folder.join(free);
        let file = File::options().write(true).create_new(true).open(&path);
        match file {
            Ok(mut file) => {
                use std::io::Write as _;
                if let Err(error) = file.write_all(&bytes) {
                    drop(file);
                    // A part of a photo helps nobody.
                    fs::remove_file(&path).unwrap_or_default();
                    return Err(refused(error));
                }
                return Ok(path);
            }
            Err(error) if error.kind() == std::io::ErrorKind::AlreadyExists => {}
            Err(error) => return Err(refused(error)),
        }
    }
    Err(format!(
        "there are a thousand photos of that name in {}: choose another folder",
        folder.display()
    ))
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn the_newest_pictures_of_a_folder_and_those_below_come_first() {
        let temp = tempfile::tempdir().unwrap();
        let below = temp.path().join("2026/03");
        fs::create_dir_all(&below).unwrap();
        let old = std::time::SystemTime::now() - std::time::Duration::from_secs(3600);
        for (name, is_old) in [
            ("a.JPG", true),
            ("2026/03/b.webp", false),
            ("notes.txt", false),
            (".hidden.jpg", false),
        ] {
            let file = File::create(temp.path().join(name)).unwrap();
            if is_old {
                file.set_modified(old).unwrap();
            }
        }
        let folders = [temp.path().to_owned(), temp.path().join("not there")];
        let found = DesktopPictures.newest(&folders, 10).unwrap();
        let names: Vec<_> = found
            .iter()
            .map(|f| f.path.file_name().unwrap().to_owned())
            .collect();
        assert_eq!(names, ["b.webp", "a.JPG"]);
        assert_eq!(DesktopPictures.newest(&folders, 1).unwrap().len(), 1);
        let sentence = DesktopPictures.newest(&folders[1..], 10).unwrap_err();
        assert!(sentence.contains("choose another folder"), "{sentence}");
    }

    #[test]
    fn no_more_is_read_than_tells_that_a_file_is_too_long() {
        let temp = tempfile::tempdir().unwrap();
        let path = temp.path().join("a.jpg");
        fs::write(&path, [7; 100]).unwrap();
        assert_eq!(DesktopPictures.read(&path, 10).unwrap().len(), 11);
        assert_eq!(DesktopPictures.read(&path, 100).unwrap().len(), 100);
        assert!(
            DesktopPictures
                .read(&temp.path().join("b"), 9)
                .unwrap_err()
                .contains("not there")
        );
    }

    #[test]
    fn a_photo_that_goes_out_never_takes_another_file_s_place() {
        let temp = tempfile::tempdir().unwrap();
        let from = temp.path().join("from.jpg");
        fs::write(&from, b"photo").unwrap();
        fs::write(temp.path().join("K07.jpg"), b"mine").unwrap();
        let went = copy_out(&from, temp.path(), "K07.jpg").unwrap();
        assert_eq!(went.file_name().unwrap(), "K07 (2).jpg");
        assert_eq!(fs::read(went).unwrap(), b"photo");
        assert_eq!(fs::read(temp.path().join("K07.jpg")).unwrap(), b"mine");
    }
}
