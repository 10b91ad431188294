/** Keeps the page itself in the browser, where the browser does that: on this computer and over https. */
export function keepPage(): void {
  // Refused (a private window, a certificate the browser does not trust), the page works as over plain http.
  void navigator.serviceWorker?.register('/service-worker.js').catch(() => undefined);
}
