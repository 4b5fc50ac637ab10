//! Next step: the one obvious thing to do with a piece, and the quieter one beside it.

use evenwall_piece::agenda::{TaskKind, tasks_of};
use evenwall_piece::bag::BagState;
use evenwall_piece::detail::DetailField;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::Method;

use crate::action::Action;
use crate::app::App;
use crate::piece::PieceAction;
use crate::piece::moving::undecided;
use crate::piece::view::NextView;
use crate::route::Page;

/// What the buttons at the thumb can do, by their stable keys.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Step {
    Depth,
    Wall,
    NoteFlaw,
    Flaws,
    Feel,
    Look,
    Weigh,
    Cracks,
    True,
    Record,
    Finished,
    Move(Stage),
}

impl Step {
    const fn key(self) -> &'static str {
        match self {
            Self::Depth => "depth",
            Self::Wall => "wall",
            Self::NoteFlaw => "note-flaw",
            Self::Flaws => "flaws",
            Self::Feel | Self::Look => "look",
            Self::Weigh => "weigh",
            Self::Cracks | Self::True => "truing",
            Self::Record => "finishing",
            Self::Finished => "finished",
            Self::Move(stage) => stage.key(),
        }
    }

    const fn icon(self) -> &'static str {
        match self {
            Self::Depth => "pencil",
            Self::Wall => "callipers",
            Self::NoteFlaw => "plus",
            Self::Flaws => "list",
            Self::Feel => "drop-half",
            Self::Look => "eye",
            Self::Weigh => "scale",
            Self::Cracks => "crack",
            Self::True => "oval",
            Self::Record => "pencil",
            Self::Finished => "tick",
            Self::Move(Stage::Bag) => "bag-closed",
            Self::Move(Stage::Air) => "bag-open",
            Self::Move(Stage::Indoors) => "indoors",
            Self::Move(_) => "arrow-right",
        }
    }
}

impl App {
    /// The action at the thumb, and the quieter one. None for a piece that ended or was deleted.
    pub(crate) fn next_step(
        &self,
        piece: &Piece,
        now: Moment,
    ) -> (Option<NextView>, Option<NextView>) {
        if !piece.living() {
            return (None, None);
        }
        let step = self.step_of(piece, now);
        let next_stage = piece.stage().next();
        let then = match (step, next_stage) {
            (Step::Move(_) | Step::Finished, _) => None,
            (_, Some(next)) => Some(Step::Move(next)),
            (_, None) => Some(Step::Finished),
        };
        let loud = self.step_view(piece, step, true);
        (Some(loud), then.map(|s| self.step_view(piece, s, false)))
    }

    fn step_view(&self, piece: &Piece, step: Step, loud: bool) -> NextView {
        let words = self.words();
        let text = match step {
            Step::Depth => words.text("piece-next-depth"),
            Step::Wall => words.text("piece-next-wall"),
            Step::NoteFlaw => words.text("piece-next-note-flaw"),
            Step::Flaws => words.with("piece-next-flaws", &[("n", undecided(piece).into())]),
            Step::Feel => words.text("piece-next-feel"),
            Step::Look => words.text("piece-next-look"),
            Step::Weigh => words.text("piece-next-weigh"),
            Step::Cracks => words.text("piece-next-cracks"),
            Step::True => words.text("piece-next-true"),
            Step::Record => words.text("piece-next-record"),
            Step::Finished => words.text("piece-next-finished"),
            Step::Move(Stage::Hollow) if loud => words.text("piece-next-hollow"),
            Step::Move(Stage::Bag) if loud && piece.method == Method::Bag => {
                words.text("piece-next-bag")
            }
            Step::Move(stage) => {
                let name = words.text(&format!("stage-{}", stage.key()));
                words.with("piece-next-stage", &[("stage", name.into())])
            }
        };
        NextView {
            key: step.key(),
            text,
            icon: step.icon(),
        }
    }

    fn step_of(&self, piece: &Piece, now: Moment) -> Step {
        match piece.stage() {
            Stage::Shape if piece.details.get(DetailField::DepthDrilled).is_none() => Step::Depth,
            Stage::Shape => Step::Move(Stage::Hollow),
            Stage::Hollow => Step::Wall,
            Stage::Stabilise => match (piece.flaws.len(), undecided(piece)) {
                (0, _) => Step::NoteFlaw,
                (_, 0) => Step::Move(Stage::Bag),
                _ => Step::Flaws,
            },
            Stage::Bag | Stage::Air | Stage::Settle | Stage::Indoors => {
                self.drying_step(piece, now)
            }
            Stage::True if piece.finish.cracks.is_none() => Step::Cracks,
            Stage::True if !piece.finish.oval_measured() || piece.finish.decision.is_none() => {
                Step::True
            }
            Stage::True => Step::Move(Stage::Finish),
            Stage::Finish if piece.finish.coats.is_empty() && piece.finish.signed.is_none() => {
                Step::Record
            }
            Stage::Finish => Step::Finished,
        }
    }

    /// What falls due first; an offered stage where nothing else is due by today.
    fn drying_step(&self, piece: &Piece, now: Moment) -> Step {
        let tasks = self.at_the_bench(now, |bench| tasks_of(piece, bench));
        let felt = self
            .at_the_bench(now, |bench| evenwall_piece::agenda::standing(piece, bench))
            .is_some_and(|s| s.state != BagState::NoBag);
        let step = |kind: &TaskKind| match kind {
            TaskKind::Look => Some(Step::Feel),
            TaskKind::LookOver => Some(if felt { Step::Feel } else { Step::Look }),
            TaskKind::Weigh => Some(Step::Weigh),
            _ => None,
        };
        let today = now.date_naive();
        let mut dues: Vec<_> = tasks
            .iter()
            .filter_map(|t| Some((t.due, step(&t.kind)?)))
            .collect();
        dues.sort_by_key(|(due, _)| *due);
        let offered = tasks.iter().find_map(|t| match t.kind {
            TaskKind::OfferStage(stage) if t.due <= today => Some(stage),
            _ => None,
        });
        match (dues.first(), offered) {
            (Some((due, step)), _) if *due <= today => *step,
            (_, Some(stage)) => Step::Move(stage),
            (Some((_, step)), None) => *step,
            (None, None) if felt => Step::Feel,
            (None, None) => Step::Weigh,
        }
    }

    /// What a button at the thumb does; `None` for a key that is none of them.
    #[must_use]
    pub fn step_action(&self, key: &str) -> Option<Action> {
        let id = self.piece_on_page()?.id.clone();
        Some(match key {
            "depth" => Action::Piece(PieceAction::Details(crate::piece::DetailsAction::OpenAt {
                piece: id,
                field: DetailField::DepthDrilled,
            })),
            "wall" => Action::Open(Page::Wall(id)),
            "note-flaw" => Action::Open(Page::Flaw(id, None)),
            "flaws" => Action::Open(Page::Flaws(id)),
            "look" => Action::Piece(PieceAction::LookNow),
            "weigh" => Action::Open(Page::Weigh(id)),
            "truing" => Action::Open(Page::Truing(id)),
            // What is not recorded is said there before the piece ends.
            "finishing" | "finished" => Action::Open(Page::Finishing(id)),
            _ => Action::Piece(PieceAction::MoveTo {
                piece: id,
                stage: Stage::from_key(key)?,
                day: None,
                sure: false,
            }),
        })
    }
}
