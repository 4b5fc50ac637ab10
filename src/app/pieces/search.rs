//! Search: what is typed is found in mark, wood, place, notes, source and log, whatever its case and accents.

use evenwall_piece::detail::DetailField;
use evenwall_piece::fact::PieceFact;
use evenwall_piece::piece::Piece;

use crate::app::App;
use crate::woods::Known;

/// A text without case and accents: "Épicéa" and "epicea" are one.
pub(crate) fn folded(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for c in text.trim().chars().flat_map(char::to_lowercase) {
        match c {
            'à'..='å' | 'ā' | 'ă' | 'ą' => plain.push('a'),
            'æ' => plain.push_str("ae"),
            'ç' | 'ć' | 'ĉ' | 'ċ' | 'č' => plain.push('c'),
            'ď' | 'đ' | 'ð' => plain.push('d'),
            'è'..='ë' | 'ē' | 'ĕ' | 'ė' | 'ę' | 'ě' => plain.push('e'),
            'ĝ' | 'ğ' | 'ġ' | 'ģ' => plain.push('g'),
            'ì'..='ï' | 'ĩ' | 'ī' | 'ĭ' | 'į' | 'ı' => plain.push('i'),
            'ł' | 'ĺ' | 'ļ' | 'ľ' => plain.push('l'),
            'ñ' | 'ń' | 'ņ' | 'ň' => plain.push('n'),
            'ò'..='ö' | 'ø' | 'ō' | 'ŏ' | 'ő' => plain.push('o'),
            'œ' => plain.push_str("oe"),
            'ŕ' | 'ŗ' | 'ř' => plain.push('r'),
            'ś' | 'ŝ' | 'ş' | 'š' | 'ș' => plain.push('s'),
            'ß' => plain.push_str("ss"),
            'ţ' | 'ť' | 'ț' => plain.push('t'),
            'ù'..='ü' | 'ũ' | 'ū' | 'ŭ' | 'ů' | 'ű' | 'ų' => plain.push('u'),
            'ý' | 'ÿ' => plain.push('y'),
            'ź' | 'ż' | 'ž' => plain.push('z'),
            // Accents that stand as characters of their own, as after a capital I with a dot or from another keyboard.
            '\u{300}'..='\u{36f}' => {}
            '’' => plain.push('\''),
            c => plain.push(c),
        }
    }
    plain
}

/// A search, split into words that must all be found.
pub(super) struct Search(Vec<String>);

impl Search {
    /// The search for what was typed.
    pub(super) fn new(typed: &str) -> Self {
        Self(
            folded(typed)
                .split_whitespace()
                .map(str::to_owned)
                .collect(),
        )
    }

    /// True where nothing is searched for.
    pub(super) fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// True where every word is found in the piece.
    pub(super) fn finds(&self, app: &App, piece: &Piece) -> bool {
        if self.is_empty() {
            return true;
        }
        let text = text_of(app, piece);
        self.0.iter().all(|word| text.contains(word.as_str()))
    }
}

/// All that is searched of a piece, one line each, so that a word never runs from one into the next.
fn text_of(app: &App, piece: &Piece) -> String {
    let mut lines: Vec<String> = Vec::new();
    for field in [
        DetailField::Mark,
        DetailField::Place,
        DetailField::Notes,
        DetailField::Source,
        DetailField::Log,
        DetailField::Wood,
    ] {
        lines.extend(piece.details.text(field).map(folded));
    }
    // Also without its blanks: "k 07" is found by K07.
    lines.push(folded(piece.mark()).split_whitespace().collect());
    if let Some(stored) = piece.details.text(DetailField::Wood) {
        match app.known_wood(stored) {
            Some(Known::Table(wood)) => {
                lines.push(folded(&wood.name));
                lines.push(folded(&wood.botanical));
                lines.extend(wood.other_names.iter().map(|n| folded(n)));
            }
            Some(Known::Own(wood)) => lines.push(folded(&wood.name)),
            None => {}
        }
    }
    for entry in piece.diary.iter().filter(|e| !e.retracted) {
        if let PieceFact::Note(note) = &entry.fact {
            lines.push(folded(note));
        }
    }
    lines.join("\n")
}

#[cfg(test)]
mod tests {
    use super::folded;

    #[test]
    fn case_and_accents_make_no_difference() {
        for (text, plain) in [
            ("Épicéa", "epicea"),
            ("ŚLIWA łódź", "sliwa lodz"),
            ("CIĞIR Işık İnce", "cigir isik ince"),
            ("Weißbuche", "weissbuche"),
            ("E\u{301}rable", "erable"),
            ("neighbour’s", "neighbour's"),
        ] {
            assert_eq!(folded(text), plain, "{text}");
        }
    }
}
