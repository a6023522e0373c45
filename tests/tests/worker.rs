//! The worker works out what the engine does, and tells nothing about a plan that is no longer wanted.

#![allow(clippy::unwrap_used, clippy::panic, reason = "a test stops at what it cannot read")]

use sunlarder_engine::digits;
use sunlarder_engine::document::{Document, Field};
use sunlarder_engine::outlook::{Figure, Guessed, Outlook, Question};
use sunlarder_engine::place::{Climate, SpreadGrid, WeatherFile, WeatherFileFault};
use sunlarder_engine::share;
use sunlarder_engine::simulate::{Extent, Sunlight};
use sunlarder_engine::system::System;
use sunlarder_engine::words::{Habits, Label, Language, LeadingUnit, Words, decimal, lines};
use sunlarder_engine::working::Working;
use sunlarder_tests::golden::golden;
use sunlarder_tests::plans::EXAMPLES;
use sunlarder_tests::weather_year::weather_year;
use sunlarder_worker::desk::Desk;
use sunlarder_worker::leaf::{self, Leaf, Topic};
use sunlarder_worker::message::{Answer, Request, climate_numbers, climate_of};
use sunlarder_worker::paper::{TEXT, marks};
use sunlarder_worker::sentences::PART;

const WORDS: Words = Words::of(Language::English);

/// Examples and golden plans that can be resolved.
fn plans() -> Vec<(String, Document, System)> {
    let examples = EXAMPLES.map(|(name, text)| (name.to_owned(), text.to_owned()));
    let golden = golden("v1").unwrap().into_iter().map(|golden| (golden.name, golden.file));
    let read = |(name, text): (String, String)| {
        let plan = Document::from_json(&text).unwrap();
        let system = System::assemble(&plan, Climate::embedded(), &mut ()).ok()?;
        Some((name, plan, system))
    };
    examples.into_iter().chain(golden).filter_map(read).collect()
}

/// What the page sends of a plan.
fn request(serial: u32, plan: &Document, system: &System) -> Request {
    let code = share::encode(plan).unwrap();
    Request::Plan { serial, code, habits: Habits::USUAL, climate: climate_numbers(&system.climate) }
}

/// All that a desk has to say.
fn answers(desk: &mut Desk) -> Vec<Answer> {
    core::iter::from_fn(|| desk.work()).flatten().collect()
}

/// Wishes for the workings of some questions; each is numbered by its question.
fn work(desk: &mut Desk, serial: u32, questions: &[Question]) {
    for question in questions {
        let (wish, argument) = (*question as u32, (*question as u32).to_string());
        desk.take(Request::Leaf { serial, wish, leaf: Leaf::Working, argument });
    }
}

/// What is said on a paper, text by text.
fn texts(paper: &str) -> Vec<&str> {
    marks(paper).filter(|(mark, _)| *mark == TEXT).map(|(_, text)| text).collect()
}

#[test]
fn a_plan_resolves_alike_from_the_climate_of_the_earth_and_of_its_place() {
    let plans = plans();
    assert!(plans.len() > 5);
    for (name, plan, system) in plans {
        let looked_up = Climate::embedded().at(system.site);
        // The page sends the system's climate, in which a person's own figures already stand.
        for climate in [looked_up, system.climate.clone()] {
            let numbers = climate_numbers(&climate);
            let climate = climate_of(system.site, &numbers).unwrap();
            let decoded = share::decode(&share::encode(&plan).unwrap()).unwrap();
            let resolved = System::resolve(&decoded, climate, &mut ()).unwrap();
            assert_eq!(resolved, system, "{name}");
        }
    }
}

