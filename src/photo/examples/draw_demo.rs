//! Writes the drawings that the demo shelf shows into a folder, to be looked at: `cargo run -p evenwall-photo --example
//! draw_demo -- FOLDER`.
#![allow(clippy::disallowed_methods, clippy::print_stdout)] // a small tool for developers

use evenwall_photo::drawing::{Drawing, Subject};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let folder = std::env::args().nth(1).ok_or("say into which folder")?;
    for (name, subject) in [
        ("portrait", Subject::Portrait),
        ("knot", Subject::Knot(16.0)),
        ("check", Subject::Check(35.0)),
        ("bark", Subject::Bark(20.0)),
    ] {
        let began = std::time::Instant::now();
        let jpeg = Drawing { subject, wood: 7 }.jpeg()?;
        println!("{name}: {} bytes in {:?}", jpeg.len(), began.elapsed());
        std::fs::write(format!("{folder}/{name}.jpg"), jpeg)?;
    }
    Ok(())
}
