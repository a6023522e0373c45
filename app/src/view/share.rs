//! The ways to send a plan and to open one: link, code, file, table, sheet.

use std::rc::Rc;

use crate::signal::*;
use sunlarder_engine::digits::places_of;
use sunlarder_engine::document::Document;
use sunlarder_engine::place::{MAX_FILE_BYTES, is_letter};
use sunlarder_engine::share;
use sunlarder_engine::words::Label as L;
use sunlarder_worker::leaf::Leaf;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use wasm_bindgen_futures::spawn_local;

use super::dialogs::plan_name;
use super::field::button;
use super::guess;
use super::leaf::leaf;
use super::sheet::print;
use crate::address;
use crate::bind::{part, signal};
use crate::dom::node::{Node, View, group, node};
use crate::dom::part::{Listener, act, typed};
use crate::plan_file::plan_of;
use crate::store::{Dialog, Store, WORDS, words};

/// This page's address, without a plan.
pub(crate) fn page() -> String {
    let address = web_sys::window().and_then(|window| window.location().href().ok());
    let address = address.unwrap_or_default();
    address.split('#').next().unwrap_or_default().to_owned()
}

/// Link, code, files and the sheet.
pub(super) fn share_plan(store: Store) -> View {
    let link = part(store, 0, |plan, _| address::link(&page(), plan).unwrap_or_default());
    group(vec![
        link_box("link-box", L::LinkToPlan, link)
            .child(node("p").attr("class", "hint").child(WORDS.label(L::LinkHint)).view())
            .view(),
        links(store, link),
        leaf(store, Leaf::Code, page()),
        files(store),
        guess::share_question(store),
        node("h3").child(WORDS.label(L::OpenLinkOrFile)).view(),
        opener(Callback::new(move |plan| store.open_new(plan))),
        node("p").attr("class", "hint").child(WORDS.label(L::DropHint)).view(),
    ])
}

/// A box that shows a link, to be marked and copied by hand.
pub(super) fn link_box(id: &'static str, label: L, link: Signal<String>) -> Node {
    let shown = node("input").attr("id", id).attr("type", "text").attr("readonly", true);
    node("div")
        .attr("class", "field")
        .child(node("label").attr("for", id).child(WORDS.label(label)).view())
        .child(node("div").attr("class", "entry").child(shown.prop("value", link).view()).view())
}

/// What can be done with the link.
fn links(store: Store, link: Signal<String>) -> View {
    let send = sender().map(|sender| {
        button(L::SendLink, "button", move || {
            let parts = js_sys::Object::new();
            let title = store.plan.with_untracked(plan_name);
            let _ = js_sys::Reflect::set(&parts, &"title".into(), &title.into());
            let _ = js_sys::Reflect::set(&parts, &"url".into(), &link.get_untracked().into());
            // What comes of it is between the person and the system.
            let _ = sender.call1(&window().navigator(), &parts);
        })
    });
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
        .child(send)
        .child(button(L::BigCode, "button", move || show_code(store, page())))
        .view()
}

/// The system's own way of sending, where there is one.
fn sender() -> Option<js_sys::Function> {
    let navigator = web_sys::window()?.navigator();
    js_sys::Reflect::get(&navigator, &"share".into()).ok()?.dyn_into().ok()
}

/// The plan as a file, its runs as tables, its sheet.
fn files(store: Store) -> View {
    let file = move || {
        let (name, text) =
            store.plan.with_untracked(|plan| (file_name(&plan.name), plan.to_json()));
        save_text(store, &format!("{name}.json"), "application/json", &text);
    };
    let table = move |which: &'static str| {
        let name = store.plan.with_untracked(|plan| file_name(&plan.name));
        let save = move |text: String| {
            save_text(store, &format!("{name}-{which}.csv"), "text/csv", &text);
        };
        store.worked.once(Leaf::Csv, which.to_owned(), Callback::new(save));
    };
    node("div")
        .attr("class", "row")
        .child(button(L::PrintSheet, "button", move || print(store, Leaf::Sheet)))
        .child(button(L::SaveFile, "button", file))
        .child(button(L::CsvMean, "button", move || table("mean")))
        .child(button(L::CsvDark, "button", move || table("dark")))
        .view()
}

