//! Nine people, each with what they came for, on a phone of 360 by 740 and a laptop of 1280 by 800.

mod buyer;
mod dealer;
mod fitter;
mod installer;
mod keeper;
mod nurse;
mod owner;
mod sailor;
mod teacher;
