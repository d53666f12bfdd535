//! The rules, one named test each: what is never done to a lifter, and what is said.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    clippy::float_cmp,
    reason = "a test may panic"
)]
#![cfg(feature = "json")]

#[path = "rules/world.rs"]
mod world;

#[path = "rules/acts.rs"]
mod acts;
#[path = "rules/ahead.rs"]
mod ahead;
#[path = "rules/allowed.rs"]
mod allowed;
#[path = "rules/as_asked.rs"]
mod as_asked;
#[path = "rules/back.rs"]
mod back;
#[path = "rules/careful.rs"]
mod careful;
#[path = "rules/easing.rs"]
mod easing;
#[path = "rules/elsewhere.rs"]
mod elsewhere;
#[path = "rules/guide.rs"]
mod guide;
#[path = "rules/held.rs"]
mod held;
#[path = "rules/hostile.rs"]
mod hostile;
#[path = "rules/heights.rs"]
mod heights;
#[path = "rules/identity.rs"]
mod identity;
#[path = "rules/kept.rs"]
mod kept;
#[path = "rules/kinds.rs"]
mod kinds;
#[path = "rules/late.rs"]
mod late;
#[path = "rules/limits.rs"]
mod limits;
#[path = "rules/loopholes.rs"]
mod loopholes;
#[path = "rules/mornings.rs"]
mod mornings;
#[cfg(feature = "english")]
#[path = "rules/named.rs"]
mod named;
#[path = "rules/offers.rs"]
mod offers;
#[path = "rules/one_day.rs"]
mod one_day;
#[path = "rules/overrides.rs"]
mod overrides;
#[path = "rules/pains.rs"]
mod pains;
#[path = "rules/parts.rs"]
mod parts;
#[path = "rules/places.rs"]
mod places;
#[path = "rules/returns.rs"]
mod returns;
#[path = "rules/still_said.rs"]
mod still_said;
#[cfg(feature = "english")]
#[path = "rules/told.rs"]
mod told;
#[path = "rules/would_change.rs"]
mod would_change;
#[path = "rules/unknown.rs"]
mod unknown;
#[path = "rules/unsaid.rs"]
mod unsaid;
#[path = "rules/ways_around.rs"]
mod ways_around;
#[cfg(feature = "english")]
#[path = "rules/words.rs"]
mod words;
