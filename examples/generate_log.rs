//! Makes a training log of an invented lifter, seeded, for demos, benches and tests.
//!
//! `cargo run --release --example generate_log -- --seed 7 --years 2 --lifts 5 --out examples/data`
//!
//! Writes `demo-log.json` and `demo-plan.json`. The lifter trains as the library prescribes, so the log is what
//! a coach who follows it would record; the lifter's skill, days below the usual and pain come from the seed. Everything in
//! it is invented.

#[path = "shared/scenario.rs"]
mod scenario;

use std::process::ExitCode;

fn main() -> ExitCode {
    match run(std::env::args().skip(1).collect()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(message) => {
            eprintln!("{message}");
            ExitCode::from(2)
        }
    }
}

fn run(arguments: Vec<String>) -> Result<(), String> {
    let mut wanted = scenario::Wanted::default();
    let mut out = String::from("examples/data");
    let mut rest = arguments.into_iter();
    while let Some(name) = rest.next() {
        let value = rest.next().ok_or_else(|| format!("{name} needs a value"))?;
        let number = || value.parse::<u32>().map_err(|_| format!("{name}: {value} is not a whole number"));
        match name.as_str() {
            "--seed" => wanted.seed = number()?,
            "--years" => wanted.years = number()?,
            "--lifts" => wanted.lifts = number()?,
            "--out" => out = value,
            _ => return Err(format!("unknown option {name}; known: --seed --years --lifts --out")),
        }
    }
    let made = scenario::make(&wanted).map_err(|error| error.to_string())?;
    for (name, text) in [("demo-log.json", made.log_json), ("demo-plan.json", made.plan_json)] {
        let path = std::path::Path::new(&out).join(name);
        std::fs::write(&path, text).map_err(|error| format!("{}: {error}", path.display()))?;
    }
    println!("{} events, last day {}", made.log.events.len(), made.last_day);
    Ok(())
}
