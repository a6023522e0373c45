//! Elements in an order that changes: each is made once, moved when its place changes, and let go when it is no longer wanted.

use crate::signal::*;
use reactive_graph::owner::Owner;
use wasm_bindgen::JsCast;

use super::node::{Node, follow};

/// One of the elements, with what belongs to it.
struct Kept<K> {
    key: K,
    element: web_sys::Element,
    owner: Owner,
}

/// Fills an element with one element for each key, in their order. What did not change is not touched, and what has the focus keeps it.
pub(crate) fn arranged<K>(into: &Node, keys: Signal<Vec<K>>, make: Box<dyn Fn(&K) -> Node>)
where
    K: PartialEq + Clone + Send + Sync + 'static,
{
    let parent = into.element();
    let outer = Owner::current().unwrap_or_default();
    let mut kept: Vec<Kept<K>> = Vec::new();
    follow(Box::new(move || {
        let keys = keys.get();
        kept.retain(|own| {
            let wanted = keys.contains(&own.key);
            if !wanted {
                own.element.remove();
                own.owner.cleanup();
            }
            wanted
        });
        let focused = document().active_element();
        let mut next = parent.first_element_child();
        for key in &keys {
            let known = kept.iter().find(|own| own.key == *key).map(|own| own.element.clone());
            let element = known.unwrap_or_else(|| {
                let owner = outer.child();
                let element = owner.with(|| untrack(|| make(key))).element();
                kept.push(Kept { key: key.clone(), element: element.clone(), owner });
                element
            });
            match &next {
                Some(there) if there.is_same_node(Some(&element)) => {
                    next = there.next_element_sibling();
                }
                _ => {
                    let _ = parent.insert_before(&element, next.as_deref());
                }
            }
        }
        // What is moved loses the focus.
        if let Some(focused) = focused.filter(|own| parent.contains(Some(own))) {
            let _ = focused.unchecked_into::<web_sys::HtmlElement>().focus();
        }
    }));
}
