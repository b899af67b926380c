import fc from 'fast-check';

// A failing property prints its seed; FC_SEED=<that number> repeats the run with the same values.
const seed = process.env['FC_SEED'];

if (seed !== undefined) {
  if (!/^-?\d+$/.test(seed)) {
    throw new Error(`FC_SEED is ${JSON.stringify(seed)}; it has to be a whole number.`);
  }
  fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(seed) });
}
