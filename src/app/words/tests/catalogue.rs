//! Promises of the catalogue of words, checked over its files and over the source that uses it.
#![allow(clippy::unwrap_used, clippy::expect_used)]
// The catalogue is embedded in the program; only this test reads the source tree.
#![allow(clippy::disallowed_methods, clippy::disallowed_types)]

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use fluent_syntax::ast::{
    CallArguments, Entry, Expression, InlineExpression, Pattern, PatternElement,
};
use regex::Regex;

/// What one message or term is made of.
#[derive(Debug, Clone, Default, PartialEq)]
struct Parts {
    file: String,
    texts: Vec<String>,
    variables: BTreeSet<String>,
    references: BTreeSet<String>,
}

fn app_dir() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

fn files_under(dir: &Path, extension: &str) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(dir).expect("a folder") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            found.extend(files_under(&path, extension));
        } else if path.extension().is_some_and(|e| e == extension) {
            found.push(path);
        }
    }
    found.sort();
    found
}

/// Every message and term of a language; terms keep their hyphen. Fails on a line that cannot be read.
fn catalogue(language: &str) -> BTreeMap<String, Parts> {
    let mut all = BTreeMap::new();
    for path in files_under(&app_dir().join("words").join(language), "ftl") {
        let file = path.file_name().unwrap().to_string_lossy().into_owned();
        let text = std::fs::read_to_string(&path).unwrap();
        let resource = fluent_syntax::parser::parse(text.as_str())
            .unwrap_or_else(|(_, errors)| panic!("{language}/{file}: {errors:?}"));
        for entry in &resource.body {
            let (id, patterns): (String, Vec<&Pattern<&str>>) = match entry {
                Entry::Message(m) => (
                    m.id.name.to_owned(),
                    m.value
                        .iter()
                        .chain(m.attributes.iter().map(|a| &a.value))
                        .collect(),
                ),
                Entry::Term(t) => (format!("-{}", t.id.name), vec![&t.value]),
                _ => continue,
            };
            let mut parts = Parts {
                file: file.clone(),
                ..Parts::default()
            };
            patterns
                .into_iter()
                .for_each(|p| read_pattern(p, &mut parts));
            if let Some(earlier) = all.insert(id.clone(), parts) {
                panic!(
                    "{language}: {id} stands in {} and again in {file}",
                    earlier.file
                );
            }
        }
    }
    all
}

fn read_pattern(pattern: &Pattern<&str>, parts: &mut Parts) {
    for element in &pattern.elements {
        match element {
            PatternElement::TextElement { value } => parts.texts.push((*value).to_owned()),
            PatternElement::Placeable { expression } => read_expression(expression, parts),
        }
    }
}

fn read_expression(expression: &Expression<&str>, parts: &mut Parts) {
    match expression {
        Expression::Inline(inline) => read_inline(inline, parts),
        Expression::Select { selector, variants } => {
            read_inline(selector, parts);
            variants
                .iter()
                .for_each(|variant| read_pattern(&variant.value, parts));
        }
    }
}

fn read_inline(inline: &InlineExpression<&str>, parts: &mut Parts) {
    let arguments = |arguments: &CallArguments<&str>, parts: &mut Parts| {
        arguments
            .positional
            .iter()
            .for_each(|a| read_inline(a, parts));
        arguments
            .named
            .iter()
            .for_each(|a| read_inline(&a.value, parts));
    };
    match inline {
        InlineExpression::StringLiteral { value } => parts.texts.push((*value).to_owned()),
        InlineExpression::NumberLiteral { .. } => {}
        InlineExpression::VariableReference { id } => {
            parts.variables.insert(id.name.to_owned());
        }
        InlineExpression::MessageReference { id, .. } => {
            parts.references.insert(id.name.to_owned());
        }
        InlineExpression::TermReference {
            id,
            arguments: given,
            ..
        } => {
            parts.references.insert(format!("-{}", id.name));
            // What a term is given stays with the term: it is not a variable of the message.
            if let Some(given) = given {
                let mut inner = Parts::default();
                arguments(given, &mut inner);
                parts.variables.extend(inner.variables);
            }
        }
        InlineExpression::FunctionReference {
            arguments: given, ..
        } => arguments(given, parts),
        InlineExpression::Placeable { expression } => read_expression(expression, parts),
    }
}

/// Source of the app without line comments, by path.
fn sources() -> Vec<(PathBuf, String)> {
    files_under(&app_dir(), "rs")
        .into_iter()
        .filter(|path| !path.starts_with(app_dir().join("words/tests")))
        .map(|path| {
            let text = std::fs::read_to_string(&path).unwrap();
            let code: Vec<&str> = text
                .lines()
                .filter(|line| !line.trim_start().starts_with("//"))
                .collect();
            (path, code.join("\n"))
        })
        .collect()
}

