//! Models of daily clearness from the literature: yardsticks for the engine's own, which it does not use.

mod autoregressive;
mod bendt;
mod markov;

pub use autoregressive::Autoregressive;
pub use bendt::{Bendt, Fit};
pub use markov::{STATES, Transitions};
