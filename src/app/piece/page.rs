//! Page: the page of a piece put together: head, section with its last readings, path, caution, checklist, ways.

use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::{End, StationRef};
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{LostHow, LostWhere, LostWhy, Method, Taken};
use evenwall_piece::wanted;
use evenwall_wood::evenness::{Tolerance, Verdict, verdict};

use crate::app::App;
use crate::drawing::{SectionDrawing, section};
use crate::piece::PieceSheet;
use crate::piece::ending::EndKind;
use crate::piece::view::{EndedView, HeadView, PieceView, StageView, StationView};
use crate::words::Arg;
use crate::words::dates::Dates;

impl App {
    /// The page of the piece on top; `None` where it is gone.
    #[must_use]
    pub fn piece_view(&self, now: Moment) -> Option<PieceView> {
        let piece = self.piece_on_page()?;
        let words = self.words();
        let drawing = section(piece, true);
        let stations = self.station_views(piece, &drawing);
        let read = stations.iter().filter(|s| s.read).count();
        let all = stations.len();
        let stage = piece.stage();
        let stage_name = words.text(&format!("stage-{}", stage.key()));
        let ended = self.ended_view(piece, now);
        let (lines, count) = self.checklist_of_stage(piece, stage, false);
        let earlier = self.earlier_views(piece);
        let open = self.states.piece.earlier;
        let (next, then) = self.next_step(piece, now);
        let (caution, caution_note) =
            first_sentence(&words.text(&format!("caution-{}", stage.key())));
        Some(PieceView {
            head: self.head_of(piece),
            banners: self.banners(piece, now),
            section_label: words.with(
                "piece-section-label",
                &[("read", read.into()), ("all", all.into())],
            ),
            legend: self.legend(piece, &drawing, &stations),
            section: drawing,
            stations,
            stages: self.stage_views(piece),
            stages_label: words.with(
                "piece-stages-label",
                &[("stage", stage_name.as_str().into())],
            ),
            stage_in_words: self.stage_in_words(piece, now),
            caution,
            caution_note,
            checklist_title: words.with("piece-checklist-of", &[("stage", stage_name.into())]),
            checklist_count: count,
            lines,
            why_label: words.text("action-why"),
            earlier_text: match (earlier.is_empty(), open) {
                (true, _) => String::new(),
                (false, true) => words.text("piece-earlier-hide"),
                (false, false) => words.text("piece-earlier-show"),
            },
            earlier: if open { earlier } else { Vec::new() },
            look: if piece.living() {
                self.look_view(piece, now)
            } else {
                None
            },
            portrait: self.photos_portrait(&piece.id, now),
            portrait_label: words.text("photos-on-portrait"),
            portrait_drawn: if self.is_demo() {
                words.text("photos-drawn")
            } else {
                String::new()
            },
            ways_title: words.text("piece-ways"),
            ways: self.ways(piece, now),
            next,
            then,
            ended,
            more: (self.states.piece.sheet == PieceSheet::More)
                .then(|| (words.text("action-more"), self.more_ways(piece))),
            why: match &self.states.piece.sheet {
                PieceSheet::Why(line) => self.why_view(piece, line),
                _ => None,
            },
            close: words.text("action-close"),
        })
    }

    /// The head of every page about a piece.
    pub(crate) fn head_of(&self, piece: &Piece) -> HeadView {
        let words = self.words();
        let form = words.text(&format!("form-{}", piece.details.form().key()));
        let wood = self.wood_of(piece);
        let numbers = self.numbers();
        let size = |field| piece.details.mm(field).map(|mm| numbers.diameter(mm));
        let size = match (size(DetailField::Diameter), size(DetailField::Height)) {
            (Some(d), Some(h)) => words.with(
                "piece-size",
                &[("diameter", d.number.into()), ("height", h.text().into())],
            ),
            (Some(one), None) => words.with("piece-size-wide", &[("size", one.text().into())]),
            (None, Some(one)) => words.with("piece-size-high", &[("size", one.text().into())]),
            (None, None) => String::new(),
        };
        let (title, mut parts) = if wood.is_empty() {
            (form, Vec::new())
        } else {
            (wood, vec![form])
        };
        if !size.is_empty() {
            parts.push(size);
        }
        HeadView {
            mark: self.mark_of(&piece.id),
            title,
            subtitle: parts.join(", "),
            back: words.text("action-back"),
            more: words.text("action-more"),
        }
    }

