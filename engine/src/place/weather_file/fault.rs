//! What can be wrong with a weather file.

/// Larger files are refused unread; a year of hours has about 1.6 MB.
pub const MAX_FILE_BYTES: usize = 8_000_000;

/// What is read from a weather file.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Column {
    /// Latitude, in the first line \[°\].
    Latitude,
    /// Longitude, in the first line \[°\].
    Longitude,
    /// What standard time is ahead of universal time, in the first line \[h\].
    TimeZone,
    /// Records an hour, in the eighth line.
    RecordsPerHour,
    /// Month of an hour.
    Month,
    /// Its day.
    Day,
    /// Its number, 1 to 24.
    Hour,
    /// Air temperature (dry bulb) \[°C\].
    Air,
    /// Global irradiance on the horizontal \[W/m²\].
    Global,
    /// Direct normal irradiance \[W/m²\].
    DirectNormal,
    /// Diffuse irradiance on the horizontal \[W/m²\].
    Diffuse,
}

impl Column {
    /// All of them.
    pub const ALL: [Self; 11] = [
        Self::Latitude,
        Self::Longitude,
        Self::TimeZone,
        Self::RecordsPerHour,
        Self::Month,
        Self::Day,
        Self::Hour,
        Self::Air,
        Self::Global,
        Self::DirectNormal,
        Self::Diffuse,
    ];

    /// Its place in the line, from 1.
    #[must_use]
    pub const fn place(self) -> usize {
        match self {
            Self::Latitude | Self::Air => 7,
            Self::Longitude => 8,
            Self::TimeZone => 9,
            Self::RecordsPerHour | Self::Day => 3,
            Self::Month => 2,
            Self::Hour => 4,
            Self::Global => 14,
            Self::DirectNormal => 15,
            Self::Diffuse => 16,
        }
    }

    /// The least and the most that is accepted. Temperatures are those of the format; more irradiance than 2000 W/m² reaches no
    /// place on earth, even between bright clouds.
    #[must_use]
    pub const fn range(self) -> (f64, f64) {
        match self {
            Self::Latitude => (-90.0, 90.0),
            Self::Longitude => (-180.0, 180.0),
            Self::TimeZone => (-12.0, 14.0),
            Self::RecordsPerHour => (1.0, 1.0),
            Self::Month => (1.0, 12.0),
            Self::Day => (1.0, 31.0),
            Self::Hour => (1.0, 24.0),
            Self::Air => (-70.0, 70.0),
            Self::Global | Self::DirectNormal | Self::Diffuse => (0.0, 2000.0),
        }
    }

    /// The number by which the format says that nothing was measured.
    #[must_use]
    pub const fn missing(self) -> Option<f64> {
        match self {
            Self::Air => Some(99.9),
            Self::Global | Self::DirectNormal | Self::Diffuse => Some(9999.0),
            _ => None,
        }
    }
}

/// Why a weather file is refused. Lines count from 1. Words for it are in `words`.
#[derive(Clone, Debug, PartialEq)]
pub enum WeatherFileFault {
    /// Too many bytes to be a year of hours.
    TooLarge {
        /// How many.
        bytes: usize,
    },
    /// The first line is not that of a weather file.
    NotWeather,
    /// A line ends before the column.
    NoColumn {
        /// The line.
        line: usize,
        /// What should be there.
        column: Column,
    },
    /// Something else than a number.
    NotANumber {
        /// The line.
        line: usize,
        /// What should be there.
        column: Column,
        /// What is there, at most the first 20 characters.
        found: String,
    },
    /// A number that cannot be.
    OutOfRange {
        /// The line.
        line: usize,
        /// What it is.
        column: Column,
        /// The number; [`Column::range`] has the limits.
        value: f64,
    },
    /// The file says that this was not measured.
    NotMeasured {
        /// The line.
        line: usize,
        /// What was not.
        column: Column,
    },
    /// Another hour than the next one.
    WrongHour {
        /// The line.
        line: usize,
        /// Month, day and hour that should follow.
        expected: [u8; 3],
        /// Month, day and hour that are there.
        found: [u8; 3],
    },
    /// The file ends before the year does.
    Incomplete {
        /// Hours that it has.
        hours: usize,
    },
    /// More after the last hour of the year.
    TooLong {
        /// The first line too many.
        line: usize,
    },
}
