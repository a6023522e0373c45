//! The climate of the earth in cells of 5 degrees.
//!
//! **What.** Monthly clearness, spread of daily irradiation and air temperature on a grid of 36 by 72 cells, read
//! bilinearly; longitudes wrap, and the poles are the mean of their row. [`Climate`] holds what every plan needs,
//! [`SpreadGrid`] what only weather that varies needs, so that a page may load it later.
//!
//! **Origin.** Clearness: MERRA-2 daily irradiation of 2011 to 2015 (NASA, public domain), corrected by a regression on
//! 1199 typical-year stations and their smoothed residuals; over oceans the available-radiation maps of Esbensen and
//! Kushnir 1981, fitted on coasts. Temperature: ERA5, 2000 to 2025 (Copernicus Climate Change Service).
//!
//! **How good.** Monthly irradiation against 801 typical-year stations: 9.0 % (root of the mean square difference over
//! the mean irradiation; 10.7 % of each month's own figure), bias 0.9 %; against 31 measured records that were never used:
//! 14.9 % (16.5 %), bias 1.5 %. A test prints and holds these figures; two typical-year files of one place already differ
//! by 6 %. Weak: the darkest month (20 to 24 %), snowy continental winters (up to 15 % too dark), the humid Guinea coast
//! (too bright), coasts, fog and mountain basins smaller than 250 km, spring and autumn beyond 67.5° N, oceans (15 %).
//! Temperature: 2.1 K; mountains 5 K.
//!
//! **Form.** A cell's year is kept as the twelve waves it consists of (its mean, and cosine and sine of one to six turns a
//! year), each in steps of [`Field::step`], one byte with its sign. Seasons are few and slow waves, and neighbours have
//! like ones: a byte is the difference (modulo 256) to a guess from the west, the south-west and the south of it, so that
//! the host's compression finds mostly zeros: 65 kB and 31 kB that brotli brings to 10 kB and 5 kB. The steps move a
//! month's clearness by 0.006 (root mean square; a hundredth of it), its temperature by 0.4 K and its spread by 0.004,
//! small beside what the figures are good for; `pack_climate` prints them.

use super::climate::{MonthlyClimate, Origin, TemperatureOrigin};
use crate::quantity::{Celsius, Within};
use crate::sun::Site;

/// Cells from south to north.
pub const CELLS_NORTH: usize = 36;
/// Cells from west to east.
pub const CELLS_EAST: usize = 72;
/// Size of a cell \[°\].
const CELL: f64 = 5.0;
/// Centre of the southernmost cells and of the westernmost \[°\].
const FIRST: (f64, f64) = (-87.5, -177.5);

const LAYER: usize = CELLS_NORTH * CELLS_EAST;
const MONTHS: usize = 12;

/// Bytes of a [`Climate`], packed or not: twelve layers each of clearness and temperature, then that of the origins.
pub const CLIMATE_BYTES: usize = (2 * MONTHS + 1) * LAYER;
/// Bytes of a [`SpreadGrid`], packed or not: twelve layers.
pub const SPREAD_BYTES: usize = MONTHS * LAYER;

/// What the grids hold by month.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// Mean irradiation over that outside the air.
    Clearness,
    /// Mean air temperature \[°C\].
    Temperature,
    /// Standard deviation of daily irradiation over that outside the air.
    Spread,
}

impl Field {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Clearness, Self::Temperature, Self::Spread];

    /// What a wave's byte counts.
    #[must_use]
    pub const fn step(self) -> f64 {
        match self {
            Self::Clearness => 0.008,
            Self::Temperature => 0.7,
            Self::Spread => 0.006,
        }
    }

    /// The waves of a year, as bytes; none if one does not fit.
    #[must_use]
    pub fn waves(self, months: [f64; MONTHS]) -> Option<[u8; MONTHS]> {
        let mut waves = [0; MONTHS];
        for (wave, byte) in waves.iter_mut().enumerate() {
            let share: f64 = (0..MONTHS).map(|month| months[month] * swing(wave, month)).sum();
            // The mean and the fastest wave have no sine beside them.
            let whole = if wave == 0 || wave == MONTHS - 1 { 12.0 } else { 6.0 };
            let steps = libm::rint(share / whole / self.step());
            if !(-128.0..=127.0).contains(&steps) {
                return None;
            }
            *byte = (steps as i8).cast_unsigned();
        }
        Some(waves)
    }
}

