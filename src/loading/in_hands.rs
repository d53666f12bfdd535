//! Whether a load is one of two, one in each hand.

use super::implement::Implement;

impl Implement {
    /// Whether a load on it is one of two that are lifted alike, one in each hand: two handles, or pieces.
    ///
    /// ```
    /// use bismar::loading::{Handle, Implement};
    /// use bismar::quantity::{Mass, Name};
    ///
    /// let of = |handles| Handle::new(Name::new("handles")?, Mass::from_kg(2.0)?, Mass::ZERO, None, handles);
    /// assert!(Implement::Handle(of(2)?).is_one_of_two());
    /// assert!(!Implement::Handle(of(1)?).is_one_of_two());
    /// # Ok::<(), bismar::Error>(())
    /// ```
    #[must_use]
    pub const fn is_one_of_two(&self) -> bool {
        match self {
            Implement::Handle(handle) => handle.handles == 2,
            Implement::Pieces(_) => true,
            Implement::Bar(_) | Implement::Machine(_) | Implement::Assistance(_) | Implement::Pin(_) => false,
        }
    }
}
