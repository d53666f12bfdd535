//! Pages to read, beside the reference of the modules.
//!
//! Uses nothing and holds no code. The code on the pages is compiled and run with the tests.

#[doc = include_str!("provenance.md")]
pub mod provenance {}
