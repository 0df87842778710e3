/** Where the bushing presses in the bore as it is, and what shape its own bore takes. */
import { useId, useMemo, useRef } from 'react';
import { PRESSURE_MAP_HEIGHT, PressureMap } from '../../drawings/PressureMap.tsx';
import type { RoundFit } from '../../evaluate/fit/round.ts';
import { grownBy } from '../../figures/colour.ts';
import { pressureUnit } from '../../figures/loads.ts';
import { pressureMap } from '../../figures/pressureMap.ts';
import { ROUND_TAKEN, roundWords } from '../../figures/roundWords.ts';
import { useTheme } from '../../store/theme.ts';
import { Grown } from '../parts/Grown.tsx';
import { Said } from '../plan/Said.tsx';
import { useSize } from '../useSize.ts';
import type { FitProps } from './fitProps.ts';
import './fitRound.css';

export function RoundPart({ bench: { job }, one }: FitProps) {
  const { round, seated } = one;
  const words = roundWords(round, job.units);
  return (
    <div className="fit-part">
      <Said lines={words} />
      {round.fit && round.fit.touching > 0 && (
        <Pressed wall={seated.wall} fit={round.fit} units={job.units} said={words.join(' ')} />
      )}
      {round.fit && <p className="soft">{ROUND_TAKEN}</p>}
    </div>
  );
}

interface PressedProps {
  readonly wall: FitProps['one']['seated']['wall'];
  readonly fit: RoundFit;
  readonly units: FitProps['bench']['job']['units'];
  readonly said: string;
}

function Pressed({ wall, fit, units, said }: PressedProps) {
  const theme = useTheme((state) => state.shown);
  const root = useRef<HTMLElement>(null);
  const { width } = useSize(root);
  const id = useId();
  const map = useMemo(() => pressureMap(wall, fit, units), [wall, fit, units]);
  return (
    <figure ref={root} style={{ minHeight: PRESSURE_MAP_HEIGHT }}>
      {width > 0 && (
        <Grown theme={theme} width={width} height={PRESSURE_MAP_HEIGHT * grownBy(theme)}>
          {(w) => (
            <PressureMap
              map={map}
              theme={theme}
              width={w}
              id={id}
              label={`Where the bushing presses, rolled out, 12 o’clock in the middle. ${said}`}
            />
          )}
        </Grown>
      )}
      <figcaption className="soft">
        The wall rolled out as seen from inside, rim on top, clock seen from face A: the darker, the
        harder it presses ({pressureUnit(units)}); hatched, it does not touch. Dot: hardest.
        {map.widest && ' Ring: widest gap.'}
      </figcaption>
    </figure>
  );
}
