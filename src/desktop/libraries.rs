//! Libraries: which of the system's window libraries is missing, in a sentence, instead of a panic.

use std::path::PathBuf;

/// A library that the window needs at run time, with the Debian package that holds it.
struct Needed {
    file: &'static str,
    package: &'static str,
}

const X11: [Needed; 5] = [
    Needed {
        file: "libX11.so.6",
        package: "libx11-6",
    },
    Needed {
        file: "libX11-xcb.so.1",
        package: "libx11-xcb1",
    },
    Needed {
        file: "libXcursor.so.1",
        package: "libxcursor1",
    },
    Needed {
        file: "libXi.so.6",
        package: "libxi6",
    },
    Needed {
        file: "libxkbcommon-x11.so.0",
        package: "libxkbcommon-x11-0",
    },
];

const WAYLAND: [Needed; 2] = [
    Needed {
        file: "libwayland-client.so.0",
        package: "libwayland-client0",
    },
    Needed {
        file: "libxkbcommon.so.0",
        package: "libxkbcommon0",
    },
];

/// Folders in which the loader looks.
fn library_folders() -> Vec<PathBuf> {
    let mut folders: Vec<PathBuf> = std::env::var_os("LD_LIBRARY_PATH")
        .map(|paths| std::env::split_paths(&paths).collect())
        .unwrap_or_default();
    let usual = [
        "/lib",
        "/usr/lib",
        "/lib64",
        "/usr/lib64",
        "/usr/local/lib",
        "/run/current-system/sw/lib",
    ];
    folders.extend(usual.map(PathBuf::from));
    // Debian and its kin keep them by machine: /usr/lib/x86_64-linux-gnu, /usr/lib/arm-linux-gnueabihf...
    for base in ["/lib", "/usr/lib"] {
        let entries = std::fs::read_dir(base).into_iter().flatten().flatten();
        let by_machine = entries.filter(|e| e.file_name().to_string_lossy().contains("-linux-"));
        folders.extend(by_machine.map(|e| e.path()));
    }
    folders
}

fn missing_of(needed: &[Needed], folders: &[PathBuf]) -> Vec<(&'static str, &'static str)> {
    needed
        .iter()
        .filter(|n| !folders.iter().any(|f| f.join(n.file).exists()))
        .map(|n| (n.file, n.package))
        .collect()
}

/// A sentence that says what is missing for a window, or `None` where all seems there.
#[must_use]
pub fn what_is_missing() -> Option<String> {
    if !cfg!(target_os = "linux") {
        return None;
    }
    let set = |name: &str| std::env::var_os(name).is_some_and(|v| !v.is_empty());
    let folders = library_folders();
    // A system that keeps its libraries where nobody looks (Nix, Guix): say nothing, the window will tell.
    if !folders.iter().any(|f| f.join("libc.so.6").exists()) {
        return None;
    }
    let needed: &[Needed] = match (set("WAYLAND_DISPLAY"), set("DISPLAY")) {
        // With both, the window goes to X11 where Wayland's libraries are missing.
        (true, true) if !missing_of(&WAYLAND, &folders).is_empty() => &X11,
        (true, _) => &WAYLAND,
        (false, true) => &X11,
        (false, false) => {
            return Some(
                "There is no display: neither WAYLAND_DISPLAY nor DISPLAY is set. Start Evenwall from a desktop session."
                    .to_owned(),
            );
        }
    };
    let missing = missing_of(needed, &folders);
    if missing.is_empty() {
        return None;
    }
    let files: Vec<&str> = missing.iter().map(|m| m.0).collect();
    let packages: Vec<&str> = missing.iter().map(|m| m.1).collect();
    Some(format!(
        "The window needs {} of the system, which cannot be found. On Debian and its kin: apt install {}",
        files.join(", "),
        packages.join(" ")
    ))
}
