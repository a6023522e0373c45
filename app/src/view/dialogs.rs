//! The plans on this device, and the ways to send one: link and file.

use std::rc::Rc;

use leptos::prelude::*;
use leptos::task::spawn_local;
use leptos::web_sys;
use sunlarder_engine::document::{Document, Problem};
use sunlarder_engine::place::MAX_FILE_BYTES;
use sunlarder_engine::share;
use sunlarder_engine::words::Label as L;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

use super::field::{button, button_unless, text_box};
use crate::address;
use crate::bind::{edit, fixed, memo, part, signal, watch};
use crate::dom::node::{Child as _, View, group, node};
use crate::dom::part::{Listener, act, dynamic, typed, when};
use crate::drawers::{Drawers, drawer};
use crate::keep::{self, Kept, PlanId};
use crate::store::{Dialog, Face, Store, WORDS, words};

/// The dialogs; at most one is open.
pub(crate) fn dialogs(store: Store) -> View {
    group(vec![
        frame(store, Dialog::Plans, L::Plans, |own| own.plans).view(),
        frame(store, Dialog::Share, L::Share, |own| own.share).view(),
        frame(store, Dialog::Habits, L::Habits, |own| own.habits).view(),
    ])
}

/// A native dialog, so that focus and Escape behave as everywhere.
fn frame(store: Store, which: Dialog, title: L, inside: fn(Drawers) -> fn(Store) -> View) -> View {
    let open = memo(Box::new(move || store.dialog.get() == Some(which)));
    let closed: Listener = Box::new(move |_| {
        if store.dialog.get_untracked() == Some(which) {
            store.dialog.set(None);
        }
    });
    let head = node("div")
        .attr("class", "dialog-head")
        .child(node("h2").child(WORDS.label(title)).view())
        .child(button(L::Close, "button quiet", move || store.dialog.set(None)));
    let body = node("div")
        .attr("class", "dialog-body")
        .child(when(open, move || drawer(store, move |own| inside(own)(store))));
    let frame = node("dialog")
        .attr("aria-label", WORDS.label(title))
        .on("close", closed)
        .child(head.view())
        .child(body.view());
    let dialog = frame.element().unchecked_into::<web_sys::HtmlDialogElement>();
    watch(Box::new(move || {
        if open.get() && !dialog.open() {
            let _ = dialog.show_modal();
        } else if !open.get() && dialog.open() {
            dialog.close();
        }
    }));
    frame.view()
}

pub(super) fn plans(store: Store) -> View {
    let name = part(store, 0, |plan, _| plan.name.clone());
    let set_name = edit(store, "plan name", 0, |plan, _, name| plan.name = name);
    let rows = dynamic(move || {
        store.stored.track();
        keep::plans().into_iter().map(|own| plan_row(store, own)).collect::<Vec<_>>().view()
    });
    let copy = move || {
        let mut plan = store.plan.get_untracked();
        plan.name = WORDS.copy_of(&plan.name).chars().take(80).collect();
        store.open(PlanId::fresh(), plan);
    };
    let fresh = move || {
        store.dialog.set(None);
        store.face.set(Face::Start);
    };
    group(vec![
        text_box(WORDS.label(L::NameOfPlan), name, fixed(""), set_name).view(),
        node("div")
            .attr("class", "row")
            .child(button(L::CopyPlan, "button", copy))
            .child(button(L::NewPlan, "button", fresh))
            .view(),
        node("h3").child(WORDS.label(L::OnThisDevice)).view(),
        node("ul").attr("class", "list").child(rows).view(),
    ])
}

/// What a plan is called in a list.
pub(crate) fn plan_name(plan: &Document) -> String {
    if plan.name.is_empty() { WORDS.label(L::UnnamedPlan).to_owned() } else { plan.name.clone() }
}

