//! Built-in lines: the checklist that comes with the program, common practice, no source.
//!
//! Ids are stored with every tick: they never change and are never used again for another line. A new line goes where
//! it belongs with a sort key between its neighbours'; its words are `line-<id>` and `line-<id>-why` of the catalogue.

use crate::checklist::{LineWhen, Link};
use crate::stage::Stage;

/// A line that comes with the program.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct BuiltIn {
    /// Stable id; begins with its stage's key.
    pub id: &'static str,
    /// The stage it stands in.
    pub stage: Stage,
    /// Sort key: 100, 200, 300...
    pub order: i64,
    /// A standing rule: no box.
    pub standing: bool,
    /// For which pieces it is shown.
    pub when: LineWhen,
    /// The record that ticks it by itself.
    pub link: Option<Link>,
}

const fn line(id: &'static str, stage: Stage, order: i64) -> BuiltIn {
    BuiltIn {
        id,
        stage,
        order,
        standing: false,
        when: LineWhen::Always,
        link: None,
    }
}

impl BuiltIn {
    const fn standing(mut self) -> Self {
        self.standing = true;
        self
    }

    const fn when(mut self, when: LineWhen) -> Self {
        self.when = when;
        self
    }

    const fn link(mut self, link: Link) -> Self {
        self.link = Some(link);
        self
    }
}

use LineWhen::{Closed, EndGrain, SideGrain, Weighed};
use Stage::{Air, Bag, Finish, Hollow, Indoors, Settle, Shape, Stabilise, True};

/// All built-in lines, stage by stage, in the order in which they are shown.
pub const BUILT_IN: &[BuiltIn] = &[
    line("shape-cut-back", Shape, 100),
    line("shape-place-pith", Shape, 200).link(Link::Pith),
    line("shape-mount", Shape, 300),
    line("shape-speed", Shape, 400).standing(),
    line("shape-outside", Shape, 500),
    line("shape-spigot", Shape, 600).link(Link::SpigotCut),
    line("shape-centre-mark", Shape, 700),
    line("shape-depth", Shape, 800).link(Link::Height),
    line("shape-drill", Shape, 900).link(Link::DepthDrilled),
    line("hollow-rest", Hollow, 100),
    line("hollow-roll", Hollow, 200).standing().when(Closed),
    line("hollow-mouth", Hollow, 300),
    line("hollow-shoulder", Hollow, 400).when(Closed),
    line("hollow-sections-end", Hollow, 500).when(EndGrain),
    line("hollow-sections-side", Hollow, 550).when(SideGrain),
    line("hollow-stop", Hollow, 600).standing(),
    line("hollow-callipers", Hollow, 700).link(Link::Stations),
    line("hollow-reach", Hollow, 800),
    line("hollow-floor", Hollow, 900),
    line("hollow-wrap", Hollow, 1000).standing(),
    line("stabilise-look", Stabilise, 100),
    line("stabilise-decide", Stabilise, 200).link(Link::FlawsDecided),
    line("stabilise-place", Stabilise, 300).link(Link::FlawsPlaced),
    line("stabilise-dry-spot", Stabilise, 400),
    line("stabilise-grade", Stabilise, 500),
    line("stabilise-both-faces", Stabilise, 600),
    line("stabilise-keep-off", Stabilise, 700),
    line("stabilise-gone-off", Stabilise, 800),
    line("stabilise-write-down", Stabilise, 900).link(Link::FlawsLookAgain),
    line("bag-pencil", Bag, 100),
    line("bag-tag", Bag, 200),
    line("bag-clear", Bag, 300),
    line("bag-weigh", Bag, 400)
        .when(Weighed)
        .link(Link::WeighedSoFar),
    line("bag-stand", Bag, 500),
    line("bag-feel", Bag, 600).standing(),
    line("bag-turn", Bag, 700).standing(),
    line("bag-open", Bag, 800),
    line("bag-look-over", Bag, 900).standing(),
    line("air-stand", Air, 100),
    line("air-off-heat", Air, 200),
    line("air-mouth-clear", Air, 300),
    line("air-look", Air, 400).standing(),
    line("air-slow-down", Air, 500),
    line("air-damp-again", Air, 600),
    line("air-weigh", Air, 700)
        .when(Weighed)
        .link(Link::Weighed),
    line("air-month", Air, 800),
    line("settle-shelf", Settle, 100),
    line("settle-weigh", Settle, 200).standing(),
    line("settle-check-scale", Settle, 300),
    line("settle-weather", Settle, 400).link(Link::ShopAir),
    line("settle-look", Settle, 500).standing(),
    line("settle-mass-change", Settle, 600),
    line("settle-steady", Settle, 700),
    line("settle-small", Settle, 800),
    line("indoors-when", Indoors, 100),
    line("indoors-room", Indoors, 200),
    line("indoors-off-heat", Indoors, 300),
    line("indoors-step", Indoors, 400),
    line("indoors-weigh", Indoors, 500)
        .when(Weighed)
        .link(Link::WeighedThrice),
    line("indoors-look", Indoors, 600),
    line("indoors-two-weeks", Indoors, 700),
    line("indoors-no-heat", Indoors, 800),
    line("true-look", True, 100).link(Link::Cracks),
    line("true-stop", True, 200),
    line("true-oval", True, 300).link(Link::Oval),
    line("true-copy-mark", True, 400),
    line("true-drive", True, 500),
    line("true-share-wobble", True, 600),
    line("true-spigot", True, 700).link(Link::SpigotTrued),
    line("true-reverse", True, 800),
    line("true-outside", True, 900).link(Link::Stations),
    line("finish-outside", Finish, 100),
    line("finish-sections", Finish, 200),
    line("finish-measure", Finish, 300).standing(),
    line("finish-floor", Finish, 400).link(Link::Floor),
    line("finish-sand", Finish, 500),
    line("finish-sand-inside", Finish, 600).when(Closed),
    line("finish-reverse", Finish, 700),
    line("finish-coats", Finish, 800).link(Link::Coats),
    line("finish-sign", Finish, 900).link(Link::Signed),
];
