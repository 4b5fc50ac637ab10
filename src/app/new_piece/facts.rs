//! Facts: a draft becomes the facts of a new piece, or the fields at fault.

use chrono::{NaiveTime, TimeZone};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::fold::fold_piece;
use evenwall_piece::ids::{DeviceId, LineId, PieceId};
use evenwall_piece::line::Line;
use evenwall_piece::mark::{MarkProblem, mark_problem, marks_from, suggested_mark};
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::Method;

use crate::app::App;
use crate::details;

impl App {
    fn every_piece(&self) -> impl Iterator<Item = &Piece> {
        self.pieces().chain(self.deleted_pieces())
    }

    /// The mark as it would be saved: as typed, else the suggested one.
    pub(super) fn draft_mark(&self) -> String {
        match self.states.new_piece.draft.typed_mark() {
            Some(typed) => typed.split_whitespace().collect::<Vec<_>>().join(" "),
            None => suggested_mark(self.every_piece()),
        }
    }

    /// The marks of all pieces that would be saved; fewer where the first counts on too long.
    pub(super) fn draft_marks(&self) -> Vec<String> {
        let first = self.draft_mark();
        let count = self.states.new_piece.draft.count;
        if count == 1 {
            return vec![first];
        }
        // The first is the turner's own choice, also where it reads upside down as another.
        let mut marks = vec![first.clone()];
        let counted = marks_from(&first, count + 1, self.every_piece());
        marks.extend(counted.into_iter().filter(|m| *m != first).take(count - 1));
        marks
    }

    /// What is wrong with the mark, in a sentence, and whether that is only a warning.
    pub(super) fn draft_mark_problem(&self) -> Option<(String, bool)> {
        let mark = self.draft_mark();
        let problem = mark_problem(&mark, self.pieces())?;
        Some((
            self.mark_problem_text(&mark, &problem),
            problem.only_warns(),
        ))
    }

    /// What is wrong with a mark, in a sentence for below its field.
    #[must_use]
    pub fn mark_problem_text(&self, mark: &str, problem: &MarkProblem) -> String {
        let words = self.words();
        match problem {
            MarkProblem::Blank => words.text("details-mark-blank"),
            MarkProblem::TooLong { count } => words.with(
                "details-mark-long",
                &[
                    ("count", (*count).into()),
                    ("most", evenwall_piece::mark::LONGEST_MARK.into()),
                ],
            ),
            MarkProblem::InUse(id) => {
                let holder = self.piece(id);
                let wood = holder.map(|p| self.wood_of(p)).unwrap_or_default();
                let wood = if wood.is_empty() {
                    words.text("pieces-wood-unknown")
                } else {
                    wood
                };
                let stage = holder.map_or(Stage::Shape, Piece::stage);
                let stage = words.text(&format!("stage-{}", stage.key()));
                words.with(
                    "details-mark-in-use",
                    &[
                        ("mark", mark.trim().into()),
                        ("wood", wood.into()),
                        ("stage", stage.into()),
                    ],
                )
            }
            MarkProblem::UpsideDown { reads_as } => {
                words.with("details-mark-upside-down", &[("reads", reads_as.into())])
            }
        }
    }

    /// Since when the piece is in its stage, or the sentence that says why that cannot be read.
    pub(super) fn draft_since(&self, now: Moment) -> Result<Moment, String> {
        let typed = &self.states.new_piece.draft.since;
        if typed.trim().is_empty() {
            return Ok(now);
        }
        let day = details::read_day(self, typed, now.date_naive())?;
        let first = day.first().unwrap_or(now.date_naive());
        if first == now.date_naive() {
            return Ok(now);
        }
        let noon = NaiveTime::from_hms_opt(12, 0, 0).unwrap_or_default();
        // A fixed offset has no gaps: every local time exists once.
        let at = now.timezone().from_local_datetime(&first.and_time(noon));
        Ok(at.earliest().unwrap_or(now))
    }

    /// The error below a field, where there is one.
    pub(super) fn draft_error(&self, field: DetailField, now: Moment) -> Option<String> {
        let typed = self.states.new_piece.draft.text(field);
        details::understand(self, field, typed, now).err()
    }

    /// The facts of a piece with this mark, all at once.
    ///
    /// # Errors
    /// The field at fault with its sentence.
    pub(super) fn draft_facts(
        &self,
        mark: &str,
        now: Moment,
    ) -> Result<Vec<PieceFact>, (DetailField, String)> {
        let draft = &self.states.new_piece.draft;
        let mut facts = vec![
            PieceFact::Created,
            PieceFact::Detail {
                field: DetailField::Mark,
                value: Some(DetailValue::Text(mark.to_owned())),
            },
        ];
        for (field, typed) in draft.texts() {
            let value =
                details::understand(self, field, typed, now).map_err(|error| (field, error))?;
            if value.is_some() {
                facts.push(PieceFact::Detail { field, value });
            }
        }
        if draft.method != Method::Bag {
            facts.push(PieceFact::MethodChosen(draft.method));
        }
        if draft.stage != Stage::Shape {
            facts.push(PieceFact::StageMoved(draft.stage));
        }
        Ok(facts)
    }

    /// The piece as it would be, for its drawing and what is usual; what cannot be read is left out.
    pub(super) fn draft_piece(&self, now: Moment) -> Option<Piece> {
        let mut facts = vec![PieceFact::Created];
        for (field, typed) in self.states.new_piece.draft.texts() {
            if let Ok(value @ Some(_)) = details::understand(self, field, typed, now) {
                facts.push(PieceFact::Detail { field, value });
            }
        }
        let device = DeviceId::new("draft").ok()?;
        let line = Line {
            id: LineId { device, n: 1 },
            seq: 1,
            at: now,
            noted_at: now,
            facts,
        };
        Some(fold_piece(PieceId::new("draft").ok()?, vec![line]))
    }
}
