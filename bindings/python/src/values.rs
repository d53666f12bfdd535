//! Python's plain objects as trees of values, and back.

use bismar::error::Allowed;
use bismar::value::Value;
use bismar::{Code, Error};
use numpy::PyUntypedArray;
use pyo3::prelude::*;
use pyo3::types::{PyBool, PyDict, PyFloat, PyInt, PyList, PyString, PyTuple};

use crate::fault::raise;

/// Deeper nesting than any type of the library has.
const DEEPEST: usize = 64;
/// Whole numbers that `f64` carries exactly.
const EXACT_WHOLE: i64 = 9_007_199_254_740_992;

/// A tree of dictionaries with texts as keys, lists, tuples, columns, texts, numbers, flags and `None`.
pub(crate) fn read(given: &Bound<'_, PyAny>) -> PyResult<Value> {
    plain(given, 0).map_err(|refused| match refused {
        Refused::Ours(error) => raise(given.py(), &error),
        Refused::Pythons(error) => error,
    })
}

enum Refused {
    Ours(Error),
    Pythons(PyErr),
}

impl From<PyErr> for Refused {
    fn from(error: PyErr) -> Refused {
        Refused::Pythons(error)
    }
}

fn within(refused: Refused, path: &str) -> Refused {
    match refused {
        Refused::Ours(error) => Refused::Ours(error.within(path)),
        other => other,
    }
}

fn refuse(code: Code, given: &Bound<'_, PyAny>, rule: &'static str) -> Refused {
    let name = given.get_type().name().map(|name| name.to_string()).unwrap_or_default();
    Refused::Ours(Error::new(code, "", name, Allowed::rule(rule)))
}

fn plain(given: &Bound<'_, PyAny>, depth: usize) -> Result<Value, Refused> {
    if depth > DEEPEST {
        return Err(refuse(Code::WrongType, given, "at most 64 levels"));
    }
    if let Ok(fields) = given.cast::<PyDict>() {
        return map(fields, depth);
    }
    if let Ok(text) = given.cast::<PyString>() {
        return Ok(Value::Text(text.to_cow()?.into_owned().into()));
    }
    if let Ok(flag) = given.cast::<PyBool>() {
        return Ok(Value::Bool(flag.is_true()));
    }
    if let Ok(number) = given.cast::<PyFloat>() {
        return Ok(Value::Number(number.value()));
    }
    if let Ok(number) = given.cast::<PyInt>() {
        return whole(number);
    }
    if let Ok(items) = given.cast::<PyList>() {
        return list(items.iter(), depth);
    }
    if let Ok(items) = given.cast::<PyTuple>() {
        return list(items.iter(), depth);
    }
    if given.is_none() {
        return Ok(Value::Null);
    }
    if given.cast::<PyUntypedArray>().is_ok() {
        return plain(&given.call_method0("tolist")?, depth + 1);
    }
    Err(refuse(Code::WrongType, given, "a dict, list, tuple, numpy array, str, float, int, bool or None"))
}

fn whole(number: &Bound<'_, PyInt>) -> Result<Value, Refused> {
    match number.extract::<i64>() {
        Ok(whole) if whole.unsigned_abs() <= EXACT_WHOLE.unsigned_abs() => Ok(Value::Number(whole as f64)),
        _ => Err(refuse(Code::Overflow, number, "whole numbers to 2^53, which a float carries exactly")),
    }
}

fn list<'py>(
    items: impl ExactSizeIterator<Item = Bound<'py, PyAny>>,
    depth: usize,
) -> Result<Value, Refused> {
    let mut values = Vec::with_capacity(items.len());
    for (at, item) in items.enumerate() {
        values.push(plain(&item, depth + 1).map_err(|refused| within(refused, &format!("[{at}]")))?);
    }
    Ok(Value::List(values))
}

fn map(fields: &Bound<'_, PyDict>, depth: usize) -> Result<Value, Refused> {
    let mut values = Vec::with_capacity(fields.len());
    for (key, value) in fields.iter() {
        let Ok(key) = key.cast::<PyString>() else {
            return Err(refuse(Code::WrongType, &key, "texts as keys"));
        };
        let key = key.to_cow()?.into_owned();
        let value = plain(&value, depth + 1).map_err(|refused| within(refused, &key))?;
        values.push((key.into(), value));
    }
    Ok(Value::Map(values))
}

/// A tree as plain objects; numbers are floats.
pub(crate) fn write<'py>(py: Python<'py>, value: &Value) -> PyResult<Bound<'py, PyAny>> {
    Ok(match value {
        Value::Null => py.None().into_bound(py),
        Value::Bool(flag) => PyBool::new(py, *flag).to_owned().into_any(),
        Value::Number(number) => PyFloat::new(py, *number).into_any(),
        Value::Text(text) => PyString::new(py, text).into_any(),
        Value::List(items) => {
            let items = items.iter().map(|item| write(py, item)).collect::<PyResult<Vec<_>>>()?;
            PyList::new(py, items)?.into_any()
        }
        Value::Map(fields) => {
            let map = PyDict::new(py);
            for (name, value) in fields {
                map.set_item(&**name, write(py, value)?)?;
            }
            map.into_any()
        }
    })
}
