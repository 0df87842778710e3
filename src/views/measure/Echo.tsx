/** What is being typed and what was entered last, both large enough to be read at arm's length. */

import type { TableReading } from '../../job/table.ts';
import { useAccepted } from '../../store/accepted.ts';
import { inside } from '../../store/entry.ts';
import { useEntryWays } from '../../store/entryWays.ts';
import { useSession } from '../../store/session.ts';
import type { Laid } from '../../store/tables.ts';
import { cellText, wholeDraft } from '../../store/typing.ts';
import { Words } from '../parts/Words.tsx';

export function Echo({ laid }: { readonly laid: Laid }) {
  return (
    <div className="echo">
      <Now laid={laid} />
      <Last laid={laid} />
    </div>
  );
}

function Now({ laid }: { readonly laid: Laid }) {
  const draft = useSession((session) => session.draft);
  const cell = useSession((session) => session.cell);
  // Whether last digits are completed decides what a draft will be.
  useEntryWays((ways) => ways.lastDigits);
  const here = inside(cell, laid.size);
  const stands = cellText(laid, here);
  const clock = laid.table.clocks[here.column]?.text ?? '';
  const depth = laid.table.rows[here.row]?.depthText ?? '';
  const whole = draft === null ? null : wholeDraft(laid, draft);
  const text = whole === null ? stands : whole.ok ? whole.text : draft!;
  const tries = text.split(';').map((one) => one.trim());
  const shown = tries.at(-1) ?? '';
  return (
    <p className="echo-pane">
      <span className="echo-place">
        <b>
          <Words text={`${clock} at ${depth} deep`} />
        </b>
        {tries.length > 1 && `, try ${tries.length}`}
        {draft === null && stands !== '' && ', as it stands'}
      </span>
      <output className="echo-value" aria-label="Typed so far" data-typing={draft !== null}>
        {shown}
      </output>
      {whole?.ok === false && (
        <span className="fault" role="status">
          {whole.either.join(' or ')}? Type it whole.
        </span>
      )}
    </p>
  );
}

function Last({ laid }: { readonly laid: Laid }) {
  const last = useAccepted((accepted) => accepted.last);
  const { bore, survey } = laid.bench;
  if (last === null || last.bore !== bore.id || last.survey !== survey.id) return null;
  // As it stands now: a doubt may have been answered, or a step taken back.
  const now = readingOf(laid, last.ids.at(-1));
  return (
    <p className="echo-pane echo-last">
      <span className="echo-place">
        entered: <Words text={`${last.clock} at ${last.depth} deep`} />
        {now?.leftOut && ', left out'}
      </span>
      <span className="echo-value" data-entered="true" data-left-out={now?.leftOut}>
        {now?.text ?? 'empty'}
      </span>
    </p>
  );
}

function readingOf({ table }: Laid, id: string | undefined): TableReading | undefined {
  const all = table.rows.flatMap(({ cells }) => cells.flatMap(({ readings }) => readings));
  return all.find((one) => one.id === id);
}
