//! Weigh page: the number being typed, the last one beside it, tare and day.

use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::weights::{Began, last_weighing, question_for, run_at};

use super::When;
use super::view::{OptionView, WeighView, WeighWords};
use crate::app::App;
use crate::numbers::{MassUnit, Parsed, Quantity};
use crate::route::Page;

impl App {
    /// The weighing page on top; `None` where the piece is gone.
    #[must_use]
    pub fn weigh_view(&self, now: Moment) -> Option<WeighView> {
        let Some(Page::Weigh(id)) = self.route().page() else {
            return None;
        };
        let piece = self.piece(id)?;
        let words = self.words();
        let numbers = self.numbers();
        let weigh = &self.states.drying.weigh;
        let pounds = numbers.units().mass == MassUnit::OunceAndPound;
        let (pad, tare) = if weigh.entering_tare {
            (&weigh.tare, true)
        } else {
            (&weigh.weight, false)
        };
        let kept = weigh.kept.as_ref().filter(|_| !tare);
        let typing = !pad.is_empty();
        let number = match (typing, kept) {
            (true, _) => pad.text(),
            (false, Some(kept)) => kept.typed.clone(),
            (false, None) => words.text("number-unknown"),
        };
        let (difference, doubtful, net) = self.while_typing(piece, now);
        let day_note = match (weigh.when, self.weighed_at(now)) {
            (When::Typed, Ok(at)) if !weigh.day.trim().is_empty() => {
                self.dates(now).day_and_month(at.date_naive())
            }
            _ => String::new(),
        };
        Some(WeighView {
            head: self.inner_head(piece, "weigh-title"),
            what: words.text(if tare {
                "weigh-what-tare"
            } else {
                "weigh-what"
            }),
            unit: self.unit_after(&number),
            number,
            typing,
            entering_tare: tare,
            last: self.last_text(piece, now),
            difference,
            doubtful,
            net,
            tare: self.tare_text(),
            tares: if weigh.tare_shown {
                self.tare_options(piece, now)
            } else {
                Vec::new()
            },
            whens: When::ALL
                .iter()
                .map(|w| OptionView {
                    key: w.key().into(),
                    text: words.text(&format!("weigh-when-{}", w.key())),
                    chosen: *w == weigh.when,
                })
                .collect(),
            typing_day: weigh.when == When::Typed,
            day: weigh.day.clone(),
            day_note,
            day_wrong: weigh.day_wrong.clone(),
            ask: self.weigh_ask_view(),
            next: words.text(if tare {
                "weigh-set-tare"
            } else {
                "weigh-record"
            }),
            can_next: typing || kept.is_some(),
            pounds: if pounds {
                words.text("unit-lb")
            } else {
                String::new()
            },
            can_pounds: pad.can_be_pounds(),
            words: WeighWords {
                tare: words.text("weigh-tare-label"),
                day: words.text("weigh-day"),
                day_hint: words.text("weigh-day-hint"),
                delete: words.text("weigh-delete"),
                point: words.text("weigh-point"),
                clear: words.text("action-clear"),
            },
        })
    }

    /// The unit shown after what was typed; empty where it carries its own.
    fn unit_after(&self, typed: &str) -> String {
        let pounds = self.numbers().units().mass == MassUnit::OunceAndPound;
        let unit = self.words().text(if pounds { "unit-oz" } else { "unit-g" });
        let figure_last = typed.ends_with(|c: char| !c.is_alphabetic());
        let in_pounds = pounds && typed.contains("lb") && figure_last;
        let bare = !typed.contains(char::is_alphabetic);
        if bare || in_pounds {
            unit
        } else {
            String::new()
        }
    }

    /// The weight that is typed or kept, where it can be read without asking, g.
    fn present_g(&self) -> Option<f64> {
        let weigh = &self.states.drying.weigh;
        if weigh.weight.is_empty() {
            return weigh.kept.as_ref().map(|k| k.value);
        }
        match self.numbers().parse(Quantity::Weight, &weigh.weight.text()) {
            Ok(Parsed::Value(entry)) => Some(entry.value),
            _ => None,
        }
    }

