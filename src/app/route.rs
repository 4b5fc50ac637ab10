//! Route: which page is shown. Four tabs, and a stack of pages about one thing on top of them.

use evenwall_piece::ids::{FlawId, PhotoId, PieceId};
use evenwall_piece::photo::PhotoOn;

/// A tab at the bottom of a phone, in the rail of a tablet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tab {
    /// What is due.
    Today,
    /// All pieces.
    Pieces,
    /// What wall to leave, before the tool touches wood.
    Plan,
    /// The workshop.
    Shop,
}

impl Tab {
    /// All tabs, in the order in which they stand.
    pub const ALL: [Self; 4] = [Self::Today, Self::Pieces, Self::Plan, Self::Shop];

    /// Stable key, used by the screens.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Today => "today",
            Self::Pieces => "pieces",
            Self::Plan => "plan",
            Self::Shop => "shop",
        }
    }
}

/// A page on top of a tab.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Page {
    /// A new piece is being entered.
    NewPiece,
    /// One piece.
    Piece(PieceId),
    /// Its details form.
    Details(PieceId),
    /// Its stages: move forward, back, skip; half-turned; method; pause.
    Stages(PieceId),
    /// How it ended.
    Ending(PieceId),
    /// Measuring its wall.
    Wall(PieceId),
    /// The result of measuring.
    WallSummary(PieceId),
    /// Its outline, stations and outside diameters.
    Outline(PieceId),
    /// Its flaws.
    Flaws(PieceId),
    /// One flaw; `None`: a new one.
    Flaw(PieceId, Option<FlawId>),
    /// The photos of one thing about it.
    Photos(PieceId, PhotoOn),
    /// One photo.
    Photo(PieceId, PhotoId),
    /// Two photos of one flaw.
    Compare(PieceId, FlawId),
    /// How it dries.
    Drying(PieceId),
    /// Weighing it.
    Weigh(PieceId),
    /// True: cracks, oval, spigot, decision.
    Truing(PieceId),
    /// Finish: grits, coats, size, signature.
    Finishing(PieceId),
    /// What is reckoned for it: the wall to leave and the rest.
    PlanOf(PieceId),
    /// Everything recorded about it.
    Diary(PieceId),
    /// One bag a screen.
    BagRound,
    /// One row a piece.
    WeighRound,
    /// Going away, and coming back.
    Away,
    /// After a long silence.
    CatchUp,
    /// Its report, tag and calendar.
    Out(PieceId),
    /// Own pieces counted by how they dried.
    DriedWell,
    /// A page of Shop, by its key.
    ShopPage(&'static str),
}

impl Page {
    /// Stable key, used by the screens.
    #[must_use]
    pub const fn key(&self) -> &'static str {
        match self {
            Self::NewPiece => "new-piece",
            Self::Piece(_) => "piece",
            Self::Details(_) => "details",
            Self::Stages(_) => "stages",
            Self::Ending(_) => "ending",
            Self::Wall(_) => "wall",
            Self::WallSummary(_) => "wall-summary",
            Self::Outline(_) => "outline",
            Self::Flaws(_) => "flaws",
            Self::Flaw(..) => "flaw",
            Self::Photos(..) => "photos",
            Self::Photo(..) => "photo",
            Self::Compare(..) => "compare",
            Self::Drying(_) => "drying",
            Self::Weigh(_) => "weigh",
            Self::Truing(_) => "truing",
            Self::Finishing(_) => "finishing",
            Self::PlanOf(_) => "plan-of",
            Self::Diary(_) => "diary",
            Self::BagRound => "bag-round",
            Self::WeighRound => "weigh-round",
            Self::Away => "away",
            Self::CatchUp => "catch-up",
            Self::DriedWell => "dried-well",
            // Made of the same rows.
            Self::ShopPage(_) | Self::Out(_) => "shop-page",
        }
    }

    /// The piece the page is about.
    #[must_use]
    pub const fn piece(&self) -> Option<&PieceId> {
        match self {
            Self::Piece(id)
            | Self::Details(id)
            | Self::Stages(id)
            | Self::Ending(id)
            | Self::Wall(id)
            | Self::WallSummary(id)
            | Self::Outline(id)
            | Self::Flaws(id)
            | Self::Flaw(id, _)
            | Self::Photos(id, _)
            | Self::Photo(id, _)
            | Self::Compare(id, _)
            | Self::Drying(id)
            | Self::Weigh(id)
            | Self::Truing(id)
            | Self::Finishing(id)
            | Self::PlanOf(id)
            | Self::Diary(id)
            | Self::Out(id) => Some(id),
            _ => None,
        }
    }

    /// True where keys must not move under the finger, so that the page shows undo itself.
    #[must_use]
    pub const fn shows_undo_itself(&self) -> bool {
        matches!(self, Self::Wall(_) | Self::BagRound | Self::WeighRound)
    }
}

/// Where the turner is.
#[derive(Debug, Clone, PartialEq)]
pub struct Route {
    /// The tab below.
    pub tab: Tab,
    /// Pages on top of it, the last is shown.
    pub pages: Vec<Page>,
}

impl Default for Route {
    fn default() -> Self {
        Self {
            tab: Tab::Today,
            pages: Vec::new(),
        }
    }
}

impl Route {
    /// The page on top.
    #[must_use]
    pub fn page(&self) -> Option<&Page> {
        self.pages.last()
    }

    /// Goes to a tab, leaving the pages on top of it.
    pub fn go_tab(&mut self, tab: Tab) {
        self.tab = tab;
        self.pages.clear();
    }

    /// Opens a page on top. A page that is already in the stack is gone back to, so that back never circles.
    pub fn open(&mut self, page: Page) {
        match self.pages.iter().position(|p| *p == page) {
            Some(place) => self.pages.truncate(place + 1),
            None => self.pages.push(page),
        }
    }

    /// Opens a page in place of the one on top.
    pub fn replace(&mut self, page: Page) {
        self.pages.pop();
        self.open(page);
    }

    /// Goes back one page. Returns false where there was none to leave.
    pub fn back(&mut self) -> bool {
        self.pages.pop().is_some()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn back_never_circles() {
        let mut r = Route::default();
        r.open(Page::BagRound);
        r.open(Page::Away);
        r.open(Page::BagRound);
        assert_eq!(r.pages, [Page::BagRound]);
        assert!(r.back());
        assert!(!r.back());
    }
}
