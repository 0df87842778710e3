import type { Theme } from '../figures/colour.ts';
import type { SectionWords } from '../figures/sectionWords.ts';
import { CircleLine } from './CircleLine.tsx';

interface Props {
  readonly circles: SectionWords['circles'];
  readonly theme: Theme;
}

/** Which circle of a section is which, with its diameter across. */
export function CircleKey({ circles, theme }: Props) {
  return (
    <ul className="circle-key" aria-label="Circles, diameters across">
      {circles.map(({ kind, name, diameter }) => (
        <li key={kind}>
          <svg
            xmlns="http://www.w3.org/2000/svg"
            viewBox="0 0 28 14"
            width={28}
            height={14}
            aria-hidden="true"
          >
            <CircleLine kind={kind} x={14} y={44} radius={38} theme={theme} />
          </svg>
          <span>
            {name} <b className="number">{diameter}</b>
          </span>
        </li>
      ))}
    </ul>
  );
}