/// How far a wave of height 1 is out in a month: the mean, then cosine and sine of one turn a year, of two and so on.
fn swing(wave: usize, month: usize) -> f64 {
    const HALF_ROOT_3: f64 = 0.866_025_403_784_438_6;
    /// Of every twelfth of a turn.
    const COSINE: [f64; MONTHS] = [
        1.0,
        HALF_ROOT_3,
        0.5,
        0.0,
        -0.5,
        -HALF_ROOT_3,
        -1.0,
        -HALF_ROOT_3,
        -0.5,
        0.0,
        0.5,
        HALF_ROOT_3,
    ];
    let twelfths = wave.div_ceil(2) * month;
    // The sine is the cosine of a quarter before.
    let quarter = if wave > 0 && wave.is_multiple_of(2) { 9 } else { 0 };
    COSINE[(twelfths + quarter) % MONTHS]
}

/// Bytes that are no such grid, because there are too few or too many of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoGrid {
    /// How many there are.
    pub bytes: usize,
    /// How many there should be.
    pub expected: usize,
}

/// A first guess at a cell from those before it; see the head of this file.
fn guess(layer: &[u8], cell: usize) -> u8 {
    let wave = |cell: usize| i32::from(layer[cell].cast_signed());
    let (row, column) = (cell / CELLS_EAST, cell % CELLS_EAST);
    let expected = match (row, column) {
        (0, 0) => 0,
        (_, 0) => wave(cell - CELLS_EAST),
        (0, _) => wave(cell - 1),
        _ => {
            let (west, south) = (wave(cell - 1), wave(cell - CELLS_EAST));
            let slope = west + south - wave(cell - CELLS_EAST - 1);
            slope.clamp(west.min(south), west.max(south))
        }
    };
    // Modulo 256: packing and unpacking make the same guess, so that nothing is lost.
    expected.rem_euclid(256) as u8
}

/// Layer after layer, one byte a value; each from south to north, in rows from west to east.
#[derive(Clone, Debug)]
struct Layers(Vec<u8>);

impl Layers {
    /// Unpacks bytes of the right length, of which every content is a grid.
    fn read(packed: Vec<u8>, expected: usize) -> Result<Self, NoGrid> {
        if packed.len() == expected {
            Ok(Self::unpacked(packed))
        } else {
            Err(NoGrid { bytes: packed.len(), expected })
        }
    }

    /// Unpacks whole layers in place.
    fn unpacked(mut bytes: Vec<u8>) -> Self {
        for layer in bytes.chunks_exact_mut(LAYER) {
            for cell in 0..LAYER {
                layer[cell] = guess(layer, cell).wrapping_add(layer[cell]);
            }
        }
        Self(bytes)
    }

    /// The months of a field whose mean is that layer.
    fn months(&self, field: Field, mean: usize, spot: &Spot) -> [f64; MONTHS] {
        let waves: [f64; MONTHS] =
            core::array::from_fn(|wave| field.step() * spot.read(self.layer(mean + wave)));
        core::array::from_fn(|month| (0..MONTHS).map(|wave| waves[wave] * swing(wave, month)).sum())
    }

    fn layer(&self, place: usize) -> &[u8] {
        &self.0[place * LAYER..(place + 1) * LAYER]
    }
}

/// Packs layers of one byte a wave, each from south to north, in rows from west to east.
#[must_use]
pub fn pack(plain: &[u8]) -> Vec<u8> {
    let mut packed = Vec::with_capacity(plain.len());
    for layer in plain.chunks_exact(LAYER) {
        packed.extend((0..LAYER).map(|cell| layer[cell].wrapping_sub(guess(layer, cell))));
    }
    packed
}

/// Clearness and temperature of the earth, and where they come from.
#[derive(Clone, Debug)]
pub struct Climate(Layers);

impl Climate {
    /// Reads a packed grid.
    ///
    /// # Errors
    /// [`NoGrid`] unless there are [`CLIMATE_BYTES`].
    pub fn from_bytes(packed: Vec<u8>) -> Result<Self, NoGrid> {
        Layers::read(packed, CLIMATE_BYTES).map(Self)
    }

