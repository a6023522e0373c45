//! What the page has worked out beside it, so that it need not carry it and never waits for it.
//!
//! [`message`] is what the two say to each other, [`desk`] does the work, [`leaf`] writes pieces of the page down on
//! [`paper`]. All of it is plain Rust; the binary beside this library binds it to the browser, and `app/web/worker.js` to a worker or, where a
//! browser gives none, to the page itself.

pub mod desk;
mod gauging;
pub mod leaf;
pub mod logbook;
pub mod message;
pub mod paper;
pub mod sentences;
mod sizing;

use sunlarder_engine::words::Language;

/// Whether this build's page plans: what runs, what stores, what comes in, what would help. What no page asks for is left out by the
/// compiler, as the branches that lead there are constant.
pub const PLANNER: bool = cfg!(feature = "planner");
/// Whether this build's page is about the installed system: its gauge and its logbook.
pub const INSTALLED: bool = cfg!(feature = "installed");

/// The language of this build. Where all are built, for checks, it is English.
pub const PAGE: Language = {
    #[cfg(feature = "english")]
    {
        Language::English
    }
    #[cfg(all(feature = "spanish", not(feature = "english")))]
    {
        Language::Spanish
    }
};
