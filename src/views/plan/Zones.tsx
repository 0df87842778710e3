/** The map in words: each zone where it is, how much, and where it feathers out. A tap shows it in the drawing. */
import type { Zone } from '../../bore/types.ts';
import { nearClock } from '../../figures/nearClock.ts';
import { linearAt } from '../../figures/sample.ts';
import { written } from '../../figures/written.ts';
import { zoneWords } from '../../figures/zoneWords.ts';
import { formatDepth } from '../../job/units.ts';
import { useSession } from '../../store/session.ts';
import { Figure } from '../parts/Figure.tsx';
import { Words } from '../parts/Words.tsx';
import type { Worked } from './worked.ts';

export function Zones({ bench }: { readonly bench: Worked }) {
  const { zones } = bench.surveySeen;
  const high = zones.filter(({ kind }) => kind === 'high');
  const low = zones.filter(({ kind }) => kind === 'low');
  return (
    <>
      {high.length > 0 && (
        <>
          <h3>
            <Words text="High spots: take off" />
          </h3>
          <ul className="zones">
            {high.map((zone, i) => (
              // By its rank: a figure that settles leaves the line, and the focus in it, where it is.
              <ZoneLine key={i} bench={bench} zone={zone} />
            ))}
          </ul>
          <Cautions />
        </>
      )}
      {low.length > 0 && (
        <>
          <h3>
            <Words text="Low spots: metal is missing" />
          </h3>
          <ul className="zones">
            {low.map((zone, i) => (
              <ZoneLine key={i} bench={bench} zone={zone} />
            ))}
          </ul>
        </>
      )}
    </>
  );
}

interface ZoneLineProps {
  readonly bench: Worked;
  readonly zone: Zone;
}

function ZoneLine({ bench, zone }: ZoneLineProps) {
  const look = useSession((session) => session.look);
  const { where, action, amount, rest } = zoneWords(
    zone,
    bench.boreSeen.facts.length.mm,
    bench.job.units,
  );
  return (
    <li data-kind={zone.kind}>
      <p>
        <b>{where}</b>: {action}
        <Figure text={amount} tone={zone.kind === 'high' ? 'take-off' : 'short'} />
        <Words text={rest} /> <Sure bench={bench} zone={zone} />
      </p>
      <button
        type="button"
        className="link-button"
        onClick={() => look({ cursor: { theta: zone.theta, z: zone.z } })}
      >
        show {nearClock(zone.theta)}, {formatDepth(zone.z, bench.job.units)} deep
      </button>
    </li>
  );
}

/** How much of a high spot comes off whatever the readings' doubt. */
function Sure({ bench, zone }: ZoneLineProps) {
  const { surface, removal } = bench.surveySeen;
  if (zone.kind !== 'high' || surface === null || removal === null) return null;
  const sure = linearAt(surface.grid, removal.sure, zone.theta, zone.z);
  const { perSide } = written(bench.job.units, zone.give);
  if (!(sure > 0)) return <Words text="Within the give-or-take: measure again before grinding." />;
  return <>Of that, {perSide(sure)} is sure.</>;
}

function Cautions() {
  return (
    <ul className="cautions">
      <li>
        Stop short: take half of what is left, wipe, let it cool, measure. A bore that is hand-warm
        reads large. The last 0.001 in (0.02 mm) across comes off with strip.
      </li>
      <li>
        Mark the zones on the metal by clock hour, seen from face A, before the first spark; a map
        read from the wrong face grinds the wrong side.
      </li>
      <li>
        Eyes, ears and lungs covered; grease and anything that burns away from the sparks. A flap
        wheel follows the hole and does not make it round; a drum dwelt at the rim makes a
        bell-mouth.
      </li>
    </ul>
  );
}