    /// The difference from the last weight, whether it will be asked about, and the weight of the wood alone.
    fn while_typing(&self, piece: &Piece, now: Moment) -> (String, bool, String) {
        let weigh = &self.states.drying.weigh;
        let Some(mass_g) = self.present_g().filter(|_| !weigh.entering_tare) else {
            return (String::new(), false, String::new());
        };
        let at = self.weighed_at(now).unwrap_or(now);
        let net_g = mass_g - weigh.tare_g;
        let step_g = self.shop().scale_step_at(at);
        let net = if weigh.tare_g > 0.0 {
            let shown = self.numbers().mass_by_scale(net_g, step_g).text();
            self.words().with("weigh-net", &[("weight", shown.into())])
        } else {
            String::new()
        };
        let run = run_at(piece, self.shop(), at);
        let Some(before) = run.weighings.last() else {
            return (String::new(), false, net);
        };
        // While the first figures are typed everything is far too light.
        if net_g < 0.5 * before.net_g() {
            return (String::new(), false, net);
        }
        let doubtful = question_for(piece, self.shop(), at, net_g).is_some();
        (
            self.difference(before.net_g(), net_g, step_g),
            doubtful,
            net,
        )
    }

    /// "Last 840 g, 12 days ago", and whether it is compared.
    fn last_text(&self, piece: &Piece, now: Moment) -> String {
        let words = self.words();
        let at = self.weighed_at(now).unwrap_or(now);
        let Some(last) = last_weighing(piece, at) else {
            return words.text("weigh-never");
        };
        let day = last.at.date_naive();
        let shown = self
            .numbers()
            .mass_by_scale(last.net_g(), self.shop().scale_step_at(last.at));
        let text = words.with(
            "weigh-last",
            &[
                ("weight", shown.text().into()),
                ("ago", self.dates(now).ago(day).into()),
            ],
        );
        let run = run_at(piece, self.shop(), at);
        if !run.weighings.is_empty() {
            return text;
        }
        let why = match run.began {
            Began::First => return text,
            Began::NewScale => words.text("drying-break-new-scale"),
            Began::MassChanged(change) => words.text(&format!("drying-break-{}", change.key())),
        };
        let not_compared = words.with("weigh-not-compared", &[("what", why.into())]);
        format!("{text} {not_compared}")
    }

    fn tare_text(&self) -> String {
        let tare_g = self.states.drying.weigh.tare_g;
        if tare_g > 0.0 {
            let shown = self.numbers().mass_by_scale(tare_g, 1.0).text();
            self.words().with("weigh-tare", &[("weight", shown.into())])
        } else {
            self.words().text("weigh-bare")
        }
    }

    fn tare_options(&self, piece: &Piece, now: Moment) -> Vec<OptionView> {
        let words = self.words();
        let weigh = &self.states.drying.weigh;
        let last = self.last_tare(&piece.id, now);
        let as_last = last.is_some_and(|g| (g - weigh.tare_g).abs() < 1e-9);
        let bare = weigh.tare_g <= 0.0;
        let option = |key: &str, text: String, chosen: bool| OptionView {
            key: key.into(),
            text,
            chosen,
        };
        let mut all = vec![option(
            "bare",
            words.text("weigh-tare-bare"),
            bare && !weigh.entering_tare,
        )];
        if let Some(last_g) = last {
            let shown = self.numbers().mass_by_scale(last_g, 1.0).text();
            let text = words.with("weigh-tare-last", &[("weight", shown.into())]);
            all.push(option("last", text, as_last && !weigh.entering_tare));
        }
        all.push(option(
            "other",
            words.text("weigh-tare-other"),
            weigh.entering_tare || (!bare && !as_last),
        ));
        all
    }
}
