//! The wizard and the advice, for riders.

fn main() {
    sagwright_app::page();
}
