//! What the demo shelf shows: every stage, method, flaw, treatment, end and state, and something to do today.

use std::collections::{BTreeMap, BTreeSet};

use evenwall_piece::agenda::{Task, TaskKind, standing};
use evenwall_piece::bag::BagState;
use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::End;
use evenwall_piece::piece::{FlawEvent, Piece};
use evenwall_piece::round::{WeighWhich, bag_round, weigh_round};
use evenwall_piece::stage::Stage;
use evenwall_piece::vocabulary::{
    BagFeel, FlawChange, FlawKind, Form, Grain, LostHow, Method, Room, Taken, Treatment, WallFeel,
};

use super::{agenda_of, by_mark, today, with_bench};

/// Every value of a closed list, with those the pieces have.
macro_rules! covers {
    ($list:ty, $found:expr) => {
        let found: BTreeSet<$list> = $found.collect();
        let all: BTreeSet<$list> = <$list>::ALL.iter().copied().collect();
        let missing: Vec<_> = all.difference(&found).collect();
        assert!(missing.is_empty(), "the demo lacks {missing:?}");
    };
}

#[test]
fn it_shows_every_stage_method_flaw_treatment_and_end() {
    let (app, _) = today();
    let pieces: Vec<&Piece> = app.pieces().collect();
    let living = || pieces.iter().filter(|p| p.living());
    covers!(Stage, living().map(|p| p.stage()));
    covers!(Form, living().map(|p| p.details.form()));
    covers!(Grain, living().map(|p| p.details.grain()));
    covers!(Method, pieces.iter().map(|p| p.method));
    let flaws = || pieces.iter().flat_map(|p| &p.flaws);
    covers!(FlawKind, flaws().map(|f| f.note.kind));
    let events = || flaws().flat_map(|f| &f.events);
    covers!(
        Treatment,
        events().filter_map(|e| match e {
            FlawEvent::Treated { treated, .. } => Some(treated.treatment),
            FlawEvent::Looked { .. } => None,
        })
    );
    covers!(
        FlawChange,
        events().filter_map(|e| match e {
            FlawEvent::Looked { change, .. } => Some(*change),
            FlawEvent::Treated { .. } => None,
        })
    );
    let readings = || pieces.iter().flat_map(|p| &p.readings);
    covers!(Taken, readings().map(|r| r.reading.taken));
    assert!(readings().any(|r| r.reading.feel == Some(WallFeel::Heavy)));
    covers!(
        BagFeel,
        pieces.iter().flat_map(|p| &p.looks).filter_map(|l| l.feel)
    );
    covers!(Room, app.shop().climate.iter().map(|(_, c)| c.room));
    let mut ends: BTreeMap<&str, usize> = BTreeMap::new();
    let mut lost = BTreeSet::new();
    for (_, end) in pieces.iter().filter_map(|p| p.end.as_ref()) {
        let kind = match end {
            End::Finished => "finished",
            End::Lost { how, .. } => {
                lost.insert(*how);
                "lost"
            }
            End::GivenAway => "given away",
            End::LeftAsIs => "left as it is",
            End::CantFind => "can't find",
        };
        *ends.entry(kind).or_default() += 1;
    }
    assert_eq!(
        ends.into_iter().collect::<Vec<_>>(),
        [
            ("can't find", 1),
            ("finished", 11),
            ("given away", 1),
            ("left as it is", 1),
            ("lost", 6)
        ]
    );
    assert_eq!(
        lost.into_iter().collect::<Vec<_>>(),
        [
            LostHow::CrackedDrying,
            LostHow::DigIn,
            LostHow::SpigotBroke,
            LostHow::TooOval
        ]
    );
}

