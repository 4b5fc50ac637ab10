//! Coming: the next look and the next weighing, with why; and the answers given at the bag.

use evenwall_piece::agenda::{Task, TaskKind, Why, is_paused, tasks_of};
use evenwall_piece::piece::{Moment, Piece};
use evenwall_piece::stage::{Group, Stage};
use evenwall_piece::vocabulary::BagFeel;
use evenwall_wood::weighing_days::WorthBecause;

use super::view::{BagView, ComingView};
use crate::app::App;

/// Most drops of the row.
const DROPS: usize = 14;

impl App {
    /// The next look and the next weighing of a drying piece.
    pub(super) fn coming(&self, piece: &Piece, now: Moment) -> Vec<ComingView> {
        let words = self.words();
        let dates = self.dates(now);
        if !piece.living() || piece.stage().group() != Group::Drying {
            return Vec::new();
        }
        if is_paused(piece, now.date_naive()) {
            let until = piece.paused.and_then(|(_, until)| until);
            return vec![ComingView {
                title: words.text("drying-next"),
                day: until.map_or_else(String::new, |d| dates.near(d)),
                why: words.text("drying-why-paused"),
                late: false,
            }];
        }
        let tasks = self.with_bench(now, |bench| tasks_of(piece, bench));
        let wanted = |t: &&Task| {
            matches!(
                t.kind,
                TaskKind::Look | TaskKind::LookOver | TaskKind::Weigh | TaskKind::Find
            )
        };
        tasks
            .iter()
            .filter(wanted)
            .map(|t| ComingView {
                title: words.text(match t.kind {
                    TaskKind::Look => "drying-next-feel",
                    TaskKind::Weigh => "drying-next-weighing",
                    TaskKind::Find => "drying-next-find",
                    _ => "drying-next-look",
                }),
                day: dates.due(t.due),
                why: format!(
                    "{} {}",
                    self.why_coming(t, now),
                    self.telling_text(piece, t, now)
                )
                .trim()
                .to_owned(),
                late: t.is_late(),
            })
            .collect()
    }

    /// What a weighing would tell, where a range is told.
    fn telling_text(&self, piece: &Piece, task: &Task, now: Moment) -> String {
        let told = self.foresight(piece).filter(|f| f.told);
        let Some((f, telling)) = told
            .filter(|_| task.kind == TaskKind::Weigh)
            .and_then(|f| f.weighed.telling.map(|t| (f, t)))
        else {
            return String::new();
        };
        // To tens of per cent: what comes is a guess itself.
        let narrower = 10.0 * (10.0 * (1.0 - telling.spread_then / telling.spread_now)).round();
        if narrower < 10.0 {
            return String::new();
        }
        let day = self.dates(now).near(f.seen.date(telling.day));
        let part = self.numbers().percent(narrower).text();
        self.words().with(
            "drying-why-telling",
            &[("day", day.into()), ("part", part.into())],
        )
    }

    fn why_coming(&self, task: &Task, now: Moment) -> String {
        let words = self.words();
        let dates = self.dates(now);
        match &task.why {
            Why::FirstLook => words.text("drying-why-first-look"),
            Why::After(feel) => words.text(&format!("drying-why-after-{}", feel.key())),
            Why::AfterMould => words.text("drying-why-after-mould"),
            Why::Rhythm { every } => words.with("drying-why-rhythm", &[("n", (*every).into())]),
            Why::TellsMost { because, .. } => words.text(match because {
                WorthBecause::WouldDecide => "drying-why-decide",
                _ => "drying-why-two-steps",
            }),
            Why::StartOfStage => words.text("drying-why-start"),
            Why::NeverWeighed => words.text("drying-why-never-weighed"),
            Why::DatedAhead => words.text("drying-why-dated-ahead"),
            Why::NotFoundOn(day) => {
                let day = dates.near(*day);
                words.with("drying-why-not-found", &[("day", day.into())])
            }
            _ => String::new(),
        }
    }

    /// The bag of a piece; `None` where it never was in one.
    pub(super) fn bag_view(&self, piece: &Piece, now: Moment) -> Option<BagView> {
        let felt: Vec<_> = piece
            .looks
            .iter()
            .filter_map(|l| Some((l, l.feel?)))
            .collect();
        let bagged = piece.visits.iter().any(|v| v.stage == Stage::Bag);
        if felt.is_empty() && !(bagged && piece.stage() == Stage::Bag) {
            return None;
        }
        let (words, dates) = (self.words(), self.dates(now));
        let opened = piece
            .visits
            .iter()
            .rev()
            .find(|v| v.stage != Stage::Bag && v.stage.group() == Group::Drying)
            .filter(|_| piece.stage() != Stage::Bag)
            .map(|v| dates.near(v.since.date_naive()));
        let trailing = match (felt.last(), opened) {
            (_, Some(day)) if piece.stage() == Stage::Air => {
                words.with("drying-bag-open", &[("day", day.into())])
            }
            (Some((look, _)), _) => {
                let day = dates.ago(look.at.date_naive());
                words.with("drying-bag-felt", &[("ago", day.into())])
            }
            (None, _) => words.text("drying-bag-not-felt"),
        };
        let names: Vec<String> = felt
            .iter()
            .map(|(_, f)| words.text(&format!("feel-{}", f.key())))
            .collect();
        let mut notes = Vec::new();
        if felt.len() > DROPS {
            notes.push(words.with(
                "drying-bag-last-of",
                &[("n", DROPS.into()), ("of", felt.len().into())],
            ));
        }
        let last_mould = piece.looks.iter().rev().find(|l| l.mould);
        let last_crack = piece.looks.iter().rev().find(|l| l.crack);
        for (seen, id) in [
            (last_mould, "drying-bag-mould"),
            (last_crack, "drying-bag-crack"),
        ] {
            if let Some(look) = seen {
                let day = dates.near(look.at.date_naive());
                notes.push(words.with(id, &[("day", day.into())]));
            }
        }
        Some(BagView {
            title: words.text("drying-bag-title"),
            trailing,
            drops: felt
                .iter()
                .skip(felt.len().saturating_sub(DROPS))
                .map(|(_, f)| match f {
                    BagFeel::Wet => "drop-full",
                    BagFeel::Damp => "drop-half",
                    BagFeel::Nothing => "drop-empty",
                })
                .collect(),
            label: words.with("drying-bag-label", &[("answers", names.join(", ").into())]),
            note: notes.join(" "),
        })
    }
}
