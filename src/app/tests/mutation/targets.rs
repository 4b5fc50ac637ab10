//! Targets: what reads files that others may have damaged or written to harm, each driven to the end of what it feeds.

use std::path::Path;
use std::sync::Arc;

use chrono::DateTime;
use evenwall_app::action::Action;
use evenwall_app::app::App;
use evenwall_app::demo;
use evenwall_app::device::DeviceSettings;
use evenwall_app::route::Page;
use evenwall_app::shelf_store::ShelfStore;
use evenwall_piece::climate_log::{Told, read_climate_log};
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::Moment;
use evenwall_shelf::disk::Disk;
use evenwall_shelf::faulty::FaultyDisk;
use evenwall_shelf::verify::verify;

use super::{Outcome, Target, words_of};

const SHELF: &str = "/shelf";
const SHELF_FILE: &[u8] = br#"{"format":"evenwall-shelf","version":1}"#;

const FACT_WORDS: &[&str] = &[
    "created",
    "detail",
    "stage_moved",
    "reading",
    "stations",
    "weighed",
    "look",
    "flaw_found",
    "flaw_treated",
    "amends",
    "retracts",
    "ended",
    "deleted",
    "undeleted",
    "paused",
    "floor",
    "bag",
    "air",
    "true",
    "hollow",
    "shape",
    "sealed",
    "damp",
    "wet",
    "nothing",
    "lost",
    "device",
    "seq",
    "facts",
    "wall_mm",
    "mass_g",
    "length_mm",
    "clock",
    "station",
    "setting",
    "climate",
    "temp_c",
    "rh_pct",
    "jaws",
    "bar",
    "wood",
    "away",
    "back",
    "outline",
    "height",
    "diameter",
];

fn now() -> Moment {
    DateTime::parse_from_rfc3339("2026-03-12T09:00:00+00:00").unwrap()
}

fn disk_with(files: &[(&str, &[u8])]) -> FaultyDisk {
    let disk = FaultyDisk::new();
    for folder in [
        "/shelf",
        "/shelf/shop",
        "/shelf/pieces",
        "/shelf/pieces/k07",
        "/device",
    ] {
        disk.create_folder(Path::new(folder)).unwrap();
    }
    for (name, bytes) in files {
        disk.write(Path::new(name), bytes).unwrap();
    }
    disk
}

fn store(disk: &FaultyDisk) -> Result<ShelfStore, String> {
    let random = Box::new(|| 7);
    ShelfStore::open_on(
        Arc::new(disk.clone()),
        Path::new(SHELF),
        Path::new("/device"),
        [9; 16],
        random,
    )
    .map_err(|e| e.to_string())
}

/// Opens the shelf as the program does, looks at every page, records, and looks through it with verify.
fn whole_app(disk: &FaultyDisk) -> Outcome {
    let mut outcome = Outcome::new();
    let mut say = |text: String| words_of(&text, &mut outcome);
    let verified = verify(disk, Path::new(SHELF), &mut |p| say(p.what.to_string()));
    if let Err(e) = verified {
        say(e.to_string());
    }
    let opened =
        store(disk).and_then(|s| App::open(Box::new(s), false, now()).map_err(|e| e.to_string()));
    let mut app = match opened {
        Ok(app) => app,
        Err(sentence) => {
            say(sentence);
            return outcome;
        }
    };
    say(app.problems().join(" "));
    say(format!(
        "{:?} {:?}",
        app.today_view(now()),
        app.pieces_view(now())
    ));
    say(format!(
        "{:?} {:?}",
        app.shop_view(now()),
        app.away_view(now())
    ));
    let ids: Vec<PieceId> = app.pieces().map(|p| p.id.clone()).collect();
    for id in ids {
        pages(&mut app, &id, &mut say);
    }
    outcome
}

fn pages(app: &mut App, id: &PieceId, say: &mut dyn FnMut(String)) {
    let mut at = |page: Page, see: &dyn Fn(&App) -> String| {
        app.apply(Action::Open(page), now());
        say(see(app));
    };
    at(Page::Piece(id.clone()), &|a| {
        format!("{:?}", a.piece_view(now()))
    });
    at(Page::Diary(id.clone()), &|a| {
        format!("{:?}", a.diary_view(id, now()))
    });
    at(Page::Details(id.clone()), &|a| {
        format!("{:?}", a.details_view(now()))
    });
    at(Page::Stages(id.clone()), &|a| {
        format!("{:?}", a.stages_view(now()))
    });
    at(Page::Wall(id.clone()), &|a| {
        format!("{:?}", a.wall_view(now()))
    });
    at(Page::WallSummary(id.clone()), &|a| {
        format!("{:?}", a.wall_summary_view(now()))
    });
    at(Page::Outline(id.clone()), &|a| {
        format!("{:?}", a.outline_view(now()))
    });
    at(Page::Flaws(id.clone()), &|a| {
        format!("{:?}", a.flaws_view(now()))
    });
    at(Page::Weigh(id.clone()), &|a| {
        format!("{:?}", a.weigh_view(now()))
    });
    at(Page::Truing(id.clone()), &|a| {
        format!("{:?}", a.true_view(now()))
    });
    at(Page::Finishing(id.clone()), &|a| {
        format!("{:?}", a.finish_view(now()))
    });
    at(Page::PlanOf(id.clone()), &|a| {
        format!("{:?}", a.plan_view(now()))
    });
    at(Page::Drying(id.clone()), &|a| {
        format!("{:?}", a.drying_view(now()))
    });
}

