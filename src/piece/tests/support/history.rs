//! Histories that could have happened: devices that write, read each other's journals now and then, correct and undo.

use std::collections::HashMap;

use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::{EntryId, LineId};
use evenwall_piece::line::Line;
use evenwall_piece::piece::Moment;
use proptest::collection::vec;
use proptest::option::of;
use proptest::prelude::*;
use proptest::sample::Index;

use super::any::{DEVICES, moment, plain_fact};
use super::{line_id, minutes};

/// What a device does.
#[derive(Debug, Clone)]
enum Act {
    Record(Vec<PieceFact>),
    Correct(Index, Option<Moment>, Option<PieceFact>),
    TakeBack(Index),
}

/// One act of one device; before it, the device may read what all others have written.
#[derive(Debug, Clone)]
pub struct Deed {
    device: usize,
    reads_first: bool,
    act: Act,
}

fn deed(devices: std::ops::Range<usize>) -> impl Strategy<Value = Deed> {
    let correct = (any::<Index>(), of(moment()), of(plain_fact()));
    let act = prop_oneof![
        6 => vec(plain_fact(), 1..3).prop_map(Act::Record),
        2 => correct.prop_map(|(i, at, fact)| Act::Correct(i, at, fact)),
        2 => any::<Index>().prop_map(Act::TakeBack),
        1 => Just(Act::Record(vec![PieceFact::Deleted])),
    ];
    (devices, any::<bool>(), act).prop_map(|(device, reads_first, act)| Deed {
        device,
        reads_first,
        act,
    })
}

/// Who has read how much.
#[derive(Debug, Clone, Default)]
struct Devices {
    highest_read: HashMap<usize, u64>,
    written: HashMap<usize, u64>,
}

/// Carries out deeds after what is already `known` to everybody.
fn carry_out(
    known: &[Line<PieceFact>],
    devices: &mut Devices,
    deeds: Vec<Deed>,
) -> Vec<Line<PieceFact>> {
    let mut lines = known.to_vec();
    for deed in deeds {
        let device = DEVICES[deed.device];
        let top = lines.iter().map(|l| l.seq).max().unwrap_or(0);
        let read = devices.highest_read.entry(deed.device).or_default();
        if deed.reads_first {
            *read = top;
        }
        // Only what this device has written itself or has read can be corrected or taken back.
        let seen: Vec<&Line<PieceFact>> = lines
            .iter()
            .filter(|l| l.id.device.as_str() == device || l.seq <= *read)
            .collect();
        let facts = match deed.act {
            Act::Record(facts) => facts,
            _ if seen.is_empty() => vec![PieceFact::Created],
            Act::Correct(index, at, fact) => vec![PieceFact::Amends {
                entry: EntryId {
                    line: index.get(&seen).id.clone(),
                    part: 0,
                },
                at,
                fact: fact.map(Box::new),
            }],
            Act::TakeBack(index) => vec![PieceFact::Retracts(index.get(&seen).id.clone())],
        };
        *read += 1;
        let n = devices.written.entry(deed.device).or_default();
        *n += 1;
        let at = minutes(i64::try_from(lines.len()).unwrap());
        lines.push(Line {
            id: line_id(device, *n),
            seq: *read,
            at,
            noted_at: at,
            facts,
        });
    }
    lines.split_off(known.len())
}

/// Up to 25 lines of three devices that read each other now and then.
pub fn history() -> impl Strategy<Value = Vec<Line<PieceFact>>> {
    vec(deed(0..DEVICES.len()), 1..25)
        .prop_map(|deeds| carry_out(&[], &mut Devices::default(), deeds))
}

/// What two devices both know, and what each then writes without reading the other.
#[derive(Debug, Clone)]
pub struct Parted {
    /// Known to both.
    pub known: Vec<Line<PieceFact>>,
    /// Written by the one.
    pub here: Vec<Line<PieceFact>>,
    /// Written by the other.
    pub there: Vec<Line<PieceFact>>,
}

/// Two devices that part and both go on.
pub fn parted() -> impl Strategy<Value = Parted> {
    let known = vec(deed(0..2), 1..10);
    (known, vec(deed(0..1), 1..8), vec(deed(1..2), 1..8)).prop_map(|(known, here, there)| {
        let mut devices = Devices::default();
        let known = carry_out(&[], &mut devices, known);
        let top = known.iter().map(|l| l.seq).max().unwrap_or(0);
        devices.highest_read = HashMap::from([(0, top), (1, top)]);
        let here = carry_out(&known, &mut devices.clone(), here);
        let there = carry_out(&known, &mut devices, there);
        Parted { known, here, there }
    })
}

/// The lines in fold order, one copy of each.
pub fn ordered(lines: &[Line<PieceFact>]) -> Vec<Line<PieceFact>> {
    evenwall_piece::line::in_fold_order(lines.to_vec())
}

/// `lines` with each line taken back from the last to the first, by one device that has read all of them: the state
/// after each step, the first one with nothing taken back.
pub fn taken_back_one_by_one(lines: &[Line<PieceFact>]) -> Vec<Vec<Line<PieceFact>>> {
    let ordered = ordered(lines);
    let top = ordered.last().map_or(0, |l| l.seq);
    let targets: Vec<LineId> = ordered.iter().rev().map(|l| l.id.clone()).collect();
    let mut steps = vec![ordered.clone()];
    let mut so_far = ordered;
    for (i, target) in targets.into_iter().enumerate() {
        let n = u64::try_from(i).unwrap() + 1;
        so_far.push(super::retracts("undoer", n, top + n, target));
        steps.push(so_far.clone());
    }
    steps
}
