//! Tells the crate whether the part it is compiled as keeps states between calls.

/// Some modules of the crate.
struct Part {
    name: &'static str,
    #[allow(dead_code, reason = "the table is shared; only the surface reads the modules")]
    modules: &'static [&'static str],
    keeps: bool,
}

const PARTS: &[Part] = include!("surface/src/part_table.rs");

fn main() {
    let named =
        |part: &&Part| std::env::var_os(format!("CARGO_FEATURE_{}", part.name.to_uppercase())).is_some();
    let mut parts = PARTS.iter().filter(named);
    // Several parts together are the whole.
    let part = parts.next().filter(|_| parts.next().is_none());
    println!("cargo::rustc-check-cfg=cfg(keeps)");
    if part.is_none_or(|part| part.keeps) {
        println!("cargo::rustc-cfg=keeps");
    }
    println!("cargo::rerun-if-changed=build.rs");
    println!("cargo::rerun-if-changed=surface/src/part_table.rs");
    println!("cargo::rerun-if-env-changed=BISMAR_BUILD_ID");
}
