//! The headers every answer carries, in one place for the local server and for the file that tells a host.

use crate::names::{is_hashed, kind};

/// Name and value of each header a host should send with every file.
///
/// The policy starts from nothing and allows only this site's own files; `'wasm-unsafe-eval'` is what
/// lets a browser compile WebAssembly under a policy. Sent on scripts too, because a worker is governed
/// by the policy on its own file.
pub const HEADERS: [(&str, &str); 5] = [
    (
        "Content-Security-Policy",
        "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; \
         img-src 'self' data: blob:; connect-src 'self'; worker-src 'self'; manifest-src 'self'; \
         base-uri 'none'; form-action 'none'; frame-ancestors 'self'",
    ),
    ("Cross-Origin-Opener-Policy", "same-origin"),
    (
        "Permissions-Policy",
        "camera=(), microphone=(), geolocation=()",
    ),
    ("Referrer-Policy", "no-referrer"),
    ("X-Content-Type-Options", "nosniff"),
];

/// For a name that carries a fingerprint: keep it a year and never ask again.
const FOR_EVER: &str = "public, max-age=31536000, immutable";
/// For a name that stays: keep it, but ask each time whether it changed.
const ASK_FIRST: &str = "no-cache";

/// The `Cache-Control` value for a file of the site.
pub fn cache_control(file: &str) -> &'static str {
    if is_hashed(file) { FOR_EVER } else { ASK_FIRST }
}

/// The `Content-Type` value for a file of the site, by the end of its name.
///
/// A `.wasm` sent as anything else cannot be compiled while it downloads.
pub fn content_type(file: &str) -> &'static str {
    match kind(file) {
        Some("css") => "text/css; charset=utf-8",
        Some("html") => "text/html; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("json") => "application/json",
        Some("png") => "image/png",
        Some("svg") => "image/svg+xml",
        Some("txt") => "text/plain; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("webmanifest") => "application/manifest+json",
        Some("woff2") => "font/woff2",
        _ => "application/octet-stream",
    }
}

/// The same headers in the plain-text form many static hosts read from a file called `_headers`:
/// a path pattern, then its headers indented below it.
pub fn headers_file<'a>(files: impl IntoIterator<Item = &'a str>) -> String {
    use std::fmt::Write as _;
    let mut text = String::from("/*\n");
    let line = |text: &mut String, name: &str, value: &str| {
        // Writing to a String cannot fail.
        let _ = writeln!(text, "  {name}: {value}");
    };
    for (name, value) in HEADERS {
        line(&mut text, name, value);
    }
    for file in files {
        text.push('/');
        text.push_str(file);
        text.push('\n');
        line(&mut text, "Cache-Control", cache_control(file));
        if kind(file) == Some("wasm") {
            line(&mut text, "Content-Type", content_type(file));
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_policy_allows_this_site_and_webassembly_and_nothing_inline() {
        let (_, policy) = HEADERS[0];
        let rules: Vec<&str> = policy.split("; ").collect();
        assert!(rules.contains(&"default-src 'none'"));
        assert!(rules.contains(&"script-src 'self' 'wasm-unsafe-eval'"));
        assert!(rules.contains(&"frame-ancestors 'self'"));
        assert!(!policy.contains("unsafe-inline"));
        assert!(!policy.contains("'unsafe-eval'"));
        assert!(!policy.contains("http"), "no other origin may be named");
        assert!(!policy.contains("  "), "line continuation left a gap");
    }

    #[test]
    fn only_fingerprinted_names_are_kept_for_ever() {
        assert_eq!(cache_control("app-ba7816bf8f01cfea.js"), FOR_EVER);
        assert_eq!(cache_control("index.html"), ASK_FIRST);
        assert_eq!(cache_control("sw.js"), ASK_FIRST);
    }

    #[test]
    fn the_file_for_hosts_lists_every_header_and_every_file() {
        let text = headers_file(["index.html", "a-ba7816bf8f01cfea_bg.wasm"]);
        for (name, value) in HEADERS {
            assert!(text.contains(&format!("  {name}: {value}\n")), "{name}");
        }
        assert!(text.contains("/index.html\n  Cache-Control: no-cache\n"));
        assert!(text.contains("_bg.wasm\n  Cache-Control: public"));
        assert!(text.contains("  Content-Type: application/wasm\n"));
    }
}
