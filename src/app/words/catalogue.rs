//! The embedded files of the catalogue, one per page and language.
//!
//! A new page adds its file to both lists; a test compares the lists with the folders.

/// UK English: complete.
pub(super) const EN_GB: [(&str, &str); 24] = [
    ("common", include_str!("en-GB/common.ftl")),
    ("numbers", include_str!("en-GB/numbers.ftl")),
    ("today", include_str!("en-GB/today.ftl")),
    ("pieces", include_str!("en-GB/pieces.ftl")),
    ("piece", include_str!("en-GB/piece.ftl")),
    ("checklists", include_str!("en-GB/checklists.ftl")),
    ("wall", include_str!("en-GB/wall.ftl")),
    ("flaws", include_str!("en-GB/flaws.ftl")),
    ("drying", include_str!("en-GB/drying.ftl")),
    ("forecast", include_str!("en-GB/forecast.ftl")),
    ("trueup", include_str!("en-GB/trueup.ftl")),
    ("plan", include_str!("en-GB/plan.ftl")),
    ("sums", include_str!("en-GB/sums.ftl")),
    ("diary", include_str!("en-GB/diary.ftl")),
    ("dried-well", include_str!("en-GB/dried-well.ftl")),
    ("climate-log", include_str!("en-GB/climate-log.ftl")),
    ("shop", include_str!("en-GB/shop.ftl")),
    ("stages", include_str!("en-GB/stages.ftl")),
    ("demo", include_str!("en-GB/demo.ftl")),
    ("errors", include_str!("en-GB/errors.ftl")),
    ("new-piece", include_str!("en-GB/new-piece.ftl")),
    ("frame", include_str!("en-GB/frame.ftl")),
    ("photos", include_str!("en-GB/photos.ftl")),
    ("records", include_str!("en-GB/records.ftl")),
];

/// US English: only what differs.
pub(super) const EN_US: [(&str, &str); 24] = [
    ("common", include_str!("en-US/common.ftl")),
    ("numbers", include_str!("en-US/numbers.ftl")),
    ("today", include_str!("en-US/today.ftl")),
    ("pieces", include_str!("en-US/pieces.ftl")),
    ("piece", include_str!("en-US/piece.ftl")),
    ("checklists", include_str!("en-US/checklists.ftl")),
    ("wall", include_str!("en-US/wall.ftl")),
    ("flaws", include_str!("en-US/flaws.ftl")),
    ("drying", include_str!("en-US/drying.ftl")),
    ("forecast", include_str!("en-US/forecast.ftl")),
    ("trueup", include_str!("en-US/trueup.ftl")),
    ("plan", include_str!("en-US/plan.ftl")),
    ("sums", include_str!("en-US/sums.ftl")),
    ("diary", include_str!("en-US/diary.ftl")),
    ("dried-well", include_str!("en-US/dried-well.ftl")),
    ("climate-log", include_str!("en-US/climate-log.ftl")),
    ("shop", include_str!("en-US/shop.ftl")),
    ("stages", include_str!("en-US/stages.ftl")),
    ("demo", include_str!("en-US/demo.ftl")),
    ("errors", include_str!("en-US/errors.ftl")),
    ("new-piece", include_str!("en-US/new-piece.ftl")),
    ("frame", include_str!("en-US/frame.ftl")),
    ("photos", include_str!("en-US/photos.ftl")),
    ("records", include_str!("en-US/records.ftl")),
];
