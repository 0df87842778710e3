import './fonts.css';
import './theme.css';
import '../views/parts/parts.css';
import '../views/bar/bar.css';
import './layout.css';
import '../views/notebook.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { keepPlace } from '../store/place.ts';
import { startBench } from '../store/start.ts';
import { followTheme } from '../store/theme.ts';
import { App } from './App.tsx';
import { registerOffline } from './offline.ts';

/** For how long a page that waits for its job shows nothing at all, ms. */
const LONGEST_BLANK_MS = 300;

followTheme(document.documentElement);
history.scrollRestoration = 'manual';
const opened = startBench().then(keepPlace);
// The job is nearly always there at once: the page is then drawn but once.
void Promise.race([opened, new Promise((resolve) => setTimeout(resolve, LONGEST_BLANK_MS))]).then(
  () => {
    createRoot(document.getElementById('page')!).render(
      <StrictMode>
        <App />
      </StrictMode>,
    );
  },
);
registerOffline();
