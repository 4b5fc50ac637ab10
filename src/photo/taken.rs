//! Taken: when a picture was taken, as the camera wrote it.

use chrono::{FixedOffset, NaiveDateTime};

/// The camera's clock, with its offset from UTC where the camera wrote one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Taken {
    /// What the camera's clock said.
    pub local: NaiveDateTime,
    /// East of UTC; many cameras write none.
    pub offset: Option<FixedOffset>,
}

impl Taken {
    /// From the texts of the tags (Exif 2.32: "2026:03:11 09:12:05" and "+01:00"). A time outside 1990 to 2199 is a
    /// clock that was never set, and none.
    #[must_use]
    pub fn from_tags(time: &str, offset: Option<&str>) -> Option<Self> {
        use chrono::Datelike;
        let local = NaiveDateTime::parse_from_str(time.trim(), "%Y:%m:%d %H:%M:%S").ok()?;
        if !(1990..2200).contains(&local.year()) {
            return None;
        }
        let offset = offset.and_then(|o| o.trim().parse().ok());
        Some(Self { local, offset })
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn a_camera_s_time_is_read_with_and_without_its_offset() {
        let t = Taken::from_tags("2026:03:11 09:12:05", Some("+01:00")).unwrap();
        assert_eq!(t.local.to_string(), "2026-03-11 09:12:05");
        assert_eq!(t.offset, FixedOffset::east_opt(3600));
        assert_eq!(
            Taken::from_tags("2026:03:11 09:12:05", None)
                .unwrap()
                .offset,
            None
        );
        assert_eq!(
            Taken::from_tags("2026:03:11 09:12:05", Some("   :  "))
                .unwrap()
                .offset,
            None
        );
        for none in [
            "0000:00:00 00:00:00",
            "1980:01:01 00:00:00",
            "    :  :     :  :  ",
            "2026-03-11",
            "",
        ] {
            assert_eq!(Taken::from_tags(none, None), None, "{none}");
        }
    }
}
