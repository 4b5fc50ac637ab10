//! The view of the diary: final text, newest entry first.

use evenwall_piece::diary::DiaryEntry;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::ids::PieceId;
use evenwall_piece::piece::{Moment, Piece};

use super::{Filter, entry_text};
use crate::app::App;

/// One entry as shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct EntryView {
    /// Its id.
    pub id: String,
    /// The day above it, where it is the first of its day; else empty.
    pub day: String,
    /// Local time of day.
    pub time: String,
    /// Name of its icon.
    pub icon: &'static str,
    /// What happened.
    pub title: String,
    /// A second line; may be empty.
    pub note: String,
    /// What it said before, oldest first; shown struck through.
    pub earlier: Vec<String>,
    /// "written down Thu 12"; empty where it was noted the same day.
    pub noted: String,
    /// Which device wrote it; empty while only one device ever wrote to this shelf.
    pub device: String,
    /// True where it was taken back.
    pub taken_back: bool,
    /// True while it is open for correcting.
    pub open: bool,
}

/// A choice of a corrected value.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PickView {
    /// Its key.
    pub key: String,
    /// Its words.
    pub text: String,
    /// Picked now.
    pub picked: bool,
}

/// The editor of the open entry.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct EditorView {
    /// True where the value can be typed.
    pub typed: bool,
    /// True where it is text of several lines.
    pub long: bool,
    /// What stands in the field.
    pub value: String,
    /// The unit beside it.
    pub unit: String,
    /// Choices, where it is picked.
    pub picks: Vec<PickView>,
    /// The day as it can be typed.
    pub day: String,
    /// What is wrong, in a sentence; empty where nothing is.
    pub problem: String,
    /// True where its line can be taken back.
    pub can_take_back: bool,
    /// The button for its photos, or for the photo that it is about; empty where there are none to be had.
    pub photos: String,
    /// How many photos it has, in words.
    pub photos_note: String,
}

/// A filter chip.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FilterView {
    /// Stable key.
    pub key: &'static str,
    /// Its word.
    pub text: String,
    /// How many entries it shows.
    pub count: usize,
    /// Chosen now.
    pub chosen: bool,
}

/// The whole page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DiaryView {
    /// The mark of the piece.
    pub mark: String,
    /// The title.
    pub title: String,
    /// Wood and number of entries.
    pub subtitle: String,
    /// The filters that show something, All first.
    pub filters: Vec<FilterView>,
    /// The entries, newest first.
    pub entries: Vec<EntryView>,
    /// The editor of the open entry.
    pub editor: EditorView,
    /// What the empty page says; empty where there are entries.
    pub empty: String,
    /// True while a note is being written.
    pub writing: bool,
    /// The note being written.
    pub note: String,
    /// What is wrong with it.
    pub note_problem: String,
    /// Fixed labels, by their place in the page.
    pub labels: DiaryLabels,
}

/// The words of the page's buttons and fields.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DiaryLabels {
    /// Back to the piece.
    pub back: String,
    /// Add a note.
    pub add_note: String,
    /// The field of a new note.
    pub note: String,
    /// Leave the note.
    pub cancel: String,
    /// The field of a corrected value.
    pub value: String,
    /// The field of the day.
    pub day: String,
    /// Save the correction.
    pub save: String,
    /// Take the entry back.
    pub take_back: String,
    /// Bring it back.
    pub bring_back: String,
}

