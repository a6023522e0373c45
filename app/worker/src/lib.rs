//! What the page has worked out beside it, so that it need not carry it and never waits for it.
//!
//! [`message`] is what the two say to each other, [`desk`] does the work, [`leaf`] writes pieces of the page down on
//! [`paper`]. All of it is plain Rust; the binary beside this library binds it to the browser, and `app/web/worker.js` to a worker or, where a
//! browser gives none, to the page itself.

pub mod desk;
pub mod leaf;
pub mod logbook;
pub mod message;
pub mod paper;
pub mod sentences;
mod sizing;

use sunlarder_engine::words::Language;

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