#[test]
fn every_word_used_in_the_source_is_in_the_catalogue() {
    let uk = catalogue("en-GB");
    let used = Regex::new(r#"\.(?:text|with)\(\s*"([^"]+)""#).unwrap();
    let mut seen = 0;
    let mut absent = Vec::new();
    for (path, code) in sources() {
        for found in used.captures_iter(&code) {
            seen += 1;
            if !uk.contains_key(&found[1]) {
                absent.push(format!("{}: {}", path.display(), &found[1]));
            }
        }
    }
    assert!(
        absent.is_empty(),
        "words used but not in words/en-GB/*.ftl:\n{}",
        absent.join("\n")
    );
    assert!(
        seen > 30,
        "the search for used words has gone blind: {seen} found"
    );
}

#[test]
fn every_variable_a_message_wants_is_given_where_it_is_used() {
    let uk = catalogue("en-GB");
    let call = Regex::new(r#"(?s)\.with\(\s*"([^"]+)",\s*&\[(.*?)\],?\s*\)"#).unwrap();
    let name = Regex::new(r#"\(\s*"([A-Za-z][A-Za-z0-9_-]*)"\s*,"#).unwrap();
    let plain = Regex::new(r#"\.text\(\s*"([^"]+)"\s*\)"#).unwrap();
    let mut seen = 0;
    let mut faults = Vec::new();
    for (path, code) in sources() {
        for found in call.captures_iter(&code) {
            let Some(parts) = uk.get(&found[1]) else {
                continue;
            };
            let given: BTreeSet<String> = name
                .captures_iter(&found[2])
                .map(|n| n[1].to_owned())
                .collect();
            seen += 1;
            let lacking: Vec<_> = parts.variables.difference(&given).collect();
            if !lacking.is_empty() {
                faults.push(format!(
                    "{}: {} lacks {lacking:?}",
                    path.display(),
                    &found[1]
                ));
            }
        }
        for found in plain.captures_iter(&code) {
            if let Some(parts) = uk.get(&found[1])
                && !parts.variables.is_empty()
            {
                faults.push(format!(
                    "{}: {} wants {:?}, use with",
                    path.display(),
                    &found[1],
                    parts.variables
                ));
            }
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    assert!(
        seen > 10,
        "the search for filled words has gone blind: {seen} found"
    );
}

#[test]
fn us_words_only_replace_uk_words_and_take_the_same_variables() {
    let (uk, us) = (catalogue("en-GB"), catalogue("en-US"));
    assert!(!us.is_empty());
    for (id, ours) in &us {
        let theirs = uk
            .get(id)
            .unwrap_or_else(|| panic!("en-US/{}: {id} is not in en-GB", ours.file));
        assert_eq!(ours.variables, theirs.variables, "{id}");
        assert_eq!(
            ours.file, theirs.file,
            "{id} stands in another file in en-GB"
        );
        assert_ne!(
            ours.texts, theirs.texts,
            "{id} does not differ from en-GB and may go from en-US"
        );
    }
}

#[test]
fn whatever_a_message_refers_to_exists() {
    let uk = catalogue("en-GB");
    for language in ["en-GB", "en-US"] {
        for (id, parts) in catalogue(language) {
            for reference in parts.references {
                assert!(
                    uk.contains_key(&reference),
                    "{language}: {id} refers to {reference}"
                );
            }
        }
    }
}

#[test]
fn no_message_shouts() {
    for language in ["en-GB", "en-US"] {
        for (id, parts) in catalogue(language) {
            for text in &parts.texts {
                assert!(
                    !text.contains('!'),
                    "{language}: {id} has an exclamation mark: {text}"
                );
            }
        }
    }
}

#[test]
fn no_message_calls_anything_safe_and_none_uses_a_word_that_is_not_ours() {
    let unwanted = Regex::new(r"(?i)\b(safe|safely|target|cured|cure)\b").unwrap();
    assert!(unwanted.is_match("It is safe"));
    for language in ["en-GB", "en-US"] {
        for (id, parts) in catalogue(language) {
            for text in &parts.texts {
                assert!(!unwanted.is_match(text), "{language}: {id}: {text}");
            }
        }
    }
}

#[test]
fn us_english_has_no_uk_word_left() {
    // Spellings and shop words that differ; parts of a word count, so "mouldy" is found by "mould".
    const UK_ONLY: [&str; 12] = [
        "spigot",
        "calliper",
        "mould",
        "colour",
        "centre",
        "grey",
        "meths",
        "programme",
        "favour",
        "fibre",
        "aluminium",
        "nought",
    ];
    let mut effective = catalogue("en-GB");
    effective.extend(catalogue("en-US"));
    let mut left = Vec::new();
    for (id, parts) in effective {
        for text in &parts.texts {
            for word in UK_ONLY {
                if text.to_lowercase().contains(word) {
                    left.push(format!(
                        "{} {id}: \"{word}\" in \"{}\"",
                        parts.file,
                        text.trim()
                    ));
                }
            }
        }
    }
    assert!(
        left.is_empty(),
        "use a term of common.ftl such as {{ -spigot }}, or give the message a line in en-US:\n{}",
        left.join("\n")
    );
}

#[test]
fn every_file_of_the_catalogue_is_embedded_in_both_languages() {
    let listed = std::fs::read_to_string(app_dir().join("words/catalogue.rs")).unwrap();
    let names = |language: &str| -> BTreeSet<String> {
        files_under(&app_dir().join("words").join(language), "ftl")
            .iter()
            .map(|path| path.file_name().unwrap().to_string_lossy().into_owned())
            .collect()
    };
    assert_eq!(names("en-GB"), names("en-US"));
    for language in ["en-GB", "en-US"] {
        for name in names(language) {
            let line = format!("include_str!(\"{language}/{name}\")");
            assert!(
                listed.contains(&line),
                "words/catalogue.rs does not embed {language}/{name}"
            );
        }
    }
}
