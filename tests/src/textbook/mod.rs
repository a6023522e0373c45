//! Models from the literature, of daily clearness and of modules: yardsticks for the engine's own, which it does not use.

mod autoregressive;
mod bendt;
mod markov;
pub mod single_diode;

pub use autoregressive::Autoregressive;
pub use bendt::{Bendt, Fit};
pub use markov::{STATES, Transitions};
