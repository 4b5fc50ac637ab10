//! Mutation: a seeded fuzzer. Inputs are changed at random, those that show something new join the pool, and none may
//! make the program panic. Used by a short test and a long command.
#![allow(dead_code)] // The command and the test use a part each.

use std::collections::HashSet;
use std::panic::{AssertUnwindSafe, catch_unwind};

pub mod targets;

/// Numbers that look random, the same for one seed.
pub struct Dice(u64);

impl Dice {
    pub fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1)
    }

    pub fn below(&mut self, end: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        usize::try_from((self.0 >> 11) % end.max(1) as u64).unwrap()
    }

    fn of<'a, T>(&mut self, list: &'a [T]) -> &'a T {
        &list[self.below(list.len())]
    }
}

/// What a target makes of an input: words that tell outcomes apart. The more of them, the more was reached.
pub type Outcome = Vec<String>;

/// Feeds an input to what is fuzzed.
pub type Run = Box<dyn Fn(&[u8]) -> Outcome>;

/// Something to be fuzzed.
pub struct Target {
    pub name: &'static str,
    pub seeds: Vec<Vec<u8>>,
    /// Words that the format knows, to be put in.
    pub words: &'static [&'static str],
    pub run: Run,
}

/// What came of fuzzing one target.
#[derive(Debug)]
pub struct Report {
    pub name: &'static str,
    pub executions: usize,
    /// Distinct outcomes after a tenth, a half and all of the executions.
    pub outcomes: [usize; 3],
    /// Inputs that showed something new, seeds among them.
    pub pool: usize,
    /// Inputs that made it panic, with what it said.
    pub panics: Vec<(Vec<u8>, String)>,
}

const MOST_IN_POOL: usize = 3_000;
const LONGEST: usize = 60_000;

/// Runs a target so many times.
pub fn fuzz(target: &Target, executions: usize, seed: u64) -> Report {
    let mut dice = Dice::new(seed);
    let mut seen: HashSet<String> = HashSet::new();
    let mut pool: Vec<Vec<u8>> = Vec::new();
    let mut report = Report {
        name: target.name,
        executions,
        outcomes: [0; 3],
        pool: 0,
        panics: Vec::new(),
    };
    for n in 0..executions {
        let input = match target.seeds.get(n) {
            Some(seed) => seed.clone(),
            None => mutate(&mut dice, &pool, target.words),
        };
        match catch_unwind(AssertUnwindSafe(|| (target.run)(&input))) {
            Ok(outcome) => {
                let before = seen.len();
                let text = String::from_utf8_lossy(&input);
                for word in outcome {
                    // Words of the input itself, a note or a cell, say nothing of what was reached.
                    if !seen.contains(&word) && !text.contains(&word) {
                        seen.insert(word);
                    }
                }
                if (seen.len() > before && pool.len() < MOST_IN_POOL) || n < target.seeds.len() {
                    pool.push(input);
                }
            }
            Err(panic) => {
                let text = panic
                    .downcast_ref::<String>()
                    .cloned()
                    .or_else(|| panic.downcast_ref::<&str>().map(|s| (*s).to_owned()));
                report.panics.push((input, text.unwrap_or_default()));
                if report.panics.len() >= 20 {
                    report.executions = n + 1;
                    break;
                }
            }
        }
        for (place, part) in [(0, 10), (1, 2), (2, 1)] {
            if n + 1 == executions / part {
                report.outcomes[place] = seen.len();
            }
        }
    }
    report.pool = pool.len();
    report
}

const NUMBERS: &[&str] = &[
    "0",
    "-1",
    "1",
    "255",
    "256",
    "65536",
    "9007199254740991",
    "9007199254740992",
    "1e308",
    "-1e308",
    "1e-308",
    "1e999",
    "0.1",
    "99999999999999999999",
    "-0",
    "12",
    "13",
    "1.0",
    "null",
    "true",
    "\"\"",
    "[]",
    "{}",
];

