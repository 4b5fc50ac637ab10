//! Measures: volume, what it holds and the expected weight of a piece, or what is lacking for them.

use evenwall_piece::fact::StationRef;
use evenwall_piece::piece::Piece;
use evenwall_piece::stage::Group;
use evenwall_wood::profile::{Profile, ProfileError};
use evenwall_wood::woods::{Kind, Whose};
use evenwall_wood::woods_table::find;

use super::sum::SumView;
use crate::app::App;
use crate::drawing::{drawn_outside, station_places, thinnest};
use crate::numbers::units::LengthUnit;
use crate::route::Page;
use crate::sums::{NoShape, profile_of};
use crate::woods::Known;

/// How far a piece lies from the mean figures of its wood, as a fraction of the weight. From memory, no source.
const WEIGHT_EITHER_WAY: f64 = 0.10;

/// A figure under its name.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MeasureRow {
    /// What it is.
    pub label: String,
    /// The figure with its unit.
    pub value: String,
}

/// Volume and weight of a piece.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct MeasuresView {
    /// Head of the figures; empty where there is nothing to say yet.
    pub title: String,
    /// Volume of wood, what it holds, depth of the centre of mass.
    pub rows: Vec<MeasureRow>,
    /// Label of the expected weight; empty where it is not told.
    pub weight_label: String,
    /// "380 to 465 g".
    pub weight: String,
    /// Whose figures it rests on.
    pub weight_note: String,
    /// What is lacking, or a word on the figures; empty for none.
    pub text: String,
    /// True where figures make no vessel.
    pub alarming: bool,
    /// The way to what is lacking; empty for none.
    pub way: String,
}

impl App {
    /// The figures of a piece with at least one reading.
    pub(super) fn measures_view(&self, piece: &Piece) -> MeasuresView {
        let words = self.words();
        let title = words.text("wall-measures");
        let shape = match (profile_of(piece), self.too_thick(piece)) {
            (Ok(shape), _) => shape,
            (Err(NoShape::Impossible(e)), _) => {
                return MeasuresView {
                    title,
                    text: self.why_impossible(piece, e),
                    alarming: true,
                    way: words.text("wall-outline-link"),
                    ..MeasuresView::default()
                };
            }
            (Err(_), Some(text)) => {
                return MeasuresView {
                    title,
                    text,
                    alarming: true,
                    way: words.text("wall-outline-link"),
                    ..MeasuresView::default()
                };
            }
            (Err(lacking), None) => {
                let (text, way) = self.lacking(&lacking);
                return MeasuresView {
                    title,
                    text,
                    way,
                    ..MeasuresView::default()
                };
            }
        };
        let row = |id, value| MeasureRow {
            label: words.text(id),
            value,
        };
        let mut view = MeasuresView {
            title,
            rows: vec![
                row("wall-wood-volume", self.volume(shape.wood_cm3(), false)),
                row("wall-holds", self.volume(shape.capacity_ml(), true)),
                row(
                    "wall-centre",
                    words.with(
                        "wall-depth",
                        &[(
                            "depth",
                            self.numbers()
                                .diameter(shape.centre_of_mass_mm())
                                .short()
                                .text()
                                .into(),
                        )],
                    ),
                ),
            ],
            ..MeasuresView::default()
        };
        let label = match piece.stage().group() {
            Group::Roughing | Group::Stabilising => "wall-weight-now",
            Group::Drying => "wall-weight-was",
            // It is dry, and its diameters may be from before: the scale knows better.
            Group::Finishing => {
                view.text = words.text("wall-measures-dried");
                return view;
            }
        };
        if let Some(green) = self.green_weight(piece, &shape) {
            view.weight_label = words.text(label);
            view.weight = self.weight_range(green.mass_g);
            view.weight_note = green.whose;
        }
        view
    }

