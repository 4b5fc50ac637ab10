//! Report: the story of a piece put together, for the shop or for whoever buys it.
//!
//! The buyer's version leaves out what is the shop's own: notes, the notes of flaws, place, source and log, the reasons of
//! decisions, who wrote what. Whoever hands it on sees it first: it is a page like any other.

mod curve;
mod half_section;
mod images;
mod story;

use std::collections::BTreeMap;

use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::{End, PieceFact, StationRef};
use evenwall_piece::ids::{FlawId, PieceId};
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::shop::ShopFact;
use evenwall_piece::weights::last_weighing;
use evenwall_records::paper::Paper;
use evenwall_records::report::{self, FlawStory, Part, Report, ReportPhoto};

use crate::app::{App, AppError};
use crate::details;
use crate::device::PaperChoice;
use crate::drawing::{station_places, thinnest};

/// The setting of the workshop that holds the care words; one blank means none.
pub const CARE_WORDS: &str = "care_words";

/// The most letters of the care words.
pub const LONGEST_CARE: usize = 4000;

/// For whom a report is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Version {
    /// With everything.
    Shop,
    /// Without what is the shop's own.
    Buyer,
}

/// The pictures of a report, as whoever holds the photos gives them.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ReportImages {
    /// The portrait.
    pub portrait: Option<ReportPhoto>,
    /// Photos of flaws.
    pub flaws: BTreeMap<FlawId, Vec<ReportPhoto>>,
    /// Other photos by time.
    pub others: Vec<ReportPhoto>,
}

/// A report that is wanted.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ReportOrder {
    /// Of which piece.
    pub piece: PieceId,
    /// For whom.
    pub version: Version,
    /// The whole path of the file.
    pub path: String,
    /// Its pictures.
    pub images: ReportImages,
}

pub(crate) const fn paper(choice: PaperChoice) -> Paper {
    match choice {
        PaperChoice::A4 => Paper::A4,
        PaperChoice::Letter => Paper::Letter,
    }
}

impl App {
    /// The report of a piece as the text of one HTML file; `None` where there is no such piece.
    #[must_use]
    pub fn report(
        &self,
        piece: &PieceId,
        version: Version,
        images: &ReportImages,
        now: Moment,
    ) -> Option<String> {
        let piece = self.piece(piece)?;
        Some(report::write(&self.report_of(piece, version, images, now)))
    }

    /// The name of the file of a report: `K07-report.html`.
    #[must_use]
    pub fn report_file_name(&self, piece: &PieceId) -> String {
        let mark = self.mark_of(piece);
        let plain: String = mark
            .chars()
            .map(|c| if c.is_alphanumeric() { c } else { '-' })
            .collect();
        format!("{plain}-report.html")
    }

    fn report_of(
        &self,
        piece: &Piece,
        version: Version,
        images: &ReportImages,
        now: Moment,
    ) -> Report {
        let words = self.words();
        let (mark, wood) = (self.mark_of(&piece.id), self.wood_of(piece));
        let title = if wood.is_empty() {
            mark
        } else {
            words.with(
                "records-report-name",
                &[("mark", mark.into()), ("wood", wood.into())],
            )
        };
        let part = |id: &str| words.text(id);
        let day = self.dates(now).full(now.date_naive());
        Report {
            language: words.language().key().to_owned(),
            paper: paper(self.device().paper),
            title,
            subtitle: self.report_subtitle(piece, now),
            portrait: images.portrait.clone(),
            section: self.report_section(piece),
            facts: Part {
                title: part("records-report-facts"),
                holds: self.report_facts(piece, version, now),
            },
            story: Part {
                title: part("records-report-story"),
                holds: self.report_chapters(piece, version, now),
            },
            curve: self.report_curve(piece, now).map(|holds| Part {
                title: part("records-report-curve"),
                holds,
            }),
            flaws: Part {
                title: part("records-report-flaws"),
                holds: self.report_flaws(piece, version, images, now),
            },
            photos: Part {
                title: part("records-report-photos"),
                holds: images.others.clone(),
            },
            care: Part {
                title: part("records-report-care"),
                // A piece that is still drying wants other care.
                holds: if matches!(piece.end, Some((_, End::Finished))) {
                    self.care_words()
                } else {
                    Vec::new()
                },
            },
            notes: Part {
                title: part("records-report-notes"),
                holds: match version {
                    Version::Shop => self.report_notes(piece, now),
                    Version::Buyer => Vec::new(),
                },
            },
            footer: words.with("records-report-footer", &[("day", day.into())]),
        }
    }

