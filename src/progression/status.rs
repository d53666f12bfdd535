//! Where a lift stands in its course.

/// State of a lift. Holding is the ordinary, successful state; it may last for months.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize), serde(rename_all = "snake_case"))]
pub enum Status {
    /// Calibration on a new lift or rung.
    Learning,
    /// The right place; the load stays until the gate opens.
    Holding,
    /// The gate is open and a move waits to be taken.
    ReadyToAdvance,
    /// The first sessions after a move.
    Consolidating,
    /// One step easier, to look again.
    SteppingBack,
    /// A planned break.
    Resting,
    /// Coming back after a break or a stop, never past the load before it.
    Returning,
    /// Kept where it is on purpose.
    Maintaining,
    /// Stopped by pain or a symptom until a clearance and the coach's sign-off.
    StoppedRefer,
    /// No longer used.
    Retired,
}

impl Status {
    /// Every state.
    pub const ALL: [Status; 10] = [
        Status::Learning,
        Status::Holding,
        Status::ReadyToAdvance,
        Status::Consolidating,
        Status::SteppingBack,
        Status::Resting,
        Status::Returning,
        Status::Maintaining,
        Status::StoppedRefer,
        Status::Retired,
    ];

    /// The stable name.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            Status::Learning => "learning",
            Status::Holding => "holding",
            Status::ReadyToAdvance => "ready_to_advance",
            Status::Consolidating => "consolidating",
            Status::SteppingBack => "stepping_back",
            Status::Resting => "resting",
            Status::Returning => "returning",
            Status::Maintaining => "maintaining",
            Status::StoppedRefer => "stopped_refer",
            Status::Retired => "retired",
        }
    }

    /// Whether sessions of the lift are judged toward its course.
    #[must_use]
    pub const fn is_trained(self) -> bool {
        !matches!(self, Status::StoppedRefer | Status::Retired)
    }
}
