//! Making the yearly card: what is due, what is planned, and what is worth a talk with a clinician.

use alloc::vec;
use alloc::vec::Vec;

use super::card::{
    BodyMassOn, CardItem, CardLine, CardNote, CardSettings, CardState, YearlyCard, YearlyFacts,
};
use crate::caution::Caution;
use crate::error::{Allowed, Code, Error};
use crate::numeric;
use crate::quantity::Day;
use crate::source::{COMMON_PRACTICE, formula, rows};

/// Most entries of each list of the facts.
pub const MOST_CARD_ENTRIES: u32 = 1_000;

formula! {
    "horizon.yearly_card",
    /// What is due this year: clearances, function tests, weighings, lifts to swap, gaps?
    ///
    /// # Formula
    /// Due = last done + days allowed; never done = due today. Lines by day, then by kind. A loss of body mass is the
    /// latest one against the highest within the days before it.
    ///
    /// # Domain
    /// At most 1000 entries a list. Gaps that are over are left out.
    ///
    /// # Errors
    /// `ages_reversed` for a thing done after today or a gap that ends before it begins; `out_of_range`.
    ///
    /// # Source
    /// Common practice; the days are parameters (row `horizon.yearly_card`).
    ///
    /// # Examples
    /// ```
    /// use bismar::horizon::{CardItem, CardSettings, CardState, YearlyFacts, yearly_card};
    ///
    /// let facts = YearlyFacts::default().with_clearance(Some("2025-03-01".parse()?));
    /// let card = yearly_card(&facts, "2026-03-29".parse()?, &CardSettings::default())?;
    /// let first = card.lines.first().ok_or(bismar::Error::plain(bismar::Code::NotEnoughData, "lines"))?;
    /// assert_eq!((&first.item, first.state, first.days_left), (&CardItem::Clearance, CardState::Overdue, -28));
    /// # Ok::<(), bismar::Error>(())
    /// ```
    pub fn yearly_card(facts: &YearlyFacts, today: Day, settings: &CardSettings) -> Result<YearlyCard, Error> {
        within_limits(facts, settings)?;
        let mut lines = vec![since(CardItem::Clearance, facts.clearance, settings.clearance_days, today, settings)?];
        lines.extend(test_lines(facts, today, settings)?);
        let weighed = facts.body_masses.iter().map(|entry| entry.on).max();
        lines.push(since(CardItem::BodyMass, weighed, settings.body_mass_days, today, settings)?);
        for entry in &facts.equipment {
            let item = CardItem::Weigh(entry.equipment.clone());
            lines.push(since(item, entry.on, settings.weighing_days, today, settings)?);
        }
        for swap in &facts.swaps {
            let item = CardItem::Swap { lift: swap.lift.clone(), replacement: swap.replacement.clone() };
            lines.push(line(item, swap.by, today, settings));
        }
        lines.extend(gap_lines(facts, today, settings)?);
        crate::numeric::sort::sort_by(&mut lines, |a, b| (a.due, &a.item).cmp(&(b.due, &b.item)));
        let notes = notes(facts, today, settings)?;
        let cautions = if notes.is_empty() { vec![] } else { vec![Caution::TalkToClinician] };
        Ok(YearlyCard { lines, notes, cautions })
    }
    source: COMMON_PRACTICE, place: "yearly review", standing: CommonPractice, seen: NotApplicable,
    population: "nobody was measured; a calendar of the lifter's own dates", domain: "at most 1000 entries a list",
}

fn within_limits(facts: &YearlyFacts, settings: &CardSettings) -> Result<(), Error> {
    let most = f64::from(MOST_CARD_ENTRIES);
    let lengths = [
        ("facts.tests", facts.tests.len()),
        ("facts.equipment", facts.equipment.len()),
        ("facts.swaps", facts.swaps.len()),
        ("facts.gaps", facts.gaps.len()),
        ("facts.body_masses", facts.body_masses.len()),
        ("settings.tests", settings.tests.len()),
    ];
    for (field, length) in lengths {
        numeric::within(Code::OutOfRange, field, length as f64, 0.0, most, "entries")?;
    }
    numeric::within(Code::OutOfRange, "mass_loss", settings.mass_loss, 0.0, 1.0, "of body mass")?;
    Ok(())
}

