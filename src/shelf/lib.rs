//! The data folder of Evenwall: plain files that lose nothing, readable in a text editor, safe in the hands of any sync
//! program.
//!
//! ```text
//! shelf/
//!   shelf.json                         {"format":"evenwall-shelf","version":1}
//!   shop/<device>.jsonl                the workshop's facts
//!   pieces/<piece-id>/<device>.jsonl   the piece's diary
//!   pieces/<piece-id>/photos/<SHA-256 of the bytes>.jpg
//! device data folder (never synced)
//!   shelves/<hash of the shelf's path>/device.json, journals.json, journals.log, lock,
//!                                    photos.json: photos being added
//! ```
//!
//! Open it with [`shelf::Shelf::open`], read with [`shelf::Shelf::load_everything`] or [`shelf::Shelf::load_piece`],
//! record with [`shelf::Shelf::append_piece`] and [`shelf::Shelf::append_shop`]. What contradicts what in a diary is
//! settled by the fold of the domain; here are the rules of storage, each with its test:
//!
//! | case | rule | test |
//! |---|---|---|
//! | an action | one line, written and synced before it counts; a crash keeps all of it or none | `crash` |
//! | the first line of a piece | its folders are made and synced with it | `crash` |
//! | a file that does not end in a newline | gets one before the next line | `crash` |
//! | a line that cannot be read (torn, NULs, not UTF-8, too long) | stays, is skipped, is reported by file and line | `merge`, `journal` |
//! | the same at the end of another device's journal | "still arriving", until the file changes | `device` |
//! | a number that is missing between others | reported: missing or still arriving | `folder` |
//! | one line in several files (conflict copies of sync programs) | counts once; every `*.jsonl` is read | `merge` |
//! | two different lines with one number (copied disk) | both are kept, the second under a device name made from its text | `device`, `folder` |
//! | the order of lines | `(seq, device, n)`, never a clock, whatever file they are in | `merge` |
//! | own journal shorter than, or unlike, the device's record, gone, or not to be read | a new device id; the old journal is never appended to | `device` |
//! | own journal longer than the record | accepted up to 32 whole own lines (a power cut), else a new id | `crash`, `device` |
//! | the device's record lost or damaged | at most a new id | `device` |
//! | a line that a killed program wrote but did not sync | is synced before it is shown | `crash` |
//! | a write refused, a full disk | a sentence; the next line is whole | `device` |
//! | a sync refused | "look whether the entry is there"; the folder is read afresh | `device` |
//! | a fact or field of a newer version | kept; what is understood counts, the rest is shown as unknown | `format` |
//! | a shelf of a newer format, a damaged `shelf.json` | can be read, not written; a sentence | `opening` |
//! | a folder with other things, or with pieces and no `shelf.json` | refused, nothing changed; a sentence | `opening` |
//! | names under `pieces` that are no ids | left alone, reported | `opening` |
//! | a second writer on this device | refused; a sentence. Readers take no lock. Without locks it goes on | `opening` |
//! | a backup | all that is not hidden, in one zip; takes its name only once it was read back | `backup`, `backup_crash` |
//! | a restore | a merge: lines that are missing go to `restored-<time>.jsonl` with their ids | `backup`, `backup_crash` |
//! | a backup that is damaged, foreign, newer or malicious | refused before anything is touched; a sentence | `backup_refused` |
//! | a photo and the line that names it | the photo is durable before the line counts; a crash between leaves neither | `photo_crash` |
//! | a photo that is there already | kept as it is where its bytes are right, else replaced by the right ones | `photos` |
//! | a photo not there, or with other bytes than its name says | "not here yet", never an error; no other file is touched | `photos` |
//! | tidying, asked for | only the photos that it names; nothing else is ever removed | `photos` |
//! | anything else that lies in the shelf | never truncated, overwritten or removed | `merge`, `device` |
//!
//! Beyond the contract of [`disk::Disk`] nothing is asked of the file system. [`faulty::FaultyDisk`] stands in for it in
//! tests, here and in the layers above.

pub mod append;
pub mod backup;
pub mod device;
pub mod disk;
pub mod error;
pub mod faulty;
pub mod folder;
pub mod format;
pub mod journal;
pub mod line;
mod loading;
mod lock;
pub mod notice;
pub mod opening;
pub mod outside;
pub mod photos;
mod refresh;
pub mod shelf;
pub mod throwaway;
pub mod typed;
mod unfinished;
pub mod verify;
