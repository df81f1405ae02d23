// Generated cases are the same in every run, so that a red run can be repeated and a green one stays green.
// JARLINE_SEED=random draws others each time, JARLINE_SEED=NUMBER those of that number.
import fc from 'fast-check';

const asked = process.env['JARLINE_SEED'];

if (asked !== 'random')
  fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(asked ?? 20_261_127) });
