//! Ways: from the page of a piece into the other pages about it.

use evenwall_piece::detail::DetailField;
use evenwall_piece::photo::PhotoOn;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::{Group, Stage};
use evenwall_piece::weights::last_weighing;
use evenwall_wood::evenness::Evenness;

use crate::action::Action;
use crate::app::App;
use crate::drawing::{compared, thinnest};
use crate::new_piece::NewPieceAction;
use crate::piece::moving::undecided;
use crate::piece::view::WayView;
use crate::piece::{PieceAction, StagesAction};
use crate::route::Page;
use crate::words::dates::Dates;

impl App {
    /// The ways below the checklist, each with how it stands there.
    pub(crate) fn ways(&self, piece: &Piece, now: Moment) -> Vec<WayView> {
        let words = self.words();
        let dates = Dates::new(words, now.date_naive());
        let way = |key, icon, note: String| WayView {
            key,
            title: words.text(&format!("piece-way-{key}")),
            note,
            icon,
        };
        let flaws = match (piece.flaws.len(), undecided(piece)) {
            (0, _) => words.text("piece-way-none"),
            (n, 0) => words.with("piece-way-flaws-decided", &[("n", n.into())]),
            (n, open) => words.with(
                "piece-way-flaws-open",
                &[("n", n.into()), ("open", open.into())],
            ),
        };
        let drying = match last_weighing(piece, now) {
            Some(w) => words.with(
                "piece-way-weighed",
                &[
                    ("weight", self.numbers().mass(w.net_g()).text().into()),
                    ("day", dates.near(w.at.date_naive()).into()),
                ],
            ),
            None => words.text("piece-way-never-weighed"),
        };
        let entries = piece.diary.iter().filter(|e| !e.retracted).count();
        let known = piece
            .details
            .iter()
            .filter(|(f, _)| *f != DetailField::Mark)
            .count();
        let mut all = vec![
            way("wall", "callipers", self.wall_note(piece)),
            way("flaws", "crack", flaws),
            way("drying", "chart", drying),
            way(
                "photos",
                "camera",
                self.photos_count(piece, &PhotoOn::Portrait),
            ),
        ];
        if piece.stage().group() == Group::Finishing || piece.end.is_some() {
            let cracks = piece.finish.cracks.as_ref().map_or_else(
                || words.text("piece-way-no-answer"),
                |(_, a)| words.text(&format!("crack-answer-{}", a.key())),
            );
            all.push(way("truing", "oval", cracks));
        }
        if piece.stage() == Stage::Finish || piece.end.is_some() {
            let coats = piece.finish.coats.len();
            all.push(way(
                "finishing",
                "tick",
                words.with("piece-way-coats", &[("n", coats.into())]),
            ));
        }
        if piece.living() {
            let wall = piece.details.mm(DetailField::WallWanted);
            let note = wall.map_or_else(
                || words.text("piece-way-no-wall"),
                |mm| {
                    let wall = self.numbers().wall(mm).short().text();
                    words.with("piece-way-wall-wanted", &[("wall", wall.into())])
                },
            );
            all.push(way("plan", "plan", note));
        }
        all.push(way(
            "diary",
            "list",
            words.with("piece-way-entries", &[("n", entries.into())]),
        ));
        all.push(way(
            "details",
            "pencil",
            words.with("piece-way-known", &[("n", known.into())]),
        ));
        all.push(way("stages", "flag", self.stage_in_words(piece, now)));
        all
    }

    fn wall_note(&self, piece: &Piece) -> String {
        let words = self.words();
        let walls: Vec<f64> = compared(piece)
            .into_iter()
            .filter_map(|s| thinnest(piece, s))
            .collect();
        match Evenness::of(&walls) {
            Ok(Some(even)) => words.with(
                "piece-way-wall-spread",
                &[
                    ("n", walls.len().into()),
                    (
                        "spread",
                        self.numbers().wall(even.spread_mm()).text().into(),
                    ),
                ],
            ),
            _ => words.text("piece-way-no-readings"),
        }
    }

    /// What stands in the sheet behind the three dots.
    pub(crate) fn more_ways(&self, piece: &Piece) -> Vec<WayView> {
        let words = self.words();
        let way = |key: &'static str, id: &str, icon| WayView {
            key,
            title: words.text(id),
            note: String::new(),
            icon,
        };
        let mut all = vec![
            way("details", "piece-way-details", "pencil"),
            way("stages", "piece-way-stages", "flag"),
        ];
        if piece.living() {
            all.push(if piece.half_turned.is_some() {
                way("resume", "piece-resume", "undo")
            } else {
                way("half-turn", "piece-half-turn", "clock")
            });
            all.push(if piece.paused.is_some() {
                way("unpause", "piece-unpause", "undo")
            } else {
                way("pause", "piece-pause", "pause")
            });
        }
        all.push(way("out", "piece-way-out", "export"));
        all.push(way("another", "piece-another", "log"));
        all.push(way("ending", "piece-way-ending", "tick"));
        if piece.deleted.is_some() {
            all.push(way("undelete", "piece-undelete", "undo"));
        } else {
            all.push(way("delete", "action-delete", "bin"));
        }
        all
    }

    /// What a way, a banner or a line behind the three dots does; `None` for a key that is none of them.
    #[must_use]
    pub fn way_action(&self, key: &str) -> Option<Action> {
        let piece = self.piece_on_page()?;
        let id = piece.id.clone();
        Some(match key {
            "wall" => Action::Open(if piece.readings.is_empty() {
                Page::Wall(id)
            } else {
                Page::WallSummary(id)
            }),
            "flaws" => Action::Open(Page::Flaws(id)),
            "photos" => Action::Open(Page::Photos(id, PhotoOn::Portrait)),
            "portrait" => Action::Open(Page::Photo(id, piece.portrait()?.note.photo.clone())),
            "drying" => Action::Open(Page::Drying(id)),
            "truing" => Action::Open(Page::Truing(id)),
            "finishing" => Action::Open(Page::Finishing(id)),
            "plan" => Action::Open(Page::PlanOf(id)),
            "diary" => Action::Open(Page::Diary(id)),
            "details" => Action::Open(Page::Details(id)),
            "stages" => Action::Open(Page::Stages(id)),
            "ending" => Action::Open(Page::Ending(id)),
            "out" => Action::Open(Page::Out(id)),
            "half-turn" => Action::Piece(PieceAction::HalfTurned {
                piece: id,
                on: true,
            }),
            "resume" => Action::Piece(PieceAction::HalfTurned {
                piece: id,
                on: false,
            }),
            "pause" => Action::Piece(PieceAction::Stages(StagesAction::PauseOf(id))),
            "unpause" => Action::Piece(PieceAction::Unpause(id)),
            "found" => Action::Piece(PieceAction::Looked {
                piece: id,
                feel: None,
                mould: false,
                crack: false,
            }),
            "put-back" => Action::Piece(PieceAction::PutBack(id)),
            "another" => Action::NewPiece(NewPieceAction::AnotherLike(id)),
            "undelete" => Action::Piece(PieceAction::Undelete(id)),
            "keep" => Action::Piece(PieceAction::Keep(id)),
            "delete" => Action::Piece(PieceAction::AskDelete(id)),
            _ => return None,
        })
    }
}
