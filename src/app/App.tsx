/** The page: the bar on top, the notebook, the drawing always in sight. */
import { useEffect } from 'react';
import { usePage } from '../store/page.ts';
import { useJob } from '../store/useJob.ts';
import { Bar } from '../views/bar/Bar.tsx';
import { Keypad } from '../views/measure/Keypad.tsx';
import { NewJob } from '../views/NewJob.tsx';
import { Notebook } from '../views/Notebook.tsx';
import { NoticeStrip } from '../views/NoticeStrip.tsx';
import { DrawingPane } from './DrawingPane.tsx';
import { useDroppedFiles } from './useDroppedFiles.ts';
import { useShortcuts } from './useShortcuts.ts';

export function App() {
  const id = useJob((state) => state.job?.id);
  const title = useJob((state) => state.job?.title ?? '');
  const newJob = usePage((page) => page.newJob);
  const keypad = usePage((page) => page.keypad);
  useShortcuts();
  const dropping = useDroppedFiles();
  useEffect(() => {
    document.title = title.trim() === '' ? 'Roundhand' : `${title} · Roundhand`;
  }, [title]);
  return (
    <div className="page" data-keypad={keypad} data-dropping={dropping}>
      <Bar />
      <main className="sheet">
        <div className="notebook">
          <NoticeStrip />
          {newJob && <NewJob />}
          {!newJob && id !== undefined && <Notebook key={id} />}
          {!newJob && id === undefined && <p className="opening">Opening the last job…</p>}
        </div>
        <DrawingPane />
      </main>
      <Keypad />
    </div>
  );
}
