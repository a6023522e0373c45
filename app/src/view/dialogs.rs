//! The plans on this device, and the ways to send one: link and file.

use leptos::prelude::*;
use leptos::task::spawn_local;
use leptos::web_sys;
use sunlarder_engine::document::Document;
use sunlarder_engine::share;
use sunlarder_engine::words::Label as L;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

use super::field::TextField;
use crate::address;
use crate::bind::{edit, part};
use crate::keep::{self, Kept, PlanId};
use crate::store::{Dialog, Face, Store, WORDS};

/// The dialogs; at most one is open.
#[component]
pub(crate) fn Dialogs() -> impl IntoView {
    view! {
        <Frame which=Dialog::Plans title=L::Plans><Plans /></Frame>
        <Frame which=Dialog::Share title=L::Share><Share /></Frame>
    }
}

/// A native dialog, so that focus and Escape behave as everywhere.
#[component]
fn Frame(which: Dialog, title: L, children: ChildrenFn) -> impl IntoView {
    let store = Store::get();
    let node = NodeRef::<leptos::html::Dialog>::new();
    let open = Memo::new(move |_| store.dialog.get() == Some(which));
    Effect::new(move |_| {
        let Some(dialog) = node.get() else { return };
        if open.get() && !dialog.open() {
            let _ = dialog.show_modal();
        } else if !open.get() && dialog.open() {
            dialog.close();
        }
    });
    let closed = move |_| {
        if store.dialog.get_untracked() == Some(which) {
            store.dialog.set(None);
        }
    };
    view! {
        <dialog node_ref=node on:close=closed aria-label=WORDS.label(title)>
            <div class="dialog-head">
                <h2>{WORDS.label(title)}</h2>
                <button type="button" class="button quiet" on:click=move |_| store.dialog.set(None)>{WORDS.label(L::Close)}</button>
            </div>
            <div class="dialog-body">{move || open.get().then(|| children())}</div>
        </dialog>
    }
}

#[component]
fn Plans() -> impl IntoView {
    let store = Store::get();
    let name = part(store, |plan| plan.name.clone());
    let kept = move || {
        store.stored.track();
        keep::plans()
    };
    let copy = move |_| {
        let mut plan = store.plan.get_untracked();
        plan.name = WORDS.copy_of(&plan.name).chars().take(80).collect();
        store.open(PlanId::fresh(), plan);
    };
    view! {
        <TextField label=WORDS.label(L::NameOfPlan) value=name
            set=edit(store, "plan name", |plan: &mut Document, name| plan.name = name) />
        <div class="row">
            <button type="button" class="button" on:click=copy>{WORDS.label(L::CopyPlan)}</button>
            <button type="button" class="button" on:click=move |_| { store.dialog.set(None); store.face.set(Face::Start); }>
                {WORDS.label(L::NewPlan)}
            </button>
        </div>
        <h3>{WORDS.label(L::OnThisDevice)}</h3>
        <ul class="list">{move || kept().into_iter().map(|own| plan_row(store, own)).collect_view()}</ul>
    }
}

/// What a plan is called in a list.
pub(crate) fn plan_name(plan: &Document) -> String {
    if plan.name.is_empty() { WORDS.label(L::UnnamedPlan).to_owned() } else { plan.name.clone() }
}

fn plan_row(store: Store, kept: Kept) -> impl IntoView {
    let Kept { id, plan, text } = kept;
    let is_open = id == store.id.get_untracked();
    let (name, fault) = match &plan {
        Ok(plan) => (plan_name(plan), None),
        Err(problem) => {
            (WORDS.label(L::UnreadablePlan).to_owned(), Some(WORDS.problem(problem, &|_| None)))
        }
    };
    let open_id = id.clone();
    let open = plan.ok().map(|plan| view! {
        <button type="button" class="button quiet" disabled=is_open
            on:click=move |_| store.open(open_id.clone(), plan.clone())>{WORDS.label(L::OpenPlan)}</button>
    });
    let file = move |_| save_text(store, "sunlarder-plan.json", &text);
    let forget = move |_| {
        keep::forget(&id);
        store.stored.update(|count| *count += 1);
    };
    view! {
        <li>
            <span class="list-name">{name} {is_open.then(|| WORDS.label(L::OpenNow))}</span>
            <span class="soft">{fault}</span>
            <div class="row">
                {open}
                <button type="button" class="button quiet" on:click=file>{WORDS.label(L::Download)}</button>
                <button type="button" class="button quiet danger" disabled=is_open on:click=forget>{WORDS.label(L::Delete)}</button>
            </div>
        </li>
    }
}