fn not_after(on: Day, today: Day) -> Result<(), Error> {
    if on > today {
        return Err(Error::new(Code::AgesReversed, "on", on.number(), Allowed::rule("today or earlier")));
    }
    Ok(())
}

/// A line for a thing done so many days ago at most.
fn since(
    item: CardItem,
    on: Option<Day>,
    days: u16,
    today: Day,
    settings: &CardSettings,
) -> Result<CardLine, Error> {
    let Some(on) = on else {
        return Ok(CardLine { item, due: today, days_left: 0, state: CardState::Never });
    };
    not_after(on, today)?;
    Ok(line(item, on.plus(i32::from(days))?, today, settings))
}

fn line(item: CardItem, due: Day, today: Day, settings: &CardSettings) -> CardLine {
    let days_left = due.since(today);
    let state = match days_left {
        ..0 => CardState::Overdue,
        left if left <= i32::from(settings.soon_days) => CardState::Soon,
        _ => CardState::Later,
    };
    CardLine { item, due, days_left, state }
}

/// The tests of the settings and any others that were done, each once, by its latest day.
fn test_lines(facts: &YearlyFacts, today: Day, settings: &CardSettings) -> Result<Vec<CardLine>, Error> {
    let mut tests = settings.tests.clone();
    tests.extend(facts.tests.iter().map(|done| done.test));
    crate::numeric::sort::sort(&mut tests);
    tests.dedup();
    let latest = |test| facts.tests.iter().filter(|done| done.test == test).map(|done| done.on).max();
    tests
        .into_iter()
        .map(|test| since(CardItem::Test(test), latest(test), settings.test_days, today, settings))
        .collect()
}

fn gap_lines(facts: &YearlyFacts, today: Day, settings: &CardSettings) -> Result<Vec<CardLine>, Error> {
    let mut lines = Vec::new();
    for gap in &facts.gaps {
        if gap.to < gap.from {
            let rule = Allowed::rule("a gap that ends on or after its first day");
            return Err(Error::new(Code::AgesReversed, "gaps", gap.to.number(), rule));
        }
        if gap.to >= today {
            let item = CardItem::Gap { name: gap.name.clone(), to: gap.to };
            let mut line = line(item, gap.from, today, settings);
            if gap.from <= today {
                line.state = CardState::Running;
            }
            lines.push(line);
        }
    }
    Ok(lines)
}

fn notes(facts: &YearlyFacts, today: Day, settings: &CardSettings) -> Result<Vec<CardNote>, Error> {
    let mut notes = Vec::new();
    for entry in &facts.body_masses {
        not_after(entry.on, today)?;
    }
    if !facts.mass_loss_intended {
        notes.extend(mass_lost(&facts.body_masses, settings));
    }
    if facts.fall {
        notes.push(CardNote::Fall);
    }
    if facts.new_medicine {
        notes.push(CardNote::NewMedicine);
    }
    Ok(notes)
}

/// The latest body mass against the highest within the days before it.
fn mass_lost(masses: &[BodyMassOn], settings: &CardSettings) -> Option<CardNote> {
    let latest = masses.iter().max_by_key(|entry| entry.on)?;
    let recent =
        masses.iter().filter(|entry| latest.on.since(entry.on) <= i32::from(settings.mass_loss_days));
    let highest = recent.max_by_key(|entry| entry.mass)?;
    if !highest.mass.is_positive() {
        return None;
    }
    let part = 1.0 - latest.mass.kg() / highest.mass.kg();
    let days = latest.on.since(highest.on);
    (part > 0.0 && part >= settings.mass_loss).then_some(CardNote::MassLost { part, days })
}

rows![yearly_card];
