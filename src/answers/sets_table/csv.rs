//! A table as text. Read strictly: a quotation mark out of place is an error, since whatever a lenient reader makes of it
//! would be a loss that nobody sees.

use alloc::string::String;
use alloc::vec::Vec;

use crate::error::{Allowed, Code, Error};

/// One row, and the line of the text (or the number of the row) where it begins.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct Row {
    pub(super) line: u32,
    pub(super) cells: Vec<String>,
}

/// What may stand between two cells.
const SEPARATORS: [char; 3] = [',', ';', '\t'];

/// The separator that the first line holds most of, outside quotation marks; a comma where it holds none.
pub(super) fn separator(text: &str) -> char {
    let mut quoted = false;
    let mut counts = [0_u32; SEPARATORS.len()];
    for letter in text.chars().take_while(|letter| *letter != '\n') {
        quoted ^= letter == '"';
        for (count, separator) in counts.iter_mut().zip(SEPARATORS) {
            *count += u32::from(!quoted && letter == separator);
        }
    }
    let most = counts.iter().max().copied().unwrap_or_default();
    counts.iter().zip(SEPARATORS).find(|(count, _)| **count == most).map_or(',', |(_, found)| found)
}

/// Reads all rows, the head among them. Lines that hold nothing are no rows.
pub(super) fn read(text: &str, separator: char) -> Result<Vec<Row>, Error> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut reader = Reader { rest: text, separator, line: 1 };
    let mut rows = Vec::new();
    while !reader.rest.is_empty() {
        let line = reader.line;
        let cells = reader.row()?;
        if cells.iter().any(|cell| !cell.trim().is_empty()) {
            rows.push(Row { line, cells });
        }
    }
    Ok(rows)
}

struct Reader<'a> {
    rest: &'a str,
    separator: char,
    line: u32,
}

impl Reader<'_> {
    /// One row and the end of its line.
    fn row(&mut self) -> Result<Vec<String>, Error> {
        let mut cells = Vec::new();
        loop {
            cells.push(self.cell()?);
            if let Some(rest) = self.rest.strip_prefix(self.separator) {
                self.rest = rest;
                continue;
            }
            for end in ["\r\n", "\n", "\r"] {
                if let Some(rest) = self.rest.strip_prefix(end) {
                    self.rest = rest;
                    self.line += 1;
                    break;
                }
            }
            return Ok(cells);
        }
    }

    fn cell(&mut self) -> Result<String, Error> {
        match self.rest.strip_prefix('"') {
            Some(inside) => {
                self.rest = inside;
                self.quoted()
            }
            None => self.plain(),
        }
    }

    fn plain(&mut self) -> Result<String, Error> {
        let end = self.rest.find([self.separator, '\r', '\n']).unwrap_or(self.rest.len());
        let (cell, rest) = self.rest.split_at_checked(end).unwrap_or((self.rest, ""));
        if cell.contains('"') {
            return Err(self.misplaced());
        }
        self.rest = rest;
        Ok(cell.into())
    }

    /// What stands up to the closing mark; two marks are one that is meant.
    fn quoted(&mut self) -> Result<String, Error> {
        let mut cell = String::new();
        loop {
            let Some((before, after)) = self.rest.split_once('"') else { return Err(self.misplaced()) };
            cell.push_str(before);
            self.line += before.matches('\n').count() as u32;
            match after.strip_prefix('"') {
                Some(after) => {
                    cell.push('"');
                    self.rest = after;
                }
                None => {
                    self.rest = after;
                    break;
                }
            }
        }
        let ends = self.rest.is_empty() || self.rest.starts_with([self.separator, '\r', '\n']);
        if ends { Ok(cell) } else { Err(self.misplaced()) }
    }

    fn misplaced(&self) -> Error {
        let rule = Allowed::rule("quotation marks around a whole cell, doubled inside it");
        Error::new(Code::WrongFormat, "line", self.line, rule).within("table")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn cells(text: &str) -> Vec<Vec<String>> {
        read(text, separator(text)).unwrap().into_iter().map(|row| row.cells).collect()
    }

    #[test]
    fn cells_quotes_and_ends_of_lines() {
        assert_eq!(cells("a,b\r\n1,\"x, \"\"y\"\"\nz\"\r\n"), [["a", "b"], ["1", "x, \"y\"\nz"]]);
        assert_eq!(cells("\u{feff}a;b\n1,5;2\n\n"), [["a", "b"], ["1,5", "2"]]);
        assert_eq!(cells("a\tb\r1\t"), [["a", "b"], ["1", ""]]);
        assert_eq!(cells("\"a;b;c\",d"), [["a;b;c", "d"]]);
        let rows = read("a\n\"x\ny\"\nb", ',').unwrap();
        assert_eq!(rows.iter().map(|row| row.line).collect::<Vec<_>>(), [1, 2, 4]);
    }

    #[test]
    fn a_quotation_mark_out_of_place_is_refused_with_its_line() {
        for text in ["a\n\"b", "a\nb\"c", "a\n\"b\"c"] {
            let error = read(text, ',').unwrap_err();
            assert_eq!((error.code(), error.field()), (Code::WrongFormat, "table.line"), "{text:?}");
            assert_eq!(error.given(), &crate::error::Given::Number(2.0));
        }
    }
}