fn plan_row(store: Store, kept: Kept) -> View {
    let Kept { id, plan, text } = kept;
    let is_open = id == store.id.get_untracked();
    let (name, fault) = match &plan {
        Ok(plan) => (plan_name(plan), String::new()),
        Err(problem) => {
            (WORDS.label(L::UnreadablePlan).to_owned(), words().problem(problem, &|_| None))
        }
    };
    let open_id = id.clone();
    let unreadable = plan.is_err();
    let open = move || {
        if let Ok(plan) = &plan {
            store.open(open_id.clone(), plan.clone());
        }
    };
    let file = move || save_text(store, "sunlarder-plan.json", &text);
    let forget = move || {
        keep::forget(&id);
        store.stored.update(|count| *count += 1);
    };
    let mark = if is_open { WORDS.label(L::OpenNow) } else { "" };
    node("li")
        .child(node("span").attr("class", "list-name").child(name).child(" ").child(mark).view())
        .child(node("span").attr("class", "soft").child(fault).view())
        .child(
            node("div")
                .attr("class", "row")
                .child(button_unless(
                    L::OpenPlan,
                    "button quiet",
                    Signal::stored(is_open || unreadable),
                    open,
                ))
                .child(button(L::Download, "button quiet", file))
                .child(button_unless(
                    L::Delete,
                    "button quiet danger",
                    Signal::stored(is_open),
                    forget,
                ))
                .view(),
        )
        .view()
}

/// This page's address.
fn page() -> String {
    web_sys::window().and_then(|window| window.location().href().ok()).unwrap_or_default()
}

pub(super) fn share_plan(store: Store) -> View {
    let link = part(store, 0, |plan, _| address::link(&page(), plan).unwrap_or_default());
    let file = move || {
        let (name, text) =
            store.plan.with_untracked(|plan| (file_name(&plan.name), plan.to_json()));
        save_text(store, &name, &text);
    };
    group(vec![
        node("div")
            .attr("class", "field")
            .child(node("label").attr("for", "link-box").child(WORDS.label(L::LinkToPlan)).view())
            .child(
                node("div")
                    .attr("class", "entry")
                    .child(
                        node("input")
                            .attr("id", "link-box")
                            .attr("type", "text")
                            .attr("readonly", true)
                            .prop("value", link)
                            .view(),
                    )
                    .view(),
            )
            .child(node("p").attr("class", "hint").child(WORDS.label(L::LinkHint)).view())
            .view(),
        node("div")
            .attr("class", "row")
            .child(
                node("button")
                    .attr("type", "button")
                    .attr("class", "button")
                    .attr("id", "copy-link")
                    .on("click", act(move || copy_text(store, link.get_untracked())))
                    .child(WORDS.label(L::CopyLink))
                    .view(),
            )
            .child(button(L::SaveFile, "button", file))
            .view(),
        node("h3").child(WORDS.label(L::OpenLinkOrFile)).view(),
        opener(store).view(),
    ])
}

/// A name that every file system takes.
pub(crate) fn file_name(name: &str) -> String {
    let kept: String =
        name.chars().map(|own| if own.is_alphanumeric() { own } else { '-' }).take(40).collect();
    let kept = kept.trim_matches('-').to_ascii_lowercase();
    if kept.is_empty() { "sunlarder-plan.json".into() } else { format!("sunlarder-{kept}.json") }
}

/// A box for a pasted link and a button for a file.
pub(crate) fn opener(store: Store) -> View {
    let pasted = RwSignal::new(String::new());
    let fault = RwSignal::new(String::new());
    let take = Callback::new(move |read: Result<Document, Problem>| match read {
        Ok(plan) => {
            fault.set(String::new());
            store.open_new(plan);
        }
        Err(problem) => {
            fault.set(format!("{} {}", words().problem(&problem, &|_| None), WORDS.unchanged()));
        }
    });
    let open = act(move || take.run(share::decode(share::code_in(&pasted.get_untracked()))));
    let file = move |text: JsValue| {
        take.run(Document::from_json(&text.as_string().unwrap_or_default()));
    };
    let invalid = Signal::derive(move || fault.with(|fault| !fault.is_empty()));
    node("div")
        .attr("class", "opener")
        .child(
            node("div")
                .attr("class", "field")
                .class_while("invalid", invalid)
                .child(
                    node("label")
                        .attr("for", "pasted-link")
                        .child(WORDS.label(L::PasteLink))
                        .view(),
                )
                .child(
                    node("div")
                        .attr("class", "entry")
                        .child(
                            node("input")
                                .attr("id", "pasted-link")
                                .attr("type", "text")
                                .attr("autocomplete", "off")
                                .prop("value", signal(pasted))
                                .on("input", typed(move |text| pasted.set(text)))
                                .view(),
                        )
                        .view(),
                )
                .child(
                    node("p")
                        .attr("class", "error")
                        .attr("role", "alert")
                        .child(signal(fault))
                        .view(),
                )
                .view(),
        )
        .child(
            node("div")
                .attr("class", "row")
                .child(
                    node("button")
                        .attr("type", "button")
                        .attr("class", "button")
                        .attr("id", "open-link")
                        .on("click", open)
                        .child(WORDS.label(L::OpenLink))
                        .view(),
                )
                .child(file_button(L::OpenFile, ".json,application/json", Rc::new(file)))
                .view(),
        )
        .view()
}

