//! The app, compiled to WebAssembly by the same cargo that started this program.

use std::env;
use std::ffi::OsString;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use serde::Deserialize;

use crate::program::Program;
use crate::trouble::Trouble;

const TARGET: &str = "wasm32-unknown-unknown";
const APP: &str = "sagwright-app";

/// The folder that holds `index.html` and the workspace, looked for upwards from `start`.
pub fn workspace_root(start: &Path) -> Result<PathBuf, Trouble> {
    start
        .ancestors()
        .find(|folder| {
            folder.join("app/host/Cargo.toml").is_file() && folder.join("index.html").is_file()
        })
        .map(Path::to_path_buf)
        .ok_or_else(|| {
            Trouble::new(
                format!("No Sagwright sources at or above {}.", start.display()),
                "Run this from inside the cloned repository.",
            )
        })
}

/// How the core is compiled for a program that rides no bike: as small as all else.
const SMALL: &str = "profile.wasm.package.sagwright-core.opt-level=\"z\"";

/// Compiles the app and returns the path of the `.wasm` file cargo wrote for each of `programs`.
pub fn compile_app(root: &Path, programs: &[Program]) -> Result<Vec<PathBuf>, Trouble> {
    ensure_target(root)?;
    let mut messages = String::new();
    for rides in [false, true] {
        let alike = programs.iter().filter(|program| program.rides == rides);
        let names: Vec<&str> = alike.map(|program| program.name).collect();
        messages.push_str(&compile(root, &names, rides)?);
    }
    let found = programs.iter().map(|program| {
        artifact(&messages, program.name).ok_or_else(|| {
            Trouble::new(
                format!(
                    "cargo succeeded but named no .wasm file for {}.",
                    program.name
                ),
                format!(
                    "Check that app/Cargo.toml still has a [[bin]] called {}.",
                    program.name
                ),
            )
        })
    });
    found.collect()
}

/// Compiles some programs and returns what cargo says of them.
fn compile(root: &Path, programs: &[&str], rides: bool) -> Result<String, Trouble> {
    let mut cargo = Command::new(cargo());
    cargo
        .args(["build", "--package", APP, "--target", TARGET])
        .args(programs.iter().flat_map(|program| ["--bin", program]))
        .args(["--profile", "wasm"])
        .args(["--message-format", "json-render-diagnostics"])
        .args(["--config", &short_paths(root)]);
    if !rides {
        cargo.args(["--config", SMALL]);
    }
    let output = cargo
        .current_dir(root)
        .stderr(Stdio::inherit())
        .output()
        .map_err(|error| no_cargo(&error))?;
    if !output.status.success() {
        return Err(Trouble::new(
            "The app did not compile; cargo's messages are above.",
            "Mend what they name, then run this again.",
        ));
    }
    Ok(String::from_utf8_lossy(&output.stdout).into_owned())
}

/// Finds a program's `.wasm` among cargo's messages, one JSON document a line.
fn artifact(messages: &str, program: &str) -> Option<PathBuf> {
    #[derive(Deserialize)]
    struct Message {
        reason: String,
        target: Option<Target>,
        #[serde(default)]
        filenames: Vec<PathBuf>,
    }
    #[derive(Deserialize)]
    struct Target {
        name: String,
        kind: Vec<String>,
    }
    messages
        .lines()
        .filter_map(|line| serde_json::from_str::<Message>(line).ok())
        .filter(|message| message.reason == "compiler-artifact")
        .filter(|message| {
            let target = message.target.as_ref();
            target.is_some_and(|t| t.name == program && t.kind.iter().any(|kind| kind == "bin"))
        })
        .flat_map(|message| message.filenames)
        .find(|path| path.extension().is_some_and(|kind| kind == "wasm"))
}

