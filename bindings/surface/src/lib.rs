//! What every language binding of bismar stands on. Trees of plain values in, trees of plain values out, keys as in
//! the JSON of a log; nothing is computed here.
//!
//! | file | what it does |
//! |---|---|
//! | `calls` | functions and doors by number and by key; JSON text in and out (feature `json`) |
//! | `doors` | functions of whole logs, plans and states, and what may be asked of a state that is kept |
//! | `kept` | states kept by a number that is never used twice |
//! | `flat` | numbers in, number out, for functions of numbers only; and the same over columns |
//! | `columns` | the same over columns of the caller, as fast as the library can |
//! | `wide` | rows of an equation in the widest vectors of the processor |
//! | `many` | one call for each of many texts, on all processors, an error for each that is refused |
//! | `fault` | an error as plain values |
//! | `parts` | which modules go into which part of the npm package |

pub mod calls;
pub mod columns;
pub mod doors;
pub mod fault;
pub mod flat;
pub mod kept;
#[cfg(feature = "json")]
pub mod many;
pub mod parts;
mod wide;
