//! Decode: the bytes of a logger's file as text. Loggers and spreadsheets write UTF-8, UTF-16 or one byte a letter.

/// The text of a file: UTF-16 by its mark, or by the noughts between its letters where it has none; UTF-8; else one byte a
/// letter (Latin-1, where the degree sign is `B0`). Never fails: letters that cannot be told stand as U+FFFD.
#[must_use]
pub fn decode(bytes: &[u8]) -> String {
    match bytes {
        [0xFF, 0xFE, rest @ ..] => utf16(rest, u16::from_le_bytes),
        [0xFE, 0xFF, rest @ ..] => utf16(rest, u16::from_be_bytes),
        [0xEF, 0xBB, 0xBF, rest @ ..] => String::from_utf8_lossy(rest).into_owned(),
        // No text of a logger begins with a nought, or has one as its second byte, unless letters are two bytes wide.
        [first, 0, ..] if *first != 0 => utf16(bytes, u16::from_le_bytes),
        [0, second, ..] if *second != 0 => utf16(bytes, u16::from_be_bytes),
        _ => match std::str::from_utf8(bytes) {
            Ok(text) => text.to_owned(),
            Err(_) => bytes.iter().copied().map(char::from).collect(),
        },
    }
}

fn utf16(bytes: &[u8], unit: fn([u8; 2]) -> u16) -> String {
    let units = bytes.chunks_exact(2).map(|pair| unit([pair[0], pair[1]]));
    char::decode_utf16(units)
        .map(|letter| letter.unwrap_or(char::REPLACEMENT_CHARACTER))
        .collect()
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::climate_log::{Told, Unit, read_climate_log};
    use proptest::prelude::*;

    const TEXT: &str = "time;temperature °C;humidity\n2026-01-31 14:00;18,5;61\n";

    fn wide(text: &str, bytes: fn(u16) -> [u8; 2]) -> Vec<u8> {
        text.encode_utf16().flat_map(bytes).collect()
    }

    #[test]
    fn one_log_reads_the_same_however_its_letters_are_written() {
        let latin: Vec<u8> = TEXT.chars().map(|c| c as u8).collect();
        assert!(std::str::from_utf8(&latin).is_err());
        let (little, big) = (wide(TEXT, u16::to_le_bytes), wide(TEXT, u16::to_be_bytes));
        let with = |mark: &[u8], bytes: &[u8]| [mark, bytes].concat();
        let ways = [
            TEXT.as_bytes().to_vec(),
            with(&[0xEF, 0xBB, 0xBF], TEXT.as_bytes()),
            with(&[0xFF, 0xFE], &little),
            with(&[0xFE, 0xFF], &big),
            little,
            big,
            latin,
        ];
        for bytes in ways {
            let text = decode(&bytes);
            assert_eq!(text, TEXT, "{bytes:?}");
            let log = read_climate_log(&text, Told::default()).unwrap();
            assert_eq!((log.readings[0].rh_pct, log.unit), (61.0, Unit::Celsius));
            assert!(!log.unit_assumed);
        }
        assert_eq!(decode(&[]), "");
    }

    proptest! {
        #[test]
        fn whatever_the_bytes_are_it_gives_a_text(bytes in proptest::collection::vec(any::<u8>(), 0..200)) {
            let text = decode(&bytes);
            prop_assert!(text.chars().count() <= bytes.len());
        }
    }
}
