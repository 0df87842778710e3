/** The page: the bar on top, the notebook with the drawing always in sight, or the wear patterns in their place. */
import { lazy, Suspense, useEffect } from 'react';
import { usePage } from '../store/page.ts';
import { useJob } from '../store/useJob.ts';
import { Bar } from '../views/bar/Bar.tsx';
import { Keypad } from '../views/measure/Keypad.tsx';
import { NewJob } from '../views/NewJob.tsx';
import { Notebook } from '../views/Notebook.tsx';
import { NoticeStrip } from '../views/NoticeStrip.tsx';
import { DrawingPane } from './DrawingPane.tsx';
import { useDroppedFiles } from './useDroppedFiles.ts';
import { useGalleryShown } from './useGalleryShown.ts';
import { useShortcuts } from './useShortcuts.ts';

const Gallery = lazy(async () => {
  const { Gallery } = await import('../views/gallery/Gallery.tsx');
  return { default: Gallery };
});

export function App() {
  const id = useJob((state) => state.job?.id);
  const title = useJob((state) => state.job?.title ?? '');
  const newJob = usePage((page) => page.newJob);
  const keypad = usePage((page) => page.keypad);
  const gallery = useGalleryShown(id, newJob);
  useShortcuts();
  const dropping = useDroppedFiles();
  useEffect(() => {
    document.title = title.trim() === '' ? 'Roundhand' : `${title} · Roundhand`;
  }, [title]);
  return (
    <div className="page" data-keypad={keypad} data-dropping={dropping}>
      <Bar />
      {gallery === null ? (
        <main className="sheet">
          <div className="notebook">
            <NoticeStrip />
            {newJob && <NewJob />}
            {!newJob && id !== undefined && <Notebook key={id} />}
            {!newJob && id === undefined && <p className="opening">Opening the last job…</p>}
          </div>
          <DrawingPane />
        </main>
      ) : (
        <Suspense fallback={<main className="opening">Fetching the wear patterns…</main>}>
          <Gallery name={gallery} />
        </Suspense>
      )}
      <Keypad />
    </div>
  );
}
