//! A press that is held and moved: the pointer is kept until it is let go, wherever it goes.

use core::cell::Cell;
use std::rc::Rc;

use wasm_bindgen::JsCast;
use web_sys::{Event, PointerEvent};

use super::node::Node;
use super::part::Listener;

/// What the pointer does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Stroke {
    /// It is pressed.
    Down,
    /// It moves while pressed.
    Move,
    /// It is let go.
    Up,
    /// It is gone, as when the browser takes it for something else.
    Lost,
}

/// Tells an element's strokes.
pub(crate) fn stroked(node: Node, act: impl Fn(Stroke, &PointerEvent) + 'static) -> Node {
    let act = Rc::new(act);
    let held = Rc::new(Cell::new(false));
    let listen = |stroke: Stroke| -> Listener {
        let (act, held) = (act.clone(), held.clone());
        Box::new(move |event: Event| {
            let event: PointerEvent = event.unchecked_into();
            match stroke {
                Stroke::Down if event.button() != 0 => return,
                Stroke::Down => {
                    let own = event.current_target();
                    let own = own.and_then(|own| own.dyn_into::<web_sys::Element>().ok());
                    // Refused only for a pointer that is gone already; the press alone counts then.
                    let _ = own.map(|own| own.set_pointer_capture(event.pointer_id()));
                    held.set(true);
                }
                _ if !held.get() => return,
                Stroke::Move => {}
                Stroke::Up | Stroke::Lost => held.set(false),
            }
            act(stroke, &event);
        })
    };
    node.on("pointerdown", listen(Stroke::Down))
        .on("pointermove", listen(Stroke::Move))
        .on("pointerup", listen(Stroke::Up))
        .on("pointercancel", listen(Stroke::Lost))
}