/// This page's address.
fn page() -> String {
    web_sys::window().and_then(|window| window.location().href().ok()).unwrap_or_default()
}

#[component]
fn Share() -> impl IntoView {
    let store = Store::get();
    let link = move || store.plan.with(|plan| address::link(&page(), plan)).unwrap_or_default();
    let copy = move |_| copy_text(store, link());
    let file = move |_| {
        let (name, text) =
            store.plan.with_untracked(|plan| (file_name(&plan.name), plan.to_json()));
        save_text(store, &name, &text);
    };
    let box_id = "link-box";
    view! {
        <div class="field">
            <label for=box_id>{WORDS.label(L::LinkToPlan)}</label>
            <div class="entry"><input id=box_id type="text" readonly prop:value=link /></div>
            <p class="hint">{WORDS.label(L::LinkHint)}</p>
        </div>
        <div class="row">
            <button type="button" class="button" id="copy-link" on:click=copy>{WORDS.label(L::CopyLink)}</button>
            <button type="button" class="button" on:click=file>{WORDS.label(L::SaveFile)}</button>
        </div>
        <h3>{WORDS.label(L::OpenLinkOrFile)}</h3>
        <Opener />
    }
}

/// A name that every file system takes.
pub(crate) fn file_name(name: &str) -> String {
    let kept: String =
        name.chars().map(|own| if own.is_alphanumeric() { own } else { '-' }).take(40).collect();
    let kept = kept.trim_matches('-').to_lowercase();
    if kept.is_empty() { "sunlarder-plan.json".into() } else { format!("sunlarder-{kept}.json") }
}

/// A box for a pasted link and a button for a file.
#[component]
pub(crate) fn Opener() -> impl IntoView {
    let store = Store::get();
    let pasted = RwSignal::new(String::new());
    let fault = RwSignal::new(None::<String>);
    let take = move |read: Result<Document, sunlarder_engine::document::Problem>| match read {
        Ok(plan) => {
            fault.set(None);
            store.open_new(plan);
        }
        Err(problem) => {
            fault.set(Some(format!(
                "{} {}",
                WORDS.problem(&problem, &|_| None),
                WORDS.unchanged()
            )));
        }
    };
    let open = move |_| take(share::decode(share::code_in(&pasted.get_untracked())));
    let file = move |event: leptos::ev::Event| {
        let input = event.target().and_then(|own| own.dyn_into::<web_sys::HtmlInputElement>().ok());
        let Some(file) = input.and_then(|input| input.files()).and_then(|files| files.get(0))
        else {
            return;
        };
        spawn_local(async move {
            let text = JsFuture::from(file.text()).await.ok().and_then(|text| text.as_string());
            take(Document::from_json(&text.unwrap_or_default()));
        });
    };
    view! {
        <div class="opener">
            <div class="field" class:invalid=move || fault.with(Option::is_some)>
                <label for="pasted-link">{WORDS.label(L::PasteLink)}</label>
                <div class="entry">
                    <input id="pasted-link" type="text" autocomplete="off"
                        prop:value=move || pasted.get()
                        on:input:target=move |event| pasted.set(event.target().value()) />
                </div>
                <p class="error" role="alert">{fault}</p>
            </div>
            <div class="row">
                <button type="button" class="button" id="open-link" on:click=open>{WORDS.label(L::OpenLink)}</button>
                <label class="button file">
                    {WORDS.label(L::OpenFile)}
                    <input type="file" accept=".json,application/json" on:change=file />
                </label>
            </div>
        </div>
    }
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
