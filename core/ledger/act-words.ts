// What an act did, in words: "recorded 14 Mar a, b". Pure; the subject was written down with the act, labels as they
// were then.

const words = {
  'batch.record': (subject) => `recorded ${subject}`,
  'batch.addJar': (subject) => `added ${subject}`,
  'batch.addHold': (subject) => `added a time in warmth of ${subject}`,
  'batch.correct': (subject) => `corrected the batch ${subject}`,
  'hold.correct': (subject) => `corrected the time in warmth of ${subject}`,
  'jar.correct': (subject) => `corrected ${subject}`,
  'jar.mistake': (subject) => `marked ${subject} as entered by mistake`,
  'jar.lost': (subject) => `put in ${subject}, which nobody can name`,
  'seeding.set': (subject) => `changed what seeded ${subject}`,
  'addition.set': (subject) => `changed what was stirred into ${subject}`,
  'portion.save': (subject) => `kept ${subject}`,
  'outcome.save': (subject) => `noted how ${subject} turned out`,
  'shelf.open': (subject) => `opened ${subject}`,
  'shelf.eat': (subject) => `ate ${subject}`,
  'shelf.give': (subject) => `gave ${subject} away`,
  'shelf.freeze': (subject) => `froze ${subject}`,
  'shelf.thaw': (subject) => `thawed ${subject}`,
  'shelf.discard': (subject) => `discarded ${subject}`,
  'shelf.keep': (subject) => `kept ${subject} for seed, unopened`,
  'shelf.answer': (subject) => `said what became of ${subject}`,
  'shelf.limits': () => 'changed how long things keep',
  'source.save': (subject) => `saved the source ${subject}`,
  'package.save': (subject) => `saved the package ${subject}`,
  'caution.clear': (subject) => `lifted a caution on ${subject}`,
  'preferences.save': () => 'changed the preferences',
  'photograph.add': (subject) => `added a photograph of ${subject}`,
  'photograph.correct': (subject) => `changed the caption of a photograph of ${subject}`,
  'photograph.remove': (subject) => `took away a photograph of ${subject}`,
  'advice.choose': (subject) => `chose ${subject} to seed from next`,
  'line.name': (subject) => `called ${subject}`,
  'facts.record': (subject) => `noted ${subject}`,
  'facts.correct': (subject) => `corrected ${subject}`,
  'facts.remove': (subject) => `took away ${subject}`,
  'readings.add': (subject) => `added readings to ${subject}`,
  'appliance.save': (subject) => `saved the appliance ${subject}`,
  'appliance.prove': (subject) => `noted a run of ${subject}`,
  'tool.check': (subject) => `noted a check of the ${subject}`,
  'trial.save': (subject) => `began a trial of ${subject}`,
  'session.start': (subject) => `began a tasting of ${subject}`,
  'session.reveal': (subject) => `revealed the tasting of ${subject}`,
  'mark.record': (subject) => `noted marks of the tasting of ${subject}`,
  'readings.bringIn': (subject) => `brought in readings of ${subject}`,
  'readings.leaveOut': (subject) => `changed which readings count of ${subject}`,
  'remarks.answer': (subject) => `answered ${subject}`,
  'received.decide': (subject) => `decided about ${subject}`,
  'batch.about': (subject) => `told about when ${subject} was made`,
  'handOver.write': (subject) => `gave ${subject} away with a hand-over`,
  'ledger.merge': (subject) => `took in ${subject}`,
  'notes.bringIn': (subject) => `brought in ${subject}`,
  'act.undo': (subject) => `undid: ${subject}`,
  'act.redo': (subject) => `did again: ${subject}`,
} as const satisfies Record<string, (subject: string) => string>;

export type ActKind = keyof typeof words;

/** The act in words. A kind that a newer program wrote is named as it is. */
export function actWords(kind: string, subject: string): string {
  const say: ((subject: string) => string) | undefined = words[kind as ActKind];
  return say ? say(subject) : `${kind}: ${subject}`;
}
