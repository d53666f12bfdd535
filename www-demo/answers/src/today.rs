//! The session of a day in sentences, beside the library's own answer.

use bismar::Error;
use bismar::caution::Caution;
use bismar::prescription::{LiftToday, SessionPlan, next_session_from};
use bismar::progression::MoveOutlook;
use bismar::quantity::{Day, Unit};
use bismar::record::{EventKind, Layoff, LayoffReason, Plan};
use bismar::text::{self, Words};
use serde::{Deserialize, Serialize};

use crate::opened::Which;
use crate::words::spoken;

/// The question.
#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "TodayAsked"))]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    /// Which log.
    log: Which,
    /// The plan as JSON text.
    plan: String,
    /// The day; at least that of the last event.
    today: Day,
    /// What if this also happened that day: one kind of event.
    #[serde(default)]
    suppose: Option<EventKind>,
    /// What if so many days had passed since the last session.
    #[serde(default)]
    away: Option<Away>,
    /// In which unit the sentences name loads.
    unit: Unit,
}

#[derive(Deserialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
struct Away {
    days: u16,
    reason: LayoffReason,
}

/// The answer: the library's own, and its sentences lift by lift.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "TodayAnswer"))]
pub(crate) struct Answer {
    session: SessionPlan,
    /// What stands above everything else where something is stopped; else empty.
    stop: Vec<String>,
    lines: Vec<Line>,
    cautions: Vec<Said>,
}

/// One lift in sentences.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema), schemars(rename = "TodayLine"))]
struct Line {
    verdict: &'static str,
    why: Vec<Said>,
    /// Everything against a step up; empty where one is on offer.
    blockers: Vec<Said>,
    changes: Vec<String>,
    missing: Vec<String>,
    cautions: Vec<Said>,
    step: String,
}

/// A code and its sentence.
#[derive(Serialize)]
#[cfg_attr(feature = "schema", derive(schemars::JsonSchema))]
pub(crate) struct Said {
    pub(crate) code: &'static str,
    pub(crate) text: String,
}

pub(crate) fn said(caution: &Caution) -> Said {
    Said { code: caution.as_str(), text: text::caution(*caution).to_string() }
}

fn line(words: &Words<'_>, lift: &LiftToday) -> Line {
    let reason =
        |reason: &bismar::reason::Reason| Said { code: reason.code(), text: words.reason_for(lift, reason) };
    let blockers = match &lift.outlook {
        MoveOutlook::OnOffer { .. } => Vec::new(),
        MoveOutlook::Blocked { by, .. } => by.iter().map(reason).collect(),
    };
    Line {
        verdict: text::verdict(lift.verdict),
        why: lift.reasons.iter().map(reason).collect(),
        blockers,
        changes: words.changes(lift),
        missing: lift.gate.missing.iter().map(|each| words.missing(each)).collect(),
        cautions: lift.cautions.iter().map(said).collect(),
        step: words.one_line(lift),
    }
}

/// The session of a day.
pub(crate) fn today(asked: Asked) -> Result<Answer, Error> {
    let plan = Plan::from_json(&asked.plan)?;
    let opened = asked.log.open()?;
    let mut events = Vec::new();
    let mut today = asked.today;
    if let Some(away) = asked.away {
        let written = opened.state.last().map_or(today, |(day, _)| day);
        // Days away count from the last session; what was written down after it was no lifting.
        let lifted = opened.state.lifts().filter_map(|lift| lift.last_session()).max().unwrap_or(written);
        today = lifted.plus(i32::from(away.days))?.max(written);
        let kind = EventKind::LayoffNoted(Layoff::new(lifted, away.reason));
        events.push((today, kind));
    }
    if let Some(kind) = asked.suppose {
        events.push((today, kind));
    }
    let supposed = (!events.is_empty()).then(|| opened.supposing(events)).transpose()?;
    let state = supposed.as_ref().unwrap_or(&opened.state);
    let session = next_session_from(state, &plan, today)?;
    let words = spoken(state, asked.unit);
    Ok(Answer {
        stop: words.session(&session).stop,
        lines: session.lifts.iter().map(|lift| line(&words, lift)).collect(),
        cautions: session.cautions.iter().map(said).collect(),
        session,
    })
}
