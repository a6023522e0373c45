//! Numbers with a point, for attributes, styles and boxes that people type in: the engine's own, made with whole numbers.

pub(crate) use sunlarder_engine::words::{decimal, padded};
