//! The programs of the site: each a page, and the WebAssembly that runs on it.

/// One program.
#[derive(Debug, Clone, Copy)]
pub struct Program {
    /// The binary of the app that it is compiled from. In its page, `{{name NAME.js}}` and `{{name NAME.wasm}}` stand for
    /// its files, and `{{name NAME-boot.js}}` for the script that starts it.
    pub name: &'static str,
    /// Its page: the file among the sources and in the site.
    pub page: &'static str,
}

/// All of them. The first is the riders': its page and what that needs is kept on every device from the first visit;
/// what only the others need is kept from the first visit to them.
pub const PROGRAMS: [Program; 2] = [
    Program {
        name: "page",
        page: "index.html",
    },
    Program {
        name: "workshop",
        page: "workshop.html",
    },
];

/// The riders' page.
pub const FIRST_PAGE: &str = PROGRAMS[0].page;

/// The script that starts `program`.
pub fn boot_script(program: Program) -> String {
    include_str!("boot.js").replace("PROGRAM", program.name)
}

/// What the script that starts `program` is called among the sources.
pub fn boot_name(program: Program) -> String {
    [program.name, "-boot.js"].concat()
}
