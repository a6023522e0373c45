//! Days that follow each other by a table of chances between ten states.
//!
//! Aguiar, Collares-Pereira & Conde 1988, Solar Energy 40:269-279, doi:10.1016/0038-092X(88)90049-7; the printed tables are in
//! `tests/reference/transitions.csv`.

/// States of a table.
pub const STATES: usize = 10;

/// Rounds after which the shares of the states no longer move.
const ROUNDS: usize = 500;

/// A table of one class of months.
#[derive(Clone, Debug, PartialEq)]
pub struct Transitions {
    rows: [[f64; STATES]; STATES],
}

impl Transitions {
    /// The table of a class, its rounded rows made to add up to one.
    ///
    /// # Errors
    /// A text without that class, or with figures that are none.
    pub fn of_class(text: &str, class: u8) -> Result<Self, String> {
        let mut rows = [[0.0; STATES]; STATES];
        let mut found = 0;
        for line in text.lines().filter(|line| !line.starts_with('#')).skip(1) {
            let figures: Vec<f64> = line
                .split(',')
                .map(|figure| figure.parse().map_err(|error| format!("{line}: {error}")))
                .collect::<Result<_, String>>()?;
            let [own, place, chances @ ..] = figures.as_slice() else {
                return Err(format!("{line}: too short"));
            };
            if *own != f64::from(class) || chances.len() != STATES {
                continue;
            }
            let sum: f64 = chances.iter().sum();
            let row = rows.get_mut(*place as usize - 1).ok_or("a row too many")?;
            for (to, chance) in row.iter_mut().zip(chances) {
                *to = chance / sum;
            }
            found += 1;
        }
        if found == STATES {
            Ok(Self { rows })
        } else {
            Err(format!("class {class}: {found} rows"))
        }
    }

    /// Share of days in each state in the long run.
    #[must_use]
    pub fn stationary(&self) -> [f64; STATES] {
        let mut shares = [1.0 / STATES as f64; STATES];
        for _ in 0..ROUNDS {
            shares = core::array::from_fn(|to| {
                self.rows.iter().zip(shares).map(|(row, share)| share * row[to]).sum()
            });
        }
        shares
    }

    /// Mean, standard deviation and correlation of days that follow each other, of a clearness spread evenly within each of
    /// ten equal states between two bounds.
    #[must_use]
    pub fn statistics(&self, low: f64, high: f64) -> (f64, f64, f64) {
        let width = (high - low) / STATES as f64;
        let middle: [f64; STATES] =
            core::array::from_fn(|state| low + width * (state as f64 + 0.5));
        let shares = self.stationary();
        let mean: f64 = shares.iter().zip(middle).map(|(share, middle)| share * middle).sum();
        let squares: f64 = shares.iter().zip(middle).map(|(share, k)| share * k * k).sum();
        let variance = squares - mean * mean + width * width / 12.0;
        let next = |row: &[f64; STATES]| -> f64 {
            row.iter().zip(middle).map(|(chance, k)| chance * k).sum()
        };
        let together: f64 =
            self.rows.iter().zip(shares).zip(middle).map(|((row, s), k)| s * k * next(row)).sum();
        (mean, variance.sqrt(), (together - mean * mean) / variance)
    }
}
