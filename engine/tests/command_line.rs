//! The command line as people, scripts and pipes meet it: the built program, its exit codes and its words.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at what it cannot read")]

use std::io::Write;
use std::path::PathBuf;
use std::process::{Command, Output, Stdio};

use serde_json::Value;

/// Ends of names that tell a unit; a number in JSON has one of them, or is one of [`COUNTS`].
const UNITS: [&str; 22] = [
    "_ah",
    "_wh",
    "_a",
    "_v",
    "_w",
    "_h",
    "_l",
    "_days",
    "_pct",
    "_ratio",
    "_c",
    "_deg",
    "_min",
    "_km",
    "_kwh_per_m2",
    "_w_per_m2",
    "_m",
    "_mm",
    "_mm2",
    "_ohm",
    "_local",
    "_utc",
];
/// Numbers that count and have no unit.
const COUNTS: [&str; 20] = [
    "format",
    "month",
    "months",
    "load",
    "array",
    "ratings",
    "alike",
    "lugs",
    "pieces",
    "column",
    "row",
    "from",
    "to",
    "fulls",
    "fulls_by_month",
    "wrong_fulls",
    "wrong_empties",
    "years",
    "readings",
    "nights",
];
/// Rounding of the sums of a run, relative to the charge moved.
const ROUNDING: f64 = 1e-9;

fn run(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_sunlarder")).args(arguments).output().unwrap()
}

/// The program with something on its standard input.
fn run_with(input: &[u8], arguments: &[&str]) -> Output {
    let mut child = Command::new(env!("CARGO_BIN_EXE_sunlarder"))
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // The program may refuse before it has read everything.
    let _ = child.stdin.take().unwrap().write_all(input);
    child.wait_with_output().unwrap()
}

/// Standard output of a success, with nothing on standard error.
fn said(output: &Output) -> String {
    let told = String::from_utf8(output.stderr.clone()).unwrap();
    assert!(output.status.success() && told.is_empty(), "{:?}: {told}", output.status);
    String::from_utf8(output.stdout.clone()).unwrap()
}

fn folder(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("..").join(name)
}

fn example(name: &str) -> String {
    folder("examples").join(name).to_str().unwrap().to_owned()
}

fn examples() -> Vec<String> {
    let found = std::fs::read_dir(folder("examples")).unwrap();
    let paths = found.map(|entry| entry.unwrap().path().to_str().unwrap().to_owned());
    let plans: Vec<String> = paths.filter(|path| path.ends_with(".json")).collect();
    assert!(plans.len() >= 4, "{plans:?}");
    plans
}

fn json(arguments: &[&str]) -> Value {
    serde_json::from_str(&said(&run(arguments))).unwrap()
}

/// Holds every number against the rule that its name ends in its unit.
fn assert_units(value: &Value, name: &str) {
    match value {
        Value::Object(fields) => fields.iter().for_each(|(name, value)| assert_units(value, name)),
        Value::Array(items) => items.iter().for_each(|item| assert_units(item, name)),
        Value::Number(_) => {
            let told = UNITS.iter().any(|unit| name.ends_with(unit)) || COUNTS.contains(&name);
            assert!(told, "the number {name} tells no unit");
        }
        _ => {}
    }
}

fn number(value: &Value, path: &str) -> f64 {
    value.pointer(path).and_then(Value::as_f64).unwrap_or_else(|| panic!("no number at {path}"))
}

#[test]
fn a_plan_reads_as_a_page() {
    let text = said(&run(&["plan", &example("camper.json")]));
    let golden = folder("tests/reference/command_line/camper.txt");
    if std::env::var_os("SUNLARDER_WRITE").is_some() {
        std::fs::write(&golden, &text).unwrap();
    }
    // A checkout may have other line ends.
    let expected = std::fs::read_to_string(golden).unwrap().replace("\r\n", "\n");
    assert!(text == expected, "if this is as it should be, run with SUNLARDER_WRITE=1:\n{text}");
}

#[test]
fn every_example_gives_text_json_and_csv() {
    for plan in examples() {
        assert!(said(&run(&["plan", &plan])).lines().count() > 30, "{plan}");
        let answers = json(&["plan", &plan, "--json"]);
        assert_units(&answers, "");
        assert_eq!(answers.pointer("/months").unwrap().as_array().unwrap().len(), 12);
        let csv = said(&run(&["plan", &plan, "--csv"]));
        let columns = csv.lines().next().unwrap().split(',').count();
        assert!(csv.lines().all(|row| row.split(',').count() == columns), "{plan}");
    }
}

