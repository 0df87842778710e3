/** The bore in three dimensions. Loaded on its own, after the notebook. */
import { Canvas } from '@react-three/fiber';
import type { Theme } from '../../figures/colour.ts';
import type { PieceFigure } from '../../figures/piece.ts';
import { Rig } from './Rig.tsx';

interface Props {
  readonly figure: PieceFigure;
  readonly theme: Theme;
  readonly still: boolean;
}

export default function Scene({ figure, theme, still }: Props) {
  return (
    <Canvas
      frameloop="demand"
      dpr={[1, 2]}
      flat
      linear
      gl={{ antialias: true, alpha: true, powerPreference: 'low-power' }}
    >
      <Rig figure={figure} theme={theme} still={still} />
    </Canvas>
  );
}
