//! Backup through the app: made, looked into, restored, asked for when old; and what goes wrong is a sentence.
#![allow(clippy::unwrap_used, clippy::expect_used)]
#![allow(clippy::disallowed_methods)] // a folder on a real disk

mod support_two_devices;

use std::fs;
use std::path::PathBuf;

use chrono::Duration;
use evenwall_app::action::Action;
use evenwall_app::device::DeviceSettings;
use evenwall_app::records::RecordsAction;
use evenwall_app::shop::ShopAction;
use support_two_devices::*;

struct One {
    temp: tempfile::TempDir,
    device: Device,
}

impl One {
    fn new() -> Self {
        let temp = tempfile::tempdir().unwrap();
        let mut device = Device::new(temp.path(), "a", 1);
        device.setting("cautions_read", "true");
        device.new_piece("K07");
        fs::create_dir(temp.path().join("stick")).unwrap();
        Self { temp, device }
    }

    fn stick(&self) -> PathBuf {
        self.temp.path().join("stick")
    }

    fn choose_folder(&mut self) {
        let settings = DeviceSettings {
            backup_folder: self.stick().to_string_lossy().into_owned(),
            ..self.device.seen().device().clone()
        };
        self.device.act(ShopAction::Device(settings));
    }

    fn view(&self) -> evenwall_app::records::backups::BackupsView {
        self.device.seen().backups_view(self.device.now)
    }
}

#[test]
fn a_backup_is_made_listed_looked_into_and_restored() {
    let mut one = One::new();
    assert!(one.view().empty.contains("Choose a folder"));
    one.device.act(RecordsAction::BackUp);
    assert!(
        one.device
            .seen()
            .question()
            .unwrap()
            .text
            .contains("Choose a folder")
    );
    one.device.act(Action::CloseQuestion);
    one.choose_folder();
    assert_eq!(one.view().last, "No backup yet");
    assert_eq!(one.view().empty, "There is no backup in this folder yet.");
    one.device.act(RecordsAction::BackUp);
    let view = one.view();
    assert_eq!(view.last, "Last backup today");
    assert!(
        view.outcome.contains("is written and was read back"),
        "{}",
        view.outcome
    );
    assert_eq!(view.backups.len(), 1);
    assert_eq!(
        one.device
            .seen()
            .undo()
            .last_done()
            .map(|s| s.said.contains("ackup")),
        Some(false),
        "nothing to undo"
    );

    // A piece is lost with its folder, and comes back.
    let id = one.device.id("K07");
    let before = one.device.state().0;
    fs::rename(
        one.device.shelf.join("pieces").join(id.as_str()),
        one.temp.path().join("gone"),
    )
    .unwrap();
    one.device.refresh();
    assert!(one.device.seen().piece(&id).is_none());
    one.device
        .act(RecordsAction::LookIntoBackup(view.backups[0].0.clone()));
    let question = one.device.seen().question().unwrap();
    assert!(
        question
            .text
            .starts_with("Made today: one piece, no photos."),
        "{}",
        question.text
    );
    one.device.act(Action::Choose(0));
    assert_eq!(one.device.state().0, before);
    assert!(
        one.view()
            .outcome
            .starts_with("One entry came back, with one piece"),
        "{}",
        one.view().outcome
    );
    one.device
        .act(RecordsAction::Restore(view.backups[0].0.clone()));
    assert_eq!(
        one.view().outcome,
        "Everything in this backup is here already."
    );
    assert_eq!(one.device.seen().words().problems(), []);
}

#[test]
fn a_damaged_backup_is_refused_with_a_sentence_and_touches_nothing() {
    let mut one = One::new();
    one.choose_folder();
    one.device.act(RecordsAction::BackUp);
    let path = one.view().backups[0].0.clone();
    let mut bytes = fs::read(&path).unwrap();
    let middle = bytes.len() / 3;
    bytes.truncate(middle);
    fs::write(&path, bytes).unwrap();
    let before = one.device.state();
    one.device.act(RecordsAction::LookIntoBackup(path));
    assert!(
        one.device
            .seen()
            .question()
            .unwrap()
            .text
            .contains("is not a backup of Evenwall")
    );
    assert_eq!(one.device.state(), before);
}

#[test]
fn a_folder_that_is_gone_can_be_tried_again() {
    let mut one = One::new();
    one.choose_folder();
    fs::remove_dir(one.stick()).unwrap();
    let now = one.device.now;
    one.device.app().apply(RecordsAction::BackUp.into(), now);
    assert!(
        one.device
            .seen()
            .save_error()
            .unwrap()
            .contains("not there any more")
    );
    fs::create_dir(one.stick()).unwrap();
    one.device.app().apply(Action::TryAgain, now);
    assert_eq!(one.device.seen().save_error(), None);
    assert_eq!(one.view().backups.len(), 1);
}

#[test]
fn an_old_backup_is_asked_for_only_where_something_was_recorded_since() {
    let mut one = One::new();
    one.choose_folder();
    let asks = |one: &One, days: i64| {
        one.device
            .seen()
            .backup_reminder(one.device.now + Duration::days(days))
    };
    assert_eq!(asks(&one, 29), None);
    assert_eq!(
        asks(&one, 30).unwrap(),
        "There is no backup of this shelf yet."
    );
    one.device.act(RecordsAction::BackUp);
    assert_eq!(asks(&one, 400), None, "nothing new since");
    let id = one.device.id("K07");
    one.device.now += Duration::days(1);
    one.device.note(&id, "since");
    assert_eq!(asks(&one, 5), None);
    assert!(
        asks(&one, 40)
            .unwrap()
            .starts_with("The last backup was made")
    );
    let never = DeviceSettings {
        backup_every_days: 0,
        ..one.device.seen().device().clone()
    };
    one.device.act(ShopAction::Device(never));
    assert_eq!(asks(&one, 400), None);
}
