//! The site on this machine, with the headers a public host should send.

use std::borrow::Cow;
use std::collections::BTreeMap;
use std::io;
use std::net::{Ipv4Addr, TcpListener};
use std::sync::Arc;

use axum::Router;
use axum::body::Body;
use axum::extract::{Request, State};
use axum::http::header::{
    ACCEPT_ENCODING, ALLOW, CACHE_CONTROL, CONTENT_ENCODING, CONTENT_TYPE, VARY,
};
use axum::http::{HeaderMap, HeaderName, HeaderValue, Method, Response, StatusCode};

use crate::headers::{cache_control, content_type, headers};
use crate::pack::Packed;
use crate::trouble::Trouble;

/// What is served at one address.
pub struct Served {
    /// The files by name.
    pub files: BTreeMap<String, Packed>,
    /// The headers of a file, by its name.
    pub headers: Box<dyn Fn(&str) -> Headers + Send + Sync>,
}

/// Names and values.
pub type Headers = Vec<(&'static str, Cow<'static, str>)>;

impl Served {
    /// The site, with the headers a public host should send. `framed_by` are the origins whose pages may frame it.
    pub fn site(files: BTreeMap<String, Packed>, framed_by: Vec<String>) -> Self {
        let headers = Box::new(move |file: &str| headers(file, &framed_by));
        Self { files, headers }
    }
}

/// Takes a port on the loopback address; 0 takes any free one.
///
/// Done before the build, so that a taken port is known at once and not minutes later.
pub fn take_port(port: u16) -> Result<TcpListener, Trouble> {
    TcpListener::bind((Ipv4Addr::LOCALHOST, port)).map_err(|error| match error.kind() {
        io::ErrorKind::AddrInUse => Trouble::new(
            format!("Port {port} is taken by another program."),
            format!(
                "Stop it, or choose another with `cargo run -- --port {}`; `--port 0` takes any free one.",
                port.checked_add(1).unwrap_or(0)
            ),
        ),
        io::ErrorKind::PermissionDenied => Trouble::new(
            format!("This system does not let you use port {port}."),
            "Choose one above 1023 with `--port`.",
        ),
        _ => Trouble::new(
            format!("Port {port} cannot be used: {error}."),
            "Choose another with `--port`; `--port 0` takes any free one.",
        ),
    })
}

/// The address to type into a browser.
pub fn address(listener: &TcpListener) -> Result<String, Trouble> {
    let socket = listener.local_addr().map_err(|error| network(&error))?;
    Ok(format!("http://{socket}/"))
}

/// Serves until Ctrl-C, each at its own address.
pub fn serve(all: Vec<(TcpListener, Served)>) -> Result<(), Trouble> {
    let runtime = tokio::runtime::Builder::new_multi_thread()
        .enable_all()
        .build()
        .map_err(|error| network(&error))?;
    runtime
        .block_on(async {
            for (listener, served) in all {
                listener.set_nonblocking(true)?;
                let listener = tokio::net::TcpListener::from_std(listener)?;
                let app = Router::new().fallback(answer).with_state(Arc::new(served));
                tokio::spawn(async move { axum::serve(listener, app).await });
            }
            tokio::signal::ctrl_c().await
        })
        .map_err(|error| network(&error))
}

fn network(error: &io::Error) -> Trouble {
    Trouble::new(
        format!("The local server failed: {error}."),
        "Start it again; if it stays, try another port with `--port`.",
    )
}

async fn answer(State(served): State<Arc<Served>>, request: Request) -> Response<Body> {
    let mut response = respond(&served.files, &request);
    for (name, value) in (served.headers)(named(&request)) {
        let name = HeaderName::from_bytes(name.as_bytes()).expect("our own names are valid");
        let value = HeaderValue::from_str(&value).expect("our own values are valid");
        response.headers_mut().insert(name, value);
    }
    response
}

/// The file that is asked for.
fn named(request: &Request) -> &str {
    match request.uri().path().trim_start_matches('/') {
        "" => "index.html",
        name => name,
    }
}

fn respond(files: &BTreeMap<String, Packed>, request: &Request) -> Response<Body> {
    if !matches!(*request.method(), Method::GET | Method::HEAD) {
        let mut response = plain(
            StatusCode::METHOD_NOT_ALLOWED,
            "Only GET and HEAD are answered here.\n",
        );
        let allowed = HeaderValue::from_static("GET, HEAD");
        response.headers_mut().insert(ALLOW, allowed);
        return response;
    }
    // Only names from the list are served, so no path can reach outside the site.
    let name = named(request);
    let Some(file) = files.get(name) else {
        return plain(
            StatusCode::NOT_FOUND,
            "There is no such file in this site.\n",
        );
    };
    let (body, encoding) = choose(file, request.headers());
    let mut response = Response::new(Body::from(body.to_vec()));
    let headers = response.headers_mut();
    headers.insert(CONTENT_TYPE, HeaderValue::from_static(content_type(name)));
    headers.insert(CACHE_CONTROL, HeaderValue::from_static(cache_control(name)));
    headers.insert(VARY, HeaderValue::from_static("Accept-Encoding"));
    if let Some(encoding) = encoding {
        headers.insert(CONTENT_ENCODING, HeaderValue::from_static(encoding));
    }
    response
}

