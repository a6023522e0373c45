//! What the logbook has to say; the words are in the folder of each language.

use chrono::NaiveDateTime;

use super::{Language, Words};
use crate::document::List;
use crate::logbook::{
    Adoption, Care, Cause, Estimate, Guess, Learned, MeterTest, Next, Shown, Slip, Standing, Study,
    Symptom, Taken,
};
use crate::quantity::Volts;

/// A word or two over a part of the logbook.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OnLogbook {
    /// Over what was found.
    Found,
    /// Over what the readings tell without an alarm.
    Agrees,
    /// Over what the readings do not tell.
    Untold,
    /// Over the readings to take next.
    Next,
    /// Over what a plan can take over.
    Adopt,
    /// Over how it goes on.
    FromHere,
    /// Over lines that were not read.
    NotRead,
    /// Over what was guessed.
    Guessed,
    /// Over the causes.
    Causes,
    /// Over winter lay-up.
    LayUp,
    /// Over upkeep.
    Upkeep,
    /// Before the test.
    Test,
    /// That nothing is out of the way.
    NothingFound,
    /// That nothing can be told yet.
    TooFew,
    /// What the brackets hold.
    Interval,
    /// Over readings that are not used.
    NotUsed,
    /// That nothing is worth taking over.
    NothingToAdopt,
    /// How it is taken over, and what is not.
    HowAdopted,
}

impl OnLogbook {
    /// All of them.
    pub const ALL: [Self; 18] = [
        Self::Found,
        Self::Agrees,
        Self::Untold,
        Self::Next,
        Self::Adopt,
        Self::FromHere,
        Self::NotRead,
        Self::Guessed,
        Self::Causes,
        Self::LayUp,
        Self::Upkeep,
        Self::Test,
        Self::NothingFound,
        Self::TooFew,
        Self::Interval,
        Self::NotUsed,
        Self::NothingToAdopt,
        Self::HowAdopted,
    ];
}

impl Language {
    /// A word or two over a part of the logbook.
    #[must_use]
    pub fn on_logbook(self, part: OnLogbook) -> &'static str {
        speak!(self, logbook::heading(part))
    }

    /// The reading to take next.
    #[must_use]
    pub fn next_reading(self, next: Next) -> &'static str {
        speak!(self, logbook::next(next))
    }

    /// What the reader of pasted text had to guess.
    #[must_use]
    pub fn pasted_guess(self, guess: Guess) -> &'static str {
        speak!(self, logbook::guess(guess))
    }

    /// A symptom.
    #[must_use]
    pub fn symptom(self, symptom: Symptom) -> &'static str {
        speak!(self, symptoms::symptom(symptom))
    }

    /// A cause.
    #[must_use]
    pub fn cause(self, cause: Cause) -> &'static str {
        speak!(self, symptoms::cause(cause))
    }

    /// How a cause stands.
    #[must_use]
    pub fn cause_standing(self, standing: Standing) -> &'static str {
        speak!(self, symptoms::standing(standing))
    }

    /// What must be minded when measuring.
    #[must_use]
    pub fn measuring_caution(self) -> &'static str {
        speak!(self, symptoms::CAUTION)
    }

    /// What was weighed.
    #[must_use]
    pub fn weighed(self, study: &Study) -> String {
        speak!(self, logbook::weighed(study))
    }
}

impl Words {
    /// Something that was learned; `at` is when the gauge falsely said full.
    #[must_use]
    pub fn learned(self, learned: &Learned, at: Option<NaiveDateTime>) -> String {
        speak!(self.language, logbook::learned(self, learned, at))
    }

    /// The state of charge at the newest reading.
    #[must_use]
    pub fn charge_now(self, charge: &Estimate) -> String {
        speak!(self.language, logbook::charge_now(self, charge))
    }

    /// Why a line or a reading is not used.
    #[must_use]
    pub fn slip(self, slip: &Slip) -> String {
        speak!(self.language, logbook::slip(self, slip))
    }

    /// The same with the number of the line.
    #[must_use]
    pub fn slip_in(self, line: usize, slip: &Slip) -> String {
        let number = super::number::grouped_count(line);
        speak!(self.language, logbook::in_line(&number, &self.slip(slip)))
    }

    /// Why a reading of a moment is not used.
    #[must_use]
    pub fn slip_at(self, at: NaiveDateTime, slip: &Slip) -> String {
        format!("{}: {}", self.moment_read(at), self.slip(slip))
    }

    /// That a bank was read lower than it may be, or higher.
    #[must_use]
    pub fn volts_beyond(self, at: NaiveDateTime, volts: Volts, limit: Volts) -> String {
        speak!(self.language, logbook::beyond(self, at, volts, limit))
    }

    /// Date and clock time of a reading.
    #[must_use]
    pub fn moment_read(self, at: NaiveDateTime) -> String {
        speak!(self.language, logbook::moment(self, at))
    }

    /// What a gauge showed of the charge.
    #[must_use]
    pub fn shown_by_gauge(self, shown: Shown) -> String {
        let (amount, which) = match shown {
            Shown::Percent(own) => return self.amount(own),
            Shown::Left(own) => (self.amount(own), 0),
            Shown::Taken(own) => (self.amount(own), 1),
        };
        format!("{amount} {}", speak!(self.language, logbook::LEFT_OR_TAKEN)[which])
    }

    /// What became of a table.
    #[must_use]
    pub fn taken(self, taken: &Taken) -> String {
        let [new, known, dropped] =
            [taken.new, taken.known, taken.dropped].map(super::number::grouped_count);
        let limit = List::Readings.limit();
        let (more, others) = speak!(self.language, logbook::taken(&new, &known, &dropped, limit));
        let others = others.into_iter().zip([taken.known, taken.dropped]);
        let said = others.filter(|(_, count)| *count > 0).map(|(sentence, _)| sentence);
        [more].into_iter().chain(said).collect::<Vec<_>>().join(" ")
    }

    /// That there are so many more lines.
    #[must_use]
    pub fn more_lines(self, count: usize) -> String {
        speak!(self.language, logbook::more_lines(&super::number::grouped_count(count)))
    }

    /// What a plan can take over.
    #[must_use]
    pub fn adoption(self, adoption: &Adoption) -> String {
        speak!(self.language, logbook::adoption(self, adoption))
    }

    /// The test that decides a cause.
    #[must_use]
    pub fn meter_test(self, test: &MeterTest) -> String {
        speak!(self.language, symptoms::test(self, test))
    }

    /// Something to do for a bank.
    #[must_use]
    pub fn care(self, care: &Care) -> String {
        speak!(self.language, symptoms::care(self, care))
    }
}
