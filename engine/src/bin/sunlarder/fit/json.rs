//! The wiring of a plan for programs. The unit stands at the end of each name.
//!
//! | end of name | unit |
//! |---|---|
//! | `_a`, `_v`, `_w` | amps, volts, watts |
//! | `_ohm` | ohms, out and back |
//! | `_m`, `_mm`, `_mm2` | metres, millimetres, square millimetres |
//! | `_pct`, `_c` | percent, degrees Celsius |
//!
//! `awg` is a gauge as it is written. Of a run that was refused `wire` is `null` and `refusal` says why. Kinds of fuses and places,
//! `assumed` and the like are words of the program that stay the same; every `text`, `name` and `part` may be reworded. In `diagram` a node
//! stands at a column and a row from the upper left, `lines` join nodes by their places from 0, and `svg` is the drawing. Fields may be
//! added; none is renamed within `format` 1.

use serde::Serialize;
use sunlarder_engine::fitting::{Bought, Bundle, FuseClass, FusePlace, Item, Pole, Run, Tables};
use sunlarder_engine::quantity::{
    Amps, Celsius, Metres, Ohms, Percent, SquareMillimetres, Volts, Watts,
};
use sunlarder_engine::working::{Source, Tag};

use super::Fitted;
use crate::words;

/// Version of these fields.
const FORMAT: u32 = 1;

/// The wiring as text of JSON.
pub(crate) fn json(fitted: &Fitted) -> String {
    // Numbers, texts and lists only: nothing in it can fail to serialise.
    serde_json::to_string_pretty(&wiring(fitted)).unwrap_or_default() + "\n"
}

#[derive(Serialize)]
struct Wiring<'a> {
    format: u32,
    plan: &'a str,
    basis: BasisLine,
    short_circuit: ShortCircuit,
    runs: Vec<RunLine>,
    shunt: Option<Shunt>,
    bus_bars: BusBars,
    notes: Vec<String>,
    to_buy: Vec<BoughtLine>,
    diagram: Diagram,
}

#[derive(Serialize)]
struct BasisLine {
    tables: &'static str,
    insulation_c: Celsius,
    ambient_c: Celsius,
    engine_space: bool,
    bundled: &'static str,
}

#[derive(Serialize)]
struct ShortCircuit {
    current_a: Amps,
    highest_v: Volts,
    assumed: bool,
}

#[derive(Serialize)]
struct RunLine {
    name: String,
    alike: f64,
    length_m: Metres,
    length_assumed: bool,
    continuous_a: Amps,
    moment_a: Amps,
    at_v: Volts,
    allowed_drop_pct: Percent,
    wire: Option<WireLine>,
    refusal: Option<String>,
}

#[derive(Serialize)]
struct WireLine {
    awg: String,
    metric_mm2: SquareMillimetres,
    may_carry_a: Amps,
    temperature_c: Celsius,
    resistance_ohm: Ohms,
    drop_v: Volts,
    drop_pct: Percent,
    heat_w: Watts,
    fuse: Option<FuseLine>,
}

#[derive(Serialize)]
struct FuseLine {
    rating_a: Amps,
    class: &'static str,
    place: &'static str,
    within_mm: Option<f64>,
    must_break_a: Amps,
    breaks_a: Amps,
    at_v: Volts,
}

#[derive(Serialize)]
struct Shunt {
    rated_a: Amps,
    drop_v: Volts,
    class_pct: Percent,
    current_a: Amps,
    heat_w: Watts,
}

#[derive(Serialize)]
struct BusBars {
    needed: bool,
    lugs: usize,
    rating_a: Option<Amps>,
    order: Vec<String>,
}

#[derive(Serialize)]
struct BoughtLine {
    text: String,
    length_m: Option<Metres>,
    pieces: Option<f64>,
}

#[derive(Serialize)]
struct Diagram {
    nodes: Vec<NodeLine>,
    lines: Vec<LineLine>,
    svg: String,
}

#[derive(Serialize)]
struct NodeLine {
    part: String,
    column: u16,
    row: u16,
}

#[derive(Serialize)]
struct LineLine {
    from: usize,
    to: usize,
    pole: &'static str,
    run: String,
}