#[test]
fn the_desk_works_out_what_the_engine_does() {
    // One desk for all: what it keeps between plans must not show.
    let mut desk = Desk::new(WORDS);
    for (serial, (name, plan, system)) in (1u32..).zip(plans()) {
        desk.take(request(serial, &plan, &system));
        work(&mut desk, serial, &Question::ALL);
        let outlook = Outlook::of(&system);
        let answers = answers(&mut desk);
        assert_eq!(answers.len(), Question::ALL.len(), "{name}");
        for (question, answer) in Question::ALL.into_iter().zip(answers) {
            let Answer::Written { serial: own, wish, written } = answer else {
                panic!("{name}: {question:?} is not written")
            };
            assert_eq!((own, wish), (serial, question as u32), "{name}");
            let mut working = Working::new();
            outlook.work(question, &system, &mut working);
            let lines = lines(&working, WORDS, &|tag| WORDS.name_in(&plan, tag));
            let said = texts(&written.text);
            assert!(!lines.is_empty(), "{name}: {question:?}");
            // Five texts a step and three an input.
            let count: usize = lines.iter().map(|line| 5 + 3 * line.inputs.len()).sum();
            assert_eq!(said.len(), count, "{name}: {question:?}");
            let equations: Vec<String> = lines
                .iter()
                .rev()
                .map(|line| format!("{} = {}", line.symbol, line.equation))
                .collect();
            let mut rest = said.iter();
            let all = equations.iter().all(|own| rest.any(|said| said == own));
            assert!(all, "{name}: {question:?}: {said:?}");
        }
    }
}

#[test]
fn a_newer_plan_makes_older_wishes_stale() {
    let plans = plans();
    let [(_, first, first_system), (_, second, second_system), ..] = plans.as_slice() else {
        panic!("two plans at least");
    };
    let mut desk = Desk::new(WORDS);
    desk.take(request(1, first, first_system));
    work(&mut desk, 1, &Question::ALL);
    assert!(matches!(desk.work(), Some(Some(Answer::Written { serial: 1, .. }))));
    desk.take(request(2, second, second_system));
    assert_eq!(desk.work(), None, "the rest was about the plan of before");
    work(&mut desk, 1, &Question::ALL);
    assert_eq!(desk.work(), None, "a wish that comes late");
    work(&mut desk, 2, &[Question::Month]);
    let month = Question::Month as u32;
    let answered = answers(&mut desk);
    assert!(
        matches!(answered.as_slice(), [Answer::Written { serial: 2, wish, .. }] if *wish == month)
    );
}

/// What the desk says of the weather, as share done, number of sentences and edges of the band.
fn foretold(answers: &[Answer]) -> Vec<(f64, usize, usize)> {
    let said = |answer: &Answer| match answer {
        Answer::Foretold { done, sentences, band, .. } => {
            Some((*done, sentences.split(PART).count(), band.len()))
        }
        Answer::Written { .. } | Answer::Replayed { .. } => None,
    };
    answers.iter().filter_map(said).collect()
}

#[test]
fn weather_is_foretold_from_coarse_to_fine_and_as_the_engine_does() {
    let (_, plan, system) = plans().swap_remove(0);
    let spread = SpreadGrid::embedded().at(system.site);
    let mut desk = Desk::new(WORDS);
    desk.take(request(4, &plan, &system));
    desk.take(Request::Weather { serial: 4, spread });
    let all = answers(&mut desk);
    let said = foretold(&all);
    assert!(said.len() > 3, "{said:?}");
    assert!(said.windows(2).all(|pair| pair[0].0 < pair[1].0), "{said:?}");
    assert_eq!(said.last().map(|last| last.0), Some(1.0));

    let outlook = Outlook::of(&system);
    let mut ensemble = outlook.ensemble(&system, &spread, Extent::default());
    while ensemble.advance() {}
    let chances = ensemble.chances();
    let Some(Answer::Foretold { sentences, band, .. }) = all.last() else {
        panic!("it is foretold")
    };
    assert!(sentences.contains(&WORDS.month_kept(&chances, &outlook)), "{sentences}");
    let edges: Vec<f64> = chances.band.iter().flat_map(|at| [at.low, at.high]).collect();
    assert_eq!(band.chunks(3).flat_map(|hour| [hour[0], hour[1]]).collect::<Vec<_>>(), edges);
    let reached: Vec<f64> = chances.reached.iter().map(|share| share * 100.0).collect();
    assert_eq!(band.chunks(3).map(|hour| hour[2]).collect::<Vec<_>>(), reached);
    let december = sentences.split(PART).nth(12);
    assert_eq!(december, Some(WORDS.of_ten_years(&chances.months_kept[11]).as_str()));

    // Asked again it says at once what it knows; a newer plan ends it.
    desk.take(request(5, &plan, &system));
    desk.take(Request::Weather { serial: 5, spread });
    assert_eq!(foretold(&answers(&mut desk)).len(), 1);
}

