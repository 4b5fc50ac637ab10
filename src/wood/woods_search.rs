//! Finding a wood by what the turner types: common, botanical or another name, ranked.

use crate::woods::Wood;
use crate::woods_table::table;

/// The woods that answer to `query`, best first, the turner's `own` before the table's on equal rank. Every word of the query
/// must be found; an empty query gives all. "ash" finds white ash before mountain ash, "Fraxinus" finds every ash.
pub fn search<'a>(query: &str, own: &'a [Wood]) -> Vec<&'a Wood> {
    let query = query.to_lowercase();
    let words: Vec<&str> = query.split_whitespace().collect();
    let mut found: Vec<(u32, &Wood)> = own
        .iter()
        .chain(table())
        .filter_map(|wood| Some((rank(wood, &query, &words)?, wood)))
        .collect();
    found.sort_by_key(|(rank, _)| *rank);
    found.into_iter().map(|(_, wood)| wood).collect()
}

/// How well `wood` answers, 0 best; `None` when a word is not found.
fn rank(wood: &Wood, query: &str, words: &[&str]) -> Option<u32> {
    let name = wood.name.to_lowercase();
    if name == query.trim() {
        return Some(0);
    }
    let botanical = wood.botanical.to_lowercase();
    let others: Vec<String> = wood.other_names.iter().map(|n| n.to_lowercase()).collect();
    let of_word = |word: &str| {
        let has = |text: &str, test: &dyn Fn(&str) -> bool| text.split([' ', '-']).any(test);
        let whole = |part: &str| part == word;
        let start = |part: &str| part.starts_with(word);
        if has(&name, &whole) || name == word {
            Some(1)
        } else if has(&botanical, &whole) {
            Some(2)
        } else if others.iter().any(|n| n == word) {
            Some(3)
        } else if has(&name, &start) || name.starts_with(word) {
            Some(4)
        } else if has(&botanical, &start) {
            Some(5)
        } else if others.iter().any(|n| has(n, &start) || n.starts_with(word)) {
            Some(6)
        } else if word.chars().count() >= 3 && (name.contains(word) || botanical.contains(word)) {
            Some(7)
        } else {
            None
        }
    };
    words
        .iter()
        .map(|w| of_word(w))
        .try_fold(0, |worst, r| r.map(|r| worst.max(r)))
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::expect_used)]
mod tests {
    use super::*;
    use crate::woods_table::find;

    fn keys(query: &str) -> Vec<&'static str> {
        search(query, &[])
            .into_iter()
            .map(|w| w.key.as_str())
            .collect()
    }

    #[test]
    fn ash_finds_the_ashes_first_and_rowan_after_them() {
        let found = keys("ash");
        let at = |key: &str| found.iter().position(|k| *k == key).unwrap();
        assert!(at("white-ash") < 6 && at("european-ash") < 6);
        assert!(at("rowan") > at("white-ash"));
    }

    #[test]
    fn the_botanical_name_finds_the_same_woods() {
        let found = keys("Fraxinus");
        assert_eq!(found.len(), 6);
        assert!(found.contains(&"white-ash") && found.contains(&"european-ash"));
        assert_eq!(keys("acer pseudo"), ["sycamore"]);
    }

    #[test]
    fn sycamore_finds_both_and_the_whole_name_wins() {
        let found = keys("sycamore");
        assert_eq!(found[0], "sycamore");
        assert!(found.contains(&"american-sycamore"));
        assert_eq!(keys("plane")[0], "london-plane");
    }

    #[test]
    fn nothing_is_found_for_nonsense_and_everything_for_nothing() {
        assert!(keys("zzz").is_empty());
        assert_eq!(keys("  ").len(), table().len());
    }

    #[test]
    fn own_woods_are_found_and_come_before_the_table() {
        let mut own = find("white-ash", &[]).unwrap().clone();
        own.key = "own-1".to_owned();
        own.name = "ash from the churchyard".to_owned();
        let own = [own];
        let found = search("ash", &own);
        assert_eq!(found[0].key, "own-1");
    }
}
