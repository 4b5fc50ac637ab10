//! A real weighed burl: what would have been said at each weighing. `cargo run --release -p evenwall-wood --example burl`
//!
//! Only weights are known. Taken for granted here: a slab of 40 mm of burl (grain in all directions, factor 5.5), under some cover,
//! a shop at 18 C and 60 %, green at the 58 % the Wood Handbook (FPL-GTR-190, table 4-1) gives black cherry, known to 15 %.
#![allow(clippy::print_stdout)]

use std::error::Error;

use evenwall_wood::drying::case::PAPER;
use evenwall_wood::drying::{Case, Climate, Phase, Wall, Way, Wood};
use evenwall_wood::forecast::{Priors, Record, Weighing, outlook};

fn weighings() -> Result<Vec<Weighing>, Box<dyn Error>> {
    include_str!("../tables/burl.csv")
        .lines()
        .filter(|l| !l.starts_with('#'))
        .skip(1)
        .map(|line| {
            let (day, mass) = line.split_once(',').ok_or("a row has two columns")?;
            Ok(Weighing {
                day: day.parse()?,
                mass_g: mass.parse()?,
            })
        })
        .collect()
}

fn main() -> Result<(), Box<dyn Error>> {
    let all = weighings()?;
    let dry_g = all[0].mass_g / 1.58;
    let volume_cm3 = 1e3 * dry_g / 470.0;
    let case = Case {
        wood: Wood::of_density(470.0),
        walls: vec![Wall {
            grain: 5.5,
            ..Wall::plain(40.0, volume_cm3 / 4.0)
        }],
        phases: vec![Phase {
            from_day: 0.0,
            way: Way::Cover(PAPER),
            climate: Climate::steady(18.0, 0.60)?,
        }],
    };
    let priors = Priors {
        dry_sd: 0.15,
        ..Priors::usual(dry_g)
    };
    println!("| day | g | moisture now | within a point of settled, day | too early |");
    println!("|---|---|---|---|---|");
    for n in 1..=all.len() {
        let record = Record {
            weighings: all[..n].to_vec(),
            resets: vec![],
            step_g: 5.0,
        };
        let last = all[n - 1];
        let said = outlook(&case, &record, priors, last.day, None)?;
        let (low, high) = said.now.range();
        let range = said.here.mean.map_or("never".to_owned(), |r| {
            format!(
                "{:.0} to {:.0}, most likely {:.0}",
                r.early, r.late, r.middle
            )
        });
        println!(
            "| {} | {} | {:.0} to {:.0} % | {range} | {:?} |",
            last.day,
            last.mass_g,
            100.0 * low,
            100.0 * high,
            said.too_early,
        );
    }
    Ok(())
}
