//! Refresh: what other devices wrote since, found by listing again.

use std::collections::BTreeSet;

use evenwall_piece::ids::Scope;

use crate::error::ShelfError;
use crate::folder::{Files, folder_of, list_journals, under};
use crate::shelf::{Known, Shelf};

impl Shelf {
    /// Lists all folders again and says which have journals that are new, changed or gone. Those are read afresh when
    /// next asked for.
    ///
    /// # Errors
    /// [`ShelfError`] where the file system refuses.
    pub fn refresh(&mut self) -> Result<Vec<Scope>, ShelfError> {
        let mut scopes: BTreeSet<Scope> = self.known.keys().cloned().collect();
        self.list_pieces()?;
        scopes.insert(Scope::Shop);
        scopes.extend(self.pieces.iter().cloned().map(Scope::Piece));
        let own_name = self.device().map(|id| format!("{id}.jsonl"));
        let mut changed = Vec::new();
        for scope in scopes {
            let files = list_journals(
                &*self.disk,
                &self.path,
                &under(&self.path, &folder_of(&scope)),
            )?;
            let is_same = match self.known.get(&scope) {
                Some(known) => same(known, &files, own_name.as_deref()),
                None => files.is_empty(),
            };
            if !is_same {
                self.known.remove(&scope);
                changed.push(scope);
            }
        }
        Ok(changed)
    }
}

/// The own journal is compared by its length: this program changes its time itself.
fn same(known: &Known, files: &Files, own_name: Option<&str>) -> bool {
    known.files.len() == files.len()
        && known
            .files
            .iter()
            .zip(files)
            .all(|((name, seen), (other_name, other))| {
                let is_own = own_name.is_some_and(|own| name == own);
                name == other_name
                    && if is_own {
                        known.own.len == other.len
                    } else {
                        seen == other
                    }
            })
}
