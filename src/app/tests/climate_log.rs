//! Promises of the air over time: a logger's file is looked through before it is kept, kept at once, and undone at once.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod support_piece;
mod support_shop;

use std::collections::BTreeMap;
use std::fmt::Write as _;

use evenwall_app::action::Action;
use evenwall_app::files::{FileError, Files, ListedFile};
use evenwall_app::shop::{AirCurve, ShopAction};
use evenwall_piece::vocabulary::Room;
use support_shop::Shop;

/// Files that a test made up.
struct Made(BTreeMap<String, Vec<u8>>);

impl Files for Made {
    fn listed(&self) -> Vec<ListedFile> {
        let listed = self.0.keys().map(|path| ListedFile {
            path: path.clone(),
            name: path.clone(),
            folder: "Downloads".into(),
            written: None,
        });
        listed.collect()
    }

    fn read(&self, path: &str) -> Result<Vec<u8>, FileError> {
        match path {
            "/huge.csv" => Err(FileError::TooLarge { most: 40_000_000 }),
            "/locked.csv" => Err(FileError::Refused("permission denied".into())),
            _ => self.0.get(path).cloned().ok_or(FileError::NotThere),
        }
    }
}

/// Hourly readings of so many days that end before 2026-03-10.
fn hourly(days: i64) -> String {
    let end = chrono::NaiveDate::from_ymd_opt(2026, 3, 10)
        .unwrap()
        .and_time(chrono::NaiveTime::MIN);
    let mut text = String::from("time,temperature °C,humidity %\n");
    for hour in (1..=days * 24).rev() {
        let at = end - chrono::Duration::hours(hour);
        let warm = if hour % 2 == 0 { 14.0 } else { 16.0 };
        writeln!(text, "{},{warm},60", at.format("%Y-%m-%d %H:%M")).unwrap();
    }
    text
}

fn on(files: &[(&str, &str)]) -> Shop {
    let mut shop = Shop::on("climate-log");
    let files = files
        .iter()
        .map(|(name, text)| ((*name).to_owned(), text.as_bytes().to_vec()));
    shop.hands.app.bring_files(Box::new(Made(files.collect())));
    shop
}

fn readings(shop: &Shop) -> usize {
    shop.hands.app.shop().climate.len()
}

