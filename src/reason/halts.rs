//! Which reasons stop a lift.

use super::Reason;

impl Reason {
    /// Whether it stops a lift.
    pub(crate) const fn stops_lift(&self) -> bool {
        matches!(
            self,
            Reason::SymptomStop { .. }
                | Reason::PainStop { .. }
                | Reason::Stopped
                | Reason::ClearanceAfterIllness
                | Reason::AsksFirst { .. }
                | Reason::LimitWithoutLift { .. }
        )
    }
}