#[test]
fn sums_of_json_are_those_of_its_parts_and_balance() {
    for plan in examples() {
        for dark in [false, true] {
            let mut arguments = vec!["plan", plan.as_str(), "--json"];
            arguments.extend(dark.then_some("--without-sun"));
            let answers = json(&arguments);
            let of = |name: &str| number(&answers, &format!("/run/{name}_ah"));
            let sources = ["solar", "turbine", "engine", "generator", "shore"];
            let came: f64 = sources.into_iter().map(of).sum();
            let went = of("load") + of("protection") + of("charge_loss") + of("self_discharge");
            let gap = came - went - of("stored");
            assert!(gap.abs() <= ROUNDING * (came + went + 1.0), "{plan}: {gap}");
            if dark {
                assert_eq!(of("solar"), 0.0);
                assert_eq!(answers.pointer("/run/sun"), Some(&Value::from("none")));
            }
            let budget = answers.pointer("/budget").unwrap();
            let loads = budget.pointer("/loads").unwrap().as_array().unwrap();
            let loads: f64 = loads.iter().map(|load| number(load, "/at_bank_ah")).sum();
            let rest = ["/inverter_idle_ah", "/standing_ah", "/protection_ah"];
            let sum = loads + rest.iter().map(|name| number(budget, name)).sum::<f64>();
            let gap = sum - number(budget, "/total_ah");
            assert!(gap.abs() <= ROUNDING * (sum + 1.0), "{plan}: {gap}");
        }
    }
}

#[test]
fn csv_has_one_row_a_step_until_the_run_ends() {
    let plan = example("camper.json");
    for more in [&[][..], &["--without-sun"]] {
        let answers = json(&[&["plan", &plan, "--json"], more].concat());
        let lasts = number(&answers, "/run/lasts_h");
        let csv = said(&run(&[&["plan", &plan, "--csv"], more].concat()));
        let rows: Vec<Vec<&str>> =
            csv.lines().skip(1).map(|row| row.split(',').collect()).collect();
        // The plan starts on a whole quarter-hour, so every step is one.
        assert_eq!(rows.len() as f64, lasts * 4.0);
        assert_eq!(rows[0][1], "2026-11-26T16:15");
        let last: f64 = rows.last().unwrap()[2].parse().unwrap();
        assert!((last - number(&answers, "/run/last_charge_pct")).abs() < 1e-4);
        let header: Vec<&str> = csv.lines().next().unwrap().split(',').collect();
        let solar = header.iter().position(|name| *name == "solar_a").unwrap();
        let sunny = rows.iter().any(|row| row[solar].parse::<f64>().unwrap() > 0.0);
        assert_eq!(sunny, more.is_empty());
        for name in header {
            assert!(
                name == "clock_time" || UNITS.iter().any(|unit| name.ends_with(unit)),
                "{name}"
            );
        }
    }
}

/// A year of weather on Anglesey, or 5° north of it: so many watts per square metre from nine to three, diffuse, at 8 °C.
fn weather_file(name: &str, latitude: f64, light: impl Fn(u32, u32) -> u32) -> String {
    let mut text =
        format!("LOCATION,Some Bay,,XXX,made for a test,0,{latitude},-4.39,0.0,10.0\r\n");
    text += &"DESIGN CONDITIONS,0\r\n".repeat(6);
    text += "DATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31\r\n";
    for (month, length) in (1..).zip([31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]) {
        for day in 1..=length {
            for hour in 1..=24 {
                let light = if (10..=15).contains(&hour) { light(month, day) } else { 0 };
                let row =
                    format!("2001,{month},{day},{hour},0,?,8.0,1,1,1,1,1,1,{light},0,{light},0");
                text += &(row + "\r\n");
            }
        }
    }
    let path = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name);
    std::fs::write(&path, text).unwrap();
    path.to_str().unwrap().to_owned()
}

