//! What a field or a trade word means: its sentence, and a small drawing where that helps.

use sunlarder_engine::document::Field;
use sunlarder_engine::words::{Language, Term};

use crate::paper::Paper;

/// Something that can be explained. The number of a field is its place in [`Field::ALL`]; terms follow behind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Topic {
    /// A field.
    Field(Field),
    /// A trade word.
    Term(Term),
}

impl Topic {
    /// Its number.
    #[must_use]
    pub const fn number(self) -> usize {
        match self {
            Self::Field(field) => field as usize,
            Self::Term(term) => Field::ALL.len() + term as usize,
        }
    }

    /// The one of a number.
    #[must_use]
    pub fn from_number(number: usize) -> Option<Self> {
        let field = Field::ALL.get(number).map(|own| Self::Field(*own));
        let term = || Term::ALL.get(number.checked_sub(Field::ALL.len())?);
        field.or_else(|| term().map(|own| Self::Term(*own)))
    }
}

/// The explanation.
pub(super) fn write(topic: Topic, language: Language) -> String {
    let mut paper = Paper::default();
    draw(&mut paper, drawing(topic));
    paper.said(
        "p",
        "",
        match topic {
            Topic::Field(field) => language.explain_field(field),
            Topic::Term(term) => language.explain_term(term),
        },
    );
    paper.finish()
}

/// Lines of a drawing on a sheet of 96 by 48: what they are drawn in, and how.
type Drawing = &'static [(&'static str, &'static str)];

/// The drawing says nothing that the sentence does not.
fn draw(paper: &mut Paper, lines: Drawing) {
    if lines.is_empty() {
        return;
    }
    paper.draw("svg").attr("viewBox", "0 0 96 48").attr("aria-hidden", "true");
    for (class, path) in lines {
        paper.draw("path").attr("class", class).attr("d", path).close();
    }
    paper.close();
}

/// Ink, what comes in (sun), what goes out (night), what is merely a help (rule).
const INK: &str = "ink";
const SUN: &str = "sun";
const NIGHT: &str = "night";
const RULE: &str = "rule";

/// A sun in the corner.
const SUN_ABOVE: (&str, &str) =
    (SUN, "M76 12a6 6 0 1 0 12 0a6 6 0 1 0-12 0M82 1v2M82 21v2M71 12h2M91 12h2");
/// A cell box with its two posts, left and right.
const BATTERIES: (&str, &str) =
    (INK, "M10 20h28v18h-28zM58 20h28v18h-28zM17 20v-4M31 20v-4M65 20v-4M79 20v-4");

fn drawing(topic: Topic) -> Drawing {
    match topic {
        Topic::Field(field) => of_field(field),
        Topic::Term(term) => of_term(term),
    }
}

fn of_field(field: Field) -> Drawing {
    match field {
        Field::Tilt => &[
            SUN_ABOVE,
            (RULE, "M8 42h64"),
            (INK, "M16 42L58 18"),
            (NIGHT, "M40 42a24 24 0 0 0-3.2-12"),
        ],
        Field::Azimuth => &[
            (RULE, "M48 4v40M28 24h40"),
            (INK, "M34 24a14 14 0 1 0 28 0a14 14 0 1 0-28 0M45 4l3-4l3 4"),
            (SUN, "M48 24L59 40M59 40l-5.5-2.5M59 40l.5-6"),
            (NIGHT, "M48 14a10 10 0 0 1 5.6 18.3"),
        ],
        Field::InSeries => &[BATTERIES, (SUN, "M31 16C40 6 56 6 65 16M17 16V6H6M79 16V6h11")],
        Field::InParallel => &[BATTERIES, (SUN, "M17 16V10H65V16M31 16V4H79V16M17 10H6M79 4h11")],
        Field::Reserve => &[
            (INK, "M34 6h28v38h-28zM42 6v-3h12v3"),
            (SUN, "M38 14h20M38 20h20M38 26h20"),
            (NIGHT, "M28 32h40M38 38h20"),
        ],
        Field::Duty => {
            &[(RULE, "M6 40h84"), (NIGHT, "M6 40V16h14v24M34 40V16h14v24M62 40V16h14v24M90 40V16")]
        }
        Field::Surge => &[(RULE, "M6 40h84"), (NIGHT, "M6 40h12V6c3 16 5 20 12 20h58")],
        Field::PeakSun => &[
            (RULE, "M4 42h88M66 42V14M84 42V14"),
            (SUN, "M8 42C20 42 22 14 34 14S48 42 60 42"),
            (INK, "M66 42V14h18v28"),
        ],
        Field::AbsorptionVoltage | Field::TailCurrent => &[
            (RULE, "M6 44h86M36 4v40M66 4v40"),
            (SUN, "M6 30L36 10H66V18H92"),
            (NIGHT, "M6 14H36C44 30 54 38 66 40H92"),
        ],
        Field::Horizon => {
            &[SUN_ABOVE, (INK, "M4 42L22 26l10 8l14-20l16 18l10-6l20 16"), (RULE, "M4 42h88")]
        }
        Field::Albedo => {
            &[SUN_ABOVE, (RULE, "M4 42h88"), (SUN, "M74 18L50 40L34 26M34 26l6 1M34 26l1.500 6")]
        }
        Field::HourRate => &[
            (RULE, "M8 42h84M8 42V4"),
            (NIGHT, "M8 8C30 10 40 20 44 42"),
            (SUN, "M8 8C44 9 76 16 86 42"),
        ],
        _ => &[],
    }
}

fn of_term(term: Term) -> Drawing {
    match term {
        Term::StateOfCharge => {
            &[(INK, "M34 6h28v38h-28zM42 6v-3h12v3"), (SUN, "M38 20h20M38 26h20M38 32h20M38 38h20")]
        }
        Term::Usable => of_field(Field::Reserve),
        Term::ChargeController => &[
            (RULE, "M4 42h38M54 42h38"),
            (NIGHT, "M6 18h14v24M6 42V18"),
            (SUN, "M24 18h10v24M60 10h12v32M60 42V10M78 18h12v24M78 42V18"),
        ],
        Term::Mounting => &[SUN_ABOVE, (INK, "M6 42L54 18M10 34L50 14"), (RULE, "M6 42h60")],
        _ => &[],
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::paper::{DRAW, TEXT, marks};

    fn topics() -> impl Iterator<Item = Topic> {
        (0..Field::ALL.len() + Term::ALL.len()).filter_map(Topic::from_number)
    }

    #[test]
    fn every_topic_has_its_number_and_its_sentence() {
        assert_eq!(topics().count(), Field::ALL.len() + Term::ALL.len());
        for (number, topic) in topics().enumerate() {
            assert_eq!(topic.number(), number);
            let text = write(topic, crate::PAGE);
            let said: Vec<&str> =
                marks(&text).filter(|(mark, _)| *mark == TEXT).map(|(_, own)| own).collect();
            assert_eq!(said.len(), 1, "{topic:?}");
        }
        assert_eq!(Topic::from_number(Field::ALL.len() + Term::ALL.len()), None);
    }

    #[test]
    fn what_is_seen_better_than_said_is_drawn() {
        let drawn = |topic| marks(&write(topic, crate::PAGE)).any(|(mark, _)| mark == DRAW);
        let fields = [Field::Tilt, Field::Azimuth, Field::InSeries, Field::InParallel, Field::Duty];
        assert!(fields.into_iter().all(|own| drawn(Topic::Field(own))));
        assert!(drawn(Topic::Term(Term::ChargeController)));
        assert!(!drawn(Topic::Field(Field::Quantity)));
    }
}
