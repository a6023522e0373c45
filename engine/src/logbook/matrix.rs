//! Symmetric positive matrices of a few rows: their triangular root, and what follows from it.

/// The lower triangular root of a symmetric positive matrix.
#[derive(Clone, Debug)]
pub(super) struct Root {
    size: usize,
    cells: Vec<f64>,
}

impl Root {
    /// The root of a matrix of so many rows; none if it is not positive.
    pub(super) fn of(matrix: &[f64], size: usize) -> Option<Self> {
        let mut cells = vec![0.0; size * size];
        for row in 0..size {
            for column in 0..=row {
                let mut sum = matrix[row * size + column];
                for at in 0..column {
                    sum -= cells[row * size + at] * cells[column * size + at];
                }
                cells[row * size + column] = if row != column {
                    sum / cells[column * size + column]
                } else if sum > 0.0 {
                    sum.sqrt()
                } else {
                    return None;
                };
            }
        }
        Some(Self { size, cells })
    }

    fn at(&self, row: usize, column: usize) -> f64 {
        self.cells[row * self.size + column]
    }

    /// Half the logarithm of the determinant of the matrix.
    pub(super) fn half_log_determinant(&self) -> f64 {
        (0..self.size).map(|at| libm::log(self.at(at, at))).sum()
    }

    /// The solution of the matrix times x = b.
    pub(super) fn solve(&self, b: &[f64]) -> Vec<f64> {
        let mut x = b.to_vec();
        for row in 0..self.size {
            for at in 0..row {
                x[row] -= self.at(row, at) * x[at];
            }
            x[row] /= self.at(row, row);
        }
        for row in (0..self.size).rev() {
            for at in row + 1..self.size {
                x[row] -= self.at(at, row) * x[at];
            }
            x[row] /= self.at(row, row);
        }
        x
    }

    /// One cell of the diagonal of the inverse.
    pub(super) fn inverse_at(&self, place: usize) -> f64 {
        let mut unit = vec![0.0; self.size];
        if let Some(one) = unit.get_mut(place) {
            *one = 1.0;
        }
        self.solve(&unit).get(place).copied().unwrap_or(0.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn it_solves_and_inverts() {
        let matrix = [4.0, 2.0, 0.6, 2.0, 3.0, 0.4, 0.6, 0.4, 2.0];
        let root = Root::of(&matrix, 3).unwrap();
        let x = root.solve(&[1.0, -2.0, 0.5]);
        for row in 0..3 {
            let back: f64 = (0..3).map(|at| matrix[row * 3 + at] * x[at]).sum();
            assert!((back - [1.0, -2.0, 0.5][row]).abs() < 1e-12, "{x:?}");
        }
        // By cofactors: det 15.008, first cell of the inverse (3 · 2 − 0.4²) / det.
        let determinant = 4.0 * (6.0 - 0.16) - 2.0 * (4.0 - 0.24) + 0.6 * (0.8 - 1.8);
        assert!((root.inverse_at(0) - 5.84 / determinant).abs() < 1e-12);
        assert!((root.half_log_determinant() - libm::log(determinant) / 2.0).abs() < 1e-12);
        assert!(Root::of(&[1.0, 2.0, 2.0, 1.0], 2).is_none());
    }
}
