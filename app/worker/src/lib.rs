//! What the page has worked out beside it, so that it need not carry it and never waits for it.
//!
//! [`message`] is what the two say to each other, [`desk`] does the work, [`sheet`] writes a working down. All of it is
//! plain Rust; the binary beside this library binds it to the browser, and `app/web/worker.js` to a worker or, where a
//! browser gives none, to the page itself.

pub mod desk;
pub mod message;
pub mod sheet;
