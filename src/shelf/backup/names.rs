//! Names: which names a file of a backup may have, and what the file is by its name.

use evenwall_piece::ids::{PieceId, Scope};

/// What a file of a backup is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Part {
    /// A journal of the shop or of a piece.
    Journal(Scope),
    /// A photo of a piece, with its file name.
    Photo(PieceId, String),
    /// `shelf.json`.
    ShelfFile,
    /// Something that was in the folder too; it stays in the backup.
    Other,
}

/// What is wrong with a name, in a few words; `None` where it stays inside the folder it is put into.
pub(super) fn fault(name: &str) -> Option<&'static str> {
    if name.is_empty() || name.len() > 1024 {
        return Some("a name of no or too many letters");
    }
    if name.starts_with('/') || name.contains('\\') || name.contains(':') {
        return Some("a name that leads to another place");
    }
    if name.chars().any(char::is_control) {
        return Some("a name with control characters");
    }
    for part in name.split('/') {
        if part.is_empty() || part == "." || part == ".." {
            return Some("a name that leads to another place");
        }
        if part.starts_with('.') {
            return Some("a hidden file");
        }
    }
    None
}

/// What a file is by its name in the shelf.
pub(super) fn part(name: &str) -> Part {
    let parts: Vec<&str> = name.split('/').collect();
    let is_journal = |name: &str| {
        name.len() > 6 && name.as_bytes()[name.len() - 6..].eq_ignore_ascii_case(b".jsonl")
    };
    let is_photo = |name: &str| {
        name.strip_suffix(".jpg").is_some_and(|stem| {
            !stem.is_empty()
                && stem
                    .bytes()
                    .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-')
        })
    };
    match parts.as_slice() {
        ["shelf.json"] => Part::ShelfFile,
        ["shop", file] if is_journal(file) => Part::Journal(Scope::Shop),
        ["pieces", id, file] if is_journal(file) => {
            PieceId::new(id).map_or(Part::Other, |id| Part::Journal(Scope::Piece(id)))
        }
        ["pieces", id, "photos", file] if is_photo(file) => {
            PieceId::new(id).map_or(Part::Other, |id| Part::Photo(id, (*file).to_owned()))
        }
        _ => Part::Other,
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;

    #[test]
    fn a_name_that_leaves_its_folder_is_found_out() {
        for bad in [
            "../x",
            "a/../../x",
            "/etc/passwd",
            "a//b",
            "C:/x",
            "a\\..\\x",
            "",
            ".",
            "a/.",
            "a\nb",
            ".ssh/keys",
            "pieces/.hidden",
        ] {
            assert!(fault(bad).is_some(), "{bad}");
        }
        for good in [
            "shelf.json",
            "shop/a.jsonl",
            "pieces/k07/a (2).jsonl",
            "pieces/k07/photos/ab.jpg",
            "notes.txt",
        ] {
            assert_eq!(fault(good), None, "{good}");
        }
    }

    #[test]
    fn only_journals_and_photos_of_legal_ids_are_put_back() {
        let k07 = PieceId::new("k07").unwrap();
        assert_eq!(part("shop/a.jsonl"), Part::Journal(Scope::Shop));
        assert_eq!(
            part("pieces/k07/A copy.JSONL"),
            Part::Journal(Scope::Piece(k07.clone()))
        );
        assert_eq!(
            part("pieces/k07/photos/0af.jpg"),
            Part::Photo(k07, "0af.jpg".into())
        );
        assert_eq!(part("shelf.json"), Part::ShelfFile);
        for other in [
            "pieces/K07/a.jsonl",
            "pieces/k07/photos/x.exe",
            "pieces/k07/photos/A.jpg",
            "run.desktop",
            "shop/a.sh",
        ] {
            assert_eq!(part(other), Part::Other, "{other}");
        }
    }
}
