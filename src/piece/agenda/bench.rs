//! Bench: the workshop at a moment, with all that the agenda needs to know beside the pieces.

use chrono::NaiveDate;

use super::calendar::{DaysAway, days_away, end_by_work, end_on};
use super::foretold::{Foretold, ForetoldOf};
use crate::piece::{Moment, Piece};
use crate::rhythm::{Rhythm, RhythmOf};
use crate::shop::Shop;
use crate::vocabulary::Room;
use crate::weights::last_weighing;

/// Above this a shop counts as warm for closed bags, degrees C. Common practice, no source.
pub const WARM_SHOP_C: f64 = 20.0;

/// The workshop at a moment. Build one for a view and hand it to everything that asks what is due.
pub struct Bench<'a> {
    /// The workshop.
    pub shop: &'a Shop,
    /// The moment, with the offset of the place where the turner is.
    pub now: Moment,
    /// The local date of that moment.
    pub today: NaiveDate,
    /// Whether the wood of a piece is known to mould easily.
    pub moulds_easily: &'a dyn Fn(&Piece) -> bool,
    away: Vec<DaysAway>,
    rhythms: Vec<Rhythm>,
    foretold: Option<&'a ForetoldOf>,
}

impl<'a> Bench<'a> {
    /// The workshop at a moment.
    #[must_use]
    pub fn new(shop: &'a Shop, now: Moment, moulds_easily: &'a dyn Fn(&Piece) -> bool) -> Self {
        Self {
            shop,
            now,
            today: now.date_naive(),
            moulds_easily,
            away: days_away(shop),
            rhythms: RhythmOf::ALL
                .iter()
                .map(|of| shop.settings.rhythm(*of))
                .collect(),
            foretold: None,
        }
    }

    /// The same bench with what is foreseen of the pieces.
    #[must_use]
    pub fn with_foretold(mut self, foretold: &'a ForetoldOf) -> Self {
        self.foretold = Some(foretold);
        self
    }

    /// What is foreseen of a piece; `None` where nothing is, or it was weighed since.
    #[must_use]
    pub fn foretold(&self, piece: &Piece) -> Option<&Foretold> {
        let last = last_weighing(piece, self.now)?.at.date_naive();
        let foretold = self.foretold?.get(&piece.id)?;
        (foretold.weighed_on == last).then_some(foretold)
    }

    /// The same bench where looks and weighings of these pieces end the days away in which they were made: whoever works is
    /// back, said or not.
    #[must_use]
    pub fn with_work_on<'p>(mut self, pieces: impl IntoIterator<Item = &'p Piece>) -> Self {
        end_by_work(&mut self.away, pieces, self.now);
        self
    }

    /// The same bench as if nobody had ever gone away: what falls due meanwhile.
    #[must_use]
    pub fn without_away(&self) -> Self {
        self.with_away(Vec::new())
    }

    /// The same bench as it is once work was done today.
    pub(crate) fn worked_today(&self) -> Self {
        let mut away = self.away.clone();
        end_on(&mut away, self.today);
        self.with_away(away)
    }

    fn with_away(&self, away: Vec<DaysAway>) -> Self {
        Self {
            shop: self.shop,
            now: self.now,
            today: self.today,
            moulds_easily: self.moulds_easily,
            away,
            rhythms: self.rhythms.clone(),
            foretold: self.foretold,
        }
    }

    /// The rhythm in force of a stage or method.
    #[must_use]
    pub fn rhythm(&self, of: RhythmOf) -> &Rhythm {
        // One a variant, in the order of the variants.
        &self.rhythms[of as usize]
    }

    /// All days away, by their first day.
    #[must_use]
    pub fn days_away(&self) -> &[DaysAway] {
        &self.away
    }

    /// The day of the return from the last days away that began up to today, past or ahead; `None` where there were none.
    #[must_use]
    pub fn last_return(&self) -> Option<NaiveDate> {
        let begun = self.away.iter().rev().find(|a| a.from <= self.today);
        begun.map(|a| a.back)
    }

    /// True where the last reading of the shop's air up to a moment was above [`WARM_SHOP_C`].
    #[must_use]
    pub fn warm_at(&self, at: Moment) -> bool {
        let known = self.shop.climate.partition_point(|(t, _)| *t <= at);
        self.shop.climate[..known]
            .iter()
            .rev()
            .find(|(_, c)| c.room == Room::Shop)
            .is_some_and(|(_, c)| c.temp_c > WARM_SHOP_C)
    }

    /// A wood that moulds easily, or a shop that was warm at a moment: wet bags are felt sooner.
    pub(crate) fn short_round(&self, piece: &Piece, at: Moment) -> bool {
        (self.moulds_easily)(piece) || self.warm_at(at)
    }
}
