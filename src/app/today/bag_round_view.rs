//! Bag round view: the bag on screen, or what became of the round.

use evenwall_piece::agenda::next_look;
use evenwall_piece::bag::{BagAct, BagState};
use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::PieceId;
use evenwall_piece::photo::PhotoOn;
use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::BagFeel;

use super::Said;
use super::bag_round::Given;
use super::card::feel_icon;
use super::view::{AnswerView, TickView};
use crate::action::Action;
use crate::app::App;
use crate::photos::PhotosAction;

/// What became of some bags, or what is to be done with them now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CountView {
    /// What.
    pub text: String,
    /// How many, or which: "3", "K07, K09".
    pub value: String,
    /// Its icon; may be empty.
    pub icon: &'static str,
    /// The piece that a touch opens to note a crack; empty for none.
    pub piece: String,
}

/// The bag round.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct BagRoundView {
    /// Its title.
    pub title: String,
    /// The word for going back.
    pub back: String,
    /// "3 of 11".
    pub progress: String,
    /// How much is done, 0 to 1.
    pub part: f64,
    /// The piece's mark, very large; empty at the end.
    pub mark: String,
    /// Its wood.
    pub wood: String,
    /// Its place.
    pub place: String,
    /// "In the bag, day 9", and how it felt last.
    pub stands: String,
    /// "2 days late"; empty where it is not.
    pub late: String,
    /// The question.
    pub question: String,
    /// The answers.
    pub answers: Vec<AnswerView>,
    /// Mould and crack.
    pub ticks: Vec<TickView>,
    /// The word for a bag that was not looked at.
    pub skip: String,
    /// The word for a bag that is not there.
    pub cant_find: String,
    /// "All damp (8)"; empty for the last bag.
    pub all_damp: String,
    /// What was said last; empty where nothing can be taken back.
    pub undo_said: String,
    /// The word on the undo button.
    pub undo: String,
    /// The word for a photo of the bag answered last; empty where none was felt.
    pub photo: String,
    /// True at the end of the round.
    pub ended: bool,
    /// The title of the end.
    pub end_title: String,
    /// What was answered how often.
    pub counts: Vec<CountView>,
    /// Heads what is to be done.
    pub to_do_title: String,
    /// What is to be done with which bags.
    pub to_do: Vec<CountView>,
    /// The word for going back to the skipped ones; empty where none were.
    pub again: String,
    /// The word on the button that ends the round.
    pub done: String,
}

impl App {
    /// Takes photos of the bag that was answered last; `None` where none was felt.
    #[must_use]
    pub fn bag_round_photo(&self) -> Option<Action> {
        let done = self.bags_done();
        let last = done.last()?;
        let line = last.line.as_ref()?;
        let felt = |e: &&evenwall_piece::diary::DiaryEntry| {
            e.entry.line == *line && matches!(e.fact, PieceFact::Look { .. })
        };
        let piece = self.piece(&last.piece)?;
        let entry = piece.diary.iter().find(felt)?.entry.clone();
        Some(Action::Photos(PhotosAction::Newest(
            last.piece.clone(),
            PhotoOn::BagCheck(entry),
        )))
    }

    /// The bag round as it stands.
    #[must_use]
    pub fn bag_round_view(&self, now: Moment) -> BagRoundView {
        if self.states.today.round.is_none() {
            return BagRoundView::default();
        }
        let words = self.words();
        let (done, left) = (self.bags_done(), self.bags_left());
        let all = done.len() + left.len();
        let mut view = BagRoundView {
            title: words.text("today-bag-round"),
            back: words.text("action-back"),
            part: if all == 0 {
                1.0
            } else {
                done.len() as f64 / all as f64
            },
            undo_said: done.last().map_or_else(String::new, |d| d.said.clone()),
            undo: words.text("action-undo"),
            photo: if self.bag_round_photo().is_some() {
                words.text("photos-of-bag-check")
            } else {
                String::new()
            },
            done: words.text("action-done"),
            ..BagRoundView::default()
        };
        match left.first() {
            Some(piece) => {
                let place = done.len() + 1;
                view.progress =
                    words.with("count-n-of-m", &[("n", place.into()), ("m", all.into())]);
                self.bag_on_screen(&mut view, piece, left.len(), now);
            }
            None => self.end_of_round(&mut view),
        }
        view
    }

