//! A plain static host over the built page, which can be taken away again.

use std::fs;
use std::path::{Path, PathBuf};
use std::time::{Duration, SystemTime};

use axum::Router;
use tokio::net::TcpListener;
use tokio::sync::oneshot;
use tokio::task::JoinHandle;
use tower_http::services::ServeDir;

use super::{Outcome, repository};

/// A folder served on this machine: right types, 404 for what is not there, nothing else.
pub struct Site {
    address: String,
    stop: oneshot::Sender<()>,
    task: JoinHandle<std::io::Result<()>>,
}

impl Site {
    /// Serves `dist/` at the root of a host.
    ///
    /// # Errors
    /// If `dist/` has not been built.
    pub async fn of_dist() -> Outcome<Self> {
        Self::of_folder(&dist()?, "/").await
    }

    /// Serves a folder under `path`, which begins and ends with a slash.
    ///
    /// # Errors
    /// If no port is free.
    pub async fn of_folder(folder: &Path, path: &str) -> Outcome<Self> {
        let files = ServeDir::new(folder);
        let router = match path {
            "/" => Router::new().fallback_service(files),
            deeper => Router::new().nest_service(deeper, files),
        };
        let listener = TcpListener::bind(("127.0.0.1", 0)).await?;
        let address = format!("http://{}{path}", listener.local_addr()?);
        let (stop, stopped) = oneshot::channel();
        let serving = axum::serve(listener, router).with_graceful_shutdown(async {
            // A dropped sender ends it as well.
            let _ = stopped.await;
        });
        Ok(Self { address, stop, task: tokio::spawn(serving.into_future()) })
    }

    /// The address of the page, with a slash at its end.
    #[must_use]
    pub fn address(&self) -> &str {
        &self.address
    }

    /// Takes the host away: from now on every connection is refused.
    ///
    /// # Errors
    /// If the server had failed before.
    pub async fn take_away(self) -> Outcome<()> {
        // If nobody listens it has ended already, which is what was asked for.
        let _ = self.stop.send(());
        let task = self.task.abort_handle();
        match tokio::time::timeout(Duration::from_secs(5), self.task).await {
            Ok(ended) => Ok(ended??),
            Err(_) => {
                // A connection that the browser keeps open without a request in it.
                task.abort();
                Ok(())
            }
        }
    }
}

/// The address of the page about the installed system beside that of a plan.
#[must_use]
pub fn installed(page: &str) -> String {
    format!("{page}installed/")
}

/// The folder of the built page.
///
/// # Errors
/// If it has not been built.
pub fn dist() -> Outcome<PathBuf> {
    let dist = repository().join("dist");
    if dist.join("index.html").is_file() {
        Ok(dist)
    } else {
        Err("dist/index.html is missing: run ./dev build first".into())
    }
}

/// A folder of its own with the built page in it, for tests that change files; whoever asked for it removes it.
///
/// # Errors
/// If the page has not been built, or the folder for temporary files is full.
pub fn copy_of_dist(name: &str) -> Outcome<PathBuf> {
    let folder = std::env::temp_dir().join(format!("sunlarder-{name}-{}", std::process::id()));
    copy(&dist()?, &folder)?;
    Ok(folder)
}

fn copy(from: &Path, to: &Path) -> Outcome<()> {
    fs::create_dir_all(to)?;
    // The host tells versions of a file apart by the second.
    let long_ago = SystemTime::now() - Duration::from_secs(3600);
    for entry in fs::read_dir(from)? {
        let entry = entry?;
        let target = to.join(entry.file_name());
        if entry.file_type()?.is_dir() {
            copy(&entry.path(), &target)?;
        } else {
            fs::copy(entry.path(), &target)?;
            fs::File::options().write(true).open(target)?.set_modified(long_ago)?;
        }
    }
    Ok(())
}