    /// How the expected weight comes about.
    pub(super) fn weight_sum(&self, piece: &Piece) -> Option<SumView> {
        let words = self.words();
        let shape = profile_of(piece).ok()?;
        let green = self.green_weight(piece, &shape)?;
        Some(SumView {
            title: words.text("wall-weight-title"),
            line: self.weight_range(green.mass_g),
            why: words.with(
                "wall-weight-sum",
                &[
                    ("volume", self.volume(shape.wood_cm3(), false).into()),
                    ("density", format!("{:.0}", green.density).into()),
                    (
                        "moisture",
                        self.numbers().percent(100.0 * green.moisture).text().into(),
                    ),
                    ("weight", self.weight_text(green.mass_g).into()),
                ],
            ),
            source: format!("{} {}", green.whose, words.text("wall-weight-source")),
        })
    }

    /// What is lacking for a shape, and the name of the way to it.
    fn lacking(&self, lacking: &NoShape) -> (String, String) {
        let words = self.words();
        let count = |id: &str, n: usize| words.with(id, &[("n", n.into())]);
        match lacking {
            NoShape::NoHeight => (
                words.text("wall-lacks-height"),
                words.text("wall-lacks-details"),
            ),
            NoShape::FewDiameters(n) => (
                count("wall-lacks-diameters", *n),
                words.text("wall-outline-link"),
            ),
            NoShape::FewWalls(n) => (count("wall-lacks-walls", *n), words.text("wall-measure")),
            NoShape::NoFloor => (
                words.text("wall-lacks-floor"),
                words.text("wall-lacks-floor-way"),
            ),
            NoShape::Impossible(_) => (
                words.text("wall-shape-range"),
                words.text("wall-outline-link"),
            ),
        }
    }

    /// The page where what is lacking is entered; the station to read first where that is the wall page.
    pub(super) fn lacking_page(piece: &Piece) -> (Page, Option<StationRef>) {
        let id = piece.id.clone();
        match profile_of(piece) {
            Err(NoShape::NoHeight) => (Page::Details(id), None),
            Err(NoShape::NoFloor) => (Page::Wall(id), Some(StationRef::Floor)),
            Err(NoShape::FewWalls(_)) => (Page::Wall(id), None),
            _ => (Page::Outline(id), None),
        }
    }

    /// A wall that leaves no hollow in the outside as drawn.
    fn too_thick(&self, piece: &Piece) -> Option<String> {
        let outside = drawn_outside(piece)?;
        let (_, depth_mm, _) = station_places(piece).into_iter().find(|(n, depth, _)| {
            thinnest(piece, StationRef::Wall(*n))
                .is_some_and(|wall| outside.inward(*depth, wall).radius_mm <= 0.0)
        })?;
        Some(self.why_impossible(piece, ProfileError::NoBore { depth_mm }))
    }

    /// Why figures make no vessel, by the station nearest to where it shows.
    pub(super) fn why_impossible(&self, piece: &Piece, error: ProfileError) -> String {
        let words = self.words();
        let (id, depth) = match error {
            ProfileError::TighterThanWall { depth_mm } => ("wall-shape-tight", depth_mm),
            ProfileError::NoBore { depth_mm } => ("wall-shape-no-bore", depth_mm),
            ProfileError::ThroughTheSide { depth_mm } => ("wall-shape-through", depth_mm),
            ProfileError::TooSteep { depth_mm, .. } => ("wall-shape-steep", depth_mm),
            ProfileError::OutsideCloses { .. } => return words.text("wall-shape-closes"),
            ProfileError::BelowFoot { depth_mm, .. } => ("wall-shape-below-foot", depth_mm),
            ProfileError::NoFloor { .. } => return words.text("wall-shape-no-floor"),
            ProfileError::Range(_) | ProfileError::Stations(_) | ProfileError::NoWalls => {
                return words.text("wall-shape-range");
            }
        };
        let places = station_places(piece);
        let away = |i: &usize| (places[*i].1 - depth).abs();
        let Some(nearest) = (0..places.len()).min_by(|a, b| away(a).total_cmp(&away(b))) else {
            return words.text("wall-shape-range");
        };
        let wall = |i: usize| thinnest(piece, StationRef::Wall(places[i].0)).unwrap_or(0.0);
        // Where the inner points of two stations pass one another the thicker wall of the two is the one to look at.
        let named = match (error, nearest.checked_sub(1)) {
            (ProfileError::TighterThanWall { .. }, Some(above)) if wall(above) > wall(nearest) => {
                above
            }
            _ => nearest,
        };
        let station = self.the_station(StationRef::Wall(places[named].0));
        words.with(id, &[("station", station.into())])
    }

