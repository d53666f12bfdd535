//! A longer range: what load does it start at, and how does it begin?

use bismar::Error;
use bismar::loading::{Implement, Stock};
use bismar::prescription::{LongerRange, longer_range};
use bismar::quantity::{Length, Mass};
use serde::Deserialize;

/// The question.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Asked {
    implement: Implement,
    stock: Stock,
    load: Mass,
    from: Length,
    to: Length,
}

/// Where a longer range starts.
pub(crate) fn range_step(asked: Asked) -> Result<LongerRange, Error> {
    longer_range(&asked.implement, &asked.stock, asked.load, asked.from, asked.to)
}
