//! Promise: every key of the closed lists of the domain has its words, in both languages.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use evenwall_app::words::{Language, Words};
use evenwall_piece::detail::DetailField;
use evenwall_piece::rhythm::RhythmOf;
use evenwall_piece::stage::{Group, Stage};
use evenwall_piece::vocabulary::*;

macro_rules! ids {
    ($($prefix:literal => $list:ty),+ $(,)?) => {{
        let mut ids: Vec<String> = Vec::new();
        $( ids.extend(<$list>::ALL.iter().map(|v| format!("{}-{}", $prefix, v.key().replace('_', "-")))); )+
        ids
    }};
}

#[test]
fn every_key_of_a_closed_list_has_words() {
    let ids = ids!(
        "stage" => Stage,
        "stage-about" => Stage,
        "stage-leave" => Stage,
        "stage-in-words" => Stage,
        "caution" => Stage,
        "group" => Group,
        "method" => Method,
        "method-in-words" => Method,
        "rhythm" => RhythmOf,
        "form" => Form,
        "grain" => Grain,
        "pith" => Pith,
        "outline" => Outline,
        "feel" => BagFeel,
        "feel" => WallFeel,
        "taken" => Taken,
        "flaw-kind" => FlawKind,
        "treatment" => Treatment,
        "face" => Face,
        "flaw-change" => FlawChange,
        "crack-answer" => CrackAnswer,
        "true-decision" => TrueDecision,
        "mass-change" => MassChange,
        "room" => Room,
        "lost-where" => LostWhere,
        "lost-how" => LostHow,
        "lost-why" => LostWhy,
        "detail" => DetailField,
    );
    assert!(ids.len() > 150, "{} ids", ids.len());
    for language in Language::ALL {
        let words = Words::new(language);
        let absent: Vec<&String> = ids.iter().filter(|id| !words.has(id)).collect();
        assert!(
            absent.is_empty(),
            "{language:?} has no words for {absent:?}"
        );
    }
}
