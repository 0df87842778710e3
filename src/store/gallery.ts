/** Which wear pattern is looked at, if any: told by the address, so that it can be linked to and gone back from. */
import { usePage } from './page.ts';

const HASH = '#wear-patterns';

export function galleryHash(name = ''): string {
  return name === '' ? HASH : `${HASH}/${name}`;
}

export function openGallery(name = ''): void {
  location.hash = galleryHash(name);
}

export function leaveGallery(): void {
  if (usePage.getState().gallery === null) return;
  history.pushState(null, '', location.pathname + location.search);
  usePage.getState().change({ gallery: null });
}

function readAddress(): void {
  const [head, name = ''] = location.hash.split('/');
  const gallery = head === HASH ? decodeURIComponent(name) : null;
  if (gallery === usePage.getState().gallery) return;
  usePage.getState().change({ gallery, keypad: false });
}

/** Follows the address until told to stop. */
export function followAddress(): () => void {
  readAddress();
  addEventListener('hashchange', readAddress);
  addEventListener('popstate', readAddress);
  return () => {
    removeEventListener('hashchange', readAddress);
    removeEventListener('popstate', readAddress);
  };
}
