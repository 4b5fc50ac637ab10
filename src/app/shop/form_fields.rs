//! Form fields: what each form asks, in words.

use evenwall_piece::vocabulary::Room;

use crate::app::App;
use crate::numbers::Quantity;

use super::device_fields::DeviceField;
use super::form::{Draft, FormOf, StepList};
use super::number_settings::number_setting;
use super::view::{ChoiceView, FieldKind, FieldView, FormView};

impl App {
    pub(super) fn field(
        &self,
        draft: &Draft,
        key: &'static str,
        kind: FieldKind,
        label: &str,
    ) -> FieldView {
        FieldView {
            key,
            kind,
            label: self.words().text(label),
            text: draft.typed(key).to_owned(),
            placeholder: String::new(),
            error: draft.errors.get(key).cloned().unwrap_or_default(),
            note: String::new(),
            unit: String::new(),
            choices: Vec::new(),
            ways: Vec::new(),
        }
    }

    fn name_field(&self, draft: &Draft, placeholder: &str) -> FieldView {
        FieldView {
            placeholder: self.words().text(placeholder),
            ..self.field(draft, "name", FieldKind::Text, "shop-name")
        }
    }

    fn number_field(
        &self,
        draft: &Draft,
        key: &'static str,
        quantity: Quantity,
        label: &str,
    ) -> FieldView {
        let field = self.field(draft, key, FieldKind::Number, label);
        let numbers = self.numbers();
        FieldView {
            unit: numbers.quantity(quantity, quantity.range().example).unit,
            ways: if field.error.is_empty() {
                Vec::new()
            } else {
                self.ways_to_read(quantity, &field.text)
            },
            ..field
        }
    }

    fn choice_field(
        &self,
        draft: &Draft,
        key: &'static str,
        label: &str,
        choices: &[(&str, &str)],
    ) -> FieldView {
        let choices = choices.iter().map(|(key, id)| ChoiceView {
            key: (*key).to_owned(),
            text: self.words().text(id),
        });
        FieldView {
            choices: choices.collect(),
            ..self.field(draft, key, FieldKind::Choice, label)
        }
    }

    fn when_fields(&self, draft: &Draft) -> Vec<FieldView> {
        let mut fields = vec![self.choice_field(
            draft,
            "when",
            "shop-when",
            &[
                ("now", "shop-when-now"),
                ("yesterday", "shop-when-yesterday"),
                ("day", "shop-when-day"),
            ],
        )];
        if draft.typed("when") == "day" {
            fields.push(FieldView {
                placeholder: self.words().text("shop-day-example"),
                ..self.field(draft, "day", FieldKind::Text, "shop-day")
            });
        }
        fields
    }

    fn climate_fields(&self, draft: &Draft) -> Vec<FieldView> {
        let mut fields = vec![
            self.choice_field(
                draft,
                "room",
                "shop-room",
                &[("shop", "room-shop"), ("house", "room-house")],
            ),
            self.choice_field(
                draft,
                "way",
                "shop-way",
                &[
                    ("humidity", "shop-way-humidity"),
                    ("bulbs", "shop-way-bulbs"),
                ],
            ),
        ];
        let number = |key, quantity, label| self.number_field(draft, key, quantity, label);
        if draft.typed("way") == "bulbs" {
            fields.push(number("temp", Quantity::Temperature, "shop-dry-bulb"));
            fields.push(FieldView {
                note: self.words().text("shop-bulb-note"),
                ..number("wet", Quantity::WetBulb, "shop-wet-bulb")
            });
        } else {
            fields.push(number("temp", Quantity::Temperature, "shop-temperature"));
            fields.push(number("rh", Quantity::Humidity, "shop-humidity"));
        }
        fields.extend(self.when_fields(draft));
        fields
    }

    fn wood_fields(&self, draft: &Draft) -> Vec<FieldView> {
        let words = self.words();
        let number = |key, quantity, label, note: &str| FieldView {
            note: words.text(note),
            ..self.number_field(draft, key, quantity, label)
        };
        vec![
            self.name_field(draft, "shop-wood-example"),
            number(
                "radial",
                Quantity::Shrinkage,
                "shop-radial",
                "shop-radial-note",
            ),
            number(
                "tangential",
                Quantity::Shrinkage,
                "shop-tangential",
                "shop-tangential-note",
            ),
            FieldView {
                unit: words.text("shop-density-unit"),
                ..number(
                    "density",
                    Quantity::BasicDensity,
                    "shop-density",
                    "shop-density-note",
                )
            },
            number(
                "green",
                Quantity::GreenMoisture,
                "shop-green",
                "shop-green-note",
            ),
            FieldView {
                // The word beside the switch.
                placeholder: words.text(if draft.typed("moulds") == "true" {
                    "shop-on"
                } else {
                    "shop-off"
                }),
                note: words.text("shop-moulds-note"),
                ..self.field(draft, "moulds", FieldKind::Toggle, "shop-moulds")
            },
        ]
    }

