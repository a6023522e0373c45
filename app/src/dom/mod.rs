//! Elements of the page over signals: what makes them, and the closures that change and listen.

pub(crate) mod arranged;
pub(crate) mod node;
pub(crate) mod paper;
pub(crate) mod part;
pub(crate) mod sight;
pub(crate) mod stroke;
