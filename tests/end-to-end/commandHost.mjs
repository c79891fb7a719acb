import { writeSync } from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import threads from 'node:worker_threads';

/**
 * Runs command lines of the built command one after the other, as they are asked for, in a process that stays: loading
 * the program takes longer than most of what tests ask of it. Each command line finds what it finds in a process of its
 * own: a folder, arguments, no terminal, no input; threads and listeners that it leaves are ended. Where a command ends
 * the process, this one ends too. Answers are lines of JSON on the standard output.
 */

const started = new Set();
threads.Worker = class extends threads.Worker {
  constructor(...given) {
    super(...given);
    started.add(this);
    this.once('exit', () => started.delete(this));
  }
};
syncBuiltinESMExports();

const { runFromTerminal } = await import('../../dist/cli/main.js');

let said = null;

/** `isLast`: this process ends with the command. */
function answer(code, isLast = false) {
  const reply = JSON.stringify({ code, isLast, ...said });
  said = null;
  const bytes = Buffer.from(`${reply}\n`);
  for (let at = 0; at < bytes.length; ) {
    try {
      at += writeSync(1, bytes, at);
    } catch (error) {
      // The reader of the pipe is slower: nothing else is waited for here.
      if (error.code !== 'EAGAIN') throw error;
    }
  }
}

function collect(stream, name) {
  stream.write = (chunk, encoding, written) => {
    if (said !== null) said[name] += typeof chunk === 'string' ? chunk : Buffer.from(chunk).toString('utf8');
    const then = typeof encoding === 'function' ? encoding : written;
    if (then) setImmediate(then, null);
    return true;
  };
}
collect(process.stdout, 'stdout');
collect(process.stderr, 'stderr');

const emitters = [process, process.stdout, process.stderr];
const listenersNow = () =>
  emitters.map((emitter) => emitter.eventNames().map((name) => [name, emitter.listeners(name)]));

/** Takes off every listener that was not there before. */
function removeNewListeners(before) {
  for (const [index, emitter] of emitters.entries()) {
    const known = new Map(before[index]);
    for (const name of emitter.eventNames()) {
      for (const listener of emitter.listeners(name)) {
        if (!(known.get(name) ?? []).includes(listener)) emitter.removeListener(name, listener);
      }
    }
  }
}

process.on('exit', (code) => {
  if (said !== null) answer(code, true);
});
process.on('disconnect', () => process.exit());
process.on('message', async ({ folder, args }) => {
  const before = listenersNow();
  said = { stdout: '', stderr: '' };
  process.exitCode = undefined;
  process.chdir(folder);
  process.argv.splice(2, process.argv.length, ...args);
  await runFromTerminal();
  const code = process.exitCode ?? 0;
  process.exitCode = undefined;
  removeNewListeners(before);
  await Promise.all([...started].map((thread) => thread.terminate()));
  answer(code);
});
