//! Summary view: how even the wall is, and where more comes off.

use evenwall_piece::fact::StationRef;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Stage;
use evenwall_piece::wanted;
use evenwall_wood::evenness::{Evenness, Verdict};

use super::measures::MeasuresView;
use super::section_view::{BarScale, BarView};
use super::spot::station_key;
use super::standing::{Judged, Standing, standings};
use super::sum::SumView;
use super::summary::stage_after;
use super::take_off::take_off;
use crate::app::App;
use crate::drawing::{SectionDrawing, compared, section};

/// One station.
#[derive(Debug, Clone, PartialEq)]
pub struct SummaryRow {
    /// Its key.
    pub key: String,
    /// Its number; a letter for the floor.
    pub number: String,
    /// Its name: "shoulder".
    pub name: String,
    /// The reading: "11.5"; a dash for none.
    pub reading: String,
    /// When and how it was taken.
    pub how: String,
    /// `heavy`, `even`, `thin` or empty.
    pub kind: &'static str,
    /// "heavy by 1.5".
    pub verdict: String,
    /// Its bar.
    pub bar: BarView,
    /// Never read, or out of reach.
    pub dashed: bool,
    /// A line of its own: "passed, leave alone", else "from before, measure again".
    pub note: String,
    /// The whole row in words.
    pub label: String,
}

/// One thing to take off.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TakeOffRow {
    /// The station's key.
    pub key: String,
    /// "Station 4", "Floor".
    pub station: String,
    /// Its name.
    pub name: String,
    /// "about 1, then measure".
    pub text: String,
}

/// The page.
#[derive(Debug, Clone, PartialEq)]
pub struct SummaryView {
    /// The mark of the piece.
    pub mark: String,
    /// The title.
    pub title: String,
    /// "Wall wanted 10 mm".
    pub subtitle: String,
    /// "Thickest less thinnest".
    pub spread_label: String,
    /// The figure; a dash below two readings.
    pub spread: String,
    /// Its unit.
    pub unit: String,
    /// "5 of 7 read".
    pub read: String,
    /// The section, small.
    pub drawing: SectionDrawing,
    /// Head of the bars: "wanted 10".
    pub bar_label: String,
    /// The stations and the floor.
    pub rows: Vec<SummaryRow>,
    /// Head of the list.
    pub take_off_title: String,
    /// "from the mouth down".
    pub take_off_order: String,
    /// What comes off, mouth to floor.
    pub take_off: Vec<TakeOffRow>,
    /// Shown where nothing comes off; empty otherwise.
    pub nothing: String,
    /// The title of the box about thin stations; empty for none.
    pub thin_title: String,
    /// Its text.
    pub thin_text: String,
    /// True where a station will not make the finish wall.
    pub alarming: bool,
    /// Takes the best even wall; empty where it is not offered.
    pub best_wall: String,
    /// Leaves it.
    pub leave: String,
    /// Stations that are thin or passed, one line each: "Leave station 2 alone, 1 thin".
    pub alone: Vec<String>,
    /// Stations a little below the wall wanted, within the tolerance, and the best even wall; empty for none.
    pub short: String,
    /// Volume and weight.
    pub measures: MeasuresView,
    /// Head of what the unevenness means while it dries.
    pub drying_title: String,
    /// One sentence; empty where nothing can be said.
    pub drying: String,
    /// The sum that is open.
    pub sum: Option<SumView>,
    /// The word for closing.
    pub close: String,
    /// All even: the sentence; empty otherwise.
    pub even: String,
    /// The one next action.
    pub primary: String,
    /// True where it goes to the next stage, false where it measures again.
    pub goes_on: bool,
    /// A second action: whole round; empty for none.
    pub round: String,
    /// A third: outline and stations.
    pub outline: String,
    /// The word for back.
    pub back: String,
}

impl App {
    /// The result for the piece on top; `None` where there is none.
    #[must_use]
    pub fn wall_summary_view(&self, now: Moment) -> Option<SummaryView> {
        let piece = self.wall_piece()?;
        let words = self.words();
        let numbers = self.numbers();
        let settings = &self.shop().settings;
        let all = standings(piece, settings);
        let walls: Vec<&Standing<'_>> = all
            .iter()
            .filter(|s| s.station != StationRef::Floor)
            .collect();
        let evenness = self.evenness(piece);
        let spread = evenness.as_ref().map(|e| numbers.wall(e.spread_mm()));
        let in_spread = compared(piece);
        let known = walls
            .iter()
            .filter(|s| s.judged.verdict().is_some() && in_spread.contains(&s.station))
            .count();
        let wanted = numbers.wall(wanted::wall_now(piece).mm).short();
        let take_off: Vec<TakeOffRow> = all
            .iter()
            .filter_map(|s| Some((s, take_off(piece, settings, s)?)))
            .map(|(s, off)| TakeOffRow {
                key: station_key(s.station),
                station: self.station_name(s.station),
                name: self.part_name(piece, s.station),
                text: self.take_off_text(off),
            })
            .collect();
        let thin = self.thin_box(piece, &all);
        let short = if thin.title.is_empty() {
            self.short_text(piece, &all)
        } else {
            String::new()
        };
        let even = self.all_even(piece, &all);
        let nothing = if take_off.is_empty() && even.is_empty() && known > 0 {
            words.text("wall-nothing-off")
        } else if known == 0 {
            words.text("wall-nothing-read")
        } else {
            String::new()
        };
        let goes_on = !even.is_empty() && stage_after(piece).is_some();
        Some(SummaryView {
            mark: piece.mark().to_owned(),
            title: words.text("wall-title"),
            subtitle: words.with("wall-wanted-is", &[("wall", wanted.text().into())]),
            spread_label: words.text("wall-thickest-less-thinnest"),
            unit: spread.as_ref().map_or_else(String::new, |s| s.unit.clone()),
            spread: spread.map_or_else(|| numbers.unknown().number, |s| s.number),
            read: words.with(
                "wall-read-of",
                &[("n", known.into()), ("count", walls.len().into())],
            ),
            drawing: section(piece, true),
            bar_label: words.with("wall-bar-label", &[("wall", wanted.number.into())]),
            rows: self.summary_rows(piece, &all, now),
            take_off_title: words.text("wall-take-off"),
            take_off_order: words.text("wall-take-off-order"),
            take_off,
            nothing,
            thin_title: thin.title,
            thin_text: thin.text,
            alarming: thin.alarming,
            best_wall: thin.best_wall,
            leave: words.text("wall-leave"),
            alone: self.alone(&all),
            short,
            measures: if known > 0 {
                self.measures_view(piece)
            } else {
                MeasuresView::default()
            },
            drying_title: words.text("wall-dry-title"),
            drying: self.drying_sentence(piece, evenness.as_ref()),
            sum: self.sum_view(piece),
            close: words.text("action-close"),
            primary: if goes_on {
                stage_after(piece).map_or_else(String::new, |next| {
                    words.with(
                        "wall-on-to",
                        &[("stage", words.text(&format!("stage-{}", next.key())).into())],
                    )
                })
            } else {
                words.text("wall-measure")
            },
            even,
            goes_on,
            round: words.text("wall-whole-round"),
            outline: words.text("wall-outline-link"),
            back: words.text("action-back"),
        })
    }

