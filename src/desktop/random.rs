//! Random: fresh bits from the system, for ids that no two devices share.

/// Sixteen fresh random bytes.
///
/// # Errors
/// The system's error where it has none to give.
pub fn seed() -> Result<[u8; 16], getrandom::Error> {
    let mut bytes = [0; 16];
    getrandom::fill(&mut bytes)?;
    Ok(bytes)
}

/// 64 fresh random bits. Where the system fails after the start, a counter on top of a first draw stays unique in
/// this run.
#[must_use]
pub fn bits() -> u64 {
    use std::sync::atomic::{AtomicU64, Ordering};
    static FALLBACK: AtomicU64 = AtomicU64::new(0x5bd1_e995);
    getrandom::u64()
        .unwrap_or_else(|_| FALLBACK.fetch_add(0x9E37_79B9_7F4A_7C15, Ordering::Relaxed))
}
