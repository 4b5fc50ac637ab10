//! Pages: the table of the pages of Shop, by key.

use evenwall_piece::rhythm::RhythmOf;

/// The keys of all pages of Shop, in the order in which Shop lists them; those that are opened from another page come last.
pub const PAGES: [&str; 37] = [
    "climate",
    "jaws",
    "bars",
    "scale",
    "woods",
    "walls",
    "bag",
    "days",
    "rhythms",
    "checklists",
    "backup",
    "reminders",
    "devices",
    "tables",
    "tags",
    "care",
    "import",
    "units",
    "words",
    "look",
    "photos",
    "cautions",
    "history",
    "data",
    "about",
    "climate-log",
    "import-column",
    "rhythm-bag",
    "rhythm-air",
    "rhythm-settle",
    "rhythm-indoors",
    "rhythm-paper",
    "rhythm-shavings",
    "rhythm-wax",
    "rhythm-cupboard",
    "rhythm-alcohol",
    "rhythm-once-thin",
];

/// The key of a page as the table holds it; `None` where there is no such page.
#[must_use]
pub fn page_key(key: &str) -> Option<&'static str> {
    PAGES.iter().find(|page| **page == key).copied()
}

/// The rhythm of a page.
#[must_use]
pub fn rhythm_of(page: &str) -> Option<RhythmOf> {
    page.strip_prefix("rhythm-").and_then(RhythmOf::from_key)
}

/// The page of one rhythm; the bag, felt by its own rules, has only its weighings there.
#[must_use]
pub const fn page_of(of: RhythmOf) -> &'static str {
    match of {
        RhythmOf::Bag => "rhythm-bag",
        RhythmOf::Air => "rhythm-air",
        RhythmOf::Settle => "rhythm-settle",
        RhythmOf::Indoors => "rhythm-indoors",
        RhythmOf::Paper => "rhythm-paper",
        RhythmOf::Shavings => "rhythm-shavings",
        RhythmOf::Wax => "rhythm-wax",
        RhythmOf::Cupboard => "rhythm-cupboard",
        RhythmOf::Alcohol => "rhythm-alcohol",
        RhythmOf::OnceThin => "rhythm-once-thin",
    }
}
