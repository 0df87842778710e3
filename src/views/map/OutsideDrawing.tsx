/**
 * A pin or a bushing's outside: not a hole, so that it is drawn flat. Of a pin its surface against the finished size, rolled
 * out and lying; of either its sizes along the depth.
 */
import { useId, useMemo, useRef } from 'react';
import { PinMap } from '../../drawings/PinMap.tsx';
import { ProfileView } from '../../drawings/ProfileView.tsx';
import type { Theme } from '../../figures/colour.ts';
import { PIN_MAP_BRIEF, PIN_MAP_WORDS, pinMap } from '../../figures/pinMap.ts';
import { profileFigure } from '../../figures/profileFigure.ts';
import { inUnits } from '../../job/units.ts';
import { useCursor } from '../../store/useCursor.ts';
import { usePlanOfPin } from '../../store/usePlanOfPin.ts';
import { Grown } from '../parts/Grown.tsx';
import type { Worked } from '../plan/worked.ts';
import { useSize } from '../useSize.ts';
import './map.css';

interface Props {
  readonly bench: Worked;
  readonly theme: Theme;
}

/** As high as this at most, px; the words take what is left. */
const MOST_HIGH = 420;
const SHARE = 0.68;
/** From this height on, px, map and sizes both have room. */
const BOTH = 420;
const MAP_SHARE = 0.46;
const SIZES_SHARE = 0.32;

export function OutsideDrawing({ bench, theme }: Props) {
  const { boreSeen: part, job } = bench;
  const map = usePinMap(bench);
  const id = useId();
  const room = useRef<HTMLElement>(null);
  const { width, height } = useSize(room);
  const both = map !== null && height >= BOTH;
  const whole = Math.min(MOST_HIGH, Math.round(SHARE * height));
  const draw = width > 0 && whole > 0;
  return (
    <figure className="outside-drawing" ref={room}>
      {map !== null && draw && (
        <Grown theme={theme} width={width} height={both ? Math.round(MAP_SHARE * height) : whole}>
          {(across, down) => (
            <PinMap map={map} theme={theme} width={across} height={down} id={`${id}-map`} />
          )}
        </Grown>
      )}
      {(map === null || both) && draw && (
        <Sizes
          {...{ bench, theme, width }}
          height={both ? Math.round(SIZES_SHARE * height) : whole}
        />
      )}
      <figcaption>
        {map !== null && `${part.name}. ${both ? PIN_MAP_WORDS : PIN_MAP_BRIEF} `}
        {map?.assumed != null && `Assumed: ${map.assumed}. `}
        {(map === null || both) &&
          `${map === null ? part.name : 'Below'}: diameter across against depth, both in ${
            job.units === 'in' ? 'inches' : 'millimetres'
          }, face A at the left. Full line: mean; dashed: least; dotted: greatest; bars: least to greatest at the measured depths.`}
        {map === null && ' An outside is not drawn as a hole.'}
      </figcaption>
    </figure>
  );
}

/** Null where the part is no pin, or its plan is not there yet. */
function usePinMap(bench: Worked) {
  const { surveySeen, boreSeen, job } = bench;
  const plan = usePlanOfPin(bench);
  return useMemo(
    () => plan && pinMap(surveySeen, boreSeen, plan, job.units),
    [surveySeen, boreSeen, plan, job.units],
  );
}

interface SizesProps extends Props {
  readonly width: number;
  readonly height: number;
}

function Sizes({ bench: { boreSeen, surveySeen, job }, theme, width, height }: SizesProps) {
  const { units } = job;
  const cursor = useCursor();
  const profile = useMemo(
    // Nothing sits in an outside.
    () => profileFigure(surveySeen, { ...boreSeen.facts, seats: [] }, units),
    [surveySeen, boreSeen.facts, units],
  );
  if (profile === null) return null;
  return (
    <Grown theme={theme} width={width} height={height}>
      {(across, down) => (
        <ProfileView
          profile={profile}
          theme={theme}
          width={Math.round(across)}
          height={Math.round(down)}
          at={cursor === null ? null : inUnits(cursor.z, units)}
        />
      )}
    </Grown>
  );
}
