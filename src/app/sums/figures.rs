//! The figures of a wood to reckon with, and in words what they rest on.

use evenwall_piece::shop::OwnWood;
use evenwall_wood::section::Strains;
use evenwall_wood::shrinkage::shrinkage;
use evenwall_wood::woods::{
    Continent, Density, Figures, GreenMoisture, Kind, Shrinkages, Source, Whose, Wood, unknown_wood,
};
use evenwall_wood::woods_table::{find, table};

use crate::app::App;
use crate::woods::Known;

/// The figures of a wood, none missing, with their basis.
#[derive(Debug, Clone, PartialEq)]
pub struct WoodFigures {
    /// The figures.
    pub figures: Figures,
    /// A sentence that says whose they are: the wood's mean, those of a relative, or the middle of all hardwoods.
    pub whose: String,
}

impl WoodFigures {
    /// Shrinkage from green to `moisture` (fraction), the larger movement where two sources disagree: for a wall to leave.
    #[must_use]
    pub fn strains(&self, moisture: f64) -> Strains {
        strains(self.figures.cautious, moisture)
    }

    /// The same by the wood's first source: for what to expect.
    #[must_use]
    pub fn usual_strains(&self, moisture: f64) -> Strains {
        strains(self.figures.shrinkages, moisture)
    }
}

fn strains(of: Shrinkages, moisture: f64) -> Strains {
    let at = |s| shrinkage(s, moisture).unwrap_or(0.0);
    Strains {
        radial: at(of.radial),
        tangential: at(of.tangential),
    }
}

impl App {
    /// A wood of the turner's own, as the science layer wants it. What it does not say falls back on the table's wood of the
    /// same name, if there is one.
    fn own_as_wood(own: &OwnWood) -> Wood {
        let lower = own.name.trim().to_lowercase();
        let same = table()
            .iter()
            .find(|w| w.name.to_lowercase() == lower || w.key == own.id);
        let pct = |p: Option<f64>| p.map(|p| p / 100.0);
        Wood {
            key: own.id.clone(),
            name: own.name.clone(),
            botanical: String::new(),
            other_names: Vec::new(),
            continent: Continent::Both,
            kind: same.map_or(Kind::Hardwood, |w| w.kind),
            shrinkages: match (pct(own.radial_pct), pct(own.tangential_pct)) {
                (Some(radial), Some(tangential)) => Some(Shrinkages {
                    radial,
                    tangential,
                    source: Source::Own,
                }),
                _ => None,
            },
            other_shrinkages: None,
            density: own.density_kg_m3.map(|kg_m3| Density {
                kg_m3,
                source: Source::Own,
            }),
            green: pct(own.green_mc_pct).map(|whole| GreenMoisture {
                heart: None,
                sap: None,
                whole: Some(whole),
                source: Source::Own,
            }),
            moulds_easily: own.moulds_easily,
            falls_back_on: same.map(|w| w.key.clone()),
        }
    }

    /// The figures of a stored wood; those of a middle hardwood where it is not said or not known.
    #[must_use]
    pub fn wood_figures(&self, stored: Option<&str>) -> WoodFigures {
        let words = self.words();
        let known = stored.and_then(|s| self.known_wood(s));
        let figures = match &known {
            Some(Known::Table(wood)) => wood.figures(&[]),
            Some(Known::Own(own)) => Self::own_as_wood(own).figures(&[]),
            None => unknown_wood(),
        };
        let name = known.as_ref().map(Known::name);
        let own = matches!(known, Some(Known::Own(_)));
        let whose = match (&figures.shrinkages_from, name) {
            (Whose::Own, Some(name)) if own => {
                words.with("sums-own-figures", &[("wood", name.into())])
            }
            (Whose::Own, Some(name)) => words.with("sums-mean", &[("wood", name.into())]),
            (Whose::StandIn(other), Some(name)) => words.with(
                "sums-stand-in",
                &[
                    ("wood", name.into()),
                    (
                        "other",
                        find(other, &[])
                            .map_or_else(|| other.clone(), |w| w.name.clone())
                            .into(),
                    ),
                ],
            ),
            (Whose::General(kind), Some(name)) => words.with(
                "sums-general",
                &[
                    ("wood", name.into()),
                    (
                        "kind",
                        match kind {
                            Kind::Hardwood => "hard",
                            Kind::Softwood => "soft",
                        }
                        .into(),
                    ),
                ],
            ),
            (_, None) => match stored.map(str::trim).filter(|s| !s.is_empty()) {
                Some(typed) => words.with(
                    "sums-general",
                    &[
                        ("wood", self.wood_name(typed).into()),
                        ("kind", "hard".into()),
                    ],
                ),
                None => words.text("sums-wood-unsaid"),
            },
        };
        WoodFigures { figures, whose }
    }
}
