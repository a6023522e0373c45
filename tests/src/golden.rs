//! The plans of `tests/golden`: files and links of every format version ever released. The folder only grows.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// One plan as a release wrote it.
#[derive(Clone, Debug)]
pub struct Golden {
    /// Its name, with its version in front: `v1/camper`.
    pub name: String,
    /// Its file, as somebody kept it.
    pub file: String,
    /// Its link's code; none where nobody has made it yet.
    pub code: Option<String>,
    /// What it must open as; none where nobody has written it yet.
    pub expected: Option<String>,
    /// Its path without an ending.
    path: PathBuf,
}

/// The folder of a format version.
fn folder(version: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("golden").join(version)
}

/// All plans of a format version, in the order of their names.
///
/// # Errors
/// A folder or file that cannot be read.
pub fn golden(version: &str) -> io::Result<Vec<Golden>> {
    let mut names = Vec::new();
    for entry in fs::read_dir(folder(version))? {
        let name = entry?.file_name().to_string_lossy().into_owned();
        let stem = name.strip_suffix(".json").filter(|stem| !stem.ends_with(".expected"));
        names.extend(stem.map(str::to_owned));
    }
    names.sort_unstable();
    names.iter().map(|name| Golden::read(version, name)).collect()
}

impl Golden {
    fn read(version: &str, name: &str) -> io::Result<Self> {
        let path = folder(version).join(name);
        Ok(Self {
            name: format!("{version}/{name}"),
            file: fs::read_to_string(path.with_extension("json"))?,
            code: fs::read_to_string(path.with_extension("link")).ok(),
            expected: fs::read_to_string(path.with_extension("expected.json")).ok(),
            path,
        })
    }

    /// Writes link and expectation where they are missing; what is there is never touched.
    ///
    /// # Errors
    /// A file that cannot be written.
    pub fn complete(&self, code: &str, expected: &str) -> io::Result<()> {
        if self.code.is_none() {
            fs::write(self.path.with_extension("link"), format!("{code}\n"))?;
        }
        if self.expected.is_none() {
            fs::write(self.path.with_extension("expected.json"), expected)?;
        }
        Ok(())
    }
}
