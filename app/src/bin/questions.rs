//! The questions, for riders.

fn main() {
    sagwright_app::questions();
}
