//! Supply chain: what the program is made of, read from the lock file: licences, sources, duplicates, no network code, and
//! a reason for every crate that is asked for by name.
#![allow(clippy::unwrap_used, clippy::expect_used)]
#![allow(clippy::disallowed_methods)] // this test reads the documents

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::process::Command;

use serde_json::Value;

/// Licences under which crates may be taken. The texts go with the program's own (DEVELOPERS, Licences).
const LICENCES: [&str; 14] = [
    "MIT",
    "Apache-2.0",
    "Apache-2.0 WITH LLVM-exception",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "ISC",
    "Zlib",
    "BSL-1.0",
    "0BSD",
    "Unlicense",
    "Unicode-3.0",
    "LicenseRef-Slint-Royalty-free-2.0",
    // Asks for a sentence, which stands in DEVELOPERS, Licences.
    "IJG",
    // Changes to the crate's own files would have to be published; none are made.
    "MPL-2.0",
];

/// Crates that speak to a network, or are only there for others that do.
const NETWORK: [&str; 30] = [
    "reqwest",
    "hyper",
    "hyper-util",
    "ureq",
    "curl",
    "curl-sys",
    "isahc",
    "attohttpc",
    "minreq",
    "surf",
    "rustls",
    "rustls-webpki",
    "native-tls",
    "openssl",
    "openssl-sys",
    "ring",
    "h2",
    "h3",
    "quinn",
    "tokio",
    "mio",
    "socket2",
    "async-net",
    "async-std",
    "tungstenite",
    "hickory-resolver",
    "trust-dns-resolver",
    "libp2p",
    "tonic",
    "warp",
];

/// Crates of the program in two versions: the toolkit, its window and its fonts move on at different times.
const TWICE: [&str; 13] = [
    "foldhash",
    "getrandom",
    "hashbrown",
    "linux-raw-sys",
    "miniz_oxide",
    "rustc-hash",
    "rustix",
    "smol_str",
    "syn",
    "thiserror",
    "thiserror-impl",
    "tiny-skia",
    "tiny-skia-path",
];

struct Tree {
    packages: BTreeMap<String, Value>,
    members: BTreeSet<String>,
}

fn root() -> std::path::PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

fn text(value: &Value) -> String {
    value.as_str().unwrap_or_default().to_owned()
}