    fn report_subtitle(&self, piece: &Piece, now: Moment) -> String {
        let words = self.words();
        let form = words.text(&format!("form-{}", piece.details.form().key()));
        match &piece.end {
            Some((at, End::Finished)) => {
                let day = self.dates(now).full(at.date_naive());
                words.with(
                    "records-report-finished",
                    &[("form", form.into()), ("day", day.into())],
                )
            }
            _ => words.with(
                "records-report-stands",
                &[
                    ("form", form.into()),
                    ("stands", self.whereabouts(piece, now).into()),
                ],
            ),
        }
    }

    /// Label and value of what is known, in the order of a form, then walls, weight and finish.
    fn report_facts(&self, piece: &Piece, version: Version, now: Moment) -> Vec<(String, String)> {
        use DetailField as F;
        let words = self.words();
        let mut facts = Vec::new();
        let mut shown = vec![F::Wood, F::Grain, F::Felled];
        if version == Version::Shop {
            shown.extend([F::Pith, F::Source, F::Log, F::Place]);
        }
        if piece.details.text(F::FinishedSize).is_some() {
            shown.push(F::FinishedSize);
        } else {
            shown.extend([F::Diameter, F::Height]);
        }
        for field in shown {
            let Some(value) = piece.details.get(field) else {
                continue;
            };
            let text = details::value_text(self, field, value);
            let unit = details::unit(self, field);
            let mut text = if unit.is_empty() {
                text
            } else {
                format!("{text}\u{a0}{unit}")
            };
            if field == F::Wood {
                let stored = piece.details.text(F::Wood).unwrap_or_default();
                let botanical = self
                    .known_wood(stored)
                    .map_or_else(String::new, |w| w.botanical().to_owned());
                if !botanical.is_empty() {
                    text = format!("{text} ({botanical})");
                }
            }
            facts.push((details::label(self, field), text));
        }
        if let Some(walls) = self.report_walls(piece) {
            facts.push((words.text("records-report-wall"), walls));
        }
        if let Some(floor) = thinnest(piece, StationRef::Floor) {
            facts.push((words.text("part-floor"), self.numbers().wall(floor).text()));
        }
        if let Some(last) = last_weighing(piece, now) {
            let step = self.shop().scale_step_at(last.at);
            let weight = self.numbers().mass_by_scale(last.net_g(), step).text();
            facts.push((words.text("records-report-weight"), weight));
        }
        let coats: Vec<&str> = {
            let mut seen: Vec<&str> = Vec::new();
            for (_, coat) in &piece.finish.coats {
                if !seen.contains(&coat.as_str()) {
                    seen.push(coat);
                }
            }
            seen
        };
        if !coats.is_empty() {
            facts.push((words.text("records-report-finish"), coats.join("; ")));
        }
        if let Some((_, signed)) = &piece.finish.signed {
            facts.push((words.text("records-report-signed"), signed.clone()));
        }
        facts
    }

    /// "4.5 to 5.5 mm": the thinnest of each station, over all of them.
    pub(super) fn report_walls(&self, piece: &Piece) -> Option<String> {
        let walls: Vec<f64> = station_places(piece)
            .into_iter()
            .filter_map(|(n, ..)| thinnest(piece, StationRef::Wall(n)))
            .collect();
        let low = walls.iter().copied().reduce(f64::min)?;
        let high = walls.iter().copied().reduce(f64::max)?;
        let numbers = self.numbers();
        Some(
            numbers
                .range(&numbers.wall(low), &numbers.wall(high))
                .text(),
        )
    }