fn plain(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

#[test]
fn a_file_is_looked_through_kept_by_the_day_and_undone_in_one_go() {
    let mut shop = on(&[("shed.csv", &hourly(60))]);
    assert_eq!(shop.row("file-0").title, "shed.csv");
    shop.touch("file-0");
    for (id, value) in [
        ("name", "shed.csv"),
        ("readings", "1440"),
        ("from", "Fri 9 Jan"),
        ("to", "Mon 9 Mar"),
        ("temps", "14 to 16 °C"),
        ("rhs", "60 %"),
    ] {
        assert_eq!(plain(&shop.row(id).value), value, "{id}");
    }
    assert!(shop.row("log-in-shop").selected && shop.row("log-celsius").selected);
    assert!(shop.row("log-per-day").selected);
    assert_eq!(shop.row("log-per-day").note, "60 readings");
    assert_eq!(shop.row("log-per-hour").note, "1440 readings");
    shop.touch("log-in-house");
    assert_eq!(shop.page().primary.unwrap().title, "Keep 60 readings");
    assert_eq!(readings(&shop), 0, "looking records nothing");
    shop.touch("keep");
    assert_eq!(shop.page().key, "climate");
    assert_eq!(shop.hands.said(), "House: 60 readings of a logger");
    assert_eq!(readings(&shop), 60);
    assert_eq!(shop.hands.app.shop().history.len(), 2, "one line");
    let (at, last) = shop.hands.app.shop().last_climate(Room::House).unwrap();
    assert_eq!(at.to_rfc3339(), "2026-03-09T12:00:00+00:00");
    assert!((last.temp_c - 15.0).abs() < 1e-9 && (last.rh_pct - 60.0).abs() < 1e-9);
    let after = shop.page();
    shop.hands.act(Action::Undo);
    assert_eq!(readings(&shop), 0);
    shop.hands.act(Action::Redo);
    assert_eq!(shop.page(), after);
    shop.hands.no_word_is_absent();
}

#[test]
fn what_an_earlier_file_gave_is_not_kept_twice_but_the_other_room_is_another() {
    let mut shop = on(&[("a.csv", &hourly(40)), ("b.csv", &hourly(60))]);
    shop.touch("file-0");
    shop.touch("keep");
    shop.go("climate-log");
    shop.touch("file-1");
    assert_eq!(shop.page().primary.unwrap().title, "Keep 20 readings");
    assert!(
        shop.row("log-there")
            .title
            .starts_with("40 are there already")
    );
    shop.touch("log-in-house");
    assert_eq!(shop.page().primary.unwrap().title, "Keep 60 readings");
    shop.touch("log-in-shop");
    // By the hour a day that is there as one mean is there too.
    shop.touch("log-per-hour");
    assert_eq!(shop.page().primary.unwrap().title, "Keep 480 readings");
    shop.touch("log-per-day");
    shop.touch("keep");
    shop.go("climate-log");
    shop.touch("file-1");
    assert!(shop.page().primary.is_none(), "nothing is left to keep");
    assert!(shop.row("log-there").title.starts_with("60 are there"));
}

#[test]
fn a_full_disk_loses_nothing_and_can_be_tried_again() {
    let mut shop = on(&[("shed.csv", &hourly(30))]);
    shop.touch("file-0");
    shop.hands.fail(true);
    shop.touch("keep");
    assert!(shop.hands.app.save_error().is_some());
    assert_eq!(readings(&shop), 0);
    assert_eq!(shop.page().key, "climate-log");
    assert_eq!(shop.row("name").value, "shed.csv", "the file is still open");
    shop.hands.fail(false);
    shop.hands.act(Action::TryAgain);
    assert_eq!(readings(&shop), 30);
    assert_eq!(shop.hands.app.save_error(), None);
}

#[test]
fn a_date_that_may_be_read_both_ways_is_asked_about() {
    let text = "date,temperature,humidity\n03/02/2026 10:00,15,60\n04/02/2026 10:00,15,61\n";
    let mut shop = on(&[("us.csv", text)]);
    shop.touch("file-0");
    assert!(shop.page().primary.is_none());
    let section = |shop: &Shop| {
        let sections = shop.page().sections;
        sections.into_iter().find(|s| s.key == "order").unwrap()
    };
    assert!(
        section(&shop).note.contains("03/02/2026"),
        "{:?}",
        section(&shop)
    );
    shop.touch("log-month-first");
    assert_eq!(shop.row("from").value, "Mon 2 Mar");
    assert!(shop.row("log-month-first").selected);
    shop.touch("log-day-first");
    assert_eq!(shop.row("from").value, "Tue 3 Feb");
    let page = format!("{:?}", shop.page());
    assert!(
        page.contains("does not name the unit"),
        "Celsius was assumed"
    );
    shop.touch("log-fahrenheit");
    assert!(!format!("{:?}", shop.page()).contains("does not name the unit"));
    assert_eq!(
        plain(&shop.row("temps").value),
        "-9 °C".replace('-', "\u{2212}")
    );
}

#[test]
fn every_wrong_line_says_what_was_found_and_what_is_allowed() {
    let wrong = "time;temperature;humidity\n\
        2026-02-01 10:00;15;60\n\
        2026-02-01 11:00;hot;60\n\
        2026-02-01 12:00;15;140\n\
        noon;15;60\n\
        2026-02-01 13:00;99;60\n\
        2026-02-01 14:00;15\n";
    let mut shop = on(&[("bad.csv", wrong)]);
    shop.touch("file-0");
    assert_eq!(shop.row("readings").value, "1");
    assert_eq!(shop.row("faulty").value, "5");
    for (id, part) in [
        ("line-3", "Line 3: found “hot” for the temperature"),
        ("line-4", "0 to 100 % are allowed"),
        ("line-5", "“noon” for the time. Write it like 2026-01-31"),
        ("line-6", "-20 °C to 60 °C are allowed"),
        ("line-7", "2 columns, but 3 are needed"),
    ] {
        let said = plain(&shop.row(id).title);
        assert!(said.contains(part), "{id}: {said}");
    }
    assert_eq!(shop.page().primary.unwrap().title, "Keep 1 reading");
    shop.hands.no_word_is_absent();
}

#[test]
fn a_file_of_which_nothing_can_be_read_says_why_and_offers_another() {
    for (text, part) in [
        ("", "The file is empty"),
        ("shopping\nlist\n", "No columns"),
        (
            "time,temperature,humidity\n2026-02-01 10:00,15,0.55\n",
            "Multiply",
        ),
        (
            "time,temperature,humidity\nnoon,15,55\n",
            "could be read. Line 2",
        ),
        (
            "time,temperature,humidity\n13/02/2026 10:00,15,55\n02/13/2026 10:00,15,55\n02/03/2026 10:00,1,2\n",
            "only have the day first",
        ),
    ] {
        let mut shop = on(&[("odd.csv", text)]);
        shop.touch("file-0");
        let page = format!("{:?}", shop.page());
        assert!(page.contains(part), "{part}: {page}");
        assert!(shop.page().primary.is_none());
        shop.touch("another");
        assert_eq!(shop.row("file-0").title, "odd.csv");
        shop.hands.no_word_is_absent();
    }
}

#[test]
fn a_path_is_typed_where_the_file_lies_elsewhere() {
    let mut shop = on(&[("/home/me/shed.csv", &hourly(30))]);
    shop.enter("path", &[("path", "")]);
    assert!(shop.field("path").error.contains("Nothing was typed"));
    shop.fill(&[("path", "/nowhere.csv")]);
    shop.save();
    assert!(
        shop.field("path")
            .error
            .contains("There is no file /nowhere.csv")
    );
    for (path, part) in [
        ("/huge.csv", "larger than 40 MB"),
        ("/locked.csv", "cannot be read: permission denied"),
    ] {
        shop.fill(&[("path", path)]);
        shop.save();
        assert!(shop.field("path").error.contains(part), "{path}");
    }
    shop.fill(&[("path", " /home/me/shed.csv ")]);
    shop.save();
    assert!(shop.is_closed());
    assert_eq!(shop.row("name").value, "shed.csv");
    // A file that is gone by the time it is touched is refused with the reason.
    shop.act(ShopAction::LogForget);
    shop.act(ShopAction::LogFile("/gone.csv".into()));
    assert!(
        shop.hands
            .app
            .question()
            .unwrap()
            .text
            .contains("/gone.csv")
    );
    // A device without files says so.
    let mut bare = Shop::on("climate-log");
    assert!(bare.row("none").title.contains("No CSV file"));
    bare.enter("path", &[("path", "/home/me/shed.csv")]);
    assert!(bare.field("path").error.contains("offers no files"));
}

#[test]
fn an_hour_that_is_not_over_is_left_for_the_next_time() {
    // It is 08:42 on 12 March: the day is not over, and neither is the hour from 8.
    let text = "time,temperature °C,humidity\n2026-03-12 07:10,15,60\n2026-03-12 08:10,15,60\n2026-03-14 08:10,15,60\n";
    let mut shop = on(&[("today.csv", text)]);
    shop.touch("file-0");
    assert!(
        shop.row("log-per-hour").selected,
        "a short file is kept by the hour"
    );
    assert_eq!(shop.page().primary.unwrap().title, "Keep 1 reading");
    assert!(
        shop.row("log-unfinished")
            .title
            .starts_with("2 are of a time")
    );
    shop.touch("log-per-day");
    assert!(shop.page().primary.is_none());
}

#[test]
fn two_readings_of_a_room_make_a_chart_of_what_is_chosen() {
    let mut shop = Shop::on("climate");
    let chart = |shop: &Shop, room: &str| {
        let sections = shop.page().sections;
        sections.into_iter().find(|s| s.key == room).unwrap().chart
    };
    shop.enter(
        "new-reading",
        &[("temp", "10"), ("rh", "70"), ("when", "yesterday")],
    );
    assert!(shop.page().curves.is_empty() && chart(&shop, "shop").is_none());
    shop.enter("new-reading", &[("temp", "16"), ("rh", "50")]);
    let moisture = chart(&shop, "shop").unwrap();
    assert!(chart(&shop, "house").is_none());
    assert_eq!(moisture.dots.len(), 2);
    assert!(
        moisture.label.starts_with("Shop, Settles: from "),
        "{}",
        moisture.label
    );
    assert!(
        moisture
            .y_ticks
            .iter()
            .all(|t| plain(&t.text).ends_with(" %"))
    );
    let of = |curve: AirCurve| shop.page().touch_curve(curve.key()).unwrap();
    let (humidity, temperature) = (of(AirCurve::Humidity), of(AirCurve::Temperature));
    shop.hands.act(humidity);
    let rh = chart(&shop, "shop").unwrap();
    // 70 % above, 50 % below, some room round them.
    assert!(rh.dots[0].1 < 0.2 && rh.dots[1].1 > 0.8, "{rh:?}");
    shop.hands.act(temperature);
    let celsius = chart(&shop, "shop").unwrap();
    assert!(celsius.y_ticks.iter().all(|t| t.text.ends_with("°C")));
    shop.go("units");
    shop.touch("temperature-unit-fahrenheit");
    shop.go("climate");
    let action = shop.page().touch_curve("temperature").unwrap();
    shop.hands.act(action);
    let f = chart(&shop, "shop").unwrap();
    assert!(
        f.y_ticks
            .iter()
            .any(|t| plain(&t.text) == "60 °F" && (0.0..=1.0).contains(&t.at)),
        "{f:?}"
    );
}

#[test]
fn a_full_size_file_is_kept_by_the_day_in_one_line() {
    // 199,000 readings, one every ten minutes: close to the most that is read.
    let end = chrono::NaiveDate::from_ymd_opt(2026, 3, 10)
        .unwrap()
        .and_time(chrono::NaiveTime::MIN);
    let mut text = String::from("time,temperature °C,humidity %\n");
    for n in (1..=199_000_i64).rev() {
        let at = end - chrono::Duration::minutes(10 * n);
        writeln!(
            text,
            "{},{},{}",
            at.format("%Y-%m-%d %H:%M"),
            n % 20,
            40 + n % 30
        )
        .unwrap();
    }
    let mut shop = on(&[("long.csv", &text)]);
    shop.touch("file-0");
    assert_eq!(shop.row("readings").value, "199000");
    assert!(
        shop.rows().iter().all(|r| r.id != "log-per-hour"),
        "too many hours"
    );
    shop.touch("keep");
    assert_eq!(readings(&shop), 1382);
    let chart = shop.page().sections.remove(0).chart.unwrap();
    assert!(chart.dots.is_empty() && chart.line.matches(['M', 'L']).count() <= 300);
}