/// What the desk says of the year that was brought.
fn replayed(desk: &mut Desk, serial: u32) -> Option<(String, Vec<f64>)> {
    desk.take(Request::Replay { serial });
    match answers(desk).as_slice() {
        [Answer::Replayed { serial: own, sentences, path }] => {
            assert_eq!(*own, serial);
            Some((sentences.clone(), path.clone()))
        }
        [] => None,
        more => panic!("{more:?}"),
    }
}

#[test]
fn a_year_of_weather_is_replayed_as_the_engine_does_until_the_plan_moves() {
    let (_, plan, system) = plans().swap_remove(0);
    let text = weather_year(system.site, |month| if month < 3 { 0 } else { 500 });
    let year = |text: &str| Request::Year {
        code: share::encode(&plan).unwrap(),
        text: Some(text.to_owned()),
    };
    let mut desk = Desk::new(WORDS);
    desk.take(request(1, &plan, &system));
    assert_eq!(replayed(&mut desk, 1), None, "nobody brought one");
    desk.take(year(&text));
    let (sentences, path) = replayed(&mut desk, 1).unwrap();
    let file = WeatherFile::read(&text).unwrap();
    let expected = Outlook::of(&system).replay(&system, &file);
    assert_eq!(sentences.split(PART).collect::<Vec<_>>(), WORDS.replayed(&expected, &system));
    let charges: Vec<f64> = path.chunks(2).map(|pair| pair[1]).collect();
    assert_eq!(charges, expected.path());
    assert!(path.chunks(2).enumerate().all(|(hour, pair)| pair[0] == hour as f64));

    // It stays while the plan changes, is not replayed for a plan of before, and goes when the plan moves.
    let mut other = plan.clone();
    other.loads.clear();
    let system_of = |plan: &Document| System::assemble(plan, Climate::embedded(), &mut ()).unwrap();
    desk.take(request(2, &other, &system_of(&other)));
    assert_eq!(replayed(&mut desk, 1), None);
    assert_ne!(replayed(&mut desk, 2).unwrap().0, sentences);
    other.place.latitude_deg += 1.0;
    desk.take(request(3, &other, &system_of(&other)));
    assert_eq!(replayed(&mut desk, 3), Some((String::new(), Vec::new())));
    desk.take(request(4, &plan, &system));
    assert_eq!(replayed(&mut desk, 4), None);

    // What is no such file is told, and can be taken away.
    desk.take(year("a shopping list"));
    let (sentences, path) = replayed(&mut desk, 4).unwrap();
    assert_eq!(sentences, WORDS.weather_file_fault(&WeatherFileFault::NotWeather));
    assert!(path.is_empty());
    desk.take(Request::Year { code: share::encode(&plan).unwrap(), text: None });
    assert_eq!(replayed(&mut desk, 4), None);
}

#[test]
fn a_newer_plan_ends_the_weather_of_an_older_one() {
    let plans = plans();
    let [(_, first, first_system), (_, second, second_system), ..] = plans.as_slice() else {
        panic!("two plans at least");
    };
    let spread = SpreadGrid::embedded().at(first_system.site);
    let mut desk = Desk::new(WORDS);
    desk.take(request(1, first, first_system));
    desk.take(Request::Weather { serial: 1, spread });
    assert_eq!(desk.work(), Some(None), "begun");
    desk.take(request(2, second, second_system));
    assert_eq!(desk.work(), None, "nobody wants it any more");
    desk.take(Request::Weather { serial: 1, spread });
    assert_eq!(desk.work(), None, "a wish that comes late");
}

