#![no_main]
#[path = "../checks/mod.rs"]
mod checks;

libfuzzer_sys::fuzz_mutator!(|data: &mut [u8], size: usize, max_size: usize, seed: u32| {
    match checks::mutate::document(data.get(..size).unwrap_or_default(), max_size, seed) {
        Some(other) => {
            data[..other.len()].copy_from_slice(&other);
            other.len()
        }
        None => libfuzzer_sys::fuzzer_mutate(data, size, max_size),
    }
});
libfuzzer_sys::fuzz_target!(|data: &[u8]| checks::documents::log(data));