#[test]
fn a_year_of_weather_is_replayed() {
    let plan = example("camper.json");
    let dull = weather_file("dull.epw", 53.3, |month, _| if month < 3 { 0 } else { 900 });
    let answers = json(&["plan", &plan, "--json", "--weather", &dull]);
    assert_units(&answers, "");
    let replay = answers.pointer("/replay").unwrap();
    assert_eq!(replay["place"], "Some Bay");
    assert!((number(replay, "/distance_km") - 2.2).abs() < 0.1, "{replay}");
    let months = replay["months"].as_array().unwrap();
    let hours = |name: &str| months.iter().map(|month| number(month, name)).collect::<Vec<_>>();
    let low = hours("/below_reserve_h");
    assert_eq!((low[6], low[7], low[9]), (0.0, 0.0, 0.0), "{low:?}");
    assert!(low[0] > 24.0 * 20.0 && low[1] == 24.0 * 28.0, "{low:?}");
    assert_eq!(low.iter().sum::<f64>(), number(replay, "/below_reserve_h"));
    let short = hours("/short_h").iter().sum::<f64>();
    assert!(short > 24.0 * 20.0 && short == number(replay, "/short_h"));
    assert!((number(&months[4], "/irradiation_kwh_per_m2") - 5.4).abs() < 1e-9);
    assert_eq!(replay["charge_pct"].as_array().unwrap().len(), 31 * 24 + 1);
    assert_eq!(number(replay, "/charge_pct/0"), number(&answers, "/start/charge_pct"));
    assert_eq!(json(&["plan", &plan, "--json"])["replay"], Value::Null);

    let text =
        said(&run(&["plan", &plan, "--weather", &dull])).replace(['\u{a0}', '\u{202f}'], " ");
    assert!(
        text.contains("In the weather of Some Bay the bank stays above its reserve in"),
        "{text}"
    );
    assert!(text.contains("Loads go short for"), "{text}");
    let february = text.lines().rfind(|line| line.contains("February")).unwrap();
    assert!(february.contains("672 h"), "{february}");
    assert!(!text.contains("km away"));
    let far = weather_file("far.epw", 58.3, |_, _| 900);
    let text = said(&run(&["plan", &plan, "--weather", &far]));
    assert!(text.contains("from 558\u{a0}km away") && text.contains("all year round"), "{text}");
}

#[test]
fn a_weather_file_that_cannot_be_is_told_by_line_and_column() {
    let plan = example("camper.json");
    let refused = |path: &str, words: &str| {
        assert_refused(&run(&["plan", &plan, "--weather", path]), 1, words);
    };
    refused("no-such.epw", "no weather file “no-such.epw”");
    refused(&plan, "no weather file of the EPW form");
    refused(&example(""), "cannot be read");
    let bright = weather_file(
        "bright.epw",
        53.3,
        |month, day| if (month, day) == (1, 2) { 3000 } else { 0 },
    );
    refused(
        &bright,
        "Global irradiance (line 42, column 14) is 3000 W/m²; it must lie between 0 and 2000 W/m²",
    );
    let text = std::fs::read_to_string(&bright).unwrap();
    let cut = PathBuf::from(&bright).with_file_name("cut.epw");
    std::fs::write(&cut, text.lines().take(8 + 30).collect::<Vec<_>>().join("\n")).unwrap();
    refused(cut.to_str().unwrap(), "after 30 hours");
    std::fs::write(&cut, vec![b'x'; 8_000_001]).unwrap();
    refused(cut.to_str().unwrap(), "8 000 001 bytes");
    std::fs::remove_file(cut).unwrap();
}

#[test]
fn a_file_survives_its_link() {
    for plan in examples() {
        let code = said(&run(&["link", &plan]));
        let from_code = said(&run(&["file", code.trim()]));
        let own = std::fs::read_to_string(&plan).unwrap();
        let (from_code, own): (Value, Value) =
            (serde_json::from_str(&from_code).unwrap(), serde_json::from_str(&own).unwrap());
        let again = said(&run_with(from_code.to_string().as_bytes(), &["link", "-"]));
        assert_eq!(again, code);
        assert_eq!(
            own.get("loads").unwrap().as_array().map(Vec::len),
            from_code.get("loads").unwrap().as_array().map(Vec::len)
        );
        let address = format!("https://example.org/plan/#p={}", code.trim());
        let (by_link, by_file) = (run(&["plan", &address]), run(&["plan", &plan]));
        assert_eq!(said(&by_link), said(&by_file));
        let pasted = run_with(format!("  {address}\n").as_bytes(), &["plan", "-"]);
        assert_eq!(said(&pasted), said(&by_file));
    }
}

