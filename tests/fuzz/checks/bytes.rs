//! Reads small choices from bytes, zero once they have run out; so that every input is a valid script.

/// What is left of the input.
pub struct Bytes<'a>(&'a [u8]);

impl<'a> Bytes<'a> {
    pub fn new(data: &'a [u8]) -> Bytes<'a> {
        Bytes(data)
    }

    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    pub fn byte(&mut self) -> u8 {
        match self.0.split_first() {
            Some((first, rest)) => {
                self.0 = rest;
                *first
            }
            None => 0,
        }
    }

    /// A number below `end`.
    pub fn below(&mut self, end: u8) -> u8 {
        self.byte() % end.max(1)
    }

    /// True for one byte in `of`.
    pub fn rarely(&mut self, of: u8) -> bool {
        self.below(of) == 1
    }

    pub fn flag(&mut self) -> bool {
        self.byte() & 1 == 1
    }

    pub fn u16(&mut self) -> u16 {
        u16::from_le_bytes([self.byte(), self.byte()])
    }

    pub fn u32(&mut self) -> u32 {
        u32::from(self.u16()) | u32::from(self.u16()) << 16
    }

    pub fn u64(&mut self) -> u64 {
        u64::from(self.u32()) | u64::from(self.u32()) << 32
    }

    /// One of a list that is not empty.
    pub fn pick<T: Clone>(&mut self, list: &[T]) -> T {
        list[usize::from(self.byte()) % list.len()].clone()
    }

    /// Everything that is left, as text where it is text.
    pub fn text(&self) -> Option<&'a str> {
        std::str::from_utf8(self.0).ok()
    }
}
