//! Device pages: units, words and look: how this device shows things.

use crate::app::App;
use crate::device::{
    DeviceSettings, LengthChoice, MassChoice, TempChoice, ThemeChoice, WordsChoice,
};
use crate::numbers::Numbers;
use crate::words::{Language, Words};

use super::ShopAction;
use super::view::{RowKind, RowView, SectionView, ShopView};

const LENGTHS: [(LengthChoice, &str); 3] = [
    (LengthChoice::Mm, "length-unit-millimetre"),
    (LengthChoice::InchDecimal, "length-unit-inch-decimal"),
    (LengthChoice::InchFraction, "length-unit-inch-fraction"),
];
const MASSES: [(MassChoice, &str); 2] = [
    (MassChoice::Gram, "mass-unit-gram"),
    (MassChoice::PoundOunce, "mass-unit-ounce-pound"),
];
const TEMPERATURES: [(TempChoice, &str); 2] = [
    (TempChoice::Celsius, "temperature-unit-celsius"),
    (TempChoice::Fahrenheit, "temperature-unit-fahrenheit"),
];
const WORDS: [(WordsChoice, Language, &str); 2] = [
    (WordsChoice::British, Language::EnGb, "shop-words-en-GB"),
    (WordsChoice::American, Language::EnUs, "shop-words-en-US"),
];
const THEMES: [(ThemeChoice, &str); 3] = [
    (ThemeChoice::System, "shop-theme-system"),
    (ThemeChoice::Light, "shop-theme-light"),
    (ThemeChoice::Dark, "shop-theme-dark"),
];
const TEXT_SIZES: [(f64, &str); 3] = [
    (1.0, "shop-text-normal"),
    (1.3, "shop-text-large"),
    (1.6, "shop-text-huge"),
];

/// What the examples show: a wall, a weight and the air of a heated room.
const EXAMPLE_WALL_MM: f64 = 9.5;
const EXAMPLE_WEIGHT_G: f64 = 828.0;
const EXAMPLE_AIR_C: f64 = 20.0;

fn alike(a: f64, b: f64) -> bool {
    (a - b).abs() < 0.01
}

impl App {
    pub(super) fn device_with(&self, change: impl FnOnce(&mut DeviceSettings)) -> DeviceSettings {
        let mut device = self.device().clone();
        change(&mut device);
        device
    }

    pub(super) fn radio(&self, id: &str, device: DeviceSettings) -> RowView {
        let selected = device == *self.device();
        RowView::touching(
            RowKind::Radio,
            id,
            self.words().text(id),
            ShopAction::Device(device),
        )
        .selected(selected)
    }

    pub(super) fn section(
        &self,
        key: &'static str,
        title: &str,
        rows: Vec<RowView>,
    ) -> SectionView {
        SectionView {
            key,
            title: self.words().text(title),
            rows,
            ..SectionView::default()
        }
    }

    pub(super) fn units_page(&self) -> ShopView {
        let words = self.words();
        let example = |row: RowView, device: &DeviceSettings, show: &dyn Fn(&Numbers) -> String| {
            let shown = show(&Numbers::new(device.units(), words));
            row.note(words.with("shop-unit-example", &[("value", shown.into())]))
        };
        let lengths = LENGTHS.map(|(choice, id)| {
            let device = self.device_with(|d| d.length = choice);
            example(self.radio(id, device.clone()), &device, &|n| {
                n.wall(EXAMPLE_WALL_MM).text()
            })
        });
        let masses = MASSES.map(|(choice, id)| {
            let device = self.device_with(|d| d.mass = choice);
            example(self.radio(id, device.clone()), &device, &|n| {
                n.mass(EXAMPLE_WEIGHT_G).text()
            })
        });
        let temperatures = TEMPERATURES.map(|(choice, id)| {
            let device = self.device_with(|d| d.temperature = choice);
            example(self.radio(id, device.clone()), &device, &|n| {
                n.temperature(EXAMPLE_AIR_C).text()
            })
        });
        ShopView {
            title: words.text("shop-units"),
            intro: words.text("shop-units-intro"),
            sections: vec![
                self.section("length", "shop-lengths", lengths.into()),
                self.section("mass", "shop-weights", masses.into()),
                self.section("temperature", "shop-temperatures", temperatures.into()),
            ],
            ..ShopView::default()
        }
    }

