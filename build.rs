//! Compiles the screens of `ui/` into the `evenwall-ui` crate.

fn main() {
    println!("cargo::rerun-if-env-changed=EVENWALL_UI_DEBUG_INFO");
    // UI tests find elements by their labels, which needs the element debug info.
    let for_tests = std::env::var("PROFILE").is_ok_and(|p| p == "debug")
        || std::env::var_os("EVENWALL_UI_DEBUG_INFO").is_some();
    let config = slint_build::CompilerConfiguration::new().with_debug_info(for_tests);
    if let Err(error) = slint_build::compile_with_config("app-window.slint", config) {
        eprintln!("{error}");
        std::process::exit(1);
    }
}
