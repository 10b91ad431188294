/** Loads one after the other while the page rests; what fails is loaded when it is asked for. */
export async function preload(loaders: Iterable<() => Promise<unknown>>): Promise<void> {
  for (const load of loaders) {
    await rest();
    await load().catch(() => undefined);
  }
}

function rest(): Promise<void> {
  return new Promise((resolve) => {
    // Safari has no idle callback.
    if ('requestIdleCallback' in window) window.requestIdleCallback(() => resolve(), { timeout: 5000 });
    else setTimeout(resolve, 200);
  });
}
