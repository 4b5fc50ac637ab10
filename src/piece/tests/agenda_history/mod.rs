//! Histories for the tests of the agenda: pieces and a workshop told by facts and folded for real.
#![allow(clippy::unwrap_used, dead_code)] // every test file uses its own part of it

use chrono::{DateTime, FixedOffset, NaiveDate};
use evenwall_piece::agenda::{Agenda, Bench, Task, TaskKind, agenda, tasks_of};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::fold::fold_piece;
use evenwall_piece::ids::{DeviceId, LineId, PieceId};
use evenwall_piece::line::Line;
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::shop::{Climate, Shop, ShopFact, fold_shop};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{BagFeel, Method, Room};

/// A moment as written, `2026-06-01T18:00+02:00` with seconds left out.
pub fn at(text: &str) -> Moment {
    DateTime::<FixedOffset>::parse_from_str(text, "%Y-%m-%dT%H:%M%:z").unwrap()
}

/// So many days after 1 June 2026 (a Monday), at six in the evening, two hours east of Greenwich.
pub fn day(n: i64) -> Moment {
    at("2026-06-01T18:00+02:00") + chrono::Duration::days(n)
}

/// The local date of that day.
pub fn date(n: i64) -> NaiveDate {
    day(n).date_naive()
}

/// The lines of one piece, told in order.
#[derive(Clone)]
pub struct History {
    id: PieceId,
    lines: Vec<Line<PieceFact>>,
}

impl History {
    /// A piece entered on day 0 with a mark, straight into a stage.
    pub fn new(mark: &str, stage: Stage) -> Self {
        Self::since(mark, stage, day(0))
    }

    /// A piece entered at a moment.
    pub fn since(mark: &str, stage: Stage, moment: Moment) -> Self {
        let id = format!("p-{}", mark.to_lowercase());
        let mut history = Self {
            id: PieceId::new(&id).unwrap(),
            lines: Vec::new(),
        };
        let mark = DetailValue::Text(mark.to_owned());
        history.tell(
            moment,
            vec![
                PieceFact::Created,
                PieceFact::Detail {
                    field: DetailField::Mark,
                    value: Some(mark),
                },
                PieceFact::StageMoved(stage),
            ],
        );
        history
    }

    /// The same under another id.
    pub fn with_id(mut self, id: &str) -> Self {
        self.id = PieceId::new(id).unwrap();
        self
    }

    /// Adds a line.
    pub fn tell(&mut self, moment: Moment, facts: Vec<PieceFact>) -> LineId {
        self.tell_noted(moment, moment, facts)
    }

    /// Adds a line noted at another moment than it happened.
    pub fn tell_noted(&mut self, moment: Moment, noted: Moment, facts: Vec<PieceFact>) -> LineId {
        let n = self.lines.len() as u64 + 1;
        let id = LineId {
            device: DeviceId::new("bench").unwrap(),
            n,
        };
        self.lines.push(Line {
            id: id.clone(),
            seq: n,
            at: moment,
            noted_at: noted,
            facts,
        });
        id
    }

    /// The bag was felt.
    pub fn felt(&mut self, moment: Moment, feel: BagFeel) -> &mut Self {
        self.tell(moment, vec![look(Some(feel), false)]);
        self
    }

    /// It was looked over.
    pub fn looked_over(&mut self, moment: Moment) -> &mut Self {
        self.tell(moment, vec![look(None, false)]);
        self
    }

    /// It was weighed bare.
    pub fn weighed(&mut self, moment: Moment, grams: f64) -> &mut Self {
        self.tell(moment, vec![weight(grams)]);
        self
    }

    /// It moved to a stage.
    pub fn moved(&mut self, moment: Moment, stage: Stage) -> &mut Self {
        self.tell(moment, vec![PieceFact::StageMoved(stage)]);
        self
    }

    /// Its method was chosen.
    pub fn method(&mut self, moment: Moment, method: Method) -> &mut Self {
        self.tell(moment, vec![PieceFact::MethodChosen(method)]);
        self
    }

    /// The piece as it stands.
    pub fn piece(&self) -> Piece {
        fold_piece(self.id.clone(), self.lines.clone())
    }
}

/// A look.
pub fn look(feel: Option<BagFeel>, mould: bool) -> PieceFact {
    PieceFact::Look {
        feel,
        mould,
        crack: false,
    }
}

/// A weighing without tare.
pub fn weight(grams: f64) -> PieceFact {
    PieceFact::Weighed {
        mass_g: Measure::plain(grams),
        tare_g: 0.0,
    }
}

/// A length as a detail.
pub fn length(field: DetailField, mm: f64) -> PieceFact {
    PieceFact::Detail {
        field,
        value: Some(DetailValue::Length(Measure::plain(mm))),
    }
}

/// A workshop told by facts.
pub fn shop(facts: &[(Moment, ShopFact)]) -> Shop {
    let line = |(i, (moment, fact)): (usize, &(Moment, ShopFact))| Line {
        id: LineId {
            device: DeviceId::new("bench").unwrap(),
            n: i as u64 + 1,
        },
        seq: i as u64 + 1,
        at: *moment,
        noted_at: *moment,
        facts: vec![fact.clone()],
    };
    fold_shop(facts.iter().enumerate().map(line).collect())
}

/// A setting, made long ago.
pub fn setting(key: &str, value: &str) -> (Moment, ShopFact) {
    let fact = ShopFact::Setting {
        key: key.to_owned(),
        value: value.to_owned(),
    };
    (day(-1000), fact)
}

/// The shop's temperature read at a moment.
pub fn warmth(moment: Moment, temp_c: f64) -> (Moment, ShopFact) {
    let climate = Climate {
        room: Room::Shop,
        temp_c,
        rh_pct: 60.0,
    };
    (moment, ShopFact::Climate(climate))
}

/// All tasks of one piece at a moment, in a workshop without settings.
pub fn tasks(history: &History, now: Moment) -> Vec<Task> {
    tasks_in(&Shop::default(), history, now)
}

/// All tasks of one piece at a moment.
pub fn tasks_in(shop: &Shop, history: &History, now: Moment) -> Vec<Task> {
    tasks_of(&history.piece(), &Bench::new(shop, now, &|_| false))
}

/// The one next look.
pub fn next(history: &History, now: Moment) -> Task {
    next_in(&Shop::default(), history, now)
}

/// The one next look, in a workshop.
pub fn next_in(shop: &Shop, history: &History, now: Moment) -> Task {
    let mut looks: Vec<_> = tasks_in(shop, history, now)
        .into_iter()
        .filter(|t| t.is_next_look)
        .collect();
    assert_eq!(looks.len(), 1, "exactly one next look: {looks:?}");
    looks.remove(0)
}

/// The agenda of some pieces.
pub fn whole(shop: &Shop, histories: &[History], now: Moment) -> Agenda {
    let pieces: Vec<Piece> = histories.iter().map(History::piece).collect();
    let pieces: Vec<&Piece> = pieces.iter().collect();
    agenda(&pieces, &Bench::new(shop, now, &|_| false))
}

/// The marks-made ids of tasks, without the `p-`.
pub fn ids(tasks: &[Task]) -> Vec<String> {
    tasks
        .iter()
        .map(|t| t.piece.as_str().trim_start_matches("p-").to_owned())
        .collect()
}

/// Whether any of the tasks is of a kind.
pub fn has(tasks: &[Task], kind: &TaskKind) -> bool {
    tasks.iter().any(|t| t.kind == *kind)
}
