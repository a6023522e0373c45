//! Files beside the page, fetched when they are needed: the climate before it stands, its spread once it stands, the
//! towns when somebody looks for one.
//!
//! What is fetched stays for as long as the page does, so it is leaked: the rest of the page then just borrows it.

use crate::signal::*;
use sunlarder_engine::place::{Climate, Gazetteer, SpreadGrid};
use sunlarder_engine::words::Countries;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::{JsFuture, spawn_local};

/// Fetches a file from beside the page; `Err` if it is not there or the way to it is cut.
pub(crate) async fn fetch_bytes(name: &str) -> Result<Vec<u8>, ()> {
    let answer = JsFuture::from(window().fetch_with_str(name)).await.map_err(drop)?;
    let answer: web_sys::Response = answer.unchecked_into();
    if !answer.ok() {
        return Err(());
    }
    let content = JsFuture::from(answer.array_buffer().map_err(drop)?).await.map_err(drop)?;
    Ok(js_sys::Uint8Array::new(&content).to_vec())
}

/// The same for a text.
pub(crate) async fn fetch_text(name: &str) -> Result<String, ()> {
    String::from_utf8(fetch_bytes(name).await?).map_err(drop)
}

/// The climate of the earth.
pub(crate) async fn climate() -> Result<&'static Climate, ()> {
    let climate = Climate::from_bytes(fetch_bytes("climate.bin").await?).map_err(drop)?;
    Ok(Box::leak(Box::new(climate)))
}

/// How much the sun of the earth varies from day to day.
pub(crate) async fn spread() -> Result<&'static SpreadGrid, ()> {
    let spread = SpreadGrid::from_bytes(fetch_bytes("spread.bin").await?).map_err(drop)?;
    Ok(Box::leak(Box::new(spread)))
}

/// The names that a place can be found by.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Names {
    /// Towns.
    pub(crate) towns: Gazetteer<'static>,
    /// Their countries.
    pub(crate) countries: Countries<'static>,
}

/// How far the names are.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Coming {
    /// Nobody asked for them yet.
    Unasked,
    /// On their way.
    Asked,
    /// Here.
    Here(Names),
    /// They could not be fetched; asking again tries again.
    Missed,
}

/// Fetches the names unless they are here or on their way.
pub(crate) fn ask_for_names(names: RwSignal<Coming>) {
    if matches!(names.get_untracked(), Coming::Asked | Coming::Here(_)) {
        return;
    }
    names.set(Coming::Asked);
    spawn_local(async move {
        names.set(fetch_names().await.map_or(Coming::Missed, Coming::Here));
    });
}

async fn fetch_names() -> Result<Names, ()> {
    let towns = fetch_text("towns.txt").await?;
    let countries = fetch_text("countries.txt").await?;
    Ok(Names {
        towns: Gazetteer::from_text(towns.leak()),
        countries: Countries::from_text(countries.leak()),
    })
}
