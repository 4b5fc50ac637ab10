//! The diary: what was recorded is shown, corrected with the old value in sight, moved to another day, taken back.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use chrono::DateTime;
use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::diary::{DiaryAction, DiaryView, EntryView, Filter};
use evenwall_app::route::Page;
use evenwall_app::store::{MemoryStore, Store};
use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Clock, Measure, PieceFact, Reading, StationRef};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_piece::vocabulary::{BagFeel, Taken};

fn moment(text: &str) -> Moment {
    DateTime::parse_from_rfc3339(text).unwrap()
}

fn now() -> Moment {
    moment("2026-03-12T09:00:00+00:00")
}

fn id() -> PieceId {
    PieceId::new("k07").unwrap()
}

fn store() -> MemoryStore {
    let mut store = MemoryStore::default();
    let mut line = |at: &str, facts| {
        store
            .append_piece(&id(), moment(at), moment(at), facts)
            .map(drop)
            .unwrap()
    };
    line(
        "2026-03-01T10:00:00+00:00",
        vec![
            PieceFact::Created,
            PieceFact::Detail {
                field: DetailField::Mark,
                value: Some(DetailValue::Text("K07".into())),
            },
        ],
    );
    let wall = Reading {
        station: StationRef::Wall(4),
        position: Clock::TWELVE,
        wall_mm: Some(Measure {
            value: 13.4,
            typed: "13.4".into(),
        }),
        feel: None,
        taken: Taken::Callipers,
    };
    line("2026-03-02T10:00:00+00:00", vec![PieceFact::Reading(wall)]);
    let look = PieceFact::Look {
        feel: Some(BagFeel::Wet),
        mould: false,
        crack: false,
    };
    line("2026-03-05T10:00:00+00:00", vec![look]);
    let weighed = PieceFact::Weighed {
        mass_g: Measure {
            value: 882.0,
            typed: "882".into(),
        },
        tare_g: 0.0,
    };
    line("2026-03-06T10:00:00+00:00", vec![weighed]);
    store
}

fn app() -> App {
    let mut app = App::open(Box::new(store()), false, now()).unwrap();
    app.apply(Action::Open(Page::Diary(id())), now());
    app
}

fn view(app: &App) -> DiaryView {
    app.diary_view(&id(), now()).unwrap()
}

fn act(app: &mut App, action: DiaryAction) {
    app.apply(Action::Diary(action), now());
}

fn entry(app: &App, part: &str) -> EntryView {
    view(app)
        .entries
        .into_iter()
        .find(|e| e.title.contains(part))
        .unwrap_or_else(|| panic!("no {part}"))
}

#[test]
fn the_newest_stands_first_and_each_day_is_named_once() {
    let v = view(&app());
    assert_eq!(v.entries[0].title, "Weighed 882\u{a0}g");
    assert_eq!(v.entries[0].day, "Fri 6");
    assert_eq!(v.entries.last().unwrap().title, "Entered");
    assert!(
        v.entries.iter().filter(|e| e.day == "Sun 1").count() == 1,
        "{v:#?}"
    );
}

#[test]
fn a_filter_shows_its_own_and_counts_them() {
    let mut app = app();
    act(&mut app, DiaryAction::SetFilter(Filter::Weights));
    let v = view(&app);
    assert_eq!(v.entries.len(), 1);
    assert_eq!(
        v.filters.iter().find(|f| f.key == "weights").unwrap().count,
        1
    );
    assert!(
        v.filters.iter().all(|f| f.key != "flaws"),
        "an empty filter takes no room"
    );
}

#[test]
fn a_correction_keeps_the_old_value_in_sight_and_can_be_undone() {
    let mut app = app();
    let before = view(&app);
    let weighed = entry(&app, "Weighed");
    act(&mut app, DiaryAction::Toggle(weighed.id));
    assert_eq!(view(&app).editor.value, "882");
    act(&mut app, DiaryAction::EditValue("828".into()));
    act(&mut app, DiaryAction::Save);
    let corrected = entry(&app, "Weighed");
    assert_eq!(corrected.title, "Weighed 828\u{a0}g");
    assert_eq!(corrected.earlier, ["was: Weighed 882\u{a0}g"]);
    assert!((app.piece(&id()).unwrap().weighings[0].net_g() - 828.0).abs() < 1e-9);
    app.apply(Action::Undo, now());
    assert_eq!(view(&app), before);
    app.apply(Action::Redo, now());
    assert_eq!(entry(&app, "Weighed").title, "Weighed 828\u{a0}g");
}

