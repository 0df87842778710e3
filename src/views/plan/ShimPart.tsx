/** Shims: what the bore is ground to, which sheets fill it, and how each strip is cut. */
import { NO_SHIMS, type ShimWords, shimWords } from '../../figures/shimWords.ts';
import { TableRoom } from '../parts/TableRoom.tsx';
import { Words } from '../parts/Words.tsx';
import { MendingLength } from './mendingFields.tsx';
import type { PartProps } from './partProps.ts';
import { Said } from './Said.tsx';
import { SheetsAtHand } from './SheetsAtHand.tsx';
import { Strips } from './StripTable.tsx';

export function ShimPart({ bench, found }: PartProps) {
  const { shims } = found;
  const words = shims && shimWords(shims, found, bench.job.units);
  return (
    <>
      {words === null ? <p>{NO_SHIMS}</p> : <Said lines={words.stack} />}
      <Given bench={bench} found={found} />
      <SheetsAtHand bench={bench} found={found} />
      {words !== null && words.strips.length > 0 && (
        <>
          <Strips strips={words.strips} />
          <Said lines={words.rules} steps />
        </>
      )}
      {words !== null && (
        <>
          {words.partRound !== null && <PartRound partRound={words.partRound} />}
          <ul className="cautions">
            {words.cautions.map((caution) => (
              <li key={caution}>{caution}</li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}

function Given({ bench }: PartProps) {
  const of = { bench, way: 'shim' } as const;
  return (
    <p className="facts">
      The bore is ground round at{' '}
      <MendingLength
        {...of}
        of="round"
        label="Ground round at, across"
        placeholder="as the sheets ask"
      />{' '}
      across; the stack may miss by{' '}
      <MendingLength {...of} of="miss" usual="miss" label="How far the stack may miss, per side" />{' '}
      per side; ends left open by{' '}
      <MendingLength {...of} of="gap" usual="gap" label="Gap between the ends of a strip" />; tabs
      at the mouth{' '}
      <MendingLength {...of} of="tab" usual="tab" label="Length of the tabs at the mouth" /> long
      (0: none).
    </p>
  );
}

function PartRound({ partRound }: { readonly partRound: NonNullable<ShimWords['partRound']> }) {
  return (
    <>
      <p>
        <Words text={partRound.says} />
      </p>
      <TableRoom label="Part-round shim: thickness at each clock hour">
        <table className="sections">
          <caption>Part-round shim: thickness per side at each clock hour</caption>
          <thead>
            <tr>
              {partRound.hours.map(({ clock }) => (
                <th key={clock} scope="col">
                  {clock}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            <tr>
              {partRound.hours.map(({ clock, thickness }) => (
                <td key={clock}>{thickness}</td>
              ))}
            </tr>
          </tbody>
        </table>
      </TableRoom>
    </>
  );
}