#[test]
fn the_climate_and_the_sun_are_told() {
    let climate = json(&["climate", "-33.9", "18.4", "--json"]);
    assert_units(&climate, "");
    let months = climate.pointer("/months").unwrap().as_array().unwrap();
    assert_eq!(months.len(), 12);
    for month in months {
        let arrives =
            number(month, "/clearness_ratio") * number(month, "/extraterrestrial_kwh_per_m2");
        assert!((arrives - number(month, "/irradiation_kwh_per_m2")).abs() < 1e-12);
    }
    assert_eq!(said(&run(&["climate", "-33.9", "18.4", "--csv"])).lines().count(), 13);
    assert!(said(&run(&["climate", "90", "-180"])).contains("December"));
    // Reda & Andreas 2004, doi:10.1016/j.solener.2003.12.003, the worked example: zenith 50.11162°, azimuth 194.34024° at
    // 39.742476° N, 105.1786° W, 17 October 2003, 12:30:30 seven hours behind universal time. The series is good to 0.16°;
    // in azimuth that is 0.16° over the cosine of the elevation.
    let place = ["39.742476", "-105.1786", "2003-10-17T12:30:30-07:00", "--json"];
    let sun = json(&[&["sun"], &place[..]].concat());
    assert_units(&sun, "");
    assert!((number(&sun, "/elevation_deg") - (90.0 - 50.111_62)).abs() < 0.16);
    assert!(
        (number(&sun, "/azimuth_deg") - 194.340_24).abs()
            < 0.16 / libm::cos(39.89_f64.to_radians())
    );
    let night = said(&run(&["sun", "78.2", "15.6", "2026-12-21T12:00"]));
    assert!(night.contains("does not rise"), "{night}");
}

#[test]
fn every_figure_shows_its_working() {
    let plan = example("boat.json");
    let last = [
        ("capacity", "Usable capacity"),
        ("budget", "Used on a mean day"),
        ("autonomy", "Days of autonomy"),
        ("month", "Balance of the day"),
    ];
    let answers = json(&["plan", &plan, "--json"]);
    for (figure, title) in last {
        let text = said(&run(&["working", &plan, figure]));
        let steps: Vec<&str> = text.split("\n\n").collect();
        let (number, rest) = steps.last().unwrap().split_once(". ").unwrap();
        assert_eq!(number, steps.len().to_string());
        assert!(rest.starts_with(title), "{rest}");
        assert!(steps.iter().all(|step| step.contains("Source: ")), "{text}");
    }
    let text = said(&run(&["working", &plan, "capacity"]));
    let usable = number(&answers, "/capacity/usable_ah");
    let shown = text.lines().rfind(|line| line.contains("C_u =")).unwrap();
    let shown = shown.rsplit("= ").next().unwrap().replace("\u{a0}Ah", "");
    let shown: f64 = shown.replace('\u{202f}', "").parse().unwrap();
    assert!((shown / usable - 1.0).abs() < 1e-3, "{shown} beside {usable}");
    let other = said(&run(&["working", &plan, "month", "--month", "1"]));
    assert!(other.contains("January") && other != said(&run(&["working", &plan, "month"])));
}

/// Readings of the example `sailor` with 2 A past the shunt while the sun charges (`tests/tests/logbook_recovery.rs`).
fn kept_readings() -> [String; 2] {
    let path = folder("tests/reference/readings_sailor.csv");
    [example("sailor.json"), path.to_str().unwrap().to_owned()]
}

#[test]
fn readings_tell_of_a_bypass() {
    let [plan, readings] = kept_readings();
    let typed = ["logbook", &plan, &readings, "--gauge-ah", "376.6"];
    let text = said(&run(&typed));
    assert!(text.contains("goes in past the shunt") && text.contains("clamp meter"), "{text}");
    assert!(
        text.contains("never bridge a fuse") && text.contains("Makers' instructions"),
        "{text}"
    );
    let answers = json(&[&typed[..], &["--json"]].concat());
    assert_units(&answers, "");
    let learned = answers["learned"].as_array().unwrap();
    assert_eq!((learned.len(), number(&answers, "/readings")), (10, 28.0));
    let alarms: Vec<&str> = learned
        .iter()
        .filter(|own| own["alarm"] == true)
        .map(|own| own["what"].as_str().unwrap())
        .collect();
    assert_eq!(alarms, ["bypass"]);
    let bypass = learned.iter().find(|own| own["what"] == "bypass").unwrap();
    assert!(number(bypass, "/low_a") < 2.0 && number(bypass, "/high_a") > 2.0, "{bypass}");
    let spanish = json(&[&typed[..], &["--json", "--language", "es"]].concat());
    assert_eq!(spanish.pointer("/learned/6/best_a"), answers.pointer("/learned/6/best_a"));
    assert_ne!(spanish["next"], answers["next"]);
}

