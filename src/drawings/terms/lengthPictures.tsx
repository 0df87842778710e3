/** Terms of what one sees where the bore is cut in half: how its size changes along it, where the bushing holds. */
import type { ReactNode } from 'react';
import type { TermId } from '../../figures/termNames.ts';
import { AsNew, Cut, edge, Faces, straight, xAt } from './long.tsx';
import { Arrow, Label, MIDDLE } from './ring.tsx';

type LengthTerm = Extract<
  TermId,
  'bell-mouth' | 'taper' | 'barrel' | 'waist' | 'crossed-wear' | 'seat' | 'feather'
>;

const WORN = 11;

export const LENGTH_PICTURES: Readonly<Record<LengthTerm, () => ReactNode>> = {
  'bell-mouth': () => (
    <>
      <Cut upper={(share) => WORN * Math.max(0, 1 - share / 0.35) ** 2} />
      <AsNew />
      <Faces />
    </>
  ),
  taper: () => (
    <>
      <Cut upper={(share) => WORN * (1 - share)} />
      <AsNew />
      <Faces />
    </>
  ),
  barrel: () => (
    <>
      <Cut upper={(share) => WORN * (1 - (2 * share - 1) ** 2)} />
      <AsNew />
      <Faces />
    </>
  ),
  waist: () => (
    <>
      <Cut upper={(share) => WORN * (2 * share - 1) ** 2} />
      <AsNew />
      <Faces />
    </>
  ),
  'crossed-wear': () => (
    <>
      <Cut
        upper={(share) => WORN * Math.max(0, 2 * share - 1)}
        lower={(share) => WORN * Math.max(0, 1 - 2 * share)}
      />
      <AsNew />
      <Faces />
    </>
  ),
  seat: () => (
    <>
      <Cut upper={(share) => (share > 0.15 && share < 0.4 ? 5 : 0)} lower={straight} />
      {([-1, 1] as const).map((side) => (
        <rect
          key={side}
          x={xAt(0)}
          y={side < 0 ? edge(-1, 0) : edge(1, 0) - 9}
          width={xAt(0.75) - xAt(0)}
          height={9}
          fill="var(--accent-ground)"
          stroke="var(--copper)"
        />
      ))}
      <Label x={xAt(0.37)} y={MIDDLE.y + 4} anchor="middle" colour="var(--copper-text)">
        bushing
      </Label>
      <Arrow from={{ x: xAt(0.28), y: 10 }} to={{ x: xAt(0.28), y: edge(-1, 2) }} />
      <Label x={xAt(0.34)} y={13}>
        does not touch
      </Label>
    </>
  ),
  feather: () => (
    <>
      <Cut
        upper={(share) => WORN * 0.8 * Math.exp(-(((share - 0.5) / 0.2) ** 2))}
        lower={straight}
      />
      <AsNew />
      <Arrow from={{ x: xAt(0.5), y: edge(-1, -22) }} to={{ x: xAt(0.5), y: edge(-1, 6) }} />
      <Label x={xAt(0.5)} y={edge(-1, -34)} anchor="middle">
        deepest
      </Label>
      <Label x={xAt(0.02)} y={edge(-1, -8)}>
        nothing
      </Label>
      <Label x={xAt(0.98)} y={edge(-1, -8)} anchor="end">
        nothing
      </Label>
    </>
  ),
};