    /// The grid that is built in, unpacked at its first use.
    #[cfg(feature = "climate")]
    #[must_use]
    pub fn embedded() -> &'static Self {
        static EMBEDDED: std::sync::LazyLock<Climate> = std::sync::LazyLock::new(|| {
            const PACKED: &[u8; CLIMATE_BYTES] = include_bytes!("../../data/climate.bin");
            Climate(Layers::unpacked(PACKED.to_vec()))
        });
        &EMBEDDED
    }

    /// The climate of a place.
    #[must_use]
    pub fn at(&self, site: Site) -> MonthlyClimate {
        let spot = Spot::new(site);
        MonthlyClimate {
            site,
            clearness: self.0.months(Field::Clearness, 0, &spot),
            temperature: self.0.months(Field::Temperature, MONTHS, &spot).map(Celsius),
            origin: origin(self.0.layer(2 * MONTHS)[spot.nearest()]),
            temperature_origin: TemperatureOrigin::Reanalysis,
        }
    }
}

/// Day-to-day spread of the irradiation of the earth.
#[derive(Clone, Debug)]
pub struct SpreadGrid(Layers);

impl SpreadGrid {
    /// Reads a packed grid.
    ///
    /// # Errors
    /// [`NoGrid`] unless there are [`SPREAD_BYTES`].
    pub fn from_bytes(packed: Vec<u8>) -> Result<Self, NoGrid> {
        Layers::read(packed, SPREAD_BYTES).map(Self)
    }

    /// The grid that is built in, unpacked at its first use.
    #[cfg(feature = "climate")]
    #[must_use]
    pub fn embedded() -> &'static Self {
        static EMBEDDED: std::sync::LazyLock<SpreadGrid> = std::sync::LazyLock::new(|| {
            const PACKED: &[u8; SPREAD_BYTES] = include_bytes!("../../data/spread.bin");
            SpreadGrid(Layers::unpacked(PACKED.to_vec()))
        });
        &EMBEDDED
    }

    /// Standard deviation of a day's irradiation within each month over the month's irradiation outside the air, January
    /// first.
    #[must_use]
    pub fn at(&self, site: Site) -> [f64; MONTHS] {
        // Where no sun rises the waves may swing below nothing.
        self.0.months(Field::Spread, 0, &Spot::new(site)).map(|spread| spread.within(0.0, 1.0))
    }
}

fn origin(code: u8) -> Origin {
    match code {
        1 => Origin::Land,
        2 => Origin::Model,
        3 => Origin::Regression,
        4 => Origin::Ocean,
        _ => Origin::Guess,
    }
}

/// A row that lends to a spot.
#[derive(Clone, Copy, Debug)]
enum Row {
    /// The cells of a latitude.
    Cells(usize),
    /// A pole: the mean of that row.
    Pole(usize),
}

/// Where a place lies between the centres of cells.
#[derive(Clone, Copy, Debug)]
struct Spot {
    south: Row,
    north: Row,
    /// Weight of the northern row.
    northing: f64,
    west: usize,
    east: usize,
    /// Weight of the eastern column.
    easting: f64,
}

impl Spot {
    fn new(site: Site) -> Self {
        let last = (CELLS_NORTH - 1) as f64;
        let y = ((site.latitude.0 - FIRST.0) / CELL).within(-0.5, last + 0.5);
        let (south, north, northing) = if y < 0.0 {
            (Row::Pole(0), Row::Cells(0), 2.0 * y + 1.0)
        } else if y >= last {
            (Row::Cells(CELLS_NORTH - 1), Row::Pole(CELLS_NORTH - 1), 2.0 * (y - last))
        } else {
            let row = y as usize;
            (Row::Cells(row), Row::Cells(row + 1), y - row as f64)
        };
        let x = ((site.longitude.0 - FIRST.1) / CELL).turned(CELLS_EAST as f64);
        let column = x as usize;
        Self {
            south,
            north,
            northing,
            west: column % CELLS_EAST,
            east: (column + 1) % CELLS_EAST,
            easting: x - column as f64,
        }
    }

