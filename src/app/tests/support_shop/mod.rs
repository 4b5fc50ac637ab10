//! Hands in the shop: touch rows by their id, fill in forms by the key of a field.
#![allow(dead_code)] // each test file uses a part of it

use evenwall_app::action::Action;
use evenwall_app::route::{Page, Tab};
use evenwall_app::shop::ShopAction;
use evenwall_app::shop::view::{FieldView, FormView, RowView, ShopView};
use evenwall_piece::fact::PieceFact;

use crate::support_piece::Hands;

pub struct Shop {
    pub hands: Hands,
}

impl Shop {
    pub fn with(facts: Vec<PieceFact>) -> Self {
        let mut hands = Hands::with(facts);
        hands.act(Action::GoTab(Tab::Shop));
        Self { hands }
    }

    pub fn on(page: &'static str) -> Self {
        let mut shop = Self::with(vec![]);
        shop.go(page);
        shop
    }

    pub fn go(&mut self, page: &'static str) {
        self.hands.act(Action::Open(Page::ShopPage(page)));
    }

    pub fn act(&mut self, action: ShopAction) {
        self.hands.act(Action::Shop(action));
    }

    pub fn hub(&self) -> ShopView {
        self.hands.app.shop_view(self.hands.now())
    }

    pub fn page(&self) -> ShopView {
        self.hands.app.shop_page_view(self.hands.now())
    }

    pub fn rows(&self) -> Vec<RowView> {
        let sections = self.page().sections;
        sections.into_iter().flat_map(|s| s.rows).collect()
    }

    pub fn row(&self, id: &str) -> RowView {
        let rows = self.rows();
        rows.iter()
            .find(|r| r.id == id)
            .unwrap_or_else(|| panic!("no row {id} among {rows:#?}"))
            .clone()
    }

    pub fn touch(&mut self, id: &str) {
        let action = self.page().touch(id);
        let action = action.unwrap_or_else(|| panic!("nothing to touch is {id}"));
        self.hands.act(action);
    }

    pub fn form(&self) -> FormView {
        self.page().form.expect("a form is open")
    }

    pub fn field(&self, key: &str) -> FieldView {
        let fields = self.form().fields;
        fields
            .iter()
            .find(|f| f.key == key)
            .unwrap_or_else(|| panic!("no field {key} among {fields:#?}"))
            .clone()
    }

    pub fn fill(&mut self, fields: &[(&str, &str)]) {
        for (key, text) in fields {
            self.act(ShopAction::Typed((*key).into(), (*text).into()));
        }
    }

    pub fn save(&mut self) {
        self.act(ShopAction::Save);
    }

    /// Touches a row, fills in its form and saves it.
    pub fn enter(&mut self, row: &str, fields: &[(&str, &str)]) {
        self.touch(row);
        self.fill(fields);
        self.save();
    }

    pub fn is_closed(&self) -> bool {
        self.page().form.is_none()
    }

    /// Undo brings back the page as it was, redo as it is.
    pub fn undo_brings_back(&mut self, before: &ShopView) {
        let after = self.page();
        assert_ne!(&after, before);
        self.hands.act(Action::Undo);
        assert_eq!(&self.page(), before);
        self.hands.act(Action::Redo);
        assert_eq!(self.page(), after);
    }
}
