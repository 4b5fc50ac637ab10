//! Viewer: one photo as large as fits, what is drawn on it, and the ways on.

use evenwall_piece::ids::PhotoId;
use evenwall_piece::photo::PhotoOn;
use evenwall_piece::piece::Moment;

use super::marking::MarkingView;
use super::tiles::PhotoTile;
use crate::app::App;
use crate::flaws::TypedView;
use crate::piece::view::HeadView;
use crate::route::Page;

/// The words of the viewer's buttons.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ViewerLabels {
    /// To the photo before.
    pub previous: String,
    /// To the one after.
    pub next: String,
    /// Larger.
    pub larger: String,
    /// Smaller.
    pub smaller: String,
    /// Draw on it.
    pub mark: String,
    /// Save it as a plain file.
    pub save_out: String,
    /// Two side by side; empty where there are not two of one flaw.
    pub compare: String,
    /// Remove it; empty where it is removed or cannot be.
    pub remove: String,
    /// Bring it back; empty where it is not removed.
    pub bring_back: String,
    /// The word for closing.
    pub close: String,
}

/// The tools while it is drawn on.
#[derive(Debug, Clone, PartialEq)]
pub struct ToolsView {
    /// What is drawn.
    pub marking: MarkingView,
    /// The tools: key and word, the one in hand first told by `marking.tool`.
    pub tools: Vec<(&'static str, String)>,
    /// The known length; shown while the scale is in hand.
    pub known: TypedView,
    /// "Crack 22 mm"; empty while it is not measured.
    pub length: String,
    /// Clears what the tool drew.
    pub clear: String,
    /// Records it.
    pub save: String,
    /// Leaves it.
    pub leave: String,
}

/// The page of one photo.
#[derive(Debug, Clone, PartialEq)]
pub struct ViewerView {
    /// The head: what it is of, when it was taken.
    pub head: HeadView,
    /// The photo.
    pub photo: PhotoTile,
    /// What a screen reader says of it.
    pub spoken: String,
    /// Said in its place where it is not here, or below it where it is removed; else empty.
    pub note: String,
    /// Said where its file is there and cannot be shown.
    pub damaged: String,
    /// There is one before it.
    pub has_previous: bool,
    /// There is one after it.
    pub has_next: bool,
    /// The tools, while it is drawn on.
    pub tools: Option<ToolsView>,
    /// The words of the buttons.
    pub labels: ViewerLabels,
}

impl App {
    /// The photos that the viewer goes through, the newest first, as in the grid.
    fn viewer_order(&self) -> Option<(PhotoId, Vec<PhotoId>)> {
        let Some(Page::Photo(piece, photo)) = self.route().page() else {
            return None;
        };
        let piece = self.piece(piece)?;
        let on = &piece.photo(photo)?.note.on;
        let all = piece.photos_on(on);
        let order = all.iter().rev().map(|p| p.note.photo.clone()).collect();
        Some((photo.clone(), order))
    }

    /// Goes so many photos on; stays at either end.
    pub(super) fn viewer_step(&mut self, by: i8, now: Moment) {
        let Some((photo, order)) = self.viewer_order() else {
            return;
        };
        let place = order.iter().position(|p| *p == photo).unwrap_or(0);
        let next = place
            .checked_add_signed(isize::from(by))
            .and_then(|n| order.get(n));
        let (Some(next), Some(Page::Photo(piece, _))) = (next, self.route().page()) else {
            return;
        };
        let page = Page::Photo(piece.clone(), next.clone());
        self.undo.hide();
        self.route.replace(page);
        self.entered(now);
    }

    /// The page of one photo; `None` where the piece or the photo is gone.
    #[must_use]
    pub fn viewer_view(&self, now: Moment) -> Option<ViewerView> {
        let Some(Page::Photo(id, photo)) = self.route().page() else {
            return None;
        };
        let piece = self.piece(id)?;
        let found = piece.photo(photo)?;
        let tile = self.photos_tile(id, photo, now)?;
        let (photo, order) = self.viewer_order()?;
        let place = order.iter().position(|p| *p == photo);
        let words = self.words();
        let removed = found.removed.is_some();
        let can = piece.deleted.is_none() && self.store.read_only().is_none();
        let title = self.photo_on_title(piece, &found.note.on);
        let mut head = self.inner_head(piece, "photos-title");
        head.title.clone_from(&title);
        head.subtitle = match place {
            Some(place) if order.len() > 1 => {
                let count = words.with(
                    "count-n-of-m",
                    &[("n", (place + 1).into()), ("m", order.len().into())],
                );
                format!("{}, {count}", tile.when)
            }
            _ => tile.when.clone(),
        };
        let button = |shown: bool, id: &str| {
            if shown { words.text(id) } else { String::new() }
        };
        let is_flaw = matches!(found.note.on, PhotoOn::Flaw(_));
        let here = !tile.path.is_empty();
        Some(ViewerView {
            spoken: [title.as_str(), tile.when.as_str(), tile.length.as_str()]
                .into_iter()
                .filter(|t| !t.is_empty())
                .collect::<Vec<_>>()
                .join(", "),
            note: if removed {
                words.with(
                    "photos-is-removed",
                    &[("days", evenwall_piece::tidying::TIDY_AFTER_DAYS.into())],
                )
            } else {
                tile.note.clone()
            },
            damaged: words.text("photos-damaged"),
            has_previous: place.is_some_and(|p| p > 0),
            has_next: place.is_some_and(|p| p + 1 < order.len()),
            tools: self.tools_view(),
            labels: ViewerLabels {
                previous: words.text("photos-previous"),
                next: words.text("photos-next"),
                larger: words.text("photos-larger"),
                smaller: words.text("photos-smaller"),
                mark: button(can && here && !removed, "photos-mark"),
                save_out: button(here, "photos-save-out"),
                compare: button(is_flaw && order.len() > 1, "photos-compare"),
                remove: button(can && !removed, "photos-remove"),
                bring_back: button(can && removed, "photos-bring-back"),
                close: words.text("action-close"),
            },
            photo: tile,
            head,
        })
    }

    fn tools_view(&self) -> Option<ToolsView> {
        let marking = self.photos_marking_view()?;
        let words = self.words();
        let unit = self
            .numbers()
            .quantity(
                crate::numbers::Quantity::FlawSize,
                crate::numbers::Quantity::FlawSize.range().example,
            )
            .unit;
        Some(ToolsView {
            tools: super::MarkTool::ALL
                .into_iter()
                .map(|t| (t.key(), words.text(&format!("photos-tool-{}", t.key()))))
                .collect(),
            known: TypedView::of(&marking.known, words.text("photos-known")).in_unit(unit),
            length: if marking.length.is_empty() {
                String::new()
            } else {
                let length = marking.length.as_str().into();
                words.with("photos-measured", &[("length", length)])
            },
            clear: words.text("action-clear"),
            save: words.text("photos-save-marks"),
            leave: words.text("action-cancel"),
            marking,
        })
    }
}