#[test]
fn what_is_asked_twice_is_answered_once() {
    let (_, plan, system) = plans().swap_remove(0);
    let mut desk = Desk::new(WORDS);
    desk.take(request(7, &plan, &system));
    for _ in 0..2 {
        work(&mut desk, 7, &[Question::Budget]);
    }
    assert_eq!(answers(&mut desk).len(), 1);
}

#[test]
fn a_message_that_is_no_plan_is_answered_with_nothing() {
    let (_, plan, system) = plans().swap_remove(0);
    let good = (share::encode(&plan).unwrap(), climate_numbers(&system.climate));
    for (code, climate) in [("no code".to_owned(), good.1.clone()), (good.0.clone(), Vec::new())] {
        let mut desk = Desk::new(WORDS);
        desk.take(Request::Plan { serial: 1, code, habits: Habits::USUAL, climate });
        work(&mut desk, 1, &Question::ALL);
        assert_eq!(answers(&mut desk), []);
        // It goes on with the next plan.
        let (code, climate) = good.clone();
        desk.take(Request::Plan { serial: 2, code, habits: Habits::USUAL, climate });
        work(&mut desk, 2, &[Question::Run]);
        assert_eq!(answers(&mut desk).len(), 1);
    }
}

/// A wish for a leaf.
fn leaf(desk: &mut Desk, serial: u32, wish: u32, leaf: Leaf, argument: usize) {
    desk.take(Request::Leaf { serial, wish, leaf, argument: argument.to_string() });
}

#[test]
fn words_are_explained_also_while_something_is_wrong_with_the_plan() {
    let mut desk = Desk::new(WORDS);
    let tilt = Topic::Field(Field::Tilt).number();
    // So the page says that there is no plan to work with.
    desk.take(Request::Plan {
        serial: 3,
        code: String::new(),
        habits: Habits::USUAL,
        climate: Vec::new(),
    });
    leaf(&mut desk, 3, 7, Leaf::Climate, 0);
    leaf(&mut desk, 3, 8, Leaf::Explained, tilt);
    let said = answers(&mut desk);
    let [Answer::Written { serial: 3, wish: 8, written }] = said.as_slice() else {
        panic!("{said:?}")
    };
    assert_eq!(texts(&written.text), [WORDS.explain_field(Field::Tilt)]);
    leaf(&mut desk, 3, 9, Leaf::Explained, usize::MAX);
    assert_eq!(answers(&mut desk), []);
    // What is about an older plan is not heeded.
    leaf(&mut desk, 2, 10, Leaf::Explained, tilt);
    assert_eq!(answers(&mut desk), []);
}

#[test]
fn the_climate_that_is_used_is_told() {
    let (_, plan, system) = plans().into_iter().find(|(name, ..)| name == "sailor").unwrap();
    let mut desk = Desk::new(WORDS);
    desk.take(request(1, &plan, &system));
    leaf(&mut desk, 1, 0, Leaf::Climate, 0);
    let said = answers(&mut desk);
    let [Answer::Written { written, .. }] = said.as_slice() else { panic!("{said:?}") };
    let said = texts(&written.text);
    for sentence in WORDS.climate_sources(&system.climate) {
        assert!(said.contains(&sentence), "{said:?}");
    }
    assert!(said.contains(&"December"));
}

#[test]
fn of_what_lives_depend_on_the_years_that_fail_are_told() {
    let (_, plan, system) = plans().into_iter().find(|(name, ..)| name == "clinic").unwrap();
    let mut desk = Desk::new(WORDS);
    desk.take(request(1, &plan, &system));
    let spread = SpreadGrid::embedded().at(system.site);
    desk.take(Request::Weather { serial: 1, spread });
    let last = answers(&mut desk).pop().unwrap();
    let Answer::Foretold { sentences, .. } = last else { panic!("{last:?}") };
    let verdict = sentences.split(PART).next().unwrap();
    assert!(!verdict.contains("stay above"), "{verdict}");
    assert!(verdict.contains("a life"), "{verdict}");
}