fn plain(status: StatusCode, text: &'static str) -> Response<Body> {
    let mut response = Response::new(Body::from(text));
    *response.status_mut() = status;
    let kind = HeaderValue::from_static(content_type(".txt"));
    response.headers_mut().insert(CONTENT_TYPE, kind);
    let keep = HeaderValue::from_static("no-store");
    response.headers_mut().insert(CACHE_CONTROL, keep);
    response
}

/// The smallest form of a file that the browser says it can unpack.
fn choose<'a>(file: &'a Packed, headers: &HeaderMap) -> (&'a [u8], Option<&'static str>) {
    let accepted = headers.get(ACCEPT_ENCODING).and_then(|v| v.to_str().ok());
    let accepts = |coding: &str| {
        accepted.unwrap_or_default().split(',').any(|offer| {
            let mut parts = offer.split(';').map(str::trim);
            // `br;q=0` is a refusal; any other weight is taken as a yes.
            parts.next() == Some(coding) && !parts.any(|p| matches!(p, "q=0" | "q=0.0"))
        })
    };
    let packed = [("br", &file.brotli), ("gzip", &file.gzip)];
    packed
        .into_iter()
        .find(|(coding, bytes)| bytes.len() < file.raw.len() && accepts(coding))
        .map_or((&file.raw, None), |(coding, bytes)| (bytes, Some(coding)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pack::{Effort, pack};
    use crate::site::Site;

    fn ask(method: Method, path: &str, accept: &str) -> Response<Body> {
        let site = Site(BTreeMap::from([
            ("index.html".to_owned(), "a".repeat(500).into_bytes()),
            ("a-ba7816bf8f01cfea_bg.wasm".to_owned(), vec![0; 500]),
        ]));
        let request = Request::builder()
            .method(method)
            .uri(path)
            .header(ACCEPT_ENCODING, accept)
            .body(Body::empty())
            .expect("the request is well formed");
        let runtime = tokio::runtime::Runtime::new().expect("a runtime can be made");
        let served = Served::site(pack(site, Effort::Quick), Vec::new());
        runtime.block_on(answer(State(Arc::new(served)), request))
    }

    fn header<'a>(response: &'a Response<Body>, name: &str) -> Option<&'a str> {
        response.headers().get(name).and_then(|v| v.to_str().ok())
    }

    #[test]
    fn every_answer_carries_every_header_even_a_refusal() {
        for (method, path, status) in [
            (Method::GET, "/", StatusCode::OK),
            (Method::GET, "/nothing", StatusCode::NOT_FOUND),
            (Method::GET, "/../Cargo.toml", StatusCode::NOT_FOUND),
            (Method::POST, "/", StatusCode::METHOD_NOT_ALLOWED),
        ] {
            let response = ask(method, path, "");
            assert_eq!(response.status(), status, "{path}");
            for (name, value) in headers("index.html", &[]) {
                assert_eq!(header(&response, name), Some(&*value), "{path} {name}");
            }
        }
    }

    #[test]
    fn the_webassembly_file_has_its_own_type_and_is_kept() {
        let response = ask(Method::GET, "/a-ba7816bf8f01cfea_bg.wasm", "gzip, br");
        assert_eq!(header(&response, "content-type"), Some("application/wasm"));
        assert_eq!(header(&response, "content-encoding"), Some("br"));
        let kept = header(&response, "cache-control").expect("every file says how long");
        assert!(kept.contains("immutable"));
    }

    #[test]
    fn packing_follows_what_the_browser_accepts() {
        for (accept, expected) in [
            ("gzip, deflate, br", Some("br")),
            ("gzip", Some("gzip")),
            ("br;q=0, gzip;q=0.5", Some("gzip")),
            ("", None),
        ] {
            let response = ask(Method::GET, "/index.html", accept);
            assert_eq!(header(&response, "content-encoding"), expected, "{accept}");
        }
    }

    #[test]
    fn a_taken_port_is_named_with_a_way_out() {
        let first = take_port(0).expect("some port is free");
        let port = first.local_addr().expect("it is bound").port();
        let trouble = take_port(port).expect_err("it is taken").to_string();
        assert!(trouble.contains(&format!("Port {port} is taken")));
        assert!(trouble.contains("--port"));
    }
}
