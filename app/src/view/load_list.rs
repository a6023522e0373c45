//! The rows of the loads: by groups, each with its charge and share, taken along or left at home, moved by its grip.

use crate::signal::*;
use sunlarder_engine::document::Document;
use wasm_bindgen::JsCast;
use web_sys::{Event, KeyboardEvent, PointerEvent};

use crate::bind::{drawn, to_load};
use crate::dom::arranged::arranged;
use crate::dom::node::{Node, View, node};
use crate::dom::part::{Listener, act, when};
use crate::dom::sight::focus_soon;
use crate::dom::stroke::{Stroke, stroked};
use crate::drawers::drawer;
use crate::load_row::{self, Item, Row, Taken};
use crate::store::{Store, WORDS, words};

/// The list of loads, as it is looked at.
#[derive(Clone, Copy)]
pub(crate) struct Loads {
    store: Store,
    /// What the rows say of the plan.
    rows: Signal<Vec<Row>>,
    /// What they say of the answers.
    taken: Signal<Vec<Taken>>,
    /// What stands in the list, in its order.
    items: Signal<Vec<Item>>,
    /// Groups that are folded.
    folded: RwSignal<Vec<String>>,
    /// The load whose editor is open.
    pub(crate) open: RwSignal<Option<usize>>,
    /// The load that was added last.
    pub(crate) fresh: RwSignal<Option<usize>>,
    /// The load on which one that is dragged would be dropped, and whether behind it.
    drop: RwSignal<Option<(usize, bool)>>,
}

impl Loads {
    pub(crate) fn new(store: Store) -> Self {
        let rows = memo(Box::new(move || store.plan.with(load_row::rows)));
        let folded = RwSignal::new(Vec::new());
        let items = memo(Box::new(move || {
            rows.with(|rows| folded.with(|folded| load_row::order(rows, folded)))
        }));
        Self {
            store,
            rows,
            // A frame after the verdict: an edit moves the share of every other load, too.
            taken: drawn(store.drawn, |solved| load_row::taken(solved).0),
            items,
            folded,
            open: RwSignal::new(None),
            fresh: RwSignal::new(None),
            drop: RwSignal::new(None),
        }
    }

    /// Changes the order, and keeps the open editor with its load.
    fn arrange(self, kind: &'static str, order: &[usize], change: &mut dyn FnMut(&mut Document)) {
        self.store.edit(kind, &mut |plan| {
            change(plan);
            load_row::arrange(plan, order);
        });
        self.fresh.set(None);
        let follow = |place| load_row::found(order, place);
        self.open.update(|open| *open = open.and_then(follow));
    }

    /// Moves a load to where another stands.
    fn put(self, from: usize, to: usize, order: &[usize]) {
        self.arrange("move load", order, &mut |plan| {
            let group = plan.loads.get(to).map(|own| own.group.clone()).unwrap_or_default();
            to_load(plan, from, |load| load.group = group);
        });
    }

    /// Moves a load by one; the focus goes to the same control of its new row.
    pub(crate) fn step(self, place: usize, down: bool, control: &'static str) {
        let stepped = self.rows.with_untracked(|rows| {
            self.items.with_untracked(|items| load_row::stepped(rows, items, place, down))
        });
        let Some((to, order)) = stepped else { return };
        self.put(place, to, &order);
        if let Some(place) = load_row::found(&order, place) {
            focus_soon(format!("{} {control}", row_of(place)));
        }
    }

    /// Whether there is a load before or after another.
    pub(crate) fn can_step(self, place: usize, down: bool) -> Signal<bool> {
        memo(Box::new(move || {
            self.items.with(|items| load_row::neighbour(items, place, down).is_some())
        }))
    }

    /// Puts those that take most first.
    pub(crate) fn largest_first(self) {
        let order = self.store.answers.with_untracked(|answers| {
            let count = self.rows.with_untracked(Vec::len);
            answers.solved().map(|own| load_row::largest_first(count, &own.opening.budget))
        });
        if let Some(order) = order {
            self.arrange("order of loads", &order, &mut |_| {});
        }
    }

    /// The names of all groups.
    pub(crate) fn groups(self) -> Vec<String> {
        let mut groups: Vec<String> = Vec::new();
        self.rows.with(|rows| {
            for row in rows {
                if !row.group.is_empty() && !groups.contains(&row.group) {
                    groups.push(row.group.clone());
                }
            }
        });
        groups
    }
}

