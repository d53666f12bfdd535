//! Today's session for every lift of a log, with its reasons.
//!
//! `cargo run --release --example next_session` uses the demo log (an invented lifter).
//! `-- --log FILE --plan FILE --today DATE` uses yours; `--json` prints the whole answer as JSON.
//!
//! Exit codes: 0 the session is printed; 2 the options, a file or its content were refused (nothing is loaded
//! half); 3 something stops a lift today.

use std::io::IsTerminal;
use std::process::ExitCode;

use bismar::loading::{Loaded, Setting};
use bismar::prescription::{LiftToday, SessionPlan, Verdict, next_session};
use bismar::quantity::Day;
use bismar::record::{Log, Plan};
use bismar::value::Value;
use bismar::{Error, text};

const DEMO_LOG: &str = include_str!("data/demo-log.json");
const DEMO_PLAN: &str = include_str!("data/demo-plan.json");
const USAGE: &str = "options: --log FILE --plan FILE --today YYYY-MM-DD --json";
/// Lines are wrapped to this many columns.
const WIDTH: usize = 78;

fn main() -> ExitCode {
    match run() {
        Ok(stopped) => ExitCode::from(if stopped { 3 } else { 0 }),
        Err(message) => {
            eprintln!("{message}");
            ExitCode::from(2)
        }
    }
}

#[derive(Default)]
struct Options {
    log: Option<String>,
    plan: Option<String>,
    today: Option<Day>,
    json: bool,
}

fn options() -> Result<Options, String> {
    let mut options = Options::default();
    let mut arguments = std::env::args().skip(1);
    while let Some(name) = arguments.next() {
        if name == "--json" {
            options.json = true;
            continue;
        }
        if name == "--help" {
            return Err(USAGE.into());
        }
        let value = arguments.next().ok_or_else(|| format!("{name} needs a value; {USAGE}"))?;
        match name.as_str() {
            "--log" => options.log = Some(value),
            "--plan" => options.plan = Some(value),
            "--today" => options.today = Some(value.parse().map_err(|error: Error| text::error(&error))?),
            _ => return Err(format!("unknown option {name}; {USAGE}")),
        }
    }
    Ok(options)
}

fn read(file: Option<&String>, demo: &str) -> Result<String, String> {
    match file {
        Some(path) => std::fs::read_to_string(path).map_err(|error| format!("{path}: {error}")),
        None => Ok(demo.into()),
    }
}

fn run() -> Result<bool, String> {
    let options = options()?;
    let tied = |name: &str, file: Option<&String>| {
        let name = file.cloned().unwrap_or_else(|| format!("demo {name}"));
        move |error: Error| format!("{name}: {}", text::error(&error))
    };
    let log =
        Log::from_json(&read(options.log.as_ref(), DEMO_LOG)?).map_err(tied("log", options.log.as_ref()))?;
    let plan = Plan::from_json(&read(options.plan.as_ref(), DEMO_PLAN)?)
        .map_err(tied("plan", options.plan.as_ref()))?;
    // Without a date: the third day after the last event, as the next training day of the demo.
    let last = log.events.iter().map(|event| event.day).max();
    let default = last.and_then(|last| last.plus(2).ok());
    let today = options.today.or(default).ok_or("the log is empty; give --today")?;
    let session = next_session(&log, &plan, today).map_err(|error| text::error(&error))?;
    if options.json {
        let value = Value::write(&session).map_err(|error| text::error(&error))?;
        println!("{}", value.to_json_pretty());
    } else {
        print(&session, &log);
    }
    Ok(session.lifts.iter().any(|lift| lift.verdict == Verdict::Stop))
}

fn print(session: &SessionPlan, log: &Log) {
    let invented = if log.lifter.invented { " (invented data)" } else { "" };
    heading(&format!("{} for {}{invented}", session.today, log.lifter.id));
    for lift in &session.lifts {
        println!();
        heading(&text::lift_line(lift));
        if let Some(loaded) = &lift.loaded {
            wrapped("on the bar", &bar(loaded));
        }
        if !lift.warm_up.is_empty() {
            let sets: Vec<String> = lift
                .warm_up
                .iter()
                .map(|set| {
                    format!(
                        "{} x {}{}",
                        text::mass(set.load),
                        set.reps,
                        if set.reference { " (the fixed set)" } else { "" }
                    )
                })
                .collect();
            wrapped("warm-up", &sets.join(", "));
        }
        for reason in &lift.reasons {
            wrapped("why", &text::reason(reason));
        }
        step(lift);
        for caution in &lift.cautions {
            wrapped("mind", text::caution(*caution));
        }
    }
    println!();
    for caution in &session.cautions {
        wrapped("mind", text::caution(*caution));
    }
    wrapped("version", &format!("bismar {}, parameters {}", session.version, session.parameters));
}

fn step(lift: &LiftToday) {
    use bismar::progression::MoveOutlook;
    match &lift.outlook {
        MoveOutlook::OnOffer { .. } => wrapped("a step up?", &text::one_line(lift)),
        MoveOutlook::Blocked { by, .. } => {
            wrapped("a step up?", "Not today.");
            for reason in by {
                wrapped("", &text::reason(reason));
            }
            for missing in &lift.gate.missing {
                wrapped("gate", &text::missing(missing));
            }
            let changes: Vec<String> = lift.would_change.iter().map(text::change).collect();
            wrapped("would change", &changes.join("; "));
        }
    }
}

fn bar(loaded: &Loaded) -> String {
    let mut line = match &loaded.setting {
        Setting::Discs(discs) if discs.is_empty() => String::from("the empty bar"),
        Setting::Discs(discs) => {
            let discs: Vec<String> = discs.iter().map(|disc| text::mass(disc.nominal)).collect();
            format!("each side, from the inside: {}", discs.join(", "))
        }
        other => format!("{other:?}"),
    };
    line.push_str(&format!("; total {}", text::mass(loaded.total)));
    if let Some(height) = loaded.centre_height {
        line.push_str(&format!("; bar {height} above the floor"));
    }
    line
}

fn heading(line: &str) {
    if std::io::stdout().is_terminal() {
        println!("\u{1b}[1m{line}\u{1b}[0m");
    } else {
        println!("{line}");
    }
}

/// A label and a text, wrapped under each other.
fn wrapped(label: &str, content: &str) {
    let indent = 16;
    let mut line = format!("  {label:<14}");
    let mut length = indent;
    for word in content.split_whitespace() {
        if length + word.chars().count() > WIDTH && length > indent {
            println!("{}", line.trim_end());
            line = " ".repeat(indent);
            length = indent;
        }
        line.push_str(word);
        line.push(' ');
        length += word.chars().count() + 1;
    }
    println!("{}", line.trim_end());
}
