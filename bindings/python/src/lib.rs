//! Python on the surface that every language stands on: plain values in, plain values out, columns of numpy without a
//! copy. Nothing is computed here. The names, types and documentation of `bismar.one_rm` and its sisters are generated
//! Python files that call in here.
//!
//! Whatever takes longer than reading its arguments runs without the interpreter's lock.

mod fault;
mod progress;
mod values;

use bismar::Error;
use bismar::registry;
use bismar::value::Value;
use bismar_surface::flat::Column;
use bismar_surface::{calls, columns, many};
use numpy::{PyReadonlyArray1, PyReadwriteArray1};
use pyo3::prelude::*;

use fault::{raise, wrong_type};
use values::{read, write};

/// Calls a function by its key with plain values.
#[pyfunction]
fn call<'py>(py: Python<'py>, key: &str, given: &Bound<'py, PyAny>) -> PyResult<Bound<'py, PyAny>> {
    let given = read(given)?;
    let answer = py.detach(|| calls::call(key, &given)).map_err(|error| raise(py, &error))?;
    write(py, &answer)
}

/// Calls a function by its key, JSON text in and out.
#[pyfunction]
fn call_json(py: Python<'_>, key: &str, given: &str) -> PyResult<String> {
    py.detach(|| calls::call_json(key, given)).map_err(|error| raise(py, &error))
}

/// Calls a function once for each JSON text, on so many threads; an error in the place of each that is refused.
#[pyfunction]
#[pyo3(signature = (key, given, threads=None))]
fn call_many<'py>(
    py: Python<'py>,
    key: &str,
    given: Vec<String>,
    threads: Option<usize>,
) -> PyResult<Vec<Bound<'py, PyAny>>> {
    let answers = py.detach(|| many::each(&given, threads, |text| calls::call_json(key, text)));
    answers
        .into_iter()
        .map(|answer| match answer {
            Ok(text) => Ok(text.into_pyobject(py)?.into_any()),
            Err(error) => fault::exception(py, &error),
        })
        .collect()
}

/// Calls a function of numbers with numbers.
#[pyfunction]
#[pyo3(signature = (key, *given))]
fn flat(py: Python<'_>, key: &str, given: Vec<f64>) -> PyResult<f64> {
    calls::flat(key).and_then(|flat| (flat.call)(&given)).map_err(|error| raise(py, &error))
}

enum Borrowed<'py> {
    Rows(PyReadonlyArray1<'py, f64>),
    Same(f64),
}

/// Runs a function of numbers over columns into `out`; how many rows were refused, where those are to be NaN.
#[pyfunction]
fn batch(
    py: Python<'_>,
    key: &str,
    given: Vec<Bound<'_, PyAny>>,
    mut out: PyReadwriteArray1<'_, f64>,
    refused_is_nan: bool,
) -> PyResult<usize> {
    let borrowed = given.iter().map(|column| borrow(column)).collect::<PyResult<Vec<_>>>()?;
    let columns = borrowed.iter().map(|column| slice(py, column)).collect::<PyResult<Vec<_>>>()?;
    let out = out.as_slice_mut().map_err(|_| wrong_type(py, "out", "a contiguous column of float64"))?;
    let run = || -> Result<usize, Error> {
        let flat = calls::flat(key)?;
        let mut refused = 0;
        columns::run(flat, &columns, out, refused_is_nan.then_some(&mut refused))?;
        Ok(refused)
    };
    py.detach(run).map_err(|error| raise(py, &error))
}

fn borrow<'py>(column: &Bound<'py, PyAny>) -> PyResult<Borrowed<'py>> {
    if let Ok(rows) = column.extract::<PyReadonlyArray1<'py, f64>>() {
        return Ok(Borrowed::Rows(rows));
    }
    column
        .extract::<f64>()
        .map(Borrowed::Same)
        .map_err(|_| wrong_type(column.py(), "", "a contiguous column of float64, or a number"))
}

fn slice<'a>(py: Python<'_>, column: &'a Borrowed<'_>) -> PyResult<Column<&'a [f64]>> {
    Ok(match column {
        Borrowed::Rows(rows) => {
            Column::Rows(rows.as_slice().map_err(|_| wrong_type(py, "", "a contiguous column of float64"))?)
        }
        Borrowed::Same(number) => Column::Same(*number),
    })
}

/// Every key that can be called.
#[pyfunction]
fn keys() -> Vec<&'static str> {
    calls::keys().collect()
}

/// The rows of the registry: sources, places, standings and units of every function and default.
#[pyfunction]
fn rows(py: Python<'_>) -> PyResult<Vec<Bound<'_, PyAny>>> {
    registry::rows()
        .map(|row| write(py, &Value::write(row).map_err(|error| raise(py, &error))?))
        .collect()
}

/// The version of the library.
#[pyfunction]
fn version() -> &'static str {
    env!("CARGO_PKG_VERSION")
}

#[pymodule(gil_used = false)]
mod _native {
    #[pymodule_export]
    use super::progress::{Progress, fold_many};
    #[pymodule_export]
    use super::{batch, call, call_json, call_many, flat, keys, rows, version};
}
