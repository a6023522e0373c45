//! What the page and the command line say: dispatch to the languages.

#[cfg(feature = "towns")]
use super::Countries;
use super::{Label, Language, NameOf, Sentence, Words};
use crate::bank::Quality;
use crate::document::{Chemistry, Document, Field};
use crate::load::catalogue::{Appliance, Group};
use crate::outlook::{BestTilt, Generated, Month, Obstacle, Opening, Outlook, Voltages};
use crate::place::{MonthlyClimate, Origin, SummerTime};
use crate::quantity::{AmpHours, Hours, Volts};
use crate::simulate::{Chances, Range, Replayed};
use crate::sky::Trust;
use crate::system::System;

impl Language {
    /// A short text of the page.
    #[must_use]
    pub fn label(self, label: Label) -> &'static str {
        speak!(self, labels::label(label))
    }

    /// The name of an appliance.
    #[must_use]
    pub fn appliance(self, appliance: Appliance) -> &'static str {
        speak!(self, appliances::name(appliance))
    }

    /// Words by which people look for an appliance.
    #[must_use]
    pub fn appliance_words(self, appliance: Appliance) -> &'static str {
        speak!(self, appliances::search_words(appliance))
    }

    /// The name of a group of appliances.
    #[must_use]
    pub fn appliance_group(self, group: Group) -> &'static str {
        speak!(self, appliances::group(group))
    }

    /// The names of countries that are built in.
    #[cfg(feature = "towns")]
    #[must_use]
    pub const fn countries(self) -> Countries<'static> {
        Countries::from_text(speak!(self, countries::COUNTRIES))
    }

    /// The verdict in a few words.
    #[must_use]
    pub fn short(self, opening: &Opening) -> String {
        speak!(self, verdict::short(opening))
    }

    /// In how many of ten years the month of the start stays over the reserve, as a sentence; where a life may depend on it, in how
    /// many it does not.
    #[must_use]
    pub fn month_kept(self, chances: &Chances, opening: &Opening) -> String {
        speak!(self, chances::month_kept(chances, opening.month, opening.is_vital()))
    }

    /// The same in a table.
    #[must_use]
    pub fn of_ten_years(self, range: &Range) -> String {
        speak!(self, chances::of_ten_years(range))
    }

    /// When the reserve comes in the weathers of an ensemble; nothing for one who starts inside it.
    #[must_use]
    pub fn when_reserve_comes(self, chances: &Chances, system: &System) -> String {
        speak!(self, chances::when(chances, system))
    }

    /// What decades of weather come to.
    #[must_use]
    pub fn over_years(self, chances: &Chances) -> Vec<String> {
        speak!(self, chances::over_years(chances))
    }

    /// How far the climate itself is known, and what the ranges are.
    #[must_use]
    pub fn doubt(self, trust: Trust, chances: &Chances) -> String {
        speak!(self, chances::doubt(trust, chances))
    }

    /// Which months keep up.
    #[must_use]
    pub fn months_kept(self, bits: u16) -> String {
        speak!(self, verdict::months_kept(bits))
    }

    /// A length of time.
    #[must_use]
    pub fn duration(self, hours: Hours) -> String {
        speak!(self, verdict::duration(hours))
    }

    /// A load that has no name.
    #[must_use]
    pub fn unnamed_load(self) -> &'static str {
        speak!(self, page::unnamed_load())
    }

    /// Round the clock.
    #[must_use]
    pub fn always(self) -> &'static str {
        speak!(self, page::always())
    }

    /// Round the clock, more in the heat.
    #[must_use]
    pub fn always_by_heat(self) -> &'static str {
        speak!(self, page::always_by_heat())
    }

    /// A chemistry.
    #[must_use]
    pub fn chemistry(self, chemistry: Chemistry) -> &'static str {
        speak!(self, page::chemistry(chemistry))
    }

    /// The bank in a few words.
    #[must_use]
    pub fn bank(self, charge: &str, chemistry: Chemistry, volts: &str) -> String {
        speak!(self, page::bank(charge, chemistry, volts))
    }

    /// What may be used of the bank.
    #[must_use]
    pub fn usable(self, usable: &str, rated: &str, temperature: &str, month: usize) -> String {
        speak!(self, page::usable(usable, rated, temperature, month))
    }

    /// The limits of the bank.
    #[must_use]
    pub fn bank_limits(self, charge: &str, discharge: &str, peak: &str, milliohm: &str) -> String {
        speak!(self, page::bank_limits(charge, discharge, peak, milliohm))
    }

    /// A rule of summer time.
    #[must_use]
    pub fn summer_time(self, rule: SummerTime) -> &'static str {
        speak!(self, page::summer_time(rule))
    }

    /// Where the sun's figures come from.
    #[must_use]
    pub fn climate_origin(self, origin: Origin) -> &'static str {
        speak!(self, page::climate_origin(origin))
    }

    /// Where sun and temperatures come from and how sure they are, in sentences.
    #[must_use]
    pub fn climate_sources(self, climate: &MonthlyClimate) -> [&'static str; 2] {
        [
            speak!(self, page::climate_origin(climate.origin)),
            speak!(self, page::temperature_origin(climate.temperature_origin)),
        ]
    }

    /// A place that is called by the town near it.
    #[must_use]
    pub fn near(self, town: &str) -> String {
        speak!(self, page::near(town))
    }

    /// Place, month and start.
    #[must_use]
    pub fn where_and_when(
        self,
        place: &str,
        month: usize,
        weekday: usize,
        time: &str,
        charge: &str,
    ) -> String {
        speak!(self, page::where_and_when(place, month, weekday, time, charge))
    }

    /// Label of the reserve line.
    #[must_use]
    pub fn reserve_line(self, percent: &str) -> String {
        speak!(self, page::reserve_line(percent))
    }

    /// The curve in words.
    #[must_use]
    pub fn curve_in_words(self, verdict: &str, month: usize) -> String {
        speak!(self, page::curve_in_words(verdict, month))
    }

    /// What is read at an hour of the curve.
    #[must_use]
    pub fn reading(self, when: &str, charge: &str, volts: &str, comes: &str, goes: &str) -> String {
        speak!(self, page::reading(when, charge, volts, comes, goes))
    }

    /// How many weathers have reached the reserve by an hour, from a share \[%\].
    #[must_use]
    pub fn reached_by(self, percent: f64) -> String {
        speak!(self, page::reached_by(percent))
    }

    /// What is read after the bank is empty.
    #[must_use]
    pub fn reading_empty(self, when: &str) -> String {
        speak!(self, page::reading_empty(when))
    }

    /// Power of the arrays.
    #[must_use]
    pub fn of_sun(self, watts: &str) -> String {
        speak!(self, page::of_sun(watts))
    }

    /// An array by its place.
    #[must_use]
    pub fn array(self, place: usize) -> String {
        speak!(self, page::array(place))
    }

    /// The range usual for an appliance.
    #[must_use]
    pub fn usual_range(self, low: &str, high: &str) -> String {
        speak!(self, page::usual_range(low, high))
    }

    /// Best tilts beside what the array gets.
    #[must_use]
    pub fn best_tilt(self, best: &BestTilt, month: usize) -> String {
        speak!(self, page::best_tilt(best, month))
    }

    /// An example by place and month.
    #[must_use]
    pub fn scenario(self, place: &str, month: usize) -> String {
        speak!(self, page::scenario(place, month))
    }

    /// The typical day of a month.
    #[must_use]
    pub fn a_day_in(self, month: usize) -> String {
        speak!(self, page::a_day_in(month))
    }

    /// That something was added.
    #[must_use]
    pub fn added(self, name: &str) -> String {
        speak!(self, page::added(name))
    }

    /// That something was deleted.
    #[must_use]
    pub fn deleted(self, name: &str) -> String {
        speak!(self, page::deleted(name))
    }

    /// That no more loads fit.
    #[must_use]
    pub fn full_of_loads(self, limit: usize) -> String {
        speak!(self, page::full_of_loads(limit))
    }

    /// The name of a copy.
    #[must_use]
    pub fn copy_of(self, name: &str) -> String {
        speak!(self, page::copy_of(name))
    }

    /// The version of the program.
    #[must_use]
    pub fn version(self, version: &str) -> String {
        speak!(self, page::version(version))
    }

    /// That a box holds what may be thousands or thousandths; both readings as [`Typed::Ambiguous`](super::Typed) has them.
    #[must_use]
    pub fn ambiguous(self, field: Field, typed: &str, thousands: &str, decimals: &str) -> String {
        let (thousands, decimals) = (self.marked_typed(thousands), self.marked_typed(decimals));
        speak!(self, page::ambiguous(field, typed, &thousands, &decimals))
    }

    fn marked_typed(self, text: &str) -> String {
        if self.writes_comma() { text.replace('.', ",") } else { text.to_owned() }
    }

    /// Longer than the longest run.
    #[must_use]
    pub fn beyond(self) -> String {
        speak!(self, page::beyond())
    }
}

