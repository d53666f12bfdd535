//! Folded logs that are kept, and many of them at once.

use std::sync::{Mutex, PoisonError};

use bismar::Error;
use bismar::progression::{State, fold};
use bismar::record::Log;
use bismar::value::Value;
use bismar_surface::doors::{self, Request};
use bismar_surface::many;
use pyo3::prelude::*;
use pyo3::types::PyString;

use crate::fault::{self, raise};
use crate::values::{read, write};

/// What is given: a text of JSON that is not yet read, or a tree.
enum Document {
    Text(String),
    Tree(Value),
}

impl Document {
    fn of(given: &Bound<'_, PyAny>) -> PyResult<Document> {
        match given.cast::<PyString>() {
            Ok(text) => Ok(Document::Text(text.to_cow()?.into_owned())),
            Err(_) => read(given).map(Document::Tree),
        }
    }

    fn tree(self) -> Result<Value, Error> {
        match self {
            Document::Text(text) => Value::from_json(&text),
            Document::Tree(value) => Ok(value),
        }
    }

    fn folded(&self) -> Result<State, Error> {
        match self {
            Document::Text(text) => fold(&Log::from_json(text)?),
            Document::Tree(value) => fold(&value.read::<Log>().map_err(|error| error.within("log"))?),
        }
    }
}

/// A folded log that is kept, so that only what is new has to be given. Documents may be plain objects or JSON texts.
#[pyclass(module = "bismar", frozen)]
pub(crate) struct Progress {
    state: Mutex<State>,
}

impl Progress {
    fn keep(state: State) -> Progress {
        Progress { state: Mutex::new(state) }
    }

    /// Reads the fields and asks, both without the interpreter's lock.
    fn ask(
        &self,
        py: Python<'_>,
        request: Request,
        fields: Vec<(&'static str, Document)>,
    ) -> PyResult<Value> {
        py.detach(|| {
            let mut given = Vec::with_capacity(fields.len());
            for (name, document) in fields {
                given.push((name.into(), document.tree().map_err(|error| error.within(name))?));
            }
            // A request that is refused leaves the state as it was.
            let mut state = self.state.lock().unwrap_or_else(PoisonError::into_inner);
            doors::ask(&mut state, request, &Value::Map(given))
        })
        .map_err(|error: Error| raise(py, &error))
    }
}

#[pymethods]
impl Progress {
    #[new]
    fn new(py: Python<'_>, log: &Bound<'_, PyAny>) -> PyResult<Progress> {
        let log = Document::of(log)?;
        py.detach(|| log.folded()).map(Progress::keep).map_err(|error| raise(py, &error))
    }

    #[staticmethod]
    fn from_state(py: Python<'_>, state: &Bound<'_, PyAny>, log: &Bound<'_, PyAny>) -> PyResult<Progress> {
        let (state, log) = (Document::of(state)?, Document::of(log)?);
        py.detach(|| State::from_value_or_fold(&state.tree()?, &log.tree()?.read::<Log>()?))
            .map(Progress::keep)
            .map_err(|error| raise(py, &error))
    }

    #[staticmethod]
    fn resume(py: Python<'_>, state: &Bound<'_, PyAny>) -> PyResult<Progress> {
        let state = Document::of(state)?;
        py.detach(|| State::from_value(&state.tree()?)).map(Progress::keep).map_err(|error| raise(py, &error))
    }

    fn apply(&self, py: Python<'_>, event: &Bound<'_, PyAny>) -> PyResult<()> {
        self.ask(py, Request::Apply, vec![("event", Document::of(event)?)]).map(|_| ())
    }

    fn decide<'py>(&self, py: Python<'py>, today: &str) -> PyResult<Bound<'py, PyAny>> {
        let answer = self.ask(py, Request::Decide, vec![("today", day(today))])?;
        write(py, &answer)
    }

    fn next_session<'py>(
        &self,
        py: Python<'py>,
        plan: &Bound<'py, PyAny>,
        today: &str,
    ) -> PyResult<Bound<'py, PyAny>> {
        let fields = vec![("plan", Document::of(plan)?), ("today", day(today))];
        write(py, &self.ask(py, Request::NextSession, fields)?)
    }

    fn next_session_json(&self, py: Python<'_>, plan: &Bound<'_, PyAny>, today: &str) -> PyResult<String> {
        let fields = vec![("plan", Document::of(plan)?), ("today", day(today))];
        let answer = self.ask(py, Request::NextSession, fields)?;
        Ok(py.detach(|| answer.to_json()))
    }

    fn state<'py>(&self, py: Python<'py>) -> PyResult<Bound<'py, PyAny>> {
        write(py, &self.ask(py, Request::State, Vec::new())?)
    }

    fn state_json(&self, py: Python<'_>) -> PyResult<String> {
        let answer = self.ask(py, Request::State, Vec::new())?;
        Ok(py.detach(|| answer.to_json()))
    }
}

fn day(today: &str) -> Document {
    Document::Tree(Value::Text(today.to_string().into()))
}

/// Folds many logs on so many threads; an error in the place of each log that is refused.
#[pyfunction]
#[pyo3(signature = (logs, threads=None))]
pub(crate) fn fold_many<'py>(
    py: Python<'py>,
    logs: Vec<Bound<'py, PyAny>>,
    threads: Option<usize>,
) -> PyResult<Vec<Bound<'py, PyAny>>> {
    let logs = logs.iter().map(Document::of).collect::<PyResult<Vec<_>>>()?;
    let folded = py.detach(|| many::each(&logs, threads, Document::folded));
    folded
        .into_iter()
        .map(|state| match state {
            Ok(state) => Ok(Bound::new(py, Progress::keep(state))?.into_any()),
            Err(error) => fault::exception(py, &error),
        })
        .collect()
}
