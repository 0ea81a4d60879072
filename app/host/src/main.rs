//! Builds the site and serves it on this machine.

fn main() {}
