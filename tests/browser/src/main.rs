//! Test support.

fn main() {}