fn wiring(fitted: &Fitted) -> Wiring<'_> {
    let (fitting, name_of) = (&fitted.fitting, |tag: Tag| fitted.name_of(tag));
    let (basis, short) = (&fitting.basis, &fitting.short_circuit);
    let run_name = |kind| words().run_name(kind, &name_of);
    let bars = &fitting.bus_bars;
    Wiring {
        format: FORMAT,
        plan: &fitted.plan.name,
        basis: BasisLine {
            tables: tables(basis.tables),
            insulation_c: basis.insulation.temperature(),
            ambient_c: basis.ambient,
            engine_space: basis.engine_space,
            bundled: bundled(basis.bundle),
        },
        short_circuit: ShortCircuit {
            current_a: short.current,
            highest_v: short.volts,
            assumed: short.assumed,
        },
        runs: fitting.runs.iter().map(|run| run_line(run, run_name(run.asked.kind))).collect(),
        shunt: fitting.shunt.map(|own| Shunt {
            rated_a: own.shunt.rated,
            drop_v: own.shunt.drop,
            class_pct: own.class,
            current_a: own.current,
            heat_w: own.heat,
        }),
        bus_bars: BusBars {
            needed: bars.needed,
            lugs: bars.lugs,
            rating_a: bars.rating,
            order: bars.order.iter().map(|kind| run_name(*kind)).collect(),
        },
        notes: fitting.notes.iter().map(|own| words().fitting_note(own, &name_of)).collect(),
        to_buy: fitting.shopping.iter().map(bought).collect(),
        diagram: diagram(fitted),
    }
}

fn run_line(run: &Run, name: String) -> RunLine {
    let asked = &run.asked;
    let wire = run.wire.as_ref().ok().map(|wire| WireLine {
        awg: wire.gauge.name(),
        metric_mm2: wire.metric,
        may_carry_a: wire.ampacity,
        temperature_c: wire.temperature,
        resistance_ohm: wire.resistance,
        drop_v: wire.drop,
        drop_pct: wire.drop_share,
        heat_w: wire.loss,
        fuse: wire.fuse.map(|fuse| FuseLine {
            rating_a: fuse.rating,
            class: class(fuse.class),
            place: place(fuse.place),
            within_mm: run.fuse_within_mm(),
            must_break_a: fuse.must_break,
            breaks_a: fuse.breaks,
            at_v: fuse.volts,
        }),
    });
    RunLine {
        name,
        alike: asked.count,
        length_m: asked.length,
        length_assumed: asked.length_source == Source::Typical,
        continuous_a: asked.current.continuous,
        moment_a: asked.current.peak,
        at_v: asked.current.volts,
        allowed_drop_pct: asked.allowed,
        wire,
        refusal: run.wire.as_ref().err().map(|refusal| words().refusal(refusal)),
    }
}

fn bought(own: &Bought) -> BoughtLine {
    let pieces = !matches!(own.item, Item::Conductor(_));
    BoughtLine {
        text: words().to_buy(&own.item),
        length_m: own.metres(),
        pieces: pieces.then_some(own.count),
    }
}

fn diagram(fitted: &Fitted) -> Diagram {
    let (own, name_of) = (&fitted.fitting.diagram, |tag: Tag| fitted.name_of(tag));
    Diagram {
        nodes: own
            .nodes
            .iter()
            .map(|node| NodeLine {
                part: words().fitting_part(node.part, &name_of),
                column: node.column,
                row: node.row,
            })
            .collect(),
        lines: own
            .lines
            .iter()
            .map(|line| LineLine {
                from: line.from,
                to: line.to,
                pole: pole(line.pole),
                run: words().run_name(line.run, &name_of),
            })
            .collect(),
        svg: own.svg(&|part| words().fitting_label(&fitted.fitting, part, &name_of)),
    }
}

const fn tables(own: Tables) -> &'static str {
    match own {
        Tables::Marine => "marine",
        Tables::Vehicle => "vehicle",
        Tables::Land => "land",
    }
}

const fn bundled(own: Bundle) -> &'static str {
    match own {
        Bundle::Alone => "alone",
        Bundle::UpTo3 => "up_to_3",
        Bundle::UpTo6 => "up_to_6",
        Bundle::UpTo24 => "up_to_24",
        Bundle::More => "more",
    }
}

const fn pole(own: Pole) -> &'static str {
    match own {
        Pole::Plus => "plus",
        Pole::Minus => "minus",
        Pole::Both => "both",
    }
}

const fn class(own: FuseClass) -> &'static str {
    match own {
        FuseClass::Blade => "blade",
        FuseClass::BoltedLink => "bolted_link",
        FuseClass::BoltedStrip => "bolted_strip",
        FuseClass::PostBlock => "post_block",
        FuseClass::Breaker => "dc_breaker",
        FuseClass::ClassT => "class_t",
        FuseClass::Solar => "solar",
    }
}

const fn place(own: FusePlace) -> &'static str {
    match own {
        FusePlace::Post => "post",
        FusePlace::Bus => "bus",
        FusePlace::Panel => "panel",
        FusePlace::AheadOfIsolator => "ahead_of_isolator",
        FusePlace::Combiner => "combiner",
    }
}
