//! What stands around a place and hides the sun and part of the sky: hills, trees, houses.
//!
//! **Method.** The elevation of the horizon is known in twelve directions, and straight in between. While the sun stands under it,
//! the beam is lost, and with it the bright ring around the sun. The rest of the diffuse light is lost in the share of the sky that
//! is hidden from a level plane in an evenly bright sky: the mean of sin²h over all directions.
//!
//! **Range.** A step's beam is lost or kept as a whole, by the sun in its middle. For a steep plane that looks at the obstacle the
//! diffuse loss is larger than this, for one that looks away smaller; what the obstacle itself throws back is left out, which
//! makes up for part of it.

use super::day::SkyStep;
use crate::quantity::{Degrees, Irradiance, Within};

/// Directions in which it is known.
const DIRECTIONS: usize = 12;
/// Between two of them \[°\].
const STEP: f64 = 360.0 / DIRECTIONS as f64;
/// Pieces between two directions, for the mean over all of them: finer changes nothing that counts.
const PIECES: usize = 6;

/// A horizon.
#[derive(Clone, Debug, PartialEq)]
pub struct Horizon {
    elevations: [Degrees; DIRECTIONS],
    /// Share of the diffuse light of the sky that is left (ratio).
    sky_left: f64,
}

impl Horizon {
    /// From elevations every 30° clockwise from north.
    #[must_use]
    pub fn new(elevations: [Degrees; DIRECTIONS]) -> Self {
        let level = Self { elevations, sky_left: 1.0 };
        let all = DIRECTIONS * PIECES;
        let hidden = (0..all).map(|at| {
            let direction = Degrees(at as f64 * STEP / PIECES as f64);
            let sine = libm::sin(level.elevation(direction).radians());
            sine * sine
        });
        let hidden = hidden.sum::<f64>() / all as f64;
        Self { sky_left: 1.0 - hidden, ..level }
    }

    /// How high it stands in a direction, clockwise from north.
    #[must_use]
    pub fn elevation(&self, direction: Degrees) -> Degrees {
        let at = direction.0.turned(360.0) / STEP;
        let first = (at as usize) % DIRECTIONS;
        let (from, to) = (self.elevations[first], self.elevations[(first + 1) % DIRECTIONS]);
        from + (to - from) * (at - first as f64).within(0.0, 1.0)
    }

    /// Whether it hides the sun in a direction of the unit vector east, north, up.
    #[must_use]
    pub fn hides(&self, [east, north, up]: [f64; 3]) -> bool {
        let level = (east * east + north * north).sqrt();
        let turned = if level > 0.0 { libm::acos((north / level).within(-1.0, 1.0)) } else { 0.0 };
        let direction = Degrees((if east < 0.0 { -turned } else { turned }).to_degrees());
        up < libm::sin(self.elevation(direction).radians())
    }

    /// A step of the sky as it is seen from inside this horizon.
    #[must_use]
    pub fn around(&self, step: &SkyStep) -> SkyStep {
        let hidden = step.beam.0 > 0.0 && self.hides(step.toward_sun);
        if hidden {
            let rest = step.diffuse * (1.0 - step.anisotropy());
            return SkyStep { beam: Irradiance::ZERO, diffuse: rest * self.sky_left, ..*step };
        }
        let ring = step.diffuse * step.anisotropy();
        let diffuse = ring + (step.diffuse - ring) * self.sky_left;
        SkyStep { diffuse, ..*step }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::{Celsius, Hours};
    use crate::sky::{DaySpec, SkyDay, mean_day};
    use crate::sun::Site;

    fn day(latitude: f64, day_of_year: u16) -> SkyDay {
        let spec = DaySpec {
            site: Site { latitude: Degrees(latitude), longitude: Degrees(0.0) },
            day_of_year,
            utc_offset: Hours(0.0),
            clearness: 0.5,
            mean_temperature: Celsius(10.0),
        };
        mean_day(&spec, &mut ())
    }

    fn beam(day: &SkyDay, horizon: &Horizon) -> f64 {
        day.steps.iter().map(|step| horizon.around(step).beam.0).sum()
    }

    #[test]
    fn a_level_horizon_takes_nothing() {
        let level = Horizon::new([Degrees::ZERO; 12]);
        for step in &day(47.0, 355).steps {
            let seen = level.around(step);
            assert_eq!((seen.beam, seen.toward_sun), (step.beam, step.toward_sun));
            assert!((seen.diffuse - step.diffuse).0.abs() < 1e-12);
        }
    }

    #[test]
    fn an_even_wall_leaves_the_textbook_share_of_the_sky() {
        for wall in [5.0, 20.0, 45.0, 80.0] {
            let horizon = Horizon::new([Degrees(wall); 12]);
            let left = libm::cos(Degrees(wall).radians());
            assert!((horizon.sky_left - left * left).abs() < 1e-12, "cos² of {wall}°");
        }
    }

    #[test]
    fn directions_in_between_are_straight_and_go_round() {
        let mut elevations = [Degrees::ZERO; 12];
        (elevations[0], elevations[11]) = (Degrees(30.0), Degrees(10.0));
        let horizon = Horizon::new(elevations);
        for (direction, elevation) in
            [(0.0, 30.0), (15.0, 15.0), (345.0, 20.0), (-15.0, 20.0), (360.0, 30.0), (180.0, 0.0)]
        {
            let found = horizon.elevation(Degrees(direction)).0;
            assert!((found - elevation).abs() < 1e-9, "{direction}: {found}");
        }
    }

    #[test]
    fn a_hill_in_the_south_hides_the_winter_noon_and_not_the_summer_one() {
        let mut elevations = [Degrees::ZERO; 12];
        (elevations[5], elevations[6], elevations[7]) =
            (Degrees(25.0), Degrees(25.0), Degrees(25.0));
        let (hill, level) = (Horizon::new(elevations), Horizon::new([Degrees::ZERO; 12]));
        // At 47° north the sun stands 19.6° high at noon of the shortest day and 66.4° of the longest.
        let (winter, summer) = (day(47.0, 355), day(47.0, 172));
        let noon = |day: &SkyDay| {
            *day.steps.iter().max_by(|a, b| a.toward_sun[2].total_cmp(&b.toward_sun[2])).unwrap()
        };
        assert!(hill.hides(noon(&winter).toward_sun) && !hill.hides(noon(&summer).toward_sun));
        assert!(beam(&winter, &hill) < 0.4 * beam(&winter, &level));
        assert_eq!(beam(&summer, &hill), beam(&summer, &level));
    }

    #[test]
    fn a_higher_horizon_never_gives_more() {
        let day = day(52.0, 80);
        let light = |wall: f64| {
            let horizon = Horizon::new([Degrees(wall); 12]);
            day.steps.iter().map(|step| horizon.around(step).global().0).sum::<f64>()
        };
        let walls: Vec<f64> = (0..=80).map(|wall| light(f64::from(wall))).collect();
        assert!(walls.windows(2).all(|pair| pair[1] <= pair[0]) && walls[80] < 0.05 * walls[0]);
    }
}
