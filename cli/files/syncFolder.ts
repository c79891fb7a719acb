import { open } from 'node:fs/promises';

/** Makes what was written to a folder's list of files last, where the system can. */
export async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r').catch(() => null);
  if (handle === null) return;
  try {
    await handle.sync();
  } catch {
    // Some systems do not let a folder be synced; the files themselves are.
  } finally {
    await handle.close();
  }
}
