//! HTML: the few things that writing a page by hand needs: escaping, numbers, a picture inside the page.

use std::fmt::Write as _;

/// A text as it stands between tags and in quoted attributes. Control characters that no page may hold become blanks.
#[must_use]
pub fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            '\n' | '\t' => out.push(c),
            c if c.is_control()
                || ('\u{fdd0}'..='\u{fdef}').contains(&c)
                || (c as u32 & 0xfffe) == 0xfffe =>
            {
                out.push(' ');
            }
            c => out.push(c),
        }
    }
    out
}

/// A number of a drawing: two decimals, never "NaN".
#[must_use]
pub fn number(value: f64) -> String {
    if value.is_finite() {
        let text = format!("{value:.2}");
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        "0".to_owned()
    }
}

/// The commands of a path as they may stand in an attribute: only letters of commands, numbers and what parts them.
#[must_use]
pub fn path(commands: &str) -> String {
    commands
        .chars()
        .filter(|c| {
            c.is_ascii_digit()
                || matches!(c, ' ' | '.' | ',' | '-')
                || "MLHVCSQTAZmlhvcsqtaz".contains(*c)
        })
        .collect()
}

/// The picture of a page: `data:image/jpeg;base64,...`; `None` where the bytes are no JPEG.
#[must_use]
pub fn jpeg(bytes: &[u8]) -> Option<String> {
    if !bytes.starts_with(&[0xff, 0xd8, 0xff]) {
        return None;
    }
    let mut out = String::with_capacity(bytes.len() / 3 * 4 + 40);
    out.push_str("data:image/jpeg;base64,");
    base64(bytes, &mut out);
    Some(out)
}

/// Base 64 with padding, RFC 4648 section 4.
fn base64(bytes: &[u8], out: &mut String) {
    const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    for chunk in bytes.chunks(3) {
        let b = [
            chunk[0],
            chunk.get(1).copied().unwrap_or(0),
            chunk.get(2).copied().unwrap_or(0),
        ];
        let n = u32::from(b[0]) << 16 | u32::from(b[1]) << 8 | u32::from(b[2]);
        for place in 0..4 {
            if place <= chunk.len() {
                let six = (n >> (18 - 6 * place)) & 63;
                out.push(char::from(LETTERS[six as usize]));
            } else {
                out.push('=');
            }
        }
    }
}

/// Adds an element with escaped text: `<p class="x">text</p>`. Nothing where the text is empty.
pub(crate) fn element(out: &mut String, tag: &str, class: &str, text: &str) {
    if text.is_empty() {
        return;
    }
    let class = if class.is_empty() {
        String::new()
    } else {
        format!(" class=\"{class}\"")
    };
    // Writing to a string cannot fail.
    let _ = writeln!(out, "<{tag}{class}>{}</{tag}>", escaped(text));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_that_was_typed_becomes_a_tag_or_ends_an_attribute() {
        let typed = "<script>alert('x')</script> \"&amp;\u{0}\u{8}\u{ffff}";
        let text = escaped(typed);
        assert_eq!(
            text,
            "&lt;script&gt;alert(&#39;x&#39;)&lt;/script&gt; &quot;&amp;amp;   "
        );
        assert_eq!(path("M 1.5 -2\"/><script>L3,4Z"), "M 1.5 -2sctL3,4Z");
        assert_eq!(
            (number(1.50), number(-0.25), number(f64::NAN), number(100.0)),
            ("1.5".into(), "-0.25".into(), "0".into(), "100".into())
        );
    }

    #[test]
    fn base_64_is_that_of_the_rfc() {
        // RFC 4648, section 10.
        for (plain, coded) in [
            ("", ""),
            ("f", "Zg=="),
            ("fo", "Zm8="),
            ("foo", "Zm9v"),
            ("foob", "Zm9vYg=="),
            ("fooba", "Zm9vYmE="),
            ("foobar", "Zm9vYmFy"),
        ] {
            let mut out = String::new();
            base64(plain.as_bytes(), &mut out);
            assert_eq!(out, coded);
        }
        assert_eq!(jpeg(b"<svg onload=x>"), None);
    }
}
