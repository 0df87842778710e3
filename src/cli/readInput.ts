/** A file named on the command line. */
import { readFileSync } from 'node:fs';

/** Its bytes, or one sentence why there are none. */
export function readInput(file: string): { bytes: Buffer } | { why: string } {
  try {
    return { bytes: readFileSync(file) };
  } catch (fault) {
    const code = (fault as NodeJS.ErrnoException).code;
    if (code === 'ENOENT') return { why: `${file}: there is no such file.` };
    if (code === 'EISDIR') return { why: `${file}: this is a folder; name a file.` };
    if (code === 'ERR_FS_FILE_TOO_LARGE') {
      return { why: `${file}: larger than 2 GB, the most that can be read; give fewer rows.` };
    }
    return { why: `${file}: cannot be read (${(fault as Error).message}).` };
  }
}
