//! Tag: labels for pieces on sheets of paper, each with a mark, a few lines and a QR code; one HTML file to print.
//!
//! Every measure is in millimetres on paper, so that a sheet of sticky labels can be matched. Print at 100 %.

use std::fmt::Write as _;

use thiserror::Error;

use crate::html::{escaped, number};
use crate::paper::Paper;
use crate::qr::{TooLong, code};

/// The range of a label's width, mm.
pub const WIDTH_MM: std::ops::RangeInclusive<f64> = 40.0..=190.0;
/// The range of a label's height, mm.
pub const HEIGHT_MM: std::ops::RangeInclusive<f64> = 20.0..=250.0;
/// White round the sheet, mm: what printers cannot reach. Labels that fill the sheet to its edge go without.
pub const MARGIN_MM: f64 = 8.0;
/// The most lines below the mark.
pub const MOST_LINES: usize = 6;

/// One tag.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tag {
    /// The mark, large.
    pub mark: String,
    /// Lines below it.
    pub lines: Vec<String>,
    /// What the code says.
    pub code: String,
}

/// Tags on sheets.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// Language tag: `en-GB`.
    pub language: String,
    /// The title of the page.
    pub title: String,
    /// The paper.
    pub paper: Paper,
    /// Width of a label, mm.
    pub width_mm: f64,
    /// Height of a label, mm.
    pub height_mm: f64,
    /// The tags.
    pub tags: Vec<Tag>,
}

/// Why tags cannot be laid out.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum SheetError {
    /// No tag.
    #[error("no piece is chosen: choose the pieces that want a tag")]
    NoTags,
    /// A label that is too small, too large, or no number.
    #[error("a label of {width} x {height} mm cannot be printed: {} to {} mm wide and {} to {} mm high are allowed",
        WIDTH_MM.start(), WIDTH_MM.end(), HEIGHT_MM.start(), HEIGHT_MM.end())]
    Size {
        /// Its width, mm.
        width: f64,
        /// Its height, mm.
        height: f64,
    },
    /// The code is too long.
    #[error(transparent)]
    Code(#[from] TooLong),
}

/// How many labels go beside and below each other on a sheet.
#[must_use]
pub fn grid(paper: Paper, width_mm: f64, height_mm: f64) -> (usize, usize) {
    let (w, h) = paper.size_mm();
    let fits = |room: f64, one: f64| {
        // Labels that fill the sheet to its edge are sticky labels; others keep clear of it.
        let edge = (room / one + 1e-6).floor();
        let n = if edge * one > room - 2.0 {
            edge
        } else {
            ((room - 2.0 * MARGIN_MM) / one + 1e-6).floor()
        };
        // A small whole number: the smallest label is 20 mm.
        n.clamp(1.0, 20.0) as usize
    };
    (fits(w, width_mm), fits(h, height_mm))
}

