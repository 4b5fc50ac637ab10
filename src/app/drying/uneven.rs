//! Uneven: thick walls against thin ones while a piece dries, and what that means on a shelf and in a bag.

use evenwall_piece::fact::StationRef;
use evenwall_piece::piece::Piece;

use super::ahead_view::UnevenView;
use crate::app::App;
use crate::forecasting::shape_of;

/// Below this the walls count as one, fraction.
const TOGETHER: f64 = 0.01;

impl App {
    /// How thick and thin stand to each other; `None` where that is not reckoned yet.
    pub(super) fn uneven_view(&self, piece: &Piece) -> Option<UnevenView> {
        let seen = self.foreseen(&piece.id)?;
        let against = &seen.against;
        let shape = shape_of(piece)?;
        let (words, numbers) = (self.words(), self.numbers());
        let name = |place: usize| -> Option<String> {
            let wall = shape.walls.get(place)?.thickness_mm;
            let station = shape.stations.get(place)?;
            // The last floor of two is the one with the spigot below it.
            let below = shape.stations[..place].contains(&StationRef::Floor);
            let what = if below && *station == StationRef::Floor {
                words.text("drying-uneven-spigot")
            } else {
                self.station_ref_words(*station)
            };
            Some(words.with(
                "drying-uneven-station",
                &[
                    ("station", what.into()),
                    ("wall", numbers.wall(wall).text().into()),
                ],
            ))
        };
        let (wettest, driest) = (name(against.wettest.0)?, name(against.driest.0)?);
        let text = if against.spread < TOGETHER {
            words.text(if against.wettest.1 > 0.30 {
                "drying-uneven-all-wet"
            } else {
                "drying-uneven-together"
            })
        } else {
            words.with(
                "drying-uneven-apart",
                &[
                    ("wettest", wettest.as_str().into()),
                    ("driest", driest.as_str().into()),
                    ("points", self.points(against.spread).into()),
                ],
            )
        };
        let compared = words.with(
            "drying-uneven-compared",
            &[
                ("shelf", self.points(against.on_shelf).into()),
                ("bag", self.points(against.in_bag).into()),
            ],
        );
        let percent = |m: f64| numbers.percent(100.0 * m).text();
        Some(UnevenView {
            title: words.text("drying-uneven-title"),
            text: format!("{text} {compared}"),
            open: self.states.drying.uneven,
            numbers: words.with(
                "drying-uneven-numbers",
                &[
                    ("wettest", wettest.into()),
                    ("wet", percent(against.wettest.1).into()),
                    ("driest", driest.into()),
                    ("dry", percent(against.driest.1).into()),
                    ("faces", self.points(against.gradient).into()),
                ],
            ),
            meaning: words.with("drying-uneven-meaning", &[("wet", percent(0.30).into())]),
            source: words.text("drying-uneven-source"),
            more: words.text("drying-uneven-more"),
            close: words.text("action-close"),
        })
    }
}
