//! Forecasts: what was foreseen against what came, once a piece is through.
//!
//! | foreseen | what came |
//! |---|---|
//! | settled where it stands: into the house | the first weighing before it went Indoors from which no weight is more than 1 % off the last one there |
//! | settled in the house: to finish-turn | the same of the weighings Indoors, once it has left for the lathe |
//!
//! Where that first weighing is the last one nobody knows whether it had settled: it is left out. So is a piece whose weight was
//! changed by something else (glue, a cut, a new scale) between forecast and outcome. The rules are the project's own; no source.

use chrono::NaiveDate;
use evenwall_piece::fact::{ForecastMade, PieceFact};
use evenwall_piece::piece::{Moment, Piece, Weighing};
use evenwall_piece::stage::{Group, Stage};
use evenwall_wood::forecast_score::{Outcome, score};

use super::Fared;
use crate::app::App;
use crate::shop::view::{RowView, SectionView};

/// Settled: no weight after this is further off the last than so (fraction): about a point of moisture.
const SETTLED: f64 = 0.01;
/// Level of the interval of the share.
const LEVEL: f64 = 0.95;
/// Fewer forecasts are only counted.
const FEW: u32 = 5;

/// The moment from which `weighings` stayed at their last, where later ones show it.
fn settled(weighings: &[&Weighing]) -> Option<Moment> {
    let (last, before) = weighings.split_last()?;
    let near = |w: &&&Weighing| (w.net_g() - last.net_g()).abs() <= SETTLED * last.net_g();
    let stayed = before.iter().rev().take_while(near).count();
    let first = before.get(before.len() - stayed)?;
    (stayed > 0).then_some(first.at)
}

/// When a piece had settled before it left the stages `of` for good; `None` while it has not, or where nobody can tell.
fn came(piece: &Piece, of: impl Fn(Stage) -> bool) -> Option<Moment> {
    let left = piece.visits.iter().rposition(|v| of(v.stage))? + 1;
    piece.visits.get(left)?;
    let there: Vec<&Weighing> = piece.weighings.iter().filter(|w| of(w.stage)).collect();
    settled(&there)
}

fn outcome(
    piece: &Piece,
    made: Moment,
    (from, to): (NaiveDate, NaiveDate),
    came: Moment,
) -> Option<Outcome> {
    let days = |day: NaiveDate| (day - made.date_naive()).num_days() as f64;
    let changed = |at: Moment| made < at && at <= came;
    if came <= made || piece.mass_changes.iter().any(|(at, _)| changed(*at)) {
        return None;
    }
    let (early, late) = (days(from).max(0.0), days(to).max(0.0));
    Some(Outcome {
        early_days: early,
        middle_days: 0.5 * (early + late),
        late_days: late,
        true_days: days(came.date_naive()),
    })
}

/// Every forecast of a piece whose outcome is known.
fn outcomes(piece: &Piece) -> Vec<Outcome> {
    let shop = |s: Stage| s.group() == Group::Drying && s != Stage::Indoors;
    let house_came = came(piece, shop);
    let finish_came = came(piece, |s| s == Stage::Indoors);
    let made = |fact: &PieceFact| match fact {
        PieceFact::ForecastMade(made) => Some(*made),
        _ => None,
    };
    let of = |at: Moment, f: ForecastMade| {
        let house = f.into_house.zip(house_came);
        let finish = f.to_finish.zip(finish_came);
        [house, finish]
            .into_iter()
            .flatten()
            .filter_map(move |(range, came)| outcome(piece, at, range, came))
    };
    piece
        .diary
        .iter()
        .filter(|e| !e.retracted)
        .filter_map(|e| Some((e.at, made(&e.fact)?)))
        .flat_map(|(at, f)| of(at, f))
        .collect()
}

impl App {
    /// How the forecasts held; nothing where none has an outcome yet.
    pub(super) fn dried_well_forecasts(&self, fared: &[Fared<'_>]) -> Option<SectionView> {
        let words = self.words();
        let all: Vec<Outcome> = fared.iter().flat_map(|f| outcomes(f.piece)).collect();
        let score = score(&all, LEVEL)?;
        let row =
            |id: &str, label: &str, value: String| RowView::plain(id, words.text(label), value);
        let mut rows = vec![row(
            "forecasts-held",
            "dried-well-forecasts-held",
            words.with(
                "dried-well-forecasts-of",
                &[
                    ("held", score.within.into()),
                    ("all", score.forecasts.into()),
                ],
            ),
        )];
        if score.forecasts >= FEW {
            let error = self.numbers().percent(100.0 * score.median_error).text();
            rows.push(row("forecasts-error", "dried-well-forecasts-error", error));
        }
        let lean = words.text(match score.median_bias {
            _ if score.forecasts < FEW => "dried-well-forecasts-few",
            b if b < -0.05 => "dried-well-forecasts-early",
            b if b > 0.05 => "dried-well-forecasts-late",
            _ => "dried-well-forecasts-neither",
        });
        rows.push(RowView::text("forecasts-lean", lean));
        Some(SectionView {
            key: "forecasts",
            title: words.text("dried-well-forecasts"),
            note: words.text("dried-well-forecasts-note"),
            rows,
            ..SectionView::default()
        })
    }
}
