/** The map in words: each zone where it is, how much, and where it feathers out. A tap shows it in the drawing. */
import { memo } from 'react';
import type { Zone } from '../../bore/types.ts';
import type { BoreFacts, SurveyEvaluation } from '../../evaluate.ts';
import { nearClock } from '../../figures/nearClock.ts';
import { linearAt } from '../../figures/sample.ts';
import { written } from '../../figures/written.ts';
import { zoneWords } from '../../figures/zoneWords.ts';
import type { Units } from '../../job/schema.ts';
import { formatDepth } from '../../job/units.ts';
import { useSession } from '../../store/session.ts';
import { Figure } from '../parts/Figure.tsx';
import { Words } from '../parts/Words.tsx';

export interface ZonesProps {
  readonly survey: SurveyEvaluation;
  readonly facts: BoreFacts;
  readonly units: Units;
}

export const Zones = memo(function Zones(of: ZonesProps) {
  const { zones } = of.survey;
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
              <ZoneLine key={i} {...of} zone={zone} />
            ))}
          </ul>
          <StillCautions />
        </>
      )}
      {low.length > 0 && (
        <>
          <h3>
            <Words text="Low spots: metal is missing" />
          </h3>
          <ul className="zones">
            {low.map((zone, i) => (
              <ZoneLine key={i} {...of} zone={zone} />
            ))}
          </ul>
        </>
      )}
    </>
  );
});

interface ZoneLineProps extends ZonesProps {
  readonly zone: Zone;
}

function ZoneLine({ survey, facts, units, zone }: ZoneLineProps) {
  const look = useSession((session) => session.look);
  const { where, action, amount, rest } = zoneWords(zone, facts.length.mm, units);
  return (
    <li data-kind={zone.kind}>
      <p>
        <b>{where}</b>: {action}
        <Figure text={amount} tone={zone.kind === 'high' ? 'take-off' : 'short'} />
        <Words text={rest} /> <Sure {...{ survey, units, zone }} />
      </p>
      <button
        type="button"
        className="link-button"
        onClick={() => look({ cursor: { theta: zone.theta, z: zone.z } })}
      >
        show {nearClock(zone.theta)}, {formatDepth(zone.z, units)} deep
      </button>
    </li>
  );
}

/** How much of a high spot comes off whatever the readings' doubt. */
function Sure({ survey, units, zone }: Omit<ZoneLineProps, 'facts'>) {
  const { surface, removal } = survey;
  if (zone.kind !== 'high' || surface === null || removal === null) return null;
  const sure = linearAt(surface.grid, removal.sure, zone.theta, zone.z);
  const { perSide } = written(units, zone.give);
  if (!(sure > 0)) return <Words text="Within the give-or-take: measure again before grinding." />;
  return <>Of that, {perSide(sure)} is sure.</>;
}

const StillCautions = memo(Cautions);

function Cautions() {
  return (
    <ul className="cautions">
      <li>
        Stop short: take half of what is left, wipe, let it cool, measure. A bore that is hand-warm
        reads large. The last 0.001 in (0.025 mm) across comes off with strip.
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