#[test]
fn the_sheet_says_what_the_plan_comes_to() {
    let mut desk = Desk::new(WORDS);
    for (serial, (name, plan, system)) in (1u32..).zip(plans()) {
        desk.take(request(serial, &plan, &system));
        let argument = "2026-11-25 https://plans.example.org/".to_owned();
        desk.take(Request::Leaf { serial, wish: 1, leaf: Leaf::Sheet, argument });
        let written = answers(&mut desk).into_iter().find_map(|answer| match answer {
            Answer::Written { written, .. } => Some(written.text),
            _ => None,
        });
        let written = written.unwrap();
        let said = texts(&written);
        let outlook = Outlook::of(&system);
        let link = format!("https://plans.example.org/#p={}", share::encode(&plan).unwrap());
        let headline = WORDS.headline(&outlook);
        for text in [&headline.key, &link, "Worked out on 25 November 2026"] {
            assert!(said.contains(&text), "{name}: {text}: {said:?}");
        }
        for load in &outlook.budget.loads {
            let load = WORDS.name_in(&plan, sunlarder_engine::working::Tag::Load(load.place));
            let load = load.unwrap_or_default();
            assert!(said.iter().any(|own| own.ends_with(&load)), "{name}: {load}");
        }
    }
}

/// What the desk writes for one wish.
fn written(desk: &mut Desk, serial: u32, leaf: Leaf, argument: String) -> String {
    desk.take(Request::Leaf { serial, wish: 7, leaf, argument });
    match answers(desk).as_slice() {
        [Answer::Written { written, .. }] => written.text.clone(),
        other => panic!("{other:?}"),
    }
}

#[test]
fn two_plans_are_written_beside_each_other_as_the_engine_has_them() {
    let plans = plans();
    let [(_, first, first_system), (_, second, second_system), ..] = plans.as_slice() else {
        panic!("two plans at least");
    };
    let mut desk = Desk::new(WORDS);
    desk.take(request(1, first, first_system));
    let code = share::encode(second).unwrap();
    let argument = leaf::other(&code, &climate_numbers(&second_system.climate));
    let text = written(&mut desk, 1, Leaf::Beside, argument);
    let said = texts(&text);
    let (one, other) = (Outlook::of(first_system), Outlook::of(second_system));
    for figure in Figure::ALL {
        let row = [
            WORDS.figure(figure).to_owned(),
            WORDS.figure_of(&one, first_system, figure),
            WORDS.figure_of(&other, second_system, figure),
            WORDS.difference(
                figure,
                WORDS.figure_value(&other, second_system, figure),
                WORDS.figure_value(&one, first_system, figure),
            ),
        ];
        assert!(said.windows(4).any(|cells| cells == row), "{row:?}");
    }
    let lines = WORDS.difference_lines(first, second);
    assert!(lines.len() > 10);
    for line in lines {
        let row = [line.what, line.first, line.second];
        assert!(said.windows(3).any(|cells| cells == row), "{row:?}");
    }
    // Beside itself a plan differs in nothing.
    let code = share::encode(first).unwrap();
    let argument = leaf::other(&code, &climate_numbers(&first_system.climate));
    let text = written(&mut desk, 1, Leaf::Beside, argument);
    assert!(text.contains(WORDS.label(Label::NothingDiffers)));
    for broken in ["", "%%%", code.as_str(), " 0 0", "AQ 1 2 zz"] {
        let text = written(&mut desk, 1, Leaf::Beside, broken.into());
        assert_eq!(texts(&text), [WORDS.label(Label::OnesPlan)], "{broken}");
    }
}

