//! A wood's figures, where each comes from, and what stands in for one that is missing.
//!
//! Table figures are means of a species: one piece lies 15 to 20 % either side in shrinkage and about 10 % in density (from
//! memory). A piece's own readings are always better.

use crate::range::RangeError;
use crate::shrinkage::shrinkage;

/// Where a figure was taken from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Source {
    /// Wood Handbook table 4-1, green moisture.
    Handbook41,
    /// The same, recalled.
    Handbook41Memory,
    /// Wood Handbook table 4-3, shrinkage.
    Handbook43,
    /// The same, recalled.
    Handbook43Memory,
    /// Wood Handbook table 5-3b, specific gravity.
    Handbook53b,
    /// Worked out from the coefficients of Wood Handbook table 13-5.
    Handbook135,
    /// Miles and Smith 2009, the species itself.
    Forest2009,
    /// Miles and Smith 2009, an average of a genus or wider.
    Forest2009Group,
    /// DIN 68100 as reprinted, one value.
    Din68100,
    /// DIN 68100 as reprinted, the middle of a range.
    Din68100Middle,
    /// Worked out from a published green density of stem wood.
    GreenDensity,
    /// Two trade data sheets that agree.
    TradeSheets,
    /// Recalled, no source seen.
    Memory,
    /// The turner's own figure.
    Own,
}

/// How a figure was come by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Basis {
    /// Seen in the text of the source.
    Read,
    /// Worked out from a figure that was seen.
    WorkedOut,
    /// From memory: check before relying on it.
    Memory,
    /// Given by the turner.
    Own,
}

impl Source {
    /// Every source, as the table names them.
    pub const ALL: [(Source, &'static str); 14] = [
        (Source::Handbook41, "handbook-4-1"),
        (Source::Handbook41Memory, "handbook-4-1-memory"),
        (Source::Handbook43, "handbook-4-3"),
        (Source::Handbook43Memory, "handbook-4-3-memory"),
        (Source::Handbook53b, "handbook-5-3b"),
        (Source::Handbook135, "handbook-13-5"),
        (Source::Forest2009, "forest-2009"),
        (Source::Forest2009Group, "forest-2009-group"),
        (Source::Din68100, "din-68100"),
        (Source::Din68100Middle, "din-68100-middle"),
        (Source::GreenDensity, "green-density"),
        (Source::TradeSheets, "trade-sheets"),
        (Source::Memory, "memory"),
        (Source::Own, "own"),
    ];

    /// The source with the key `key`.
    pub fn from_key(key: &str) -> Option<Source> {
        Source::ALL
            .into_iter()
            .find(|(_, k)| *k == key)
            .map(|(source, _)| source)
    }

    /// The title of the publication, in English.
    pub fn title(self) -> &'static str {
        match self {
            Source::Handbook41 | Source::Handbook41Memory => "Wood Handbook FPL-GTR-190, table 4-1",
            Source::Handbook43 | Source::Handbook43Memory => "Wood Handbook FPL-GTR-190, table 4-3",
            Source::Handbook53b => "Wood Handbook FPL-GTR-282, table 5-3b",
            Source::Handbook135 => "Wood Handbook FPL-GTR-190, table 13-5",
            Source::Forest2009 => "Miles and Smith 2009, USDA Forest Service NRS-38",
            Source::Forest2009Group => {
                "Miles and Smith 2009, USDA Forest Service NRS-38, average of a group"
            }
            Source::Din68100 => "DIN 68100 as reprinted",
            Source::Din68100Middle => "DIN 68100 as reprinted, middle of its range",
            Source::GreenDensity => "published green density of stem wood over the basic density",
            Source::TradeSheets => "two trade data sheets",
            Source::Memory => "no source seen",
            Source::Own => "own figure",
        }
    }

    /// How figures of this source were come by.
    pub fn basis(self) -> Basis {
        match self {
            Source::Handbook41Memory | Source::Handbook43Memory | Source::Memory => Basis::Memory,
            Source::GreenDensity | Source::Handbook135 => Basis::WorkedOut,
            Source::Own => Basis::Own,
            _ => Basis::Read,
        }
    }
}

/// Hardwood or softwood, in the botanical sense.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Kind {
    /// Broad-leaved.
    Hardwood,
    /// Coniferous, yew included.
    Softwood,
}

/// Where a wood grows; decides whose trees "sycamore" or "cherry" are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Continent {
    /// North America.
    NorthAmerica,
    /// Europe.
    Europe,
    /// Both, or a wood of the turner's own.
    Both,
}

/// Shrinkage from green to oven-dry, as fractions of the green size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shrinkages {
    /// Along the rays, across the rings.
    pub radial: f64,
    /// Along the rings.
    pub tangential: f64,
    /// Where both come from.
    pub source: Source,
}

impl Shrinkages {
    /// Radial and tangential shrinkage (fractions of the green size) from green to `moisture` (fraction).
    ///
    /// # Errors
    /// [`RangeError`] when a figure is out of range; see [`shrinkage`].
    pub fn at(&self, moisture: f64) -> Result<(f64, f64), RangeError> {
        Ok((
            shrinkage(self.radial, moisture)?,
            shrinkage(self.tangential, moisture)?,
        ))
    }

    /// What makes a round section oval: tangential less radial.
    pub fn difference(&self) -> f64 {
        self.tangential - self.radial
    }
}

/// A density with its source.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Density {
    /// Oven-dry mass over green volume, kg/m3.
    pub kg_m3: f64,
    /// Where it comes from.
    pub source: Source,
}

