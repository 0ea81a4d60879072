//! The site under test: built once, served by the very program that `cargo run` starts.

use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::sync::{Mutex, OnceLock};

use anyhow::{Context as _, Result, ensure};

use crate::process::Process;

/// The program that builds and serves, and the folder with the built site.
#[derive(Debug)]
struct Built {
    host: PathBuf,
    dist: PathBuf,
}

/// The root of the workspace.
pub fn root() -> &'static Path {
    // This crate lies two folders below the root.
    Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/../.."))
}

/// The site while it is served; the server ends with it.
#[derive(Debug)]
pub struct Server {
    process: Option<Process>,
    address: String,
}

impl Server {
    /// Serves the site on a free port.
    pub fn start() -> Result<Self> {
        let (process, address) = serve(&built()?.dist, "0")?;
        Ok(Self {
            process: Some(process),
            address,
        })
    }

    /// Where it is, ending in `/`.
    pub fn address(&self) -> &str {
        &self.address
    }

    /// Ends the server: from now on there is no network.
    pub fn stop(&mut self) {
        self.process = None;
    }

    /// Serves another site at the same address, from now on.
    pub fn serve(&mut self, dist: &Path) -> Result<()> {
        self.stop();
        let port = self.address.trim_end_matches('/').rsplit(':').next();
        let port = port.context("the address ends in a port")?;
        let (process, address) = serve(dist, port)?;
        ensure!(address == self.address, "served at {address} instead");
        self.process = Some(process);
        Ok(())
    }
}

/// The site, and the page of an invented workshop around it at another origin, for as long as it lives.
#[derive(Debug)]
pub struct HostPage {
    _process: Process,
    /// Where the workshop's page is, ending in `/`.
    pub address: String,
    /// Where the site is, ending in `/`.
    pub site: String,
}

impl HostPage {
    /// Serves both on free ports.
    pub fn start() -> Result<Self> {
        let built = built()?;
        let mut command = Command::new(&built.host);
        command.args(["serve", "--port", "0", "--no-open", "--host-page", "--dist"]);
        let page = Mutex::new(None);
        let (process, (address, site)) = Process::start(command.arg(&built.dist), move |line| {
            let mut page = page.lock().ok()?;
            if let Some((_, address)) = line.split_once("that embeds it is at ") {
                *page = Some(address.to_owned());
            }
            let site = line.strip_prefix("Sagwright is at ")?;
            Some((page.take()?, site.to_owned()))
        })?;
        Ok(Self {
            _process: process,
            address,
            site,
        })
    }
}

/// The folder of the site under test.
pub fn dist() -> Result<&'static Path> {
    Ok(&built()?.dist)
}

fn built() -> Result<&'static Built> {
    static BUILT: OnceLock<Result<Built, String>> = OnceLock::new();
    BUILT
        .get_or_init(|| build().map_err(|error| format!("{error:#}")))
        .as_ref()
        .map_err(|error| anyhow::anyhow!("the site could not be built: {error}"))
}

fn serve(dist: &Path, port: &str) -> Result<(Process, String)> {
    Process::start(
        Command::new(&built()?.host)
            .args(["serve", "--port", port, "--no-open", "--dist"])
            .arg(dist),
        |line| line.strip_prefix("Sagwright is at ").map(str::to_owned),
    )
}

fn build() -> Result<Built> {
    let host = host()?;
    if let Some(dist) = std::env::var_os("SAGWRIGHT_DIST") {
        let dist = PathBuf::from(dist);
        return Ok(Built { host, dist });
    }
    let status = Command::new(&host)
        .arg("build")
        .current_dir(root())
        .stdout(Stdio::null())
        .status()?;
    ensure!(status.success(), "`cargo run -- build` failed");
    let dist = root().join("dist");
    Ok(Built { host, dist })
}

/// Compiles the program that serves and returns where cargo put it.
fn host() -> Result<PathBuf> {
    let output = Command::new(env!("CARGO"))
        .args([
            "build",
            "--package",
            "sagwright",
            "--message-format",
            "json-render-diagnostics",
        ])
        .current_dir(root())
        .stderr(Stdio::inherit())
        .output()?;
    ensure!(output.status.success(), "the host did not compile");
    String::from_utf8_lossy(&output.stdout)
        .lines()
        .filter_map(|line| serde_json::from_str::<serde_json::Value>(line).ok())
        .filter(|message| message["target"]["name"] == "sagwright")
        .find_map(|message| message["executable"].as_str().map(PathBuf::from))
        .context("cargo named no program called sagwright")
}
