/** The map in words: each zone where it is, how much, and where it feathers out. A tap shows it in the drawing. */
import { memo } from 'react';
import type { Zone } from '../../bore/types.ts';
import type { Passes } from '../../evaluate/passes.ts';
import type { BoreFacts, SurveyEvaluation } from '../../evaluate.ts';
import { nearClock } from '../../figures/nearClock.ts';
import { NOT_YET, sureWords } from '../../figures/waitWords.ts';
import { zoneWords } from '../../figures/zoneWords.ts';
import type { Units } from '../../job/schema.ts';
import { formatDepth } from '../../job/units.ts';
import { answerFor } from '../../store/aside.ts';
import { usePasses } from '../../store/passes.ts';
import { useSession } from '../../store/session.ts';
import { Figure } from '../parts/Figure.tsx';
import { Words } from '../parts/Words.tsx';

export interface ZonesProps {
  readonly bore: { readonly id: string };
  readonly survey: SurveyEvaluation;
  readonly facts: BoreFacts;
  readonly units: Units;
}

export const Zones = memo(function Zones(of: ZonesProps) {
  const { zones } = of.survey;
  // As long as the passes are not worked out the zones are told as they are.
  const waits = usePasses((state) => isWaiting(answerFor(state, of.bore, of.survey)));
  const high = zones.filter(({ kind }) => kind === 'high');
  const low = zones.filter(({ kind }) => kind === 'low');
  return (
    <>
      {high.length > 0 && (
        <>
          <h3>
            <Words text={waits ? NOT_YET : 'High spots: take off'} />
          </h3>
          <ul className="zones">
            {high.map((zone, i) => (
              // By its rank: a figure that settles leaves the line, and the focus in it, where it is.
              <ZoneLine key={i} {...of} {...{ zone, waits }} />
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
              <ZoneLine key={i} {...of} {...{ zone, waits }} />
            ))}
          </ul>
        </>
      )}
    </>
  );
});

function isWaiting(passes: Passes | null): boolean {
  return passes !== null && passes.plan.waits !== null;
}

interface ZoneLineProps extends ZonesProps {
  readonly zone: Zone;
  /** No pass is given until it is measured better. */
  readonly waits: boolean;
}

function ZoneLine({ survey, facts, units, zone, waits }: ZoneLineProps) {
  const look = useSession((session) => session.look);
  const { where, action, amount, rest } = zoneWords(zone, facts.length.mm, units, waits);
  return (
    <li data-kind={zone.kind}>
      <p>
        <b>{where}</b>: {action}
        <Figure text={amount} tone={zone.kind === 'high' ? 'take-off' : 'short'} />
        <Words text={`${rest} ${sureWords(zone, survey, units, waits)}`} />
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
