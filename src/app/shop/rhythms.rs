//! Rhythms: after how many days a look and a weighing fall due, for each method, as short lists in plain words.

use evenwall_piece::rhythm::{Rhythm, RhythmOf, Step};

use crate::app::App;

use super::form::{FormOf, StepList};
use super::pages::page_of;
use super::rules::set;
use super::view::{RowKind, RowView, SectionView, ShopView};
use super::{ShopAction, pages};

/// The key of the setting that holds a rhythm.
pub(super) fn setting_key(of: RhythmOf) -> String {
    format!("rhythm_{}", of.key())
}

/// A text with its first letter small, for the middle of a sentence.
fn small(text: &str) -> String {
    let mut letters = text.chars();
    letters
        .next()
        .map(|first| first.to_lowercase().chain(letters).collect())
        .unwrap_or_default()
}

impl App {
    /// One step in words, by its place in the list: "First after 3 days", "Every 7 days until day 28", "Then every
    /// 14 days".
    pub(super) fn step_in_words(&self, steps: &[Step], place: usize) -> String {
        let words = self.words();
        let Some(step) = steps.get(place) else {
            return String::new();
        };
        match step.until_day {
            Some(day) if place == 0 && day == step.every && steps.len() > 1 => {
                words.with("shop-step-first", &[("n", step.every.into())])
            }
            Some(day) if place + 1 < steps.len() => words.with(
                "shop-step-until",
                &[("n", step.every.into()), ("day", day.into())],
            ),
            _ if place > 0 => words.with("shop-step-then", &[("n", step.every.into())]),
            _ => words.with("shop-step-every", &[("n", step.every.into())]),
        }
    }

    fn steps_in_words(&self, steps: &[Step]) -> String {
        (0..steps.len())
            .map(|place| {
                let text = self.step_in_words(steps, place);
                if place == 0 { text } else { small(&text) }
            })
            .collect::<Vec<_>>()
            .join(", ")
    }

    /// A rhythm in words: what is looked at and weighed when, and when the next stage is offered.
    pub(super) fn rhythm_in_words(&self, of: RhythmOf, rhythm: &Rhythm) -> String {
        let words = self.words();
        let mut parts = Vec::new();
        if of != RhythmOf::Bag && !rhythm.looks.is_empty() {
            let steps = small(&self.steps_in_words(&rhythm.looks));
            parts.push(words.with("shop-rhythm-look", &[("steps", steps.into())]));
        }
        if !rhythm.weighings.is_empty() {
            let steps = small(&self.steps_in_words(&rhythm.weighings));
            parts.push(words.with("shop-rhythm-weigh", &[("steps", steps.into())]));
        }
        if let Some(day) = rhythm.offer_after {
            parts.push(words.with("shop-rhythm-offer", &[("day", day.into())]));
        }
        if parts.is_empty() {
            parts.push(words.text(if of == RhythmOf::Bag {
                "shop-rhythm-bag"
            } else {
                "shop-rhythm-none"
            }));
        }
        parts.join(". ")
    }

    fn is_own(&self, of: RhythmOf) -> bool {
        self.shop().settings.rhythm(of) != of.usual()
    }

    pub(super) fn rhythms_page(&self) -> ShopView {
        let words = self.words();
        let rows = RhythmOf::ALL
            .iter()
            .map(|of| {
                let note = self.rhythm_in_words(*of, &self.shop().settings.rhythm(*of));
                let page = crate::route::Page::ShopPage(page_of(*of));
                let row = RowView::touching(
                    RowKind::Open,
                    of.key(),
                    words.text(&format!("rhythm-{}", of.key())),
                    crate::action::Action::Open(page),
                )
                .note(note);
                if self.is_own(*of) {
                    row.value(words.text("shop-own"))
                } else {
                    row
                }
            })
            .collect();
        ShopView {
            title: words.text("shop-rhythms"),
            intro: words.text("shop-rhythms-intro"),
            sections: vec![
                SectionView {
                    key: "rhythms",
                    rows,
                    ..SectionView::default()
                },
                SectionView {
                    chart: None,
                    key: "steady",
                    title: words.text("shop-steady-title"),
                    note: words.text("shop-steady-note"),
                    rows: self.number_row("steady_days").into_iter().collect(),
                },
            ],
            ..ShopView::default()
        }
    }

    fn step_rows(&self, of: RhythmOf, list: StepList) -> Vec<RowView> {
        let rhythm = self.shop().settings.rhythm(of);
        let steps = list.of(&rhythm);
        let form = |place| ShopAction::Form(FormOf::Step { of, list, place });
        let mut rows: Vec<RowView> = (0..steps.len())
            .map(|place| {
                let title = self.step_in_words(steps, place);
                let id = format!("{}-{place}", list.key());
                RowView::touching(RowKind::Open, id, title, form(Some(place)))
            })
            .collect();
        let add = self.words().text(match list {
            StepList::Looks => "shop-step-add-look",
            StepList::Weighings => "shop-step-add-weighing",
        });
        let id = format!("{}-add", list.key());
        rows.push(RowView::touching(RowKind::Add, id, add, form(None)));
        rows
    }

    pub(super) fn rhythm_page(&self, of: RhythmOf) -> ShopView {
        let words = self.words();
        let rhythm = self.shop().settings.rhythm(of);
        let mut sections = Vec::new();
        if of != RhythmOf::Bag {
            sections.push(SectionView {
                key: "looks",
                title: words.text("shop-looks"),
                rows: self.step_rows(of, StepList::Looks),
                ..SectionView::default()
            });
        }
        sections.push(SectionView {
            key: "weighings",
            title: words.text("shop-weighings"),
            rows: self.step_rows(of, StepList::Weighings),
            ..SectionView::default()
        });
        if of != RhythmOf::Bag {
            let offered = rhythm.offer_after.map_or_else(
                || words.text("shop-offer-never"),
                |day| words.with("shop-offer-day", &[("day", day.into())]),
            );
            sections.push(SectionView {
                key: "offer",
                title: words.text("shop-offer-title"),
                rows: vec![
                    RowView::touching(
                        RowKind::Value,
                        "offer",
                        words.text("shop-offer"),
                        ShopAction::Form(FormOf::Offer(of)),
                    )
                    .value(offered),
                ],
                ..SectionView::default()
            });
        }
        if self.is_own(of) {
            let usual = self.rhythm_in_words(of, &of.usual());
            sections.push(SectionView {
                key: "usual",
                rows: vec![
                    RowView::touching(
                        RowKind::Open,
                        "usual",
                        words.text("shop-rhythm-usual"),
                        set(setting_key(of), ""),
                    )
                    .icon("undo")
                    .note(usual),
                ],
                ..SectionView::default()
            });
        }
        ShopView {
            title: words.text(&format!("rhythm-{}", of.key())),
            subtitle: words.text("shop-rhythms"),
            intro: words.text(if of == RhythmOf::Bag {
                "shop-rhythm-bag-intro"
            } else {
                "shop-rhythm-intro"
            }),
            sections,
            ..ShopView::default()
        }
    }

    pub(super) fn rhythms_in_words(&self) -> String {
        let own: Vec<String> = pages::PAGES
            .iter()
            .filter_map(|page| pages::rhythm_of(page))
            .filter(|of| self.is_own(*of))
            .map(|of| self.words().text(&format!("rhythm-{}", of.key())))
            .collect();
        if own.is_empty() {
            self.words().text("shop-as-usual")
        } else {
            let list = own.join(", ");
            self.words().with("shop-own-list", &[("list", list.into())])
        }
    }
}
