//! A button for the inverter that the loads need.

use sunlarder_engine::outlook::{Obstacle, fitting_inverter};
use sunlarder_engine::words::decimal;

use super::About;
use crate::paper::Paper;

/// The button, if an inverter is missing or too small and a common one would do. It carries the rated output in watts.
pub(super) fn write(about: About<'_>) -> String {
    let About { words, system, outlook, .. } = about;
    let mut paper = Paper::default();
    let wanted = outlook.obstacles.iter().any(Obstacle::is_of_inverter);
    if let Some(rated) = fitting_inverter(system).filter(|_| wanted) {
        paper
            .class("button", "button")
            .attr("type", "button")
            .attr("data-inverter", &decimal(rated.0, 0))
            .text(&words.use_inverter(&words.amount(rated)))
            .close();
    }
    paper.finish()
}
