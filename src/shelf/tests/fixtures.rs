//! Fixtures: the frozen shelves of every version load, now and always. The data is invented.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod every_fact;

use std::collections::BTreeSet;
use std::path::Path;
use std::sync::Arc;

use evenwall_piece::detail::{DetailField, DetailValue};
use evenwall_piece::fact::{Measure, PieceFact};
use evenwall_piece::ids::{PieceId, Scope};
use evenwall_piece::shop::ShopFact;
use evenwall_shelf::disk::{Disk, RealDisk};
use evenwall_shelf::format::{Recorded, read, write};
use evenwall_shelf::shelf::Shelf;
use every_fact::{PIECE_KINDS, SHOP_KINDS, piece_kind, shop_kind};

fn open() -> Shelf {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/fixtures/v1");
    Shelf::open_reader(Arc::new(RealDisk::new()), &path).unwrap()
}

fn k07() -> PieceId {
    PieceId::new("k07").unwrap()
}

#[test]
fn version_1_loads_with_every_kind_of_fact_and_nothing_odd() {
    let mut shelf = open();
    let all = shelf.load_everything().unwrap();
    assert_eq!(
        shelf.notices().collect::<Vec<_>>(),
        [] as [&evenwall_shelf::notice::Notice; 0]
    );
    let facts: Vec<_> = all.pieces[0].1.iter().flat_map(|l| &l.facts).collect();
    let kinds: BTreeSet<_> = facts.iter().map(|f| piece_kind(f)).collect();
    assert_eq!(
        kinds,
        (0..PIECE_KINDS - 1).collect(),
        "every kind but that of a newer version"
    );
    let shop: BTreeSet<_> = all
        .shop
        .iter()
        .flat_map(|l| &l.facts)
        .map(shop_kind)
        .collect();
    assert_eq!(shop, (0..SHOP_KINDS - 1).collect());
    let length = DetailValue::Length(Measure {
        value: 180.5,
        typed: "180,5".into(),
    });
    assert!(facts.contains(&&PieceFact::Detail {
        field: DetailField::Height,
        value: Some(length)
    }));
    assert!(facts.contains(&&PieceFact::Note(
        "Zażółć gęślą jaźń, İstanbul \u{1F600}".into()
    )));
    let of_ben = all.pieces[0]
        .1
        .iter()
        .filter(|l| l.id.device.as_str() == "ben")
        .count();
    assert_eq!(of_ben, 3);
}

#[test]
fn version_1_is_written_as_it_was_frozen() {
    fn same<F: Recorded>(shelf: &mut Shelf, scope: &Scope) {
        for line in shelf.load(scope).unwrap() {
            for raw in &line.facts {
                let fact: F = read(raw.get(), &mut Vec::new());
                assert_eq!(write(&fact).unwrap().get(), raw.get());
            }
        }
    }
    let mut shelf = open();
    same::<PieceFact>(&mut shelf, &Scope::Piece(k07()));
    same::<ShopFact>(&mut shelf, &Scope::Shop);
}

#[test]
fn what_is_recorded_through_the_domain_comes_back_through_it() {
    let temp = tempfile::tempdir().unwrap();
    let open = || {
        Shelf::open(
            Arc::new(RealDisk::new()),
            &temp.path().join("s"),
            &temp.path().join("d"),
            [1; 16],
        )
    };
    let when = chrono::DateTime::parse_from_rfc3339("2026-10-25T02:30:00+02:00").unwrap();
    let mut shelf = open().unwrap();
    let facts = vec![PieceFact::Created, PieceFact::Note("two at once".into())];
    let line = shelf.append_piece(&k07(), when, when, facts).unwrap();
    let scale = shelf
        .append_shop(when, when, vec![ShopFact::NewScale { step_g: 0.1 }])
        .unwrap();
    assert_eq!(
        shelf.load_piece(&k07()).unwrap(),
        std::slice::from_ref(&line)
    );
    drop(shelf);
    let mut shelf = open().unwrap();
    let all = shelf.load_everything().unwrap();
    assert_eq!(all.pieces, [(k07(), vec![line])]);
    assert_eq!(all.shop, [scale]);
    assert_eq!(shelf.load_shop().unwrap(), all.shop);
}

#[test]
fn a_line_on_disk_is_what_it_has_been_since_version_1() {
    let temp = tempfile::tempdir().unwrap();
    let mut shelf = Shelf::open(
        Arc::new(RealDisk::new()),
        &temp.path().join("s"),
        &temp.path().join("d"),
        [1; 16],
    )
    .unwrap();
    let at = chrono::DateTime::parse_from_rfc3339("2026-10-24T18:00:00+02:00").unwrap();
    let noted_at = chrono::DateTime::parse_from_rfc3339("2026-10-25T02:30:00.5+01:00").unwrap();
    shelf
        .append_piece(
            &k07(),
            at,
            noted_at,
            vec![PieceFact::Created, PieceFact::Note("ä\nb".into())],
        )
        .unwrap();
    let device = shelf.device().unwrap().to_string();
    let path = shelf
        .path()
        .join("pieces/k07")
        .join(format!("{device}.jsonl"));
    let text = String::from_utf8(RealDisk::new().read(&path).unwrap()).unwrap();
    let wanted = r#"{"device":"DEVICE","n":1,"seq":1,"at":"2026-10-24T18:00:00+02:00","noted_at":"2026-10-25T02:30:00.500+01:00","v":1,"facts":[{"fact":"created"},{"fact":"note","text":"ä\nb"}]}"#;
    assert_eq!(text, format!("{}\n", wanted.replace("DEVICE", &device)));
}