#[test]
fn a_question_holds_nothing_of_its_answer_and_the_answer_holds_every_guess() {
    let mut desk = Desk::new(WORDS);
    for (serial, (name, plan, system)) in (1u32..).zip(plans()) {
        desk.take(request(serial, &plan, &system));
        let outlook = Outlook::of(&system);
        for what in Guessed::ALL {
            let number = (what as u32).to_string();
            let question = written(&mut desk, serial, Leaf::Question, number);
            let answer = what.answer(&outlook);
            let said = WORDS.answer(what, answer);
            assert!(question.contains(&WORDS.asked(what, outlook.month)), "{name}");
            let secrets = [
                WORDS.short(&outlook),
                WORDS.tightest(&outlook, system.bank.nominal),
                said.clone(),
            ];
            assert!(secrets.iter().all(|own| !question.contains(own.as_str())), "{name}");

            let guesses: Vec<(String, f64)> = (0..300)
                .map(|at| {
                    (if at == 5 { String::new() } else { format!("P{at}") }, f64::from(at % 13))
                })
                .collect();
            let text = written(&mut desk, serial, Leaf::Guesses, leaf::guesses(what, &guesses));
            let written = texts(&text);
            assert_eq!(written[0], said, "{name}");
            let near = guesses.iter().filter(|(_, guess)| what.near(*guess, answer)).count();
            assert!(
                written.contains(&WORDS.guesses_near(what, near, 300).as_str()),
                "{name} {what:?}"
            );
            assert_eq!(text.matches("guess-dot").count(), 300, "{name}");
            assert!(written.contains(&"P299") && written.contains(&WORDS.guesser(5).as_str()));
        }
        // Nobody guessed.
        let text = written(&mut desk, serial, Leaf::Guesses, leaf::guesses(Guessed::Hours, &[]));
        assert!(!text.contains("guess-dot") && !text.is_empty(), "{name}");
    }
    let (_, plan, system) = plans().swap_remove(0);
    desk.take(request(1000, &plan, &system));
    for broken in ["", "9", "0\u{1f}Ada\u{1f}zz", "0\u{1f}Ada\u{1f}7ff8000000000000"] {
        assert_eq!(written(&mut desk, 1000, Leaf::Guesses, broken.into()), "", "{broken}");
    }
}

