// Books in a store again and again until it is killed, and says what is confirmed. Lines are written some bytes at a time,
// as a slow or full disk would, so that a kill tears them.

import { writeSync } from 'node:fs';
import { open } from 'node:fs/promises';
import { bookInStore } from '../../dist/cli/store/ledgerFile.js';

const [folder, name, piece] = process.argv.slice(2);
const handle = await open(folder, 'r');
const fileHandle = Object.getPrototypeOf(handle);
await handle.close();
const write = fileHandle.write;
fileHandle.write = async function (bytes, offset, length, position) {
  const part = await write.call(this, bytes, offset, Math.min(length, Number(piece)), position);
  if (part.bytesWritten < length) writeSync(1, 'writing\n');
  return part;
};

const line = { item: 'fitting', fitting: 'hinge', count: 1, move: 'in' };
writeSync(1, 'begun\n');
for (let round = 1; ; round++) {
  const why = `${name} ${round}`;
  const draft = { date: '2026-03-02', kind: 'receive', who: name, why, lines: [line] };
  const booked = await bookInStore(folder, () => ({ ok: true, value: draft, findings: [] }), 60);
  writeSync(
    1,
    booked.ok ? `confirmed ${why}\n` : `refused ${booked.findings.map((f) => f.code).join(' ')}\n`,
  );
}
