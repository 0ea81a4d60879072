//! Every page of the site, for the checks and pictures that are made of all of them.

/// Name for the picture's file, and the fragment of the address.
pub const PAGES: [(&str, &str); 1] = [("start", "#/")];