#[test]
fn symptoms_are_ranked_with_the_test_that_decides() {
    let [plan, readings] = kept_readings();
    let told = ["--gauge-ah", "376.6", "--json"];
    let first = |typed: &[&str]| {
        let ranked = json(&[typed, &told].concat());
        assert_units(&ranked, "");
        ranked.pointer("/causes/0").unwrap().clone()
    };
    let before = first(&["symptom", &plan, "never-full"]);
    let after = first(&["symptom", &plan, "never-full", &readings]);
    assert!(before["seen"] == false && after["seen"] == true, "{before} {after}");
    assert!(after["test"].as_str().unwrap().contains("clamp"), "{after}");
    for plan in examples() {
        for name in [
            "never-full",
            "cuts-out-early",
            "empty-by-morning",
            "full-but-dim",
            "jumps",
            "falls-at-rest",
        ] {
            let text = said(&run(&["symptom", &plan, name]));
            assert!(text.contains("Test: ") && text.contains("never bridge a fuse"), "{text}");
        }
        assert!(said(&run(&["care", &plan])).contains("maker's sheet"));
    }
}

#[test]
fn readings_that_cannot_be_used_are_refused_in_one_line() {
    let [plan, _] = kept_readings();
    let read = |text: &str| run_with(text.as_bytes(), &["logbook", &plan, "-"]);
    assert_refused(&read(""), 1, "No line of “-” is a reading");
    assert_refused(
        &read("date;time;%\n31.3.2026;7:00;140\n"),
        1,
        "Line 2: The percentage is 140 %",
    );
    assert_refused(&run(&["logbook", &plan, "nowhere.csv"]), 1, "no file of readings");
    assert_refused(&run(&["symptom", &plan, "smoke"]), 2, "no symptom “smoke”");
    let mixed = said(&read("date;time;%;V\n3/4/2026;7:00;70;13.2\n3/4/2026;19:00;x;13.2\n"));
    assert!(mixed.contains("Line 3: The percentage should be a number and is “x”."), "{mixed}");
    assert!(mixed.contains("whether day or month comes first: the day was taken"), "{mixed}");
    let hinted = said(&run_with(
        b"date;time;%;V\n3/4/2026;7:00;70;13.2\n",
        &["logbook", &plan, "-", "--month-first"],
    ));
    assert!(!hinted.contains("comes first"), "{hinted}");
}

#[test]
fn the_wiring_of_every_example_is_told() {
    for plan in examples() {
        let text = said(&run(&["fit", &plan]));
        assert!(text.contains("What to buy") && text.contains("makers' instructions"), "{text}");
        let wiring = json(&["fit", &plan, "--json"]);
        assert_units(&wiring, "");
        let runs = wiring["runs"].as_array().unwrap();
        assert!(runs.len() >= 5, "{plan}");
        for run in runs {
            let (wire, refusal) = (&run["wire"], &run["refusal"]);
            assert!(wire.is_null() != refusal.is_null(), "{run}");
            let name = run["name"].as_str().unwrap();
            assert!(text.contains(name), "{name}");
            if wire["fuse"].is_object() {
                let rating = number(wire, "/fuse/rating_a");
                assert!(rating >= 1.25 * number(run, "/continuous_a"), "{run}");
                assert!(rating <= number(wire, "/may_carry_a"), "{run}");
            }
        }
        let svg = wiring.pointer("/diagram/svg").unwrap().as_str().unwrap();
        assert!(svg.starts_with("<svg ") && svg.ends_with("</svg>") && svg.contains(">Shunt<"));
        let spanish = json(&["fit", &plan, "--json", "--language", "es"]);
        assert_eq!(spanish.pointer("/runs/0/wire"), wiring.pointer("/runs/0/wire"));
        assert_ne!(spanish["notes"], wiring["notes"]);
    }
    assert_eq!(run(&["fit", &example("boat.json"), "--csv"]).status.code(), Some(2));
}

