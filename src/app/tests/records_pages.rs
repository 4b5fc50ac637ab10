//! Promises of the pages about records: a folder is asked for first, a report carries its photos, the calendar follows what
//! is recorded, and the computer speaks once and never at night.
#![allow(clippy::unwrap_used, clippy::expect_used)]
#![allow(clippy::disallowed_methods)] // files on a real disk

mod support_photos;

use std::path::PathBuf;

use chrono::Duration;
use evenwall_app::action::Action;
use evenwall_app::device::DeviceSettings;
use evenwall_app::piece::PieceAction;
use evenwall_app::records::report::Version;
use evenwall_app::route::Page;
use evenwall_app::shop::view::ShopView;
use evenwall_app::shop::{DeviceField, FormOf, ShopAction, WriteOut};
use evenwall_piece::photo::PhotoOn;
use evenwall_piece::stage::Stage;
use support_photos::{Shop, now, on_flaw};

fn page(shop: &Shop) -> ShopView {
    shop.app.shop_page_view(now())
}

fn settings(shop: &mut Shop, change: impl FnOnce(&mut DeviceSettings)) {
    let mut device = shop.app.device().clone();
    change(&mut device);
    shop.act(ShopAction::Device(device).into());
}

fn folder() -> (tempfile::TempDir, String) {
    let folder = tempfile::tempdir().unwrap();
    let text = folder.path().to_string_lossy().into_owned();
    (folder, text)
}

/// Into the bag, so that something falls due.
fn bagged() -> Shop {
    let mut shop = Shop::new();
    let piece = shop.piece.clone();
    shop.act(Action::Piece(PieceAction::MoveTo {
        piece,
        stage: Stage::Bag,
        day: None,
        sure: true,
    }));
    shop
}

#[test]
fn a_report_asks_for_a_folder_first_and_then_carries_its_photos() {
    let mut shop = Shop::new();
    let (one, two) = (shop.picture("one.jpg", 1), shop.picture("two.jpg", 2));
    shop.import(on_flaw(), &[&one]);
    shop.import(PhotoOn::Portrait, &[&two]);
    let piece = shop.piece.clone();
    shop.act(Action::Open(Page::Out(piece.clone())));
    let write = || ShopAction::Write(WriteOut::Report(piece.clone(), Version::Buyer)).into();
    shop.act(write());
    assert!(page(&shop).form.unwrap().title.contains("Folder"));
    shop.act(ShopAction::Typed("value".into(), "documents".into()).into());
    shop.act(ShopAction::Save.into());
    let form = page(&shop).form.unwrap();
    assert!(form.fields[0].error.contains("whole path"), "{form:?}");
    let (_keep, text) = folder();
    shop.act(ShopAction::Typed("value".into(), text.clone()).into());
    shop.act(ShopAction::Save.into());
    assert!(page(&shop).form.is_none());
    shop.act(write());
    let path = PathBuf::from(&text).join(shop.app.report_file_name(&piece));
    let report = std::fs::read_to_string(path).unwrap();
    assert_eq!(report.matches("data:image/jpeg").count(), 2);
    // What came of it belongs to this page and is gone on the next.
    assert_eq!(page(&shop).sections[0].key, "outcome");
    shop.act(Action::Open(Page::ShopPage("tables")));
    assert_ne!(page(&shop).sections[0].key, "outcome");
}

#[test]
fn the_calendar_follows_what_is_recorded_and_is_written_only_where_it_changed() {
    let mut shop = bagged();
    let (_keep, text) = folder();
    let file = PathBuf::from(&text).join("evenwall.ics");
    settings(&mut shop, |d| {
        d.calendar_file = file.to_string_lossy().into_owned();
    });
    shop.app.keep_calendar(now());
    let first = std::fs::read_to_string(&file).unwrap();
    assert!(first.contains("BEGIN:VEVENT"), "{first}");
    shop.app.keep_calendar(now() + Duration::minutes(1));
    assert_eq!(std::fs::read_to_string(&file).unwrap(), first);
    settings(&mut shop, |d| d.reminder_time = "07:00".into());
    shop.app.keep_calendar(now() + Duration::minutes(2));
    assert_ne!(std::fs::read_to_string(&file).unwrap(), first);
    std::fs::write(&file, "BEGIN:VCALENDAR\nEND:VCALENDAR\n").unwrap();
    shop.app.keep_calendar(now());
    let fault = shop.app.calendar_fault().unwrap();
    assert!(fault.contains("another calendar"), "{fault}");
    shop.act(Action::Open(Page::ShopPage("reminders")));
    assert_eq!(page(&shop).sections[0].key, "fault");
    assert!(
        std::fs::read_to_string(&file)
            .unwrap()
            .starts_with("BEGIN:VCALENDAR\nEND")
    );
}

#[test]
fn a_form_about_this_device_says_what_is_wrong_below_its_field() {
    let mut shop = Shop::new();
    shop.act(Action::Open(Page::ShopPage("reminders")));
    for (field, wrong, right) in [
        (DeviceField::ReminderTime, "25:00", "7.30"),
        (DeviceField::QuietFrom, "late", "22"),
        (DeviceField::TagWidth, "3", "62,5"),
        (DeviceField::TagHeight, "", "30"),
    ] {
        shop.act(ShopAction::Form(FormOf::Device(field)).into());
        shop.act(ShopAction::Typed("value".into(), wrong.into()).into());
        shop.act(ShopAction::Save.into());
        let form = page(&shop).form.unwrap();
        assert!(form.fields[0].error.contains(wrong), "{field:?}: {form:?}");
        shop.act(ShopAction::Typed("value".into(), right.into()).into());
        shop.act(ShopAction::Save.into());
        assert!(page(&shop).form.is_none(), "{field:?}");
    }
    let device = shop.app.device();
    assert_eq!(
        (device.reminder_time.as_str(), device.quiet_from.as_str()),
        ("07:30", "22:00")
    );
    assert!(
        (device.tag_width_mm - 62.5).abs() < 1e-9 && (device.tag_height_mm - 30.0).abs() < 1e-9
    );
}

#[test]
fn the_computer_speaks_once_a_day_and_never_at_night() {
    let mut shop = bagged();
    let later = now() + Duration::days(60);
    let night = later + Duration::hours(13);
    assert!(shop.app.is_quiet(night) && !shop.app.is_quiet(later));
    assert_eq!(shop.app.take_reminder(night), None);
    let said = shop.app.take_reminder(later).unwrap();
    assert!(!said.title.is_empty());
    assert_eq!(shop.app.take_reminder(later + Duration::hours(1)), None);
    assert!(shop.app.take_reminder(later + Duration::days(1)).is_some());
    settings(&mut shop, |d| d.notify = false);
    assert_eq!(shop.app.take_reminder(later + Duration::days(2)), None);
}