/// What the desk writes of a leaf.
fn with_numbers(desk: &mut Desk, serial: u32, leaf: Leaf, argument: &str) -> (String, Vec<f64>) {
    desk.take(Request::Leaf { serial, wish: 1, leaf, argument: argument.to_owned() });
    match answers(desk).as_slice() {
        [Answer::Written { written, .. }] => (written.text.clone(), written.numbers.clone()),
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_year_is_drawn_with_the_numbers_of_its_hours_and_a_table_of_its_months() {
    let mut desk = Desk::new(WORDS);
    for (serial, (name, plan, system)) in (1u32..).zip(plans().into_iter().take(EXAMPLES.len())) {
        desk.take(request(serial, &plan, &system));
        let outlook = Outlook::of(&system);
        let spread = SpreadGrid::embedded().at(system.site);
        let argument =
            spread.iter().fold("3".to_owned(), |told, own| format!("{told} {}", decimal(*own, 9)));
        let spread = spread.map(|own| digits::number(&decimal(own, 9)).unwrap());
        for (argument, year) in [
            ("mean", outlook.mean_year(&system)),
            (argument.as_str(), outlook.weather_year(&system, &spread, 3)),
        ] {
            let (text, numbers) = with_numbers(&mut desk, serial, Leaf::Year, argument);
            let hours: Vec<[f64; 4]> = numbers.as_chunks().0.to_vec();
            let expected = year.hours.iter();
            let expected: Vec<[f64; 4]> = expected
                .map(|hour| [hour.charge * 100.0, hour.volts.0, hour.came.0, hour.load.0])
                .collect();
            assert_eq!(hours, expected, "{name}");
            let said = WORDS.year(&year, system.bank.reserve);
            assert!(texts(&text).contains(&said.as_str()), "{name}: {said}");

            let (table, _) = with_numbers(&mut desk, serial, Leaf::YearTable, argument);
            let cells = texts(&table);
            let (heads, rows) = cells.split_at(6);
            assert_eq!((heads, rows.len()), (WORDS.year_heads().as_slice(), 12 * 6), "{name}");
            for (at, (row, month)) in rows.chunks(6).zip(&year.months).enumerate() {
                assert_eq!(row[0], WORDS.month(at), "{name}");
                assert_eq!(row[5].parse(), Ok(month.full_days), "{name}");
                let hours: f64 = row[2].parse().unwrap();
                assert!((hours - month.below_reserve.0).abs() <= 0.5, "{name}: {row:?}");
            }
        }
    }
}

#[test]
fn a_year_that_was_drawn_before_is_the_same_and_never_that_of_another_plan() {
    let (_, plan, system) = plans().swap_remove(0);
    let mut promised = plan.clone();
    promised.promise.get_or_insert_default().chance_pct = Some(70.0);
    let mut larger = promised.clone();
    larger.bank.capacity_ah *= 2.0;
    let larger_system = System::assemble(&larger, Climate::embedded(), &mut ()).unwrap();
    let energy = Habits { leading: LeadingUnit::WattHours, ..Habits::USUAL };
    let cases = [
        (&plan, &system, Habits::USUAL),
        (&promised, &system, Habits::USUAL),
        (&promised, &system, energy),
        (&larger, &larger_system, Habits::USUAL),
        (&plan, &system, Habits::USUAL),
    ];
    let mut desk = Desk::new(WORDS);
    let mut drawn = Vec::new();
    for (serial, (plan, system, own)) in (1..).zip(cases) {
        let asked = || {
            let Request::Plan { serial, code, climate, .. } = request(serial, plan, system) else {
                panic!("no plan");
            };
            Request::Plan { serial, code, habits: own, climate }
        };
        desk.take(asked());
        let kept = with_numbers(&mut desk, serial, Leaf::Year, "mean");
        let mut fresh = Desk::new(WORDS);
        fresh.take(asked());
        assert_eq!(kept, with_numbers(&mut fresh, serial, Leaf::Year, "mean"), "plan {serial}");
        drawn.push(kept);
    }
    assert_eq!(drawn[0], drawn[1]);
    assert!(drawn[1] != drawn[3], "a larger bank makes another year");
}

#[test]
fn the_flow_of_a_day_is_drawn_and_its_table_has_every_end() {
    let mut desk = Desk::new(WORDS);
    for (serial, (name, plan, system)) in (1u32..).zip(plans()) {
        desk.take(request(serial, &plan, &system));
        let flow = Outlook::of(&system).day_flow(&system, &mut Sunlight::default());
        let (text, _) = with_numbers(&mut desk, serial, Leaf::Flow, "");
        assert_eq!(texts(&text).last(), Some(&WORDS.flow(&flow).as_str()), "{name}");
        let (table, _) = with_numbers(&mut desk, serial, Leaf::FlowTable, "");
        let cells = texts(&table);
        let names: Vec<&str> = cells[3..].chunks(3).map(|row| row[0]).collect();
        let ends = flow.from.iter().chain(&flow.to);
        let ends: Vec<String> = ends.map(|own| WORDS.end_in(&plan, own.end)).collect();
        for end in &ends {
            assert!(names.contains(&end.as_str()), "{name}: {end}");
        }
        let sums = 2 + usize::from(flow.unmet.0 > 0.0);
        assert_eq!(names.len(), ends.len() + sums, "{name}");
    }
}

#[test]
fn a_leaf_whose_argument_means_nothing_is_empty() {
    let (_, plan, system) = plans().swap_remove(0);
    let mut desk = Desk::new(WORDS);
    desk.take(request(1, &plan, &system));
    for argument in
        ["", "summer", "3", "3 1 2", "-1 1 1 1 1 1 1 1 1 1 1 1 1", "3 a a a a a a a a a a a a"]
    {
        for leaf in [Leaf::Year, Leaf::YearTable] {
            assert_eq!(with_numbers(&mut desk, 1, leaf, argument), (String::new(), Vec::new()));
        }
    }
}
