//! Every fact: strategies that make any fact of the domain. A new variant fails to compile here until it is added.
#![allow(dead_code, unused_imports)] // Each test binary uses a part of it.

mod photo;
mod piece;
mod shop;

use chrono::{DateTime, FixedOffset, NaiveDate};
use evenwall_piece::ids::{DeviceId, LineId};
use proptest::prelude::*;

pub use piece::{PIECE_KINDS, piece_facts, piece_kind};
pub use shop::{SHOP_KINDS, shop_facts, shop_kind};

fn text() -> BoxedStrategy<String> {
    prop_oneof!["[ -~äßπ\u{1F600}\n\t\"\\\\]{0,20}", Just(String::new())].boxed()
}

fn number() -> BoxedStrategy<f64> {
    prop_oneof![
        (-1e6..1e6_f64),
        (0..4000_i32).prop_map(|n| f64::from(n) / 2.0),
        Just(0.1 + 0.2),
        Just(f64::MIN_POSITIVE),
        Just(1e300)
    ]
    .boxed()
}

fn any_of<T: Copy + std::fmt::Debug + 'static>(all: &'static [T]) -> BoxedStrategy<T> {
    proptest::sample::select(all).boxed()
}

fn date() -> BoxedStrategy<NaiveDate> {
    (1900..2200_i32, 1..=366_u32)
        .prop_filter_map("no such day", |(y, d)| NaiveDate::from_yo_opt(y, d))
        .boxed()
}

fn moment() -> BoxedStrategy<DateTime<FixedOffset>> {
    (
        0..4_000_000_000_i64,
        -14 * 60..14 * 60_i32,
        any_of(&[0_u32, 1, 120_000_000, 999_999_999]),
    )
        .prop_map(|(seconds, minutes, nanos)| {
            let offset = FixedOffset::east_opt(minutes * 60).unwrap();
            DateTime::from_timestamp(seconds, nanos)
                .unwrap()
                .with_timezone(&offset)
        })
        .boxed()
}

fn line() -> BoxedStrategy<LineId> {
    ("[a-z0-9-]{1,16}", 1..1_000_000_u64)
        .prop_map(|(device, n)| LineId {
            device: DeviceId::new(&device).unwrap(),
            n,
        })
        .boxed()
}
