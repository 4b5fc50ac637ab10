//! All words of the app, from a Fluent catalogue that is embedded in the program.
//!
//! [`Words`] answers with final text. UK English is complete; US English holds only what differs and falls back to UK
//! English message by message, and term by term (`-spigot` reads "tenon" everywhere once its US line says so). Nothing
//! is read from disk, nothing panics: a word that is absent shows its id in brackets and is noted in
//! [`Words::problems`], which the tests require to be empty.

mod arg;
mod catalogue;
pub mod dates;

use std::borrow::Cow;
use std::collections::BTreeMap;
use std::fmt;
use std::sync::{Arc, Mutex, PoisonError};

use fluent_bundle::{FluentArgs, FluentMessage, FluentResource, concurrent::FluentBundle};
use unic_langid::LanguageIdentifier;

pub use arg::Arg;

/// The language of the words on screen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Language {
    /// English with the words of a UK shop: spigot, callipers, mould.
    #[default]
    EnGb,
    /// English with the words of a US shop: tenon, calipers, mold.
    EnUs,
}

/// The sign between the whole and the decimals of a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum DecimalSign {
    /// `9.5`
    Point,
    /// `9,5`
    Comma,
}

impl Language {
    /// All languages, in the order in which they are offered.
    pub const ALL: [Self; 2] = [Self::EnGb, Self::EnUs];

    /// The language tag, stable for storage: `en-GB` or `en-US`.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::EnGb => "en-GB",
            Self::EnUs => "en-US",
        }
    }

    /// The language with this tag, or `None`.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|language| language.key() == key)
    }

    /// The sign written between the whole and the decimals: a point in English. Input takes point and comma alike.
    #[must_use]
    pub const fn decimal_sign(self) -> DecimalSign {
        match self {
            Self::EnGb | Self::EnUs => DecimalSign::Point,
        }
    }

    /// The tag as Fluent wants it; it chooses the plural rules, which a test holds to be those of English.
    fn identifier(self) -> LanguageIdentifier {
        self.key().parse().unwrap_or_default()
    }
}

struct Inner {
    language: Language,
    bundle: FluentBundle<FluentResource>,
    problems: Mutex<BTreeMap<String, usize>>,
}

/// The words of one language. Cloning is cheap: clones share the catalogue and its list of problems.
#[derive(Clone)]
pub struct Words {
    inner: Arc<Inner>,
}

impl fmt::Debug for Words {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Words")
            .field("language", &self.inner.language)
            .field("problems", &self.problems())
            .finish()
    }
}

impl Words {
    /// The words of `language`, read from the embedded catalogue.
    ///
    /// A fault in the catalogue never stops the app: it is noted in [`Words::problems`] and what can be read is used.
    #[must_use]
    pub fn new(language: Language) -> Self {
        let mut bundle = FluentBundle::new_concurrent(vec![language.identifier()]);
        // Isolation marks are invisible characters that the bundled font has no glyph for.
        bundle.set_use_isolating(false);
        let mut problems = BTreeMap::new();
        for (name, text) in catalogue::EN_GB {
            let resource = readable(name, text, &mut problems);
            if let Err(errors) = bundle.add_resource(resource) {
                for error in errors {
                    problems.insert(format!("en-GB/{name}: {error}"), 1);
                }
            }
        }
        if language == Language::EnUs {
            for (name, text) in catalogue::EN_US {
                bundle.add_resource_overriding(readable(name, text, &mut problems));
            }
        }
        Self {
            inner: Arc::new(Inner {
                language,
                bundle,
                problems: Mutex::new(problems),
            }),
        }
    }

    /// The language of these words.
    #[must_use]
    pub fn language(&self) -> Language {
        self.inner.language
    }

    /// The words with this id. An absent id gives `[id]` and is noted in [`Words::problems`].
    #[must_use]
    pub fn text(&self, id: &str) -> String {
        self.with(id, &[])
    }