/// A button that takes the text of a file.
pub(crate) fn file_button(label: L, accept: &'static str, take: Rc<dyn Fn(JsValue)>) -> View {
    let file: Listener = Box::new(move |event| {
        let input = event.target().and_then(|own| own.dyn_into::<web_sys::HtmlInputElement>().ok());
        let Some(input) = input else { return };
        // No more than the largest that anything reads, and one to tell that there was more.
        let most = MAX_FILE_BYTES as i32 + 1;
        let file = input.files().and_then(|files| files.get(0));
        let Some(file) = file.and_then(|own| own.slice_with_i32_and_i32(0, most).ok()) else {
            return;
        };
        let take = take.clone();
        spawn_local(async move {
            take(JsFuture::from(file.text()).await.unwrap_or_else(|_| JsValue::from_str("")));
            // The same file may be chosen again.
            input.set_value("");
        });
    });
    node("label")
        .attr("class", "button file")
        .child(WORDS.label(label))
        .child(
            node("input")
                .attr("class", "unseen")
                .attr("type", "file")
                .attr("accept", accept)
                .on("change", file)
                .view(),
        )
        .view()
}

/// Puts a text on the clipboard and says whether that worked.
fn copy_text(store: Store, text: String) {
    let Some(window) = web_sys::window() else { return };
    // Without a secure context there is no clipboard at all.
    let there =
        js_sys::Reflect::has(&window.navigator(), &JsValue::from_str("clipboard")).unwrap_or(false);
    if !there || window.navigator().clipboard().is_undefined() {
        store.complain(WORDS.label(L::CopyRefused));
        return;
    }
    let written = window.navigator().clipboard().write_text(&text);
    spawn_local(async move {
        match JsFuture::from(written).await {
            Ok(_) => store.say(WORDS.label(L::LinkCopied)),
            Err(_) => store.complain(WORDS.label(L::CopyRefused)),
        }
    });
}

/// Offers a text as a file.
fn save_text(store: Store, name: &str, text: &str) {
    if offer(name, text).is_none() {
        store.complain(WORDS.label(L::SaveRefused));
    }
}

fn offer(name: &str, text: &str) -> Option<()> {
    let parts = js_sys::Array::of1(&JsValue::from_str(text));
    let options = web_sys::BlobPropertyBag::new();
    options.set_type("application/json");
    let blob = web_sys::Blob::new_with_str_sequence_and_options(&parts, &options).ok()?;
    let url = web_sys::Url::create_object_url_with_blob(&blob).ok()?;
    let link =
        document().create_element("a").ok()?.dyn_into::<web_sys::HtmlAnchorElement>().ok()?;
    link.set_href(&url);
    link.set_download(name);
    link.click();
    // The browser has taken the blob once the click returns to it.
    let release = Closure::once_into_js(move || {
        let _ = web_sys::Url::revoke_object_url(&url);
    });
    let _ = window()
        .set_timeout_with_callback_and_timeout_and_arguments_0(release.unchecked_ref(), 10_000);
    Some(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn file_names_suit_every_file_system() {
        assert_eq!(file_name("Winter: coast / 2"), "sunlarder-winter--coast---2.json");
        assert_eq!(file_name("///"), "sunlarder-plan.json");
    }
}
