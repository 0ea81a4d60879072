//! Runs tests compiled to WebAssembly in a headless browser.
//!
//! It is wasm-bindgen's own runner at the version in `Cargo.lock`, so that it always fits the tests'
//! glue and nothing needs installing. `.cargo/config.toml` names it as the runner of the target.

fn main() -> anyhow::Result<()> {
    wasm_bindgen_cli::wasm_bindgen_test_runner::run_cli_with_args(std::env::args_os())
}
