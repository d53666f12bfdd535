//! The lines of the table of speeds: one shape for every bench, so that `benches/table.sh` can gather them.
#![allow(dead_code, reason = "not every bench prints every kind of line")]
#![allow(clippy::disallowed_methods, reason = "an exponent for people to read")]

use std::time::{Duration, Instant};

/// Names the machine and how busy it is, and heads the table.
pub fn heading() {
    println!("\nmachine: {}; load average {}", machine(), load_average());
    println!("| what | ours | peer | ratio | budget | met |");
    println!("|---|---:|---:|---:|---|---|");
}

/// Processor, threads and architecture in one line.
fn machine() -> String {
    let text = std::fs::read_to_string("/proc/cpuinfo").unwrap_or_default();
    let model = text.lines().find_map(|line| line.strip_prefix("model name")).unwrap_or(" unknown");
    let threads = std::thread::available_parallelism().map_or(0, usize::from);
    format!("{}, {threads} threads, {}", model.trim_start_matches([' ', '\t', ':']), std::env::consts::ARCH)
}

/// Processes that wanted to run, over the last minute: above the number of threads, times are too long.
fn load_average() -> String {
    let text = std::fs::read_to_string("/proc/loadavg").unwrap_or_default();
    text.split_whitespace().next().unwrap_or("unknown").to_string()
}

/// One line of the table. A ratio says how many times as fast ours is as the peer.
#[derive(Default)]
pub struct Row<'a> {
    pub what: &'a str,
    pub ours: String,
    pub peer: String,
    pub ratio: Option<f64>,
    pub budget: String,
    pub met: Option<bool>,
}

impl Row<'_> {
    pub fn print(&self) {
        let ratio = self.ratio.map_or(String::new(), |ratio| match ratio {
            small if small < 100.0 => format!("{small:.2}"),
            large => format!("{large:.0}"),
        });
        let met = match self.met {
            Some(true) => "met",
            Some(false) => "NOT MET",
            None => "",
        };
        println!("| {} | {} | {} | {ratio} | {} | {met} |", self.what, self.ours, self.peer, self.budget);
    }
}

/// The shortest time of some runs: what other work on the machine disturbs least.
pub fn shortest(runs: usize, mut run: impl FnMut()) -> Duration {
    shortest_told(runs, || {
        let start = Instant::now();
        run();
        start.elapsed()
    })
}

/// The same where each run says how long the part of it took that counts.
pub fn shortest_told(runs: usize, mut run: impl FnMut() -> Duration) -> Duration {
    (0..runs).map(|_| run()).min().unwrap_or_default()
}

/// A time in the unit that suits it.
pub fn time(seconds: f64) -> String {
    match seconds {
        long if long >= 1.0 => format!("{long:.2} s"),
        long if long >= 1e-3 => format!("{:.2} ms", long * 1e3),
        short if short >= 1e-6 => format!("{:.2} us", short * 1e6),
        shorter => format!("{:.2} ns", shorter * 1e9),
    }
}

/// How the time grows with the size: 1 is in proportion.
pub fn growth(what: &str, sizes: [f64; 2], seconds: [f64; 2]) {
    let exponent = (seconds[1] / seconds[0]).ln() / (sizes[1] / sizes[0]).ln();
    let what = format!("{what}: growth exponent from {} to {}", sizes[0], sizes[1]);
    Row { what: &what, ours: format!("{exponent:.3}"), ..Row::default() }.print();
}
