//! What the page's address says: a plan in a link, or an example by name.

use sunlarder_engine::digits::places_of;
use sunlarder_engine::document::{Document, Problem};
use sunlarder_engine::outlook::Guessed;
use sunlarder_engine::share;

/// The start scenarios: name in the address, and link code. They are the plans of `examples/`, of which a test makes sure; as codes
/// all eight weigh less than four of the files.
#[rustfmt::skip]
pub(crate) const EXAMPLES: [(&str, &str); 8] = [
    ("camper", "AWGhYycDx4GbmOjIAAsBFyayno_AAKBT7QYBBdkTsA6BGAPoB9APlSUYhAcBvAUBKP0BAmQEAgHeB8YKLQM8BKwC9YcCUegCAgKkA5wEuAjGCmSlECmwCTI8KWUErAIFZ-gHJWygAaAGlUCsASgBARWvAR4BpRFUkAPYBPADHuGDEKwbAYAD0AOUD6wCc6LY"),
    ("boat", "AXfW8YOBLDtYZuYppSaugGQBAQwBnwXJQ-gA-DmmJ_ABARQDB7oSnASIDu8BAfABmBEoBLQBZB_YBLAJZIgO4A0K9ANklSUZ6AcBoAYBKPUBlwGsAgIBnASEB_UBmQE8AgGcBIQH9UmaAbAJAgHYBMgGoAYo9YEEmwFkAgHgA7AJAfUBngE8AgHOCYYD_QECZAgCAbAJggulECmwCTw8pZABK4QHFDwBpRCgAaCcARQ8KWUGrAKlJGewCawCAVLMvkXYUnQ4JG0JVLMnAMWDN5AcBPQCwAP4DwoUCtgElgEZiSw"),
    ("cabin", "AWXujScD3M-jauhRhm5jdFXQAAELAZ8HsaK4AMpe6Ax4AXgoTwfvE_wH7A7eAfABlCMoBKoBZAW4F6wC_QMCeAgCAaIH5ApwbQM8BJADcOUQKbAJPHA89SUZ6AcBcPADoAYBKPEDfgIB4AOUBXBpZQasAnD1E3rADAIB9AioCjAB5QQ_0IwBPGAB5RSFAYB9KEABKBVsoAEBlRCvAR4B5h9SJNUdYfox7lNLgN2bNfAuBIwB_AKUBaAGlA-gATwoKNgErAIoweg"),
    ("stall", "AWfUkqiUjNzFkteRwUdHIBQBCAGPBF2TWH3wXBNYAIofzJ8ByAYCA4sUhAfrAwHwASgEtAFkAR-wCeASeJwO4A35AQQGAgHeB8YK9QEFoAECAfwH5ArxAf8BAgHAB8YK9akCFYQHAgHQBeQK2AQBKPkBVQQCAcAHqArxAX0CAfwHqAopZQSQA6UURcA-KAEoyYsluBce8AK-A7gNZBQUlgEL0rM"),
    ("classroom", "AWXVLu6iUjNzGkPrUOVdAAELAY8ExwUFBAB58i_oAgoHtxHCA8AMoxgDgAgE6AfQDx-gH8A-kAPEDpwO_U8K6AIQAgLgA4wGyAbeBx8B9RNy2DYCAYwGogcfAfUTe6AfAgGcBJQFHwH1E3zQDwIB0QPvAwEB_ZMBZ-gHBAIB4APQBR8Bkypc41-QVLMvnQDlFHGQThQfASj9E2_0AwQCAZwEjAYfAfUTbKABAgHCA_wHHwHlBHSgAdgEHwH9kQIFoAEEAgH0CIYDAQA_rgEBFMAHBAHfjzCIQAQEFAD0BO4F3BW7BWS8BawC8E8q"),
    ("clinic", "AWe5ks3HL6kXYZuY5UkYACgBCwGPBMO1tgDpF5Yk8AEBB8oSuAikDf8BAvABoB8UBAS-AVAfsAngEowBsA70DZW9AiKwCQGgBgEKQCgB-QEEBAIBuAioCvUBBaABAgG4COgCZeoBrAKgBj_1AbMBrAICAeADwAcltAGIJyjhBOcB2AQfAeUU5gGgH2QfASillAHgAeASZAEoASllCJADl6cBHQKEAgGQAwEBZADdizjIMwYoAO4FjgfEDngBoAbIARJtNQ"),
    ("hut", "AWOCqjjfci7DNzGErYwAKAkBjwfgoRXpcwClQLNv5wJkYzEHoRXQBYgO_wEC8AGwIhQEBL4BUJVBsgGwCQGQAwGVQLMBrAIBASW0AYgnFBWxARQBFXN4AfUBrgFkAgGkA_QILbUBoAEEkAMNAmQEFasBFAHdyzXIMwSCAQDuBY4HxA4ooAEKCqAGrALig0w"),
    ("sailor", "AWOe7j3M-tCVIfWhJhehkwBkDAGPB2eJuP0SpNKU9BmCqY90augAgBm_PucCDugCHgfiE-AD7A7tAQOgHwoEvgEylQmaAbAJAbwFKBWXAfABARWZATwBFZ0BUAGVQJsBZAEB9QGfAaABAgG4CIYDlSUZ6AcBoAYBKIUQMYgnPKWQASuEBxQ8AS0DPASgBillBqwCJWfoB5ADxYs36CAGmAPoA8ARUAoeCugHyAHdY_8"),
];

