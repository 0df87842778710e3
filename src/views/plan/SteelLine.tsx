/** What is known of the steel that is welded: its carbon equivalent, its parts, or nothing. */
import { setMending } from '../../job/edits.ts';
import { SteelPart } from '../../job/schema.ts';
import { useJob } from '../../store/useJob.ts';
import { Choice } from '../parts/Choice.tsx';
import { PlainNumber } from './mendingFields.tsx';
import type { Worked } from './worked.ts';

const KNOWN = [
  { value: 'nothing', text: 'is not known' },
  { value: 'equivalent', text: 'is known by its carbon equivalent' },
  { value: 'parts', text: 'is known by its parts' },
] as const;

const NAMES: Readonly<Record<SteelPart, string>> = {
  C: 'carbon',
  Mn: 'manganese',
  Cr: 'chromium',
  Mo: 'molybdenum',
  V: 'vanadium',
  Ni: 'nickel',
  Cu: 'copper',
};

export function SteelLine({ bench: { bore } }: { readonly bench: Worked }) {
  const edit = useJob((state) => state.edit);
  const { carbon, steel = {}, known } = bore.decisions.weld ?? {};
  const shown = known ?? ((carbon ?? '') === '' ? 'nothing' : 'equivalent');
  return (
    <p className="facts">
      The steel{' '}
      <Choice
        label="What is known of the steel"
        value={shown}
        options={KNOWN}
        onChoose={(one) => edit((now) => setMending(now, bore.id, 'weld', 'known', one))}
      />
      {shown === 'equivalent' && (
        <>
          :{' '}
          <PlainNumber
            label="Carbon equivalent of the steel, per cent"
            text={carbon}
            onEnter={(text) => edit((now) => setMending(now, bore.id, 'weld', 'carbon', text))}
          />{' '}
          %.
        </>
      )}
      {shown === 'nothing' && '.'}
      {shown === 'parts' && (
        <>
          , from its papers, per cent by weight:{' '}
          {SteelPart.options.map((part, i) => (
            <span key={part} className="steel-part">
              {part}{' '}
              <PlainNumber
                label={`${NAMES[part]} (${part}), per cent by weight`}
                text={steel[part]}
                onEnter={(text) =>
                  edit((now) => {
                    const { [part]: _, ...others } = steel;
                    const next = text === undefined ? others : { ...others, [part]: text };
                    return setMending(now, bore.id, 'weld', 'steel', next);
                  })
                }
              />
              {i < SteelPart.options.length - 1 ? ', ' : '.'}
            </span>
          ))}{' '}
          One that is left out counts for nothing.
        </>
      )}
    </p>
  );
}
