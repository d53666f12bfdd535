//! The library's errors as the one exception class, which is written in Python so that it can be pickled and subclassed.

use bismar::error::Allowed;
use bismar::{Code, Error};
use bismar_surface::fault::describe;
use pyo3::prelude::*;
use pyo3::sync::PyOnceLock;
use pyo3::types::PyType;

use crate::values::write;

static CLASS: PyOnceLock<Py<PyType>> = PyOnceLock::new();

/// The exception for an error.
pub(crate) fn exception<'py>(py: Python<'py>, error: &Error) -> PyResult<Bound<'py, PyAny>> {
    let class = CLASS.import(py, "bismar._error", "BismarError")?;
    let told = describe(error);
    let part = |name| told.field(name).map_or_else(|| Ok(py.None().into_bound(py)), |value| write(py, value));
    class.call1((part("code")?, part("field")?, part("value")?, part("allowed")?, error.event(), error.to_string()))
}

/// The exception for an error, to be raised.
pub(crate) fn raise(py: Python<'_>, error: &Error) -> PyErr {
    exception(py, error).map_or_else(|failed| failed, PyErr::from_value)
}

/// The exception for something that is no plain value.
pub(crate) fn wrong_type(py: Python<'_>, field: &str, rule: &'static str) -> PyErr {
    raise(py, &Error::plain(Code::WrongType, "").within(field).allowing(rule))
}

trait Allowing {
    fn allowing(self, rule: &'static str) -> Error;
}

impl Allowing for Error {
    fn allowing(self, rule: &'static str) -> Error {
        Error::new(self.code(), "", self.given().clone(), Allowed::rule(rule)).within(self.field())
    }
}
