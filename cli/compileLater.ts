import { setFlagsFromString } from 'node:v8';

/**
 * How much of a function's code must have run, in bytes, before the engine compiles it once more with all its skill. Of a
 * command that takes seconds most functions run for some milliseconds: compiling those took a fifth of all processor time,
 * in threads that the search wants. Hot loops are met a few milliseconds later and no slower.
 */
const BYTES_RUN_BEFORE_COMPILING = 1_000_000;
/** The same for a function of the solver's WebAssembly, of which a bound that takes a second ran the most in vain. */
const SOLVER_BYTES_RUN_BEFORE_COMPILING = 20_000_000;

// Later versions compile in more steps and have been measured with none of this.
if (process.versions.node.startsWith('20.')) {
  setFlagsFromString(`--interrupt-budget=${BYTES_RUN_BEFORE_COMPILING}`);
  setFlagsFromString(`--wasm-tiering-budget=${SOLVER_BYTES_RUN_BEFORE_COMPILING}`);
  // A thread that compiles in the background may begin to mark in steps for one that is being ended, upon which Node 20
  // aborts ("(data.first) != nullptr"). A command has no pauses to fear: it marks in one go.
  setFlagsFromString('--no-incremental-marking');
}
