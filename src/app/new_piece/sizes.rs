//! Sizes: diameters and heights that are often made, to pick instead of typing.

use evenwall_piece::detail::DetailField;
use evenwall_piece::vocabulary::Form;

use crate::app::App;
use crate::device::LengthChoice;
use crate::numbers::Quantity;

/// Diameter and height rim to foot line, mm or inches.
type Sizes = [(f64, f64); 4];

const fn in_mm(form: Form) -> Sizes {
    match form {
        Form::Vessel => [
            (100.0, 120.0),
            (130.0, 150.0),
            (160.0, 190.0),
            (200.0, 230.0),
        ],
        Form::HollowForm => [
            (120.0, 90.0),
            (160.0, 120.0),
            (200.0, 150.0),
            (250.0, 190.0),
        ],
        Form::Bowl => [(160.0, 70.0), (200.0, 90.0), (250.0, 110.0), (300.0, 130.0)],
    }
}

const fn in_inches(form: Form) -> Sizes {
    match form {
        Form::Vessel => [(4.0, 5.0), (5.0, 6.0), (6.5, 7.5), (8.0, 9.0)],
        Form::HollowForm => [(5.0, 3.5), (6.5, 5.0), (8.0, 6.0), (10.0, 7.5)],
        Form::Bowl => [(6.5, 3.0), (8.0, 3.5), (10.0, 4.5), (12.0, 5.0)],
    }
}

impl App {
    fn draft_form(&self) -> Form {
        let key = self.states.new_piece.draft.text(DetailField::Form);
        Form::from_key(key).unwrap_or(Form::Vessel)
    }

    /// Sizes that are often made in a form, in round figures of the device's unit: diameter and height, mm. Common practice,
    /// no source.
    pub(crate) fn often_made(&self, form: Form) -> Vec<(f64, f64)> {
        let (sizes, in_a_unit) = match self.device().length {
            LengthChoice::Mm => (in_mm(form), 1.0),
            LengthChoice::InchDecimal | LengthChoice::InchFraction => (in_inches(form), 25.4),
        };
        sizes
            .into_iter()
            .map(|(d, h)| (d * in_a_unit, h * in_a_unit))
            .collect()
    }

    /// The same for the form chosen, as they are typed.
    pub(super) fn usual_sizes(&self) -> Vec<(String, String)> {
        let numbers = self.numbers();
        let text = |quantity, mm: f64| numbers.quantity(quantity, mm).number;
        self.often_made(self.draft_form())
            .into_iter()
            .map(|(d, h)| {
                (
                    text(Quantity::OutsideDiameter, d),
                    text(Quantity::Height, h),
                )
            })
            .collect()
    }

    pub(super) fn pick_size(&mut self, place: usize) {
        if let Some((diameter, height)) = self.usual_sizes().into_iter().nth(place) {
            let draft = &mut self.states.new_piece.draft;
            draft.type_into(DetailField::Diameter, diameter);
            draft.type_into(DetailField::Height, height);
        }
    }
}
