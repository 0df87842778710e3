import type { Palette } from '../figures/colour.ts';

/** Slanting lines for what is uncertain: dark and pale side by side, so that they show on every colour. */
export function HatchPattern({ id, palette }: { readonly id: string; readonly palette: Palette }) {
  return (
    <pattern
      id={id}
      width={6}
      height={6}
      patternUnits="userSpaceOnUse"
      patternTransform="rotate(45)"
    >
      <rect width={6} height={6} fill={palette.ground} opacity={0.42} />
      <rect width={1.3} height={6} fill={palette.ink} opacity={0.7} />
    </pattern>
  );
}
