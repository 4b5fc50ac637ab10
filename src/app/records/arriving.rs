//! Arriving: what other devices wrote while the app is open, taken in without losing what is being typed.

use evenwall_piece::fold::fold_piece;
use evenwall_piece::piece::Moment;
use evenwall_piece::shop::fold_shop;

use crate::app::{App, AppError};

impl App {
    /// Looks whether journals came or grew since, and folds anew only the pieces they belong to. Forms, the keypad, open
    /// rows and the page stay as they are; only the pages of a piece that is no longer there are left. Call it every few
    /// seconds and when the window comes to the front.
    ///
    /// Says true where something changed on screen.
    ///
    /// # Errors
    /// [`AppError::NotSaved`] where the folder cannot be looked through; the next look finds it.
    pub fn refresh(&mut self, now: Moment) -> Result<bool, AppError> {
        let arrived = self.store.refresh()?;
        let problems_changed = match arrived.problems {
            Some(problems) if problems != self.problems => {
                self.problems = problems;
                self.notice_hidden = false;
                true
            }
            _ => false,
        };
        let shop_changed = match arrived.shop {
            Some(lines) if lines != self.shop_lines => {
                self.shop = fold_shop(lines.clone());
                self.shop_lines = lines;
                true
            }
            _ => false,
        };
        let mut changed = Vec::new();
        for (id, lines) in arrived.pieces {
            let piece = fold_piece(id.clone(), lines.clone());
            if self.lines.contains_key(&id) {
                self.lines.insert(id.clone(), lines);
            }
            // A journal whose end is still arriving changes nothing yet.
            if self.pieces.get(&id) != Some(&piece) {
                self.pieces.insert(id.clone(), piece);
                changed.push(id);
            }
        }
        if !changed.is_empty() {
            self.leave_what_is_gone(now);
        }
        self.keep_device_name(now);
        if !changed.is_empty() || shop_changed {
            self.states.records.arrived = Some(self.arrived_words(&changed, shop_changed));
        }
        Ok(!changed.is_empty() || shop_changed || problems_changed)
    }

    fn arrived_words(&self, changed: &[evenwall_piece::ids::PieceId], shop: bool) -> String {
        let words = self.words();
        match changed {
            [] => words.text("records-arrived-shop"),
            [one] => {
                let mark = self.piece(one).map_or("", |p| p.mark()).to_owned();
                words.with("records-arrived-one", &[("mark", mark.into())])
            }
            more if shop => words.with("records-arrived-both", &[("n", more.len().into())]),
            more => words.with("records-arrived", &[("n", more.len().into())]),
        }
    }

    /// What other devices wrote since it was last put away, in a sentence: "From another device: 3 pieces".
    #[must_use]
    pub fn arrived(&self) -> Option<&str> {
        self.states.records.arrived.as_deref()
    }
}