    fn bag_on_screen(&self, view: &mut BagRoundView, id: &PieceId, left: usize, now: Moment) {
        let Some(piece) = self.piece(id) else { return };
        let words = self.words();
        let dates = self.dates(now);
        let (state, due) = self.with_bench(now, |bench| {
            (self.bag_state(piece, bench), next_look(piece, bench))
        });
        let said: Said = self.bag_said(id);
        let stands = self.whereabouts(piece, now);
        let last = piece
            .looks
            .iter()
            .rev()
            .find(|l| l.at <= now && l.feel.is_some());
        view.mark = self.mark_of(id);
        view.wood = self.wood_of(piece);
        view.place = piece
            .details
            .text(DetailField::Place)
            .unwrap_or("")
            .trim()
            .to_owned();
        view.stands = match last.and_then(|l| l.feel.map(|f| (l.at, f))) {
            Some((at, feel)) => words.with(
                "bag-round-stands-last",
                &[
                    ("stands", stands.into()),
                    (
                        "feel",
                        words
                            .text(&format!("feel-{}", feel.key()))
                            .to_lowercase()
                            .into(),
                    ),
                    ("ago", dates.ago(at.date_naive()).into()),
                ],
            ),
            None => stands,
        };
        view.late = due
            .filter(|d| *d < now.date_naive())
            .map(|d| dates.due(d))
            .unwrap_or_default();
        view.question = words.text("today-question-bag");
        view.answers = self.answers(piece, state_felt(state), said, now);
        view.ticks = self.ticks(said);
        view.skip = words.text("bag-round-skip");
        view.cant_find = words.text("today-other-cant-find");
        view.all_damp = if left > 1 {
            words.with("bag-round-all-damp", &[("n", left.into())])
        } else {
            String::new()
        };
    }

    fn end_of_round(&self, view: &mut BagRoundView) {
        let words = self.words();
        let done = self.bags_done();
        let missing = self
            .states
            .today
            .round
            .as_ref()
            .map_or_else(Vec::new, |r| r.missing.clone());
        view.ended = true;
        view.end_title = words.text(if done.is_empty() {
            "bag-round-none"
        } else {
            "bag-round-ended"
        });
        let count = |given: Given| done.iter().filter(|d| d.given == given).count();
        let mut counts: Vec<CountView> = BagFeel::ALL
            .iter()
            .map(|f| (count(Given::Felt(*f)), *f))
            .filter(|(n, _)| *n > 0)
            .map(|(n, f)| CountView {
                text: words.text(&format!("feel-{}", f.key())),
                value: n.to_string(),
                icon: feel_icon(f),
                piece: String::new(),
            })
            .collect();
        let skipped = count(Given::Skipped);
        if skipped > 0 {
            counts.push(CountView {
                text: words.text("bag-round-skipped"),
                value: skipped.to_string(),
                icon: "",
                piece: String::new(),
            });
            view.again = words.text("bag-round-again");
        }
        view.counts = counts;
        let marks = |of: &[&PieceId]| {
            let marks: Vec<String> = of.iter().map(|id| self.mark_of(id)).collect();
            marks.join(", ")
        };
        let acts = [
            (BagAct::TurnAndClose, "bag-closed"),
            (BagAct::CloseAgain, "bag-closed"),
            (BagAct::LeaveOpen, "bag-open"),
            (BagAct::OfferAir, "bag-open"),
            (BagAct::BrushAndAir, "caution"),
        ];
        let mut to_do = Vec::new();
        for (act, icon) in acts {
            let of: Vec<&PieceId> = done
                .iter()
                .filter(|d| d.act == Some(act))
                .map(|d| &d.piece)
                .collect();
            if !of.is_empty() {
                to_do.push(CountView {
                    text: words.text(&format!("bag-round-do-{}", act.key())),
                    value: marks(&of),
                    icon,
                    piece: String::new(),
                });
            }
        }
        for cracked in done.iter().filter(|d| d.crack) {
            to_do.push(CountView {
                text: words.text("bag-round-do-crack"),
                value: self.mark_of(&cracked.piece),
                icon: "crack",
                piece: cracked.piece.as_str().to_owned(),
            });
        }
        let lost: Vec<&PieceId> = missing
            .iter()
            .chain(
                done.iter()
                    .filter(|d| d.given == Given::NotThere)
                    .map(|d| &d.piece),
            )
            .collect();
        if !lost.is_empty() {
            to_do.push(CountView {
                text: words.text("bag-round-do-look-for-it"),
                value: marks(&lost),
                icon: "question",
                piece: String::new(),
            });
        }
        if !to_do.is_empty() {
            view.to_do_title = words.text("bag-round-to-do");
        }
        view.to_do = to_do;
    }
}

/// In a round every bag is felt.
const fn state_felt(state: BagState) -> BagState {
    match state {
        BagState::NoBag | BagState::Airing => BagState::Closed,
        felt => felt,
    }
}
