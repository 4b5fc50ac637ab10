//! Story: what happened stage by stage, told in few lines.

use evenwall_piece::fact::PieceFact;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::vocabulary::BagFeel;
use evenwall_records::report::Chapter;

use super::Version;
use crate::app::App;

/// A stay in a stage: from when, until when; the first takes in what was dated before it.
struct Stay {
    from: Option<Moment>,
    to: Option<Moment>,
}

impl Stay {
    fn holds(&self, at: Moment) -> bool {
        self.from.is_none_or(|from| at >= from) && self.to.is_none_or(|to| at < to)
    }
}

impl App {
    pub(super) fn report_chapters(
        &self,
        piece: &Piece,
        version: Version,
        now: Moment,
    ) -> Vec<Chapter> {
        let words = self.words();
        let dates = self.dates(now);
        let ended = piece.end.as_ref().map(|(at, _)| *at);
        let mut chapters = Vec::new();
        for (place, visit) in piece.visits.iter().enumerate() {
            let next = piece.visits.get(place + 1).map(|v| v.since);
            let stay = Stay {
                from: (place > 0).then_some(visit.since),
                to: next,
            };
            let first = dates.full(visit.since.date_naive());
            let last = next.or(ended).map(|at| dates.full(at.date_naive()));
            let span = match last {
                Some(last) if last == first => first,
                Some(last) => words.with(
                    "records-story-span",
                    &[("first", first.into()), ("last", last.into())],
                ),
                None => words.with("records-story-since", &[("first", first.into())]),
            };
            chapters.push(Chapter {
                title: words.text(&format!("stage-{}", visit.stage.key())),
                dates: span,
                lines: self.report_chapter_lines(piece, &stay, version, now),
            });
        }
        if let Some((at, end)) = &piece.end {
            let told = self.describe(piece, &PieceFact::Ended(end.clone()));
            chapters.push(Chapter {
                title: told.title,
                dates: dates.full(at.date_naive()),
                lines: match version {
                    Version::Shop => vec![told.note],
                    Version::Buyer => Vec::new(),
                },
            });
        }
        chapters
    }

    fn report_chapter_lines(
        &self,
        piece: &Piece,
        stay: &Stay,
        version: Version,
        now: Moment,
    ) -> Vec<String> {
        let words = self.words();
        let numbers = self.numbers();
        let mut lines = Vec::new();
        let walls: Vec<f64> = piece
            .readings
            .iter()
            .filter(|r| stay.holds(r.at))
            .filter(|r| r.reading.station != evenwall_piece::fact::StationRef::Floor)
            .filter_map(|r| r.reading.wall_mm.as_ref().map(|m| m.value))
            .filter(|mm| mm.is_finite())
            .collect();
        if let (Some(low), Some(high)) = (
            walls.iter().copied().reduce(f64::min),
            walls.iter().copied().reduce(f64::max),
        ) {
            let range = numbers
                .range(&numbers.wall(low), &numbers.wall(high))
                .text();
            lines.push(words.with(
                "records-story-walls",
                &[("n", walls.len().into()), ("range", range.into())],
            ));
        }
        lines.extend(self.report_looks(piece, stay, now));
        let weights: Vec<f64> = piece
            .weighings
            .iter()
            .filter(|w| stay.holds(w.at) && w.net_g().is_finite())
            .map(evenwall_piece::piece::Weighing::net_g)
            .collect();
        if let [first, .., last] = weights.as_slice() {
            lines.push(words.with(
                "records-story-weights",
                &[
                    ("n", weights.len().into()),
                    ("from", numbers.mass(*first).text().into()),
                    ("to", numbers.mass(*last).text().into()),
                ],
            ));
        } else if let [only] = weights.as_slice() {
            lines.push(words.with(
                "records-story-weight",
                &[("mass", numbers.mass(*only).text().into())],
            ));
        }
        let told = |fact: &PieceFact| {
            matches!(
                fact,
                PieceFact::MethodChosen(_)
                    | PieceFact::Cracks(_)
                    | PieceFact::Oval { .. }
                    | PieceFact::SpigotTrued(_)
                    | PieceFact::Grits(_)
                    | PieceFact::Coat(_)
                    | PieceFact::Signed(_)
            ) || version == Version::Shop
                && matches!(
                    fact,
                    PieceFact::TrueDecided { .. }
                        | PieceFact::MassChanged(_)
                        | PieceFact::HalfTurned
                )
        };
        let mut entries: Vec<_> = piece
            .diary
            .iter()
            .filter(|e| !e.retracted && stay.holds(e.at) && told(&e.fact))
            .collect();
        entries.sort_by_key(|e| e.at);
        for entry in entries {
            let line = self.describe(piece, &entry.fact);
            let own = matches!(entry.fact, PieceFact::TrueDecided { .. });
            lines.push(if own && !line.note.is_empty() {
                format!("{}: {}", line.title, line.note)
            } else {
                line.title
            });
        }
        lines
    }

    /// "Bag felt 9 times: 3 wet, 4 damp, 2 with nothing on it", and when mould or a crack was seen.
    fn report_looks(&self, piece: &Piece, stay: &Stay, now: Moment) -> Vec<String> {
        let words = self.words();
        let looks = || piece.looks.iter().filter(|l| stay.holds(l.at));
        let felt = |feel| looks().filter(|l| l.feel == Some(feel)).count();
        let (wet, damp, nothing) = (
            felt(BagFeel::Wet),
            felt(BagFeel::Damp),
            felt(BagFeel::Nothing),
        );
        let mut lines = Vec::new();
        let all = wet + damp + nothing;
        if all > 0 {
            lines.push(words.with(
                "records-story-bag",
                &[
                    ("n", all.into()),
                    ("wet", wet.into()),
                    ("damp", damp.into()),
                    ("nothing", nothing.into()),
                ],
            ));
        }
        let over = looks().filter(|l| l.feel.is_none()).count();
        if over > 0 {
            lines.push(words.with("records-story-looked", &[("n", over.into())]));
        }
        let dates = self.dates(now);
        let seen =
            |id: &str, at: Moment| words.with(id, &[("day", dates.full(at.date_naive()).into())]);
        if let Some(look) = looks().find(|l| l.mould) {
            lines.push(seen("records-story-mould", look.at));
        }
        if let Some(look) = looks().find(|l| l.crack) {
            lines.push(seen("records-story-crack", look.at));
        }
        lines
    }
}
