//! English for errors, reasons and cautions (feature `english`).
//!
//! Uses error, caution, reason, record, gate, progression, prescription.
