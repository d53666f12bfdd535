//! Where every number comes from and what it is held against: the registry beside the published checks, as one page.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write;
use std::path::{Path, PathBuf};

use bismar::registry;
use bismar::source::{Kind, Row, Seen, Standing};
use bismar::value::Value;

/// The folder of the checks.
pub const CHECKS: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/published");

/// What a check can show, from most to least; a refusal shows what is not answered.
const KINDS: [&str; 7] = ["result", "missed", "constant", "library", "evaluation", "choice", "refusal"];

/// One check: which function, on whose authority, what it can show, and how near the answer has to come.
pub struct Check {
    pub function: String,
    pub standing: String,
    pub seen: Option<String>,
    pub kind: String,
    pub within: Vec<f64>,
}

/// One file of checks: what they are held against.
pub struct Work {
    pub id: String,
    pub standing: String,
    pub seen: Option<String>,
    pub citation: String,
    pub checks: Vec<Check>,
    /// Why a function has fewer than three checks, by key.
    pub fewer: Vec<(String, String)>,
    /// Why a function has no value from outside, by key.
    pub without_value: Vec<(String, String)>,
}

/// The page, and whatever is missing from it.
pub struct Report {
    pub page: String,
    pub gaps: Vec<String>,
}

/// Reads every file of checks in a folder.
pub fn works(folder: &Path) -> Result<Vec<Work>, String> {
    let entries = std::fs::read_dir(folder).map_err(|error| format!("{}: {error}", folder.display()))?;
    let mut paths: Vec<PathBuf> = entries.filter_map(|entry| entry.ok().map(|entry| entry.path())).collect();
    paths.retain(|path| path.extension().is_some_and(|kind| kind == "json") && !path.ends_with("names.json"));
    paths.sort();
    paths.iter().map(|path| work(path).map_err(|error| format!("{}: {error}", path.display()))).collect()
}

fn work(path: &Path) -> Result<Work, String> {
    let document = std::fs::read_to_string(path).map_err(|error| error.to_string())?;
    let document = Value::from_json(&document).map_err(|error| error.to_string())?;
    let source = document.field("source").ok_or("no source")?;
    let Some(Value::List(cases)) = document.field("cases") else { return Err("no cases".into()) };
    let checks: Result<Vec<Check>, String> =
        cases.iter().map(|case| check(case, &document, source)).collect();
    Ok(Work {
        id: text(source, "id").ok_or("no id")?,
        standing: text(source, "standing").unwrap_or_default(),
        seen: text(source, "seen"),
        citation: text(source, "citation").ok_or("no citation")?,
        checks: checks?,
        fewer: reasons(&document, "fewer_than_three"),
        without_value: reasons(&document, "no_outside_value"),
    })
}

fn reasons(document: &Value, field: &str) -> Vec<(String, String)> {
    let Some(Value::Map(fields)) = document.field(field) else { return Vec::new() };
    let reason = |(key, reason): &(bismar::value::Key, Value)| match reason {
        Value::Text(reason) => (key.to_string(), reason.to_string()),
        _ => (key.to_string(), String::new()),
    };
    fields.iter().map(reason).collect()
}

fn check(case: &Value, document: &Value, source: &Value) -> Result<Check, String> {
    let own = |field| text(case, field).or_else(|| text(source, field));
    let standing = own("standing").ok_or("a case without a standing")?;
    // What is computed or chosen in a file of printed numbers has not been seen anywhere.
    let sourced = !matches!(standing.as_str(), "computed" | "our-choice");
    let refusal = case.field("expect_error").map(|_| "refusal".to_string());
    let mut kind = text(case, "kind").or(refusal).or_else(|| text(document, "kind"));
    if kind.as_deref() == Some("result") && case.field("follows") == Some(&Value::Bool(false)) {
        kind = Some("missed".into());
    }
    let mut within = Vec::new();
    if let Some(expected) = case.field("expect") {
        tolerances(expected, case.field("within"), &mut within);
    }
    Ok(Check {
        function: text(case, "function").ok_or("a case without a function")?,
        standing,
        seen: if sourced { own("seen") } else { None },
        kind: kind.ok_or("a case without a kind")?,
        within,
    })
}

