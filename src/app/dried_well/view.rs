//! View: what the page shows: how many, kept by band, the curve, the losses, the twins.

use evenwall_piece::dried::Fate;
use evenwall_piece::piece::Moment;

use super::Fared;
use super::bands::Kind;
use super::curve::CurveView;
use super::shares::ShareView;
use crate::action::Action;
use crate::app::App;
use crate::route::Page;
use crate::shop::view::{RowKind, RowView, SectionView};

/// A chip.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OptionView {
    /// Stable key; of a year its number, empty for all.
    pub key: String,
    /// Its word.
    pub text: String,
    /// Chosen.
    pub chosen: bool,
}

/// The page.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct DriedWellView {
    /// Its title.
    pub title: String,
    /// Below it: how many were kept.
    pub subtitle: String,
    /// The word for going back.
    pub back: String,
    /// What the page is and is not.
    pub intro: String,
    /// The years in which drying began; empty where there is only one.
    pub years: Vec<OptionView>,
    /// In place of everything where no piece was ever set to dry.
    pub empty: Option<(String, String)>,
    /// How many of each fate, with what they mean.
    pub summary: Vec<SectionView>,
    /// Above the bands.
    pub by_title: String,
    /// By what the pieces are told apart.
    pub kinds: Vec<OptionView>,
    /// The bands.
    pub shares: Vec<ShareView>,
    /// Whether they differ by more than luck; in their place where drying has decided none.
    pub verdict: String,
    /// Above the curve.
    pub curve_title: String,
    /// The curve.
    pub curve: Option<CurveView>,
    /// Below its title.
    pub curve_note: String,
    /// Day by day, the losses, and the twins.
    pub sections: Vec<SectionView>,
}

impl DriedWellView {
    /// What a touch of the row with this id does.
    #[must_use]
    pub fn touch(&self, id: &str) -> Option<Action> {
        let rows = self.sections.iter().flat_map(|s| &s.rows);
        rows.filter(|row| row.id == id)
            .find_map(|row| row.touch.clone())
    }
}

impl App {
    /// "18 kept, 5 lost in drying".
    fn fates_in_words(&self, fared: &[Fared<'_>]) -> String {
        let count = |fate: Fate| fared.iter().filter(|f| f.dried.fate == fate).count();
        let (kept, lost) = (count(Fate::Kept), count(Fate::Lost));
        if kept + lost == 0 {
            return self.words().text("dried-well-none-decided");
        }
        self.words().with(
            "dried-well-counts",
            &[("kept", kept.into()), ("lost", lost.into())],
        )
    }

    /// The row of Shop that leads here.
    pub(crate) fn dried_well_row(&self, now: Moment) -> RowView {
        RowView::touching(
            RowKind::Open,
            "dried-well",
            self.words().text("dried-well-title"),
            Action::Open(Page::DriedWell),
        )
        .icon("chart")
        .note(self.fates_in_words(&self.dried_well_pieces(now)))
    }

    fn year_chips(&self, all: &[Fared<'_>]) -> Vec<OptionView> {
        let chosen = self.states.dried_well.year;
        let mut years: Vec<i32> = all.iter().map(Fared::year).collect();
        years.sort_unstable_by_key(|y| std::cmp::Reverse(*y));
        years.dedup();
        if years.len() < 2 {
            return Vec::new();
        }
        let everything = OptionView {
            key: String::new(),
            text: self.words().text("dried-well-all-years"),
            chosen: chosen.is_none(),
        };
        let of = |year: i32| OptionView {
            key: year.to_string(),
            text: year.to_string(),
            chosen: chosen == Some(year),
        };
        std::iter::once(everything)
            .chain(years.into_iter().map(of))
            .collect()
    }

    fn kind_chips(&self) -> Vec<OptionView> {
        Kind::ALL
            .into_iter()
            .map(|kind| OptionView {
                key: kind.key().into(),
                text: self.words().text(&format!("dried-well-by-{}", kind.key())),
                chosen: kind == self.states.dried_well.by,
            })
            .collect()
    }

    fn summary_section(&self, fared: &[Fared<'_>]) -> SectionView {
        let words = self.words();
        let mut rows: Vec<RowView> = Fate::ALL
            .into_iter()
            .filter_map(|fate| {
                let n = fared.iter().filter(|f| f.dried.fate == fate).count();
                let label = words.text(&format!("dried-well-count-{}", fate.key()));
                (n > 0 || fate.decided()).then(|| RowView::plain(fate.key(), label, n.to_string()))
            })
            .collect();
        rows.push(RowView::text("counting", words.text("dried-well-counting")));
        SectionView {
            key: "summary",
            rows,
            ..SectionView::default()
        }
    }

    /// What dried well, of the pieces whose drying began in the year chosen.
    #[must_use]
    pub fn dried_well_view(&self, now: Moment) -> DriedWellView {
        let words = self.words();
        let mut fared = self.dried_well_pieces(now);
        let head = DriedWellView {
            title: words.text("dried-well-title"),
            back: words.text("action-back"),
            ..DriedWellView::default()
        };
        if fared.is_empty() {
            let empty = (
                words.text("dried-well-empty-title"),
                words.text("dried-well-empty-text"),
            );
            return DriedWellView {
                empty: Some(empty),
                ..head
            };
        }
        let years = self.year_chips(&fared);
        if let Some(year) = self.states.dried_well.year {
            fared.retain(|f| f.year() == year);
        }
        let (shares, verdict) = self.shares(&fared, self.states.dried_well.by);
        let verdict = if shares.is_empty() {
            words.text("dried-well-undecided")
        } else {
            verdict
        };
        let curve = self.dried_well_curve(&fared);
        let mut sections = Vec::new();
        if !curve.rows.is_empty() {
            sections.push(SectionView {
                key: "steps",
                title: words.text("dried-well-steps"),
                note: words.text("dried-well-steps-note"),
                rows: curve.rows,
                ..SectionView::default()
            });
        }
        sections.extend(self.loss_sections(&fared));
        sections.extend(self.dried_well_forecasts(&fared));
        let mut twins = self.twin_sections(&fared);
        if let Some(first) = twins.first_mut() {
            first.note = words.text("dried-well-twins");
        }
        sections.extend(twins);
        DriedWellView {
            subtitle: self.fates_in_words(&fared),
            intro: words.text("dried-well-intro"),
            years,
            summary: vec![self.summary_section(&fared)],
            by_title: words.text("dried-well-by"),
            kinds: self.kind_chips(),
            shares,
            verdict,
            curve_title: words.text("dried-well-curve"),
            curve: curve.view,
            curve_note: curve.note,
            sections,
            ..head
        }
    }
}
