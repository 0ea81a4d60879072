//! A workshop's own server, as small as one can be: it hands out the site, the workshop's document, and takes answers in
//! at `/in`, or does not, as the test has it.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread;
use std::time::Duration;

use anyhow::Result;

/// How it takes answers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Mood {
    /// It takes them.
    Takes,
    /// It takes them, is slow to say so, and does not say all it began to.
    Slow,
    /// It takes them, and its word that it has them is lost on the way.
    LosesItsWord,
    /// It closes the line.
    Down,
    /// It answers with a status and takes nothing.
    Answers(u16),
}

/// What is known to the test.
#[derive(Debug)]
pub struct State {
    /// How it takes answers now.
    pub mood: Mood,
    /// The workshop's document.
    pub document: String,
    /// Every parcel that was taken: the name in its header, and its text.
    pub taken: Vec<(String, String)>,
    /// How often anything was sent.
    pub tries: usize,
}

/// The server, for as long as the test runs.
#[derive(Debug)]
pub struct Receiver {
    /// Where it is, ending in `/`.
    pub address: String,
    state: Arc<Mutex<State>>,
}

impl Receiver {
    /// Starts one in front of the site.
    pub fn start(site: &str, document: &str) -> Result<Self> {
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, 0))?;
        let address = format!("http://{}/", listener.local_addr()?);
        let state = Arc::new(Mutex::new(State {
            mood: Mood::Takes,
            document: document.to_owned(),
            taken: Vec::new(),
            tries: 0,
        }));
        let site = site.trim_start_matches("http://").trim_end_matches('/');
        let (site, shared) = (site.to_owned(), Arc::clone(&state));
        thread::spawn(move || {
            for stream in listener.incoming().flatten() {
                let (site, state) = (site.clone(), Arc::clone(&shared));
                // A browser that goes away in the middle is no failure of the test.
                thread::spawn(move || serve(stream, &site, &state).ok());
            }
        });
        Ok(Self { address, state })
    }

    /// What it knows.
    pub fn state(&self) -> MutexGuard<'_, State> {
        self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

fn serve(mut stream: TcpStream, site: &str, state: &Mutex<State>) -> Result<()> {
    let mut reader = BufReader::new(stream.try_clone()?);
    let mut first = String::new();
    reader.read_line(&mut first)?;
    let (mut length, mut name) = (0, String::new());
    loop {
        let mut line = String::new();
        if reader.read_line(&mut line)? == 0 || line.trim().is_empty() {
            break;
        }
        let (header, value) = line.split_once(':').unwrap_or_default();
        match header.to_ascii_lowercase().as_str() {
            "content-length" => length = value.trim().parse()?,
            "idempotency-key" => value.trim().clone_into(&mut name),
            _ => {}
        }
    }
    let mut body = vec![0; length];
    reader.read_exact(&mut body)?;
    let path = first.split(' ').nth(1).unwrap_or("/").to_owned();
    if first.starts_with("POST /in ") {
        return take(&mut stream, state, name, &String::from_utf8(body)?);
    }
    if path.starts_with("/workshop.json") {
        let document = state.lock().map(|state| state.document.clone());
        return say(&mut stream, 200, &document.unwrap_or_default());
    }
    let mut there = TcpStream::connect(site)?;
    write!(
        there,
        "GET {path} HTTP/1.1\r\nHost: {site}\r\nConnection: close\r\n\r\n"
    )?;
    std::io::copy(&mut there, &mut stream)?;
    Ok(())
}

fn take(stream: &mut TcpStream, state: &Mutex<State>, name: String, text: &str) -> Result<()> {
    let mood = {
        let mut state = state.lock().unwrap_or_else(PoisonError::into_inner);
        state.tries += 1;
        let mood = state.mood;
        if matches!(mood, Mood::Takes | Mood::Slow | Mood::LosesItsWord) {
            state.taken.push((name, text.to_owned()));
        }
        mood
    };
    match mood {
        Mood::Takes => say(stream, 204, ""),
        Mood::Slow => {
            thread::sleep(Duration::from_secs(3));
            write!(stream, "HTTP/1.1 200 -\r\nContent-Length: 2\r\n\r\n")?;
            // Longer than the page waits for an answer.
            thread::sleep(Duration::from_secs(30));
            Ok(())
        }
        Mood::LosesItsWord | Mood::Down => Ok(()),
        Mood::Answers(status) => say(stream, status, ""),
    }
}

fn say(stream: &mut TcpStream, status: u16, text: &str) -> Result<()> {
    let length = text.len();
    write!(
        stream,
        "HTTP/1.1 {status} -\r\nContent-Type: application/json\r\nContent-Length: {length}\r\n\
         Cache-Control: no-store\r\nConnection: close\r\n\r\n{text}"
    )?;
    Ok(())
}