/// The journals of the demo: of the shop, and of each piece.
fn demo_journals() -> (Vec<u8>, Vec<Vec<u8>>) {
    let disk = disk_with(&[("/shelf/shelf.json", SHELF_FILE)]);
    demo::fill(&mut store(&disk).unwrap(), now()).unwrap();
    let journal = |folder: &Path| {
        let name = disk.list(folder).unwrap().into_iter().next()?.name;
        Some(disk.read(&folder.join(name)).unwrap())
    };
    let shop = journal(Path::new("/shelf/shop")).unwrap();
    let pieces = disk.list(Path::new("/shelf/pieces")).unwrap();
    let pieces = pieces
        .into_iter()
        .filter_map(|e| journal(&Path::new("/shelf/pieces").join(e.name)));
    (shop, pieces.collect())
}

/// All targets.
pub fn all() -> Vec<Target> {
    let (shop, pieces) = demo_journals();
    vec![
        Target {
            name: "piece journal",
            seeds: pieces,
            words: FACT_WORDS,
            run: Box::new(|input| {
                whole_app(&disk_with(&[
                    ("/shelf/shelf.json", SHELF_FILE),
                    ("/shelf/pieces/k07/d.jsonl", input),
                ]))
            }),
        },
        Target {
            name: "shop journal",
            seeds: vec![shop],
            words: FACT_WORDS,
            run: Box::new(|input| {
                whole_app(&disk_with(&[
                    ("/shelf/shelf.json", SHELF_FILE),
                    ("/shelf/shop/d.jsonl", input),
                ]))
            }),
        },
        Target {
            name: "shelf.json",
            seeds: vec![
                SHELF_FILE.to_vec(),
                br#"{"version":2,"format":"evenwall-shelf","x":[{}]}"#.to_vec(),
            ],
            words: &["format", "version", "evenwall-shelf"],
            run: Box::new(|input| whole_app(&disk_with(&[("/shelf/shelf.json", input)]))),
        },
        Target {
            name: "device settings",
            seeds: vec![DeviceSettings::default().to_json().into_bytes()],
            words: &[
                "theme",
                "dark",
                "light",
                "inch-fraction",
                "pound-ounce",
                "plan",
                "en-US",
                "text_scale",
                "pith",
            ],
            run: Box::new(|input| {
                let disk = disk_with(&[
                    ("/shelf/shelf.json", SHELF_FILE),
                    ("/device/settings.json", input),
                ]);
                let app = App::open(Box::new(store(&disk).unwrap()), false, now()).unwrap();
                let mut outcome = Outcome::new();
                let text = String::from_utf8_lossy(input);
                words_of(
                    &format!(
                        "{:?} {:?}",
                        DeviceSettings::from_json(&text),
                        app.plan_view(now())
                    ),
                    &mut outcome,
                );
                outcome
            }),
        },
        climate(),
    ]
}

fn climate() -> Target {
    let seeds: [&str; 4] = [
        "time,temperature,humidity\n2026-03-01 10:00,18.5,62\n2026-03-01 11:00,18.6,61.5\n",
        "Datum;Temperatur (C);Feuchte %\n01.03.2026 10:00;18,5;62,1\n31.03.2026 11:00;18,6;61,9\n",
        "\u{feff}\"Date\"\t\"Temp F\"\t\"RH\"\r\n\"03/14/2026 1:05 PM\"\t\"65.3\"\t\"55\"\r\n\"03/15/2026 1:05 PM\"\t\"65.3\"\t\"54\"\r\n",
        "2026-03-01T10:00:00+01:00,18.5,62\n2026-03-29T02:30:00+02:00,18.6,61\n",
    ];
    Target {
        name: "climate CSV",
        seeds: seeds.map(|s| s.as_bytes().to_vec()).to_vec(),
        words: &[
            "time",
            "temperature",
            "humidity",
            "F",
            "PM",
            "AM",
            "Celsius",
            ";",
            "\t",
            ",",
            "\"",
            "\r",
            "%",
        ],
        run: Box::new(|input| {
            let mut outcome = Outcome::new();
            let text = String::from_utf8_lossy(input);
            match read_climate_log(&text, Told::default()) {
                Ok(log) => {
                    let faults: Vec<_> = log.faults.iter().map(|f| kind(&f.fault)).collect();
                    words_of(
                        &format!("read {:?} {:?} {faults:?}", log.order, log.unit),
                        &mut outcome,
                    );
                    outcome.push(format!(
                        "offsets {}",
                        log.readings
                            .iter()
                            .filter(|r| r.offset.is_some())
                            .count()
                            .min(3)
                    ));
                    assert!(
                        log.readings.windows(2).all(|w| w[0].at < w[1].at),
                        "readings run by time"
                    );
                }
                Err(e) => outcome.push(kind(&e)),
            }
            outcome
        }),
    }
}

/// The name of an error's kind, without what was found.
fn kind(error: &impl std::fmt::Debug) -> String {
    let text = format!("{error:?}");
    text.split(|c: char| !c.is_alphanumeric())
        .next()
        .unwrap_or_default()
        .to_owned()
}