/// Moisture of freshly felled wood, fractions of the oven-dry mass.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GreenMoisture {
    /// Heartwood.
    pub heart: Option<f64>,
    /// Sapwood.
    pub sap: Option<f64>,
    /// The whole stem.
    pub whole: Option<f64>,
    /// Where they come from.
    pub source: Source,
}

impl GreenMoisture {
    /// One figure for a vessel: the mean of heart and sap where both are known, else the one that is, else the whole stem.
    pub fn usual(&self) -> Option<f64> {
        match (self.heart, self.sap, self.whole) {
            (Some(heart), Some(sap), _) => Some(0.5 * (heart + sap)),
            (Some(one), None, _) | (None, Some(one), _) | (None, None, Some(one)) => Some(one),
            (None, None, None) => None,
        }
    }
}

/// One wood, from the table or the turner's own.
#[derive(Debug, Clone, PartialEq)]
pub struct Wood {
    /// A short name that never changes ("white-ash").
    pub key: String,
    /// Common name.
    pub name: String,
    /// Botanical name.
    pub botanical: String,
    /// What else it is called.
    pub other_names: Vec<String>,
    /// Where it grows.
    pub continent: Continent,
    /// Hardwood or softwood.
    pub kind: Kind,
    /// Shrinkage from green to oven-dry.
    pub shrinkages: Option<Shrinkages>,
    /// What another source says, where two disagree.
    pub other_shrinkages: Option<Shrinkages>,
    /// Basic density.
    pub density: Option<Density>,
    /// Moisture when felled.
    pub green: Option<GreenMoisture>,
    /// Moulds easily in a bag. Common practice, no source.
    pub moulds_easily: bool,
    /// Key of the wood whose figures stand in for missing ones.
    pub falls_back_on: Option<String>,
}

/// Whose figure it is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Whose {
    /// The wood's own.
    Own,
    /// That of another wood, by key.
    StandIn(String),
    /// The middle of its kind in this table.
    General(Kind),
}

/// The figures to reckon with, none missing.
#[derive(Debug, Clone, PartialEq)]
pub struct Figures {
    /// Shrinkage from green to oven-dry.
    pub shrinkages: Shrinkages,
    /// Whose they are.
    pub shrinkages_from: Whose,
    /// Where sources disagree: the pair with the larger difference, to be used for the wall to leave. Else as `shrinkages`.
    pub cautious: Shrinkages,
    /// Basic density, kg/m3.
    pub density_kg_m3: f64,
    /// Whose it is.
    pub density_from: Whose,
    /// Moisture when felled, fraction.
    pub green_moisture: f64,
    /// Whose it is.
    pub green_from: Whose,
}

/// Middle figures of a kind: radial and tangential shrinkage, basic density kg/m3, green moisture. Medians of this table.
pub fn general(kind: Kind) -> (f64, f64, f64, f64) {
    match kind {
        Kind::Hardwood => GENERAL_HARDWOOD,
        Kind::Softwood => GENERAL_SOFTWOOD,
    }
}

const GENERAL_HARDWOOD: (f64, f64, f64, f64) = (0.048, 0.086, 520.0, 0.75);
const GENERAL_SOFTWOOD: (f64, f64, f64, f64) = (0.038, 0.062, 420.0, 0.96);

impl Wood {
    /// The figures to reckon with: the wood's own, else those of the wood it falls back on (looked for in `own` and then in
    /// the table), else the middle of its kind.
    pub fn figures(&self, own: &[Wood]) -> Figures {
        let stand_in = self
            .falls_back_on
            .as_deref()
            .and_then(|key| crate::woods_table::find(key, own));
        let (radial, tangential, density, green) = general(self.kind);
        let pick = |mine: bool, theirs: bool| match stand_in {
            _ if mine => Whose::Own,
            Some(other) if theirs => Whose::StandIn(other.key.clone()),
            _ => Whose::General(self.kind),
        };
        let shrinkages = self
            .shrinkages
            .or_else(|| stand_in.and_then(|w| w.shrinkages));
        let density_kg_m3 = self.density.or_else(|| stand_in.and_then(|w| w.density));
        let usual = |w: &Wood| w.green.and_then(|g| g.usual());
        let middle = Shrinkages {
            radial,
            tangential,
            source: Source::Memory,
        };
        let chosen = shrinkages.unwrap_or(middle);
        let cautious = match self.other_shrinkages {
            Some(other) if other.difference() > chosen.difference() => other,
            _ => chosen,
        };
        Figures {
            shrinkages: chosen,
            shrinkages_from: pick(
                self.shrinkages.is_some(),
                stand_in.is_some_and(|w| w.shrinkages.is_some()),
            ),
            cautious,
            density_kg_m3: density_kg_m3.map_or(density, |d| d.kg_m3),
            density_from: pick(
                self.density.is_some(),
                stand_in.is_some_and(|w| w.density.is_some()),
            ),
            green_moisture: usual(self)
                .or_else(|| stand_in.and_then(usual))
                .unwrap_or(green),
            green_from: pick(usual(self).is_some(), stand_in.and_then(usual).is_some()),
        }
    }
}

/// The figures of a wood that is not known: the middle of the hardwoods.
pub fn unknown_wood() -> Figures {
    let (radial, tangential, density_kg_m3, green_moisture) = general(Kind::Hardwood);
    let shrinkages = Shrinkages {
        radial,
        tangential,
        source: Source::Memory,
    };
    Figures {
        shrinkages,
        shrinkages_from: Whose::General(Kind::Hardwood),
        cautious: shrinkages,
        density_kg_m3,
        density_from: Whose::General(Kind::Hardwood),
        green_moisture,
        green_from: Whose::General(Kind::Hardwood),
    }
}
