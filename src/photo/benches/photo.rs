//! What taking a photo costs in time and memory, beside a general-purpose tool where the machine has one. Prints figures,
//! never a verdict.
//!
//! The pictures are drawn here, with the fine grain that makes a camera's file large. The other tools (libvips by its
//! `vipsthumbnail`, ImageMagick by its `convert`) do the same work in a process of their own: read, turn upright, reduce,
//! strip, write. Their memory is the most that the process held, of which the program itself is a part; ours is the most
//! that the allocator handed out, and the file.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::print_stdout)]
#![allow(clippy::disallowed_methods)] // it measures time, and writes files for the other tool

#[path = "../tests/counted/mod.rs"]
mod counted;

use std::process::Command;
use std::sync::atomic::AtomicBool;
use std::time::{Duration, Instant};

use counted::{Counted, most_held};
use evenwall_photo::limits::Limits;
use evenwall_photo::prepare::{prepare, thumbnail};
use evenwall_photo::watch::Watch;

#[global_allocator]
static ALLOCATOR: Counted = Counted;

/// A picture of broad shades with fine grain, as a camera's is.
fn drawn(width: usize, height: usize, in_passes: bool) -> Vec<u8> {
    let mut rgb = Vec::with_capacity(width * height * 3);
    let mut noise = 0x2545_f491_4f6c_dd1d_u64;
    for y in 0..height {
        for x in 0..width {
            noise ^= noise << 13;
            noise ^= noise >> 7;
            noise ^= noise << 17;
            let ring = ((x * x + y * y) as f64).sqrt() / 23.0;
            let shade = 128.0 + 60.0 * ring.sin() + (noise % 24) as f64;
            rgb.extend([shade as u8, (shade * 0.8) as u8, (shade * 0.55) as u8]);
        }
    }
    let mut bytes = Vec::new();
    let mut encoder = jpeg_encoder::Encoder::new(&mut bytes, 92);
    encoder.set_sampling_factor(jpeg_encoder::SamplingFactor::F_2_2);
    encoder.set_progressive(in_passes);
    encoder
        .encode(
            &rgb,
            width as u16,
            height as u16,
            jpeg_encoder::ColorType::Rgb,
        )
        .unwrap();
    bytes
}

fn best_of(n: usize, mut work: impl FnMut()) -> Duration {
    let one = |work: &mut dyn FnMut()| {
        let began = Instant::now();
        work();
        began.elapsed()
    };
    (0..n).map(|_| one(&mut work)).min().unwrap()
}

/// Time and most memory of another tool on the same file; `None` where the machine has it not.
fn other_tool(bytes: &[u8], tool: &str) -> Option<(Duration, u64)> {
    let folder = std::env::temp_dir().join(format!("evenwall-bench-{}", std::process::id()));
    std::fs::create_dir_all(&folder).unwrap();
    let (from, to) = (folder.join("in.jpg"), folder.join("out.jpg"));
    std::fs::write(&from, bytes).unwrap();
    let (from, to) = (from.display().to_string(), to.display().to_string());
    let arguments: Vec<String> = match tool {
        "vipsthumbnail" => vec![
            from,
            "-s".into(),
            "2560x2560>".into(),
            "-o".into(),
            format!("{to}[Q=85,strip]"),
        ],
        // `jpeg:size` lets its reader shrink while it decodes, as ours does.
        _ => [
            "-define",
            "jpeg:size=2560x2560",
            &from,
            "-auto-orient",
            "-resize",
            "2560x2560>",
            "-strip",
            "-quality",
            "85",
            &to,
        ]
        .map(str::to_owned)
        .to_vec(),
    };
    let mut memory = 0;
    let mut fastest: Option<Duration> = None;
    for _ in 0..3 {
        let script = "import resource,subprocess,sys,time\nt=time.monotonic()\nr=subprocess.call(sys.argv[1:])\n\
                      print(time.monotonic()-t, resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss)\nsys.exit(r)";
        let output = Command::new("python3")
            .args(["-c", script, tool])
            .args(&arguments)
            .output()
            .ok()?;
        if !output.status.success() {
            break;
        }
        let said = String::from_utf8_lossy(&output.stdout).into_owned();
        let (seconds, kilobytes) = said.trim().split_once(' ')?;
        let time = Duration::from_secs_f64(seconds.parse().ok()?);
        fastest = Some(fastest.map_or(time, |f| f.min(time)));
        memory = memory.max(kilobytes.parse::<u64>().ok()? * 1024);
    }
    std::fs::remove_dir_all(&folder).ok();
    fastest.map(|t| (t, memory))
}

fn main() {
    println!(
        "{:<22} {:>9} {:>10} {:>10} {:>9}   other tools, time and memory",
        "picture", "file", "time", "memory", "stored"
    );
    for (name, width, height, in_passes) in [
        ("12 MP", 4032, 3024, false),
        ("48 MP", 8064, 6048, false),
        ("48 MP in passes", 8064, 6048, true),
    ] {
        let bytes = drawn(width, height, in_passes);
        let cancel = AtomicBool::new(false);
        let take = || {
            prepare(
                &bytes,
                &Limits::default(),
                &mut Watch::new(&cancel, &mut |_| {}),
            )
            .unwrap()
        };
        let (photo, held) = most_held(take);
        let time = best_of(3, || {
            std::hint::black_box(take());
        });
        let mb = |n: u64| format!("{:.0} MB", n as f64 / 1e6);
        let ms = |t: Duration| format!("{:.0} ms", t.as_secs_f64() * 1e3);
        let others: Vec<String> = ["vipsthumbnail", "convert"]
            .into_iter()
            .map(|tool| match other_tool(&bytes, tool) {
                Some((time, memory)) => format!("{tool} {} {}", ms(time), mb(memory)),
                None => format!("{tool} -"),
            })
            .collect();
        println!(
            "{name:<22} {:>9} {:>10} {:>10} {:>9}   {}",
            mb(bytes.len() as u64),
            ms(time),
            mb((held + bytes.len()) as u64),
            format!("{} KB", photo.jpeg.len() / 1000),
            others.join(", "),
        );
        if name == "12 MP" {
            let time = best_of(5, || {
                let mut none = |_| {};
                let mut watch = Watch::new(&cancel, &mut none);
                std::hint::black_box(
                    thumbnail(&photo.jpeg, &Limits::default(), &mut watch).unwrap(),
                );
            });
            println!("{:<22} {:>9} {:>10}", "thumbnail rebuilt", "", ms(time));
        }
    }
}
