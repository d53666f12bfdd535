#![no_main]
#[path = "../checks/mod.rs"]
mod checks;

libfuzzer_sys::fuzz_target!(|data: &[u8]| checks::stock::check(data));
