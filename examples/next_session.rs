//! Today's session for every lift of a log, with its reasons.
//!
//! `cargo run --release --example next_session` uses the demo log (an invented lifter).
//! `-- --log FILE --plan FILE --today DATE` uses yours; `--json` prints the whole answer as JSON.
//!
//! Exit codes: 0 the session is printed; 2 the options, a file or its content were refused (nothing is loaded
//! half); 3 something stops a lift today.

use std::io::{self, ErrorKind, IsTerminal, Write};
use std::process::ExitCode;

use bismar::loading::{Loaded, Setting};
use bismar::prescription::{LiftToday, SessionPlan, Verdict, WarmUpSet, next_session};
use bismar::progression::MoveOutlook;
use bismar::quantity::Day;
use bismar::record::{EventKind, Log, Plan};
use bismar::value::Value;
use bismar::{Error, text};

const DEMO_LOG: &str = include_str!("data/demo-log.json");
const DEMO_PLAN: &str = include_str!("data/demo-plan.json");
const USAGE: &str = "options: --log FILE --plan FILE --today YYYY-MM-DD --json";
/// Lines are wrapped to this many columns.
const WIDTH: usize = 78;

fn main() -> ExitCode {
    let (session, log, json) = match read_all() {
        Ok(read) => read,
        Err(message) => {
            eprintln!("{message}");
            return ExitCode::from(2);
        }
    };
    let stopped = session.lifts.iter().any(|lift| lift.verdict == Verdict::Stop);
    match print(&session, &log, json) {
        // Whoever reads may have seen enough.
        Err(error) if error.kind() != ErrorKind::BrokenPipe => {
            eprintln!("{error}");
            ExitCode::from(2)
        }
        _ => ExitCode::from(if stopped { 3 } else { 0 }),
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

/// Reads the options, the log and the plan, and asks for the session.
fn read_all() -> Result<(SessionPlan, Log, bool), String> {
    let options = options()?;
    let tied = |name: &str, file: Option<&String>| {
        let name = file.cloned().unwrap_or_else(|| format!("demo {name}"));
        move |error: Error| format!("{name}: {}", text::error(&error))
    };
    let log =
        Log::from_json(&read(options.log.as_ref(), DEMO_LOG)?).map_err(tied("log", options.log.as_ref()))?;
    let plan = Plan::from_json(&read(options.plan.as_ref(), DEMO_PLAN)?)
        .map_err(tied("plan", options.plan.as_ref()))?;
    let today = options.today.or_else(|| next_day(&log)).ok_or("the log is empty; give --today")?;
    let session = next_session(&log, &plan, today).map_err(|error| text::error(&error))?;
    Ok((session, log, options.json))
}

/// Without a date: the day whose questions the log ends with, as the demo does; else the second day after the last event.
fn next_day(log: &Log) -> Option<Day> {
    let last = log.events.iter().max_by_key(|event| (event.day, event.sequence))?;
    match last.kind {
        EventKind::DayReport(_) => Some(last.day),
        _ => last.day.plus(2).ok(),
    }
}

fn print(session: &SessionPlan, log: &Log, json: bool) -> io::Result<()> {
    let stdout = io::stdout();
    let bold = stdout.is_terminal();
    let mut page = Page { out: stdout.lock(), bold };
    if json {
        let value = Value::write(session).map_err(|error| io::Error::other(text::error(&error)))?;
        writeln!(page.out, "{}", value.to_json_pretty())
    } else {
        page.session(session, log)
    }
}

/// Where it is printed.
struct Page<W> {
    out: W,
    bold: bool,
}

impl<W: Write> Page<W> {
    fn session(&mut self, session: &SessionPlan, log: &Log) -> io::Result<()> {
        let invented = if log.lifter.invented { " (invented data)" } else { "" };
        self.heading(&format!("{} for {}{invented}", session.today, log.lifter.id))?;
        for lift in &session.lifts {
            writeln!(self.out)?;
            self.lift(lift)?;
        }
        writeln!(self.out)?;
        for caution in &session.cautions {
            self.wrapped("mind", text::caution(*caution))?;
        }
        self.wrapped("version", &format!("bismar {}, parameters {}", session.version, session.parameters))
    }

    fn lift(&mut self, lift: &LiftToday) -> io::Result<()> {
        self.heading(&text::lift_line(lift))?;
        if let Some(loaded) = &lift.loaded {
            self.wrapped("on the bar", &bar(lift, loaded))?;
        }
        if !lift.warm_up.is_empty() {
            let sets: Vec<String> = lift.warm_up.iter().map(warm_up).collect();
            self.wrapped("warm-up", &sets.join(", "))?;
        }
        for reason in &lift.reasons {
            self.wrapped("why", &text::reason(reason))?;
        }
        self.step(lift)?;
        for caution in &lift.cautions {
            self.wrapped("mind", text::caution(*caution))?;
        }
        Ok(())
    }

    fn step(&mut self, lift: &LiftToday) -> io::Result<()> {
        let by = match &lift.outlook {
            MoveOutlook::OnOffer { .. } => return self.wrapped("a step up?", &text::one_line(lift)),
            MoveOutlook::Blocked { by, .. } => by,
        };
        self.wrapped("a step up?", "Not today.")?;
        for reason in by {
            self.wrapped("", &text::reason(reason))?;
        }
        for missing in &lift.gate.missing {
            self.wrapped("gate", &text::missing(missing))?;
        }
        let changes: Vec<String> = lift.would_change.iter().map(text::change).collect();
        self.wrapped("would change", &changes.join("; "))
    }

    fn heading(&mut self, line: &str) -> io::Result<()> {
        if self.bold { writeln!(self.out, "\u{1b}[1m{line}\u{1b}[0m") } else { writeln!(self.out, "{line}") }
    }

    /// A label and a text, wrapped under each other.
    fn wrapped(&mut self, label: &str, content: &str) -> io::Result<()> {
        let indent = 16;
        let mut line = format!("  {label:<14}");
        let mut length = indent;
        for word in content.split_whitespace() {
            if length + word.chars().count() > WIDTH && length > indent {
                writeln!(self.out, "{}", line.trim_end())?;
                line = " ".repeat(indent);
                length = indent;
            }
            line.push_str(word);
            line.push(' ');
            length += word.chars().count() + 1;
        }
        writeln!(self.out, "{}", line.trim_end())
    }
}

fn warm_up(set: &WarmUpSet) -> String {
    let fixed = if set.reference { " (the fixed set)" } else { "" };
    format!("{} x {}{fixed}", text::mass(set.load), set.reps)
}

fn bar(lift: &LiftToday, loaded: &Loaded) -> String {
    let mut line = match &loaded.setting {
        Setting::Discs(discs) if discs.is_empty() => String::from("the empty bar"),
        Setting::Discs(discs) => {
            let discs: Vec<String> = discs.iter().map(|disc| text::mass(disc.nominal)).collect();
            format!("each side, from the inside: {}", discs.join(", "))
        }
        other => format!("{other:?}"),
    };
    line.push_str(&format!("; total {}", text::mass(loaded.total)));
    if let Some(height) = lift.height {
        line.push_str(&format!("; bar {height} above the floor"));
    }
    if let Some(blocks) = lift.blocks {
        line.push_str(&format!(", on blocks of {blocks}"));
    }
    line
}
