//! Contrast: every pair of colours that text or a sign stands in, computed from `ui/theme.slint` for both themes.
//!
//! Formula and limits: WCAG 2.2, "relative luminance" and "contrast ratio", success criteria 1.4.3 (text 4.5:1) and 1.4.11
//! (borders of controls and parts of drawings 3:1).
#![allow(clippy::unwrap_used, clippy::expect_used)]
#![allow(clippy::disallowed_methods)] // this test reads the theme

use std::collections::BTreeMap;
use std::path::Path;

type Rgb = [u8; 3];

const TEXT: f64 = 4.5;
const GRAPHIC: f64 = 3.0;

/// Text in these colours stands on any of these grounds.
const INKS: [&str; 8] = [
    "ink",
    "ink2",
    "act",
    "late",
    "caut",
    "heavy-ink",
    "thin",
    "even",
];
const GROUNDS: [&str; 14] = [
    "paper",
    "sheet",
    "sunk",
    "key",
    "key2",
    "pressed",
    "void",
    "skin",
    "act-soft",
    "late-soft",
    "caut-soft",
    "heavy-soft",
    "thin-soft",
    "even-soft",
];

/// Text that stands on one ground only.
const LABELS: [(&str, &str); 5] = [
    ("on-act", "act"),
    ("on-act", "act-pressed"),
    ("on-inv", "inv"),
    ("on-inv", "inv-line"),
    ("ink", "wood"),
];

/// Borders of controls, and what tells parts of a drawing apart. `heavy` on `wood` is told by its hatching and the outline
/// in `ink`, and the steps of moisture by the word or per cent beside each, so neither pair is asked for.
const DRAWN: [(&str, &str); 14] = [
    ("edge", "paper"),
    ("edge", "sheet"),
    ("edge", "sunk"),
    ("edge", "key"),
    ("act", "paper"),
    ("act", "sheet"),
    ("inv-line", "inv"),
    ("caut-mark", "sheet"),
    ("caut-mark", "paper"),
    ("caut-mark", "caut-soft"),
    ("hatch", "heavy"),
    ("thin", "wood"),
    ("even", "wood"),
    ("heavy", "sheet"),
];

fn hex(text: &str) -> Option<Rgb> {
    let digits = text.strip_prefix('#')?;
    let part = |at: usize| u8::from_str_radix(digits.get(at..at + 2)?, 16).ok();
    // A colour with alpha has eight digits and no contrast of its own.
    (digits.len() == 6).then(|| Some([part(0)?, part(2)?, part(4)?]))?
}

/// Token to its colours, dark and light.
fn tokens(theme: &str) -> BTreeMap<String, [Rgb; 2]> {
    let one = |line: &str| {
        let (name, value) = line
            .trim()
            .strip_prefix("out property <color> ")?
            .split_once(": root.dark ? ")?;
        let (dark, light) = value.strip_suffix(';')?.split_once(" : ")?;
        Some((name.to_owned(), [hex(dark)?, hex(light)?]))
    };
    theme.lines().filter_map(one).collect()
}

fn luminance(colour: Rgb) -> f64 {
    let linear = |c: u8| {
        let c = f64::from(c) / 255.0;
        if c <= 0.040_45 {
            c / 12.92
        } else {
            ((c + 0.055) / 1.055).powf(2.4)
        }
    };
    0.2126 * linear(colour[0]) + 0.7152 * linear(colour[1]) + 0.0722 * linear(colour[2])
}

fn contrast(a: Rgb, b: Rgb) -> f64 {
    let (a, b) = (luminance(a), luminance(b));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

fn theme() -> BTreeMap<String, [Rgb; 2]> {
    let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../ui/theme.slint");
    tokens(&std::fs::read_to_string(file).unwrap())
}

fn too_weak(
    theme: &BTreeMap<String, [Rgb; 2]>,
    pairs: impl Iterator<Item = (&'static str, &'static str)>,
    least: f64,
) -> Vec<String> {
    let mut weak = Vec::new();
    for (on, ground) in pairs {
        for (name, at) in [("Charcoal", 0), ("Paper", 1)] {
            let found = contrast(theme[on][at], theme[ground][at]);
            if found < least {
                weak.push(format!(
                    "{name}: {on} on {ground} {found:.2}, {least} asked"
                ));
            }
        }
    }
    weak
}

#[test]
fn the_formula_gives_the_published_ends() {
    // WCAG 2.2: black on white is 21:1. #767676 on white is the greyest grey of 4.54:1 that many tables print.
    assert!((contrast([0, 0, 0], [255, 255, 255]) - 21.0).abs() < 1e-9);
    assert!((contrast([0x76; 3], [255, 255, 255]) - 4.54).abs() < 0.01);
}

#[test]
fn all_text_can_be_read_on_all_its_grounds_in_both_themes() {
    let theme = theme();
    let pairs = INKS
        .iter()
        .flat_map(|ink| GROUNDS.iter().map(move |g| (*ink, *g)));
    assert_eq!(
        too_weak(&theme, pairs.chain(LABELS), TEXT),
        [] as [String; 0]
    );
}

#[test]
fn controls_and_drawings_can_be_told_from_their_ground_in_both_themes() {
    assert_eq!(
        too_weak(&theme(), DRAWN.into_iter(), GRAPHIC),
        [] as [String; 0]
    );
}

#[test]
fn a_weak_pair_would_be_found_and_no_colour_is_passed_over() {
    let planted = tokens(
        "    out property <color> ink: root.dark ? #888888 : #999999;\n    out property <color> paper: root.dark ? #777777 : #aaaaaa;\n",
    );
    assert_eq!(
        too_weak(&planted, [("ink", "paper")].into_iter(), TEXT).len(),
        2
    );
    let all = theme();
    assert!(all.len() > 35, "{}", all.len());
    // Every colour is in a pair, or is one that carries nothing by itself.
    let alone = [
        "line", "m1", "m2", "m3", "m4", "m5", "grain", "skin", "void", "wood",
    ];
    let in_a_pair = |name: &str| {
        INKS.contains(&name)
            || GROUNDS.contains(&name)
            || LABELS
                .iter()
                .chain(&DRAWN)
                .any(|(a, b)| *a == name || *b == name)
    };
    let left: Vec<_> = all
        .keys()
        .filter(|n| !alone.contains(&n.as_str()) && !in_a_pair(n))
        .collect();
    assert!(left.is_empty(), "{left:?}");
}
