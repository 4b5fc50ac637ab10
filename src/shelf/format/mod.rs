//! Format: the frozen shape of the facts in a journal, version by version.

/// Version of the facts that this program writes, the `v` of a line.
pub const LINE_VERSION: u64 = 1;
