// From here on every file handed to the rider is kept in window.saved, with its name, in place of being written to disk.
(() => {
  window.saved = [];
  const make = URL.createObjectURL;
  const blobs = new Map();
  URL.createObjectURL = (blob) => {
    const url = make.call(URL, blob);
    blobs.set(url, blob);
    return url;
  };
  HTMLAnchorElement.prototype.click = function () {
    window.saved.push({ name: this.download, blob: blobs.get(this.href) });
  };
  return true;
})()
