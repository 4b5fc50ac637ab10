//! What the app does and says: words, numbers, actions and views, without screens, threads or files.

pub mod words;