impl Words {
    /// The verdict as a headline.
    #[must_use]
    pub fn headline(self, opening: &Opening) -> Sentence {
        speak!(self.language, verdict::headline(self, opening))
    }

    /// What explains the verdict.
    #[must_use]
    pub fn explanation(self, opening: &Opening, system: &System, name_of: NameOf<'_>) -> String {
        speak!(self.language, verdict::explanation(self, opening, system, name_of))
    }

    /// What a life may depend on, by name, and what it needs; nothing of a plan without such a thing.
    #[must_use]
    pub fn vital(self, opening: &Opening, name_of: NameOf<'_>) -> Option<String> {
        speak!(self.language, verdict::vital(opening, name_of))
    }

    /// What a year of weather that somebody brought does with a plan: sentences, the most important first.
    #[must_use]
    pub fn replayed(self, replayed: &Replayed, system: &System) -> Vec<String> {
        speak!(self.language, replay::replayed(self, replayed, system))
    }

    /// What cannot work or must be known.
    #[must_use]
    pub fn obstacle(self, obstacle: &Obstacle, name_of: NameOf<'_>) -> String {
        speak!(self.language, verdict::obstacle(self, obstacle, name_of))
    }

    /// The tightest month and why.
    #[must_use]
    pub fn tightest(self, outlook: &Outlook, nominal: Volts) -> String {
        speak!(self.language, verdict::tightest(self, outlook, nominal))
    }

