//! Puts a piece of the page that the worker wrote into elements.

use sunlarder_worker::paper::{ATTR, CLOSE, DRAW, OPEN, TEXT, marks};

use super::node::{View, element, fragment, set_own, text};

/// The elements of a paper.
pub(crate) fn elements(paper: &str) -> View {
    let all = fragment();
    let mut stack: Vec<web_sys::Node> = vec![all.clone()];
    for (mark, own) in marks(paper) {
        let Some(parent) = stack.last() else { break };
        match mark {
            OPEN | DRAW => {
                let made = element(own, mark == DRAW);
                let _ = parent.append_child(&made);
                stack.push(made.into());
            }
            ATTR => set_own(parent, own),
            TEXT => {
                let _ = parent.append_child(&text(own));
            }
            CLOSE => {
                stack.pop();
            }
            _ => {}
        }
    }
    View::of(all)
}
