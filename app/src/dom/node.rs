//! Elements of the page, made at once and kept up to date by the signals that they were given.
//!
//! Leptos' `view!` compiles its machinery once for each kind of element, attribute and child. Erased as far as it goes, the program of
//! this page had 277 kB after brotli, of at most 250 for the whole page; made by tag over leptos' signals and render effects, as
//! here, 226 kB. One function serves all elements. It knows no hydration, no server and no keyed lists: nothing here needs them.
//!
//! Whatever an effect makes belongs to that effect: when it runs again, all effects inside are ended first, as in leptos itself.

use crate::signal::*;
use reactive_graph::effect::RenderEffect;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;

use super::part::{Dynamic, Listener};

/// A piece of the page.
pub(crate) struct View(web_sys::Node);

/// An element in the making.
pub(crate) struct Node(web_sys::Element);

impl View {
    /// A node as a view.
    pub(super) fn of(node: web_sys::Node) -> Self {
        Self(node)
    }
}

/// A new element, in a page or in a picture, which has a namespace of its own.
///
/// A tag is a literal of ours; that the browser knows none by that name cannot happen, and would only leave a gap.
pub(super) fn element(tag: &str, drawn: bool) -> web_sys::Element {
    let space = if drawn { "http://www.w3.org/2000/svg" } else { "http://www.w3.org/1999/xhtml" };
    let made = document().create_element_ns(Some(space), tag);
    made.unwrap_or_else(|_| document().create_document_fragment().unchecked_into())
}

/// A place for nodes that have no parent yet.
pub(super) fn fragment() -> web_sys::Node {
    document().create_document_fragment().into()
}

/// Gives an element what `name=value` says: an attribute, or behind a `:` a property of its style.
pub(super) fn set_own(element: &web_sys::Node, own: &str) {
    let Some((name, value)) = own.split_once('=') else { return };
    match name.strip_prefix(':') {
        Some(name) => {
            let style = element.unchecked_ref::<web_sys::HtmlElement>().style();
            let _ = style.set_property(name, value);
        }
        None => set(element.unchecked_ref(), name, value),
    }
}

/// A new element.
pub(crate) fn node(tag: &'static str) -> Node {
    Node(element(tag, false))
}

/// A new element of a picture.
pub(crate) fn svg_node(tag: &'static str) -> Node {
    Node(element(tag, true))
}

/// Nothing.
pub(crate) fn nothing() -> View {
    View(fragment())
}

/// Views side by side.
pub(crate) fn group(views: Vec<View>) -> View {
    let all = fragment();
    for View(view) in views {
        let _ = all.append_child(&view);
    }
    View(all)
}

/// Does something now and whenever what it reads has changed, for as long as what is being made lives.
pub(super) fn follow(act: Box<dyn FnMut()>) {
    let mut act = act;
    // The effect ends when its last handle is dropped, which the owner of the store does.
    StoredValue::new(RenderEffect::new(move |_| act()));
}

impl Node {
    /// The element itself.
    pub(crate) fn element(&self) -> web_sys::Element {
        self.0.clone()
    }

    /// With an attribute.
    pub(crate) fn attr(self, name: &'static str, value: impl Value) -> Self {
        value.put(&self.0, name);
        self
    }

    /// With a property of the element's object, which the person's typing changes and an attribute does not.
    pub(crate) fn prop(self, name: &'static str, value: impl Property) -> Self {
        value.put(&self.0, name);
        self
    }

    /// With a class while something holds.
    pub(crate) fn class_while(self, name: &'static str, holds: Signal<bool>) -> Self {
        let classes = self.0.class_list();
        follow(Box::new(move || {
            let _ = classes.toggle_with_force(name, holds.get());
        }));
        self
    }

    /// With a computed style that stays. Not an attribute, which a policy against styles in the page would refuse.
    pub(crate) fn style(self, name: &'static str, value: &str) -> Self {
        let _ = self.0.unchecked_ref::<web_sys::HtmlElement>().style().set_property(name, value);
        self
    }

    /// With a computed style that changes.
    pub(crate) fn style_now(self, name: &'static str, value: Signal<String>) -> Self {
        let style = self.0.clone().unchecked_into::<web_sys::HtmlElement>().style();
        follow(Box::new(move || {
            let _ = style.set_property(name, &value.get());
        }));
        self
    }

    /// Listening to an event.
    pub(crate) fn on(self, event: &'static str, listener: Listener) -> Self {
        // The browser's garbage collector takes the closure with the element.
        let listener = Closure::wrap(listener).into_js_value();
        let _ = self.0.add_event_listener_with_callback(event, listener.unchecked_ref());
        self
    }

    /// With a child.
    pub(crate) fn child(self, child: impl Child) -> Self {
        let _ = self.0.append_child(&child.view().0);
        self
    }

