//! Device fields: what is typed about this device and about files: its name, folders, times, the size of labels, care words.

use chrono::NaiveTime;
use evenwall_piece::piece::Moment;

use super::form::Draft;
use super::view::{FieldKind, FieldView};
use crate::app::{App, AppError};
use crate::records::RecordsAction;
use crate::records::import::ImportAction;

/// The smallest and the largest side of a label, mm: what still holds a code, and what lies on a sheet.
const LABEL_MM: (f64, f64) = (25.0, 190.0);

/// What can be typed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DeviceField {
    /// What this device is called.
    Name,
    /// The folder that documents and backups go to.
    Folder,
    /// The file of the calendar.
    CalendarFile,
    /// When its alarms ring.
    ReminderTime,
    /// The computer says nothing from then on.
    QuietFrom,
    /// It says nothing until then.
    QuietUntil,
    /// Width of a label.
    TagWidth,
    /// Height of a label.
    TagHeight,
    /// How to care for a finished piece.
    Care,
    /// A spreadsheet to move in from.
    ImportFile,
    /// A backup somewhere else.
    RestoreFile,
}

impl DeviceField {
    /// Stable key.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Name => "name",
            Self::Folder => "folder",
            Self::CalendarFile => "calendar-file",
            Self::ReminderTime => "reminder-time",
            Self::QuietFrom => "quiet-from",
            Self::QuietUntil => "quiet-until",
            Self::TagWidth => "tag-width",
            Self::TagHeight => "tag-height",
            Self::Care => "care",
            Self::ImportFile => "import-file",
            Self::RestoreFile => "restore-file",
        }
    }
}

/// Millimetres as they are typed.
pub(super) fn mm_text(mm: f64) -> String {
    // Sides of labels are whole or have a half.
    format!("{mm}")
}

impl App {
    /// What stands in the field as it opens.
    pub(super) fn device_text(&self, field: DeviceField) -> String {
        let device = self.device();
        let documents = || self.files.as_ref().and_then(|f| f.documents());
        match field {
            DeviceField::Name => device.name.clone(),
            DeviceField::Folder if device.backup_folder.is_empty() => {
                documents().unwrap_or_default()
            }
            DeviceField::Folder => device.backup_folder.clone(),
            DeviceField::CalendarFile if device.calendar_file.is_empty() => documents()
                .map(|folder| crate::records::backups::whole(&folder, "evenwall.ics"))
                .unwrap_or_default(),
            DeviceField::CalendarFile => device.calendar_file.clone(),
            DeviceField::ReminderTime => device.reminder_time.clone(),
            DeviceField::QuietFrom => device.quiet_from.clone(),
            DeviceField::QuietUntil => device.quiet_until.clone(),
            DeviceField::TagWidth => mm_text(device.tag_width_mm),
            DeviceField::TagHeight => mm_text(device.tag_height_mm),
            DeviceField::Care => self.care_words().join("\n"),
            DeviceField::ImportFile | DeviceField::RestoreFile => String::new(),
        }
    }

    /// The field of the form.
    pub(super) fn device_field(&self, draft: &Draft, field: DeviceField) -> FieldView {
        let words = self.words();
        let key = field.key();
        let kind = match field {
            DeviceField::TagWidth | DeviceField::TagHeight => FieldKind::Number,
            DeviceField::Care => FieldKind::Lines,
            _ => FieldKind::Text,
        };
        let example = match field {
            DeviceField::Name => "out-example-name",
            DeviceField::Folder => "out-example-folder",
            DeviceField::CalendarFile => "out-example-calendar",
            DeviceField::ReminderTime | DeviceField::QuietFrom | DeviceField::QuietUntil => {
                "out-example-time"
            }
            DeviceField::ImportFile => "log-path-example",
            DeviceField::RestoreFile => "out-example-backup",
            DeviceField::TagWidth | DeviceField::TagHeight | DeviceField::Care => "",
        };
        let label = format!("out-field-{key}");
        FieldView {
            note: words.text(&format!("out-about-{key}")),
            placeholder: if example.is_empty() {
                String::new()
            } else {
                words.text(example)
            },
            unit: match kind {
                FieldKind::Number => words.text("out-mm"),
                _ => String::new(),
            },
            ..self.field(draft, "value", kind, &label)
        }
    }

