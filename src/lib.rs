//! Progression maths for barbell lifts: pure, `no_std`, deterministic.
#![no_std]
#![forbid(unsafe_code)]

extern crate alloc;
#[cfg(test)]
extern crate std;

pub mod error;
mod numeric;
#[cfg(feature = "serde")]
pub mod value;
pub mod source;
pub mod quantity;
pub mod caution;
pub mod reason;
pub mod statistics;
pub mod one_rm;
pub mod loading;
pub mod record;
pub mod dose;
pub mod condition;
pub mod gate;
pub mod progression;
pub mod prescription;
#[cfg(feature = "rehearsal")]
pub mod rehearsal;
pub mod horizon;
pub mod registry;
#[cfg(feature = "english")]
pub mod text;

pub use error::{Code, Error};
