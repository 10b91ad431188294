import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app/app.tsx';
import './style/tokens.css';
import './style/base.css';
import './style/drawing.css';
import './parts/sheet/parts.css';
import './fields/fields.css';
import './fields/key-pad.css';
import './style/print.css';

const place = document.getElementById('app');
if (!place) throw new Error('index.html has no element with id "app"');
refuseStrayDrops();
keepPage();
createRoot(place).render(
  <StrictMode>
    <App />
  </StrictMode>,
);

/** Keeps the page itself in the browser, where the browser does that: on this computer and over https. */
function keepPage(): void {
  // Refused (a private window, a certificate the browser does not trust), the page works as over plain http.
  void navigator.serviceWorker?.register('/service-worker.js').catch(() => undefined);
}

/**
 * A file let go beside the field meant for it would replace the page by itself in the browser. What a drop field has
 * taken in hand is left to it.
 */
function refuseStrayDrops(): void {
  const refuse = (event: DragEvent) => {
    if (event.defaultPrevented || !event.dataTransfer?.types.includes('Files')) return;
    if (event.target instanceof HTMLInputElement && event.target.type === 'file') return;
    event.preventDefault();
    event.dataTransfer.dropEffect = 'none';
  };
  addEventListener('dragover', refuse);
  addEventListener('drop', refuse);
}