/// The row of a load, as a selector.
pub(crate) fn row_of(place: usize) -> String {
    format!("li.load[data-place=\"{place}\"]")
}

/// The list.
pub(crate) fn list(loads: Loads) -> View {
    let list = node("ul").attr("class", "loads");
    let make = move |item: &Item| match item {
        Item::Heading(group) => heading(loads, group.clone()),
        Item::Load(place) => row(loads, *place),
    };
    arranged(&list, loads.items, Box::new(make));
    list.view()
}

/// A switch for what is taken along or left at home.
fn take(label: Signal<String>, on: Signal<bool>, flip: impl FnMut() + 'static) -> Node {
    node("input")
        .attr("type", "checkbox")
        .attr("class", "take")
        .attr("aria-label", label)
        .prop("checked", on)
        .on("change", act(flip))
}

fn heading(loads: Loads, group: String) -> Node {
    let Loads { store, rows, folded, .. } = loads;
    let own = StoredValue::new(group.clone());
    let is_own = move |row: &&Row| own.with_value(|own| row.group == *own);
    let name = if group.is_empty() {
        WORDS.label(sunlarder_engine::words::Label::NoGroup).to_owned()
    } else {
        group
    };
    let count = memo(Box::new(move || {
        rows.with(|rows| {
            let own = || rows.iter().filter(is_own);
            (own().count(), own().filter(|row| !row.on).count())
        })
    }));
    let all = Signal::derive(move || count.get().1 == 0);
    let some = Signal::derive(move || {
        let (loads, at_home) = count.get();
        at_home > 0 && at_home < loads
    });
    let told = memo(Box::new(move || {
        let (loads, at_home) = count.get();
        WORDS.in_group(loads, at_home)
    }));
    let charge = memo(Box::new(move || {
        store.drawn.with(|answers| {
            let of = |solved| {
                own.with_value(|own| rows.with(|rows| load_row::charge_of_group(solved, rows, own)))
            };
            answers.solved().map(|solved| of(solved)).unwrap_or_default()
        })
    }));
    let expanded = Signal::derive(move || {
        let is_folded = folded.with(|folded| own.with_value(|own| folded.contains(own)));
        (!is_folded).to_string()
    });
    let fold = move || {
        folded.update(|folded| {
            let group = own.get_value();
            let before = folded.len();
            folded.retain(|other| *other != group);
            if folded.len() == before {
                folded.push(group);
            }
        });
    };
    let said = StoredValue::new(name.clone());
    let flip = move || {
        let on = !all.get_untracked();
        store.edit("group on", &mut |plan| {
            own.with_value(|own| {
                for load in plan.loads.iter_mut().filter(|load| load.group == *own) {
                    load.on = on;
                }
            });
        });
        store.say_changed(said.with_value(|name| WORDS.group_switched(name, on)));
    };
    node("li")
        .attr("class", "group")
        .child(
            take(Signal::stored(WORDS.take_along(&name)), all, flip)
                .prop("indeterminate", some)
                .view(),
        )
        .child(
            node("button")
                .attr("type", "button")
                .attr("class", "group-open")
                .attr("aria-expanded", expanded)
                .on("click", act(fold))
                .child(node("span").attr("class", "load-name").child(name).view())
                .child(node("span").attr("class", "load-when").child(told).view())
                .child(
                    node("span")
                        .attr("class", "load-charge")
                        .child(charge)
                        .child(" ")
                        .child(
                            node("span").attr("class", "unit").child(words().charge_unit()).view(),
                        )
                        .view(),
                )
                .view(),
        )
}

