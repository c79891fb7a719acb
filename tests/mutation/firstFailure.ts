import fc from 'fast-check';

/** Properties are tried with the same cases each time; a case that fails is enough, the smallest is not looked for. */
fc.configureGlobal({ seed: 1, endOnFailure: true });
