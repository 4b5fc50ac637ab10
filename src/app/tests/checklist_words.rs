//! Promise: every built-in checklist line has its words and its why in both languages, short enough for a phone.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use evenwall_app::words::{Language, Words};
use evenwall_piece::checklist::{BUILT_IN, GENERAL_CAUTIONS, LineWhen, caution_id};
use evenwall_piece::stage::Stage;

/// Two lines of a phone 360 points wide at the usual text size; what is longer belongs in the why.
const LONGEST_LINE: usize = 62;

#[test]
fn every_built_in_line_is_short_and_has_a_why() {
    for language in Language::ALL {
        let words = Words::new(language);
        for line in BUILT_IN {
            let text = words.text(&format!("line-{}", line.id));
            let why = words.text(&format!("line-{}-why", line.id));
            let length = text.chars().count();
            assert!(length <= LONGEST_LINE, "{length}: {text}");
            assert!(!text.ends_with('.'), "a line is no sentence: {text}");
            assert!(why.ends_with('.'), "a why is one: {why}");
            assert_ne!(text, why);
        }
        for when in LineWhen::ALL {
            assert!(words.has(&format!("line-when-{}", when.key())), "{when:?}");
        }
        assert_eq!(words.problems(), [], "{language:?}");
    }
}

#[test]
fn every_stage_has_its_caution_and_the_general_ones_are_all_there() {
    for language in Language::ALL {
        let words = Words::new(language);
        let of_stages = Stage::ALL.iter().map(|s| caution_id(*s));
        let all = of_stages.chain(GENERAL_CAUTIONS.map(str::to_owned));
        let texts: Vec<String> = all.map(|id| words.text(&id)).collect();
        assert_eq!(texts.len(), 15);
        for text in &texts {
            assert!(text.ends_with('.'), "{text}");
            assert!(
                !text.to_lowercase().contains("safe"),
                "nothing is called safe: {text}"
            );
        }
        let next = format!("caution-general-{}", GENERAL_CAUTIONS.len() + 1);
        assert!(!words.has(&next), "{next} would never be shown");
        assert_eq!(words.problems(), [], "{language:?}");
    }
}
