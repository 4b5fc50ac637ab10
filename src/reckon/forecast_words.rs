//! What a forecast gives, and its reasons for being too early in words.

use evenwall_wood::forecast::{SHARE_LOST, SPREAD, TooEarly, WEIGHINGS};

use crate::question::{Output, gives};

/// What is said of now, of the fit, and on top of it.
pub const SAID: &[Output] = &[
    gives("today_day", "the day it is said for"),
    gives("moisture_pct", "mean moisture now"),
    gives("moisture_sd_pct", "its standard deviation"),
    gives("moisture_low_pct", "low end of four in five"),
    gives("moisture_high_pct", "high end"),
    gives("settling_pct", "moisture it settles to where it stands"),
    gives(
        "too_early",
        "why no date may be shown yet, empty when one may: \"few_weighings\", \"little_lost\", \"straight_in_bag\", \"moved_since\", \
         \"wide_range\", \"never\"",
    ),
    gives("too_early_says", "the same in sentences"),
    gives("dry_mass_g", "oven-dry weight by the fit"),
    gives("dry_mass_low_g", "low end of four in five"),
    gives("dry_mass_high_g", "high end"),
    gives("believed_dry_mass_g", "oven-dry weight believed before"),
    gives("first_day", "first weighing fitted"),
    gives("first_moisture_pct", "moisture then"),
    gives("weighings", "how many were fitted"),
    gives("chi2", "sum of squares of their weighted residuals"),
    gives(
        "diffusion_ratio",
        "fitted multiplier of the diffusivity; belongs to this model, no property of the wood",
    ),
    gives(
        "surface_ratio",
        "fitted multiplier of the exchange with open air",
    ),
    gives(
        "habit_ratio",
        "fitted multiplier of the bag's conductance or of what a cover lets through",
    ),
    gives("humidity_shift_pct", "fitted shift of every humidity read"),
    gives(
        "loose",
        "which exchange was fitted: \"surface\" or \"habit\"",
    ),
    gives(
        "bag_loses_g_day",
        "on the straight part of a bag: what it loses",
    ),
    gives(
        "bag_bends_early_day",
        "on the straight part: day its mean is 28 %, early end of four in five",
    ),
    gives("bag_bends_middle_day", "most probable"),
    gives("bag_bends_late_day", "late end"),
    gives("band[].day", "with `show_days`"),
    gives(
        "band[].moisture_pct",
        "mean moisture: low end of four in five, most probable, high end",
    ),
    gives("band[].mass_g", "weight likewise"),
    gives(
        "next_weighing_day",
        "with `weigh_days`: the first on which a weighing tells nearly as much as on the best; absent when none would",
    ),
    gives(
        "spread_now_ratio",
        "with it: standard deviation of the logarithm of the ready time now",
    ),
    gives("spread_then_ratio", "and after that weighing"),
];

/// Ready where it stands.
pub const ROAD_HERE: &[Output] = &[
    gives(
        "here_mean.early_day",
        "settled where it stands, by the mean of the whole piece: early end of four in five; absent when not within two years",
    ),
    gives("here_mean.middle_day", "most probable day"),
    gives("here_mean.late_day", "late end"),
    gives(
        "here_mean.spread_ratio",
        "standard deviation of the logarithm of that time, from the weighings alone",
    ),
    gives(
        "here_mean.ahead_early_day",
        "early end cut at today; absent when the whole range lies behind",
    ),
    gives("here_mean.ahead_late_day", "late end likewise"),
    gives(
        "here_slowest.early_day",
        "the same by its slowest wall, floor and spigot included: into the house",
    ),
    gives("here_slowest.middle_day", "most probable day"),
    gives("here_slowest.late_day", "late end"),
    gives("here_slowest.spread_ratio", "as above"),
    gives("here_slowest.ahead_early_day", "as above"),
    gives("here_slowest.ahead_late_day", "as above"),
];

/// Ready in the house after that.
pub const ROAD_HOUSE: &[Output] = &[
    gives(
        "house_mean.early_day",
        "with `house`: settled there, moved in as soon as it had settled before, by the mean",
    ),
    gives("house_mean.middle_day", "most probable day"),
    gives("house_mean.late_day", "late end"),
    gives("house_mean.spread_ratio", "as above"),
    gives("house_mean.ahead_early_day", "as above"),
    gives("house_mean.ahead_late_day", "as above"),
    gives(
        "house_slowest.early_day",
        "the same by its slowest wall: to finish-turn",
    ),
    gives("house_slowest.middle_day", "most probable day"),
    gives("house_slowest.late_day", "late end"),
    gives("house_slowest.spread_ratio", "as above"),
    gives("house_slowest.ahead_early_day", "as above"),
    gives("house_slowest.ahead_late_day", "as above"),
];

/// Key and sentence of a reason.
pub fn reason(reason: &TooEarly) -> (&'static str, String) {
    match reason {
        TooEarly::FewWeighings { have } => (
            "few_weighings",
            format!("there are {have} weighings, but a date needs {WEIGHINGS}; weigh it again"),
        ),
        TooEarly::LittleLost { share } => (
            "little_lost",
            format!(
                "{:.0} % of the water to go has gone, but a date needs {:.0} %; wait",
                100.0 * share,
                100.0 * SHARE_LOST
            ),
        ),
        TooEarly::StraightInBag => (
            "straight_in_bag",
            "it still loses weight in a straight line in its bag: only the day the line bends can be told".to_owned(),
        ),
        TooEarly::MovedSince { day } => (
            "moved_since",
            format!("it was moved on day {day}, after the last weighing; weigh it where it is now"),
        ),
        TooEarly::WideRange { spread } => (
            "wide_range",
            format!("the range is too wide to help (spread {spread:.2}, at most {SPREAD}); weigh it again"),
        ),
        TooEarly::Never => (
            "never",
            "it does not settle within two years as things are; look at how it is kept".to_owned(),
        ),
    }
}
