//! Another plan in the argument of a leaf: its link code, then the numbers of its place's climate.

use sunlarder_engine::document::Document;
use sunlarder_engine::outlook::Outlook;
use sunlarder_engine::quantity::Degrees;
use sunlarder_engine::share;
use sunlarder_engine::sun::Site;
use sunlarder_engine::system::System;

use crate::message::climate_of;

/// A plan beside the one on the desk.
#[derive(Debug)]
pub(super) struct Other {
    pub(super) document: Document,
    pub(super) system: System,
    pub(super) outlook: Outlook,
}

/// The argument for a plan, from its code and the [numbers](crate::message::climate_numbers) of its climate. They go as the
/// bits that they have, so that the worker reckons with the very same.
#[must_use]
pub fn argument(code: &str, climate: &[f64]) -> String {
    let mut text = code.to_owned();
    for number in climate {
        text.push_str(&format!(" {:x}", number.to_bits()));
    }
    text
}

/// A number from its bits.
pub(super) fn number(bits: &str) -> Option<f64> {
    u64::from_str_radix(bits, 16).ok().map(f64::from_bits)
}

impl Other {
    /// The plan of an argument, if it can be worked out.
    pub(super) fn read(argument: &str) -> Option<Self> {
        let mut parts = argument.split(' ');
        let document = share::decode(parts.next()?).ok()?;
        let numbers: Vec<f64> = parts.map(number).collect::<Option<_>>()?;
        let place = &document.place;
        let site =
            Site { latitude: Degrees(place.latitude_deg), longitude: Degrees(place.longitude_deg) };
        let system = System::resolve(&document, climate_of(site, &numbers)?, &mut ()).ok()?;
        let outlook = Outlook::of(&system);
        Some(Self { document, system, outlook })
    }
}
