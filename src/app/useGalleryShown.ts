/** Name of the wear pattern to show, null for the notebook: follows the address, and gives way to another job. */
import { useEffect, useRef } from 'react';
import { followAddress, leaveGallery } from '../store/gallery.ts';
import { usePage } from '../store/page.ts';

export function useGalleryShown(job: string | undefined, newJob: boolean): string | null {
  const before = useRef({ job, newJob });
  useEffect(followAddress, []);
  useEffect(() => {
    // The first job of all is the page opening, and leaves a link to a pattern as it is.
    const another = before.current.job !== undefined && before.current.job !== job;
    if (another || newJob) leaveGallery();
    before.current = { job, newJob };
  }, [job, newJob]);
  return usePage((page) => page.gallery);
}
