/** Filling the reading table: typing into the current cell, entering it, going on. For keyboard and keypad alike. */
import { pasteBlock, setCell } from '../job/edits.ts';
import { type Completed, completeCell, type Stem, stemOf } from '../job/lastDigits.ts';
import { accept } from './accepted.ts';
import { attempt } from './attempt.ts';
import { awake } from './awake.ts';
import { cellBefore, cellBeside, firstCell, inside, nextCell } from './entry.ts';
import { useEntryWays } from './entryWays.ts';
import { jobStore } from './job.ts';
import { say } from './page.ts';
import { type Cell, useSession } from './session.ts';
import { type Laid, tableNow } from './tables.ts';

const look = useSession.getState().look;

/** Text that stands in a cell; '' for an empty one. */
export function cellText({ table }: Laid, { row, column }: Cell): string {
  return table.rows[row]?.cells[column]?.text ?? '';
}

/** The cell that the next reading goes into; the session may remember one of a larger table. */
export function currentCell(laid: Laid): Cell {
  return inside(useSession.getState().cell, laid.size);
}

/** What the readings of this table allow to be left out of the next; null: nothing, or nobody wants it. */
export function stemNow(laid: Laid): Stem | null {
  if (!useEntryWays.getState().lastDigits) return null;
  const { job, survey } = laid.bench;
  const unit = useSession.getState().unit ?? job.units;
  const counted = laid.table.rows
    .flatMap(({ cells }) => cells.flatMap(({ readings }) => readings))
    .filter(({ ok, leftOut, row }) => ok && !leftOut && survey.readings[row]?.value.unit === unit)
    .sort((a, b) => a.row - b.row);
  return stemOf(
    counted.map(({ row }) => survey.readings[row]!.value.text),
    unit,
  );
}

/** What a draft will be once it is entered; itself where nothing is left out. */
export function wholeDraft(laid: Laid, draft: string): Completed {
  const stem = stemNow(laid);
  return stem === null ? { ok: true, text: draft } : completeCell(draft, stem);
}

/** Writes what has been typed into its cell. Last digits that could be two figures are written as they are typed. */
export function commit(): void {
  const laid = tableNow();
  const { draft, unit } = useSession.getState();
  if (laid === null || draft === null) return;
  look({ draft: null });
  const { row, column } = currentCell(laid);
  if (draft.trim() === cellText(laid, { row, column })) return;
  const { bore, survey } = laid.bench;
  const whole = wholeDraft(laid, draft);
  const values = whole.ok ? whole.text : draft;
  const entry = { depth: row, clock: column, values, ...(unit === null ? {} : { unit }) };
  jobStore.getState().edit((job) => setCell(job, bore.id, survey.id, entry));
  announce({ row, column });
}

/** Tells of the cell that was just written, as it now stands. */
function announce({ row, column }: Cell): void {
  const laid = tableNow();
  const cell = laid?.table.rows[row]?.cells[column];
  if (laid === null || cell === undefined) return;
  const { bore, survey } = laid.bench;
  accept({
    bore: bore.id,
    survey: survey.id,
    clock: laid.table.clocks[column]?.text ?? '',
    depth: laid.table.rows[row]?.depthText ?? '',
    text: cell.text,
    ids: cell.readings.map(({ id }) => id),
  });
}

/** True while what is typed could be two figures, and must be typed whole. */
function undecided(): boolean {
  const laid = tableNow();
  const { draft } = useSession.getState();
  return laid !== null && draft !== null && !wholeDraft(laid, draft).ok;
}

/** What stands in the current cell while it is typed, whatever the keys are. */
export function type(draft: string | null): void {
  look({ draft });
  stir();
}

/** Somebody is at work here: the screen stays on, where that is wanted. */
function stir(): void {
  if (useEntryWays.getState().awake) awake.touch();
}

/** Goes to a cell, entering what was typed before. */
function goTo(cell: Cell): void {
  commit();
  look({ cell });
}

export function goBeside(down: number, right: number): void {
  const laid = tableNow();
  if (laid !== null) goTo(cellBeside(currentCell(laid), down, right, laid.size));
}

/** Enters the reading and goes on; after the last cell, to the first that is still empty, if any. */
export function enter(): void {
  stir();
  if (undecided()) return;
  commit();
  goOn();
}

/** Leaves the cell as it was and goes on. */
export function skip(): void {
  look({ draft: null });
  goOn();
}

function goOn(): void {
  const laid = tableNow();
  if (laid === null) return;
  const { order } = useSession.getState();
  const here = currentCell(laid);
  const next = nextCell(here, order, laid.size);
  if (next !== null) {
    look({ cell: next });
    return;
  }
  const empty = (cell: Cell) => cellText(laid, cell) === '';
  const first = firstCell(order, laid.size, empty);
  if (empty(first)) look({ cell: first });
}

export function goBack(): void {
  commit();
  const laid = tableNow();
  if (laid === null) return;
  const before = cellBefore(currentCell(laid), useSession.getState().order, laid.size);
  if (before !== null) look({ cell: before });
}

/** A key of the page's own keypad; the first one replaces what stands in the cell. */
export function typeKey(key: string): void {
  type((useSession.getState().draft ?? '') + key);
}

/** Begins one more reading at the same place. */
export function typeAgain(): void {
  const laid = tableNow();
  if (laid === null) return;
  const stands = (useSession.getState().draft ?? cellText(laid, currentCell(laid))).trim();
  if (stands !== '' && !stands.endsWith(';')) type(`${stands}; `);
}

export function rubOut(): void {
  const laid = tableNow();
  if (laid === null) return;
  const text = useSession.getState().draft ?? cellText(laid, currentCell(laid));
  type(text.trimEnd().slice(0, -1));
}

/** None, plus, minus and round again, on the reading that is being typed. */
export function turnSign(): void {
  const draft = useSession.getState().draft ?? '';
  const at = draft.lastIndexOf(';') + 1;
  const before = draft.slice(0, at);
  const reading = draft.slice(at).trimStart();
  const size = reading.replace(/^[+−-]/, '');
  const sign = reading.startsWith('+') ? '−' : size === reading ? '+' : '';
  type(`${before}${at > 0 ? ' ' : ''}${sign}${size}`);
}

/** A block from a spreadsheet, from the current cell on; false where the text is no block. */
export function paste(text: string): boolean {
  if (!/[\t\n\r]/.test(text.trim())) return false;
  const laid = tableNow();
  if (laid === null) return false;
  look({ draft: null });
  const { row, column } = currentCell(laid);
  const { bore, survey } = laid.bench;
  const { unit } = useSession.getState();
  const of = unit === null ? {} : { unit };
  const why = attempt((job) => pasteBlock(job, bore.id, survey.id, row, column, text, of));
  say(why === null ? null : { tone: 'fault', text: why });
  return true;
}