    fn green_weight(&self, piece: &Piece, shape: &Profile) -> Option<GreenWeight> {
        let stored = piece
            .details
            .text(evenwall_piece::detail::DetailField::Wood)
            .filter(|s| !s.trim().is_empty());
        let figures = self.wood_figures(stored).figures;
        let mass_g = shape
            .expected_mass_g(figures.density_kg_m3, figures.green_moisture)
            .ok()?;
        let known = stored.and_then(|s| self.known_wood(s));
        let own = matches!(known, Some(Known::Own(_)));
        let name = stored.map(|s| self.wood_name(s));
        let density = self.whose(&figures.density_from, name.as_deref(), own);
        let moisture = self.whose(&figures.green_from, name.as_deref(), own);
        let whose = if density == moisture {
            self.words()
                .with("wall-weight-whose-both", &[("both", density.into())])
        } else {
            self.words().with(
                "wall-weight-whose",
                &[("density", density.into()), ("moisture", moisture.into())],
            )
        };
        Some(GreenWeight {
            mass_g,
            density: figures.density_kg_m3,
            moisture: figures.green_moisture,
            whose,
        })
    }

    /// "mean of European ash", "your own figure", "middle of all hardwoods".
    fn whose(&self, whose: &Whose, wood: Option<&str>, own: bool) -> String {
        let words = self.words();
        match (whose, wood) {
            (Whose::Own, Some(_)) if own => words.text("wall-whose-own"),
            (Whose::Own, Some(wood)) => words.with("wall-whose-mean", &[("wood", wood.into())]),
            (Whose::StandIn(key), _) => words.with(
                "wall-whose-stand-in",
                &[(
                    "wood",
                    find(key, &[])
                        .map_or_else(|| key.clone(), |w| w.name.clone())
                        .into(),
                )],
            ),
            (Whose::General(Kind::Softwood), _) => words.text("wall-whose-softwood"),
            _ => words.text("wall-whose-hardwood"),
        }
    }

    /// A volume of wood, or of what it holds, to about two figures.
    fn volume(&self, cm3: f64, holds: bool) -> String {
        let (id, value) = match (self.numbers().units().length, holds) {
            (LengthUnit::Millimetre, false) => ("wall-volume-cm3", cm3),
            (LengthUnit::Millimetre, true) => ("wall-volume-ml", cm3),
            _ => ("wall-volume-cubic-inches", cm3 / 16.387_064),
        };
        let step = if value >= 200.0 { 10.0 } else { 1.0 };
        let number = format!("{:.0}", (value / step).round() * step);
        self.words().with(id, &[("n", number.into())])
    }

    fn weight_text(&self, g: f64) -> String {
        self.numbers().mass(to_ten(g)).short().text()
    }

    fn weight_range(&self, g: f64) -> String {
        let numbers = self.numbers();
        let at = |share: f64| numbers.mass(to_ten(g * share)).short();
        numbers
            .range(&at(1.0 - WEIGHT_EITHER_WAY), &at(1.0 + WEIGHT_EITHER_WAY))
            .text()
    }
}

/// Figures from the table of woods tell a weight to about ten grams.
fn to_ten(g: f64) -> f64 {
    if g < 100.0 {
        g
    } else {
        (g / 10.0).round() * 10.0
    }
}

/// The weight of green wood and what it rests on.
struct GreenWeight {
    mass_g: f64,
    density: f64,
    moisture: f64,
    whose: String,
}
