//! The counter desk and the settings, for workshops.

fn main() {
    sagwright_app::workshop();
}
