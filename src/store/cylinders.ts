/** How well the cylinders of the survey on the bench are known. No React; `useCylinders` is for views. */
import { asideStore } from './aside.ts';

export const { use: useCylinders, want: wantCylinders } = asideStore('cylinders', {
  more: {},
  byShop: false,
});