impl App {
    /// The diary of the piece on screen; `None` where there is none.
    #[must_use]
    pub fn diary_view(&self, id: &PieceId, now: Moment) -> Option<DiaryView> {
        let piece = self.piece(id)?;
        let state = &self.states.diary;
        let words = self.words();
        let described: Vec<_> = piece
            .diary
            .iter()
            .rev()
            .map(|e| (e, self.describe(piece, &e.fact)))
            .collect();
        let count = |f: Filter| {
            described
                .iter()
                .filter(|(e, d)| f.shows(d.filter, e.retracted))
                .count()
        };
        let filters = Filter::ALL
            .into_iter()
            .map(|f| FilterView {
                key: f.key(),
                text: words.text(&format!("diary-filter-{}", f.key())),
                count: count(f),
                chosen: f == state.filter,
            })
            .filter(|f| f.count > 0 || f.chosen || f.key == "all")
            .collect();
        let mut entries = Vec::new();
        let one_device = self.written_here_only(piece);
        let mut last_day = None;
        for (entry, d) in described
            .into_iter()
            .filter(|(e, d)| state.filter.shows(d.filter, e.retracted))
        {
            let day = entry.at.date_naive();
            let first = last_day.replace(day) != Some(day);
            let id = entry_text(&entry.entry);
            entries.push(EntryView {
                day: if first {
                    self.dates(now).near(day)
                } else {
                    String::new()
                },
                time: entry.at.format("%H:%M").to_string(),
                icon: d.icon,
                title: d.title,
                note: d.note,
                earlier: self.earlier_words(piece, entry, now),
                noted: if entry.back_dated() {
                    let day = self.dates(now).near(entry.noted_at.date_naive());
                    words.with("diary-noted", &[("day", day.into())])
                } else {
                    String::new()
                },
                device: if one_device {
                    String::new()
                } else {
                    self.device_words(&entry.entry.line.device)
                },
                taken_back: entry.retracted,
                open: state.open.as_ref() == Some(&id),
                id,
            });
        }
        let total = piece.diary.iter().filter(|e| !e.retracted).count();
        Some(DiaryView {
            mark: piece.mark().to_owned(),
            title: words.text("diary-title"),
            subtitle: words.with(
                "diary-subtitle",
                &[
                    ("wood", self.wood_of(piece).into()),
                    ("n", i64::try_from(total).unwrap_or(i64::MAX).into()),
                ],
            ),
            filters,
            empty: if entries.is_empty() {
                words.text("diary-nothing")
            } else {
                String::new()
            },
            editor: self.editor_view(piece),
            entries,
            writing: state.writing,
            note: state.note.clone(),
            note_problem: state.note_problem.clone(),
            labels: DiaryLabels {
                back: words.text("action-back"),
                add_note: words.text("diary-note-add"),
                note: words.text("diary-note-label"),
                cancel: words.text("action-cancel"),
                value: words.text("diary-value"),
                day: words.text("diary-day"),
                save: words.text("diary-save"),
                take_back: words.text("diary-take-back"),
                bring_back: words.text("diary-bring-back"),
            },
        })
    }

    /// What an entry said before; where only the day changed, the day.
    fn earlier_words(&self, piece: &Piece, entry: &DiaryEntry, now: Moment) -> Vec<String> {
        let mut later = (&entry.fact, entry.at);
        let mut said = Vec::new();
        for old in entry.earlier.iter().rev() {
            let day = self.dates(now).near(old.at.date_naive());
            // Where two wordings differ only in their second line, that line tells.
            let (then, since) = (
                self.describe(piece, &old.fact),
                self.describe(piece, later.0),
            );
            let told = if then.title == since.title && !then.note.is_empty() {
                then.note
            } else {
                then.title
            };
            said.push(match (old.fact == *later.0, old.at == later.1) {
                (true, _) => day,
                (false, true) => told,
                (false, false) => format!("{told} · {day}"),
            });
            later = (&old.fact, old.at);
        }
        said.reverse();
        said.into_iter()
            .map(|what| self.words().with("diary-was", &[("what", what.into())]))
            .collect()
    }

    fn editor_view(&self, piece: &Piece) -> EditorView {
        let state = &self.states.diary;
        let open = |e: &&DiaryEntry| state.open.as_ref() == Some(&entry_text(&e.entry));
        let Some(entry) = piece.diary.iter().find(open) else {
            return EditorView::default();
        };
        let created =
            |e: &DiaryEntry| e.entry.line == entry.entry.line && e.fact == PieceFact::Created;
        let correctable = self.correctable(&entry.fact);
        let picks = correctable.as_ref().map_or_else(Vec::new, |c| {
            let pick = |(key, text): &(&'static str, String)| PickView {
                key: (*key).to_owned(),
                text: text.clone(),
                picked: state.value == *key,
            };
            c.choices.iter().map(pick).collect()
        });
        EditorView {
            typed: correctable.as_ref().is_some_and(|c| c.choices.is_empty()),
            long: correctable.as_ref().is_some_and(|c| c.long),
            value: state.value.clone(),
            unit: correctable.map(|c| c.unit).unwrap_or_default(),
            picks,
            day: state.day.clone(),
            problem: state.problem.clone(),
            can_take_back: !piece.diary.iter().any(created),
            photos: self.entry_photos_words(entry),
            photos_note: self.entry_photos_count(piece, entry),
        }
    }
}
