//! The plans on this device, and the ways to send one: link and file.

use leptos::prelude::*;
use leptos::task::spawn_local;
use leptos::web_sys;
use sunlarder_engine::document::{Document, Problem};
use sunlarder_engine::share;
use sunlarder_engine::words::Label as L;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

use super::field::{button, button_unless, text_box};
use super::part::{Listener, act, dynamic, typed, when};
use crate::address;
use crate::bind::{edit, fixed, memo, part, signal, watch};
use crate::keep::{self, Kept, PlanId};
use crate::store::{Dialog, Face, Store, WORDS};

/// The dialogs; at most one is open.
pub(crate) fn dialogs(store: Store) -> AnyView {
    view! { {frame(store, Dialog::Plans, L::Plans, plans)} {frame(store, Dialog::Share, L::Share, share_plan)} }
        .into_any()
}

/// A native dialog, so that focus and Escape behave as everywhere.
fn frame(store: Store, which: Dialog, title: L, inside: fn(Store) -> AnyView) -> AnyView {
    let node = NodeRef::<leptos::html::Dialog>::new();
    let open = memo(Box::new(move || store.dialog.get() == Some(which)));
    watch(Box::new(move || {
        let Some(dialog) = node.get() else { return };
        if open.get() && !dialog.open() {
            let _ = dialog.show_modal();
        } else if !open.get() && dialog.open() {
            dialog.close();
        }
    }));
    let closed: Listener = Box::new(move |_| {
        if store.dialog.get_untracked() == Some(which) {
            store.dialog.set(None);
        }
    });
    view! {
        <dialog node_ref=node on:close=closed aria-label=WORDS.label(title)>
            <div class="dialog-head">
                <h2>{WORDS.label(title)}</h2>
                {button(L::Close, "button quiet", move || store.dialog.set(None))}
            </div>
            <div class="dialog-body">{when(open.into(), move || inside(store))}</div>
        </dialog>
    }
    .into_any()
}

fn plans(store: Store) -> AnyView {
    let name = part(store, 0, |plan, _| plan.name.clone());
    let set_name = edit(store, "plan name", 0, |plan, _, name| plan.name = name);
    let rows = dynamic(move || {
        store.stored.track();
        keep::plans().into_iter().map(|own| plan_row(store, own)).collect::<Vec<_>>().into_any()
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
    view! {
        {text_box(WORDS.label(L::NameOfPlan), name, fixed(""), set_name)}
        <div class="row">{button(L::CopyPlan, "button", copy)} {button(L::NewPlan, "button", fresh)}</div>
        <h3>{WORDS.label(L::OnThisDevice)}</h3>
        <ul class="list">{rows}</ul>
    }
    .into_any()
}

/// What a plan is called in a list.
pub(crate) fn plan_name(plan: &Document) -> String {
    if plan.name.is_empty() { WORDS.label(L::UnnamedPlan).to_owned() } else { plan.name.clone() }
}

fn plan_row(store: Store, kept: Kept) -> AnyView {
    let Kept { id, plan, text } = kept;
    let is_open = id == store.id.get_untracked();
    let (name, fault) = match &plan {
        Ok(plan) => (plan_name(plan), String::new()),
        Err(problem) => {
            (WORDS.label(L::UnreadablePlan).to_owned(), WORDS.problem(problem, &|_| None))
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
    view! {
        <li>
            <span class="list-name">{name} " " {mark}</span>
            <span class="soft">{fault}</span>
            <div class="row">
                {button_unless(L::OpenPlan, "button quiet", Signal::stored(is_open || unreadable), open)}
                {button(L::Download, "button quiet", file)}
                {button_unless(L::Delete, "button quiet danger", Signal::stored(is_open), forget)}
            </div>
        </li>
    }
    .into_any()
}

/// This page's address.
fn page() -> String {
    web_sys::window().and_then(|window| window.location().href().ok()).unwrap_or_default()
}

fn share_plan(store: Store) -> AnyView {
    let link = part(store, 0, |plan, _| address::link(&page(), plan).unwrap_or_default());
    let file = move || {
        let (name, text) =
            store.plan.with_untracked(|plan| (file_name(&plan.name), plan.to_json()));
        save_text(store, &name, &text);
    };
    view! {
        <div class="field">
            <label for="link-box">{WORDS.label(L::LinkToPlan)}</label>
            <div class="entry"><input id="link-box" type="text" readonly=true prop:value=link /></div>
            <p class="hint">{WORDS.label(L::LinkHint)}</p>
        </div>
        <div class="row">
            <button type="button" class="button" id="copy-link" on:click=act(move || copy_text(store, link.get_untracked()))>
                {WORDS.label(L::CopyLink)}
            </button>
            {button(L::SaveFile, "button", file)}
        </div>
        <h3>{WORDS.label(L::OpenLinkOrFile)}</h3>
        {opener(store)}
    }
    .into_any()
}

/// A name that every file system takes.
pub(crate) fn file_name(name: &str) -> String {
    let kept: String =
        name.chars().map(|own| if own.is_alphanumeric() { own } else { '-' }).take(40).collect();
    let kept = kept.trim_matches('-').to_ascii_lowercase();
    if kept.is_empty() { "sunlarder-plan.json".into() } else { format!("sunlarder-{kept}.json") }
}

/// A box for a pasted link and a button for a file.
pub(crate) fn opener(store: Store) -> AnyView {
    let pasted = RwSignal::new(String::new());
    let fault = RwSignal::new(String::new());
    let take = Callback::new(move |read: Result<Document, Problem>| match read {
        Ok(plan) => {
            fault.set(String::new());
            store.open_new(plan);
        }
        Err(problem) => {
            fault.set(format!("{} {}", WORDS.problem(&problem, &|_| None), WORDS.unchanged()));
        }
    });
    let open = act(move || take.run(share::decode(share::code_in(&pasted.get_untracked()))));
    let file: Listener = Box::new(move |event| {
        let input = event.target().and_then(|own| own.dyn_into::<web_sys::HtmlInputElement>().ok());
        let file = input.and_then(|input| input.files()).and_then(|files| files.get(0));
        let Some(file) = file else { return };
        spawn_local(async move {
            let text = JsFuture::from(file.text()).await.ok().and_then(|text| text.as_string());
            take.run(Document::from_json(&text.unwrap_or_default()));
        });
    });
    let invalid = Signal::derive(move || fault.with(|fault| !fault.is_empty()));
    view! {
        <div class="opener">
            <div class="field" class:invalid=invalid>
                <label for="pasted-link">{WORDS.label(L::PasteLink)}</label>
                <div class="entry">
                    <input id="pasted-link" type="text" autocomplete="off"
                        prop:value=signal(pasted) on:input=typed(move |text| pasted.set(text)) />
                </div>
                <p class="error" role="alert">{signal(fault)}</p>
            </div>
            <div class="row">
                <button type="button" class="button" id="open-link" on:click=open>{WORDS.label(L::OpenLink)}</button>
                <label class="button file">
                    {WORDS.label(L::OpenFile)}
                    <input class="unseen" type="file" accept=".json,application/json" on:change=file />
                </label>
            </div>
        </div>
    }
    .into_any()
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
