//! Pages as others read them: an HTML parser finds no fault, a QR reader reads the tags.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use evenwall_records::paper::Paper;
use evenwall_records::qr;
use evenwall_records::report::{
    self, Anchor, Chapter, Drawing, DrawnText, FlawStory, Part, Report, ReportPhoto, Stroke,
};
use evenwall_records::tag::{self, Sheet, SheetError, Tag};
use html5ever::tendril::TendrilSink;
use markup5ever_rcdom::{Handle, NodeData, RcDom};

/// Every fault that the parser of the HTML standard finds.
fn faults(page: &str) -> (RcDom, Vec<String>) {
    let dom =
        html5ever::parse_document(RcDom::default(), html5ever::ParseOpts::default()).one(page);
    let faults = dom.errors.borrow().iter().map(|e| e.to_string()).collect();
    (dom, faults)
}

fn names(node: &Handle, into: &mut Vec<String>) {
    if let NodeData::Element { name, attrs, .. } = &node.data {
        into.push(name.local.to_string());
        for attribute in attrs.borrow().iter() {
            assert!(!attribute.name.local.starts_with("on"), "no handler");
            if ["src", "href"].contains(&attribute.name.local.as_ref()) {
                assert!(
                    attribute.value.starts_with("data:image/jpeg;base64,"),
                    "nothing is loaded: {}",
                    attribute.value
                );
            }
        }
    }
    for child in node.children.borrow().iter() {
        names(child, into);
    }
}

const EVIL: &str = "<script>alert(1)</script>\"'><img src=http://x.invalid/a onerror=y>&lt;\u{0}";

fn part<T>(holds: T) -> Part<T> {
    Part {
        title: EVIL.into(),
        holds,
    }
}

fn evil() -> Report {
    let photo = ReportPhoto {
        jpeg: vec![0xff, 0xd8, 0xff, 0xe0, 1, 2, 3],
        caption: EVIL.into(),
    };
    let drawing = Drawing {
        class: "section",
        width: 100.0,
        height: f64::NAN,
        paths: vec![
            (Stroke::Cut, "M 0 0 L 1 1 Z\"/><script>".into()),
            (Stroke::Line, String::new()),
        ],
        texts: vec![DrawnText {
            x: 1.0,
            y: 2.0,
            anchor: Anchor::End,
            text: EVIL.into(),
        }],
        letter: 3.0,
        says: EVIL.into(),
        caption: EVIL.into(),
    };
    Report {
        language: "en-GB".into(),
        paper: Paper::A4,
        title: EVIL.into(),
        subtitle: EVIL.into(),
        portrait: Some(photo.clone()),
        section: Some(drawing.clone()),
        facts: part(vec![(EVIL.into(), EVIL.into())]),
        story: part(vec![Chapter {
            title: EVIL.into(),
            dates: EVIL.into(),
            lines: vec![EVIL.into(), String::new()],
        }]),
        curve: Some(part(drawing)),
        flaws: part(vec![FlawStory {
            title: EVIL.into(),
            lines: vec![EVIL.into()],
            photos: vec![
                photo.clone(),
                ReportPhoto {
                    jpeg: b"<svg>".to_vec(),
                    caption: EVIL.into(),
                },
            ],
        }]),
        photos: part(vec![photo]),
        care: part(vec![EVIL.into()]),
        notes: part(vec![EVIL.into()]),
        footer: EVIL.into(),
    }
}

#[test]
fn a_report_of_the_worst_words_is_valid_html_that_loads_and_runs_nothing() {
    let page = report::write(&evil());
    let (dom, found) = faults(&page);
    assert_eq!(found, [] as [String; 0]);
    let mut all = Vec::new();
    names(&dom.document, &mut all);
    for never in ["script", "link", "iframe", "object", "form", "base"] {
        assert!(!all.iter().any(|n| n == never), "{never}");
    }
    assert_eq!(
        all.iter().filter(|n| *n == "img").count(),
        3,
        "what is no JPEG is left out"
    );
    assert!(page.contains("@page{size:A4"));
}

#[test]
fn an_empty_report_has_no_empty_headings() {
    let bare = Report {
        portrait: None,
        section: None,
        curve: None,
        facts: part(vec![]),
        story: part(vec![]),
        flaws: part(vec![]),
        photos: part(vec![]),
        care: part(vec![]),
        notes: part(vec![]),
        ..evil()
    };
    let page = report::write(&bare);
    assert_eq!(faults(&page).1, [] as [String; 0]);
    assert!(!page.contains("<h2") && !page.contains("<ul") && !page.contains("<dl"));
}

#[test]
fn the_parser_of_this_test_does_find_faults() {
    assert!(
        !faults("<!DOCTYPE html><html><body><p>a<b></p></body></html>")
            .1
            .is_empty()
    );
    assert!(!faults("<p>no doctype").1.is_empty());
}

