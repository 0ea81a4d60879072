//! Builds the site and serves it on this machine.
//!
//! `cargo run` compiles the app to WebAssembly, writes `dist/` and serves it on the loopback address.
//! The job itself, from answers to advice, is the core's: it happens in the browser, or here for many files at once.

mod compile;
mod embedding;
mod headers;
mod icons;
mod names;
mod offline;
mod pack;
mod program;
mod report;
mod serve;
mod site;
mod trouble;
mod words;

use std::env;
use std::net::TcpListener;
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::time::Instant;

use clap::{Args, Parser, Subcommand};

use pack::{Effort, Visit};
use program::PROGRAMS;
use site::Site;
use trouble::Trouble;

/// Builds Sagwright and serves it on this machine until Ctrl-C.
#[derive(Debug, Parser)]
#[command(
    name = "sagwright",
    bin_name = "cargo run --",
    args_conflicts_with_subcommands = true
)]
struct Arguments {
    #[command(subcommand)]
    job: Option<Job>,
    #[command(flatten)]
    serving: Serving,
}

#[derive(Debug, Args)]
struct Serving {
    /// Port on 127.0.0.1; 0 takes any free one.
    #[arg(long, default_value_t = 8470)]
    port: u16,
    /// Do not open a browser window.
    #[arg(long)]
    no_open: bool,
    /// Also serve, at an address of its own, the page of an invented workshop that embeds the site.
    #[arg(long)]
    host_page: bool,
    #[command(flatten)]
    framing: Framing,
}

#[derive(Debug, Args)]
struct Framing {
    /// An origin whose pages may embed the site, such as `https://workshop.example`; once for each.
    #[arg(long, value_name = "ORIGIN", value_parser = headers::origin)]
    framed_by: Vec<String>,
}

#[derive(Debug, Subcommand)]
enum Job {
    /// Only write dist/, ready for any static host.
    Build {
        /// Fail where a first visit would download more than its budget.
        #[arg(long)]
        within_budget: bool,
        #[command(flatten)]
        framing: Framing,
    },
    /// Serve a site built before, without building.
    Serve {
        /// The folder to serve [default: dist/ of this repository].
        #[arg(long)]
        dist: Option<PathBuf>,
        #[command(flatten)]
        serving: Serving,
    },
    /// Print the sizes of a site built before.
    Sizes,
    /// Write the advice for many riders, and one table of them; ends with 3 if any had to be skipped.
    Report(report::Batch),
}

fn main() -> ExitCode {
    match run(Arguments::parse()) {
        Ok(code) => code,
        Err(trouble) => {
            eprintln!("\n{trouble}");
            ExitCode::FAILURE
        }
    }
}

fn run(arguments: Arguments) -> Result<ExitCode, Trouble> {
    let done = match arguments.job {
        Some(Job::Report(batch)) => return report::report(&batch),
        None => {
            let listener = serve::take_port(arguments.serving.port)?;
            let site = build(&root()?, &arguments.serving.framing.framed_by)?;
            serve_until_stopped(listener, site, arguments.serving)
        }
        Some(Job::Build {
            within_budget,
            framing,
        }) => {
            let site = build(&root()?, &framing.framed_by)?;
            println!("{}", embedding::snippet(&site)?);
            let visit = print_sizes(site);
            if within_budget {
                visit.keeps_to_budget()?;
            }
            Ok(())
        }
        Some(Job::Serve { dist, serving }) => {
            let dist = dist.map_or_else(|| root().map(|root| root.join("dist")), Ok)?;
            let site = Site::read(&dist)?;
            let listener = serve::take_port(serving.port)?;
            serve_until_stopped(listener, site, serving)
        }
        Some(Job::Sizes) => {
            print_sizes(Site::read(&root()?.join("dist"))?);
            Ok(())
        }
    };
    done.map(|()| ExitCode::SUCCESS)
}

