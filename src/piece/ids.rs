//! Ids: short lower-case names that survive file systems which fold case.

use std::fmt;

/// Why a text cannot be an id.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("'{found}' cannot be an id: 1 to 64 of a-z, 0-9 and - are allowed")]
pub struct IdError {
    /// The text as it was found.
    pub found: String,
}

macro_rules! id {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Debug, Clone, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub struct $name(String);

        impl $name {
            /// Takes 1 to 64 characters of `a-z`, `0-9` and `-`.
            ///
            /// # Errors
            /// [`IdError`] for anything else.
            pub fn new(text: &str) -> Result<Self, IdError> {
                let legal = !text.is_empty()
                    && text.len() <= 64
                    && text.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-');
                if legal {
                    Ok(Self(text.to_owned()))
                } else {
                    Err(IdError { found: text.chars().take(80).collect() })
                }
            }

            /// The id as text.
            #[must_use]
            pub fn as_str(&self) -> &str {
                &self.0
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str(&self.0)
            }
        }
    };
}

id!(
    /// One device that writes to the shelf.
    DeviceId
);
id!(
    /// One piece; also the name of its folder.
    PieceId
);
id!(
    /// One flaw of a piece, unique within the piece.
    FlawId
);
id!(
    /// One photo of a piece, unique within the piece.
    PhotoId
);

/// One line of a journal: the device that wrote it and its count in that file.
#[derive(Debug, Clone, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct LineId {
    /// Who wrote it.
    pub device: DeviceId,
    /// 1, 2, 3... in that device's file of that piece (or of the shop).
    pub n: u64,
}

/// One fact of a line: what corrections point at.
#[derive(Debug, Clone, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct EntryId {
    /// The line it stands in.
    pub line: LineId,
    /// Its place in the line, counted from 0.
    pub part: u16,
}

/// Whose journal a line belongs to.
#[derive(Debug, Clone, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Scope {
    /// The workshop's facts.
    Shop,
    /// The diary of one piece.
    Piece(PieceId),
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_id_is_lower_case_short_and_plain() {
        assert!(PieceId::new("k07-3f2a").is_ok());
        for bad in ["", "K07", "a/b", "..", "ä", &"x".repeat(65)] {
            assert!(PieceId::new(bad).is_err(), "{bad}");
        }
    }
}