const DAYS: &[&str] = &[
    "0000-01-01",
    "9999-12-31",
    "2024-02-29",
    "2023-02-29",
    "2026-03-29",
    "2026-13-01",
    "1969-12-31",
    "-0001-01-01",
    "+262000-01-01",
    "31.12.2025",
    "02/03/2026",
];

const MOMENTS: &[&str] = &[
    "0000-01-01T00:00:00+23:59",
    "9999-12-31T23:59:59-23:59",
    "2026-03-29T02:30:00+01:00",
    "2026-06-30T23:59:60Z",
    "2024-02-29T12:00:00-12:00",
    "2026-10-25T02:30:00+02:00",
];

/// One to four changes of an input of the pool.
fn mutate(dice: &mut Dice, pool: &[Vec<u8>], words: &[&str]) -> Vec<u8> {
    let mut input = dice.of(pool).clone();
    for _ in 0..=dice.below(4) {
        change(dice, &mut input, pool, words);
    }
    input.truncate(LONGEST);
    input
}

fn change(dice: &mut Dice, input: &mut Vec<u8>, pool: &[Vec<u8>], words: &[&str]) {
    let at = dice.below(input.len() + 1);
    let end = (at + 1 + dice.below(24)).min(input.len());
    match dice.below(13) {
        0 if at < input.len() => input[at] ^= 1 << dice.below(8),
        1 if at < end => drop(input.drain(at..end)),
        2 if at < end => {
            let part = input[at..end].to_vec();
            input.splice(at..at, part);
        }
        3 => {
            let other = dice.of(pool);
            let from = dice.below(other.len() + 1);
            let to = (from + dice.below(300)).min(other.len());
            input.splice(at..at, other[from..to].iter().copied());
        }
        4 => input.truncate(at),
        5 => replace(
            dice,
            input,
            |b| b.is_ascii_digit() || matches!(b, b'.' | b'-'),
            NUMBERS,
        ),
        6 => replace(dice, input, |b| b.is_ascii_digit() || b == b'-', DAYS),
        7 => replace(
            dice,
            input,
            |b| b.is_ascii_digit() || b"-+:TZ.".contains(&b),
            MOMENTS,
        ),
        8 | 9 => replace(dice, input, |b| b.is_ascii_lowercase() || b == b'_', words),
        10 => lines(dice, input),
        11 => {
            let run =
                vec![*dice.of(&[0, b' ', b'[', b'{', b'"', 0xff, b'\n', b';']); dice.below(400)];
            input.splice(at..at, run);
        }
        _ => {
            let word = dice.of(words);
            input.splice(at..at, word.bytes());
        }
    }
}

/// Puts one of the words in place of a run of such bytes.
fn replace(dice: &mut Dice, input: &mut Vec<u8>, of: fn(u8) -> bool, words: &[&str]) {
    let from = dice.below(input.len() + 1);
    let Some(start) = input[from..].iter().position(|b| of(*b)).map(|p| from + p) else {
        return;
    };
    let len = input[start..].iter().take_while(|b| of(**b)).count();
    let word = dice.of(words);
    input.splice(start..start + len, word.bytes());
}

/// Doubles, drops, or swaps a line.
fn lines(dice: &mut Dice, input: &mut Vec<u8>) {
    let mut all: Vec<Vec<u8>> = input.split(|b| *b == b'\n').map(<[u8]>::to_vec).collect();
    let (one, other) = (dice.below(all.len()), dice.below(all.len()));
    match dice.below(3) {
        0 => all.swap(one, other),
        1 => all.insert(other, all[one].clone()),
        _ => drop(all.remove(one)),
    }
    *input = all.join(&b'\n');
}

/// The words of a text without its numbers.
pub fn words_of(text: &str, into: &mut Outcome) {
    into.extend(
        text.split(|c: char| !c.is_alphabetic() && c != '_')
            .filter(|w| w.len() > 2)
            .map(str::to_owned),
    );
}
