//! Recording: a weight, with what changed it where that was said, and a change by itself.

use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::MassChange;
use evenwall_piece::weights::{question_for, run_at};

use super::DryingAction;
use super::asking::Asking;
use super::entry::Weigh;
use crate::action::Action;
use crate::app::{App, AppError};
use crate::numbers::Quantity;
use crate::route::Page;

/// A weight as it is recorded.
#[derive(Debug, Clone, PartialEq)]
pub struct NewWeight {
    /// The piece.
    pub piece: PieceId,
    /// What the scale said, g.
    pub mass_g: Measure,
    /// What stood on the scale with it, g.
    pub tare_g: f64,
    /// When it was weighed.
    pub at: Moment,
    /// What changed the weight since the last one, besides drying; recorded in the same line.
    pub change: Option<MassChange>,
}

impl NewWeight {
    /// The weight of the wood alone, g.
    #[must_use]
    pub fn net_g(&self) -> f64 {
        self.mass_g.value - self.tare_g
    }
}

impl App {
    /// Records a weight, or asks first where it cannot be drying alone.
    pub(super) fn offer_weight(
        &mut self,
        id: &PieceId,
        mass_g: Measure,
        now: Moment,
    ) -> Result<(), AppError> {
        let at = match self.weighed_at(now) {
            Ok(at) => at,
            Err(sentence) => {
                let weigh = &mut self.states.drying.weigh;
                weigh.day_wrong.clone_from(&sentence);
                weigh.asking = Some(Asking::Sentence(sentence));
                return Ok(());
            }
        };
        let weight = NewWeight {
            piece: id.clone(),
            mass_g,
            tare_g: self.states.drying.weigh.tare_g,
            at,
            change: None,
        };
        if weight.net_g() < Quantity::Weight.range().min {
            let numbers = self.numbers();
            let sentence = self.words().with(
                "weigh-tare-heavy",
                &[
                    ("tare", numbers.mass(weight.tare_g).text().into()),
                    ("weight", numbers.mass(weight.mass_g.value).text().into()),
                    (
                        "least",
                        numbers.mass(Quantity::Weight.range().min).text().into(),
                    ),
                ],
            );
            self.states.drying.weigh.asking = Some(Asking::Sentence(sentence));
            return Ok(());
        }
        let doubt = self
            .piece(id)
            .and_then(|p| question_for(p, self.shop(), at, weight.net_g()));
        if let Some(question) = doubt {
            self.states.drying.weigh.asking = Some(Asking::Doubt { weight, question });
            return Ok(());
        }
        self.record_weight(weight, now)
    }

    /// Records a weight and leaves the weighing page.
    pub(super) fn record_weight(&mut self, weight: NewWeight, now: Moment) -> Result<(), AppError> {
        self.retry_with(Action::Drying(DryingAction::Weighed(weight.clone())));
        let said = self.said_weighed(&weight);
        let mut facts = Vec::with_capacity(2);
        facts.extend(weight.change.map(PieceFact::MassChanged));
        facts.push(PieceFact::Weighed {
            mass_g: weight.mass_g,
            tare_g: weight.tare_g,
        });
        self.record(&weight.piece, weight.at, facts, now)?;
        self.states.drying.weigh = Weigh::default();
        self.states.drying.picked = None;
        self.say(said);
        if self.route().page() == Some(&Page::Weigh(weight.piece)) {
            self.back(now);
        }
        Ok(())
    }

    /// "K07: 828 g, 12 g less".
    fn said_weighed(&self, weight: &NewWeight) -> String {
        let (words, numbers) = (self.words(), self.numbers());
        let mark = self.mark_of(&weight.piece);
        let step_g = self.shop().scale_step_at(weight.at);
        let shown = numbers.mass_by_scale(weight.net_g(), step_g).text();
        if let Some(change) = weight.change {
            let what = words.text(&format!("drying-break-{}", change.key()));
            return words.with(
                "weigh-said-changed",
                &[
                    ("mark", mark.into()),
                    ("weight", shown.into()),
                    ("what", what.into()),
                ],
            );
        }
        let before = self
            .piece(&weight.piece)
            .map(|p| run_at(p, self.shop(), weight.at))
            .and_then(|run| run.weighings.last().map(|w| w.net_g()));
        match before {
            Some(before_g) => words.with(
                "weigh-said",
                &[
                    ("mark", mark.into()),
                    ("weight", shown.into()),
                    (
                        "difference",
                        self.difference(before_g, weight.net_g(), step_g).into(),
                    ),
                ],
            ),
            None => words.with(
                "weigh-said-first",
                &[("mark", mark.into()), ("weight", shown.into())],
            ),
        }
    }

    /// Notes that something other than drying changed the weight.
    pub(super) fn mass_changed(
        &mut self,
        id: &PieceId,
        change: MassChange,
        now: Moment,
    ) -> Result<(), AppError> {
        self.states.drying.more = false;
        self.record(id, now, vec![PieceFact::MassChanged(change)], now)?;
        let words = self.words();
        let what = words.text(&format!("mass-change-{}", change.key()));
        let said = words.with(
            "drying-said-changed",
            &[("mark", self.mark_of(id).into()), ("what", what.into())],
        );
        self.say(said);
        Ok(())
    }
}
