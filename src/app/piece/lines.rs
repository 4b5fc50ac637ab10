//! Lines: the checklist of a stage for a piece, as it is shown and ticked.

use evenwall_piece::checklist::{ChecklistLine, LineText, Measured, lines_for};
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Stage;

use crate::app::{App, AppError};
use crate::piece::view::{EarlierView, LineView, WhyView};

impl App {
    /// The words of a checklist line or its why.
    pub(crate) fn line_words(&self, text: &LineText) -> String {
        match text {
            LineText::Catalogue(id) => self.words().text(id),
            LineText::Own(own) => own.clone(),
        }
    }

    /// The lines of a stage, and "2 of 4 done"; `passed` greys what is left.
    pub(crate) fn checklist_of_stage(
        &self,
        piece: &Piece,
        stage: Stage,
        passed: bool,
    ) -> (Vec<LineView>, String) {
        let lines = lines_for(piece, stage, self.shop());
        let boxes = lines.iter().filter(|l| !l.standing).count();
        let done = lines.iter().filter(|l| !l.standing && l.done()).count();
        let count = if boxes == 0 {
            String::new()
        } else {
            self.words().with(
                "piece-done-of",
                &[("done", done.into()), ("all", boxes.into())],
            )
        };
        let views = lines
            .iter()
            .map(|line| LineView {
                id: line.id.clone(),
                text: self.line_words(&line.text),
                trailing: self.measured_words(line),
                checked: line.done(),
                boxless: line.standing,
                faded: passed && !line.done(),
                by_itself: line.ticked.is_none() && line.done(),
                has_why: line.why.is_some(),
            })
            .collect();
        (views, count)
    }

    fn measured_words(&self, line: &ChecklistLine) -> String {
        let (words, numbers) = (self.words(), self.numbers());
        match line.measured {
            None => String::new(),
            Some(Measured::Said) => words.text("line-counts-said"),
            Some(Measured::Mm(mm)) => numbers.diameter(mm).text(),
            Some(Measured::Grams(g)) => numbers
                .mass_by_scale(g, self.shop().settings.scale_step_g)
                .text(),
            Some(Measured::Oval {
                longest_mm,
                shortest_mm,
            }) => words.with(
                "piece-oval",
                &[
                    ("longest", numbers.diameter_fine(longest_mm).number.into()),
                    ("shortest", numbers.diameter_fine(shortest_mm).text().into()),
                ],
            ),
            Some(Measured::Of { done, all }) => {
                words.with("count-n-of-m", &[("n", done.into()), ("m", all.into())])
            }
        }
    }

    /// The lines of the stages that were passed, the last one first.
    pub(crate) fn earlier_views(&self, piece: &Piece) -> Vec<EarlierView> {
        let present = piece.stage();
        Stage::ALL
            .iter()
            .rev()
            .filter(|s| **s != present && piece.visits.iter().any(|v| v.stage == **s))
            .map(|stage| {
                let (lines, count) = self.checklist_of_stage(piece, *stage, true);
                EarlierView {
                    title: self.words().text(&format!("stage-{}", stage.key())),
                    count,
                    lines,
                }
            })
            .collect()
    }

    /// Why a line is there.
    pub(crate) fn why_view(&self, piece: &Piece, id: &str) -> Option<WhyView> {
        let lines = Stage::ALL
            .iter()
            .flat_map(|s| lines_for(piece, *s, self.shop()));
        let line = lines.into_iter().find(|l| l.id == id)?;
        let words = self.words();
        Some(WhyView {
            title: words.text("action-why"),
            line: self.line_words(&line.text),
            why: self.line_words(line.why.as_ref()?),
            source: if matches!(line.why, Some(LineText::Catalogue(_))) {
                words.text("piece-common-practice")
            } else {
                words.text("piece-own-words")
            },
        })
    }

    pub(crate) fn tick(
        &mut self,
        id: &PieceId,
        line: String,
        on: bool,
        now: Moment,
    ) -> Result<(), AppError> {
        let Some(piece) = self.piece(id) else {
            return Ok(());
        };
        let found = Stage::ALL
            .iter()
            .flat_map(|s| lines_for(piece, *s, self.shop()))
            .find(|l| l.id == line);
        let Some(found) = found.filter(|l| !l.standing) else {
            return Ok(());
        };
        if !on && found.ticked.is_none() && found.done() {
            let title = self.line_words(&found.text);
            self.inform(title, self.words().text("piece-ticks-itself"));
            return Ok(());
        }
        let text = self.line_words(&found.text);
        let fact = PieceFact::Ticked {
            line,
            text: text.clone(),
            on,
        };
        self.record(id, now, vec![fact], now)?;
        let said = if on {
            self.words()
                .with("piece-said-ticked", &[("line", text.into())])
        } else {
            self.words()
                .with("piece-said-unticked", &[("line", text.into())])
        };
        self.say(said);
        Ok(())
    }
}