    /// The head of an inner page: its name above, the piece below.
    pub(crate) fn inner_head(&self, piece: &Piece, title: &str) -> HeadView {
        let outer = self.head_of(piece);
        HeadView {
            title: self.words().text(title),
            subtitle: outer.title,
            ..outer
        }
    }

    fn station_views(&self, piece: &Piece, drawing: &SectionDrawing) -> Vec<StationView> {
        let words = self.words();
        let numbers = self.numbers();
        let tolerance = wanted::tolerance(piece, &self.shop().settings);
        let tolerance = Tolerance {
            heavy_mm: tolerance,
            thin_mm: tolerance,
        };
        let count = drawing.stations.len() as f64; // a handful
        drawing
            .stations
            .iter()
            .enumerate()
            .map(|(place, spot)| {
                let (station, label, wall) = match spot.number {
                    0 => (
                        StationRef::Floor,
                        words.text("piece-floor-letter"),
                        wanted::floor(piece).mm,
                    ),
                    n => (
                        StationRef::Wall(n),
                        n.to_string(),
                        wanted::wall_now(piece).mm,
                    ),
                };
                let mut view = StationView {
                    label,
                    inner: spot.inner,
                    outer: spot.outer,
                    slot: (place as f64 + 0.5) / count,
                    read: spot.read,
                    ..StationView::default()
                };
                // The thinnest position decides; where only a finger judged, its word stands.
                let round = piece.readings_round(station);
                let least = round
                    .iter()
                    .filter_map(|r| r.reading.wall_mm.as_ref())
                    .map(|m| m.value)
                    .filter(|v| v.is_finite() && *v > 0.0)
                    .reduce(f64::min);
                if let Some(mm) = least {
                    view.value = numbers.wall(mm).number;
                    let off = numbers.wall((mm - wall).abs()).number;
                    let (key, id) = match verdict(mm, wall, tolerance) {
                        Verdict::Heavy => ("heavy", "piece-heavy-by"),
                        Verdict::Even => ("even", "piece-even"),
                        Verdict::Thin => ("thin", "piece-thin-by"),
                    };
                    view.verdict = key;
                    view.verdict_text = words.with(id, &[("off", off.into())]);
                } else if let Some(last) = piece.last_reading(station, None) {
                    if last.reading.taken == Taken::CantReach {
                        view.value = words.text("taken-cant-reach");
                    } else if let Some(feel) = last.reading.feel {
                        view.verdict = feel.key();
                        view.value = words.text(&format!("feel-{}", feel.key()));
                    }
                }
                view.spoken = self.station_words(spot.number, &view);
                view
            })
            .collect()
    }

    fn station_words(&self, number: u8, view: &StationView) -> String {
        let words = self.words();
        let value: Arg = view.value.as_str().into();
        let verdict: Arg = view.verdict_text.as_str().into();
        match (number, view.value.is_empty()) {
            (0, true) => words.text("piece-floor-unread"),
            (0, false) => words.with(
                "piece-floor-read",
                &[("value", value), ("verdict", verdict)],
            ),
            (n, true) => words.with("piece-station-unread", &[("n", n.into())]),
            (n, false) => words.with(
                "piece-station-read",
                &[("n", n.into()), ("value", value), ("verdict", verdict)],
            ),
        }
    }

    fn legend(&self, piece: &Piece, drawing: &SectionDrawing, stations: &[StationView]) -> String {
        let words = self.words();
        let wall = self
            .numbers()
            .wall(wanted::wall_now(piece).mm)
            .short()
            .text();
        let off = |kind: &str| stations.iter().filter(|s| s.verdict == kind).count();
        match (off("heavy"), off("thin")) {
            _ if drawing.no_readings => words.with("piece-legend-empty", &[("wall", wall.into())]),
            (0, 0) => words.with("piece-legend", &[("wall", wall.into())]),
            (heavy, thin) => words.with(
                "piece-legend-off",
                &[
                    ("wall", wall.into()),
                    ("heavy", heavy.into()),
                    ("thin", thin.into()),
                ],
            ),
        }
    }