/// What the part behind the `#` of an address asks for.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Asked {
    /// Nothing that concerns us.
    Nothing,
    /// A plan.
    Plan(Box<Document>),
    /// A plan whose answer is to be guessed first.
    Question(Guessed, Box<Document>),
    /// A plan that cannot be read.
    Unreadable(Problem),
}

/// Reads the part behind the `#`.
pub(crate) fn asked(hash: &str) -> Asked {
    let hash = hash.trim_start_matches('#');
    if let Some((what, code)) = hash.strip_prefix(QUESTION).and_then(|own| parted(own, "&p=")) {
        return match (what_of(what), share::decode(code)) {
            (Some(what), Ok(plan)) => Asked::Question(what, Box::new(plan)),
            (None, Ok(plan)) => Asked::Plan(Box::new(plan)),
            (_, Err(problem)) => Asked::Unreadable(problem),
        };
    }
    if let Some(code) = hash.strip_prefix("p=") {
        return match share::decode(code) {
            Ok(plan) => Asked::Plan(Box::new(plan)),
            Err(problem) => Asked::Unreadable(problem),
        };
    }
    let example = hash.strip_prefix("example=").and_then(example);
    example.map_or(Asked::Nothing, |plan| Asked::Plan(Box::new(plan)))
}

/// A start scenario by its name.
pub(crate) fn example(name: &str) -> Option<Document> {
    let (_, code) = EXAMPLES.iter().find(|(known, _)| *known == name)?;
    share::decode(code).ok()
}

/// What stands before the name of what is to be guessed.
const QUESTION: &str = "guess=";
/// The names of what can be guessed, in their order.
const GUESSED: [&str; 3] = ["hours", "charge", "month"];

/// What is to be guessed, by its name.
fn what_of(name: &str) -> Option<Guessed> {
    Guessed::ALL.into_iter().zip(GUESSED).find(|(_, own)| *own == name).map(|(own, _)| own)
}

/// The link that opens a plan as a question.
pub(crate) fn question(page: &str, what: Guessed, plan: &Document) -> Result<String, Problem> {
    share::encode(plan).map(|code| format!("{}&p={code}", before_question(page, what)))
}

/// What stands before the plan in such a link.
pub(crate) fn before_question(page: &str, what: Guessed) -> String {
    let page = page.split('#').next().unwrap_or_default();
    let name = GUESSED.get(what as usize).copied().unwrap_or_default();
    format!("{page}#{QUESTION}{name}")
}

/// The link to a plan on a page at this address.
pub(crate) fn link(page: &str, plan: &Document) -> Result<String, Problem> {
    let page = page.split('#').next().unwrap_or_default();
    share::encode(plan).map(|code| format!("{page}#p={code}"))
}

/// What stands before and behind a part.
fn parted<'a>(text: &'a str, by: &'a str) -> Option<(&'a str, &'a str)> {
    let at = places_of(text, by).next()?;
    Some((text.get(..at)?, text.get(at + by.len()..)?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_start_scenario_opens() {
        for (name, _) in EXAMPLES {
            assert!(matches!(asked(&format!("#example={name}")), Asked::Plan(_)), "{name}");
        }
        assert_eq!(asked("#example=nothing"), Asked::Nothing);
        assert_eq!(asked(""), Asked::Nothing);
    }

    #[test]
    fn the_codes_are_those_of_the_files() {
        for (name, code) in EXAMPLES {
            let file = format!("{}/../examples/{name}.json", env!("CARGO_MANIFEST_DIR"));
            let plan = Document::from_json(&std::fs::read_to_string(file).unwrap()).unwrap();
            assert_eq!(share::encode(&plan).as_deref(), Ok(code), "{name}: put this code in");
        }
    }

    #[test]
    fn a_link_opens_the_plan_it_was_made_of() {
        let plan = example("camper").unwrap();
        let link = link("https://example.org/a/b/?x=1#old", &plan).unwrap();
        assert!(link.starts_with("https://example.org/a/b/?x=1#p="));
        let hash = link.split_once('#').unwrap().1;
        assert_eq!(asked(hash), Asked::Plan(Box::new(plan)));
    }

    #[test]
    fn a_question_opens_as_one_and_its_plan_is_found_in_it() {
        let plan = example("boat").unwrap();
        for what in Guessed::ALL {
            let link = question("https://example.org/#old", what, &plan).unwrap();
            let hash = link.split_once('#').unwrap().1;
            assert_eq!(asked(hash), Asked::Question(what, Box::new(plan.clone())));
            assert_eq!(share::decode(share::code_in(&link)).as_ref(), Ok(&plan));
        }
        let code = share::encode(&plan).unwrap();
        // A newer release may ask for more; the plan still opens.
        assert_eq!(asked(&format!("#guess=colour&p={code}")), Asked::Plan(Box::new(plan)));
        assert_eq!(asked("#guess=hours&p=%%%"), Asked::Unreadable(Problem::BadLetters));
        assert_eq!(asked("#guess=hours"), Asked::Nothing);
    }

    #[test]
    fn a_broken_link_says_so() {
        assert_eq!(asked("#p=%%%"), Asked::Unreadable(Problem::BadLetters));
    }
}
