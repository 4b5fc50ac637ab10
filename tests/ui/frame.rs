//! The frame round the pages.

use crate::bench::Bench;

#[test]
fn an_empty_app_opens_on_today_and_its_tabs_can_be_touched() {
    let bench = Bench::empty();
    for tab in ["Pieces", "Plan", "Shop", "Today"] {
        bench.touch(tab);
    }
    bench.pictures_of("frame");
}