#[test]
fn the_gauge_of_every_example_is_told() {
    for plan in examples() {
        let text = said(&run(&["gauge", &plan]));
        for part in ["How big is it?", "When may it say full?", "makers' sheets", "label promises"]
        {
            assert!(text.contains(part), "{plan}: {part}\n{text}");
        }
        let gauge = json(&["gauge", &plan, "--json", "--mistake", "charger-ahead"]);
        assert_units(&gauge, "");
        let settings = gauge["settings"].as_array().unwrap();
        assert!(settings.len() >= 11, "{plan}");
        let by_month = gauge.pointer("/year/fulls_by_month").unwrap().as_array().unwrap();
        let sum: f64 = by_month.iter().map(|own| own.as_f64().unwrap()).sum();
        assert_eq!(sum, number(&gauge, "/year/fulls"));
        assert_eq!(number(&gauge, "/mistake/year/fulls"), 0.0, "{plan}");
        let over = number(&gauge, "/year/over_pct");
        let end = |end: &str| number(&gauge, &format!("/years/over/{end}_pct"));
        assert!(end("least") <= over && over <= end("most"), "{plan}");
        let sheet = said(&run(&["gauge", &plan, "--commission"]));
        let checks = gauge["checks"].as_array().unwrap();
        for check in checks {
            assert!(sheet.contains(check["name"].as_str().unwrap()), "{sheet}");
        }
        let spanish = json(&["gauge", &plan, "--json", "--language", "es"]);
        assert_eq!(spanish["label_ah"], gauge["label_ah"]);
        assert_ne!(spanish["notes"], gauge["notes"]);
    }
    // What was typed back is judged.
    let measured = example("../tests/golden/v1/checks_of_a_van.json");
    let sheet = said(&run(&["gauge", &measured, "--commission"]));
    for part in ["reading 13.29\u{a0}V: As it should be.", "its minus is on the bank's side"] {
        assert!(sheet.contains(part), "{part}\n{sheet}");
    }
    let gauge = json(&["gauge", &measured, "--json"]);
    assert_units(&gauge, "");
    assert_eq!(number(&gauge, "/checks/0/read_v"), 13.287);
    let boat = example("boat.json");
    let mistaken = said(&run(&["gauge", &boat, "--mistake", "capacity-high"]));
    assert!(mistaken.contains("It still shows charge when the lights dim"), "{mistaken}");
    let unknown = run(&["gauge", &boat, "--mistake", "rust"]);
    let told = String::from_utf8(unknown.stderr.clone()).unwrap();
    assert!(unknown.status.code() == Some(2) && told.contains("capacity-high"), "{told}");
}

#[test]
fn another_language_says_the_same_figures() {
    let plan = example("camper.json");
    let text = said(&run(&["plan", &plan, "--language", "es"]));
    assert!(text.contains("noviembre") && text.contains("Mes a mes"), "{text}");
    assert!(!text.contains("Month by month") && text.contains(','), "{text}");
    let numbers = |language: &str| {
        let mut own = json(&["plan", &plan, "--json", "--language", language]);
        [own["capacity"].take(), own["months"].take(), own["run"].take()]
    };
    assert_eq!(numbers("es"), numbers("en"));
    assert!(numbers("en").iter().all(|own| !own.is_null()));
    let csv = |language: &str| said(&run(&["plan", &plan, "--csv", "--language", language]));
    assert_eq!(csv("es"), csv("en"));
    let fault = run(&["--language", "es", "bake"]);
    let told = String::from_utf8(fault.stderr).unwrap();
    assert!(fault.status.code() == Some(2) && told.contains("No hay ninguna orden"), "{told}");
    let unknown = run(&["plan", &plan, "--language", "tlh"]);
    assert_eq!(unknown.status.code(), Some(2));
    assert!(said(&run(&["help", "--language", "es"])).contains("responde"));
}

#[test]
fn help_and_version_succeed() {
    for asked in [&["help"][..], &["--help"], &["plan", "--help"], &["help", "plan"]] {
        assert!(said(&run(asked)).contains("sunlarder plan"), "{asked:?}");
    }
    assert_eq!(said(&run(&["version"])), format!("sunlarder {}\n", env!("CARGO_PKG_VERSION")));
}

