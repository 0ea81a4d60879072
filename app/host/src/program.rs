//! The programs of the site: each a WebAssembly file of its own, and the page it runs on.

/// One program.
#[derive(Debug, Clone, Copy)]
pub struct Program {
    /// The binary of the app that it is compiled from. In the pages, `{{name NAME.js}}` and `{{name NAME.wasm}}` stand for
    /// its files, `{{name NAME-boot.js}}` for the script that starts it and `{{name NAME.css}}` for its style sheets.
    pub name: &'static str,
    /// Its page: the file among the sources and in the site. `None` where another program's page fetches it.
    pub page: Option<&'static str>,
    /// Its style sheets, in the order in which a browser has to read them. They reach it as one file: every further one
    /// would be another way to the host and back before anything shows.
    pub styles: &'static [&'static str],
    /// Whether it rides the bike, and so has the core compiled to be quick; else to be small.
    pub rides: bool,
}

/// The riders' page.
pub const FIRST_PAGE: &str = "index.html";

/// The riders' second program, which their page fetches once the first has drawn it.
const ADVICE: &str = "advice";

/// How the name of a script that starts a program ends among the sources.
const BOOT: &str = "-boot";

/// All of them. The first two are the riders': their page and what that needs is kept on every device from the first visit;
/// what only the others need is kept from the first visit to them.
pub const PROGRAMS: [Program; 3] = [
    Program {
        name: "questions",
        page: Some(FIRST_PAGE),
        styles: &[
            "theme",
            "base",
            "shell",
            "asking",
            "questions",
            "answers",
            "drawings",
            "hosted",
            "framed",
        ],
        rides: false,
    },
    Program {
        name: ADVICE,
        page: None,
        // What they say counts over what the page has, so paper comes last here.
        styles: &[
            "advice", "checking", "remedies", "signals", "card", "pictures", "rides", "what-if",
            "track", "taking", "paper",
        ],
        rides: true,
    },
    Program {
        name: "workshop",
        page: Some("workshop.html"),
        styles: &[
            "theme",
            "base",
            "shell",
            "asking",
            "questions",
            "answers",
            "drawings",
            "advice",
            "signals",
            "card",
            "counter",
            "job",
            "settings",
            "job-card",
        ],
        rides: true,
    },
];

/// The script that starts `program`. Where that has no page to name its style sheet, the script brings it.
pub fn boot_script(program: Program) -> String {
    let (name, integrity) = match program.page {
        Some(_) => ("", ""),
        None => ("{{name PROGRAM.css}}", "{{integrity PROGRAM.css}}"),
    };
    include_str!("boot.js")
        .replace("STYLE_NAME", name)
        .replace("STYLE_INTEGRITY", integrity)
        .replace("PROGRAM", program.name)
}

/// What the script that starts `program` is called among the sources.
pub fn boot_name(program: Program) -> String {
    [program.name, BOOT, ".js"].concat()
}

/// Whether a file of the site is the script that starts the riders' second program. What is reached only through it is
/// not waited for by anybody who opens the riders' page.
pub fn starts_advice(name: &str) -> bool {
    let rest = name.strip_prefix(ADVICE);
    let rest = rest.and_then(|rest| rest.strip_prefix(BOOT));
    rest.is_some_and(|rest| rest.starts_with('-'))
}