    /// The figures of the whole wall, over every place round every station compared; `None` below two readings.
    pub(super) fn evenness(&self, piece: &Piece) -> Option<Evenness> {
        let walls: Vec<f64> = compared(piece)
            .into_iter()
            .flat_map(|s| piece.readings_round(s))
            .filter_map(|r| r.reading.wall_mm.as_ref())
            .map(|m| m.value)
            .collect();
        if walls.len() < 2 {
            return None;
        }
        Evenness::of(&walls).ok().flatten()
    }

    /// "shoulder"; empty for the floor and for stations without a name.
    fn part_name(&self, piece: &Piece, station: StationRef) -> String {
        let StationRef::Wall(n) = station else {
            return String::new();
        };
        crate::drawing::station_places(piece)
            .into_iter()
            .find(|p| p.0 == n)
            .filter(|p| !p.2.is_empty())
            .map_or_else(String::new, |p| {
                self.words().text(&format!("wall-name-{}", p.2))
            })
    }

    fn summary_rows(&self, piece: &Piece, all: &[Standing<'_>], now: Moment) -> Vec<SummaryRow> {
        let words = self.words();
        let settings = &self.shop().settings;
        let offs = all.iter().filter_map(|s| match s.judged {
            Judged::Read { off_mm, .. } => Some(off_mm),
            _ => None,
        });
        let scale = BarScale::for_all(offs, wanted::tolerance(piece, settings));
        all.iter()
            .map(|s| {
                let reading = match s.judged {
                    Judged::Read { mm, .. } => self.numbers().wall(mm).number,
                    _ => self.numbers().unknown().number,
                };
                let verdict = match s.judged {
                    Judged::Never => words.text("wall-not-read"),
                    judged => self.verdict_text(judged),
                };
                let note = if s.passed {
                    words.text("wall-passed")
                } else if s.before {
                    words.text("wall-read-before")
                } else {
                    String::new()
                };
                let how = s
                    .shown
                    .map_or_else(String::new, |r| self.when_and_how(r, now));
                let name = match s.station {
                    StationRef::Floor => self.floor_text(piece, s),
                    StationRef::Wall(_) => self.part_name(piece, s.station),
                };
                let station = self.station_name(s.station);
                let said: Vec<&str> = [&station, &name, &reading, &verdict, &how, &note]
                    .into_iter()
                    .map(String::as_str)
                    .filter(|t| !t.is_empty())
                    .collect();
                SummaryRow {
                    key: station_key(s.station),
                    number: match s.station {
                        StationRef::Wall(n) => n.to_string(),
                        StationRef::Floor => words.text("wall-floor-short"),
                    },
                    label: said.join(", "),
                    name,
                    reading,
                    how,
                    kind: Self::verdict_kind(s.judged),
                    verdict,
                    bar: scale.bar(s.judged),
                    dashed: s.judged.verdict().is_none(),
                    note,
                }
            })
            .collect()
    }

    /// "Even. On to Stabilise", once every station is even and the floor is not off; empty before.
    fn all_even(&self, piece: &Piece, all: &[Standing<'_>]) -> String {
        let words = self.words();
        let fine = all.iter().all(|s| match s.station {
            StationRef::Floor => matches!(s.judged.verdict(), None | Some(Verdict::Even)),
            // What was even before it dried is not called even now.
            StationRef::Wall(_) => s.judged.verdict() == Some(Verdict::Even) && !s.before,
        });
        if !fine {
            return String::new();
        }
        match (stage_after(piece), piece.stage()) {
            (Some(next), _) => words.with(
                "wall-even-on-to",
                &[("stage", words.text(&format!("stage-{}", next.key())).into())],
            ),
            (None, Stage::Finish) => words.text("wall-even-finished"),
            (None, _) => words.text("wall-even-all"),
        }
    }
}
