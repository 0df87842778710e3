/** The bore in three dimensions. Loaded on its own, after the notebook. */
import { Canvas } from '@react-three/fiber';
import type { RefObject } from 'react';
import type { Theme } from '../../figures/colour.ts';
import type { CutHold } from './CutHandle.tsx';
import { Rig } from './Rig.tsx';
import type { Overlaid } from './useOverlaid.ts';

interface Props {
  readonly overlaid: Overlaid;
  readonly theme: Theme;
  readonly still: boolean;
  readonly hold: RefObject<CutHold>;
}

export default function Scene(props: Props) {
  return (
    <Canvas
      frameloop="demand"
      dpr={[1, 2]}
      flat
      linear
      gl={{ antialias: true, alpha: true, powerPreference: 'low-power' }}
    >
      <Rig {...props} />
    </Canvas>
  );
}
