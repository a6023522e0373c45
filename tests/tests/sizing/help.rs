//! What would help: three plans whose answers are known, and what is sensible.

use sunlarder_engine::document::{
    Array, Awake, Bank, Controller, ControllerKind, Document, Inverter, Load, Rating, Schedule,
    Span, Supply, When,
};
use sunlarder_engine::sizing::{Change, Helped, Promise, Question, help};
use sunlarder_tests::lanes::sizing_of;

use crate::studied;

/// On the equator, with figures of one's own: five peak sun hours on every day of the year.
pub(crate) fn plan(loads: Vec<Load>, bank_ah: f64, module_w: f64) -> Document {
    let mut plan = Document {
        loads,
        bank: Bank { capacity_ah: bank_ah, protection_ma: Some(0.0), ..Bank::default() },
        arrays: vec![Array { module_w, ..Array::default() }],
        ..Document::default()
    };
    plan.place.peak_sun_h = Some([5.0; 12]);
    plan.place.temperature_c = Some([25.0; 12]);
    plan
}

pub(crate) fn load(power: f64, when: When) -> Load {
    Load { rating: Rating::PowerW(power), schedule: Schedule::daily(when), ..Load::default() }
}

/// What helps a plan, the most helpful first.
fn helped(plan: &Document) -> Vec<Helped> {
    studied(plan, Question::default(), 2).helped()
}

/// 15 W round the clock are 360 Wh a day. 100 W of modules bring some 100 · 5 · 0.8 = 400 Wh before dull weeks and the doubt about the
/// climate, twice as many 800 Wh. A second battery of 100 Ah changes nothing in the long run; two of 24 hours less are 330 Wh.
#[test]
fn where_little_comes_in_another_module_helps_most() {
    let ranked = helped(&plan(vec![load(15.0, When::Always)], 100.0, 100.0));
    assert_eq!(ranked[0].change, Change::MoreArray { array: 0 }, "{ranked:?}");
}

/// Five loads of 20 W from six to eleven in the evening are 500 Wh, from 40 Ah · 12.8 V = 512 Wh of which a fifth is kept back:
/// every night is short by some 90 Wh. Two hours less of one load are 40 Wh; another battery is 410 Wh; more sun by day is of no use.
#[test]
fn where_nights_are_long_another_battery_helps_most() {
    let evening = || When::Spans(vec![Span { from_min: 18 * 60, to_min: 23 * 60 }]);
    let loads = (0..5).map(|_| load(20.0, evening())).collect();
    let ranked = helped(&plan(loads, 40.0, 400.0));
    assert_eq!(ranked[0].change, Change::MoreBank, "{ranked:?}");
    assert!(ranked.iter().all(|own| own.change != Change::MoreArray { array: 0 }), "{ranked:?}");
}

/// An inverter that idles at 15 W for one lamp of 5 W on alternating current takes 20 W of 24 hours, 480 Wh, where the lamp alone takes 120 Wh.
/// 100 W of modules bring 400 Wh at the best; with another string 800 Wh would do, and so would the lamp on direct current, which leaves
/// 280 Wh to spare where the string leaves 320. So the modules are 70 W: 280 Wh, or 560 Wh with another string, which dull weeks undo.
#[test]
fn where_an_inverter_idles_for_one_lamp_direct_current_helps_most() {
    let lamp = Load { supply: Supply::Ac, ..load(5.0, When::Always) };
    let inverter = Inverter { idle_w: Some(15.0), awake: Awake::WithLoads, ..Inverter::default() };
    let own = Document { inverter: Some(inverter), ..plan(vec![lamp], 60.0, 70.0) };
    let ranked = helped(&own);
    assert_eq!(ranked[0].change, Change::Direct { load: 0 }, "{ranked:?}");
}

/// What a life may depend on is not to be used less, and a change that changes nothing is none.
#[test]
fn only_what_is_sensible_is_tried() {
    let vital = Load { vital: true, ..load(5.0, When::Always) };
    let controller = Controller { kind: ControllerKind::Pwm, ..Array::default().controller };
    let mut own = plan(vec![vital, load(5.0, When::HoursPerDay(1.0))], 60.0, 70.0);
    own.arrays[0].controller = controller;
    let sizing = sizing_of(&own, 1).unwrap();
    let changes = help::changes(&own, &sizing, &Promise::default());
    let has = |wanted: &dyn Fn(&Change) -> bool| changes.iter().any(wanted);
    assert!(!has(&|change| matches!(change, Change::LessUse { load: 0, .. })));
    assert!(has(&|change| matches!(change, Change::LessUse { load: 1, .. })));
    assert!(!has(&|change| matches!(change, Change::Direct { .. } | Change::LongerEngine { .. })));
    assert!(
        has(&|change| *change == Change::Tracking) && !has(&|c| matches!(c, Change::Warmer { .. }))
    );
}
