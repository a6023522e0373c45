//! What is to be measured, and what the readings that were typed back mean.

use sunlarder_engine::document::Checked;
use sunlarder_engine::gauge::{Check, Judged, Point};
use sunlarder_engine::quantity::Unit;
use sunlarder_engine::words::decimal;
use sunlarder_engine::words::gauge::OnGauge as G;
use sunlarder_engine::working::Tag;

use super::super::About;
use super::{expected, set_up};
use crate::sentences::list;

/// What is read beside the figure of a check, if anything.
pub(super) fn second(point: &Point) -> Option<(G, Unit)> {
    match point {
        Point::LoadCurrent(_) => Some((G::OnTheGauge, Unit::Amp)),
        Point::Drop { .. } => Some((G::AtCurrent, Unit::Amp)),
        _ => None,
    }
}

/// What is the same again is not said again.
pub(super) fn once(before: &mut &'static str, said: &'static str) -> &'static str {
    if core::mem::replace(before, said) == said { "" } else { said }
}

/// What a reading means; blank without one.
pub(super) fn verdict(check: &Check, about: About<'_>) -> String {
    let About { words, document, .. } = about;
    let name_of = |tag: Tag| words.name_in(document, tag);
    match check.read_in(document).map(|own| check.judge(&own)) {
        None => String::new(),
        Some(Ok(judged)) => words.judged(check, &judged),
        Some(Err(unread)) => words.unread(&unread, &name_of),
    }
}

/// The same for the page, with an exclamation mark before it where something is to be done.
fn marked(check: &Check, about: About<'_>) -> String {
    let passes = |own| check.judge(&own) == Ok(Judged::Pass);
    let off = check.read_in(about.document).is_some_and(|own| !passes(own));
    format!("{}{}", if off { "!" } else { "" }, verdict(check, about))
}

/// The checks as [sentences](crate::sentences), five of each: by what a plan knows it (its place in [`Checked::ALL`], a space, and the place of
/// the load or array, if it is of one), its name, how it is done and what is expected, the name of the second figure if it takes one,
/// and what its reading means.
pub(in super::super) fn write_checks(about: About<'_>) -> String {
    let About { words, document, .. } = about;
    let name_of = |tag: Tag| words.name_in(document, tag);
    let mut parts = Vec::new();
    let mut before = "";
    for own in &set_up(about).1.checks {
        let (what, of) = own.point.kept_as();
        let number = Checked::ALL.iter().position(|known| *known == what).unwrap_or_default();
        let of = of.map(|own| decimal(own.into(), 0)).unwrap_or_default();
        let [at, passes] = expected(words, own);
        let mut how = once(&mut before, words.how_to_check(&own.point)).to_owned();
        if !at.is_empty() {
            let (expects, passing) = (words.on_gauge(G::Expected), words.on_gauge(G::Passes));
            how = format!("{how} ({expects} {at}, {passing} {passes})").trim_start().to_owned();
        }
        let second = second(&own.point).map_or("", |(name, _)| words.on_gauge(name));
        parts.extend([
            format!("{} {of}", decimal(number as f64, 0)),
            words.checked(&own.point, &name_of),
            how,
            second.to_owned(),
            marked(own, about),
        ]);
    }
    list(&parts)
}
