//! Filter: which pieces are listed: those on the go, those of a stage, and the ends apart.

use evenwall_piece::fact::End;
use evenwall_piece::piece::Piece;
use evenwall_piece::stage::Stage;

/// Which pieces are listed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Filter {
    /// All that are on the go.
    #[default]
    All,
    /// Those on the go in a stage.
    Stage(Stage),
    /// Finished ones.
    Finished,
    /// Lost ones.
    Lost,
    /// Given away, left as they are, or not to be found.
    OtherEnds,
    /// Deleted ones, which can be brought back.
    Deleted,
}

impl Filter {
    /// All filters in the order in which they are offered.
    pub fn all() -> impl Iterator<Item = Self> {
        let stages = Stage::ALL.iter().copied().map(Self::Stage);
        let ends = [Self::Finished, Self::Lost, Self::OtherEnds, Self::Deleted];
        std::iter::once(Self::All).chain(stages).chain(ends)
    }

    /// Stable key, used by the screens.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::All => "all",
            Self::Stage(stage) => stage.key(),
            Self::Finished => "finished",
            Self::Lost => "lost",
            Self::OtherEnds => "other-ends",
            Self::Deleted => "deleted",
        }
    }

    /// The filter with this key, or `None`.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::all().find(|f| f.key() == key)
    }

    /// True where the piece belongs to it.
    #[must_use]
    pub fn holds(self, piece: &Piece) -> bool {
        if piece.deleted.is_some() {
            return self == Self::Deleted;
        }
        match (self, &piece.end) {
            (Self::All, None) => true,
            (Self::Stage(stage), None) => piece.stage() == stage,
            (Self::Finished, Some((_, End::Finished)))
            | (Self::Lost, Some((_, End::Lost { .. }))) => true,
            (Self::OtherEnds, Some((_, end))) => !matches!(end, End::Finished | End::Lost { .. }),
            _ => false,
        }
    }
}
