// What is said of an appliance after its run: that it is proven, or what is missing, one thing first.
import { BUFFER_PH, checkPasses, type ToolCheck } from '../growth/tool-checks';
import { PROOF_LIMITS, type Proof, type ProofLack } from '../growth/proof';

const LACKS: Readonly<Record<ProofLack, string>> = {
  'no readings': 'nothing was read in it',
  'not filled': 'not all its places were filled',
  'filled not noted': 'it is not noted whether all its places were filled',
  'too short': `it was not read for ${PROOF_LIMITS.hours} hours`,
  'no night': 'no whole night lies in the run',
  'too seldom': 'it was read less often than every five minutes',
  'no centre': 'nothing was read at its centre',
  'no edge': 'nothing was read at its edge',
  'never settles': 'it never settles',
  'too cool': `its centre is below ${PROOF_LIMITS.low} °C too often`,
  'too warm': `its centre is above ${PROOF_LIMITS.high} °C too often`,
  'too hot': `it was above ${PROOF_LIMITS.most} °C`,
};

/** "Proven: it settles at 38.0 °C after 2 h 10 min." or "Not proven: it was above 43 °C." */
export function proofSays(proof: Proof): string {
  const [first, ...others] = proof.lacks.toReversed();
  if (first) {
    const more = others.length === 0 ? '' : `, and ${others.length === 1 ? 'one more thing' : `${others.length} more things`} would have to be put right`; // prettier-ignore
    return `Not proven: ${LACKS[first]}${more}.`;
  }
  const minutes = proof.minutesToSettle ?? 0;
  return `Proven: it settles at ${(proof.settledAt ?? 0).toFixed(1)} °C after ${Math.floor(minutes / 60)} h ${minutes % 60} min.`;
}

/** Each thing that is missing, in words. */
export const proofLacks = (proof: Proof): string[] => proof.lacks.map((lack) => LACKS[lack]);

/** What a check of a tool says. */
export function checkSays({ tool, shown }: Pick<ToolCheck, 'tool' | 'shown'>): string {
  const passes = checkPasses({ tool, shown });
  if (tool === 'meter') {
    return passes
      ? `The meter showed pH ${shown.toFixed(2)} in buffer of ${BUFFER_PH}: it may be trusted today.`
      : `The meter showed pH ${shown.toFixed(2)} in buffer of ${BUFFER_PH}: it proves nothing until it is calibrated and checked again.`;
  }
  if (tool === 'thermometer') {
    return passes
      ? 'The thermometer reads ice water right.'
      : `The thermometer shows ${shown.toFixed(1)} °C in ice water, which is 0 °C: allow for that, or use another.`;
  }
  return passes
    ? `The fridge keeps ${shown.toFixed(1)} °C.`
    : `The fridge keeps ${shown.toFixed(1)} °C, and jars need 4 °C (40 °F) or less: turn it down and check again.`;
}
