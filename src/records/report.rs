//! Report: the story of one piece as one HTML file with everything in it: no script, no link, nothing to load.
//!
//! Looks like a page of a book on a phone and prints to a page or two. Whatever was typed is escaped.

use std::fmt::Write as _;

use crate::html::{element, escaped, jpeg, number, path};
use crate::paper::Paper;
use crate::report_style::STYLE;

/// A photo with what is said below it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ReportPhoto {
    /// The bytes of a JPEG; anything else is left out.
    pub jpeg: Vec<u8>,
    /// What is said below it; may be empty.
    pub caption: String,
}

/// Text in a drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct DrawnText {
    /// From the left, in the units of the drawing.
    pub x: f64,
    /// From the top, the line it stands on.
    pub y: f64,
    /// `start`, `middle` or `end`.
    pub anchor: Anchor,
    /// The text.
    pub text: String,
}

/// Which part of a text stands at its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// Its start.
    Start,
    /// Its middle.
    Middle,
    /// Its end.
    End,
}

impl Anchor {
    const fn key(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::Middle => "middle",
            Self::End => "end",
        }
    }
}

/// How a path is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stroke {
    /// Filled as the outside of the wood.
    Skin,
    /// Filled as cut wood.
    Cut,
    /// A firm line.
    Line,
    /// A thin soft line.
    Thin,
    /// A thick line of the curve.
    Curve,
    /// Filled dots.
    Dot,
}

/// A drawing with a sentence that says what it shows.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    /// Its name: "half-section"; becomes a class.
    pub class: &'static str,
    /// Width, any unit.
    pub width: f64,
    /// Height, the same unit.
    pub height: f64,
    /// Paths, the first lowest.
    pub paths: Vec<(Stroke, String)>,
    /// Texts.
    pub texts: Vec<DrawnText>,
    /// Height of its letters, the same unit.
    pub letter: f64,
    /// What it shows, for whoever cannot see it.
    pub says: String,
    /// What is said below it.
    pub caption: String,
}

/// A stage of the story.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Chapter {
    /// Its name.
    pub title: String,
    /// From when to when.
    pub dates: String,
    /// What happened.
    pub lines: Vec<String>,
}

/// A flaw.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FlawStory {
    /// What and where.
    pub title: String,
    /// What was done and seen.
    pub lines: Vec<String>,
    /// Its photos.
    pub photos: Vec<ReportPhoto>,
}

/// A part under a heading of its own; left out where it holds nothing.
#[derive(Debug, Clone, PartialEq)]
pub struct Part<T> {
    /// Its heading.
    pub title: String,
    /// What it holds.
    pub holds: T,
}

/// Everything a report says, in final words.
#[derive(Debug, Clone, PartialEq)]
pub struct Report {
    /// Language tag: `en-GB`.
    pub language: String,
    /// The paper it is printed on.
    pub paper: Paper,
    /// Mark and wood.
    pub title: String,
    /// A line below it.
    pub subtitle: String,
    /// The portrait.
    pub portrait: Option<ReportPhoto>,
    /// The half section.
    pub section: Option<Drawing>,
    /// Facts: label and value.
    pub facts: Part<Vec<(String, String)>>,
    /// The story by stage.
    pub story: Part<Vec<Chapter>>,
    /// The drying curve.
    pub curve: Option<Part<Drawing>>,
    /// Flaws and what was done about them.
    pub flaws: Part<Vec<FlawStory>>,
    /// Further photos.
    pub photos: Part<Vec<ReportPhoto>>,
    /// How to care for it, a paragraph each.
    pub care: Part<Vec<String>>,
    /// Notes of the shop; none in a buyer's version.
    pub notes: Part<Vec<String>>,
    /// The last line.
    pub footer: String,
}

fn heading<T>(out: &mut String, part: &Part<Vec<T>>) -> bool {
    if part.holds.is_empty() {
        return false;
    }
    element(out, "h2", "", &part.title);
    true
}

fn photo(out: &mut String, photo: &ReportPhoto, alt: &str) {
    let Some(source) = jpeg(&photo.jpeg) else {
        return;
    };
    let alt = if photo.caption.is_empty() {
        alt
    } else {
        &photo.caption
    };
    let _ = writeln!(
        out,
        "<figure><img src=\"{source}\" alt=\"{}\">",
        escaped(alt)
    );
    element(out, "figcaption", "", &photo.caption);
    out.push_str("</figure>\n");
}

fn photos(out: &mut String, all: &[ReportPhoto], alt: &str) {
    if all.iter().any(|p| jpeg(&p.jpeg).is_some()) {
        out.push_str("<div class=\"photos\">\n");
        all.iter().for_each(|p| photo(out, p, alt));
        out.push_str("</div>\n");
    }
}

