//! Columns of text: the first to the left, the others to the right, as wide as their widest cell.

/// Rows of cells, printed with two spaces before each column.
#[derive(Default)]
pub(crate) struct Table {
    rows: Vec<Vec<String>>,
}

impl Table {
    /// Adds a row.
    pub(crate) fn row<T: Into<String>>(&mut self, cells: impl IntoIterator<Item = T>) -> &mut Self {
        self.rows.push(cells.into_iter().map(Into::into).collect());
        self
    }

    /// The whole table; every row ends its line, and no line ends in spaces.
    pub(crate) fn text(&self) -> String {
        let columns = self.rows.iter().map(Vec::len).max().unwrap_or(0);
        let widths: Vec<usize> = (0..columns)
            .map(|column| {
                let cells = self.rows.iter().filter_map(|row| row.get(column));
                cells.map(|cell| cell.chars().count()).max().unwrap_or(0)
            })
            .collect();
        let mut text = String::new();
        for row in &self.rows {
            let mut line = String::new();
            for (place, (cell, width)) in row.iter().zip(&widths).enumerate() {
                let space = " ".repeat(width - cell.chars().count());
                let (before, after) =
                    if place == 0 { ("", space.as_str()) } else { (space.as_str(), "") };
                line.extend(["  ", before, cell, after]);
            }
            text.push_str(line.trim_end());
            text.push('\n');
        }
        text
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_stand_under_each_other() {
        let mut table = Table::default();
        table.row(["Lamp", "5 W", "12 Wh"]).row(["Kühlbox", "45 W", ""]);
        assert_eq!(table.text(), "  Lamp      5 W  12 Wh\n  Kühlbox  45 W\n");
    }
}