fn tree() -> Tree {
    let output = Command::new(env!("CARGO"))
        .args(["metadata", "--locked", "--offline", "--format-version", "1"])
        .args(["--filter-platform", "x86_64-unknown-linux-gnu"])
        .current_dir(root())
        .output()
        .unwrap();
    assert!(
        output.status.success(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    let all: Value = serde_json::from_slice(&output.stdout).unwrap();
    let list = |v: &Value| v.as_array().cloned().unwrap_or_default();
    Tree {
        packages: list(&all["packages"])
            .into_iter()
            .map(|p| (text(&p["id"]), p))
            .collect(),
        members: list(&all["workspace_members"]).iter().map(text).collect(),
    }
}

/// Names with the versions of what is built into the program on Linux, tests and build scripts left out.
fn of_the_program() -> BTreeMap<String, BTreeSet<String>> {
    let output = Command::new(env!("CARGO"))
        .args([
            "tree",
            "--package",
            "evenwall",
            "--edges",
            "normal",
            "--locked",
            "--offline",
        ])
        .args([
            "--target",
            "x86_64-unknown-linux-gnu",
            "--prefix",
            "none",
            "--format",
            "{p}",
        ])
        .current_dir(root())
        .output()
        .unwrap();
    assert!(
        output.status.success(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    let mut versions: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for line in String::from_utf8(output.stdout).unwrap().lines() {
        let mut words = line.split(' ').map(str::to_owned);
        if let (Some(name), Some(version)) = (words.next(), words.next()) {
            versions.entry(name).or_default().insert(version);
        }
    }
    assert!(
        versions.contains_key("slint") && versions.contains_key("evenwall-shelf"),
        "the tree was read"
    );
    versions
}

impl Tree {
    fn others(&self) -> impl Iterator<Item = &Value> {
        self.packages
            .iter()
            .filter(|(id, _)| !self.members.contains(*id))
            .map(|(_, p)| p)
    }
}

/// True where the terms of an SPDX expression can be met by the licences above.
fn may_be_taken(expression: &str) -> bool {
    let plain = expression.replace('/', " OR ");
    let mut words: Vec<&str> = Vec::new();
    let spaced = plain.replace('(', " ( ").replace(')', " ) ");
    words.extend(spaced.split_whitespace());
    let mut at = 0;
    any_of(&words, &mut at) && at == words.len()
}

fn any_of(words: &[&str], at: &mut usize) -> bool {
    let mut good = all_of(words, at);
    while words.get(*at) == Some(&"OR") {
        *at += 1;
        good |= all_of(words, at);
    }
    good
}

fn all_of(words: &[&str], at: &mut usize) -> bool {
    let mut good = one(words, at);
    while words.get(*at) == Some(&"AND") {
        *at += 1;
        good &= one(words, at);
    }
    good
}

fn one(words: &[&str], at: &mut usize) -> bool {
    let Some(word) = words.get(*at) else {
        return false;
    };
    *at += 1;
    if *word == "(" {
        let good = any_of(words, at);
        *at += 1;
        return good;
    }
    if words.get(*at) == Some(&"WITH") {
        let with = format!("{word} WITH {}", words.get(*at + 1).unwrap_or(&""));
        *at += 2;
        return LICENCES.contains(&with.as_str()) || LICENCES.contains(word);
    }
    LICENCES.contains(word)
}

#[test]
fn licences_that_may_not_be_taken_are_told_from_those_that_may() {
    for good in [
        "MIT",
        "MIT/Apache-2.0",
        "GPL-3.0-only OR LicenseRef-Slint-Royalty-free-2.0",
        "(MIT OR GPL-2.0) AND Unicode-3.0",
    ] {
        assert!(may_be_taken(good), "{good}");
    }
    for bad in [
        "",
        "GPL-3.0-only",
        "MIT AND GPL-3.0-only",
        "(GPL-2.0 OR AGPL-3.0) AND MIT",
        "SSPL-1.0 OR GPL-2.0",
    ] {
        assert!(!may_be_taken(bad), "{bad}");
    }
}

#[test]
fn every_crate_is_of_the_registry_and_under_a_licence_of_the_list() {
    let tree = tree();
    let mut count = 0;
    for package in tree.others() {
        let name = format!("{} {}", package["name"], package["version"]);
        let licence = text(&package["license"]);
        assert!(may_be_taken(&licence), "{name} is under '{licence}'");
        assert_eq!(
            package["source"], "registry+https://github.com/rust-lang/crates.io-index",
            "{name}"
        );
        count += 1;
    }
    assert!(count > 100, "the tree was read: {count}");
}

#[test]
fn nothing_in_the_program_speaks_to_a_network() {
    let names = of_the_program();
    let found: Vec<_> = NETWORK.iter().filter(|n| names.contains_key(**n)).collect();
    assert!(found.is_empty(), "{found:?}");
    // Nor in what is only there for building and testing it.
    let tree = tree();
    let all: BTreeSet<String> = tree.others().map(|p| text(&p["name"])).collect();
    let found: Vec<_> = NETWORK.iter().filter(|n| all.contains(**n)).collect();
    assert!(found.is_empty(), "{found:?}");
}

#[test]
fn no_further_crate_comes_in_two_versions() {
    let twice: Vec<String> = of_the_program()
        .into_iter()
        .filter(|(_, v)| v.len() > 1)
        .map(|(n, _)| n)
        .collect();
    assert_eq!(
        twice,
        TWICE.map(str::to_owned),
        "in the program; see `cargo tree -d`"
    );
}

/// The crates in the first column of the table of dependencies.
fn with_a_reason(developers: &str) -> BTreeSet<String> {
    let (_, table) = developers
        .split_once("## Dependencies, each with its reason")
        .unwrap();
    let rows = table
        .lines()
        .skip_while(|l| !l.starts_with('|'))
        .take_while(|l| l.starts_with('|'));
    let first = rows.filter_map(|l| l.split('|').nth(1));
    first
        .flat_map(|cell| {
            cell.split([',', '('])
                .map(|n| n.trim().trim_matches('`').to_owned())
                .collect::<Vec<_>>()
        })
        .collect()
}

#[test]
fn every_crate_that_is_asked_for_by_name_has_its_reason_in_developers_md() {
    let tree = tree();
    let reasons = with_a_reason(&std::fs::read_to_string(root().join("DEVELOPERS.md")).unwrap());
    let mut asked = BTreeSet::new();
    for member in &tree.members {
        for dep in tree.packages[member]["dependencies"].as_array().unwrap() {
            if dep["path"].is_null() {
                asked.insert(text(&dep["name"]));
            }
        }
    }
    let missing: Vec<_> = asked.difference(&reasons).collect();
    assert!(missing.is_empty(), "no reason for {missing:?}");
    assert!(asked.len() > 15, "{asked:?}");
}

#[test]
fn a_crate_without_a_reason_would_be_found() {
    let reasons = with_a_reason(
        "## Dependencies, each with its reason\n\n| crate | reason |\n|---|---|\n| serde, sha2 (tests) | x |\n\n| other |",
    );
    assert!(reasons.contains("serde") && reasons.contains("sha2") && !reasons.contains("other"));
}