fn text(value: &Value, field: &str) -> Option<String> {
    match value.field(field) {
        Some(Value::Text(text)) => Some(text.to_string()),
        _ => None,
    }
}

/// How near each expected number has to come: a tolerance over several holds for all of them, none means exact.
fn tolerances(expected: &Value, within: Option<&Value>, found: &mut Vec<f64>) {
    match (expected, within) {
        (Value::Map(fields), Some(Value::Number(_)) | None) => {
            fields.iter().for_each(|(_, item)| tolerances(item, within, found));
        }
        (Value::Map(fields), Some(tolerance)) => {
            fields.iter().for_each(|(key, item)| tolerances(item, tolerance.field(key), found));
        }
        (Value::List(items), Some(Value::List(each))) => {
            items.iter().zip(each).for_each(|(item, tolerance)| tolerances(item, Some(tolerance), found));
        }
        (Value::List(items), _) => items.iter().for_each(|item| tolerances(item, within, found)),
        (Value::Number(_), Some(Value::Number(tolerance))) => found.push(*tolerance),
        (Value::Null, _) => {}
        _ => found.push(0.0),
    }
}

/// The report over these rows and these checks.
pub fn report(rows: &[&'static Row], works: &[Work]) -> Report {
    let mut checks: BTreeMap<&str, Vec<&Check>> = BTreeMap::new();
    for check in works.iter().flat_map(|work| &work.checks) {
        checks.entry(check.function.as_str()).or_default().push(check);
    }
    let mut gaps = gaps(rows, &checks);
    gaps.extend(too_few(rows, &checks, works));
    Report { page: page(rows, works, &checks, &gaps), gaps }
}

type Checks<'a> = BTreeMap<&'a str, Vec<&'a Check>>;

/// What is derived or chosen was seen nowhere, what is published was seen somehow, and nothing is called a standard
/// whose document nobody saw, not even in a copy.
pub fn standing_and_seen_agree(row: &Row) -> bool {
    match row.standing {
        Standing::Published => row.seen != Seen::NotApplicable,
        Standing::Standard => matches!(row.seen, Seen::Read | Seen::Secondary),
        Standing::Derived | Standing::OurChoice => row.seen == Seen::NotApplicable,
        Standing::CommonPractice => true,
    }
}

fn gaps(rows: &[&Row], checks: &Checks<'_>) -> Vec<String> {
    let mut gaps = Vec::new();
    let keys: BTreeSet<&str> = rows.iter().map(|row| row.key).collect();
    gaps.extend(checks.keys().filter(|key| !keys.contains(*key)).map(|key| format!("{key}: checks, no row")));
    for row in rows {
        let mut gap = |missing: bool, what: &str| {
            if missing {
                gaps.push(format!("{}: {what}", row.key));
            }
        };
        gap(!checks.contains_key(row.key), "no check");
        gap(row.source.citation.is_empty(), "no source");
        gap(row.place.is_empty(), "no place in its source");
        gap(row.doc.trim().is_empty(), "no documentation");
        gap(!standing_and_seen_agree(row), "standing and seen disagree");
        gap((row.seen == Seen::Secondary) == row.copies.is_empty(), "copies and seen disagree");
        let in_part = matches!(row.seen, Seen::Read | Seen::Secondary);
        gap(!in_part && !row.recalled.is_empty(), "recalled in part and seen disagree");
        let typed_from_memory =
            |check: &&Check| check.kind == "constant" && check.seen.as_deref() == Some("memory");
        let recalled = checks.get(row.key).into_iter().flatten().any(typed_from_memory);
        gap(
            in_part && recalled && row.recalled.is_empty(),
            "a recalled constant that the row does not own up to",
        );
        let other_words = |other: &&&Row| other.source.id == row.source.id && other.source != row.source;
        gap(rows.iter().any(|other| other_words(&other)), "its source is cited in other words elsewhere");
    }
    gaps
}

/// Kinds whose value came from outside the project.
const FROM_OUTSIDE: [&str; 5] = ["result", "missed", "constant", "library", "evaluation"];

/// Whether a value from outside could exist at all: of a choice of our own, or of the trade, there is none to compare
/// with.
fn has_an_outside(row: &Row) -> bool {
    !matches!(row.standing, Standing::OurChoice | Standing::CommonPractice)
}

/// Functions with fewer than three checks, or without a value from outside, that do not say why; and reasons that are
/// not needed. What takes no arguments has one answer.
fn too_few(rows: &[&Row], checks: &Checks<'_>, works: &[Work]) -> Vec<String> {
    let mut gaps = Vec::new();
    let fewer: BTreeMap<&str, &str> = said_why(works, |work| &work.fewer);
    let without: BTreeMap<&str, &str> = said_why(works, |work| &work.without_value);
    for row in rows {
        let count = checks.get(row.key).map_or(0, Vec::len);
        let few = count > 0 && count < 3 && !row.arguments.is_empty();
        let outside = |check: &&Check| FROM_OUTSIDE.contains(&check.kind.as_str());
        let bare =
            count > 0 && has_an_outside(row) && !checks.get(row.key).into_iter().flatten().any(outside);
        let mut gap = |wrong: bool, what: &str| {
            if wrong {
                gaps.push(format!("{}: {what}", row.key));
            }
        };
        gap(few && !fewer.contains_key(row.key), "fewer than three checks, and no reason");
        gap(!few && fewer.contains_key(row.key), "a reason for fewer than three checks that is not needed");
        gap(bare && !without.contains_key(row.key), "no value from outside, and no reason");
        gap(!bare && without.contains_key(row.key), "a reason for no value from outside that is not needed");
    }
    gaps
}

fn said_why(works: &[Work], of: fn(&Work) -> &Vec<(String, String)>) -> BTreeMap<&str, &str> {
    let reasons = works.iter().flat_map(of).filter(|(_, reason)| !reason.trim().is_empty());
    reasons.map(|(key, reason)| (key.as_str(), reason.as_str())).collect()
}

fn page(rows: &[&'static Row], works: &[Work], checks: &Checks<'_>, gaps: &[String]) -> String {
    let mut page = String::from(HEAD);
    summary(&mut page, rows, works, gaps);
    let independent = independent(rows, works);
    let percent = 100 * independent / rows.len().max(1);
    let _ = writeln!(
        page,
        "\n{independent} of {} rows ({percent} %) have a result that they give, or an independent implementation.",
        rows.len()
    );
    rows_by_kind(&mut page, rows, checks);
    checks_by_kind(&mut page, works);
    let read = |row: &Row| {
        let of_row = checks.get(row.key).into_iter().flatten();
        of_row.filter(|check| check.seen.as_deref() == Some("read")).count() > 0
    };
    let (memory, rest): (Vec<&&Row>, Vec<&&Row>) = rows.iter().partition(|row| row.seen == Seen::Memory);
    let (some, none): (Vec<&Row>, Vec<&Row>) = memory.into_iter().copied().partition(|row| read(row));
    page.push_str(
        "\n# Recalled only\n\nNothing that was read stands behind these: take them with most care.\n",
    );
    by_module(&mut page, &none, checks);
    page.push_str("\n# Recalled, with at least one check that was read\n");
    by_module(&mut page, &some, checks);
    let (copied, rest): (Vec<&Row>, Vec<&Row>) =
        rest.into_iter().copied().partition(|row| row.seen == Seen::Secondary);
    if !copied.is_empty() {
        page.push_str("\n# Seen in copies\n\nNot read in the work itself. Several copies are equal; where one only was seen, the row says so.\n");
        by_module(&mut page, &copied, checks);
    }
    page.push_str("\n# Read, derived or chosen\n");
    by_module(&mut page, &rest, checks);
    few(&mut page, rows, checks, works);
    sources(&mut page, rows);
    held_against(&mut page, works);
    page
}

const HEAD: &str = "\
Every public formula, table and default of this version: where it comes from, and what it is held against.

Made from the registry and the files of checks by `cargo run --example provenance`, which fails where anything is
missing; the published checks fail when this page is older than they are.

**Standing** is what kind of authority a number has: *published* in the cited work, set by a *standard*, *derived* by
arithmetic, *common practice* of the trade, or *our choice*, which is a parameter. An equation solved for another of its
quantities stands as the equation does. **Seen** is how a published number
reached this project: *read* in the work or in an abstract of it, *copies* where public copies of it were seen, equal where
there are several, but not the work itself, or *recalled* and not read again. A row names the part of it that is recalled.
**Checks** count the cases by what they can show. A *result* is an outcome somebody else printed or certified: a worked
example, a measured mean, a certified value. *Missed* is such an outcome that the row does not give: it is kept beside
what the row gives, and counts for nothing. A *constant* is a number of the source typed a second time: it finds a slip
of the finger, not a wrong source. *Library* is the answer of an independent implementation; *evaluation* is the same
formula evaluated elsewhere: both show that the arithmetic is right, not that a recalled coefficient is. A *choice* is our
own number or rule written down a second time. A *refusal* is an input that is not answered. **Within** is how near the
answers have to come: the smallest and the largest tolerance over every number and word of the answers, in the unit of
the answer; *exact* where none is given.
";

fn summary(page: &mut String, rows: &[&Row], works: &[Work], gaps: &[String]) {
    let cases: usize = works.iter().map(|work| work.checks.len()).sum();
    let _ =
        writeln!(page, "\n{} rows, {cases} checks from {} files, gaps: {}.\n", rows.len(), works.len(), {
            if gaps.is_empty() { "none".into() } else { gaps.join("; ") }
        });
}

/// Rows with a check that could have shown a wrong formula and did not: an outcome, or an independent implementation.
pub fn independent(rows: &[&Row], works: &[Work]) -> usize {
    let checks = works.iter().flat_map(|work| &work.checks);
    let keys: BTreeSet<&str> = checks
        .filter(|check| matches!(check.kind.as_str(), "result" | "library"))
        .map(|check| check.function.as_str())
        .collect();
    rows.iter().filter(|row| keys.contains(row.key)).count()
}

/// Rows with at least one check of a kind, by standing.
fn rows_by_kind(page: &mut String, rows: &[&Row], checks: &Checks<'_>) {
    let mut table: BTreeMap<String, (usize, [usize; KINDS.len()])> = BTreeMap::new();
    for row in rows {
        let (count, kinds) = table.entry(said(standing(row.standing), seen(row.seen))).or_default();
        *count += 1;
        for (kind, rows) in KINDS.iter().zip(kinds) {
            *rows += usize::from(checks.get(row.key).into_iter().flatten().any(|check| check.kind == *kind));
        }
    }
    page.push_str("\nRows with at least one check of the kind:\n");
    by_kind(page, "rows", &table);
}

/// All checks by standing and kind.
fn checks_by_kind(page: &mut String, works: &[Work]) {
    let mut table: BTreeMap<String, (usize, [usize; KINDS.len()])> = BTreeMap::new();
    for check in works.iter().flat_map(|work| &work.checks) {
        let seen = check.seen.as_deref().map_or("", seen_of_check);
        let (count, kinds) = table.entry(said(&check.standing.replace('-', " "), seen)).or_default();
        *count += 1;
        for (kind, checks) in KINDS.iter().zip(kinds) {
            *checks += usize::from(check.kind == *kind);
        }
    }
    page.push_str("\nChecks:\n");
    by_kind(page, "checks", &table);
}

fn said(standing: &str, seen: &str) -> String {
    if seen.is_empty() { standing.to_string() } else { format!("{standing}, {seen}") }
}

fn by_kind(page: &mut String, what: &str, table: &BTreeMap<String, (usize, [usize; KINDS.len()])>) {
    let _ = writeln!(page, "\n| standing | {what} | {} |", KINDS.join(" | "));
    let _ = writeln!(page, "|---|---:|{}", "---:|".repeat(KINDS.len()));
    let mut all = (0, [0; KINDS.len()]);
    for (standing, (count, kinds)) in table {
        kind_line(page, standing, *count, kinds);
        all.0 += count;
        for (sum, count) in all.1.iter_mut().zip(kinds) {
            *sum += count;
        }
    }
    kind_line(page, "all", all.0, &all.1);
}

fn kind_line(page: &mut String, standing: &str, count: usize, kinds: &[usize]) {
    let kinds: Vec<String> = kinds.iter().map(ToString::to_string).collect();
    let _ = writeln!(page, "| {standing} | {count} | {} |", kinds.join(" | "));
}

fn by_module(page: &mut String, rows: &[&Row], checks: &Checks<'_>) {
    let module = |row: &&Row| row.key.split('.').next().unwrap_or_default();
    for rows in rows.chunk_by(|a, b| module(a) == module(b)) {
        let name = rows.first().map(module).unwrap_or_default();
        let _ = write!(page, "\n## `{name}`\n");
        table(page, rows, checks);
    }
}

fn table(page: &mut String, rows: &[&Row], checks: &Checks<'_>) {
    page.push_str("\n| what | source | where | standing | checks | within |\n|---|---|---|---|---|---|\n");
    for row in rows {
        let none = Vec::new();
        let checks = checks.get(row.key).unwrap_or(&none);
        // What was recalled stands in sections of its own.
        let standing = match row.seen {
            Seen::Read => format!("{}, read", standing(row.standing)),
            Seen::Secondary => format!("{}, seen in {}", standing(row.standing), row.copies),
            _ => standing(row.standing).to_string(),
        };
        let standing = match row.recalled {
            "" => standing,
            part => format!("{standing}; recalled: {part}"),
        };
        let _ = writeln!(
            page,
            "| {} | {} | {} | {standing} | {} | {} |",
            what(row),
            row.source.id,
            plain(row.place),
            counts(checks),
            tolerance(checks)
        );
    }
}

/// The name below its module's heading, and the number where the row is one.
fn what(row: &Row) -> String {
    let name = row.key.split_once('.').map_or(row.key, |(_, name)| name);
    let value =
        (row.kind == Kind::Constant).then(|| registry::call(row.key, &Value::Map(Vec::new())).ok()).flatten();
    match value {
        Some(Value::Number(number)) => format!("`{name}` = {number}"),
        _ => format!("`{name}`"),
    }
}

/// How many checks of which kind, with how the printed ones were seen.
fn counts(checks: &[&Check]) -> String {
    let mut said = Vec::new();
    for kind in KINDS {
        let mut by_seen: BTreeMap<&str, usize> = BTreeMap::new();
        for check in checks.iter().filter(|check| check.kind == kind) {
            let seen = if kind == "refusal" { None } else { check.seen.as_deref() };
            *by_seen.entry(seen.map_or("", seen_of_check)).or_default() += 1;
        }
        said.extend(by_seen.iter().map(|(seen, count)| match *seen {
            "" => format!("{count} {kind}"),
            seen => format!("{count} {kind} ({seen})"),
        }));
    }
    if said.is_empty() { "NONE".into() } else { said.join(", ") }
}

fn seen_of_check(seen: &str) -> &'static str {
    match seen {
        "read" => "read",
        "secondary" => "copies",
        _ => "recalled",
    }
}

fn tolerance(checks: &[&Check]) -> String {
    let mut all: Vec<f64> = checks.iter().flat_map(|check| check.within.iter().copied()).collect();
    all.sort_by(f64::total_cmp);
    match (all.first(), all.last()) {
        (Some(least), Some(most)) if number(*least) == number(*most) => number(*least),
        (Some(least), Some(most)) => format!("{} to {}", number(*least), number(*most)),
        _ => "-".into(),
    }
}

fn number(value: f64) -> String {
    let short: f64 = format!("{value:.2e}").parse().unwrap_or(value);
    match short {
        0.0 => "exact".into(),
        tiny if tiny < 1e-3 => format!("{tiny:e}"),
        other => format!("{other}"),
    }
}

/// Why some have few checks.
fn few(page: &mut String, rows: &[&Row], checks: &Checks<'_>, works: &[Work]) {
    let count = |key: &str| checks.get(key).map_or(0, Vec::len);
    let one_answer = rows.iter().filter(|row| row.arguments.is_empty() && count(row.key) < 3).count();
    let choices = rows.iter().filter(|row| {
        let outside = |check: &&Check| FROM_OUTSIDE.contains(&check.kind.as_str());
        !has_an_outside(row) && !checks.get(row.key).into_iter().flatten().any(outside)
    });
    let _ = write!(
        page,
        "\n# Few checks, and why\n\n{one_answer} rows with fewer than three checks take no arguments: there is one answer. {} \
         rows are choices of this project or of the trade: there is nothing outside to compare them with. The others say \
         why:\n\n| what | why there are not three checks, or no value from outside |\n|---|---|\n",
        choices.count()
    );
    for (key, reason) in said_why(works, |work| &work.fewer) {
        let _ = writeln!(page, "| `{key}` | {} |", plain(reason));
    }
    for (key, reason) in said_why(works, |work| &work.without_value) {
        let _ = writeln!(page, "| `{key}` | no value from outside: {} |", plain(reason));
    }
}

fn sources(page: &mut String, rows: &[&Row]) {
    page.push_str("\n# Sources of the numbers\n\n| source | work | DOI |\n|---|---|---|\n");
    let unique: BTreeMap<&str, (&str, Option<&str>)> =
        rows.iter().map(|row| (row.source.id, (row.source.citation, row.source.doi))).collect();
    for (id, (citation, doi)) in unique {
        let doi = doi.map_or(String::new(), |doi| format!("`{doi}`"));
        let _ = writeln!(page, "| {id} | {} | {doi} |", plain(citation));
    }
}

fn held_against(page: &mut String, works: &[Work]) {
    page.push_str(
        "\n# What the checks are held against\n\n| file | against | standing | checks |\n|---|---|---|---:|\n",
    );
    for work in works {
        let seen = work.seen.as_deref().map_or("", seen_of_check);
        let standing = said(&work.standing.replace('-', " "), seen);
        let _ = writeln!(
            page,
            "| {} | {} | {standing} | {} |",
            work.id,
            plain(&work.citation),
            work.checks.len()
        );
    }
}

fn standing(standing: Standing) -> &'static str {
    match standing {
        Standing::Published => "published",
        Standing::Standard => "standard",
        Standing::Derived => "derived",
        Standing::CommonPractice => "common practice",
        Standing::OurChoice => "our choice",
    }
}

fn seen(seen: Seen) -> &'static str {
    match seen {
        Seen::Read => "read",
        Seen::Secondary => "copies",
        Seen::Memory => "recalled",
        Seen::NotApplicable => "",
    }
}

/// Text that is safe in a cell: nothing in it is taken for a column, a link, a tag or emphasis.
fn plain(text: &str) -> String {
    let mut plain = String::new();
    for character in text.split_whitespace().collect::<Vec<_>>().join(" ").chars() {
        match character {
            '|' | '[' | ']' | '*' | '_' | '`' => plain.extend(['\\', character]),
            '<' => plain.push_str("&lt;"),
            '>' => plain.push_str("&gt;"),
            other => plain.push(other),
        }
    }
    plain
}
