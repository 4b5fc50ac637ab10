//! Card: one piece in the list.

use evenwall_piece::agenda::Bench;
use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::End;
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::Stage;
use evenwall_piece::weights::staying_put;

use super::due::Due;
use super::sort::{Sort, last_touched};
use crate::app::App;
use crate::drawing::{SectionDrawing, section_of};

/// One piece in the list.
#[derive(Debug, Clone, PartialEq)]
pub struct CardView {
    /// The piece.
    pub id: PieceId,
    /// Above it, where a group begins: the log of the pieces that follow. Else empty.
    pub heading: String,
    /// All that a screen reader says.
    pub label: String,
    /// Its mark.
    pub mark: String,
    /// Its wood; empty where it is not said.
    pub wood: String,
    /// Where it is: "In the bag, day 9".
    pub stage: String,
    /// What the order goes by, its place and its twins; may be empty.
    pub note: String,
    /// What is due next; may be empty.
    pub due: String,
    /// True where that is late: a tag with the flag.
    pub late: bool,
    /// Stages behind it, 0 to 9.
    pub stages_done: usize,
    /// How far it is through the present one, 0 to 1, half where the stage has no days; below 0 where it ended.
    pub now_part: f64,
    /// True while its page is open.
    pub open: bool,
}

/// How far a piece is through its stage: by the days where the stage has days, else half.
fn through_stage(app: &App, piece: &Piece, bench: &Bench<'_>) -> f64 {
    let day = f64::from(app.day_of_stage(piece, bench.now));
    let of = |days: f64, of: f64| (days / of.max(1.0)).clamp(0.08, 1.0);
    match piece.stage() {
        Stage::Air => of(day, 30.0),
        Stage::Settle => {
            let put = staying_put(piece, bench.shop, bench.now);
            of(f64::from(put.day), f64::from(put.of))
        }
        Stage::Indoors => of(day, 14.0),
        _ => 0.5,
    }
}

/// The marks of the pieces that share a log with this one: at most three, then how many more.
fn twins_text(app: &App, twins: &[&Piece]) -> String {
    const NAMED: usize = 3;
    if twins.is_empty() {
        return String::new();
    }
    let named: Vec<&str> = twins.iter().take(NAMED).map(|p| p.mark()).collect();
    let marks = named.join(", ");
    match twins.len().saturating_sub(NAMED) {
        0 => app.words().with("pieces-twins", &[("marks", marks.into())]),
        more => app.words().with(
            "pieces-twins-more",
            &[("marks", marks.into()), ("n", more.into())],
        ),
    }
}

/// What the order goes by, where the card does not show that anyway: when it was entered, or last noted.
fn by_what(app: &App, piece: &Piece, sort: Sort, now: Moment) -> String {
    let (id, at) = match sort {
        Sort::Newest => ("pieces-entered", piece.created),
        Sort::Untouched => ("pieces-last-noted", last_touched(piece, now)),
        Sort::Due | Sort::Mark | Sort::Log => return String::new(),
    };
    at.map(|at| {
        let ago = app.dates(now).ago(at.date_naive());
        app.words().with(id, &[("ago", ago.into())])
    })
    .unwrap_or_default()
}

/// The card of a piece; `twins` are the other pieces of its log.
pub(super) fn card(
    app: &App,
    piece: &Piece,
    due: Option<&Due>,
    twins: &[&Piece],
    bench: &Bench<'_>,
) -> CardView {
    let wood = app.wood_of(piece);
    let stage = app.whereabouts(piece, bench.now);
    let place = piece.details.text(DetailField::Place).unwrap_or("");
    let twins = twins_text(app, twins);
    let order = by_what(app, piece, app.states.pieces.sort, bench.now);
    let note = [order.as_str(), place, &twins]
        .into_iter()
        .filter(|part| !part.is_empty())
        .collect::<Vec<_>>()
        .join(" · ");
    let ended = piece.end.as_ref().map(|(at, _)| {
        let day = at.date_naive();
        app.dates(bench.now).ago(day)
    });
    let due_text = ended.unwrap_or_else(|| due.map_or_else(String::new, |d| d.text(app, bench)));
    let finished = matches!(piece.end, Some((_, End::Finished)));
    let label = [piece.mark(), &wood, &due_text, &stage, &note]
        .into_iter()
        .filter(|part| !part.is_empty())
        .collect::<Vec<_>>()
        .join(", ");
    CardView {
        id: piece.id.clone(),
        heading: String::new(),
        label,
        mark: piece.mark().to_owned(),
        wood,
        stage,
        note,
        due: due_text,
        late: due.is_some_and(Due::late),
        stages_done: if finished {
            Stage::ALL.len()
        } else {
            piece.stage().index()
        },
        now_part: if piece.end.is_some() {
            -1.0
        } else {
            through_stage(app, piece, bench)
        },
        open: app.route().page().and_then(|p| p.piece()) == Some(&piece.id),
    }
}

impl App {
    /// The small drawing on the card of a piece; apart from the card, as only those on screen are drawn.
    #[must_use]
    pub fn card_drawing(&self, id: &PieceId) -> SectionDrawing {
        self.piece(id).map(section_of).unwrap_or_default()
    }
}
