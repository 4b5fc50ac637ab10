//! Backups: making one, looking into one, putting one back, and asking for one when the last is old.

use evenwall_piece::piece::Moment;
use evenwall_piece::shop::ShopFact;
use evenwall_shelf::backup::Restored;

use super::RecordsAction;
use crate::app::{App, AppError};
use crate::question::{Choice, ChoiceStyle, Question};

/// The setting of the workshop that holds when the last backup was made, so that no device asks where another made one.
pub const LAST_BACKUP: &str = "last_backup";

/// The page about backups.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BackupsView {
    /// "Last backup 3 days ago", or that there is none yet.
    pub last: String,
    /// Where backups go; empty where no folder was chosen.
    pub folder: String,
    /// The whole paths of the backups there, the newest first, each with its name.
    pub backups: Vec<(String, String)>,
    /// What went wrong while listing them, or what the last backup or restore came to; empty where there is nothing to say.
    pub outcome: String,
    /// What is said where no folder was chosen or no backup is there; empty else.
    pub empty: String,
}

/// A name in a folder, as the folder is written.
pub(crate) fn whole(folder: &str, name: &str) -> String {
    let folder = folder.trim_end_matches(['/', '\\']);
    let between = if folder.contains('\\') && !folder.contains('/') {
        '\\'
    } else {
        '/'
    };
    format!("{folder}{between}{name}")
}

impl App {
    /// When the last backup was made, by whatever device.
    #[must_use]
    pub fn last_backup(&self) -> Option<Moment> {
        let text = self.shop().stored.get(LAST_BACKUP)?;
        chrono::DateTime::parse_from_rfc3339(text).ok()
    }

    /// A sentence that asks for a backup, where the last is older than the days of the device's settings, or there never was
    /// one in so many days, and something was recorded since; `None` where all is well, or where the turner set 0 days.
    #[must_use]
    pub fn backup_reminder(&self, now: Moment) -> Option<String> {
        let every = i64::from(self.device().backup_every_days);
        if every == 0 || self.is_demo() || self.store.read_only().is_some() {
            return None;
        }
        let old = |at: Moment| (now.date_naive() - at.date_naive()).num_days() >= every;
        let words = self.words();
        let noted = || {
            self.pieces
                .values()
                .flat_map(|p| &p.diary)
                .map(|e| e.noted_at)
        };
        match self.last_backup() {
            Some(at) if old(at) && noted().any(|n| n > at) => {
                let ago = self.dates(now).ago(at.date_naive());
                Some(words.with("records-backup-old", &[("ago", ago.into())]))
            }
            Some(_) => None,
            None => noted()
                .min()
                .filter(|first| old(*first))
                .map(|_| words.text("records-backup-never")),
        }
    }

    pub(crate) fn make_backup(&mut self, now: Moment) -> Result<(), AppError> {
        let folder = self.device().backup_folder.clone();
        if folder.is_empty() {
            return Err(AppError::Refused(
                self.words().text("records-backup-no-folder"),
            ));
        }
        self.states.records.outcome = None;
        let written = self.store.back_up(&folder, now)?;
        let name = written
            .path
            .file_name()
            .map(|n| n.to_string_lossy().into_owned())
            .unwrap_or_default();
        self.states.records.outcome = Some(self.words().with(
            "records-backup-done",
            &[("name", name.into()), ("n", written.files.into())],
        ));
        // The backup stands whether this line can be kept or not, and there is nothing in it to undo.
        let fact = ShopFact::Setting {
            key: LAST_BACKUP.into(),
            value: now.to_rfc3339(),
        };
        self.record_shop(now, vec![fact], now)?;
        self.nothing_to_undo();
        Ok(())
    }

    pub(crate) fn look_into_backup(&mut self, path: String, now: Moment) -> Result<(), AppError> {
        let checked = match self.store.check_backup(&path) {
            Ok(checked) => checked,
            // Nothing that trying again would mend: it is said on the spot.
            Err(error) => return Err(AppError::Refused(error.0)),
        };
        let words = self.words();
        let ago = self.dates(now).ago(checked.made_at.date_naive());
        let text = words.with(
            "records-restore-text",
            &[
                ("ago", ago.into()),
                ("pieces", checked.pieces.len().into()),
                ("photos", checked.photos.into()),
            ],
        );
        let question = Question {
            title: words.text("records-restore-title"),
            text,
            choices: vec![
                Choice {
                    label: words.text("records-restore-button"),
                    style: ChoiceStyle::Primary,
                    action: Some(RecordsAction::Restore(path.clone()).into()),
                },
                Choice {
                    label: words.text("action-cancel"),
                    style: ChoiceStyle::Plain,
                    action: None,
                },
            ],
            caution: false,
        };
        self.states.records.looked_into = Some((path, checked));
        self.ask(question);
        Ok(())
    }

    pub(crate) fn restore_backup(&mut self, path: &str, now: Moment) -> Result<(), AppError> {
        self.states.records.outcome = None;
        let restored = self.store.restore(path, now)?;
        self.refresh(now)?;
        // What came is told in full below.
        self.states.records.arrived = None;
        self.states.records.looked_into = None;
        self.states.records.outcome = Some(self.restored_words(&restored));
        Ok(())
    }

    fn restored_words(&self, restored: &Restored) -> String {
        let words = self.words();
        if restored.lines == 0 && restored.photos == 0 {
            return words.text("records-restored-nothing");
        }
        let mut said = vec![words.with(
            "records-restored",
            &[
                ("lines", restored.lines.into()),
                ("pieces", restored.new_pieces.into()),
                ("photos", restored.photos.into()),
            ],
        )];
        if restored.unreadable > 0 {
            said.push(words.with(
                "records-restored-unreadable",
                &[("n", restored.unreadable.into())],
            ));
        }
        if restored.left_out > 0 {
            said.push(words.with(
                "records-restored-left-out",
                &[("n", restored.left_out.into())],
            ));
        }
        said.join(" ")
    }

    /// The page about backups.
    #[must_use]
    pub fn backups_view(&self, now: Moment) -> BackupsView {
        let words = self.words();
        let folder = self.device().backup_folder.clone();
        let last = match self.last_backup() {
            Some(at) => {
                let ago = self.dates(now).ago(at.date_naive());
                words.with("records-backup-last", &[("ago", ago.into())])
            }
            None => words.text("records-backup-none"),
        };
        let (names, fault) = if folder.is_empty() {
            (Vec::new(), None)
        } else {
            match self.store.backups_in(&folder) {
                Ok(names) => (names, None),
                Err(error) => (Vec::new(), Some(error.0)),
            }
        };
        let empty = if folder.is_empty() {
            words.text("records-backup-no-folder")
        } else if names.is_empty() && fault.is_none() {
            words.text("records-backup-none-there")
        } else {
            String::new()
        };
        BackupsView {
            last,
            backups: names
                .into_iter()
                .map(|name| (whole(&folder, &name), name))
                .collect(),
            folder,
            outcome: fault
                .or_else(|| self.states.records.outcome.clone())
                .unwrap_or_default(),
            empty,
        }
    }
}