    /// The words with this id, its variables filled in; numbers choose between singular and plural.
    ///
    /// A variable that the words want but `args` lacks shows as `{$name}` and is noted in [`Words::problems`].
    #[must_use]
    pub fn with(&self, id: &str, args: &[(&str, Arg<'_>)]) -> String {
        let bundle = &self.inner.bundle;
        let Some(pattern) = bundle
            .get_message(id)
            .as_ref()
            .and_then(FluentMessage::value)
        else {
            self.note(format!("no words for: {id}"));
            return format!("[{id}]");
        };
        let mut filled = FluentArgs::with_capacity(args.len());
        for (name, value) in args {
            filled.set(Cow::Borrowed(*name), value.to_fluent());
        }
        let mut errors = Vec::new();
        let text = bundle
            .format_pattern(pattern, Some(&filled), &mut errors)
            .into_owned();
        for error in errors {
            self.note(format!("{id}: {error}"));
        }
        text
    }

    /// True when there are words with this id.
    #[must_use]
    pub fn has(&self, id: &str) -> bool {
        self.inner
            .bundle
            .get_message(id)
            .is_some_and(|message| message.value().is_some())
    }

    /// What went wrong since the start: absent ids, absent variables, faults in the catalogue; each with its count.
    ///
    /// Empty in a sound program; tests that walk through screens require it to be.
    #[must_use]
    pub fn problems(&self) -> Vec<(String, usize)> {
        // A panic elsewhere while noting leaves the list usable, so a poisoned lock is read all the same.
        let problems = self
            .inner
            .problems
            .lock()
            .unwrap_or_else(PoisonError::into_inner);
        problems
            .iter()
            .map(|(problem, count)| (problem.clone(), *count))
            .collect()
    }

    fn note(&self, problem: String) {
        let mut problems = self
            .inner
            .problems
            .lock()
            .unwrap_or_else(PoisonError::into_inner);
        *problems.entry(problem).or_insert(0) += 1;
    }
}

fn readable(name: &str, text: &str, problems: &mut BTreeMap<String, usize>) -> FluentResource {
    match FluentResource::try_new(text.to_owned()) {
        Ok(resource) => resource,
        Err((resource, errors)) => {
            for error in errors {
                problems.insert(format!("{name}: {error}"), 1);
            }
            resource
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_languages_load_without_a_fault() {
        for language in Language::ALL {
            assert_eq!(Words::new(language).problems(), [], "{language:?}");
            assert_eq!(Language::from_key(language.key()), Some(language));
        }
    }

    #[test]
    fn an_absent_word_shows_its_id_and_is_counted() {
        let words = Words::new(Language::EnGb);
        let absent = "no-such-word";
        assert_eq!(words.text(absent), "[no-such-word]");
        assert_eq!(words.clone().text(absent), "[no-such-word]");
        assert_eq!(
            words.problems(),
            [("no words for: no-such-word".to_owned(), 2)]
        );
        assert!(!words.has(absent));
    }

    #[test]
    fn a_forgotten_variable_is_seen_and_counted() {
        let words = Words::new(Language::EnGb);
        let id = "number-range";
        assert!(words.text(id).contains("{$low}"));
        assert_eq!(words.problems().len(), 2, "{:?}", words.problems());
    }

    #[test]
    fn numbers_choose_singular_and_plural() {
        let words = Words::new(Language::EnGb);
        assert_eq!(words.with("count-pieces", &[("n", 1.into())]), "1 piece");
        assert_eq!(words.with("count-pieces", &[("n", 0.into())]), "0 pieces");
        assert_eq!(
            words.with("count-pieces", &[("n", 12_usize.into())]),
            "12 pieces"
        );
    }

    #[test]
    fn us_words_replace_uk_words_and_the_rest_falls_back() {
        let (uk, us) = (Words::new(Language::EnGb), Words::new(Language::EnUs));
        assert_eq!(uk.text("part-spigot"), "Spigot");
        assert_eq!(us.text("part-spigot"), "Tenon");
        assert_eq!(uk.text("taken-callipers"), "callipers");
        assert_eq!(us.text("taken-callipers"), "calipers");
        assert_eq!(uk.text("stage-shape"), us.text("stage-shape"));
    }

    #[test]
    fn no_invisible_marks_are_put_round_variables() {
        let words = Words::new(Language::EnGb);
        let text = words.with(
            "number-range",
            &[("low", "500".into()), ("high", "750".into())],
        );
        assert_eq!(text, "500 to 750");
        assert!(text.is_ascii());
    }
}