    fn fields_of(&self, draft: &Draft) -> Vec<FieldView> {
        let words = self.words();
        let number = |key, quantity, label| self.number_field(draft, key, quantity, label);
        let with_note = |field: FieldView, note: String| FieldView { note, ..field };
        match &draft.of {
            FormOf::Climate => self.climate_fields(draft),
            FormOf::Number(key) => number_setting(key)
                .map(|s| {
                    let usual = s.in_words(self, s.usual());
                    let note = words.with("shop-blank-usual", &[("value", usual.into())]);
                    let field = with_note(number("value", s.quantity, s.label), note);
                    vec![match s.quantity {
                        Quantity::BagDays | Quantity::SteadyDays => FieldView {
                            unit: words.text("shop-days-unit"),
                            ..field
                        },
                        _ => field,
                    }]
                })
                .unwrap_or_default(),
            FormOf::Jaws(_) => vec![
                self.name_field(draft, "shop-jaws-example"),
                number("smallest", Quantity::JawCircle, "shop-smallest"),
                number("largest", Quantity::JawCircle, "shop-largest"),
            ],
            FormOf::Bar(_) => vec![
                self.name_field(draft, "shop-bar-example"),
                number("diameter", Quantity::BarDiameter, "shop-diameter"),
            ],
            FormOf::Wood(_) => self.wood_fields(draft),
            FormOf::ScaleStep => vec![number("step", Quantity::ScaleStep, "shop-scale-step")],
            FormOf::NewScale => {
                let mut fields = vec![number("step", Quantity::ScaleStep, "shop-scale-step")];
                fields.extend(self.when_fields(draft));
                fields
            }
            FormOf::Step { of, list, place } => {
                let rhythm = self.shop().settings.rhythm(*of);
                let steps = list.of(&rhythm);
                let in_days = |field: FieldView| FieldView {
                    unit: words.text("shop-days-unit"),
                    ..field
                };
                let mut fields = vec![in_days(number("every", Quantity::Days, "shop-every"))];
                // The last step goes on for ever.
                let ends = match place {
                    Some(place) => place + 1 < steps.len(),
                    None => !steps.is_empty(),
                };
                if ends {
                    fields.push(with_note(
                        number("until", Quantity::Days, "shop-until"),
                        words.text("shop-until-note"),
                    ));
                }
                fields
            }
            FormOf::LogPath => vec![FieldView {
                placeholder: words.text("log-path-example"),
                ..with_note(
                    self.field(draft, "path", FieldKind::Text, "log-path"),
                    words.text("log-path-note"),
                )
            }],
            FormOf::PictureFolder => vec![with_note(
                self.field(draft, "folder", FieldKind::Text, "shop-picture-folder"),
                words.text("shop-picture-folder-note"),
            )],
            FormOf::Device(field) => vec![self.device_field(draft, *field)],
            FormOf::Offer(_) => vec![FieldView {
                unit: words.text("shop-days-unit"),
                ..with_note(
                    number("day", Quantity::Days, "shop-offer"),
                    words.text("shop-offer-note"),
                )
            }],
        }
    }

    fn form_title(&self, of: &FormOf) -> String {
        let words = self.words();
        match of {
            FormOf::Climate => words.text("shop-climate-new"),
            FormOf::Number(key) => {
                number_setting(key).map_or_else(String::new, |s| words.text(s.label))
            }
            FormOf::Jaws(None) => words.text("shop-jaws-new"),
            FormOf::Jaws(Some(_)) => words.text("shop-jaws-change"),
            FormOf::Bar(None) => words.text("shop-bar-new"),
            FormOf::Bar(Some(_)) => words.text("shop-bar-change"),
            FormOf::Wood(None) => words.text("shop-wood-new"),
            FormOf::Wood(Some(_)) => words.text("shop-wood-change"),
            FormOf::ScaleStep => words.text("shop-scale-step"),
            FormOf::NewScale => words.text("shop-scale-new"),
            FormOf::Step { list, .. } => words.text(match list {
                StepList::Looks => "shop-looks",
                StepList::Weighings => "shop-weighings",
            }),
            FormOf::LogPath => words.text("log-elsewhere"),
            FormOf::Device(field) => words.text(&format!("out-field-{}", field.key())),
            FormOf::Offer(_) => words.text("shop-offer-title"),
            FormOf::PictureFolder => words.text("shop-picture-folder"),
        }
    }

    fn form_note(&self, draft: &Draft) -> String {
        let words = self.words();
        match &draft.of {
            FormOf::Jaws(_) => words.text("shop-jaws-note"),
            FormOf::Wood(_) => words.text("shop-wood-note"),
            FormOf::ScaleStep => words.text("shop-scale-step-note"),
            FormOf::NewScale => words.text("shop-scale-new-note"),
            _ => String::new(),
        }
    }

    /// The form that is open.
    pub(super) fn form_view(&self) -> Option<FormView> {
        let draft = self.states.shop.draft.as_ref()?;
        let words = self.words();
        let remove = match &draft.of {
            FormOf::Jaws(Some(_)) => "shop-jaws-remove",
            FormOf::Bar(Some(_)) => "shop-bar-remove",
            FormOf::Wood(Some(_)) => "shop-wood-remove",
            FormOf::Step { place: Some(_), .. } => "shop-step-remove",
            _ => "",
        };
        Some(FormView {
            title: self.form_title(&draft.of),
            note: self.form_note(draft),
            follows: match draft.of {
                FormOf::Climate => self.climate_follows(draft),
                _ => String::new(),
            },
            fields: self.fields_of(draft),
            save: words.text(match draft.of {
                FormOf::LogPath
                | FormOf::Device(DeviceField::ImportFile | DeviceField::RestoreFile) => {
                    "log-path-read"
                }
                _ => "action-save",
            }),
            remove: if remove.is_empty() {
                String::new()
            } else {
                words.text(remove)
            },
        })
    }

    /// The room a reading is for.
    pub(super) fn room_of(draft: &Draft) -> Room {
        Room::from_key(draft.typed("room")).unwrap_or(Room::Shop)
    }
}