/// Nothing on standard output, one line of words on standard error, and the exit code.
fn assert_refused(output: &Output, code: i32, words: &str) {
    let told =
        String::from_utf8(output.stderr.clone()).unwrap().replace(['\u{a0}', '\u{202f}'], " ");
    assert_eq!(output.status.code(), Some(code), "{words}: {told}");
    assert!(output.stdout.is_empty(), "{words}");
    assert_eq!(told.lines().count(), 1, "{told}");
    assert!(told.trim_end().ends_with('.') && told.contains(words), "{told} lacks {words}");
}

#[test]
fn bad_input_is_refused_in_one_line() {
    let good = std::fs::read_to_string(example("camper.json")).unwrap();
    let edited = |from: &str, to: &str| {
        assert!(good.contains(from), "{from}");
        good.replacen(from, to, 1).into_bytes()
    };
    let loads: Vec<String> =
        vec![r#"{"rating": {"power_w": 5}, "schedule": {"when": "always"}}"#.into(); 10_000];
    let many = format!("\"loads\": [{}], \"old\": [", loads.join(","));
    let cases: Vec<(Vec<u8>, &str)> = vec![
        (Vec::new(), "empty"),
        (b"{\"sunlarder\": 1,".to_vec(), "line 1"),
        (b"{\"recipe\": \"soup\"}".to_vec(), "another program"),
        (b"{\"sunlarder\": 9}".to_vec(), "version 9"),
        (vec![0xff, 0xfe, 0x00], "not text"),
        (vec![b' '; (1 << 20) + 1], "bytes"),
        (edited("\"power_w\": 45.0", "\"power_w\": 1e300"), "Power of load 1 is 1e300 W"),
        (edited("\"power_w\": 45.0", "\"power_w\": -1"), "−1 W"),
        (edited("\"capacity_ah\": 100.0", "\"capacity_ah\": 0"), "Rated capacity of one battery"),
        (edited("\"capacity_ah\": 100.0", "\"capacity_ah\": null"), "bank.capacity_ah"),
        (edited("\"tilt_deg\"", "\"tilted_deg\""), "tilted_deg"),
        (edited("\"loads\": [", &many), "old"),
        (b"https://example.org/#p=AQBAD".to_vec(), "cut off"),
    ];
    for (input, words) in cases {
        assert_refused(&run_with(&input, &["plan", "-"]), 1, words);
    }
    let code = said(&run(&["link", &example("camper.json")]));
    let (code, half) = (code.trim(), code.len() / 2);
    assert_refused(&run(&["plan", &code[..half]]), 1, "cut off");
    assert_refused(&run(&["plan", "no-such-plan.json"]), 1, "no file “no-such-plan.json”");
    assert_refused(&run(&["plan", &example("")]), 1, "cannot be read");
    assert_refused(&run(&["climate", "91", "0"]), 1, "Latitude is 91°");
    assert_refused(&run(&["climate", "north", "0"]), 1, "“north” is not a number");
    assert_refused(&run(&["climate", "NaN", "0"]), 1, "not a number");
    assert_refused(&run(&["sun", "0", "0", "noon"]), 1, "“noon” is no instant");
}

#[test]
fn a_plan_that_uses_nothing_has_no_days_of_autonomy() {
    let mut plan: Value =
        serde_json::from_str(&std::fs::read_to_string(example("camper.json")).unwrap()).unwrap();
    plan["loads"] = Value::Array(Vec::new());
    plan["bank"]["protection_ma"] = Value::from(0);
    let plan = plan.to_string();
    assert_refused(&run_with(plan.as_bytes(), &["working", "-", "autonomy"]), 1, "uses nothing");
    assert!(said(&run_with(plan.as_bytes(), &["plan", "-"])).contains("Nothing runs yet"));
}

#[test]
fn a_wrong_command_line_is_told_from_wrong_input() {
    let plan = example("camper.json");
    let cases: [(&[&str], &str); 11] = [
        (&[], "help"),
        (&["bake"], "bake"),
        (&["plan"], "missing"),
        (&["plan", &plan, "more"], "more"),
        (&["plan", &plan, "--yaml"], "--yaml"),
        (&["plan", &plan, "--json", "--csv"], "--json and --csv"),
        (&["plan", &plan, "--weather"], "weather file"),
        (&["plan", &plan, "--csv", "--weather", "a"], "--csv or --weather"),
        (&["link", &plan, "--csv"], "--csv"),
        (&["working", &plan, "weight"], "weight"),
        (&["working", &plan, "month", "--month", "0"], "“0”"),
    ];
    for (arguments, words) in cases {
        assert_refused(&run(arguments), 2, words);
    }
}

#[test]
#[cfg(unix)]
fn a_closed_pipe_is_no_failure() {
    let mut child = Command::new(env!("CARGO_BIN_EXE_sunlarder"))
        .args(["plan", &example("cabin.json"), "--csv"])
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stdout.take());
    let output = child.wait_with_output().unwrap();
    assert!(output.status.success() && output.stderr.is_empty(), "{output:?}");
}