    fn stage_views(&self, piece: &Piece) -> Vec<StageView> {
        Stage::ALL
            .iter()
            .map(|stage| StageView {
                key: stage.key(),
                name: self.words().text(&format!("stage-{}", stage.key())),
                state: stage_state(piece, *stage),
            })
            .collect()
    }

    /// Where the piece is in words, with the day of the stage: "In the bag, day 9".
    pub(crate) fn stage_in_words(&self, piece: &Piece, now: Moment) -> String {
        let words = self.words();
        if let Some((at, end)) = &piece.end {
            let day = Dates::new(words, now.date_naive()).day_and_month(at.date_naive());
            let how = words.text(&format!("end-{}", EndKind::of(end).key()));
            return words.with(
                "piece-ended-on",
                &[("how", how.into()), ("day", day.into())],
            );
        }
        let stage = piece.stage();
        let since = piece.stage_since().map_or(now, |s| s);
        let days = now
            .date_naive()
            .signed_duration_since(since.date_naive())
            .num_days()
            .max(0)
            + 1;
        let id = if matches!(stage, Stage::Bag | Stage::Air) && piece.method != Method::Bag {
            format!("method-in-words-{}", piece.method.key())
        } else {
            format!("stage-in-words-{}", stage.key())
        };
        words.with(&id, &[("day", days.into())])
    }

    /// How a piece ended, with its parts in words.
    pub(crate) fn ended_view(&self, piece: &Piece, now: Moment) -> Option<EndedView> {
        let (at, end) = piece.end.as_ref()?;
        let words = self.words();
        let mut lines = Vec::new();
        if let End::Lost {
            place,
            how,
            why,
            note,
        } = end
        {
            let part = |label: &str, value: String| {
                words.with(
                    "piece-lost-part",
                    &[("label", words.text(label).into()), ("value", value.into())],
                )
            };
            if *place != LostWhere::Unknown {
                let value = words.text(&format!("lost-where-{}", place.key()));
                lines.push(part("ending-where", value));
            }
            if *how != LostHow::Unknown {
                let value = words.text(&format!("lost-how-{}", how.key()));
                lines.push(part("ending-how", value));
            }
            let guesses: Vec<String> = why
                .iter()
                .filter(|w| **w != LostWhy::Unknown)
                .map(|w| words.text(&format!("lost-why-{}", w.key())))
                .collect();
            if !guesses.is_empty() {
                lines.push(part("ending-why", guesses.join(", ")));
            }
            if !note.is_empty() {
                lines.push(note.clone());
            }
        }
        Some(EndedView {
            title: words.text(&format!("end-{}", EndKind::of(end).key())),
            day: Dates::new(words, now.date_naive()).day_and_month(at.date_naive()),
            lines,
            put_back: words.text("action-put-back"),
        })
    }
}

/// `done`, `now`, `later`, or `skipped` for a stage that lies behind without ever having been entered.
pub(crate) fn stage_state(piece: &Piece, stage: Stage) -> &'static str {
    let present = piece.stage();
    let visited = piece.visits.iter().any(|v| v.stage == stage);
    let finished = piece
        .end
        .as_ref()
        .is_some_and(|(_, end)| *end == End::Finished);
    match stage.index().cmp(&present.index()) {
        std::cmp::Ordering::Equal if finished => "done",
        std::cmp::Ordering::Equal => "now",
        std::cmp::Ordering::Less if visited => "done",
        std::cmp::Ordering::Less => "skipped",
        std::cmp::Ordering::Greater => "later",
    }
}

/// The first sentence, which stands out, and the rest.
fn first_sentence(text: &str) -> (String, String) {
    match text.split_once(". ") {
        Some((first, rest)) => (format!("{first}."), rest.to_owned()),
        None => (text.to_owned(), String::new()),
    }
}
