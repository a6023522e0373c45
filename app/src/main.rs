//! The Sunlarder planner page.
mod chart;
fn main() {}
