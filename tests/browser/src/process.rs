//! Programs started for a test and ended with it.

use std::io::{BufRead as _, BufReader, Read as _, Write as _};
use std::net::{Ipv4Addr, TcpStream};
use std::process::{Child, Command, Stdio};
use std::sync::mpsc::{self, RecvTimeoutError};
use std::thread;
use std::time::{Duration, Instant};

use anyhow::{Context as _, Result, bail};

/// How long a program may take to say that it is ready.
const START: Duration = Duration::from_mins(1);
/// How often the driver is started before it is given up.
const ATTEMPTS: usize = 3;
/// How long the driver may take to close its browsers.
const STOP: Duration = Duration::from_secs(5);

/// A running program, killed when dropped.
#[derive(Debug)]
pub struct Process(Child);

impl Process {
    /// Starts a program and waits for the line on its output in which `ready` finds something.
    pub fn start<T: Send + 'static>(
        command: &mut Command,
        ready: impl Fn(&str) -> Option<T> + Send + 'static,
    ) -> Result<(Self, T)> {
        let name = command.get_program().to_string_lossy().into_owned();
        let mut child = command
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .spawn()
            .with_context(|| {
                format!("{name} could not be started; tests/run says what is missing")
            })?;
        let output = child
            .stdout
            .take()
            .context("its output was just asked for")?;
        let process = Self(child);
        let (sender, receiver) = mpsc::channel();
        // Reads on to the end, so that the program never waits for a full pipe.
        thread::spawn(move || {
            for line in BufReader::new(output).lines().map_while(Result::ok) {
                if let Some(found) = ready(&line) {
                    // Nobody listens any more once the first was found.
                    let _ = sender.send(found);
                }
            }
        });
        match receiver.recv_timeout(START) {
            Ok(found) => Ok((process, found)),
            Err(RecvTimeoutError::Timeout) => {
                bail!("{name} did not say that it is ready within {START:?}")
            }
            Err(RecvTimeoutError::Disconnected) => bail!("{name} ended before it was ready"),
        }
    }
}

impl Drop for Process {
    fn drop(&mut self) {
        // It may have ended by itself, which is as good.
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

/// A running chromedriver; its browsers are closed with it.
#[derive(Debug)]
pub struct Driver {
    process: Process,
    port: u16,
}

impl Driver {
    /// Starts chromedriver on a free port.
    ///
    /// It finds a port free on one network protocol and then asks for the same on the other, where another program
    /// may have it: then it ends, and only another attempt helps.
    pub fn start() -> Result<Self> {
        (1..ATTEMPTS)
            .find_map(|_| Self::attempt().ok())
            .map_or_else(Self::attempt, Ok)
    }

    fn attempt() -> Result<Self> {
        let program = std::env::var_os("CHROMEDRIVER").unwrap_or_else(|| "chromedriver".into());
        let (process, port) = Process::start(Command::new(program).arg("--port=0"), |line| {
            // "ChromeDriver was started successfully on port 40123."
            let (_, port) = line.split_once("successfully on port ")?;
            port.trim_end_matches('.').parse().ok()
        })?;
        Ok(Self { process, port })
    }

    /// Where it listens.
    pub fn address(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }

    /// Asks it to close its browsers and end: killed outright, it would leave them running.
    fn shut_down(&mut self) -> std::io::Result<()> {
        let mut stream = TcpStream::connect((Ipv4Addr::LOCALHOST, self.port))?;
        stream.set_read_timeout(Some(STOP))?;
        stream.write_all(b"GET /shutdown HTTP/1.1\r\nHost: localhost\r\n\r\n")?;
        let _ = stream.read(&mut [0; 512])?;
        let start = Instant::now();
        while self.process.0.try_wait()?.is_none() && start.elapsed() < STOP {
            thread::sleep(Duration::from_millis(20));
        }
        Ok(())
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        // Whatever it answers, the process itself is killed next.
        let _ = self.shut_down();
    }
}
