//! Hands what is foreseen of a piece to Slint.

use evenwall_app::drying::view::{
    AheadView, FigureView, ForesightView, LevelView, UnevenView, VerdictView,
};
use evenwall_ui::{DryingAdapter, DryingFigure};
use slint::SharedString;

use super::super::models::fill;
use super::{figure, texts};

/// The first range takes the place of the last weight, which then stands among the figures.
pub(super) fn show_ahead(
    adapter: &DryingAdapter<'_>,
    ahead: AheadView,
    last: FigureView,
    others: Vec<FigureView>,
) {
    let mut ready = ahead.ready.into_iter().map(figure);
    let first = ready.next();
    let told = first.is_some();
    adapter.set_ready(first.unwrap_or_default());
    adapter.set_finish(ready.next().unwrap_or_default());
    let mut figures: Vec<DryingFigure> = ahead.moisture.into_iter().map(figure).collect();
    if told {
        figures.push(figure(last.clone()));
    }
    figures.extend(others.into_iter().map(figure));
    adapter.set_figures(fill(adapter.get_figures(), figures));
    adapter.set_last(figure(last));
    adapter.set_early_title(ahead.early.into());
    adapter.set_reasons(fill(adapter.get_reasons(), texts(ahead.reasons)));
    adapter.set_road(ahead.road.map(figure).unwrap_or_default());
    adapter.set_assumed(fill(adapter.get_assumed(), texts(ahead.assumed)));
    adapter.set_ahead_note(ahead.note.into());
}

pub(super) fn show_verdict(adapter: &DryingAdapter<'_>, verdict: Option<VerdictView>) {
    adapter.set_verdict(SharedString::new());
    if let Some(verdict) = verdict {
        adapter.set_verdict(verdict.text.into());
        adapter.set_verdict_why(verdict.why.into());
        adapter.set_verdict_stable(verdict.stable);
    }
}

pub(super) fn show_uneven(adapter: &DryingAdapter<'_>, uneven: Option<UnevenView>) {
    adapter.set_uneven_title(SharedString::new());
    adapter.set_uneven_open(uneven.as_ref().is_some_and(|u| u.open));
    if let Some(uneven) = uneven {
        adapter.set_uneven_title(uneven.title.into());
        adapter.set_uneven(uneven.text.into());
        adapter.set_uneven_numbers(uneven.numbers.into());
        adapter.set_uneven_meaning(uneven.meaning.into());
        adapter.set_uneven_source(uneven.source.into());
        adapter.set_uneven_more(uneven.more.into());
    }
}

#[allow(clippy::cast_possible_truncation)] // fractions of a picture
pub(super) fn show_foresight(adapter: &DryingAdapter<'_>, ahead: ForesightView) {
    adapter.set_forecast(ahead.line.into());
    adapter.set_band(ahead.band.into());
    let level = |level: Option<LevelView>| {
        level.map_or((-1.0, SharedString::new()), |l| {
            (l.at as f32, l.text.into())
        })
    };
    let (at, text) = level(ahead.settles);
    adapter.set_settle(at);
    adapter.set_settle_text(text);
    let (at, text) = level(ahead.in_house);
    adapter.set_house(at);
    adapter.set_house_text(text);
    let (from, to) = ahead.ready.unwrap_or((-1.0, -1.0));
    adapter.set_ready_from(from as f32);
    adapter.set_ready_to(to as f32);
    adapter.set_ready_text(ahead.ready_text.into());
}