    /// The wave in steps and their fractions.
    fn read(&self, layer: &[u8]) -> f64 {
        let cell =
            |row: usize, column: usize| f64::from(layer[row * CELLS_EAST + column].cast_signed());
        let along = |row: Row| match row {
            Row::Cells(row) => {
                let (west, east) = (cell(row, self.west), cell(row, self.east));
                west + (east - west) * self.easting
            }
            Row::Pole(row) => {
                (0..CELLS_EAST).map(|column| cell(row, column)).sum::<f64>() / CELLS_EAST as f64
            }
        };
        let (south, north) = (along(self.south), along(self.north));
        // At a pole one of the two counts for all, and what the other is must not matter to the last bit.
        south * (1.0 - self.northing) + north * self.northing
    }

    /// The cell whose centre is nearest.
    fn nearest(&self) -> usize {
        let row = match (self.south, self.north) {
            (Row::Cells(south), Row::Cells(_)) if self.northing < 0.5 => south,
            (Row::Cells(_), Row::Cells(north)) => north,
            (Row::Pole(row), _) | (_, Row::Pole(row)) => row,
        };
        row * CELLS_EAST + if self.easting < 0.5 { self.west } else { self.east }
    }
}

#[cfg(all(test, feature = "climate"))]
mod tests {
    use super::*;
    use crate::quantity::Degrees;

    fn site(latitude: f64, longitude: f64) -> Site {
        Site { latitude: Degrees(latitude), longitude: Degrees(longitude) }
    }

    fn at(latitude: f64, longitude: f64) -> MonthlyClimate {
        Climate::embedded().at(site(latitude, longitude))
    }

    #[test]
    fn packing_loses_nothing() {
        let mut plain = vec![0; CLIMATE_BYTES];
        let mut state = 1_u32;
        for byte in &mut plain {
            state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            *byte = (state >> 24) as u8;
        }
        let grid = Climate::from_bytes(pack(&plain)).unwrap();
        assert!(grid.0.0 == plain);
    }

    #[test]
    fn a_grid_that_is_fetched_gives_the_bits_of_the_one_built_in() {
        let fetched = std::fs::read(concat!(env!("CARGO_MANIFEST_DIR"), "/data/climate.bin"));
        let fetched = Climate::from_bytes(fetched.unwrap()).unwrap();
        for (latitude, longitude) in [(69.65, 18.96), (-90.0, 0.0), (1.99, -157.48), (0.0, 179.9)] {
            let (one, other) = (fetched.at(site(latitude, longitude)), at(latitude, longitude));
            assert_eq!(one.clearness.map(f64::to_bits), other.clearness.map(f64::to_bits));
            assert_eq!(one, other);
        }
    }

    #[test]
    fn what_is_no_grid_is_refused() {
        let page = b"<!DOCTYPE html>".to_vec();
        let refusal = NoGrid { bytes: page.len(), expected: CLIMATE_BYTES };
        assert_eq!(Climate::from_bytes(page).unwrap_err(), refusal);
        let spread = vec![0; SPREAD_BYTES];
        assert!(SpreadGrid::from_bytes(spread.clone()).is_ok());
        assert!(Climate::from_bytes(spread).is_err());
    }

    #[test]
    fn longitudes_wrap_and_the_poles_are_one_place() {
        assert_eq!(at(10.0, 180.0).clearness, at(10.0, -180.0).clearness);
        assert_eq!(at(10.0, 365.0).clearness, at(10.0, 5.0).clearness);
        for pole in [-90.0, 90.0] {
            let (here, there) = (at(pole, 0.0), at(pole, 123.0));
            assert_eq!(here.clearness, there.clearness);
            assert_eq!(here.temperature, there.temperature);
        }
    }

    #[test]
    fn reading_is_continuous_across_cells() {
        // A step over a ten-millionth of a degree moves nothing by more than a thousandth of a byte's step.
        for (latitude, longitude) in [(87.5, 0.0), (-87.5, 2.5), (47.5, 177.5), (2.5, -177.5)] {
            let before = at(latitude - 1e-7, longitude - 1e-7);
            let after = at(latitude + 1e-7, longitude + 1e-7);
            for month in 0..MONTHS {
                assert!((before.clearness[month] - after.clearness[month]).abs() < 4e-6);
            }
        }
    }
}
