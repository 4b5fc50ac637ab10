//! Forecasting: what the drying model foresees of each piece, reckoned beside the screens and kept until its inputs change.

mod agenda;
mod days;
mod foresee;
mod input;
mod phases;
mod recorded;
mod stamp;
mod walls;

use std::collections::BTreeMap;

use evenwall_piece::detail::DetailField;
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Group;
use evenwall_wood::forecast::ForecastError;

use crate::app::App;
use crate::route::Page;
use crate::work::{Outcome, Work};

pub use days::{Stretch, weeks};
pub use foresee::{Against, Foreseen, Odd, Weighed, foresee};
pub use input::{Assumed, Input, NoInput, input};
pub use phases::SHOP_UNREAD;
pub use walls::{Shape, Sized, shape_of};

/// Start of the keys of these works; the piece's id follows.
const KEY: &str = "forecast/";

/// What is known of one piece.
#[derive(Debug)]
struct Kept {
    /// The inputs it is of.
    stamp: u64,
    /// The last that came out well, with how many weighings it was made from.
    foreseen: Option<Foreseen>,
    /// Why the last try came to nothing; a sentence.
    failed: Option<String>,
}

/// What is foreseen, by piece.
#[derive(Debug, Default)]
pub struct Forecasts {
    kept: BTreeMap<PieceId, Kept>,
    /// The inputs of the works under way.
    asked: BTreeMap<PieceId, u64>,
    /// What the agenda is told.
    foretold: evenwall_piece::agenda::ForetoldOf,
}

/// True for a piece that is drying and alive: others are not looked ahead for.
fn wants_forecast(piece: &Piece) -> bool {
    piece.living() && piece.stage().group() == Group::Drying
}

impl App {
    /// What a forecast of a piece is reckoned from.
    ///
    /// # Errors
    /// [`NoInput`] where there is nothing to reckon from.
    pub fn forecast_input(&self, piece: &Piece, now: Moment) -> Result<Input, NoInput> {
        let figures = self.wood_figures(piece.details.text(DetailField::Wood));
        input(piece, self.shop(), &figures.figures, now)
    }

    /// What is foreseen of a piece, as last reckoned; `None` while nothing is.
    #[must_use]
    pub fn foreseen(&self, piece: &PieceId) -> Option<&Foreseen> {
        self.forecasts.kept.get(piece)?.foreseen.as_ref()
    }

    /// Why the last try to look ahead for a piece came to nothing.
    #[must_use]
    pub fn forecast_failed(&self, piece: &PieceId) -> Option<&str> {
        self.forecasts.kept.get(piece)?.failed.as_deref()
    }

    /// True while what is shown of a piece is not of its present weights.
    #[must_use]
    pub fn is_reckoning(&self, piece: &Piece, now: Moment) -> bool {
        if !wants_forecast(piece) {
            return false;
        }
        let stamp = stamp::of_piece(piece, stamp::of_shop(self.shop(), now));
        self.forecasts
            .kept
            .get(&piece.id)
            .is_none_or(|k| k.stamp != stamp)
    }

    /// The most wanted forecast that is not reckoned yet: the piece on screen first, then those weighed, then the others.
    pub(crate) fn forecast_work(&mut self, now: Moment) -> Option<Work> {
        let shop = stamp::of_shop(self.shop(), now);
        self.call_off_old_forecasts(shop);
        let on_screen = self.route().page().and_then(|p| p.piece()).cloned();
        let wanted = |p: &&Piece| {
            let running = self.work.is_running(&format!("{KEY}{}", p.id));
            wants_forecast(p) && !running && {
                let stamp = stamp::of_piece(p, shop);
                self.forecasts
                    .kept
                    .get(&p.id)
                    .is_none_or(|k| k.stamp != stamp)
            }
        };
        let first = self
            .pieces()
            .filter(wanted)
            .min_by_key(|p| (Some(&p.id) != on_screen.as_ref(), p.weighings.is_empty()))?;
        let (id, stamp) = (first.id.clone(), stamp::of_piece(first, shop));
        let taken = self.forecast_input(first, now);
        let words = self.words().clone();
        self.forecasts.asked.insert(id.clone(), stamp);
        let run = move |control: &crate::work::Control| {
            let foreseen = taken.map_or(Err("forecast-out-of-range"), |input| {
                foresee(&input, control).map_err(|error| match error {
                    ForecastError::NoRest => "forecast-no-curve",
                    _ => "forecast-out-of-range",
                })
            });
            match foreseen {
                Ok(Some(foreseen)) => Outcome::Forecast(Box::new(foreseen)),
                Ok(None) => Outcome::GivenUp,
                Err(why) => Outcome::Failed(words.text(why)),
            }
        };
        Some(self.work.begin(format!("{KEY}{id}"), Box::new(run)))
    }

    /// Calls off works whose inputs changed under them.
    pub fn call_off_old_work(&mut self, now: Moment) {
        let shop = stamp::of_shop(self.shop(), now);
        self.call_off_old_forecasts(shop);
    }

    fn call_off_old_forecasts(&mut self, shop: u64) {
        let old: Vec<PieceId> = self
            .forecasts
            .asked
            .iter()
            .filter(|(id, stamp)| {
                let present = self.piece(id).filter(|p| wants_forecast(p));
                present.is_none_or(|p| stamp::of_piece(p, shop) != **stamp)
            })
            .map(|(id, _)| id.clone())
            .collect();
        for id in old {
            self.forecasts.asked.remove(&id);
            self.work.call_off(&format!("{KEY}{id}"));
        }
    }

    /// Takes in a forecast. True where something on screen may have changed.
    pub(crate) fn forecast_done(&mut self, key: &str, outcome: Outcome, now: Moment) -> bool {
        let id = key.strip_prefix(KEY).and_then(|id| PieceId::new(id).ok());
        let Some((id, stamp)) = id.and_then(|id| self.forecasts.asked.remove_entry(&id)) else {
            return false;
        };
        let (foreseen, failed) = match outcome {
            Outcome::Forecast(foreseen) => (Some(*foreseen), None),
            Outcome::GivenUp | Outcome::Photos(_) => return false,
            Outcome::Failed(why) if why.is_empty() => {
                (None, Some(self.words().text("forecast-fault")))
            }
            Outcome::Failed(why) => (None, Some(why)),
        };
        self.forecasts.kept.insert(
            id.clone(),
            Kept {
                stamp,
                foreseen,
                failed,
            },
        );
        let listed = self.renew_foretold(&id, now);
        self.record_forecast(&id, now);
        let on_page = matches!(
            self.route().page(),
            Some(Page::Drying(shown) | Page::Piece(shown)) if *shown == id
        );
        // A list, alone or beside a page, is made anew only where it may show something else: pieces are foreseen one by one.
        on_page || listed
    }
}