    /// How a day comes out.
    #[must_use]
    pub fn day_balance(self, balance: AmpHours, nominal: Volts) -> String {
        speak!(self.language, verdict::day_balance(self, balance, nominal))
    }

    /// What a generator does on a mean day.
    #[must_use]
    pub fn generated(self, generated: &Generated) -> String {
        speak!(self.language, verdict::generated(self, generated))
    }

    /// What a generator does in an average month; empty without one.
    #[must_use]
    pub fn generator_in(self, month: &Month) -> String {
        speak!(self.language, verdict::generator_in(self, month))
    }

    /// Days of autonomy.
    #[must_use]
    pub fn autonomy(self, days: Option<f64>) -> String {
        speak!(self.language, verdict::autonomy(self, days))
    }

    /// What an example consists of.
    #[must_use]
    pub fn scenario_figures(self, plan: &Document) -> String {
        speak!(self.language, page::scenario_figures(self, plan))
    }

    /// The picture of the twelve months in words.
    #[must_use]
    pub fn climate_in_words(self, climate: &MonthlyClimate) -> String {
        speak!(self.language, page::climate_in_words(self, climate))
    }

    /// Hours of a day.
    #[must_use]
    pub fn hours_a_day(self, hours: f64) -> String {
        speak!(self.language, page::hours_a_day(self, hours))
    }

    /// A daily amount.
    #[must_use]
    pub fn per_day(self, charge: AmpHours, nominal: Volts) -> String {
        speak!(self.language, page::per_day(self, charge, nominal))
    }

    /// How well the bank fits its rated capacities.
    #[must_use]
    pub fn fit(self, quality: &Quality) -> String {
        speak!(self.language, page::fit(self, quality))
    }

    /// Voltages between the posts.
    #[must_use]
    pub fn voltages(self, voltages: &Voltages) -> String {
        speak!(self.language, page::voltages(self, voltages))
    }

    /// The rated capacity behind the usable one.
    #[must_use]
    pub fn of_rated(self, rated: AmpHours, nominal: Volts) -> String {
        speak!(self.language, page::of_rated(self, rated, nominal))
    }

    /// That a box must be filled in.
    #[must_use]
    pub fn missing(self, field: Field) -> String {
        speak!(self.language, page::missing(self, field))
    }

    /// That a box holds no number.
    #[must_use]
    pub fn no_number(self, field: Field, typed: &str) -> String {
        speak!(self.language, page::no_number(self, field, typed))
    }
}

/// The months with the least and the most.
pub(super) fn ends(months: &[f64; 12]) -> [usize; 2] {
    let mut found = [0, 0];
    for (at, value) in months.iter().enumerate() {
        if *value < months[found[0]] {
            found[0] = at;
        }
        if *value > months[found[1]] {
            found[1] = at;
        }
    }
    found
}
