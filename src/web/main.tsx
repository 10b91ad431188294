import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './app/app.tsx';
import { refuseStrayDrops } from './app/stray-drops.ts';
import { keepPage } from './offline/keep-page.ts';
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