    /// With something in the place inside that has this name as its `data-put`, instead of what stands there.
    pub(crate) fn put(self, place: &str, View(view): View) -> Self {
        if let Ok(Some(place)) = self.0.query_selector(&format!("[data-put={place}]")) {
            place.set_text_content(None);
            let _ = place.append_child(&view);
        }
        self
    }

    /// The finished element.
    pub(crate) fn view(self) -> View {
        View(self.0.into())
    }
}

/// What an attribute can be set to.
pub(crate) trait Value {
    /// Sets the attribute of that name.
    fn put(self, element: &web_sys::Element, name: &'static str);
}

fn set(element: &web_sys::Element, name: &str, value: &str) {
    let _ = element.set_attribute(name, value);
}

impl Value for &'static str {
    fn put(self, element: &web_sys::Element, name: &'static str) {
        set(element, name, self);
    }
}

impl Value for String {
    fn put(self, element: &web_sys::Element, name: &'static str) {
        set(element, name, &self);
    }
}

impl Value for bool {
    fn put(self, element: &web_sys::Element, name: &'static str) {
        let _ = element.toggle_attribute_with_force(name, self);
    }
}

impl Value for Signal<String> {
    fn put(self, element: &web_sys::Element, name: &'static str) {
        let element = element.clone();
        follow(Box::new(move || set(&element, name, &self.get())));
    }
}

impl Value for Signal<Option<&'static str>> {
    /// Nothing takes the attribute away.
    fn put(self, element: &web_sys::Element, name: &'static str) {
        let element = element.clone();
        follow(Box::new(move || match self.get() {
            Some(value) => set(&element, name, value),
            None => {
                let _ = element.remove_attribute(name);
            }
        }));
    }
}

impl Value for Signal<bool> {
    fn put(self, element: &web_sys::Element, name: &'static str) {
        let element = element.clone();
        follow(Box::new(move || {
            let _ = element.toggle_attribute_with_force(name, self.get());
        }));
    }
}

/// What a property can follow.
pub(crate) trait Property {
    /// Sets the property of that name, now and whenever it changes.
    fn put(self, element: &web_sys::Element, name: &'static str);
}

impl Property for Signal<String> {
    fn put(self, element: &web_sys::Element, name: &'static str) {
        let element = element.clone();
        follow(Box::new(move || {
            let _ = js_sys::Reflect::set(&element, &name.into(), &self.get().into());
        }));
    }
}

impl Property for Signal<bool> {
    fn put(self, element: &web_sys::Element, name: &'static str) {
        let element = element.clone();
        follow(Box::new(move || {
            let _ = js_sys::Reflect::set(&element, &name.into(), &self.get().into());
        }));
    }
}

/// What can stand in an element.
pub(crate) trait Child {
    /// It as a view.
    fn view(self) -> View;
}

/// Text; never markup, wherever it comes from.
pub(super) fn text(text: &str) -> web_sys::Text {
    document().create_text_node(text)
}

impl Child for &'static str {
    fn view(self) -> View {
        View(text(self).into())
    }
}

impl Child for String {
    fn view(self) -> View {
        View(text(&self).into())
    }
}

impl Child for Signal<String> {
    fn view(self) -> View {
        let own = text("");
        let shown = own.clone();
        follow(Box::new(move || {
            let now = self.get();
            // A node that is written to is drawn and read out anew even if it says the same.
            if shown.data() != now {
                shown.set_data(&now);
            }
        }));
        View(own.into())
    }
}

impl Child for Dynamic {
    /// What it makes stands between two empty texts, so that it can be found again.
    fn view(mut self) -> View {
        let all = document().create_document_fragment();
        let (start, end) = (text(""), text(""));
        let _ = all.append_child(&start);
        let _ = all.append_child(&end);
        follow(Box::new(move || {
            let View(made) = self();
            while let Some(old) = start.next_sibling() {
                if old.is_same_node(Some(&end)) {
                    break;
                }
                if let Some(parent) = old.parent_node() {
                    let _ = parent.remove_child(&old);
                }
            }
            if let Some(parent) = end.parent_node() {
                let _ = parent.insert_before(&made, Some(&end));
            }
        }));
        View(all.into())
    }
}

impl Child for View {
    fn view(self) -> View {
        self
    }
}

impl Child for Option<View> {
    fn view(self) -> View {
        self.unwrap_or_else(nothing)
    }
}

impl Child for Vec<View> {
    fn view(self) -> View {
        group(self)
    }
}

/// Puts a view behind an element that is in the page.
pub(crate) fn put_behind(element: &web_sys::Element, View(view): View) {
    let _ = element.after_with_node_1(&view);
}

/// Puts the whole page into the document.
pub(crate) fn put_into_body(View(page): View) {
    if let Some(body) = document().body() {
        let _ = body.insert_before(&page, body.first_child().as_ref());
    }
}
