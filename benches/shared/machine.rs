//! Names the machine beside what was measured on it.

/// Processor, threads and architecture in one line.
pub fn machine() -> String {
    let text = std::fs::read_to_string("/proc/cpuinfo").unwrap_or_default();
    let model = text.lines().find_map(|line| line.strip_prefix("model name")).unwrap_or(" unknown");
    let threads = std::thread::available_parallelism().map_or(0, usize::from);
    format!("{}, {threads} threads, {}", model.trim_start_matches([' ', '\t', ':']), std::env::consts::ARCH)
}
