/** Files in and out. A file that cannot be read is one sentence on the page; the job on the bench stays. */
import { fileOpen, fileSave } from 'browser-fs-access';
import type { ReadingsCsv } from '../job/csv.ts';
import { openJob, saveJob } from '../job/parse.ts';
import type { Job, Units } from '../job/schema.ts';
import { sentence } from './attempt.ts';
import type { Demo } from './demos.ts';
import { jobStore } from './job.ts';
import { keeper } from './kept.ts';
import { newId } from './newId.ts';
import { say, usePage } from './page.ts';
import { isScanFile, readScanFile } from './scanFile.ts';
import { FIRST_LOOK, type Session, useSession } from './session.ts';
import { isShopText, openShopText } from './shopFile.ts';
import { unlessLeft } from './unlessLeft.ts';

/** More than any job holds; a larger file is refused before it is read. */
const MOST_BYTES = 50_000_000;
/** Some five million points, with all their digits. */
const MOST_POINT_BYTES = 300_000_000;

/** Puts a job on the bench, looked at from the start or from where it was left. */
export function show(job: Job, session: Session = FIRST_LOOK): void {
  const left = jobStore.getState().job;
  useSession.getState().look(session);
  usePage.getState().change({ newJob: false, notice: null, pointsTable: false });
  jobStore.getState().put(job);
  if (left !== null && left.id !== job.id) tellNotKept(left);
}

/** Where the device keeps nothing, the job that another has just taken the place of is on this page alone. */
function tellNotKept(left: Job): void {
  if (keeper.store.getState().refused === null) return;
  say({
    tone: 'said',
    text: `“${left.title || 'Untitled job'}” is not kept on this device. Put it back to save it to a file.`,
    actions: [{ label: 'put it back', act: () => show(left) }],
  });
}

const openText = (text: string, name: string) => putOnBench(openJob(text, name), name);

/**
 * Puts what came from outside on the bench; a job in doubt only after a yes. A job of the same id that is
 * kept on the device and says something else is never overwritten: the newcomer gets an id of its own.
 */
async function putOnBench(opened: ReturnType<typeof openJob>, name: string): Promise<void> {
  if (!opened.ok) {
    say({ tone: 'fault', text: sentence(opened.why) });
    return;
  }
  const kept = await keeper.read(opened.job.id);
  const taken = kept !== undefined && kept.text !== saveJob(opened.job);
  const job = taken ? { ...opened.job, id: newId() } : opened.job;
  if (opened.doubts.length === 0) {
    show(job);
    return;
  }
  say({
    tone: 'fault',
    text: `${name} can be opened, but it needs mending:`,
    more: opened.doubts.map(sentence),
    actions: [
      { label: 'open it anyway and mend it here', act: () => show(job) },
      { label: 'leave it', act: () => say(null) },
    ],
  });
}

export async function openFile(file: File): Promise<void> {
  const table = /\.(csv|tsv|txt|xyz|asc)$/i.test(file.name);
  if (table && (await isScanFile(file))) {
    await openPoints(file);
    return;
  }
  if (file.size > MOST_BYTES) {
    const size = Math.round(file.size / 1_000_000);
    say({ tone: 'fault', text: `${file.name} is ${size} MB; a job is far smaller than 50 MB.` });
    return;
  }
  const text = await file.text().catch(() => null);
  if (text === null) {
    say({ tone: 'fault', text: `${file.name} could not be read from the device.` });
  } else if (table) await openReadings(text, file.name);
  else if (isShopText(text)) openShopText(text, file.name);
  else await openText(text, file.name);
}

/** A table of readings becomes a job of its own; the sizes that it cannot say are asked in the notebook. */
async function openReadings(text: string, name: string): Promise<void> {
  const [{ readReadingsCsv }, { jobFromCsv }] = await Promise.all([
    import('../job/csv.ts'),
    import('../job/fromCsv.ts'),
  ]);
  const rows = readReadingsCsv(text, name);
  if (!rows.ok) {
    say({ tone: 'fault', text: sentence(rows.why) });
    return;
  }
  const units = unitsOf(rows) ?? jobStore.getState().job?.units ?? 'in';
  const title = name.replace(/\.[^.]*$/, '');
  show({ ...jobFromCsv(rows, { units, nominal: '', length: '', title }), id: newId() });
  say({
    tone: 'said',
    text: 'These readings are a job of their own now. Give the length of the bore and the bushing’s outside diameter, and the map follows.',
  });
}

/** Points of a scanner become a job of their own, in the unit that their size speaks for. */
async function openPoints(file: File): Promise<void> {
  if (file.size > MOST_POINT_BYTES) {
    const size = Math.round(file.size / 1_000_000);
    say({ tone: 'fault', text: `${file.name} is ${size} MB, and 300 MB of points are the most.` });
    return;
  }
  say({ tone: 'said', text: `The points of ${file.name} are being read.` });
  const read = await readScanFile(file);
  if (!read.ok) {
    say({ tone: 'fault', text: sentence(read.why) });
    return;
  }
  const { units } = read.job;
  show({ ...read.job, id: newId() });
  say({
    tone: 'said',
    text: `These points are a job of their own now, taken to be in ${units === 'mm' ? 'millimetres' : 'inches'} by their size. Give the length of the bore and the bushing’s outside diameter, and the map follows.`,
  });
}

/** What most people mean by a file in which one row says its unit. */
function unitsOf(rows: Extract<ReadingsCsv, { ok: true }>): Units | null {
  const stated = rows.readings.find(({ unit }) => unit !== '')?.unit;
  if (stated === undefined) return null;
  return stated === 'mm' ? 'mm' : 'in';
}

export async function chooseFile(): Promise<void> {
  const file = await fileOpen({
    id: 'roundhand',
    description: 'Roundhand jobs and readings',
    extensions: ['.json', '.csv'],
    mimeTypes: ['application/json', 'text/csv'],
  }).catch(unlessLeft);
  if (file !== undefined) await openFile(file);
}

/** Saves the job on the bench to a file of its title. */
export async function saveFile(): Promise<void> {
  const { job } = jobStore.getState();
  if (job === null) return;
  const blob = new Blob([saveJob(job)], { type: 'application/json' });
  await fileSave(blob, {
    id: 'roundhand',
    description: 'Roundhand job',
    fileName: `${fileName(job.title)}.roundhand.json`,
    extensions: ['.json'],
  }).catch(unlessLeft);
}

/** A demo job: as it was left, where it was changed; afresh on request. */
export async function openDemo(demo: Demo): Promise<void> {
  const text = await demo.text();
  const opened = openJob(text, demo.name);
  if (!opened.ok || !(await openKept(opened.job.id))) {
    await putOnBench(opened, demo.name);
    return;
  }
  if (jobStore.getState().job === null || saveJob(jobStore.getState().job!) === saveJob(opened.job))
    return;
  say({
    tone: 'said',
    text: 'This is the demo job as you left it.',
    actions: [{ label: 'start it afresh', act: () => void openText(text, demo.name) }],
  });
}

/** Brings a job kept on this device back onto the bench, unfinished or not. */
export async function openKept(id: string, session?: Session): Promise<boolean> {
  const kept = await keeper.read(id);
  const opened = kept && openJob(kept.text, kept.title);
  if (opened?.ok !== true) return false;
  show(opened.job, session);
  return true;
}

function fileName(title: string): string {
  const plain = title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return plain === '' ? 'job' : plain.slice(0, 80);
}