fn row(loads: Loads, place: usize) -> Node {
    let Loads { store, rows, taken, open, fresh, drop, .. } = loads;
    // One look at the plan and one at the answers for a row, however much it says.
    let own =
        memo(Box::new(move || rows.with(|rows| rows.get(place).cloned().unwrap_or_default())));
    let figures =
        memo(Box::new(move || taken.with(|all| all.get(place).cloned().unwrap_or_default())));
    let off = Signal::derive(move || own.with(|own| !own.on));
    let on = Signal::derive(move || own.with(|own| own.on));
    let is_open = memo(Box::new(move || open.get() == Some(place)));
    let expanded = Signal::derive(move || is_open.get().to_string());
    let press = act(move || open.update(|open| *open = (*open != Some(place)).then_some(place)));
    let flip = move || {
        store.edit("load on", &mut |plan| to_load(plan, place, |load| load.on = !load.on));
    };
    let is_fresh = memo(Box::new(move || fresh.get() == Some(place)));
    let before = memo(Box::new(move || drop.get() == Some((place, false))));
    let behind = memo(Box::new(move || drop.get() == Some((place, true))));
    let told = |of: fn(&Row) -> String| Signal::derive(move || own.with(of));
    let figure = |of: fn(&Taken) -> String| Signal::derive(move || figures.with(of));
    node("li")
        .attr("class", "load")
        .attr("data-place", place.to_string())
        .class_while("off", off)
        .class_while("fresh", is_fresh)
        .class_while("drop-before", before)
        .class_while("drop-behind", behind)
        .child(take(told(|own| WORDS.take_along(&own.name)), on, flip).view())
        .child(
            node("button")
                .attr("type", "button")
                .attr("class", "load-open")
                .attr("aria-expanded", expanded)
                .on("click", press)
                .child(
                    node("span")
                        .attr("class", "load-name")
                        .child(told(|own| own.name.clone()))
                        .view(),
                )
                .child(
                    node("span")
                        .attr("class", "load-when")
                        .child(told(|own| own.when.clone()))
                        .view(),
                )
                .child(
                    node("span")
                        .attr("class", "load-charge")
                        .child(figure(|own| own.charge.clone()))
                        .child(" ")
                        .child(
                            node("span")
                                .attr("class", "unit")
                                .child(figure(|own| own.unit.to_owned()))
                                .view(),
                        )
                        .view(),
                )
                .child(
                    node("span")
                        .attr("class", "load-share")
                        .child(figure(|own| own.share.clone()))
                        .view(),
                )
                .view(),
        )
        .child(grip(loads, place, told(|own| WORDS.move_load(&own.name))))
        .child(
            node("div")
                .attr("class", "share")
                .child(node("i").style_now("transform", figure(|own| own.scale.clone())).view())
                .view(),
        )
        .child(when(is_open, move || {
            drawer(loads.store, move |own| (own.load)(loads.store, place, loads))
        }))
}

/// What a load is moved by: dragged, or by arrow keys.
fn grip(loads: Loads, place: usize, label: Signal<String>) -> View {
    let keys: Listener = Box::new(move |event: Event| {
        let event: KeyboardEvent = event.unchecked_into();
        let down = match event.key().as_str() {
            "ArrowUp" => false,
            "ArrowDown" => true,
            _ => return,
        };
        event.prevent_default();
        loads.step(place, down, ".grip");
    });
    let grip = node("button")
        .attr("type", "button")
        .attr("class", "grip")
        .attr("aria-label", label)
        .on("keydown", keys);
    stroked(grip, move |stroke, event| match stroke {
        Stroke::Down | Stroke::Move => loads.drop.set(under(event).filter(|(to, _)| *to != place)),
        Stroke::Lost => loads.drop.set(None),
        Stroke::Up => {
            let to = loads.drop.try_update(Option::take).flatten();
            let Some((to, behind)) = to else { return };
            let order = loads.rows.with_untracked(|rows| load_row::moved(rows, place, to, behind));
            if let Some(order) = order {
                loads.put(place, to, &order);
            }
        }
    })
    .view()
}

/// The load under the pointer, and whether the pointer is in its lower half.
fn under(event: &PointerEvent) -> Option<(usize, bool)> {
    let grip: web_sys::Element = event.current_target()?.dyn_into().ok()?;
    let width = grip.get_bounding_client_rect();
    // Beside the grip the finger may wander off the list.
    let (x, y) = ((width.left() + width.right()) / 2.0, f64::from(event.client_y()));
    let row = document()
        .element_from_point(x as f32, y as f32)?
        .closest("li.load[data-place]")
        .ok()??;
    let place = js_sys::parse_float(&row.get_attribute("data-place")?) as usize;
    let head = row.query_selector(".load-open").ok()??.get_bounding_client_rect();
    Some((place, y > (head.top() + head.bottom()) / 2.0))
}
