//! Chrome: what surrounds the pages: tabs, undo bar, questions, save errors, the demo's notice.

use evenwall_piece::piece::Moment;

use crate::action::Action;
use crate::app::App;
use crate::device::ThemeChoice;
use crate::question::ChoiceStyle;
use crate::route::{Page, Tab};

/// A tab as shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TabView {
    /// Stable key.
    pub key: &'static str,
    /// Its word.
    pub label: String,
    /// Its icon.
    pub icon: &'static str,
    /// How many things wait there, empty for none.
    pub badge: String,
}

/// The undo bar.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UndoView {
    /// What was done or taken back.
    pub said: String,
    /// The word on its button.
    pub button: String,
    /// True where the button does again.
    pub redo: bool,
    /// What a second button says that undoes the thing before; empty where there is none.
    pub further: String,
}

/// One choice of a question.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ChoiceView {
    /// Its text.
    pub label: String,
    /// `primary`, `plain` or `danger`.
    pub style: &'static str,
}

/// The question on screen.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct QuestionView {
    /// Its title.
    pub title: String,
    /// Its text.
    pub text: String,
    /// Its choices.
    pub choices: Vec<ChoiceView>,
    /// Shown with the triangle.
    pub caution: bool,
}

/// All that surrounds the pages.
#[derive(Debug, Clone, PartialEq)]
pub struct ChromeView {
    /// The tab below.
    pub tab: &'static str,
    /// The page on top; empty for none.
    pub page: &'static str,
    /// The tabs.
    pub tabs: Vec<TabView>,
    /// The undo bar, where there is something to undo.
    pub undo: Option<UndoView>,
    /// True where the page shows undo itself.
    pub undo_in_page: bool,
    /// The question on screen.
    pub question: Option<QuestionView>,
    /// What could not be saved.
    pub save_error: Option<String>,
    /// The word for trying again.
    pub try_again: String,
    /// What a wide window shows beside the list while no piece is open.
    pub nothing_open_title: String,
    /// The line below it.
    pub nothing_open_text: String,
    /// The word for closing.
    pub close: String,
    /// What the turner should know: the shelf can only be read, or lines of it cannot, or another device wrote to it, or the
    /// last backup is old.
    pub notice: Option<String>,
    /// The word on the notice's button; empty where there is nothing to open.
    pub notice_button: String,
    /// What that button does.
    pub notice_opens: Option<Action>,
    /// The demo's notice.
    pub demo: Option<String>,
    /// The theme chosen.
    pub theme: ThemeChoice,
    /// The text scale.
    pub text_scale: f64,
    /// The action side is on the left.
    pub left_handed: bool,
    /// Nothing moves.
    pub reduced_motion: bool,
}

/// A sentence over the pages.
struct Notice {
    text: String,
    opens: Option<Action>,
}

impl App {
    /// What surrounds the pages.
    #[must_use]
    pub fn chrome_view(&self, now: Moment) -> ChromeView {
        let words = self.words();
        let waiting = match self.waiting_today(now) {
            0 => String::new(),
            n => n.to_string(),
        };
        let tab = |tab: Tab, label: String, icon, badge| TabView {
            key: tab.key(),
            label,
            icon,
            badge,
        };
        let notice = self.chrome_notice(now);
        ChromeView {
            tab: self.tab().key(),
            page: self.route().page().map_or("", |p| p.key()),
            tabs: vec![
                tab(Tab::Today, words.text("tab-today"), "today", waiting),
                tab(
                    Tab::Pieces,
                    words.text("tab-pieces"),
                    "pieces",
                    String::new(),
                ),
                tab(Tab::Plan, words.text("tab-plan"), "plan", String::new()),
                tab(Tab::Shop, words.text("tab-shop"), "shop", String::new()),
            ],
            undo: self.undo_view(),
            undo_in_page: self.route().page().is_some_and(|p| p.shows_undo_itself()),
            question: self.question().map(|q| QuestionView {
                title: q.title.clone(),
                text: q.text.clone(),
                choices: q
                    .choices
                    .iter()
                    .map(|c| ChoiceView {
                        label: c.label.clone(),
                        style: match c.style {
                            ChoiceStyle::Primary => "primary",
                            ChoiceStyle::Plain => "plain",
                            ChoiceStyle::Danger => "danger",
                        },
                    })
                    .collect(),
                caution: q.caution,
            }),
            save_error: self.save_error().map(str::to_owned),
            try_again: words.text("action-try-again"),
            nothing_open_title: words.text("nothing-open-title"),
            nothing_open_text: words.text("nothing-open-text"),
            close: words.text("action-close"),
            notice_button: notice
                .as_ref()
                .filter(|n| n.opens.is_some())
                .map_or_else(String::new, |_| words.text("notice-see")),
            notice_opens: notice.as_ref().and_then(|n| n.opens.clone()),
            notice: notice.map(|n| n.text),
            demo: self.is_demo().then(|| words.text("demo-banner")),
            theme: self.device().theme,
            text_scale: self.device().text_scale,
            left_handed: self.device().left_handed,
            reduced_motion: self.device().reduced_motion,
        }
    }

    fn chrome_notice(&self, now: Moment) -> Option<Notice> {
        if let Some(text) = self.shelf_notice() {
            return Some(Notice {
                text,
                opens: Some(Action::Open(Page::ShopPage("data"))),
            });
        }
        if let Some(text) = self.arrived() {
            return Some(Notice {
                text: text.to_owned(),
                opens: None,
            });
        }
        // Asked for where the day begins, and nowhere in the middle of work.
        let in_today = self.tab() == Tab::Today && self.route().page().is_none();
        if !in_today || self.states.records.backup_put_away || !self.store().makes_backups() {
            return None;
        }
        self.backup_reminder(now).map(|text| Notice {
            text,
            opens: Some(Action::Open(Page::ShopPage("backup"))),
        })
    }

    /// Puts away the notice that is shown.
    pub(crate) fn hide_notice(&mut self, now: Moment) {
        if self.shelf_notice().is_some() {
            self.notice_hidden = true;
        } else if self.arrived().is_some() {
            self.states.records.arrived = None;
        } else if self.chrome_notice(now).is_some() {
            self.states.records.backup_put_away = true;
        }
    }

    fn shelf_notice(&self) -> Option<String> {
        if self.notice_hidden {
            return None;
        }
        let problems = self.problems().len();
        self.store().read_only().or_else(|| {
            let n = i64::try_from(problems).unwrap_or(i64::MAX);
            (problems > 0).then(|| self.words().with("notice-problems", &[("n", n.into())]))
        })
    }

    fn undo_view(&self) -> Option<UndoView> {
        let words = self.words();
        if !self.undo().shown() {
            return None;
        }
        // What was taken back last can be done again until something new is done.
        match (self.undo().last_taken_back(), self.undo().last_done()) {
            (Some(step), before) => Some(UndoView {
                said: words.with("undo-taken-back", &[("what", step.said.as_str().into())]),
                button: words.text("action-redo"),
                redo: true,
                further: before.map_or_else(String::new, |b| {
                    words.with("undo-further", &[("what", b.said.as_str().into())])
                }),
            }),
            (None, Some(step)) => Some(UndoView {
                said: step.said.clone(),
                button: words.text("action-undo"),
                redo: false,
                further: String::new(),
            }),
            (None, None) => None,
        }
    }
}
