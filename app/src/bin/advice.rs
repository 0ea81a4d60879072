//! The advice, for riders.

fn main() {
    sagwright_app::advice();
}
