//! The layers hold: who may depend on whom, and who may touch files, clocks and threads.
#![allow(clippy::unwrap_used, clippy::expect_used)]
#![allow(clippy::disallowed_methods)] // this test reads the sources

use std::path::{Path, PathBuf};

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// Crates of ours that a manifest depends on, in whatever section.
fn depends_on(manifest: &str) -> Vec<String> {
    manifest
        .lines()
        .filter_map(|l| l.trim().strip_prefix("evenwall-"))
        .filter_map(|l| l.split(['.', ' ', '=']).next())
        .map(str::to_owned)
        .collect()
}

/// An arrow means "may depend on"; nothing points left.
const MAY: [(&str, &[&str]); 9] = [
    ("src/wood", &[]),
    ("src/photo", &[]),
    ("src/piece", &["wood"]),
    ("src/shelf", &["piece", "wood"]),
    ("src/records", &[]),
    ("src/app", &["records", "shelf", "piece", "photo", "wood"]),
    ("src/reckon", &["wood"]),
    ("ui", &[]),
    (
        ".",
        &[
            "ui", "app", "reckon", "records", "shelf", "piece", "photo", "wood",
        ],
    ),
];

fn illegal<'a>(found: &'a [String], may: &[&str]) -> Vec<&'a String> {
    found
        .iter()
        .filter(|d| !may.contains(&d.as_str()))
        .collect()
}

#[test]
fn no_crate_depends_on_one_to_its_left() {
    for (folder, may) in MAY {
        let manifest = std::fs::read_to_string(root().join(folder).join("Cargo.toml")).unwrap();
        // The root manifest also lists the workspace's own crates.
        let manifest = manifest.split("\n[package]").last().unwrap().to_owned();
        let found = depends_on(&manifest);
        assert!(
            illegal(&found, may).is_empty(),
            "{folder} depends on {found:?}, allowed: {may:?}"
        );
    }
}

#[test]
fn a_planted_dependency_is_found() {
    let found = depends_on("[dependencies]\nevenwall-app.workspace = true\nserde = \"1\"\n");
    assert_eq!(illegal(&found, &["wood"]), ["app"]);
}

/// What a layer may not name in its sources.
fn forbidden(folder: &str) -> &'static [&'static str] {
    const CLOCK: &[&str] = &["SystemTime::now", "Instant::now", "Local::now", "Utc::now"];
    const PURE: &[&str] = &[
        "SystemTime::now",
        "Instant::now",
        "Local::now",
        "Utc::now",
        "std::fs",
        "std::thread",
        "std::net",
        "serde",
    ];
    const APP: &[&str] = &[
        "SystemTime::now",
        "Instant::now",
        "Local::now",
        "Utc::now",
        "std::fs",
        "std::thread",
        "std::net",
        "slint::",
    ];
    match folder {
        "src/wood" | "src/photo" | "src/piece" | "src/records" => PURE,
        "src/app" | "src/reckon" => APP,
        _ => CLOCK,
    }
}

fn violations(source: &str, words: &[&str]) -> Vec<String> {
    source
        .lines()
        .enumerate()
        .filter(|(_, line)| !line.trim_start().starts_with("//"))
        .flat_map(|(n, line)| {
            words
                .iter()
                .filter(|w| line.contains(**w))
                .map(move |w| format!("line {}: {w}", n + 1))
        })
        .collect()
}

fn sources(folder: &Path, into: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).unwrap().map(Result::unwrap) {
        let path = entry.path();
        let name = entry.file_name();
        if path.is_dir() {
            // Tests and benches may read files and clocks.
            if !["tests", "benches", "examples"].contains(&name.to_str().unwrap()) {
                sources(&path, into);
            }
        } else if path.extension().is_some_and(|e| e == "rs") {
            into.push(path);
        }
    }
}

#[test]
fn pure_layers_touch_no_files_clocks_or_threads() {
    for folder in [
        "src/wood",
        "src/photo",
        "src/piece",
        "src/shelf",
        "src/records",
        "src/app",
        "src/reckon",
    ] {
        let mut files = Vec::new();
        sources(&root().join(folder), &mut files);
        assert!(!files.is_empty());
        for file in files {
            let found = violations(&std::fs::read_to_string(&file).unwrap(), forbidden(folder));
            assert!(found.is_empty(), "{}: {found:?}", file.display());
        }
    }
}

#[test]
fn a_planted_violation_is_found() {
    let planted =
        "fn now() { chrono::Local::now(); }\n// std::fs in a comment is fine\nuse std::fs::File;\n";
    assert_eq!(violations(planted, forbidden("src/piece")).len(), 2);
    assert_eq!(violations(planted, forbidden("src/shelf")).len(), 1);
}

/// Everything that is written by hand and read: Rust and screens, tests and benches too.
fn readable(folder: &Path, into: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).unwrap().map(Result::unwrap) {
        let path = entry.path();
        if path.is_dir() {
            readable(&path, into);
        } else if path.extension().is_some_and(|e| e == "rs" || e == "slint") {
            into.push(path);
        }
    }
}

/// The most lines a file may have, its tests included.
const LONGEST: usize = 400;

fn too_long(text: &str) -> Option<usize> {
    Some(text.lines().count()).filter(|lines| *lines > LONGEST)
}

#[test]
fn files_stay_short_enough_to_read_at_one_sitting() {
    let mut files = Vec::new();
    for folder in ["src", "tests", "ui"] {
        readable(&root().join(folder), &mut files);
    }
    for walked in [
        "src/app/tests/layers.rs",
        "tests/ui/main.rs",
        "ui/app-window.slint",
    ] {
        assert!(files.contains(&root().join(walked)), "{walked} is left out");
    }
    let found: Vec<String> = files
        .iter()
        .filter_map(|file| {
            let lines = too_long(&std::fs::read_to_string(file).unwrap())?;
            let name = file.strip_prefix(root()).unwrap().display();
            Some(format!("{name} has {lines} lines"))
        })
        .collect();
    assert!(
        found.is_empty(),
        "at most {LONGEST} are allowed, split:\n{}",
        found.join("\n")
    );
}

#[test]
fn a_planted_long_file_is_found() {
    assert_eq!(too_long(&"\n".repeat(LONGEST)), None);
    assert_eq!(too_long(&"\n".repeat(LONGEST + 1)), Some(LONGEST + 1));
}
