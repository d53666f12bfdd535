//! What the caller hands in: pointers as texts, numbers and columns.

use std::ffi::c_char;
use std::slice;

use bismar::error::Allowed;
use bismar::{Code, Error};
use bismar_surface::calls;
use bismar_surface::flat::Column;

/// A column of a batch. Where `rows` is null, `same` stands in every row.
#[repr(C)]
#[derive(Clone, Copy, Debug)]
pub struct BismarColumn {
    /// A number for every row, or null.
    pub rows: *const f64,
    /// The number of every row where `rows` is null.
    pub same: f64,
}

/// A pointer and how many stand behind it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Span<P> {
    pointer: P,
    count: usize,
}

impl<P> Span<P> {
    pub(crate) fn of(pointer: P, count: usize) -> Span<P> {
        Span { pointer, count }
    }
}

impl<T> Span<*const T> {
    /// What can be seen of it: null, out of place, more than any memory has.
    fn checked(self, field: &'static str) -> Result<(), Error> {
        if self.pointer.is_null() {
            return Err(Error::plain(Code::NullNotAllowed, field));
        }
        if !self.pointer.is_aligned() {
            let rule = Allowed::rule("a pointer that is aligned as its type asks");
            return Err(Error::new(Code::WrongType, field, bismar::error::Given::Nothing, rule));
        }
        let bytes = self.count.checked_mul(size_of::<T>());
        match bytes.and_then(|bytes| isize::try_from(bytes).ok()) {
            Some(bytes) if self.pointer.addr().checked_add_signed(bytes).is_some() => Ok(()),
            _ => Err(Error::new(
                Code::TooLong,
                field,
                self.count as f64,
                Allowed::rule("what memory can hold"),
            )),
        }
    }

    /// The addresses of its bytes; those of a checked span do not run over.
    fn bytes(self) -> std::ops::Range<usize> {
        let start = self.pointer.addr();
        start..start.saturating_add(self.count.saturating_mul(size_of::<T>()))
    }
}

impl<T> Span<*mut T> {
    fn seen(self) -> Span<*const T> {
        Span { pointer: self.pointer.cast_const(), count: self.count }
    }

    pub(crate) fn is_null(self) -> bool {
        self.pointer.is_null()
    }

    /// As of what is only read.
    pub(crate) fn checked(self, field: &'static str) -> Result<(), Error> {
        self.seen().checked(field)
    }

    /// Writes the first.
    ///
    /// # Safety
    /// It was checked, has at least one, and can be written.
    pub(crate) unsafe fn write(self, value: T) {
        // SAFETY: as the caller promises.
        unsafe { self.pointer.write(value) };
    }
}

/// A text.
///
/// # Safety
/// The span is null or has so many bytes, which nobody changes meanwhile.
pub(crate) unsafe fn text<'a>(field: &'static str, span: Span<*const c_char>) -> Result<&'a str, Error> {
    span.checked(field)?;
    // SAFETY: neither null nor longer than memory, and the caller promises the bytes.
    let bytes = unsafe { slice::from_raw_parts(span.pointer.cast::<u8>(), span.count) };
    std::str::from_utf8(bytes).map_err(|error| {
        Error::new(Code::NotJson, field, error.valid_up_to() as f64, Allowed::rule("text in UTF-8"))
    })
}

/// The key of a function. One that is no text is no key either.
///
/// # Safety
/// As [`text`].
pub(crate) unsafe fn key_of<'a>(span: Span<*const c_char>) -> Result<&'a str, Error> {
    // SAFETY: as the caller promises.
    unsafe { text("key", span) }.map_err(|error| match error.code() {
        Code::NotJson => calls::unknown(error.given().clone()),
        _ => error,
    })
}

/// Numbers to read.
///
/// # Safety
/// The span is null or has so many numbers, which nobody changes meanwhile.
pub(crate) unsafe fn numbers<'a>(field: &'static str, span: Span<*const f64>) -> Result<&'a [f64], Error> {
    if span.count == 0 {
        return Ok(&[]);
    }
    span.checked(field)?;
    // SAFETY: neither null, out of place nor longer than memory, and the caller promises the numbers.
    Ok(unsafe { slice::from_raw_parts(span.pointer, span.count) })
}

/// Numbers to write. They may hold anything yet: all bits are some `f64`, none is read before it is written, and memory of
/// another language counts as written.
///
/// # Safety
/// The span is null or has so many numbers that can be written, which nobody else reads or writes meanwhile.
pub(crate) unsafe fn numbers_to_fill<'a>(
    field: &'static str,
    span: Span<*mut f64>,
) -> Result<&'a mut [f64], Error> {
    if span.count == 0 {
        return Ok(&mut []);
    }
    span.checked(field)?;
    // SAFETY: neither null, out of place nor longer than memory, and the caller promises that it can be written.
    Ok(unsafe { slice::from_raw_parts_mut(span.pointer, span.count) })
}

/// Columns to read, none of which lies over the numbers to write.
///
/// # Safety
/// The span is null or has so many columns, and each of their `rows` is null or has as many numbers as `out` is to get;
/// nobody changes them meanwhile.
pub(crate) unsafe fn columns_of<'a>(
    span: Span<*const BismarColumn>,
    out: Span<*mut f64>,
) -> Result<Vec<Column<&'a [f64]>>, Error> {
    if span.count == 0 {
        return Ok(Vec::new());
    }
    span.checked("columns")?;
    if out.count > 0 {
        out.checked("out")?;
    }
    // SAFETY: neither null, out of place nor longer than memory, and the caller promises the columns.
    let columns = unsafe { slice::from_raw_parts(span.pointer, span.count) };
    let mut read = Vec::with_capacity(columns.len().min(bismar_surface::flat::MOST_ARGUMENTS));
    for (at, column) in columns.iter().enumerate() {
        if column.rows.is_null() {
            read.push(Column::Same(column.same));
            continue;
        }
        let rows = Span::of(column.rows, out.count);
        let (here, there) = (rows.bytes(), out.seen().bytes());
        if here.start < there.end && there.start < here.end {
            let rule = Allowed::rule("memory of its own, not that of a column");
            return Err(Error::new(Code::WrongType, "out", bismar::error::Given::Nothing, rule));
        }
        // SAFETY: the caller promises so many numbers in each column.
        let numbers = unsafe { numbers("rows", rows) };
        read.push(Column::Rows(numbers.map_err(|error| error.within(&format!("columns[{at}]")))?));
    }
    Ok(read)
}
