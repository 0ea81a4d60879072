//! The headers every answer carries, in one place for the local server and for the file that tells a host.

use std::borrow::Cow;

use crate::names::{is_hashed, kind};
use crate::program::FIRST_PAGE;

/// The policy starts from nothing and allows only this site's own files; `'wasm-unsafe-eval'` is what
/// lets a browser compile WebAssembly under a policy. Sent on scripts too, because a worker is governed
/// by the policy on its own file. A frame without an origin can make a worker of a blob only, in which it
/// still runs none but this site's scripts. Which pages may frame this one stands at its end.
const POLICY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; \
     img-src 'self' data: blob:; connect-src 'self'; worker-src 'self' blob:; manifest-src 'self'; \
     base-uri 'none'; form-action 'none'; frame-ancestors 'self'";

/// Name and value of each header beside the policy that a host should send with every file.
///
/// Nothing on the site is secret, and a frame without an origin counts as another site: so everybody may read its files.
const OTHERS: [(&str, &str); 5] = [
    ("Access-Control-Allow-Origin", "*"),
    ("Cross-Origin-Opener-Policy", "same-origin"),
    (
        "Permissions-Policy",
        "accelerometer=(), camera=(), display-capture=(), geolocation=(), gyroscope=(), hid=(), \
         magnetometer=(), microphone=(), midi=(), payment=(), serial=(), usb=()",
    ),
    ("Referrer-Policy", "no-referrer"),
    ("X-Content-Type-Options", "nosniff"),
];

/// Name and value of each header that a host should send with a file. `framed_by` are the origins whose pages may frame the
/// riders' page beside the site's own; the workshop's own page is for no other.
pub fn headers(file: &str, framed_by: &[String]) -> Vec<(&'static str, Cow<'static, str>)> {
    let more = if kind(file) == Some("html") && file != FIRST_PAGE {
        &[]
    } else {
        framed_by
    };
    let policy = more.iter().fold(Cow::Borrowed(POLICY), |policy, origin| {
        Cow::Owned(format!("{policy} {origin}"))
    });
    let others = OTHERS.map(|(name, value)| (name, Cow::Borrowed(value)));
    [("Content-Security-Policy", policy)]
        .into_iter()
        .chain(others)
        .collect()
}

/// An origin that may frame the riders' page, such as `https://workshop.example`, as it has to stand in the policy.
///
/// # Errors
/// What is wrong with it.
pub fn origin(text: &str) -> Result<String, String> {
    let wrong = "write it as https://workshop.example, without a path";
    let (scheme, host) = text.split_once("://").ok_or(wrong)?;
    let (name, port) = host.split_once(':').unwrap_or((host, "0"));
    let right = |byte: u8| byte.is_ascii_alphanumeric() || matches!(byte, b'.' | b'-');
    if name.is_empty() || !name.bytes().all(right) || port.parse::<u16>().is_err() {
        return Err(wrong.to_owned());
    }
    let here = matches!(name, "localhost" | "127.0.0.1");
    match scheme {
        "https" => Ok(text.to_owned()),
        "http" if here => Ok(text.to_owned()),
        "http" => Err("only a page that came over https may frame this one".to_owned()),
        _ => Err(wrong.to_owned()),
    }
}

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
pub fn headers_file<'a>(files: impl IntoIterator<Item = &'a str>, framed_by: &[String]) -> String {
    use std::fmt::Write as _;
    let mut text = String::from("/*\n");
    let line = |text: &mut String, name: &str, value: &str| {
        // Writing to a String cannot fail.
        let _ = writeln!(text, "  {name}: {value}");
    };
    for (name, value) in headers(FIRST_PAGE, framed_by) {
        line(&mut text, name, &value);
    }
    for file in files {
        text.push('/');
        text.push_str(file);
        text.push('\n');
        line(&mut text, "Cache-Control", cache_control(file));
        // Where a host sends both policies, browsers keep to both.
        let own = headers(file, framed_by);
        if own != headers(FIRST_PAGE, framed_by) {
            line(&mut text, own[0].0, &own[0].1);
        }
        if kind(file) == Some("wasm") {
            line(&mut text, "Content-Type", content_type(file));
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    fn policy_of(file: &str, framed_by: &[String]) -> String {
        headers(file, framed_by)[0].1.to_string()
    }

    #[test]
    fn the_policy_allows_this_site_and_webassembly_and_nothing_inline() {
        let policy = policy_of("index.html", &[]);
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
    fn only_the_riders_page_may_be_framed_by_others() {
        let hosts = [origin("https://workshop.example").expect("an origin")];
        for file in ["index.html", "a-ba7816bf8f01cfea.js"] {
            let policy = policy_of(file, &hosts);
            assert!(
                policy.ends_with("frame-ancestors 'self' https://workshop.example"),
                "{policy}"
            );
        }
        assert!(policy_of("workshop.html", &hosts).ends_with("frame-ancestors 'self'"));
        let text = headers_file(["index.html", "workshop.html"], &hosts);
        let (all, own) = text.split_once("/workshop.html").expect("it is listed");
        assert!(all.contains("workshop.example") && !own.contains("workshop.example"));
        assert!(own.contains("frame-ancestors 'self'"));
    }

    #[test]
    fn an_origin_is_taken_and_nothing_else_that_a_policy_would_heed() {
        for fine in [
            "https://a-b.example",
            "https://a.example:8443",
            "http://127.0.0.1:8471",
            "http://localhost",
        ] {
            assert_eq!(origin(fine).as_deref(), Ok(fine));
        }
        for wrong in [
            "",
            "*",
            "a.example",
            "http://a.example",
            "https://",
            "https://*",
            "https://a.example/",
            "https://a.example; script-src *",
            "https://a.example https://b.example",
            "https://a.example:x",
            "data://a",
        ] {
            assert!(origin(wrong).is_err(), "{wrong}");
        }
    }

    #[test]
    fn only_fingerprinted_names_are_kept_for_ever() {
        assert_eq!(cache_control("app-ba7816bf8f01cfea.js"), FOR_EVER);
        assert_eq!(cache_control("index.html"), ASK_FIRST);
        assert_eq!(cache_control("sw.js"), ASK_FIRST);
    }

    #[test]
    fn the_file_for_hosts_lists_every_header_and_every_file() {
        let text = headers_file(["index.html", "a-ba7816bf8f01cfea_bg.wasm"], &[]);
        for (name, value) in headers("index.html", &[]) {
            assert!(text.contains(&format!("  {name}: {value}\n")), "{name}");
        }
        assert!(text.contains("/index.html\n  Cache-Control: no-cache\n"));
        assert!(text.contains("_bg.wasm\n  Cache-Control: public"));
        assert!(text.contains("  Content-Type: application/wasm\n"));
    }
}