/// The tags as the text of one HTML file, a sheet a page.
///
/// # Errors
/// [`SheetError`] with a sentence.
pub fn write(sheet: &Sheet) -> Result<String, SheetError> {
    let (w, h) = (sheet.width_mm, sheet.height_mm);
    if !WIDTH_MM.contains(&w) || !HEIGHT_MM.contains(&h) {
        return Err(SheetError::Size {
            width: w,
            height: h,
        });
    }
    if sheet.tags.is_empty() {
        return Err(SheetError::NoTags);
    }
    let (paper_w, paper_h) = sheet.paper.size_mm();
    let (across, down) = grid(sheet.paper, w, h);
    let left = 0.5 * (paper_w - w * across as f64);
    let top = MARGIN_MM.min(0.5 * (paper_h - h * down as f64));
    let mut out = String::new();
    // Writing to a string cannot fail, here and in all of this file.
    let _ = write!(
        out,
        "<!DOCTYPE html>\n<html lang=\"{}\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n\
         <title>{}</title>\n<style>\n\
         @page{{size:{};margin:0}}\nbody{{margin:0;background:#fff}}\n\
         svg.sheet{{display:block;width:100%;height:auto;max-width:{paper_w}mm;break-after:page}}\n\
         svg.sheet:last-child{{break-after:auto}}\n\
         @media print{{svg.sheet{{width:{paper_w}mm;height:{paper_h}mm}}}}\n\
         text{{font-family:Arial,'Helvetica Neue',Roboto,sans-serif;fill:#000}}\n</style>\n</head>\n<body>\n",
        escaped(&sheet.language),
        escaped(&sheet.title),
        sheet.paper.css(),
    );
    for tags in sheet.tags.chunks(across * down) {
        let _ = writeln!(
            out,
            "<svg class=\"sheet\" viewBox=\"0 0 {paper_w} {paper_h}\" role=\"img\" aria-label=\"{}\">",
            escaped(
                &tags
                    .iter()
                    .map(|t| t.mark.as_str())
                    .collect::<Vec<_>>()
                    .join(", ")
            )
        );
        for (place, tag) in tags.iter().enumerate() {
            let x = left + w * (place % across) as f64;
            let y = top + h * (place / across) as f64;
            let _ = writeln!(
                out,
                "<g transform=\"translate({} {})\">",
                number(x),
                number(y)
            );
            one(&mut out, tag, w, h)?;
            out.push_str("</g>\n");
        }
        out.push_str("</svg>\n");
    }
    out.push_str("</body>\n</html>\n");
    Ok(out)
}

/// Width of a text in parts of the letter's height: digits and capitals of the common faces are about 0.6 wide, bold 0.68.
fn letter_for(text: &str, room: f64, wanted: f64, wide: f64) -> f64 {
    let count = text.chars().count().max(1) as f64;
    wanted.min(room / (wide * count))
}

fn one(out: &mut String, tag: &Tag, w: f64, h: f64) -> Result<(), SheetError> {
    let pad = 2.5;
    let code = code(&tag.code)?;
    // A phone reads modules of a third of a millimetre; more room makes it easier.
    let side = (h - 2.0 * pad).min(0.42 * w).min(40.0);
    let scale = side / code.side as f64;
    let _ = writeln!(
        out,
        "<rect x=\"0\" y=\"0\" width=\"{}\" height=\"{}\" fill=\"none\" stroke=\"#999\" stroke-width=\"0.2\" stroke-dasharray=\"1 1\"/>",
        number(w),
        number(h)
    );
    let _ = writeln!(
        out,
        "<path transform=\"translate({} {}) scale({scale:.5})\" d=\"{}\" fill=\"#000\" shape-rendering=\"crispEdges\"/>",
        number(w - pad - side),
        number(0.5 * (h - side)),
        code.path
    );
    let room = w - side - 3.0 * pad;
    let lines: Vec<&String> = tag
        .lines
        .iter()
        .filter(|l| !l.is_empty())
        .take(MOST_LINES)
        .collect();
    let mark = letter_for(&tag.mark, room, 0.34 * h, 0.68).min(16.0);
    let left = h - 2.0 * pad - mark * 1.05;
    let line = (left / (1.25 * lines.len().max(1) as f64))
        .min(0.13 * h)
        .clamp(1.6, 5.0);
    // One size for all lines: the smallest that any of them needs, down to what can still be read.
    let line = lines
        .iter()
        .map(|l| letter_for(l, room, line, 0.54))
        .fold(line, f64::min)
        .max(1.6);
    let mut y = pad + 0.86 * mark;
    let _ = writeln!(
        out,
        "<text x=\"{pad}\" y=\"{}\" font-size=\"{}\" font-weight=\"700\">{}</text>",
        number(y),
        number(mark),
        escaped(&tag.mark)
    );
    y += 0.35 * line;
    for text in lines {
        y += 1.25 * line;
        if y > h - 0.5 * pad {
            break;
        }
        let _ = writeln!(
            out,
            "<text x=\"{pad}\" y=\"{}\" font-size=\"{}\">{}</text>",
            number(y),
            number(letter_for(text, room, line, 0.54)),
            escaped(text)
        );
    }
    Ok(())
}
