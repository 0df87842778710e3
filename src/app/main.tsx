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

followTheme(document.documentElement);
history.scrollRestoration = 'manual';
const begun = startBench();
void begun.then(keepPlace);
// The page is drawn once, with its job; a device that is slow to hand it over leaves it empty no longer than this, ms.
const waited = new Promise((resolve) => setTimeout(resolve, 1000));
void Promise.race([begun, waited]).then(() => {
  createRoot(document.getElementById('page')!).render(
    <StrictMode>
      <App />
    </StrictMode>,
  );
});
registerOffline();
