// Loaded before the command, in its main thread, to bring about what cannot be waited for: `FAULT` says what.
import { syncBuiltinESMExports } from 'node:module';
import workers from 'node:worker_threads';

const [fault, value] = (process.env['FAULT'] ?? '').split('=');

if (workers.isMainThread && (fault === 'kill-threads' || fault === 'little-memory')) {
  const { Worker } = workers;
  workers.Worker = class extends Worker {
    constructor(file, options) {
      super(
        file,
        fault === 'kill-threads'
          ? options
          : { ...options, resourceLimits: { maxOldGenerationSizeMb: Number(value) } },
      );
      // A thread that works is ended by another hand.
      if (fault === 'kill-threads')
        this.once('message', () => setTimeout(() => void this.terminate(), Number(value)));
    }
  };
  syncBuiltinESMExports();
}

if (fault === 'clock') {
  const behind = Date.now() - Date.parse(value);
  globalThis.Date = class extends Date {
    constructor(...args) {
      if (args.length === 0) super(Date.now() - behind);
      else super(...args);
    }
  };
}
