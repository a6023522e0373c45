//! The shapes that pictures are made of, as elements.

use super::label::Placed;
use crate::dom::node::{Node, View, svg_node};
use sunlarder_engine::words::decimal;

/// A length in a picture as an attribute: pictures that are stretched have units of up to some 40 px, so thousandths.
fn length(value: f64) -> String {
    decimal(value, 3)
}

/// A picture with its name; `stretched` ones fill whatever room they get.
pub(super) fn picture(aria: &str, (width, height): (f64, f64), stretched: bool) -> Node {
    let picture = svg_node("svg")
        .attr("role", "img")
        .attr("aria-label", aria.to_owned())
        .attr("viewBox", format!("0 0 {} {}", length(width), length(height)))
        .child(svg_node("title").child(aria.to_owned()).view());
    if stretched { picture.attr("preserveAspectRatio", "none") } else { picture }
}

/// A straight line from a point to another.
pub(super) fn line(class: &'static str, from: (f64, f64), to: (f64, f64)) -> View {
    svg_node("line")
        .attr("class", class)
        .attr("x1", length(from.0))
        .attr("y1", length(from.1))
        .attr("x2", length(to.0))
        .attr("y2", length(to.1))
        .view()
}

/// A rectangle by its left upper corner and its size.
pub(super) fn rect(class: &'static str, corner: (f64, f64), size: (f64, f64)) -> View {
    svg_node("rect")
        .attr("class", class)
        .attr("x", length(corner.0))
        .attr("y", length(corner.1))
        .attr("width", length(size.0))
        .attr("height", length(size.1))
        .view()
}

/// A dot around a point.
pub(super) fn dot(class: &'static str, (x, y): (f64, f64)) -> View {
    svg_node("circle")
        .attr("class", class)
        .attr("cx", length(x))
        .attr("cy", length(y))
        .attr("r", "5")
        .view()
}

/// A line along a path.
pub(super) fn path(class: &'static str, along: &str) -> View {
    svg_node("path").attr("class", class).attr("d", along.to_owned()).view()
}

/// A text on its base line.
pub(super) fn text(class: &'static str, label: &Placed, base: f64) -> View {
    svg_node("text")
        .attr("class", class)
        .attr("x", length(label.x))
        .attr("y", length(base))
        .attr("text-anchor", label.anchor.name())
        .child(label.text.clone())
        .view()
}
