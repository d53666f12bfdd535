//! Pages to read, beside the reference of the modules.
//!
//! Uses nothing and holds no code. The code on the pages is compiled and run with the tests.
//!
//! | page | answers |
//! |---|---|
//! | [`first_log`] | How does a log begin, and what comes of it? |
//! | [`cookbook`] | How are the commonest things done that an app needs? |
//! | [`why_it_is_so`] | Why no clock, no schedule, whole nanograms, errors as data? |
//! | [`by_hand`] | What changes against a notebook and a calculator? |
//! | [`choose_an_equation`] | Which equation says what a set was worth, and where do the studies disagree? |
//! | [`never`](mod@never) | What is never done to a lifter, and which test shows it? |
//! | [`provenance`] | Where does every number come from, and what is it held against? |
//! | [`not_claimed`] | What is not claimed? |
//! | [`doubts`] | What is weakest, and which study would settle it? |
//! | [`benchmarks`] | How fast is it, and beside what? |

#[doc = include_str!("benchmarks.md")]
pub mod benchmarks {}

#[doc = include_str!("by_hand.md")]
pub mod by_hand {}

#[doc = include_str!("choose_an_equation.md")]
pub mod choose_an_equation {}

#[cfg_attr(all(feature = "json", feature = "english"), doc = include_str!("cookbook.md"))]
#[cfg_attr(
    not(all(feature = "json", feature = "english")),
    doc = "Shown with the features `json` and `english`."
)]
pub mod cookbook {}

#[doc = include_str!("doubts.md")]
pub mod doubts {}

#[cfg_attr(all(feature = "json", feature = "english"), doc = include_str!("first_log.md"))]
#[cfg_attr(
    all(feature = "json", feature = "english"),
    doc = concat!(
        "\n# The smallest log as JSON\n\nWhat a host stores. [`Log::to_json`](crate::record::Log::to_json) writes it, ",
        "[`Log::from_json`](crate::record::Log::from_json) reads and checks it; so do a plan, a state and an event.\n\n",
        "```json\n",
        include_str!("first_log.json"),
        "```\n"
    )
)]
#[cfg_attr(
    not(all(feature = "json", feature = "english")),
    doc = "Shown with the features `json` and `english`."
)]
pub mod first_log {}

#[doc = include_str!("never.md")]
pub mod never {}

#[doc = include_str!("not_claimed.md")]
pub mod not_claimed {}

#[doc = include_str!("provenance.md")]
pub mod provenance {}

#[doc = include_str!("why_it_is_so.md")]
pub mod why_it_is_so {}
