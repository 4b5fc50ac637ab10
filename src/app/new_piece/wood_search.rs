//! Wood search: which woods are offered below the field: the turner's last ones, then what answers to the letters typed.

use std::cmp::Reverse;
use std::collections::BTreeMap;

use evenwall_piece::detail::DetailField;
use evenwall_piece::piece::Moment;
use evenwall_wood::woods_search::search;

use crate::app::App;
use crate::pieces::folded;

/// How many are offered at once: they stay within a thumb's reach above the keyboard.
const MOST_OFFERED: usize = 6;

impl App {
    /// Woods to offer, as stored texts: the last used first while nothing is typed; else what answers, own woods and
    /// those used before first.
    pub(super) fn woods_offered(&self) -> Vec<String> {
        let draft = &self.states.new_piece.draft;
        let typed = draft.text(DetailField::Wood).trim();
        if typed.is_empty() || !draft.searching_wood {
            let mut offered: Vec<String> = self.woods_used();
            offered.truncate(MOST_OFFERED);
            return offered;
        }
        let mut offered = self.woods_answering(typed);
        // Nothing to offer where the field already says it.
        if offered.len() == 1 && folded(&self.wood_name(&offered[0])) == folded(typed) {
            offered.clear();
        }
        offered
    }

    /// Woods that answer to the letters typed, own woods and those used before first; those used last where nothing is typed.
    pub(crate) fn woods_answering(&self, typed: &str) -> Vec<String> {
        let plain = folded(typed.trim());
        let answers = |name: &str| {
            let name = folded(name);
            plain.split_whitespace().all(|word| name.contains(word))
        };
        let used = self.woods_used();
        let mut offered: Vec<String> = Vec::new();
        if plain.is_empty() {
            offered.extend(used);
        } else {
            let own = self.shop().woods.iter();
            offered.extend(own.filter(|w| answers(&w.name)).map(|w| w.id.clone()));
            offered.extend(used.into_iter().filter(|w| answers(&self.wood_name(w))));
            offered.extend(search(&plain, &[]).into_iter().map(|w| w.key.clone()));
        }
        let mut seen = Vec::new();
        offered.retain(|w| {
            let new = !seen.contains(w);
            seen.push(w.clone());
            new
        });
        offered.truncate(MOST_OFFERED);
        offered
    }

    /// Woods of the turner's pieces as stored, the last used first.
    fn woods_used(&self) -> Vec<String> {
        let mut last: BTreeMap<&str, Option<Moment>> = BTreeMap::new();
        for piece in self.pieces() {
            if let Some(wood) = piece.details.text(DetailField::Wood) {
                let at = last.entry(wood).or_insert(piece.created);
                *at = (*at).max(piece.created);
            }
        }
        let mut used: Vec<(&str, Option<Moment>)> = last.into_iter().collect();
        used.sort_by_key(|(wood, at)| (Reverse(*at), *wood));
        used.into_iter().map(|(wood, _)| wood.to_owned()).collect()
    }
}