#[test]
fn sizes_are_told_with_what_keeps_the_promise() {
    let boat = example("boat.json");
    let prices = ["--price", "2.5,0.6", "--weight", "0.12,0.05"];
    let text = said(&run(&[&["size", &boat][..], &prices].concat())).replace('\u{a0}', " ");
    for part in [
        "No short day all year round, with a chance of at least 100 %.",
        "A life may depend on this",
        "Least to add: a bank of ",
        "Beside this bank the smallest array that keeps it is ",
        "Cheapest: ",
        "Lightest: ",
        "What would help",
        "kept back, the chance would be ",
        "Under a typical sky of June a bank at its reserve is full by ",
        "  12 V ",
        "as planned",
    ] {
        assert!(text.contains(part), "{part}: {text}");
    }
    let json = said(&run(&[&["size", &boat, "--json"][..], &prices].concat()));
    let json: Value = serde_json::from_str(&json).unwrap();
    assert_eq!((&json["format"], &json["standing"]["kept"]), (&1.into(), &false.into()));
    assert!(json["suggested"]["array_w"].as_f64() > json["smallest_array"]["array_w"].as_f64());
    assert!(json["cheapest"]["sum"].is_number() && json["changes"][0]["text"].is_string());
    assert_eq!(json["arrival_h"].as_array().map(Vec::len), Some(3));
    let trip = ["size", &boat, "--promise", "trip=5", "--season", "6-8", "--chance", "80%"];
    let cabin = said(&run(&["size", &example("cabin.json"), "--season", "7"]));
    assert!(cabin.contains("at least 90\u{a0}%.") && !cabin.contains("A life"), "{cabin}");
    let text = said(&run(&[&trip[..], &["--language", "es"]].concat())).replace('\u{a0}', " ");
    assert!(text.contains("Un viaje de 5 días"), "{text}");
    assert!(text.contains("de junio a agosto, con una probabilidad de al menos 80 %."), "{text}");
}

#[test]
fn a_plan_without_an_array_is_sized_beside_one() {
    let plan = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("without_array.json");
    let text = std::fs::read_to_string(example("camper.json")).unwrap();
    let mut own: Value = serde_json::from_str(&text).unwrap();
    own.as_object_mut().unwrap().remove("arrays");
    std::fs::write(&plan, own.to_string()).unwrap();
    let plan = plan.to_str().unwrap();
    let season = ["size", plan, "--season", "6"];
    let text = said(&run(&season)).replace('\u{a0}', " ");
    assert!(text.contains("a chance of 0 %") && text.contains("an array of"), "{text}");
    assert!(!text.contains("brings most in"), "no array stands there yet: {text}");
}

#[test]
fn a_promise_that_cannot_be_is_told_with_its_range() {
    let plan = example("boat.json");
    let refused = |option: &str, given: &str, words: &str| {
        assert_refused(&run(&["size", &plan, option, given]), 2, words);
    };
    refused("--promise", "moon=3", "There is no promise “moon=3”");
    refused("--promise", "trip=100", "The promise has the number 100; it goes from 1 to 60.");
    refused("--chance", "0", "The chance in per cent has the number 0; it goes from 1 to 100.");
    refused("--season", "13", "“13” is no season");
    refused("--price", "2.5", "The price: “2.5” is not two numbers");
    assert_refused(&run(&["plan", &plan, "--chance", "90"]), 2, "no option “--chance”");
}
