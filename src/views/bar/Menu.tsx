/** The menu: files, demo jobs, the jobs on this device, and how the page looks. */
import { setUnits } from '../../job/edits.ts';
import { addMeasured } from '../../job/partEdits.ts';
import type { Feature, Units } from '../../job/schema.ts';
import { attempt } from '../../store/attempt.ts';
import { demos } from '../../store/demos.ts';
import { chooseFile, openDemo, saveFile } from '../../store/files.ts';
import { openGallery } from '../../store/gallery.ts';
import { jobStore } from '../../store/job.ts';
import { say, usePage } from '../../store/page.ts';
import { useSession } from '../../store/session.ts';
import { useTheme, type Wanted } from '../../store/theme.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import { KeptJobs } from './KeptJobs.tsx';

export interface MenuProps {
  close(): void;
}

export function Menu({ close }: MenuProps) {
  const change = usePage((page) => page.change);
  const act = (what: () => void) => () => {
    close();
    what();
  };
  return (
    <div className="menu">
      <button type="button" onClick={act(() => change({ newJob: true }))}>
        New job
      </button>
      <button type="button" onClick={act(() => void chooseFile())}>
        Open a file…
      </button>
      <button type="button" onClick={act(() => void saveFile())}>
        Save to a file…
      </button>
      {ADDS.map(({ kind, text }) => (
        <button key={kind} type="button" onClick={act(() => add(kind))}>
          {text}
        </button>
      ))}
      <button type="button" onClick={act(() => openGallery())}>
        Wear patterns
      </button>
      <h2>Demo jobs</h2>
      {demos.map((demo) => (
        <button key={demo.name} type="button" onClick={act(() => void openDemo(demo))}>
          {demo.title}
        </button>
      ))}
      <KeptJobs close={close} />
      <h2>This page</h2>
      <Looks />
    </div>
  );
}

function add(kind: Feature['kind']): void {
  const why = attempt((job) => addMeasured(job, kind));
  if (why !== null) {
    say({ tone: 'fault', text: why });
    return;
  }
  const count = jobStore.getState().job?.features.length ?? 1;
  useSession.getState().look({ bore: count - 1, survey: 0, draft: null });
}

const ADDS: readonly { kind: Feature['kind']; text: string }[] = [
  { kind: 'bore', text: 'Add a bore to this job' },
  { kind: 'pin', text: 'Add the pin, to measure it' },
  { kind: 'bushing-inside', text: 'Add an old bushing, inside' },
  { kind: 'bushing-outside', text: 'Add an old bushing, outside' },
];

const THEMES: readonly { value: Wanted; text: string }[] = [
  { value: 'system', text: 'as the device' },
  { value: 'light', text: 'light' },
  { value: 'sunlight', text: 'sunlight' },
  { value: 'dark', text: 'dark' },
];
const UNITS: readonly { value: Units; text: string }[] = [
  { value: 'in', text: 'inches' },
  { value: 'mm', text: 'millimetres' },
];

function Looks() {
  const wanted = useTheme((theme) => theme.wanted);
  const choose = useTheme((theme) => theme.choose);
  const units = useJob((state) => state.job?.units);
  const edit = useJob((state) => state.edit);
  return (
    <>
      <p className="menu-line">
        Theme <Choice label="Theme" value={wanted} options={THEMES} onChoose={choose} />
      </p>
      {units !== undefined && (
        <p className="menu-line">
          Figures in{' '}
          <Choice
            label="Units of this job"
            value={units}
            options={UNITS}
            onChoose={(chosen) => edit((job) => setUnits(job, chosen))}
          />
        </p>
      )}
    </>
  );
}
