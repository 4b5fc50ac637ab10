//! Format: every fact comes back as it was recorded, and what a newer version recorded is never dropped.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod every_fact;

use evenwall_piece::fact::PieceFact;
use evenwall_piece::shop::ShopFact;
use evenwall_shelf::format::{Recorded, facts, read, write};
use evenwall_shelf::line::RawLine;
use every_fact::{PIECE_KINDS, SHOP_KINDS, piece_facts, piece_kind, shop_facts, shop_kind};
use proptest::prelude::*;
use proptest::strategy::ValueTree;

fn back<F: Recorded>(fact: &F) -> (F, Vec<F>) {
    let mut rest = Vec::new();
    let read = read(write(fact).unwrap().get(), &mut rest);
    (read, rest)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2000, ..ProptestConfig::default() })]

    #[test]
    fn every_fact_of_a_piece_comes_back_as_it_was(fact in piece_facts()) {
        prop_assert_eq!(back(&fact), (fact, vec![]));
    }

    #[test]
    fn every_fact_of_the_shop_comes_back_as_it_was(fact in shop_facts()) {
        prop_assert_eq!(back(&fact), (fact, vec![]));
    }

    #[test]
    fn a_field_of_a_newer_version_never_costs_the_rest_of_the_fact(fact in piece_facts()) {
        prop_assume!(!matches!(fact, PieceFact::Unknown { .. }));
        let text = write(&fact).unwrap().get().replacen('{', r#"{"smell":["of","pears"],"#, 1);
        let mut rest = Vec::new();
        let read: PieceFact = read(&text, &mut rest);
        prop_assert_eq!(&read, &fact);
        let PieceFact::Unknown { kind, raw } = &rest[0] else { panic!("{rest:?}") };
        let tag = format!("\"fact\":\"{kind}\"");
        prop_assert!(text.contains(&tag));
        prop_assert_eq!(raw, r#"{"smell":["of","pears"]}"#);
    }

    #[test]
    fn any_json_is_read_without_a_panic_and_kept(text in "\\{\"fact\":\"(look|reading|x)\"(,\"[a-z]{1,5}\":[0-9]{1,3}){0,3}\\}") {
        let mut rest = Vec::new();
        let read: PieceFact = read(&text, &mut rest);
        if let PieceFact::Unknown { raw, .. } = read {
            prop_assert_eq!(raw, text);
        }
    }
}

#[test]
fn the_strategies_make_every_kind_of_fact() {
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    let mut draw =
        |kinds: usize, one: &mut dyn FnMut(&mut proptest::test_runner::TestRunner) -> usize| {
            let mut seen = vec![false; kinds];
            for _ in 0..4000 {
                seen[one(&mut runner)] = true;
            }
            seen
        };
    let pieces = draw(PIECE_KINDS, &mut |r| {
        piece_kind(&piece_facts().new_tree(r).unwrap().current())
    });
    assert!(pieces.iter().all(|s| *s), "{pieces:?}");
    let shop = draw(SHOP_KINDS, &mut |r| {
        shop_kind(&shop_facts().new_tree(r).unwrap().current())
    });
    assert!(shop.iter().all(|s| *s), "{shop:?}");
}

#[test]
fn numbers_that_are_none_are_refused_not_written_as_something_else() {
    use evenwall_piece::fact::Measure;
    use evenwall_piece::ids::{DeviceId, EntryId, LineId};
    let weighed = PieceFact::Weighed {
        mass_g: Measure::plain(f64::NAN),
        tare_g: 0.0,
    };
    assert!(write(&weighed).is_err());
    assert!(
        write(&ShopFact::NewScale {
            step_g: f64::INFINITY
        })
        .is_err()
    );
    let line = LineId {
        device: DeviceId::new("a").unwrap(),
        n: 1,
    };
    let amends = PieceFact::Amends {
        entry: EntryId { line, part: 0 },
        at: None,
        fact: Some(Box::new(weighed)),
    };
    assert!(write(&amends).is_err());
}

#[test]
fn what_a_newer_version_recorded_is_kept_to_the_letter_and_shown() {
    let cases = [
        (r#"{"fact":"scanned","points":[1.50,2]}"#, "scanned"),
        (r#"{"fact":"look","feel":"frozen","mould":false}"#, "look"),
        (
            r#"{"fact":"reading","station":"lid","clock":12,"taken":"callipers"}"#,
            "reading",
        ),
        (
            r#"{"fact":"reading","station":1,"clock":13,"taken":"callipers"}"#,
            "reading",
        ),
        (r#"{"fact":"ended","end":"exchanged"}"#, "ended"),
        (r#"{"fact":7}"#, ""),
        ("[1,2]", ""),
    ];
    for (text, kind) in cases {
        let mut rest = Vec::new();
        let read: PieceFact = read(text, &mut rest);
        assert_eq!(
            read,
            PieceFact::Unknown {
                kind: kind.into(),
                raw: text.into()
            }
        );
        assert_eq!(rest, []);
    }
}

#[test]
fn a_fact_with_thousands_of_newer_fields_is_kept_whole_and_soon_read() {
    let fields: String = (0..20_000).map(|n| format!(",\"f{n}\":1")).collect();
    let text = format!("{{\"fact\":\"note\",\"text\":\"x\"{fields}}}");
    let read: PieceFact = read(&text, &mut Vec::new());
    assert_eq!(
        read,
        PieceFact::Unknown {
            kind: "note".into(),
            raw: text
        }
    );
}

#[test]
fn newer_fields_of_a_line_and_its_facts_follow_after_the_known_ones() {
    let line = r#"{"device":"a","n":1,"seq":1,"at":"2026-01-01T00:00:00Z","noted_at":"2026-01-01T00:00:00Z","v":2,"mood":"good","facts":[{"fact":"note","text":"one","colour":"red"},{"fact":"amends","entry":{"device":"a","n":1,"part":0},"amended":{"fact":"note","text":"three","ink":1}},{"fact":"note","text":"two"}]}"#;
    let facts: Vec<PieceFact> = facts(&RawLine::parse(line.as_bytes()).unwrap());
    assert_eq!(facts.len(), 6);
    assert_eq!(facts[0], PieceFact::Note("one".into()));
    assert!(
        matches!(&facts[1], PieceFact::Amends { fact: Some(f), .. } if **f == PieceFact::Note("three".into()))
    );
    assert_eq!(facts[2], PieceFact::Note("two".into()));
    let rest: Vec<_> = facts[3..]
        .iter()
        .map(|f| match f {
            PieceFact::Unknown { kind, raw } => (kind.as_str(), raw.as_str()),
            other => panic!("{other:?}"),
        })
        .collect();
    assert_eq!(
        rest,
        [
            ("note", r#"{"colour":"red"}"#),
            ("note", r#"{"ink":1}"#),
            ("line", r#"{"mood":"good"}"#)
        ]
    );
}
