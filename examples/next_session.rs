//! Today's session for every lift of a log, with its reasons.
//!
//! `cargo run --release --example next_session` uses the demo log (an invented lifter).
//! `-- --log FILE --plan FILE --today DATE` uses yours; `--json` prints the whole answer as JSON.
//!
//! Exit codes: 0 the session is printed; 2 the options, a file or its content were refused (nothing is loaded
//! half); 3 something stops a lift today.

use std::io::{self, ErrorKind, IsTerminal, Write};
use std::process::ExitCode;

use bismar::prescription::{SessionPlan, next_session_from};
use bismar::progression::fold;
use bismar::quantity::Day;
use bismar::record::{EventKind, Log, Plan};
use bismar::text::{LiftSheet, Sheet, Words};
use bismar::value::Value;
use bismar::{Error, text};

const DEMO_LOG: &str = include_str!("data/demo-log.json");
const DEMO_PLAN: &str = include_str!("data/demo-plan.json");
const USAGE: &str = "options: --log FILE --plan FILE --today YYYY-MM-DD --json";
/// Lines are wrapped to this many columns, and what a label says begins in that one.
const WIDTH: usize = 78;
const INDENT: usize = 16;

fn main() -> ExitCode {
    let today = match today() {
        Ok(today) => today,
        Err(message) => {
            eprintln!("{message}");
            return ExitCode::from(2);
        }
    };
    match today.print() {
        // Whoever reads may have seen enough.
        Err(error) if error.kind() != ErrorKind::BrokenPipe => {
            eprintln!("{error}");
            ExitCode::from(2)
        }
        _ => ExitCode::from(if today.stopped() { 3 } else { 0 }),
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

/// What there is to print.
struct Today {
    session: SessionPlan,
    sheet: Sheet,
    title: String,
    json: bool,
}

/// Reads the options, the log and the plan, and asks for the session.
fn today() -> Result<Today, String> {
    let options = options()?;
    let tied = |name: &str, file: Option<&String>| {
        let name = file.cloned().unwrap_or_else(|| format!("demo {name}"));
        move |error: Error| format!("{name}: {}", text::error(&error))
    };
    let log =
        Log::from_json(&read(options.log.as_ref(), DEMO_LOG)?).map_err(tied("log", options.log.as_ref()))?;
    let plan = Plan::from_json(&read(options.plan.as_ref(), DEMO_PLAN)?)
        .map_err(tied("plan", options.plan.as_ref()))?;
    let day = options.today.or_else(|| next_day(&log)).ok_or("the log is empty; give --today")?;
    let state = fold(&log).map_err(tied("log", options.log.as_ref()))?;
    let session = next_session_from(&state, &plan, day).map_err(|error| text::error(&error))?;
    let sheet = state.parameters().map_or_else(Words::plain, Words::of).session(&session);
    let invented = if log.lifter.invented { " (invented data)" } else { "" };
    Ok(Today { session, sheet, title: format!("{}{invented}", log.lifter.id), json: options.json })
}

/// Without a date: the day whose questions the log ends with, as the demo does; else the second day after the last event.
fn next_day(log: &Log) -> Option<Day> {
    let last = log.events.iter().max_by_key(|event| (event.day, event.sequence))?;
    match last.kind {
        EventKind::DayReport(_) => Some(last.day),
        _ => last.day.plus(2).ok(),
    }
}

impl Today {
    fn stopped(&self) -> bool {
        !self.session.stops.is_empty()
    }

    fn print(&self) -> io::Result<()> {
        let stdout = io::stdout();
        let bold = stdout.is_terminal();
        let mut page = Page { out: stdout.lock(), bold };
        if self.json {
            let value = Value::write(&self.session).map_err(|error| io::Error::other(text::error(&error)))?;
            return writeln!(page.out, "{}", value.to_json_pretty());
        }
        page.heading(&self.title)?;
        // The sheet's own order: a stop before everything else.
        page.all("stop", &self.sheet.stop)?;
        page.heading(&self.sheet.day)?;
        for lift in &self.sheet.lifts {
            writeln!(page.out)?;
            page.lift(lift)?;
        }
        writeln!(page.out)?;
        page.all("mind", &self.sheet.mind)?;
        let (version, parameters) = (&self.session.version, &self.session.parameters);
        page.wrapped("version", &format!("bismar {version}, parameters {parameters}"))
    }
}

/// Where it is printed.
struct Page<W> {
    out: W,
    bold: bool,
}

impl<W: Write> Page<W> {
    fn lift(&mut self, lift: &LiftSheet) -> io::Result<()> {
        self.heading(&lift.line)?;
        lift.loading.iter().try_for_each(|line| self.wrapped("on the bar", line))?;
        lift.warm_up.iter().try_for_each(|line| self.wrapped("before", line))?;
        self.all("why", &lift.why)?;
        lift.step.iter().try_for_each(|line| self.wrapped("a step up?", line))?;
        // What was said as a reason is not said again.
        let against = lift.against.iter().filter(|line| !lift.why.contains(line));
        against.into_iter().try_for_each(|line| self.wrapped("", line))?;
        self.all("gate", &lift.missing)?;
        self.all("would change", &lift.changes)?;
        self.all("mind", &lift.mind)
    }

    fn heading(&mut self, line: &str) -> io::Result<()> {
        let (on, off) = if self.bold { ("\u{1b}[1m", "\u{1b}[0m") } else { ("", "") };
        for line in broken(line, WIDTH) {
            writeln!(self.out, "{on}{line}{off}")?;
        }
        Ok(())
    }

    fn all(&mut self, label: &str, lines: &[String]) -> io::Result<()> {
        lines.iter().try_for_each(|line| self.wrapped(label, line))
    }

    /// A label and a text, wrapped under each other.
    fn wrapped(&mut self, label: &str, content: &str) -> io::Result<()> {
        let mut label = label;
        for line in broken(content, WIDTH - INDENT) {
            writeln!(self.out, "  {label:<14}{line}")?;
            label = "";
        }
        Ok(())
    }
}

/// The text in lines of at most so many characters, as far as its words allow.
fn broken(content: &str, width: usize) -> Vec<String> {
    let mut lines = vec![String::new()];
    for word in content.split_whitespace() {
        match lines.last_mut() {
            Some(line) if line.is_empty() => line.push_str(word),
            Some(line) if line.chars().count() + 1 + word.chars().count() <= width => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.into()),
        }
    }
    lines
}
