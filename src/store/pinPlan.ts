/** The plan of the pin on the bench. No React; `usePinPlan` is for views. */
import { asideStore } from './aside.ts';

export const { use: usePinPlan, want: wantPinPlan } = asideStore('pin', { more: {}, byShop: true });
