//! Work of some length, done a piece at a time so that the page can do what else it has to.

use futures_util::future::{AbortHandle, abortable};
use gloo::timers::future::TimeoutFuture;
use wasm_bindgen_futures::spawn_local;

/// Lets the page draw and hear: to be waited for between two pieces of work.
pub async fn breath() {
    TimeoutFuture::new(0).await;
}

/// Begins work that nobody waits for; it ends at its next breath once it is told to by what this gives.
pub fn begin(work: impl Future<Output = ()> + 'static) -> AbortHandle {
    let (work, handle) = abortable(work);
    spawn_local(async {
        // What was ended has nothing to tell.
        work.await.ok();
    });
    handle
}