/// The sources: around the current folder, else where this program was built.
fn root() -> Result<PathBuf, Trouble> {
    let here = env::current_dir().map_err(|error| {
        Trouble::new(
            format!("The current folder cannot be read: {error}."),
            "Change to the cloned repository and run this again.",
        )
    })?;
    compile::workspace_root(&here).or_else(|trouble| {
        compile::workspace_root(Path::new(env!("CARGO_MANIFEST_DIR"))).or(Err(trouble))
    })
}

/// Compiles, writes `dist/`, and says how long it took.
fn build(root: &Path, framed_by: &[String]) -> Result<Site, Trouble> {
    let start = Instant::now();
    println!("1/2 Compiling the app to WebAssembly: some minutes the first time, less after.");
    let wasm = compile::compile_app(root, &PROGRAMS)?;
    println!("2/2 Making the browser's files and writing dist/.");
    let site = Site::assemble(root, &wasm, framed_by)?;
    let dist = root.join("dist");
    site.write(&dist)?;
    println!(
        "Built {} in {:.1} s.",
        dist.display(),
        start.elapsed().as_secs_f64()
    );
    Ok(site)
}

/// Prints what a visitor downloads from a host that compresses as strongly as it can.
fn print_sizes(site: Site) -> Visit {
    println!("Compressing, to see what a visitor downloads: some seconds.");
    let (table, visit) = pack::sizes(&pack::pack(site, Effort::Strongest));
    print!("{table}");
    visit
}

fn serve_until_stopped(
    listener: TcpListener,
    mut site: Site,
    serving: Serving,
) -> Result<(), Trouble> {
    let address = serve::address(&listener)?;
    let mut framed_by = serving.framing.framed_by;
    let mut opened = address.clone();
    let mut around = None;
    if serving.host_page {
        let listener = serve::take_port(0)?;
        let page = serve::address(&listener)?;
        framed_by.push(page.trim_end_matches('/').to_owned());
        around = Some((
            listener,
            embedding::host_page(&root()?, &mut site, &address)?,
        ));
        println!("The page of an invented workshop that embeds it is at {page}");
        opened = page;
    }
    let files = pack::pack(site, Effort::Quick);
    println!("Sagwright is at {address}\nCtrl-C stops it.");
    if !serving.no_open && has_screen() && open::that_detached(&opened).is_err() {
        println!("No browser could be opened; type the address into one.");
    }
    let mut all = vec![(listener, serve::Served::site(files, framed_by))];
    all.extend(around);
    serve::serve(all)
}

/// Whether a window can be shown: on Linux only inside a graphical session.
fn has_screen() -> bool {
    !cfg!(target_os = "linux")
        || env::var_os("DISPLAY").is_some()
        || env::var_os("WAYLAND_DISPLAY").is_some()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parse(line: &str) -> Result<Arguments, clap::Error> {
        Arguments::try_parse_from(line.split(' '))
    }

    #[test]
    fn the_port_and_the_jobs_are_understood() {
        let plain = parse("sagwright").expect("no argument is needed");
        assert_eq!(plain.serving.port, 8470);
        let other = parse("sagwright --port 0 --no-open").expect("both are known");
        assert!(other.serving.port == 0 && other.serving.no_open);
        let built = parse("sagwright build").expect("it is a job");
        assert!(matches!(
            built.job,
            Some(Job::Build {
                within_budget: false,
                ..
            })
        ));
        let kept = parse("sagwright build --within-budget").expect("it is known");
        assert!(matches!(
            kept.job,
            Some(Job::Build {
                within_budget: true,
                ..
            })
        ));
    }

    #[test]
    fn a_wrong_argument_is_refused_as_wrong_usage() {
        for line in [
            "sagwright --prot 1",
            "sagwright --port 70000",
            "sagwright bild",
            "sagwright --port 1 build",
            "sagwright build --framed-by workshop.example",
            "sagwright --framed-by https://workshop.example/page",
        ] {
            let error = parse(line).expect_err(line);
            assert_eq!(error.exit_code(), 2, "{line}");
        }
    }
}
