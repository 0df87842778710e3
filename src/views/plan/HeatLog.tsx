/** What a squeeze brought, measured cold, and the shop's log that it is written to and learned from. */
import { type HeatDone, heatWords, logRows, logWords } from '../../figures/heatWords.ts';
import { nearHour, nearPair } from '../../figures/nearClock.ts';
import { giveOf } from '../../figures/squeezeWords.ts';
import { pairText } from '../../job/clock.ts';
import { isLogged, squeezeEntry, withoutSqueeze, withSqueeze } from '../../job/squeezeLog.ts';
import { changeShop, saveShopFile } from '../../store/shopFile.ts';
import { useShop } from '../../store/useShop.ts';
import { TableRoom } from '../parts/TableRoom.tsx';
import { MendingLength } from './mendingFields.tsx';
import type { PartProps } from './partProps.ts';
import { Said } from './Said.tsx';

export function HeatLog({ bench, found }: PartProps) {
  const { heat } = found;
  return (
    <>
      {heat !== null && <Done bench={bench} found={found} heat={heat} />}
      <Log bench={bench} found={found} />
    </>
  );
}

interface DoneProps extends PartProps {
  readonly heat: HeatDone;
}

function Done({ bench, found, heat }: DoneProps) {
  const { job, surveySeen } = bench;
  const words = heatWords(heat, giveOf(surveySeen), job.units);
  const of = { bench, way: 'squeeze' } as const;
  const other = nearPair(heat.jaws + Math.PI / 2);
  return (
    <>
      <h4>What the squeeze brought</h4>
      <p>{words.where}</p>
      <p className="facts">
        The jaws, at {nearHour(heat.jaws)} and {nearHour(heat.jaws + Math.PI)} o’clock, moved in by{' '}
        <MendingLength {...of} of="moved" label="How far the jaws moved in while hot, across" />{' '}
        across while it was hot.{' '}
        {heat.after === null ? (
          <>
            Cold, there, it measures{' '}
            <MendingLength {...of} of="along" label="Measured cold along the jaws, across" /> across
            along {nearPair(heat.jaws)} and{' '}
            <MendingLength
              {...of}
              of="between"
              label="Measured cold straight across from the jaws, across"
            />{' '}
            along {other}; or measure it all as a stage after squeezing.
          </>
        ) : (
          `Measured cold: the stage “${heat.after}”.`
        )}
      </p>
      {words.brought.length > 0 && <Said lines={words.brought} />}
      {words.pairs.length > 0 && <Pairs pairs={words.pairs} units={job.units} />}
      <Write bench={bench} found={found} heat={heat} />
    </>
  );
}

interface PairsProps {
  readonly pairs: ReturnType<typeof heatWords>['pairs'];
  readonly units: string;
}

function Pairs({ pairs, units }: PairsProps) {
  return (
    <TableRoom label="What the squeeze changed at each pair of clock positions">
      <table className="sections">
        <caption>Before and after the squeeze, {units} across; minus is wider than before</caption>
        <thead>
          <tr>
            <th scope="col">along</th>
            <th scope="col">before</th>
            <th scope="col">after, cold</th>
            <th scope="col">closed by</th>
          </tr>
        </thead>
        <tbody>
          {pairs.map(({ pair, before, after, closed }) => (
            <tr key={pair}>
              <th scope="row">{pair}</th>
              <td>{before}</td>
              <td>{after}</td>
              <td>{closed}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableRoom>
  );
}

function Write({ bench: { job, bore }, heat }: DoneProps) {
  const shop = useShop((state) => state.shop);
  const { brought, after } = heat;
  if (brought === null || Number.isNaN(brought.came)) return null;
  const across = brought.across.map(({ theta, ...one }) => ({ clock: pairText(theta), ...one }));
  const note = [job.title, bore.name, after ?? ''].filter((text) => text !== '').join(', ');
  const entry = squeezeEntry({ ...brought, across }, job.units, new Date().toISOString(), note);
  if (isLogged(shop, entry)) return <p className="soft">This squeeze stands in the shop’s log.</p>;
  return (
    <p>
      <button
        type="button"
        className="plain-button"
        onClick={() =>
          changeShop((now) => withSqueeze(now, entry), 'The squeeze is in the shop’s log.')
        }
      >
        write it to the shop’s log
      </button>
    </p>
  );
}

function Log({ bench: { job }, found }: PartProps) {
  const shop = useShop((state) => state.shop);
  const rows = logRows(found.facts, job.units);
  if (rows.length === 0) {
    return (
      <p className="soft">
        No squeeze stands in this shop’s log yet: what springs back and how far the mean draws in is
        estimated. Each that is logged makes it surer.
      </p>
    );
  }
  return (
    <>
      <h4>Squeezes of this shop</h4>
      <p>{logWords(found)}</p>
      <TableRoom label="Squeezes in this shop’s log">
        <table className="sections">
          <caption>The shop’s log, {job.units} across</caption>
          <thead>
            <tr>
              <th scope="col">bore</th>
              <th scope="col">jaws moved</th>
              <th scope="col">stayed</th>
              <th scope="col">sprang back</th>
              <th scope="col">mean drew in, of its size</th>
              <td />
            </tr>
          </thead>
          <tbody>
            {rows.map(({ when, what, moved, stayed, sprang, drew }, place) => (
              <tr key={place}>
                <th scope="row">
                  {what} {when}
                </th>
                <td>{moved}</td>
                <td>{stayed}</td>
                <td>{sprang}</td>
                <td>{drew}</td>
                <td>
                  <button
                    type="button"
                    className="link-button"
                    aria-label={`Take squeeze ${place + 1} out of the log`}
                    onClick={() =>
                      changeShop(
                        (now) => withoutSqueeze(now, place),
                        'The squeeze is out of the shop’s log.',
                      )
                    }
                  >
                    take out
                  </button>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableRoom>
      {shop !== null && (
        <p>
          Kept on this device, for every job;{' '}
          <button type="button" className="link-button" onClick={() => void saveShopFile(shop)}>
            save the log and what is at hand to a file
          </button>
          . Opening such a file puts it back.
        </p>
      )}
    </>
  );
}
