/** The passes of the survey on the bench, and the one that is looked at. No React; `usePasses` is for views. */
import { asideStore } from './aside.ts';
import { useSession } from './session.ts';

export const { use: usePasses, want: wantPasses } = asideStore('passes', {
  /** The pass that is looked at, from 0. */
  more: { pass: 0 },
  byShop: true,
});

/** Shows one pass in the drawing too. */
export function lookAtPass(pass: number): void {
  usePasses.setState({ pass });
  const { overlays, look } = useSession.getState();
  look({ overlays: { ...overlays, 'first-pass': true, 'metal-off': false } });
}

useSession.subscribe((state, before) => {
  if (state.bore !== before.bore || state.survey !== before.survey) usePasses.setState({ pass: 0 });
});