/// The code alone with the plan's name, for a hall of phones.
/// Shows the code of a link large; all but the plan in it.
pub(super) fn show_code(store: Store, link: String) {
    store.coded.set_value(link);
    store.dialog.set(Some(Dialog::Code));
}

pub(super) fn large_code(store: Store) -> View {
    group(vec![
        node("h3").child(part(store, 0, |plan, _| plan_name(plan))).view(),
        leaf(store, Leaf::Code, store.coded.get_value()),
    ])
}

/// The plan in the text of a file, a link, or the code of one; else why there is none.
pub(crate) fn read_text(text: &str) -> Result<Document, String> {
    let text = text.trim();
    // A message around a link may have several lines; a bare code has one word.
    let in_message = places_of(text, "#p=").next().is_some() && !text.starts_with('{');
    let plan = if in_message || !text.is_empty() && !text.contains(['{', '\n', ' ']) {
        share::decode(share::code_in(text))
    } else {
        plan_of(text)
    };
    plan.map_err(|problem| {
        format!("{} {}", words().problem(&problem, &|_| None), WORDS.unchanged())
    })
}

/// A name that every file system takes, without its ending.
pub(crate) fn file_name(name: &str) -> String {
    let kept: String =
        name.chars().map(|own| if is_letter(own) { own } else { '-' }).take(40).collect();
    let kept = kept.trim_matches('-').to_ascii_lowercase();
    if kept.is_empty() { "sunlarder-plan".into() } else { format!("sunlarder-{kept}") }
}

/// A box for a pasted link and a button for a file.
pub(crate) fn opener(open: Callback<Document>) -> View {
    let pasted = RwSignal::new(String::new());
    let fault = RwSignal::new(String::new());
    let take = move |text: &str| match read_text(text) {
        Ok(plan) => {
            fault.set(String::new());
            open.run(plan);
        }
        Err(why) => fault.set(why),
    };
    let press = act(move || take(&pasted.get_untracked()));
    let file = move |text: JsValue| take(&text.as_string().unwrap_or_default());
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
                        .on("click", press)
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
        let Some(file) = input.files().and_then(|files| files.get(0)) else { return };
        let take = take.clone();
        text_of(&file, move |text| {
            take(JsValue::from_str(&text));
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

/// Reads a file; one that cannot be read has no text.
pub(crate) fn text_of(file: &web_sys::File, take: impl FnOnce(String) + 'static) {
    // No more than the largest that anything reads, and one to tell that there was more.
    let most = MAX_FILE_BYTES as i32 + 1;
    let Ok(file) = file.slice_with_i32_and_i32(0, most) else { return };
    spawn_local(async move {
        let text = JsFuture::from(file.text()).await.ok().and_then(|text| text.as_string());
        take(text.unwrap_or_default());
    });
}

/// Puts a text on the clipboard and says whether that worked.
pub(super) fn copy_text(store: Store, text: String) {
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
pub(crate) fn save_text(store: Store, name: &str, kind: &str, text: &str) {
    if offer(name, kind, text).is_none() {
        store.complain(WORDS.label(L::SaveRefused));
    }
}

fn offer(name: &str, kind: &str, text: &str) -> Option<()> {
    let parts = js_sys::Array::of1(&JsValue::from_str(text));
    let options = web_sys::BlobPropertyBag::new();
    options.set_type(kind);
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
        assert_eq!(file_name("Winter: coast / 2"), "sunlarder-winter--coast---2");
        assert_eq!(file_name("///"), "sunlarder-plan");
    }
}
