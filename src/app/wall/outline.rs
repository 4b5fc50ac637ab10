//! Outline: the outline picked, diameters measured at stations, stations laid out again.

use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::vocabulary::Outline;
use evenwall_piece::wanted;
use evenwall_wood::stations::place_stations;

use super::WallAction;
use crate::action::Action;
use crate::app::{App, AppError};
use crate::numbers::Entry;

/// The depths at which the stations of a piece would be laid out now, mm from the rim; `None` without a height.
pub(super) fn depths_now(piece: &Piece) -> Option<Vec<f64>> {
    let height = wanted::height(piece);
    if !height.said {
        return None;
    }
    let placed = place_stations(height.mm, wanted::floor(piece).mm).ok()?;
    Some(placed.iter().map(|s| s.depth_mm).collect())
}

/// True where stations were laid out for another height than the piece has now.
pub(super) fn needs_laying_out(piece: &Piece) -> bool {
    let laid = &piece.stations;
    let Some(now) = depths_now(piece) else {
        return false;
    };
    if laid.count == 0 {
        return false;
    }
    // The floor wanted moves the lowest ones a little; only what a rule shows is worth moving marks for.
    let near = |a: &f64, b: &f64| (a - b).abs() <= 3.0;
    let fits =
        laid.depths_mm.is_empty() || laid.depths_mm.iter().zip(&now).all(|(a, b)| near(a, b));
    now.len() != usize::from(laid.count) || !fits
}

impl App {
    pub(super) fn pick_outline(
        &mut self,
        id: &PieceId,
        outline: Outline,
        now: Moment,
    ) -> Result<(), AppError> {
        let shape = self.words().text(&format!("outline-{}", outline.key()));
        let said = self
            .words()
            .with("wall-said-outline", &[("shape", shape.into())]);
        let fact = PieceFact::Detail {
            field: DetailField::Outline,
            value: Some(DetailValue::Text(outline.key().to_owned())),
        };
        self.record(id, now, vec![fact], now)?;
        self.say(said);
        Ok(())
    }

    pub(super) fn edit_diameter(&mut self, station: u8) {
        let state = &mut self.states.wall;
        state.diameter = Some(station);
        state.keypad = None;
        state.asking = None;
    }

    /// A diameter was read at a station. The first one lays the stations out, so that it stays where it was measured.
    pub(super) fn diameter_read(
        &mut self,
        id: &PieceId,
        station: u8,
        entry: Entry,
        now: Moment,
    ) -> Result<(), AppError> {
        let measure = Measure {
            value: entry.value,
            typed: entry.typed,
        };
        self.set_diameter(id, station, Some(measure), now)
    }

    pub(super) fn shape_diameter(
        &mut self,
        id: &PieceId,
        station: u8,
        now: Moment,
    ) -> Result<(), AppError> {
        self.set_diameter(id, station, None, now)
    }

    pub(super) fn set_diameter(
        &mut self,
        id: &PieceId,
        station: u8,
        diameter_mm: Option<Measure>,
        now: Moment,
    ) -> Result<(), AppError> {
        let Some(piece) = self.piece(id) else {
            return Ok(());
        };
        let mut facts = Vec::new();
        if piece.stations.count == 0 {
            facts.push(super::record::stations_fact(piece));
        }
        let what = match &diameter_mm {
            Some(m) => self.numbers().diameter(m.value).short().text(),
            None => self.words().text("wall-from-shape"),
        };
        let said = self.words().with(
            "wall-said-diameter",
            &[("n", i64::from(station).into()), ("what", what.into())],
        );
        let again = WallAction::Diameter(id.clone(), station, diameter_mm.clone());
        facts.push(PieceFact::OutsideDiameter {
            station,
            diameter_mm,
        });
        self.retry_with(Action::Wall(again));
        self.record(id, now, facts, now)?;
        self.say(said);
        let state = &mut self.states.wall;
        state.diameter = None;
        state.keypad = None;
        state.asking = None;
        Ok(())
    }

    pub(super) fn lay_out(&mut self, id: &PieceId, now: Moment) -> Result<(), AppError> {
        let Some(depths_mm) = self.piece(id).and_then(depths_now) else {
            return Ok(());
        };
        let fact = PieceFact::Stations {
            count: u8::try_from(depths_mm.len()).unwrap_or(u8::MAX),
            depths_mm,
        };
        let said = self.words().text("wall-said-laid-out");
        self.record(id, now, vec![fact], now)?;
        self.say(said);
        self.take_up_wall(id);
        Ok(())
    }
}
