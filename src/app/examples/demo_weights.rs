//! Prints the weights of those pieces of the demo whose drying is foreseen: made with the drying model from their own walls,
//! stages and air, and rounded to the step of the scale. Everything about them is invented. Run with
//! `cargo run -p evenwall-app --example demo_weights`; `demo/weights.py` has the others.
#![allow(clippy::print_stdout, clippy::unwrap_used)] // a program that prints figures, and stops where there are none

use chrono::DateTime;
use evenwall_app::app::App;
use evenwall_app::demo;
use evenwall_app::store::MemoryStore;
use evenwall_piece::piece::Piece;
use evenwall_wood::drying::{Tuning, means};

/// Mark, oven-dry weight in g, moisture felled (fraction), and how its wood and its bag differ from the usual.
const PIECES: [(&str, f64, f64, f64, f64); 2] = [
    ("J33", 338.0, 0.74, 0.22, 0.45),
    ("J34", 270.0, 0.70, 0.40, 0.60),
];
/// A slow sway for the weather, g of each kg.
const SWAY: f64 = 0.6;

fn main() {
    let now = DateTime::parse_from_rfc3339("2026-03-28T14:00:00+00:00").unwrap();
    let mut store = MemoryStore::default();
    demo::fill(&mut store, now).unwrap();
    let app = App::open(Box::new(store), true, now).unwrap();
    for (mark, dry_g, green, diffusion, habit) in PIECES {
        let piece: &Piece = app.pieces().find(|p| p.mark() == mark).unwrap();
        let input = app.forecast_input(piece, now).unwrap();
        let tuning = Tuning {
            diffusion,
            habit,
            ..Tuning::default()
        };
        let local = |at: evenwall_piece::piece::Moment| {
            at.naive_local().and_utc().timestamp() as f64 / 86_400.0
        };
        let days: Vec<f64> = piece
            .weighings
            .iter()
            .map(|w| local(w.at) - input.zero)
            .collect();
        let moistures = means(&input.case, tuning, input.began, green, &days).unwrap();
        let texts: Vec<String> = piece
            .weighings
            .iter()
            .zip(moistures)
            .map(|(w, m)| {
                let step = app.shop().scale_step_at(w.at);
                let day = (w.at.date_naive() - now.date_naive()).num_days();
                let sway = SWAY * 1e-3 * dry_g * (day as f64 / 9.0).sin();
                let grams = step * ((dry_g * (1.0 + m) + sway) / step).round();
                format!("{day}:{grams}")
            })
            .collect();
        println!("{mark} {}", texts.join(" "));
    }
}
