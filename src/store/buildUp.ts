/** What squeezing, shimming and welding come to, of the survey on the bench. No React; `useBuildUp` is for views. */
import { asideStore } from './aside.ts';

export const { use: useBuildUp, want: wantBuildUp } = asideStore('buildUp', {
  more: {},
  byShop: true,
});
