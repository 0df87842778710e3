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
void startBench().then(keepPlace);
createRoot(document.getElementById('page')!).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
registerOffline();