#[test]
fn saving_an_entry_untouched_records_nothing_and_keeps_it_as_fine_as_it_was() {
    let mut app = app();
    let reading = entry(&app, "Station 4");
    act(&mut app, DiaryAction::Toggle(reading.id));
    act(&mut app, DiaryAction::Save);
    assert!(app.undo().last_done().is_none());
    let wall = app.piece(&id()).unwrap().readings[0]
        .reading
        .wall_mm
        .clone()
        .unwrap();
    assert!((wall.value - 13.4).abs() < 1e-9);
}

#[test]
fn nonsense_gets_a_sentence_and_changes_nothing() {
    let mut app = app();
    let weighed = entry(&app, "Weighed");
    act(&mut app, DiaryAction::Toggle(weighed.id));
    for (value, day) in [
        ("lots", "2026-03-06"),
        ("-4", "2026-03-06"),
        ("828", "soon"),
        ("828", "2026-03-20"),
        ("828", "2026"),
    ] {
        act(&mut app, DiaryAction::EditValue(value.into()));
        act(&mut app, DiaryAction::EditDay(day.into()));
        act(&mut app, DiaryAction::Save);
        assert!(!view(&app).editor.problem.is_empty(), "{value} on {day}");
    }
    assert!((app.piece(&id()).unwrap().weighings[0].net_g() - 882.0).abs() < 1e-9);
    assert!(app.undo().last_done().is_none());
}

#[test]
fn another_day_moves_the_entry_and_says_when_it_was_written_down() {
    let mut app = app();
    let look = entry(&app, "Bag felt");
    act(&mut app, DiaryAction::Toggle(look.id));
    act(&mut app, DiaryAction::EditDay("4 Mar 2026".into()));
    act(&mut app, DiaryAction::Save);
    let moved = entry(&app, "Bag felt");
    assert_eq!(moved.day, "Wed 4");
    assert_eq!(moved.noted, "written down Thu 5");
    assert_eq!(moved.earlier, ["was: Thu 5"]);
    assert_eq!(
        app.piece(&id()).unwrap().looks[0]
            .at
            .date_naive()
            .to_string(),
        "2026-03-04"
    );
}

#[test]
fn a_look_is_corrected_out_of_the_list() {
    let mut app = app();
    let look = entry(&app, "Bag felt");
    act(&mut app, DiaryAction::Toggle(look.id));
    assert_eq!(view(&app).editor.picks.len(), 3);
    act(&mut app, DiaryAction::Pick("nothing".into()));
    act(&mut app, DiaryAction::Save);
    assert_eq!(
        app.piece(&id()).unwrap().looks[0].feel,
        Some(BagFeel::Nothing)
    );
}

#[test]
fn an_entry_is_taken_back_and_brought_back() {
    let mut app = app();
    let before = app.piece(&id()).unwrap().weighings.clone();
    let weighed = entry(&app, "Weighed");
    act(&mut app, DiaryAction::TakeBack(weighed.id));
    assert!(app.piece(&id()).unwrap().weighings.is_empty());
    assert!(
        view(&app)
            .entries
            .iter()
            .all(|e| !e.title.contains("Weighed"))
    );
    act(&mut app, DiaryAction::SetFilter(Filter::TakenBack));
    let back = entry(&app, "Weighed");
    assert!(back.taken_back);
    act(&mut app, DiaryAction::BringBack(back.id));
    assert_eq!(app.piece(&id()).unwrap().weighings, before);
}

#[test]
fn the_entry_that_made_the_piece_stays() {
    let mut app = app();
    let made = entry(&app, "Entered");
    act(&mut app, DiaryAction::TakeBack(made.id));
    assert!(app.piece(&id()).is_some());
    assert!(app.question().is_some(), "it says why");
}

#[test]
fn a_note_is_added_an_empty_one_and_one_too_long_are_not() {
    let mut app = app();
    act(&mut app, DiaryAction::WriteNote(true));
    act(&mut app, DiaryAction::AddNote);
    assert!(!view(&app).note_problem.is_empty());
    act(&mut app, DiaryAction::EditNote("x".repeat(20_001)));
    act(&mut app, DiaryAction::AddNote);
    assert!(
        view(&app).note_problem.contains("20001"),
        "{}",
        view(&app).note_problem
    );
    let long = "Łódź ğüşiö 😀 ".repeat(700);
    act(&mut app, DiaryAction::EditNote(long.clone()));
    act(&mut app, DiaryAction::AddNote);
    let kept = app
        .piece(&id())
        .unwrap()
        .diary
        .iter()
        .any(|e| e.fact == PieceFact::Note(long.trim().into()));
    assert!(kept, "the note is kept to the letter");
}