const fn attributes(stroke: Stroke) -> &'static str {
    match stroke {
        Stroke::Skin => "fill=\"#c89b5f\" stroke=\"none\"",
        Stroke::Cut => {
            "fill=\"#e3c79a\" stroke=\"#7b5526\" stroke-width=\"1\" vector-effect=\"non-scaling-stroke\""
        }
        Stroke::Line => {
            "fill=\"none\" stroke=\"#25211c\" stroke-width=\"1.5\" vector-effect=\"non-scaling-stroke\""
        }
        Stroke::Thin => {
            "fill=\"none\" stroke=\"#8d8273\" stroke-width=\"0.7\" vector-effect=\"non-scaling-stroke\""
        }
        Stroke::Curve => {
            "fill=\"none\" stroke=\"#7b5526\" stroke-width=\"2\" stroke-linejoin=\"round\" vector-effect=\"non-scaling-stroke\""
        }
        Stroke::Dot => "fill=\"#7b5526\" stroke=\"none\"",
    }
}

/// The drawing as SVG within the page.
fn drawing(out: &mut String, drawing: &Drawing) {
    let _ = writeln!(
        out,
        "<figure class=\"{}\"><svg viewBox=\"0 0 {} {}\" role=\"img\" aria-label=\"{}\">",
        drawing.class,
        number(drawing.width),
        number(drawing.height),
        escaped(&drawing.says)
    );
    for (stroke, commands) in &drawing.paths {
        let commands = path(commands);
        if !commands.trim().is_empty() {
            let _ = writeln!(out, "<path d=\"{commands}\" {}/>", attributes(*stroke));
        }
    }
    for text in &drawing.texts {
        let _ = writeln!(
            out,
            "<text x=\"{}\" y=\"{}\" font-size=\"{}\" text-anchor=\"{}\">{}</text>",
            number(text.x),
            number(text.y),
            number(drawing.letter),
            text.anchor.key(),
            escaped(&text.text)
        );
    }
    out.push_str("</svg>\n");
    element(out, "figcaption", "", &drawing.caption);
    out.push_str("</figure>\n");
}

/// The report as the text of one HTML file.
#[must_use]
pub fn write(report: &Report) -> String {
    let mut out = String::new();
    // Writing to a string cannot fail, here and in all of this file.
    let _ = write!(
        out,
        "<!DOCTYPE html>\n<html lang=\"{}\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; img-src data:; style-src 'unsafe-inline'\">\n\
         <title>{}</title>\n<style>\n{STYLE}\n@page{{size:{};margin:14mm}}\n</style>\n</head>\n<body>\n<main>\n<header>\n",
        escaped(&report.language),
        escaped(&report.title),
        report.paper.css(),
    );
    element(&mut out, "h1", "", &report.title);
    element(&mut out, "p", "", &report.subtitle);
    let portrait = report.portrait.as_ref().filter(|p| jpeg(&p.jpeg).is_some());
    // With a portrait and a drawing side by side the facts go below them; with one of them, beside it.
    let two = if portrait.is_some() && report.section.is_some() {
        "top two"
    } else {
        "top"
    };
    let _ = writeln!(out, "</header>\n<div class=\"{two}\">");
    if let Some(portrait) = portrait {
        out.push_str("<div class=\"portrait\">\n");
        photo(&mut out, portrait, &report.title);
        out.push_str("</div>\n");
    }
    if let Some(section) = &report.section {
        drawing(&mut out, section);
    }
    if !report.facts.holds.is_empty() {
        out.push_str("<div class=\"facts\">\n");
        let _ = writeln!(out, "<dl aria-label=\"{}\">", escaped(&report.facts.title));
        for (label, value) in &report.facts.holds {
            let _ = writeln!(
                out,
                "<dt>{}</dt><dd>{}</dd>",
                escaped(label),
                escaped(value)
            );
        }
        out.push_str("</dl>\n</div>\n");
    }
    out.push_str("</div>\n");
    if heading(&mut out, &report.story) {
        out.push_str("<div class=\"story\">\n");
        for chapter in &report.story.holds {
            out.push_str("<section class=\"chapter\">\n");
            element(&mut out, "h3", "", &chapter.title);
            element(&mut out, "p", "dates", &chapter.dates);
            list(&mut out, &chapter.lines);
            out.push_str("</section>\n");
        }
        out.push_str("</div>\n");
    }
    if let Some(curve) = &report.curve {
        element(&mut out, "h2", "", &curve.title);
        drawing(&mut out, &curve.holds);
    }
    if heading(&mut out, &report.flaws) {
        for flaw in &report.flaws.holds {
            out.push_str("<section class=\"flaw\">\n");
            element(&mut out, "h3", "", &flaw.title);
            list(&mut out, &flaw.lines);
            photos(&mut out, &flaw.photos, &flaw.title);
            out.push_str("</section>\n");
        }
    }
    if heading(&mut out, &report.photos) {
        photos(&mut out, &report.photos.holds, &report.title);
    }
    for part in [&report.care, &report.notes] {
        if heading(&mut out, part) {
            for paragraph in &part.holds {
                element(&mut out, "p", "", paragraph);
            }
        }
    }
    element(&mut out, "footer", "", &report.footer);
    out.push_str("</main>\n</body>\n</html>\n");
    out
}

fn list(out: &mut String, lines: &[String]) {
    let lines: Vec<&String> = lines.iter().filter(|l| !l.is_empty()).collect();
    if lines.is_empty() {
        return;
    }
    out.push_str("<ul>\n");
    for line in lines {
        element(out, "li", "", line);
    }
    out.push_str("</ul>\n");
}