/// Draws the squares of a path, some dots a module, and reads it.
fn read_back(path: &str, side: usize) -> String {
    const DOTS: usize = 4;
    let mut dark = vec![false; side * side];
    for piece in path.split('M').filter(|p| !p.is_empty()) {
        let (place, rest) = piece.split_once('h').unwrap();
        let (x, y) = place.split_once(' ').unwrap();
        let run: usize = rest.split('v').next().unwrap().parse().unwrap();
        let (x, y): (usize, usize) = (x.parse().unwrap(), y.parse().unwrap());
        dark[y * side + x..y * side + x + run].fill(true);
    }
    let mut image =
        rqrr::PreparedImage::prepare_from_greyscale(side * DOTS, side * DOTS, |x, y| {
            if dark[(y / DOTS) * side + x / DOTS] {
                0
            } else {
                255
            }
        });
    let grids = image.detect_grids();
    assert_eq!(grids.len(), 1);
    grids[0].decode().unwrap().1
}

#[test]
fn an_independent_reader_reads_the_code() {
    for text in [
        "K07 k07-1d81f5ce7f",
        "\u{c4}sche 12 a-b",
        &"x".repeat(qr::MOST),
    ] {
        let code = qr::code(text).unwrap();
        assert_eq!(read_back(&code.path, code.side), text);
    }
    assert_eq!(qr::code(&"x".repeat(201)).unwrap_err().found, 201);
}

fn sheet(tags: usize, width_mm: f64, height_mm: f64, paper: Paper) -> Sheet {
    let tag = |n: usize| Tag {
        mark: format!("K{n:02}"),
        lines: vec![
            "Elm, end grain".into(),
            "Felled March 2026".into(),
            EVIL.into(),
            String::new(),
        ],
        code: format!("K{n:02} k{n:02}-1d81f5ce7f"),
    };
    Sheet {
        language: "en-GB".into(),
        title: "Tags".into(),
        paper,
        width_mm,
        height_mm,
        tags: (1..=tags).map(tag).collect(),
    }
}

#[test]
fn tags_are_laid_out_in_millimetres_and_every_code_on_them_is_read() {
    let page = tag::write(&sheet(30, 70.0, 37.0, Paper::A4)).unwrap();
    assert_eq!(faults(&page).1, [] as [String; 0]);
    assert_eq!(
        tag::grid(Paper::A4, 70.0, 37.0),
        (3, 8),
        "sticky labels to the edge"
    );
    assert_eq!(
        tag::grid(Paper::A4, 64.0, 40.0),
        (3, 7),
        "labels to cut out, clear of the edge"
    );
    assert_eq!(page.matches("<svg").count(), 2);
    assert!(page.contains("viewBox=\"0 0 210 297\""));
    assert_eq!(page.matches("<script").count(), 0);
    let side = qr::code("K01 k01-1d81f5ce7f").unwrap().side;
    let codes: Vec<&str> = page
        .split("d=\"")
        .skip(1)
        .map(|p| p.split('"').next().unwrap())
        .collect();
    assert_eq!(codes.len(), 30);
    for (n, path) in codes.iter().enumerate() {
        assert_eq!(
            read_back(path, side),
            format!("K{:02} k{:02}-1d81f5ce7f", n + 1, n + 1)
        );
    }
}

#[test]
fn letter_paper_and_every_size_of_label_keep_inside_the_sheet() {
    for (w, h) in [(40.0, 20.0), (63.5, 38.1), (190.0, 250.0), (99.0, 57.0)] {
        for paper in [Paper::A4, Paper::Letter] {
            let (across, down) = tag::grid(paper, w, h);
            let (pw, ph) = paper.size_mm();
            assert!(
                w * across as f64 <= pw && h * down as f64 <= ph,
                "{w} x {h} on {paper:?}"
            );
            assert_eq!(
                faults(&tag::write(&sheet(3, w, h, paper)).unwrap()).1,
                [] as [String; 0]
            );
        }
    }
}

#[test]
fn a_label_that_cannot_be_is_refused_with_the_sizes_that_can() {
    for (w, h) in [
        (10.0, 37.0),
        (70.0, 900.0),
        (f64::NAN, 37.0),
        (f64::INFINITY, 20.0),
        (-70.0, 37.0),
    ] {
        let said = tag::write(&sheet(1, w, h, Paper::A4))
            .unwrap_err()
            .to_string();
        assert!(
            said.contains("40 to 190 mm wide and 20 to 250 mm high"),
            "{said}"
        );
    }
    assert_eq!(
        tag::write(&sheet(0, 70.0, 37.0, Paper::A4)),
        Err(SheetError::NoTags)
    );
    let mut long = sheet(1, 70.0, 37.0, Paper::A4);
    long.tags[0].code = "x".repeat(300);
    assert!(
        tag::write(&long)
            .unwrap_err()
            .to_string()
            .contains("at most 200 fit")
    );
}
