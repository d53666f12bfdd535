//! The arithmetic at the rack: bars, discs, exact loads, heights, warm-up steps, a shared bar.
//!
//! Uses `error`, `numeric`, `source`, `quantity`, `caution`. Everything here is exact: masses are whole
//! nanograms, the search never guesses, and every loop has a stated bound.
//!
//! | question at the rack | function |
//! |---|---|
//! | What goes on each side? | [`load()`], [`load_on`], or [`Prepared`] for many questions about one stock |
//! | What goes on, with what is on already? | [`load_from`] |
//! | What is the next load up, and is the step too large? | [`step_up`], [`step_reality`], [`rep_bridge`] |
//! | What can this gym make, and where is the largest gap? | [`reachable()`] |
//! | Which pair to buy? | [`buy`] |
//! | How high does the bar lie, and how does it stay there? | [`centre_height`], [`grip_height`], [`keep_height`] for one load on whatever blocks it takes, [`AtHeight`] for every load on the blocks that there are |
//! | Warm-ups to the work set? | [`warm_up`], [`warm_up_steps`] |
//! | Two of us, one bar? | [`shared_bar`] |
//! | What is on the bar now? | [`read_bar`] |
//! | Was that pounds or kilograms? | [`unit_slip`] |
//! | How much to add on the way to a test? | [`attempt_step`] |
//! | In which order do discs come off and go on? | [`handling_order`] |
//! | Alone at the rack? | [`rack_check`] |
//!
//! # Bounds
//!
//! | what | bound |
//! |---|---|
//! | kinds of disc in a stock | 25 ([`Stock::MOST_KINDS`]) |
//! | discs of one kind | 30 ([`Disc::MOST`]) |
//! | different sums on one end | 300 000, else `stock_too_large` |
//! | work to prepare a stock | at most 4 merges a kind of a list of that length |
//! | stacks listed for one warm-up or shared set | 4 000, and 400 000 looks; beyond, the answer says `proved: false` |
//! | looks for the discs that may stay on | 100 000, likewise |
//! | warm-up steps; lifters at one bar; sets of each | 12; 4; 12 |

mod at_height;
mod attempt;
mod bar;
mod buying;
mod change;
mod disc;
mod ends;
mod height;
mod implement;
mod in_hands;
mod loaded;
mod prepared;
mod presets;
mod rack;
mod reading;
mod shared;
mod slip;
mod solve;
mod stacks;
mod step;
mod table;
mod tolerance;
mod warming;

pub use at_height::{AtHeight, LoadAtHeight};
pub use attempt::{AttemptStep, BodyHalf, attempt_step};
pub use bar::{Bar, BarKind};
pub use buying::{Offer, Purchase, buy};
pub use change::{DiscChange, load_from};
pub(crate) use disc::between;
pub use disc::{Disc, Stock, face_unit};
pub use height::{
    GripHeight, KeepHeight, SAME_DIAMETER, centre_height, drop_below_full, grip_height, keep_height,
};
pub use implement::{Handle, Implement, MachineStack, Pieces, Pin};
pub use loaded::{Loaded, PlacedDisc, Rounding, Setting};
pub use prepared::Prepared;
pub use presets::{
    FULL_DIAMETER, iwf_bar_men, iwf_bar_women, iwf_stock, pound_stock, powerlifting_bar, powerlifting_stock,
    quarter_pounds_down,
};
pub use rack::{
    ALONE_RESERVE, Company, End, Handling, HandlingOrder, IMBALANCE_LIMIT, RackCheck, RackLift, RackSetup,
    handling_order, rack_check,
};
pub use reading::{BarReading, read_bar};
pub(crate) use shared::shared_bar_as_loaded;
pub use shared::{SharedBar, SharedLifter, SharedSet, Turn, shared_bar};
pub use slip::{UNIT_SLIP_WITHIN, UnitSlip, unit_slip};
pub use solve::{Gap, Reachable, load, load_on, reachable, step_up};
pub use stacks::EndMoves;
pub use step::{BridgeOptions, STEP_HIGH, STEP_LOW, StepReality, StepSize, rep_bridge, step_reality};
pub use tolerance::{MassBand, Tolerance, iwf_tolerance, powerlifting_tolerance};
pub use warming::{LoadedWarmUpSet, WarmUp, WarmUpStep, warm_up, warm_up_steps};

pub(crate) static DECLARED: crate::source::Declarations = &[
    solve::DECLARED,
    attempt::DECLARED,
    change::DECLARED,
    buying::DECLARED,
    height::DECLARED,
    presets::DECLARED,
    rack::DECLARED,
    reading::DECLARED,
    shared::DECLARED,
    slip::DECLARED,
    step::DECLARED,
    tolerance::DECLARED,
    warming::DECLARED,
];
