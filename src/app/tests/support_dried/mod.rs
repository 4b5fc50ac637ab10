//! Shelf of dried pieces: invented pieces that dried so many days and ended or not.
#![allow(dead_code)] // each test file uses a part of it

use chrono::Duration;
use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::dried_well::{DriedWellAction, DriedWellView};
use evenwall_app::route::Page;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Clock, End, Measure, PieceFact, Reading, StationRef};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{LostHow, LostWhere, LostWhy, Taken};

pub fn now() -> Moment {
    chrono::DateTime::parse_from_rfc3339("2026-03-12T08:42:00+00:00").unwrap()
}

pub fn ago(days: i64) -> Moment {
    now() - Duration::days(days)
}

pub fn set(field: DetailField, text: &str) -> PieceFact {
    PieceFact::Detail {
        field,
        value: Some(DetailValue::Text(text.to_owned())),
    }
}

pub fn read(station: u8, mm: f64) -> PieceFact {
    PieceFact::Reading(Reading {
        station: StationRef::Wall(station),
        position: Clock::TWELVE,
        wall_mm: Some(Measure::plain(mm)),
        feel: None,
        taken: Taken::Callipers,
    })
}

pub fn lost(how: LostHow) -> End {
    End::Lost {
        place: LostWhere::Rim,
        how,
        why: vec![LostWhy::TooFast, LostWhy::Pith],
        note: String::new(),
    }
}

/// A shelf to which invented pieces are added one by one.
#[derive(Default)]
pub struct Shelf {
    store: MemoryStore,
    made: u32,
}

impl Shelf {
    /// A piece of this wood that went into the bag and dried for so many days, then ended or not.
    pub fn dried(
        &mut self,
        facts: Vec<PieceFact>,
        began: i64,
        days: i64,
        end: Option<End>,
    ) -> PieceId {
        self.made += 1;
        let mark = format!("C{:02}", self.made);
        let id = PieceId::new(&mark.to_lowercase()).unwrap();
        let mut first = vec![PieceFact::Created, set(DetailField::Mark, &mark)];
        first.extend(facts);
        first.push(PieceFact::StageMoved(Stage::Hollow));
        let mut note = |at: i64, facts: Vec<PieceFact>| {
            self.store
                .append_piece(&id, ago(at), ago(at), facts)
                .unwrap();
        };
        note(began, first);
        note(began, vec![PieceFact::StageMoved(Stage::Bag)]);
        if let Some(end) = end {
            if !matches!(
                end,
                End::Lost {
                    how: LostHow::CrackedDrying,
                    ..
                }
            ) {
                note(began - days, vec![PieceFact::StageMoved(Stage::True)]);
                note(began - days, vec![PieceFact::StageMoved(Stage::Finish)]);
            }
            note(began - days, vec![PieceFact::Ended(end)]);
        }
        id
    }

    /// So many of a wood, the first few of them lost.
    pub fn wood(&mut self, wood: &str, all: usize, lost_of_them: usize) {
        for n in 0..all {
            let end = if n < lost_of_them {
                lost(LostHow::CrackedDrying)
            } else {
                End::Finished
            };
            let days = 40 + i64::try_from(n).unwrap();
            self.dried(vec![set(DetailField::Wood, wood)], 300, days, Some(end));
        }
    }

    pub fn open(self) -> App {
        let mut app = App::open(Box::new(self.store), false, now()).unwrap();
        app.apply(Action::Open(Page::DriedWell), now());
        app
    }
}

pub fn act(app: &mut App, action: DriedWellAction) -> DriedWellView {
    app.apply(action.into(), now());
    view(app)
}

pub fn view(app: &App) -> DriedWellView {
    let view = app.dried_well_view(now());
    assert_eq!(app.words().problems(), []);
    view
}

pub fn plain(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

pub fn counts(view: &DriedWellView) -> Vec<(String, String)> {
    let pair = |s: &evenwall_app::dried_well::ShareView| (plain(&s.label), plain(&s.count));
    view.shares.iter().map(pair).collect()
}

pub fn row(view: &DriedWellView, id: &str) -> String {
    let rows = view.summary.iter().chain(&view.sections);
    let found = rows.flat_map(|s| &s.rows).find(|r| r.id == id);
    plain(
        &found
            .unwrap_or_else(|| panic!("no {id} in {view:#?}"))
            .value,
    )
}
