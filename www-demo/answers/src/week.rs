//! Was this week a jump, against the lifter's own weeks?

use bismar::Error;
use bismar::dose::{BandOptions, DailyLoad, SetDone, WeekChange, volume_load, week_change};
use bismar::quantity::{Day, Kilograms};
use bismar::record::EventKind;
use serde::{Deserialize, Serialize};

use crate::opened::open;

/// The question.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    log: String,
    today: Day,
}

/// The answer.
#[derive(Serialize)]
pub(crate) struct Answer {
    change: WeekChange,
    /// Oldest first, this week last.
    weeks: Vec<Week>,
}

#[derive(Serialize)]
struct Week {
    /// First day of the seven.
    from: Day,
    sets: u32,
    load: Kilograms,
}

/// The last seven days against the seven-day weeks before them.
pub(crate) fn week(asked: Asked) -> Result<Answer, Error> {
    let opened = open(&asked.log)?;
    let options = BandOptions::default();
    let events = opened.log.effective()?;
    let first = events.first().map_or(asked.today, |event| event.day);
    let mut weeks = Vec::new();
    for back in 0..=i32::from(options.weeks) {
        let to = asked.today.plus(-7 * back)?;
        let from = to.plus(-6)?;
        if to < first {
            break;
        }
        let mut done = Vec::new();
        for event in &events {
            if let EventKind::SessionRecorded(session) = &event.kind
                && (from..=to).contains(&event.day)
            {
                let sets = session.lifts.iter().flat_map(|lift| &lift.sets);
                done.extend(sets.map(|set| SetDone { load: set.load, reps: set.reps, sets: 1 }));
            }
        }
        let load = if done.is_empty() { Kilograms::new(0.0)? } else { volume_load(&done)? };
        weeks.push(Week { from, sets: done.len() as u32, load });
    }
    weeks.reverse();
    let day = |week: &Week| {
        if week.sets == 0 { Ok(DailyLoad::Rested) } else { DailyLoad::recorded(week.load.value()) }
    };
    let loads: Vec<DailyLoad> = weeks.iter().map(day).collect::<Result<_, _>>()?;
    let change = match loads.split_last() {
        Some((this, past)) => week_change(past, *this, options)?,
        None => week_change(&[], DailyLoad::Rested, options)?,
    };
    Ok(Answer { change, weeks })
}
