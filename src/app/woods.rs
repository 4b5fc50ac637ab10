//! Woods: a stored wood as the turner calls it, and what is known of it that decides something.

use evenwall_piece::detail::DetailField;
use evenwall_piece::piece::Piece;
use evenwall_piece::shop::OwnWood;
use evenwall_wood::woods::Wood;
use evenwall_wood::woods_table::table;

use crate::app::App;

/// A text with its first letter large, for a line of its own.
#[must_use]
pub fn with_capital(text: &str) -> String {
    let mut letters = text.chars();
    letters
        .next()
        .map(|first| first.to_uppercase().chain(letters).collect())
        .unwrap_or_default()
}

/// A wood that a stored text stands for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Known<'a> {
    /// A wood of the built-in table.
    Table(&'static Wood),
    /// A wood of the turner's own.
    Own(&'a OwnWood),
}

impl Known<'_> {
    /// What is stored for it.
    #[must_use]
    pub fn key(&self) -> &str {
        match self {
            Self::Table(wood) => &wood.key,
            Self::Own(wood) => &wood.id,
        }
    }

    /// Its name, with a capital.
    #[must_use]
    pub fn name(&self) -> String {
        with_capital(match self {
            Self::Table(wood) => &wood.name,
            Self::Own(wood) => &wood.name,
        })
    }

    /// Its botanical name; empty for an own wood.
    #[must_use]
    pub fn botanical(&self) -> &str {
        match self {
            Self::Table(wood) => &wood.botanical,
            Self::Own(_) => "",
        }
    }

    /// True where it is known to mould easily in a bag.
    #[must_use]
    pub const fn moulds_easily(&self) -> bool {
        match self {
            Self::Table(wood) => wood.moulds_easily,
            Self::Own(wood) => wood.moulds_easily,
        }
    }
}

impl App {
    /// The wood that a stored text stands for: by its key, else by its name; `None` for a name that is in neither list.
    #[must_use]
    pub fn known_wood(&self, stored: &str) -> Option<Known<'_>> {
        let stored = stored.trim();
        let lower = stored.to_lowercase();
        let named = |name: &str| name.to_lowercase() == lower;
        let own = &self.shop().woods;
        let by_key = || {
            own.iter()
                .find(|w| w.id == stored)
                .map(Known::Own)
                .or_else(|| table().iter().find(|w| w.key == stored).map(Known::Table))
        };
        let by_name = || {
            own.iter()
                .find(|w| named(&w.name))
                .map(Known::Own)
                .or_else(|| table().iter().find(|w| named(&w.name)).map(Known::Table))
        };
        by_key().or_else(by_name)
    }

    /// The name of a wood as stored, with a capital: that of the list, else as it was typed.
    #[must_use]
    pub fn wood_name(&self, stored: &str) -> String {
        self.known_wood(stored)
            .map_or_else(|| with_capital(stored.trim()), |wood| wood.name())
    }

    /// The name of a piece's wood; empty where it is not said.
    #[must_use]
    pub fn wood_of(&self, piece: &Piece) -> String {
        piece
            .details
            .text(DetailField::Wood)
            .map(|stored| self.wood_name(stored))
            .unwrap_or_default()
    }

    /// True where the piece's wood is known to mould easily in a bag. Common practice, no source.
    #[must_use]
    pub fn moulds_easily(&self, piece: &Piece) -> bool {
        piece
            .details
            .text(DetailField::Wood)
            .and_then(|stored| self.known_wood(stored))
            .is_some_and(|wood| wood.moulds_easily())
    }
}