/// Panic messages carry source paths. Shortened, the download is the same on every machine
/// and tells nothing about the builder's home folder.
fn short_paths(root: &Path) -> String {
    let cargo_home = env::var_os("CARGO_HOME")
        .map(PathBuf::from)
        .or_else(|| env::home_dir().map(|home| home.join(".cargo")));
    let mut flags = vec![format!("--remap-path-prefix={}=.", root.display())];
    if let Some(home) = cargo_home {
        let sources = std::fs::read_dir(home.join("registry/src"));
        let mut indexes: Vec<_> = sources.into_iter().flatten().flatten().collect();
        // A changed order would make cargo compile everything anew.
        indexes.sort_by_key(std::fs::DirEntry::path);
        flags.extend(
            indexes
                .iter()
                .map(|entry| format!("--remap-path-prefix={}=crates", entry.path().display())),
        );
    }
    format!(
        "target.{TARGET}.rustflags={}",
        serde_json::Value::from(flags)
    )
}

/// Adds the WebAssembly target where it is missing, or says how to.
fn ensure_target(root: &Path) -> Result<(), Trouble> {
    if target_present(root)? {
        return Ok(());
    }
    println!("The {TARGET} target is missing; asking rustup for it.");
    let added = Command::new("rustup")
        .args(["target", "add", TARGET])
        .current_dir(root)
        .status()
        .is_ok_and(|status| status.success());
    if added && target_present(root)? {
        return Ok(());
    }
    Err(Trouble::new(
        format!("Rust's {TARGET} target is not installed and rustup could not add it."),
        format!(
            "Run `rustup target add {TARGET}` in this folder with a network connection; \
             without rustup, install your system's package for that target."
        ),
    ))
}

fn target_present(root: &Path) -> Result<bool, Trouble> {
    let rustc = env::var_os("RUSTC").unwrap_or_else(|| OsString::from("rustc"));
    let output = Command::new(&rustc)
        .args(["--print", "target-libdir", "--target", TARGET])
        .current_dir(root)
        .stderr(Stdio::inherit())
        .output()
        .map_err(|error| {
            Trouble::new(
                format!("{} could not be started: {error}.", rustc.display()),
                "Install Rust with rustup, or put rustc on the PATH.",
            )
        })?;
    let folder = String::from_utf8_lossy(&output.stdout);
    Ok(output.status.success() && Path::new(folder.trim()).is_dir())
}

fn cargo() -> OsString {
    env::var_os("CARGO").unwrap_or_else(|| OsString::from("cargo"))
}

fn no_cargo(error: &std::io::Error) -> Trouble {
    Trouble::new(
        format!("{} could not be started: {error}.", cargo().display()),
        "Install Rust with rustup, or put cargo on the PATH, then start this with `cargo run`.",
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_wasm_file_is_found_among_other_artifacts() {
        let messages = concat!(
            r#"{"reason":"compiler-artifact","target":{"name":"page","kind":["lib"]},"filenames":["/t/libm.wasm"]}"#,
            "\n",
            r#"{"reason":"compiler-artifact","target":{"name":"page","kind":["bin"]},"filenames":["/t/a.js","/t/a.wasm"]}"#,
            "\nnot json\n",
            r#"{"reason":"compiler-artifact","target":{"name":"workshop","kind":["bin"]},"filenames":["/t/b.wasm"]}"#,
            "\n",
            r#"{"reason":"build-finished","success":true}"#
        );
        for (program, file) in [("page", "/t/a.wasm"), ("workshop", "/t/b.wasm")] {
            assert_eq!(artifact(messages, program), Some(PathBuf::from(file)));
        }
        assert_eq!(artifact(r#"{"reason":"build-finished"}"#, "page"), None);
    }

    #[test]
    fn outside_the_sources_the_message_says_where_it_looked() {
        let folder = tempfile::tempdir().expect("a temporary folder can be made");
        let trouble = workspace_root(folder.path()).expect_err("there are no sources there");
        assert!(
            trouble
                .to_string()
                .contains(&folder.path().display().to_string())
        );
    }
}