#[test]
fn a_full_disk_loses_no_word_of_the_note() {
    let mut failing = store();
    failing.failing = true;
    let mut app = App::open(Box::new(failing), false, now()).unwrap();
    app.apply(Action::Open(Page::Diary(id())), now());
    act(&mut app, DiaryAction::WriteNote(true));
    act(&mut app, DiaryAction::EditNote("Rim looks sound".into()));
    act(&mut app, DiaryAction::AddNote);
    assert!(app.save_error().is_some());
    assert_eq!(view(&app).note, "Rim looks sound");
}

#[test]
fn moving_an_entry_to_today_never_dates_it_ahead_of_now() {
    let mut app = app();
    let look = entry(&app, "Bag felt");
    act(&mut app, DiaryAction::Toggle(look.id));
    act(&mut app, DiaryAction::EditDay("2026-03-12".into()));
    act(&mut app, DiaryAction::Save);
    let at = app.piece(&id()).unwrap().looks[0].at;
    assert_eq!(at, now(), "the look was at ten, it is nine now");
}

#[test]
fn whatever_was_picked_out_of_a_list_can_be_picked_again() {
    use evenwall_piece::fact::{End, FlawNote, FlawTreated};
    use evenwall_piece::ids::FlawId;
    use evenwall_piece::stage::Stage;
    use evenwall_piece::vocabulary::{
        CrackAnswer, FlawChange, FlawKind, LostHow, LostWhere, MassChange, Method, Treatment,
        TrueDecision, WallFeel,
    };
    let flaw = FlawId::new("a").unwrap();
    let cases: Vec<(PieceFact, &str)> = vec![
        (PieceFact::StageMoved(Stage::Air), "settle"),
        (PieceFact::MethodChosen(Method::Paper), "wax"),
        (PieceFact::Cracks(CrackAnswer::None), "hairline"),
        (PieceFact::MassChanged(MassChange::Glue), "wax"),
        (
            PieceFact::TrueDecided {
                decision: TrueDecision::Go,
                reason: "dry".into(),
            },
            "fill",
        ),
        (
            PieceFact::Reading(Reading {
                station: StationRef::Wall(2),
                position: Clock::TWELVE,
                wall_mm: None,
                feel: Some(WallFeel::Heavy),
                taken: Taken::Fingers,
            }),
            "even",
        ),
        (
            PieceFact::FlawTreated(FlawTreated {
                flaw: flaw.clone(),
                treatment: Treatment::Thin,
                face: None,
                goes: Some(2),
                look_again: None,
            }),
            "medium",
        ),
        (
            PieceFact::FlawLooked {
                flaw: flaw.clone(),
                change: FlawChange::Same,
                size_mm: None,
                look_again: None,
            },
            "longer",
        ),
        (
            PieceFact::Ended(End::Lost {
                place: LostWhere::Wall,
                how: LostHow::DigIn,
                why: Vec::new(),
                note: "low down".into(),
            }),
            "dropped",
        ),
    ];
    for (fact, key) in cases {
        let mut store = store();
        let found = PieceFact::FlawFound(FlawNote {
            flaw: flaw.clone(),
            kind: FlawKind::Knot,
            station: None,
            clock: None,
            size_mm: None,
            through: false,
            note: String::new(),
        });
        store
            .append_piece(&id(), now(), now(), vec![found])
            .unwrap();
        store
            .append_piece(&id(), now(), now(), vec![fact.clone()])
            .unwrap();
        let mut app = App::open(Box::new(store), false, now()).unwrap();
        app.apply(Action::Open(Page::Diary(id())), now());
        let newest = view(&app).entries[0].clone();
        act(&mut app, DiaryAction::Toggle(newest.id.clone()));
        let picks = view(&app).editor.picks;
        assert!(
            picks
                .iter()
                .any(|p| p.key == key && !p.text.starts_with('[')),
            "{fact:?}"
        );
        act(&mut app, DiaryAction::Pick(key.into()));
        act(&mut app, DiaryAction::Save);
        let corrected = view(&app).entries[0].clone();
        let told = |e: &EntryView| (e.title.clone(), e.note.clone());
        assert_ne!(told(&corrected), told(&newest), "{fact:?}");
        assert_eq!(corrected.earlier.len(), 1, "{fact:?}");
    }
}