    fn report_flaws(
        &self,
        piece: &Piece,
        version: Version,
        images: &ReportImages,
        now: Moment,
    ) -> Vec<FlawStory> {
        let dates = self.dates(now);
        piece
            .flaws
            .iter()
            .map(|flaw| {
                let mut lines = Vec::new();
                for entry in piece.diary.iter().filter(|e| !e.retracted) {
                    let about = match &entry.fact {
                        PieceFact::FlawFound(note) => &note.flaw,
                        PieceFact::FlawTreated(treated) => &treated.flaw,
                        PieceFact::FlawLooked { flaw, .. } => flaw,
                        _ => continue,
                    };
                    if *about != flaw.note.flaw {
                        continue;
                    }
                    let fact = match (&entry.fact, version) {
                        // What was written about it is the shop's own.
                        (PieceFact::FlawFound(note), Version::Buyer) => {
                            let mut note = note.clone();
                            note.note.clear();
                            PieceFact::FlawFound(note)
                        }
                        (fact, _) => fact.clone(),
                    };
                    let told = self.describe(piece, &fact);
                    let what = if told.note.is_empty() {
                        told.title
                    } else {
                        format!("{} ({})", told.title, told.note)
                    };
                    let day = dates.full(entry.at.date_naive());
                    lines.push(format!("{day}: {what}"));
                }
                FlawStory {
                    title: self.flaw_title(flaw),
                    lines,
                    photos: images
                        .flaws
                        .get(&flaw.note.flaw)
                        .cloned()
                        .unwrap_or_default(),
                }
            })
            .collect()
    }

    fn report_notes(&self, piece: &Piece, now: Moment) -> Vec<String> {
        let dates = self.dates(now);
        let own = piece.details.text(DetailField::Notes).map(str::to_owned);
        let noted = piece.diary.iter().filter(|e| !e.retracted);
        let noted = noted.filter_map(|e| match &e.fact {
            PieceFact::Note(text) => Some(format!("{}: {text}", dates.full(e.at.date_naive()))),
            _ => None,
        });
        own.into_iter().chain(noted).collect()
    }

    /// How to care for a finished piece, a paragraph each: the turner's own words, or the usual ones; none where the turner
    /// wants none.
    #[must_use]
    pub fn care_words(&self) -> Vec<String> {
        let usual = self.words().text("records-care-usual");
        let text = self.shop().stored.get(CARE_WORDS).unwrap_or(&usual);
        text.lines()
            .map(str::trim)
            .filter(|l| !l.is_empty())
            .map(str::to_owned)
            .collect()
    }

    /// Sets the care words; `None` goes back to the usual ones, a blank text wants none.
    pub(crate) fn set_care_words(
        &mut self,
        text: Option<String>,
        now: Moment,
    ) -> Result<(), AppError> {
        let count = text.as_ref().map_or(0, |t| t.chars().count());
        if count > LONGEST_CARE {
            return Err(AppError::Refused(self.words().with(
                "records-care-long",
                &[("n", count.into()), ("most", LONGEST_CARE.into())],
            )));
        }
        let value = match text {
            None => String::new(),
            Some(text) if text.trim().is_empty() => " ".to_owned(),
            Some(text) => text,
        };
        if self
            .shop()
            .stored
            .get(CARE_WORDS)
            .map_or("", String::as_str)
            == value
        {
            return Ok(());
        }
        let fact = ShopFact::Setting {
            key: CARE_WORDS.into(),
            value,
        };
        self.record_shop(now, vec![fact], now)?;
        let said = self.words().text("records-care-changed");
        self.say(said);
        Ok(())
    }

    pub(crate) fn save_report(&mut self, order: &ReportOrder, now: Moment) -> Result<(), AppError> {
        match self.report(&order.piece, order.version, &order.images, now) {
            Some(page) => self.save_record(&order.path, page.as_bytes()),
            None => Err(AppError::Refused(self.words().text("records-no-piece"))),
        }
    }
}
