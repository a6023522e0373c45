//! Titles, labels, hints and buttons of the page.

use crate::words::Label;

/// What a label says.
#[must_use]
pub fn label(label: Label) -> &'static str {
    match label {
        Label::Units => "Units",
        Label::Habits => "Units and habits",
        Label::HabitsHint => "Kept on this device. They change how figures are told, and no plan.",
        Label::TemperatureHabit => "Temperatures",
        Label::DegreesCelsius => "°C",
        Label::DegreesFahrenheit => "°F",
        Label::ClockHabit => "Clock",
        Label::Hours24 => "24 hours",
        Label::Hours12 => "12 hours",
        Label::WeekHabit => "A week begins on",
        Label::LeadingHabit => "Charge and energy",
        Label::LeadsAh => "amp-hours (Ah)",
        Label::LeadsWh => "watt-hours (Wh)",
        Label::DistanceHabit => "Distances",
        Label::Kilometres => "km",
        Label::Miles => "miles",
        Label::LanguageWord => "Language",
        Label::InWh => "In, Wh",
        Label::OutWh => "Out, Wh",
        Label::BalanceWh => "Balance, Wh",
        Label::UsableWh => "May be used, Wh",
        Label::MonthLegendWh => "Wh a day, in against out; pick a month",
        Label::MeanTemperatureFahrenheit => "°F",
        Label::NoPlaceYet => "no place yet",
        Label::NotBeforeEmpty => "empty before that",
        Label::MeanTemperature => "°C",
        Label::MeanWeatherPercent => "Mean weather, %",
        Label::WithoutSunPercent => "No sun at all, %",
        Label::Hour => "Hour",
        Label::InWatts24 => "In, W",
        Label::OutWatts24 => "Out, W",
        Label::InAh => "In, Ah",
        Label::OutAh => "Out, Ah",
        Label::BalanceAh => "Balance, Ah",
        Label::UsableAh => "May be used, Ah",
        Label::InShort => "In short",
        Label::AbsorptionHint => "As the charger is set, at 25 °C.",
        Label::AddArray => "Add an array",
        Label::AddByHand => "Type one in yourself",
        Label::AddHours => "Add hours",
        Label::AddSomething => "Add something",
        Label::Ageing => "Years in the sun",
        Label::AlbedoHint => {
            "Grass and soil 20 %, sand 30 %, water 7 %, old snow 50 %, fresh snow 80 %."
        }
        Label::AlternatorHint => {
            "What the charger on the engine gives at most. Set the hours of driving below."
        }
        Label::Always => "Always",
        Label::AsATable => "As a table",
        Label::AtTheseHours => "At these hours",
        Label::Autonomy => "Days of autonomy",
        Label::AutonomyHint => {
            "The usable charge divided by the use of an average day, with nothing coming in."
        }
        Label::AzimuthHint => {
            "0 is north, 90 east, 180 south, 270 west. A flat array faces nowhere."
        }
        Label::BankStands => "Where the bank stands",
        Label::InRealWeather => "In weather as it may be",
        Label::WeatherNeedsPlace => {
            "This is for no place in particular. Say where, under “Where and when?”, and real weather is tried on it."
        }
        Label::WeatherComing => "Four hundred years of weather are being tried on this plan…",
        Label::EightOfTen => "Eight of ten weathers",
        Label::OfTenYears => "Of ten years above reserve",
        Label::EightOfTenPercent => "Eight of ten, %",
        Label::BeingWorkedOut => "Being worked out…",
        Label::BestPoint => "Voltage at the best point",
        Label::BlankPlan => "A blank plan",
        Label::ByEnergyLabel => "By the energy label",
        Label::ByHour => "It differs by the hour of the day",
        Label::ByInverter => "Mains, by the inverter",
        Label::ByOutput => "By what comes out, as for a microwave",
        Label::Cable => "Cable",
        Label::CapacityHint => "Amp-hours on the label of one battery.",
        Label::Cautions => "What to mind",
        Label::ChargeController => "Charge controller",
        Label::ChargeLimit => "Charge limit of one battery",
        Label::ChargerLimit => "Charger output, at most",
        Label::Chemistry => "Kind of battery",
        Label::ClockHint => {
            "Standard time less universal time: 60 in Berlin, −300 in New York, 345 in Kathmandu."
        }
        Label::Close => "Close",
        Label::ControllerLimit => "Controller output, at most",
        Label::ControllerVoltageHint => {
            "From its sheet. Without it the cold voltage of the array is not checked."
        }
        Label::CoordinatesAndClock => "Coordinates and clock",
        Label::CopyLink => "Copy the link",
        Label::CopyPlan => "Make a copy",
        Label::CopyRefused => {
            "The browser did not let the page copy. Mark the link in the box and copy it by hand."
        }
        Label::Counted => "Counted in the plan",
        Label::CutOffHint => "Of its protection or of the inverter, whichever is higher.",
        Label::DayInWords => "What comes in and what goes out through a typical day",
        Label::DayLegend => "in above, out below",
        Label::DaysAndMonths => "Days and months",
        Label::DaysOfTheWeek => "Days of the week",
        Label::Delete => "Delete",
        Label::DeleteArray => "Delete this array",
        Label::DeratingHint => "A hot alternator often gives a third less than its label.",
        Label::Dirt => "Dirt",
        Label::DischargeLimit => "Discharge limit of one battery",
        Label::Download => "Save as a file",
        Label::Duplicate => "Duplicate",
        Label::DutyHint => {
            "The share of its time in which it really runs: a compressor rests between."
        }
        Label::Efficiency => "Efficiency by the sheet",
        Label::EfficiencyFull => "Efficiency at full load",
        Label::EfficiencyHalf => "Efficiency at half load",
        Label::Engine => "Engine",
        Label::FedBy => "Fed by",
        Label::FirstDay => "First day",
        Label::FollowsTheHeat => "It cools, and works harder in the heat",
        Label::From => "From",
        Label::Generator => "Generator",
        Label::GeneratorHint => "What its charger gives. Set below when it may run.",
        Label::HaveLinkOrFile => "I have a link or a file",
        Label::HealthHint => "How much of the capacity age has left. A new bank has 100 %.",
        Label::HeatIsComputed => {
            "The heat of the modules is worked out hour by hour from the weather."
        }
        Label::HereName => "Here",
        Label::HorizonAround => "Hills and trees around",
        Label::HorizonHint => {
            "How high they stand, clockwise from north. They hide the sun and part of the sky."
        }
        Label::HorizonIsKnown => "The horizon is not level",
        Label::HourRateHint => {
            "The hours in which the label's capacity was measured; 20 is usual for lead."
        }
        Label::HoursPerDay => "Hours a day",
        Label::HowAutonomy => "How are the days of autonomy worked out?",
        Label::HowBudget => "How is the daily use worked out?",
        Label::HowLong => "How long will it last?",
        Label::HowMonth => "How is this month's balance worked out?",
        Label::HowUsable => "How is the usable charge worked out?",
        Label::HowWorkedOut => "How is this worked out?",
        Label::IdleHint => "What it takes while it is on and nothing is connected.",
        Label::InADay => "In, a day",
        Label::InAhADay => "In amp-hours a day",
        Label::InVoltsAndAmps => "In volts and amps",
        Label::InWatts => "In watts",
        Label::InsideHint => {
            "The room, cabin or vehicle is never colder than this. Refrigerators and a bank inside feel it."
        }
        Label::InverterAwake => "Inverter, awake",
        Label::InverterIsOn => "The inverter is on",
        Label::KeepsUp => "Keeps up on average",
        Label::KeptAt => "At its own temperature",
        Label::KeptInside => "Inside",
        Label::KeptOutside => "Outside",
        Label::LabelHint => "The energy of a year, with all its pauses.",
        Label::LastPlan => "My last plan",
        Label::LatitudeHint => "North is positive, south negative.",
        Label::LeftAtHome => "left at home",
        Label::LinkCopied => "The link is on the clipboard.",
        Label::LinkHint => {
            "The whole plan is in the link. Nothing is sent anywhere until you send it."
        }
        Label::LinkToPlan => "Link to this plan",
        Label::LocationTaken => "The plan now stands where you are. Check the clock below.",
        Label::LongitudeHint => "East is positive, west negative.",
        Label::LooksForLoads => "It looks for loads",
        Label::LossesAndSheet => "Losses and module sheet",
        Label::MayBeUsed => "May be used",
        Label::MeanWeather => "Mean weather",
        Label::Menu => "Plan",
        Label::ModulesInSeries => "Modules in series",
        Label::Month => "Month",
        Label::MonthByMonth => "Month by month",
        Label::MonthLegend => "Ah a day, in against out; pick a month",
        Label::MonthsOfTheYear => "Months of the year",
        Label::More => "More",
        Label::MoreOfTheBank => "Age, limits and losses",
        Label::MountedFlush => "Close on a roof",
        Label::MountedOpen => "Air behind",
        Label::Mounting => "Mounting",
        Label::MoveDown => "Move down",
        Label::MoveUp => "Move up",
        Label::Mppt => "Maximum-power-point (MPPT)",
        Label::Name => "Name",
        Label::NameOfPlan => "Name of this plan",
        Label::NewPlan => "Start a new plan",
        Label::NewVersion => "A new version is ready. Your plans stay as they are.",
        Label::NoClimate => {
            "The page could not load the climate that it reckons with. Your plans are safe on this device."
        }
        Label::NoLocation => {
            "The device did not tell where it is. Search a town, or type the coordinates."
        }
        Label::NoSuchTown => {
            "No such place is known here. Take a town near it, or type the coordinates."
        }
        Label::NoTowns => {
            "The list of towns could not be loaded. You can still type coordinates below."
        }
        Label::NotWorkedOut => {
            "The browser did not let the page work this out. Reloading the page may help."
        }
        Label::Nothing => "nothing yet",
        Label::NothingFound => {
            "Nothing like that is on the list. Try another word, or type it in yourself."
        }
        Label::OnTheBank => "The bank, as direct current",
        Label::OnThisDevice => "On this device",
        Label::OnlyWithLoads => "Only while its loads run",
        Label::OpenCircuit => "Open-circuit voltage",
        Label::OpenFile => "Open a file",
        Label::OpenLink => "Open the link",
        Label::OpenLinkOrFile => "Open a link or a file",
        Label::OpenNow => "(open now)",
        Label::OpenPlan => "Open",
        Label::OtherLosses => "Other losses",
        Label::OutADay => "Out, a day",
        Label::OutputHint => "Share of the input that becomes heat; about 64 % for a microwave.",
        Label::OwnYear => "Your year of weather",
        Label::ReplayHint => {
            "A year of hourly weather in the open EPW form. It stays in this page while that is open, and is neither stored nor shared."
        }
        Label::ReplayYear => "Replay a year of weather (EPW file)",
        Label::TakeYearAway => "Take the year away",
        Label::OwnAir => "Use temperatures of my own",
        Label::OwnSun => "Use peak sun hours of my own",
        Label::PartMissed => "This part of the page could not be loaded. Is there a network?",
        Label::PasteLink => "Paste a link",
        Label::PeakLimit => "Peak limit of one battery",
        Label::PeakSunHours => "Peak sun hours a day",
        Label::PlaceName => "Name of the place",
        Label::Plans => "Plans",
        Label::PowerFactorHint => {
            "On mains: 1 for heaters, 0.6 to 0.8 for motors, 0.5 to 0.7 for small supplies."
        }
        Label::PowerIsStated => "How the power is stated",
        Label::ProtectionCircuits => "Protection circuits",
        Label::Pwm => "Series-regulating (PWM)",
        Label::Questions => "Your plan",
        Label::RatingsAndSetPoints => "Rated capacities and set-points",
        Label::ReadTheCurve => "Read the curve hour by hour",
        Label::RecordLowHint => {
            "The coldest night on record. In the cold an array's voltage rises, and may destroy its controller."
        }
        Label::Redo => "Redo",
        Label::ReferenceHint => {
            "The air for which the duty or the label was stated; 25 °C is usual."
        }
        Label::RemainingTime => "State of charge from now on",
        Label::RemoveHours => "Remove these hours",
        Label::ReserveHint => {
            "Charge you mean to keep in the bank. With 20 % kept, the depth of discharge is 80 %."
        }
        Label::ReserveWord => "Reserve",
        Label::SaveFile => "Save as a file",
        Label::SaveRefused => "The browser did not let the page save a file.",
        Label::ScrubHint => "Slide along the curve to read any hour.",
        Label::SearchAppliance => "What do you use?",
        Label::SearchTown => "Search a town, island, station or sea",
        Label::SecondCapacityHint => "Sheets state several, each with its hours.",
        Label::Shade => "Shade",
        Label::ShadeAfternoon => "After 14 h by the sun",
        Label::ShadeHint => "Share of the light that a mast, trees or hills take away.",
        Label::ShadeMidday => "From 10 to 14 h by the sun",
        Label::ShadeMorning => "Before 10 h by the sun",
        Label::Share => "Share",
        Label::SheetFirst => "Typical values stand in grey. The maker's sheet comes first.",
        Label::Shore => "Shore power",
        Label::ShoreHint => "What the mains charger gives at most. Set below when there is mains.",
        Label::SmallPrint => {
            "These are planning figures, not an installation design. Batteries, cables and gases can burn: follow the makers' instructions and local codes, and let a licensed person check high-current and mains work."
        }
        Label::StandingDraw => "Standing draw",
        Label::StandingHint => {
            "All small things that are always on together: clocks, alarms, sensors."
        }
        Label::StartTime => "Time",
        Label::StartWords => {
            "Pick what comes nearest and see how long it lasts. Everything can be changed, and nothing leaves this device."
        }
        Label::StorageRefused => {
            "This device does not keep the plan: its storage is full or refused. Save it as a file or copy the link before you leave."
        }
        Label::StoredPlanUnreadable => {
            "Your last plan could not be read. It is kept untouched under Plans."
        }
        Label::StringsInParallel => "Strings in parallel",
        Label::SummerTime => "Summer time",
        Label::SunAndTemperature => "Sun and temperature, month by month",
        Label::SurgeHint => {
            "How many times its power it takes at the start; 1 for none. Motors take 3 to 7."
        }
        Label::TailHint => "Charging ends here: share of the rated capacity in an hour.",
        Label::TakeNewVersion => "Use it now",
        Label::TemperaturesAndGround => "Temperatures and ground",
        Label::ThereIsAGenerator => "There is a generator",
        Label::ThereIsATurbine => "There is a wind or water turbine",
        Label::ThereIsAnAlternator => "The engine charges",
        Label::ThereIsAnInverter => "There is an inverter",
        Label::ThereIsShore => "There is shore power or mains",
        Label::TiltHint => "0 is flat, 90 upright.",
        Label::Time => "Time",
        Label::TryAgain => "Try again",
        Label::Turbine => "Wind or water",
        Label::TurbineHint => "What reaches the bank in the mean of each month.",
        Label::Undo => "Undo",
        Label::UnnamedPlan => "Plan without a name",
        Label::UnreadablePlan => "A plan that cannot be read",
        Label::Until => "Until",
        Label::UntilEmpty => "Until empty",
        Label::UntilFull => "Until full",
        Label::UntilReserve => "Until the reserve",
        Label::Verdict => "The answer",
        Label::Vital => "A life may depend on it",
        Label::WhatArePlanning => "What are you planning?",
        Label::WhatWouldHelp => "What would help?",
        Label::AddReading => "Add this reading",
        Label::AdoptLearned => "Take it over into a variant",
        Label::AsRead => "as read",
        Label::CareOfBank => "Upkeep and winter lay-up",
        Label::DatesTell => "the dates tell it",
        Label::DatesWithDay => "the day",
        Label::DatesWithMonth => "the month",
        Label::DayOfReading => "Day",
        Label::DoesGaugeAgree => "Does the gauge agree?",
        Label::GaugeShows => "The gauge shows",
        Label::GaugeWasTold => "What the gauge was told",
        Label::GoOnFromReading => "Start the plan at the newest reading",
        Label::InDatesFirst => "First in each date",
        Label::NoReadings => {
            "No readings yet. Two a day, at dusk and at dawn, tell most; two weeks of them find most faults."
        }
        Label::PasteReadings => "Paste a table",
        Label::PasteReadingsHint => {
            "A reading a line: date, time, percentage or amp-hours, volts, amps. Headings help. The text stays here until all of it is taken."
        }
        Label::ReadingNeeds => "Note at least one of charge, voltage and current.",
        Label::ReadingTaken => "The reading was added.",
        Label::ReadingGone => "The reading was removed.",
        Label::DayToCome => {
            "The newest of these days has not come yet. Correct its date; nothing was taken."
        }
        Label::ReadingsGone => "The readings were removed.",
        Label::ReadingsOfGauge => "Readings",
        Label::ReadingsTaken => "The table was taken.",
        Label::RemoveReading => "Remove this reading",
        Label::RemoveReadings => "Remove all readings",
        Label::StartFromSymptom => "Start from what you see",
        Label::StartMoved => "The plan starts at the newest reading.",
        Label::TakeReadings => "Take the table",
        Label::WhatReadingsSay => "What the readings say",
        Label::WhatYouSee => "What do you see?",
        Label::HowDoYouFitIt => "How do you fit it?",
        Label::WiredBy => "By the tables of",
        Label::WiredMarine => "boats",
        Label::WiredVehicle => "vehicles",
        Label::WiredLand => "buildings",
        Label::InsulationFor => "Insulation of the cables",
        Label::Insulation60 => "60 °C",
        Label::Insulation75 => "75 °C",
        Label::Insulation90 => "90 °C",
        Label::Insulation105 => "105 °C",
        Label::LieTogether => "Conductors side by side",
        Label::LieAlone => "each alone in free air",
        Label::LieUpTo6 => "four to six",
        Label::LieUpTo24 => "seven to 24",
        Label::LieMore => "more",
        Label::InEngineSpace => "Bank and cables stand beside an engine",
        Label::RunLengths => "Lengths of the cables",
        Label::RulesOfWiring => "Tables and surroundings",
        Label::PrintFitting => "Print the fitting sheet",
        Label::OneLineDiagram => "One-line diagram",
        Label::FittingDeference => {
            "Planning figures, rounded to the safe side; not the design of an installation. Local codes, makers’ instructions and licensed practice come first. Whatever carries mains voltage is for a licensed person."
        }
        Label::HowDoYouSetUpTheGauge => "How do you set up the gauge?",
        Label::PrintCommissioning => "Print the commissioning sheet",
        Label::WhatWasMeasured => "What was measured",
        Label::SeeItFooled => "Sliders to see it being fooled",
        Label::WhatIsPromised => "What shall it keep?",
        Label::PromisedThrough => "No short day in a year",
        Label::PromisedShortDays => "Few short days in ten years",
        Label::PromisedWithoutSun => "Days without any sun",
        Label::PromisedTrip => "A trip from full",
        Label::MonthsThatCount => "Months that count",
        Label::PricesAndWeights => "Prices and weights",
        Label::PricesHint => {
            "None are built in. With yours the cheapest and the lightest size are found, and what would help is ranked by what it costs."
        }
        Label::BankAgainstArray => "Bank against array",
        Label::ReadTheMap => "Read the map of sizes",
        Label::MapHint => "Touch the map, or use the arrow keys on it, to try a size.",
        Label::TakeThisSize => "Take this size",
        Label::SizeTaken => "Size taken.",
        Label::AsItIs => "as planned",
        Label::SystemVoltage => "System voltage",
        Label::LoadsAtOnce => "Largest current to the loads",
        Label::ArraysAtOnce => "Current from the arrays in full sun",
        Label::OtherVoltages => "12, 24 or 48 V",
        Label::OtherVoltagesHint => {
            "At twice the voltage the same power needs half the current, and a cable a quarter of the copper for the same share lost."
        }
        Label::HowSizes => "How this is worked out",
        Label::DoThis => "Do this",
        Label::WhatComesIn => "What comes in?",
        Label::WhatDoYouRun => "What do you run?",
        Label::WhatDoYouStore => "What do you store?",
        Label::When => "When it is on",
        Label::WhereAndWhen => "Where and when?",
        Label::WhereIAm => "Where I am",
        Label::WhichTiltIsBest => "Which tilt is best?",
        Label::WithoutSun => "No sun at all",
        Label::AirOfMonths => "Mean air temperature",
        Label::StateOfCharge => "State of charge",
        Label::WorldMap => "Map of the world",
        Label::WorldMapHint => {
            "Tap the map to go there. Arrow keys move by one degree, with the shift key by ten."
        }
        Label::BigCode => "Show it large",
        Label::CsvDark => "Save the run without sun (CSV)",
        Label::CsvMean => "Save the run in mean weather (CSV)",
        Label::DropHere => "Drop it here to open the plan",
        Label::DropHint => {
            "You can also drop a file or a link anywhere on this page. What is open now stays under Plans."
        }
        Label::NothingToOpen => {
            "There is no plan in what was dropped: drop a plan file, or its link."
        }
        Label::PrintSheet => "Print the sheet",
        Label::ScanCode => "Scan to open this plan",
        Label::SendLink => "Send…",
        Label::KeptUnderPlans => "What was open before stays under Plans.",
        Label::UndoOpens => "This device keeps no plans. Undo brings back what was open before.",
        Label::AsIsTypical => "typical",
        Label::Compare => "Compare with another plan",
        Label::CompareHint => {
            "With a baseline, every figure and curve says how it differs from it. It stays until you take it away, on this device only."
        }
        Label::KeepAsBaseline => "Keep this as the baseline",
        Label::AsBaseline => "As the baseline",
        Label::ClearBaseline => "Compare no more",
        Label::BaselinePercent => "Baseline, %",
        Label::BaselineBalance => "Baseline, balance, Ah",
        Label::NoOtherPlan => {
            "There is no other plan on this device. Make a variant of this one under Plans, or paste a link."
        }
        Label::SideBySide => "Side by side",
        Label::BackToPlan => "Back to the plan",
        Label::BackToPlanHint => {
            "What runs, what stores and what comes in: the plan that all of this follows from."
        }
        Label::ToInstalled => "Fit it, set up its gauge, see whether it agrees",
        Label::ToInstalledHint => {
            "The installed system has a page of its own. Once opened, it works without a network, too."
        }
        Label::AnotherPlan => "Another plan",
        Label::PrintThis => "Print",
        Label::Figure => "Figure",
        Label::EveryFigure => "Every figure",
        Label::WhatDiffers => "What differs",
        Label::NothingDiffers => "Both plans state the same.",
        Label::Difference => "Difference",
        Label::OnesPlan => "The plan beside this one cannot be worked out.",
        Label::Variants => "Variants of this plan",
        Label::MakeVariant => "Make a variant",
        Label::NameOfVariant => "Name of a new variant",
        Label::BringBack => "Bring the deleted plan back",
        Label::GuessFirst => "Guess first",
        Label::AnswerIsNever => {
            "In this plan that never comes, which nobody can guess: ask for something else."
        }
        Label::GuessHint => {
            "For a workshop: the answer hides until people have guessed. The guesses stay on this device and go with the page."
        }
        Label::GuessWhat => "What is guessed?",
        Label::GuessHours => "Hours until the reserve",
        Label::GuessCharge => "Amp-hours a day",
        Label::GuessMonth => "First month that falls short",
        Label::YourGuess => "Guess",
        Label::YourName => "Name, if you like",
        Label::AddGuess => "Add the guess",
        Label::Reveal => "Reveal the answer",
        Label::HideAgain => "Hide the answer again",
        Label::Guesses => "Guesses",
        Label::WhatIsKnown => "What is known",
        Label::LinkToQuestion => "Link that opens it as a question",
        Label::TakeOut => "Take out",
        Label::TheAnswer => "The answer",
        Label::Near => "Near",
        Label::MiddleGuess => "Middle guess",
        Label::BaselineBalanceWh => "Baseline, balance, Wh",
        Label::LargestFirst => "Largest first",
        Label::CatalogueWaits => {
            "What stands under the answer has to be put right before the catalogue opens."
        }
        Label::Daytime => "Daytime",
        Label::Evening => "Evening",
        Label::Night => "Night",
        Label::Done => "Done",
        Label::DrawHours => "Hours of the day, to be drawn",
        Label::DrawHint => {
            "Draw over the hours to switch them on or off. With keys: arrows move, space switches, Shift with an arrow draws."
        }
        Label::GroupName => "Group",
        Label::GroupHint => {
            "A name of your own, such as Galley. Loads of one group stand together."
        }
        Label::NoGroup => "Without a group",
        Label::SameForAll => "Same for all",
        Label::Typical => "typical",
        Label::YearCarpet => "The year, hour by hour",
        Label::ReadTheYear => "An hour of the year",
        Label::YearHint => {
            "Touch an hour to read it. Keys: left and right by a day, up and down by an hour."
        }
        Label::OneWeatherYear => "One year of weather",
        Label::OneWeatherYearHint => {
            "One year of weather as it may be, not a forecast. Dull weeks fall elsewhere in another."
        }
        Label::AnotherWeatherYear => "Another such year",
        Label::DayFlow => "Where it comes from and where it goes",
        Label::ReadTheDay => "An hour of the day",
        Label::SavePicture => "Save as SVG",
        Label::SavePhoto => "Save as PNG",
        Label::NoCurve => {
            "No curve is drawn, because the plan cannot work as it stands. The reason is above; put it right, and the curve comes."
        }
        Label::OwnYearPercent => "The year you brought, %",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_label_says_something_of_its_own_length() {
        for one in Label::ALL {
            let text = label(*one);
            assert!(!text.trim().is_empty() && text == text.trim(), "{one:?}");
        }
    }
}