    pub(super) fn words_page(&self) -> ShopView {
        let words = self.words();
        let rows = WORDS.map(|(choice, language, id)| {
            // Each choice says its own words.
            let own = Words::new(language);
            let device = self.device_with(|d| d.words = choice);
            self.radio(id, device).note(own.text("shop-words-example"))
        });
        ShopView {
            title: words.text("shop-words"),
            intro: words.text("shop-words-intro"),
            sections: vec![SectionView {
                key: "words",
                rows: rows.into(),
                ..SectionView::default()
            }],
            ..ShopView::default()
        }
    }

    pub(super) fn look_page(&self) -> ShopView {
        let words = self.words();
        let themes =
            THEMES.map(|(choice, id)| self.radio(id, self.device_with(|d| d.theme = choice)));
        let sizes = TEXT_SIZES.map(|(scale, id)| {
            // A size between the three, from an older version, chooses none.
            let device = self.device_with(|d| d.text_scale = scale);
            let selected = alike(self.device().text_scale, scale);
            self.radio(id, device).selected(selected)
        });
        let switch = |id: &str, note: &str, on: bool, change: fn(&mut DeviceSettings)| {
            let device = self.device_with(change);
            RowView::touching(
                RowKind::Toggle,
                id,
                words.text(id),
                ShopAction::Device(device),
            )
            .note(words.text(note))
            .selected(on)
            .button(words.text(if on { "shop-on" } else { "shop-off" }))
        };
        let switches = vec![
            switch(
                "shop-left-handed",
                "shop-left-handed-note",
                self.device().left_handed,
                |d| d.left_handed = !d.left_handed,
            ),
            switch(
                "shop-reduced-motion",
                "shop-reduced-motion-note",
                self.device().reduced_motion,
                |d| d.reduced_motion = !d.reduced_motion,
            ),
        ];
        ShopView {
            title: words.text("shop-look"),
            intro: words.text("shop-look-intro"),
            sections: vec![
                self.section("theme", "shop-theme", themes.into()),
                self.section("text", "shop-text-size", sizes.into()),
                self.section("hand", "shop-hand", switches),
            ],
            ..ShopView::default()
        }
    }

    pub(super) fn units_in_words(&self) -> String {
        let device = self.device();
        let words = self.words();
        let of = |list: &[(bool, &str)]| {
            list.iter()
                .find(|(now, _)| *now)
                .map(|(_, id)| words.text(id))
                .unwrap_or_default()
        };
        [
            of(&LENGTHS.map(|(c, id)| (c == device.length, id))),
            of(&MASSES.map(|(c, id)| (c == device.mass, id))),
            of(&TEMPERATURES.map(|(c, id)| (c == device.temperature, id))),
        ]
        .join(", ")
    }

    pub(super) fn words_choice_in_words(&self) -> String {
        WORDS
            .iter()
            .find(|(choice, ..)| *choice == self.device().words)
            .map(|(.., id)| self.words().text(id))
            .unwrap_or_default()
    }

    pub(super) fn look_in_words(&self) -> String {
        let words = self.words();
        let theme = THEMES
            .iter()
            .find(|(choice, _)| *choice == self.device().theme)
            .map(|(_, id)| words.text(id));
        let size = TEXT_SIZES
            .iter()
            .find(|(scale, _)| alike(*scale, self.device().text_scale) && !alike(*scale, 1.0))
            .map(|(_, id)| words.text(id));
        theme.into_iter().chain(size).collect::<Vec<_>>().join(", ")
    }
}