#[test]
fn it_shows_every_state_that_a_list_can_hold() {
    let (app, now) = today();
    let piece = |mark| by_mark(&app, mark);
    assert!(piece("K14").half_turned.is_some());
    assert!(piece("J36").paused.is_some());
    assert!(piece("J38").not_found.is_some());
    let alone = piece("K15");
    assert_eq!((alone.details.iter().count(), alone.diary.len()), (1, 2));
    let batch = ["K16", "K17", "K18"].map(|m| piece(m).created);
    assert!(batch.iter().all(|c| *c == batch[0]));
    let log = |mark| piece(mark).details.text(DetailField::Log);
    assert!(log("K07").is_some() && log("K07") == log("K08"));
    assert!(log("J04").is_some() && log("J04") == log("J05"));
    let bag = |mark: &'static str| {
        with_bench(&app, now, |_, bench| standing(piece(mark), bench).unwrap())
    };
    assert_eq!(bag("K02").state, BagState::OpenOnce);
    assert_eq!(bag("K01").state, BagState::OpenTwice);
    assert!(bag("K04").mouldy && bag("J34").damp_in_air);
    assert!(piece("K05").looks.iter().any(|l| l.crack));
    let bowl = piece("J41");
    assert_eq!(
        (bowl.details.form(), bowl.details.grain()),
        (Form::Bowl, Grain::Side)
    );
    // What the turner did wrong and put right.
    let diary = || app.pieces().flat_map(|p| &p.diary);
    assert!(diary().filter(|e| !e.earlier.is_empty()).count() >= 3);
    assert!(diary().any(|e| e.retracted));
    assert!(diary().any(|e| e.noted_at.date_naive() > e.at.date_naive()));
    // True with a glued check, an oval and a spigot; the finished with all that they record.
    let trued = piece("J18");
    assert!(trued.flaws.iter().any(|f| {
        f.note.kind == FlawKind::Check
            && f.last_treatment()
                .is_some_and(|(_, t)| t.treatment.is_glue())
    }));
    let record = &trued.finish;
    assert!(record.cracks.is_some() && record.oval.is_some() && record.spigot_mm.is_some());
    for done in app
        .pieces()
        .filter(|p| matches!(p.end, Some((_, End::Finished))))
    {
        let record = &done.finish;
        assert!(!record.coats.is_empty() && !record.grits.is_empty() && record.signed.is_some());
        assert!(done.readings.iter().any(|r| r.stage == Stage::Finish));
        assert!(done.details.text(DetailField::FinishedSize).is_some());
    }
}

#[test]
fn a_round_has_bags_and_a_weigh_round_has_pieces() {
    let (app, now) = today();
    let a = agenda_of(&app, now);
    assert!(a.overdue.len() >= 2 && a.today.len() >= 5 && a.coming.len() >= 5);
    let late = |t: &&Task| t.kind == TaskKind::Look && t.days_late > 0;
    let late: Vec<&Task> = a.overdue.iter().filter(late).collect();
    assert_eq!(late.len(), 1);
    assert_eq!(late[0].piece, by_mark(&app, "K03").id);
    let due_today = |mark| a.today.iter().any(|t| t.piece == by_mark(&app, mark).id);
    assert!(due_today("K07") && due_today("K14"));
    assert!(a.coming.iter().any(|t| t.piece == by_mark(&app, "K08").id));
    assert!(a.overdue.iter().any(|t| t.kind == TaskKind::Find));
    assert!(
        a.coming
            .iter()
            .any(|t| matches!(t.kind, TaskKind::FlawLook(_)))
    );
    for stage in [Stage::Bag, Stage::Air, Stage::Settle, Stage::Indoors] {
        let offered = a
            .probably_ready
            .iter()
            .any(|t| t.kind == TaskKind::OfferStage(stage));
        assert!(offered, "{stage:?} is not offered");
    }
    assert!(!a.today.iter().any(|t| t.kind == TaskKind::RenameMark));
    with_bench(&app, now, |pieces, bench| {
        assert!(bag_round(pieces, bench).bags.len() >= 3);
        assert!(weigh_round(pieces, bench, WeighWhich::Due).len() >= 2);
    });
}