    fn read_time(&self, typed: &str) -> Result<String, String> {
        let typed = typed.trim().replace('.', ":");
        let whole = if typed.contains(':') {
            typed.clone()
        } else {
            format!("{typed}:00")
        };
        NaiveTime::parse_from_str(&whole, "%H:%M")
            .map(|t| t.format("%H:%M").to_string())
            .map_err(|_| self.words().with("out-no-time", &[("found", typed.into())]))
    }

    fn read_label_mm(&self, typed: &str) -> Result<f64, String> {
        let (least, most) = LABEL_MM;
        let read: Option<f64> = typed.trim().replace(',', ".").parse().ok();
        read.filter(|mm| (least..=most).contains(mm))
            .map(|mm| (mm * 2.0).round() / 2.0)
            .ok_or_else(|| {
                self.words().with(
                    "out-no-label",
                    &[
                        ("found", typed.trim().into()),
                        ("least", mm_text(least).into()),
                        ("most", mm_text(most).into()),
                    ],
                )
            })
    }

    /// A whole path outside the shelf, or a sentence; blank is none. A folder is asked about by a file in it.
    fn read_path(&self, typed: &str, inside: &str) -> Result<String, String> {
        let path = typed.trim();
        if path.is_empty() {
            return Ok(String::new());
        }
        let asked = if inside.is_empty() {
            path.to_owned()
        } else {
            crate::records::backups::whole(path, inside)
        };
        match self.store.read_outside(&asked) {
            Ok(_) => Ok(path.to_owned()),
            Err(error) => Err(error.0),
        }
    }

    /// Saves the form, or says what is wrong below its field.
    pub(super) fn save_device_field(
        &mut self,
        field: DeviceField,
        draft: &Draft,
        now: Moment,
    ) -> Result<(), AppError> {
        match self.keep_device_field(field, draft.typed("value"), now) {
            Ok(()) => {
                self.states.shop.draft = None;
                Ok(())
            }
            // Trying the same again mends nothing: it is said where it is typed.
            Err(AppError::Refused(fault)) => {
                if let Some(open) = &mut self.states.shop.draft {
                    open.errors.insert("value".into(), fault);
                }
                Ok(())
            }
            Err(other) => Err(other),
        }
    }

    fn keep_device_field(
        &mut self,
        field: DeviceField,
        typed: &str,
        now: Moment,
    ) -> Result<(), AppError> {
        let mut device = self.device().clone();
        match field {
            DeviceField::Name => return self.name_device(typed, now),
            DeviceField::Care => {
                return self.set_care_words(Some(typed.to_owned()), now);
            }
            DeviceField::ImportFile => {
                let open = ImportAction::Open(typed.trim().to_owned());
                return self.refused_here(open.into(), now);
            }
            DeviceField::RestoreFile => {
                let look = RecordsAction::LookIntoBackup(typed.trim().to_owned());
                return self.refused_here(look, now);
            }
            DeviceField::Folder => {
                device.backup_folder = self
                    .read_path(typed, "evenwall.html")
                    .map_err(AppError::Refused)?;
            }
            DeviceField::CalendarFile => {
                device.calendar_file = self.read_path(typed, "").map_err(AppError::Refused)?;
            }
            DeviceField::ReminderTime => {
                device.reminder_time = self.read_time(typed).map_err(AppError::Refused)?;
            }
            DeviceField::QuietFrom => {
                device.quiet_from = self.read_time(typed).map_err(AppError::Refused)?;
            }
            DeviceField::QuietUntil => {
                device.quiet_until = self.read_time(typed).map_err(AppError::Refused)?;
            }
            DeviceField::TagWidth => {
                device.tag_width_mm = self.read_label_mm(typed).map_err(AppError::Refused)?;
            }
            DeviceField::TagHeight => {
                device.tag_height_mm = self.read_label_mm(typed).map_err(AppError::Refused)?;
            }
        }
        self.set_device(device)?;
        if field == DeviceField::CalendarFile && !self.device().calendar_file.is_empty() {
            // At once, so that a place that does not do is said while it is being chosen.
            return self.refused_here(RecordsAction::SaveCalendar, now);
        }
        Ok(())
    }

    /// Carries out what reads or writes a file; what the file system says is said in the form.
    fn refused_here(&mut self, action: RecordsAction, now: Moment) -> Result<(), AppError> {
        self.apply_records(action, now)
            .map_err(|error| match error {
                AppError::NotSaved(text) | AppError::Refused(text) => AppError::Refused(text),
            })
    }
}
